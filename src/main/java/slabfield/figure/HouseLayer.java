package slabfield.figure;

import java.util.List;
import slabfield.model.Barrier;
import slabfield.model.BlockWall;
import slabfield.model.DrainTile;
import slabfield.model.Opening;
import slabfield.model.OpeningKind;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Slab;
import slabfield.model.Zone;

/** The house as drawn: slabs, fills, barriers, tile, walls and openings. */
final class HouseLayer {
    private static final double LEAST_BREAK = 9;
    private static final double LEAST_BARRIER = 4;
    private static final double INWARD = 7;

    private final Canvas canvas;
    private final Scenario scenario;
    private final PlanView view;
    private final Ink ink;
    private final LineSigns signs;
    private final Symbols symbols;

    HouseLayer(Canvas canvas, Scenario scenario, PlanView view, Ink ink) {
        this.canvas = canvas;
        this.scenario = scenario;
        this.view = view;
        this.ink = ink;
        this.signs = new LineSigns(canvas, ink);
        this.symbols = new Symbols(canvas, ink);
    }

    void draw() {
        scenario.layer().zones().forEach(this::zone);
        scenario.drainTiles().forEach(this::tile);
        scenario.slabs().forEach(this::slab);
        scenario.barriers().forEach(this::barrier);
        scenario.openings().forEach(this::lineOpening);
        scenario.blockWalls().forEach(this::wall);
        for (Opening opening : scenario.openings())
            if (opening.place() instanceof Opening.Spot spot)
                symbols.opening(
                        opening.kind(),
                        opening.seal().state(),
                        view.pageX(spot.at().x()),
                        view.pageY(spot.at().y()));
    }

    private void zone(Zone zone) {
        double[] ring = Lines.page(zone.outline(), view);
        canvas.line(ring, true, ink.solid(Ink.VEIL, 2));
        canvas.line(ring, true, ink.dashed(Ink.DARK, 1.1, 1.2, 2.6));
    }

    private void slab(Slab slab) {
        for (List<Point> hole : slab.holes()) {
            double[] ring = Lines.page(hole, view);
            canvas.fill(List.of(ring), Ink.WHITE);
            canvas.line(ring, true, ink.solid(Ink.DARK, 1.2));
            int across = 2 * (ring.length / 4);
            double[] diagonal = {ring[0], ring[1], ring[across], ring[across + 1]};
            canvas.clipped(List.of(ring), () -> canvas.line(diagonal, false, ink.solid(Ink.DARK, 0.6)));
        }
        double[] outline = Lines.page(slab.outline(), view);
        canvas.line(outline, true, slab.treated() ? ink.solid(Ink.DARK, 1.8) : ink.dashed(Ink.DARK, 1.4, 8, 3));
    }

    private void barrier(Barrier barrier) {
        double width = Math.max(LEAST_BARRIER * ink.size(), barrier.width() * view.scale());
        for (double[] line : Lines.remaining(barrier.path(), barrier.gaps(), 0, view)) {
            double[] strip = Lines.strip(line, width);
            if (barrier.known()) signs.knownBarrier(strip);
            else signs.suspectedBarrier(strip);
        }
    }

    private void tile(DrainTile tile) {
        double least = LEAST_BREAK * ink.size() / view.scale();
        for (double[] line : Lines.remaining(tile.path(), tile.breaks(), least, view)) signs.tile(line);
        for (double[] line : Lines.gaps(tile.path(), tile.waterFilled(), least, view)) signs.waterFilled(line);
        for (double[] gap : Lines.gaps(tile.path(), tile.breaks(), least, view)) signs.tileBreak(gap);
    }

    private void wall(BlockWall wall) {
        signs.wall(Lines.page(wall.path().points(), view), wall.tops().state());
    }

    private void lineOpening(Opening opening) {
        if (opening.place() instanceof Opening.Along along) {
            double[] line = inward(Lines.page(along.path().points(), view));
            if (opening.kind() == OpeningKind.CRACK)
                signs.crack(line, opening.seal().state());
            else signs.joint(line, false, opening.seal().state());
        } else if (opening.place() instanceof Opening.Perimeter edge) {
            for (Slab slab : scenario.slabs()) if (slab.id().equals(edge.slab())) perimeter(slab, opening);
        }
    }

    private void perimeter(Slab slab, Opening opening) {
        double[] ring = Lines.page(slab.outline(), view);
        double area = 0;
        for (int i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2)
            area += ring[j] * ring[i + 1] - ring[i] * ring[j + 1];
        double side = Math.signum(area) * INWARD * ink.size();
        signs.joint(Lines.beside(ring, true, side), true, opening.seal().state());
    }

    /** A line that runs along a slab's edge, moved inside so that the wall on the edge stays visible. */
    private double[] inward(double[] line) {
        double distance = INWARD * ink.size(), nudge = 2 * ink.size();
        List<double[]> slabs = Lines.rings(scenario.slabs(), view);
        boolean right = middleInside(slabs, Lines.beside(line, false, nudge));
        boolean left = middleInside(slabs, Lines.beside(line, false, -nudge));
        return right == left ? line : Lines.beside(line, false, right ? distance : -distance);
    }

    private static boolean middleInside(List<double[]> rings, double[] line) {
        double[] middle = Lines.at(line, Lines.length(line) * 0.47);
        return Lines.inside(rings, middle[0], middle[1]);
    }
}

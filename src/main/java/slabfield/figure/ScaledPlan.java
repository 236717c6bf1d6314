package slabfield.figure;

import java.util.List;
import slabfield.figure.PlanSheets.Tile;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Slab;
import slabfield.model.SuctionPoint;
import slabfield.model.TestHole;

/** One sheet of a plan to scale: house, signs, corners by letter, lengths of walls, and match lines to its neighbours. */
final class ScaledPlan {
    /** From the sheet's edge to its match line. */
    private static final double EDGE = 6 * Paper.MILLIMETRE;
    /** From the corner of the sheet to the name of its neighbour. */
    private static final double NAME_AT = 24 * Paper.MILLIMETRE;

    private static final double CROSS_EVERY = 40 * Paper.MILLIMETRE;

    private final Canvas canvas;
    private final PlanSheets sheets;
    private final Tile tile;
    private final Scenario scenario;
    private final PlanView view;
    private final Ink ink = new Ink(1);
    private final Labels labels;

    ScaledPlan(Canvas canvas, PlanSheets sheets, Tile tile) {
        this.canvas = canvas;
        this.sheets = sheets;
        this.tile = tile;
        this.scenario = sheets.scenario();
        this.view = tile.view();
        this.labels = new Labels(tile.room());
    }

    void draw() {
        canvas.clipped(List.of(tile.room().ring()), () -> {
            new HouseLayer(canvas, scenario, view, ink).draw();
            signs();
            corners();
            scenario.slabs().forEach(this::lengths);
            names();
        });
        matchLines();
    }

    private void signs() {
        Symbols symbols = new Symbols(canvas, ink);
        for (TestHole hole : scenario.testHoles()) {
            symbols.hole(x(hole.at()), y(hole.at()), Ink.WHITE);
            labels.take(Box.around(x(hole.at()), y(hole.at()), symbols.reach()));
        }
        for (SuctionPoint point : scenario.suctionPoints()) {
            symbols.suction(x(point.at()), y(point.at()));
            labels.take(Box.around(x(point.at()), y(point.at()), symbols.reach()));
        }
    }

    private double x(Point p) {
        return view.pageX(p.x());
    }

    private double y(Point p) {
        return view.pageY(p.y());
    }

    /** A letter in a ring beside each corner, outside the slab where there is room. */
    private void corners() {
        var lettering = ink.bold(Ink.DARK);
        List<double[]> slabs = Lines.rings(scenario.slabs(), view);
        for (TapeDistances.Corner corner : new TapeDistances(scenario).corners()) {
            double reach = 15;
            double bestX = x(corner.at()) + reach, bestY = y(corner.at()) - reach;
            for (int[] side : new int[][] {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}}) {
                double cx = x(corner.at()) + side[0] * reach, cy = y(corner.at()) + side[1] * reach;
                if (Lines.inside(slabs, cx, cy)) continue;
                bestX = cx;
                bestY = cy;
                break;
            }
            double[] ring = Lines.circle(bestX, bestY, 7.5);
            canvas.fill(List.of(ring), Ink.WHITE);
            canvas.line(ring, true, ink.solid(Ink.DARK, 0.8));
            canvas.text(corner.name(), bestX, bestY + 3, Canvas.Anchor.MIDDLE, 0, lettering);
            labels.take(Box.around(bestX, bestY, 8));
        }
    }

    /** The length of each wall beside the middle of what this sheet shows of it, outside the slab. */
    private void lengths(Slab slab) {
        List<double[]> slabs = Lines.rings(scenario.slabs(), view);
        var lettering = ink.fine(Ink.DARK);
        for (int i = 0; i < slab.outline().size(); i++) {
            Point a = slab.outline().get(i),
                    b = slab.outline().get((i + 1) % slab.outline().size());
            double long_ = a.distanceTo(b);
            String text = sheets.tape().apply(long_);
            double room = long_ * view.scale();
            double[] shown = within(tile.room().inset(EDGE), a, b);
            if (shown[1] - shown[0] < (canvas.textWidth(text, lettering) + 20) / room) continue;
            double dx = x(b) - x(a),
                    dy = y(b) - y(a),
                    nx = -dy / room,
                    ny = dx / room,
                    middle = (shown[0] + shown[1]) / 2;
            double mx = x(a) + middle * dx,
                    my = y(a) + middle * dy,
                    off = Lines.inside(slabs, mx + 12 * nx, my + 12 * ny) ? -14 : 14;
            if (Lines.inside(slabs, mx + off * nx, my + off * ny)) continue;
            double angle = Math.atan2(dy, dx);
            if (angle > Math.PI / 2 + 1e-9) angle -= Math.PI;
            if (angle <= -Math.PI / 2 + 1e-9) angle += Math.PI;
            double cx = mx + off * nx, cy = my + off * ny;
            canvas.text(
                    text,
                    cx - 2.7 * Math.sin(angle),
                    cy + 2.7 * Math.cos(angle),
                    Canvas.Anchor.MIDDLE,
                    angle,
                    lettering);
        }
    }

    /** From which part of a wall to which it lies in a box, as parts of its length; the second is the smaller if it does not. */
    private double[] within(Box box, Point a, Point b) {
        double[] part = {0, 1};
        between(part, x(a), x(b), box.left(), box.right());
        between(part, y(a), y(b), box.top(), box.bottom());
        return part;
    }

    private static void between(double[] part, double from, double to, double low, double high) {
        if (from == to) {
            if (from < low || from > high) part[1] = -1;
            return;
        }
        double enters = (low - from) / (to - from), leaves = (high - from) / (to - from);
        part[0] = Math.max(part[0], Math.min(enters, leaves));
        part[1] = Math.min(part[1], Math.max(enters, leaves));
    }

    private void names() {
        for (SuctionPoint point : scenario.suctionPoints()) name(point.id(), point.at());
        for (TestHole hole : scenario.testHoles()) name(hole.id(), hole.at());
    }

    private void name(String text, Point at) {
        var lettering = ink.rimmed(ink.body(), true);
        labels.place(x(at), y(at), canvas.textWidth(text, lettering) + 3, 1.3 * ink.body(), 9, 16, 26)
                .ifPresent(b -> {
                    canvas.fill(List.of(b.ring()), Ink.VEIL);
                    canvas.text(text, b.left() + 1.5, b.bottom() - 3, Canvas.Anchor.START, 0, lettering);
                });
    }

    private void matchLines() {
        Box room = tile.room();
        if (tile.column() > 0) match(room.left() + EDGE, true, name(tile.row(), tile.column() - 1), -1);
        if (tile.column() < sheets.columns() - 1)
            match(room.right() - EDGE, true, name(tile.row(), tile.column() + 1), 1);
        if (tile.row() > 0) match(room.top() + EDGE, false, name(tile.row() - 1, tile.column()), -1);
        if (tile.row() < sheets.rows() - 1) match(room.bottom() - EDGE, false, name(tile.row() + 1, tile.column()), 1);
        canvas.line(room.ring(), true, ink.solid(Ink.SOFT, 0.4));
    }

    private static String name(int row, int column) {
        return TapeDistances.letters(row) + (column + 1);
    }

    /** A line across the sheet with crosses at places that its neighbour shows too. */
    private void match(double at, boolean upright, String neighbour, int side) {
        Box room = tile.room();
        double from = upright ? room.top() : room.left(), to = upright ? room.bottom() : room.right();
        canvas.line(
                upright ? new double[] {at, from, at, to} : new double[] {from, at, to, at},
                false,
                ink.dashed(Ink.DARK, 0.6, 12, 3, 2, 3));
        double middle = (from + to) / 2;
        for (double place = middle - CROSS_EVERY; place <= middle + CROSS_EVERY + 1; place += CROSS_EVERY) {
            double x = upright ? at : place, y = upright ? place : at, r = 6;
            canvas.line(new double[] {x - r, y, x + r, y}, false, ink.solid(Ink.DARK, 0.9));
            canvas.line(new double[] {x, y - r, x, y + r}, false, ink.solid(Ink.DARK, 0.9));
            canvas.line(Lines.circle(x, y, 4), true, ink.solid(Ink.DARK, 0.6));
        }
        neighbour(at + side * EDGE / 2, from + NAME_AT, upright, "joins sheet " + neighbour);
    }

    /** Which sheet goes on there, on a plate of its own so that it can be read over the drawing. */
    private void neighbour(double across, double along, boolean upright, String text) {
        var lettering = ink.fine(Ink.DARK);
        double x = upright ? across : along,
                y = upright ? along : across,
                half = canvas.textWidth(text, lettering) / 2 + 3,
                high = 6;
        Box plate = upright
                ? new Box(x - high, y - half, x + high, y + half)
                : new Box(x - half, y - high, x + half, y + high);
        canvas.fill(List.of(plate.ring()), Ink.WHITE);
        double down = 2.7;
        canvas.text(
                text,
                upright ? x + down : x,
                upright ? y : y + down,
                Canvas.Anchor.MIDDLE,
                upright ? -Math.PI / 2 : 0,
                lettering);
    }
}

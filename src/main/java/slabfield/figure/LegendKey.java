package slabfield.figure;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
import slabfield.model.BlockWall;
import slabfield.model.Opening;
import slabfield.model.OpeningKind;
import slabfield.model.Scenario;
import slabfield.model.SealState;

/** The signs that a scenario's map holds, each once, with what it means. */
final class LegendKey {
    private final Canvas canvas;
    private final Scenario scenario;
    private final boolean solved;
    private final String unit;
    private final Ink ink;
    private final Symbols symbols;
    private final LineSigns signs;

    /**
     * @param unit said with the values at holes, after a comma; empty where the map says it itself
     */
    LegendKey(Canvas canvas, Scenario scenario, boolean solved, String unit, Ink ink) {
        this.canvas = canvas;
        this.scenario = scenario;
        this.solved = solved;
        this.unit = unit;
        this.ink = ink;
        this.symbols = new Symbols(canvas, ink);
        this.signs = new LineSigns(canvas, ink);
    }

    void entries(BiConsumer<Legend.Sample, String> add) {
        points(add);
        barriers(add);
        tiles(add);
        openings(add);
        if (scenario.slabs().stream().anyMatch(s -> !s.holes().isEmpty()))
            add.accept(this::pad, "no layer here (pad, pit)");
        if (!scenario.layer().zones().isEmpty())
            add.accept(dashes(ink.dashed(Ink.DARK, 1.1, 1.2, 2.6)), "edge of another fill");
        if (scenario.slabs().stream().anyMatch(s -> !s.treated()))
            add.accept(dashes(ink.dashed(Ink.DARK, 1.4, 8, 3)), "slab not meant to be reached");
    }

    private Legend.Sample dashes(Canvas.Pen pen) {
        return (x, y, half) -> canvas.line(level(x, y, half), false, pen);
    }

    private void pad(double x, double y, double half) {
        double[] ring = new Box(x - half / 2, y - 5 * ink.size(), x + half / 2, y + 5 * ink.size()).ring();
        canvas.fill(List.of(ring), Ink.WHITE);
        canvas.line(ring, true, ink.solid(Ink.DARK, 1.2));
        canvas.line(new double[] {ring[0], ring[1], ring[4], ring[5]}, false, ink.solid(Ink.DARK, 0.6));
    }

    private void points(BiConsumer<Legend.Sample, String> add) {
        if (!scenario.suctionPoints().isEmpty())
            add.accept(
                    (x, y, half) -> symbols.suction(x, y), solved ? "suction point: pressure, flow" : "suction point");
        if (scenario.testHoles().isEmpty()) return;
        add.accept(
                (x, y, half) -> symbols.hole(x, y, Ink.GROUND), solved ? "test hole: predicted" + unit : "test hole");
        boolean measured = scenario.testHoles().stream()
                .anyMatch(h -> Plan.measured(scenario, h.id()).isPresent());
        if (!measured) return;
        add.accept(
                (x, y, half) -> {
                    symbols.measured(x, y, 0xFFC4C9CE);
                    symbols.hole(x, y, Ink.GROUND);
                },
                (solved ? "with a square: predicted / measured" : "with a square: measured") + unit);
    }

    private void barriers(BiConsumer<Legend.Sample, String> add) {
        double thick = 6 * ink.size();
        if (scenario.barriers().stream().anyMatch(b -> b.known()))
            add.accept(
                    (x, y, half) -> signs.knownBarrier(Lines.strip(level(x, y, half), thick)),
                    "footing or barrier, known");
        if (scenario.barriers().stream().anyMatch(b -> !b.known()))
            add.accept(
                    (x, y, half) -> signs.suspectedBarrier(Lines.strip(level(x, y, half), thick)),
                    "footing or barrier, suspected");
    }

    private void tiles(BiConsumer<Legend.Sample, String> add) {
        if (scenario.drainTiles().isEmpty()) return;
        add.accept((x, y, half) -> signs.tile(level(x, y, half)), "drain tile");
        if (scenario.drainTiles().stream().anyMatch(t -> !t.breaks().isEmpty()))
            add.accept(
                    (x, y, half) -> {
                        double gap = 4.5 * ink.size();
                        signs.tile(new double[] {x - half, y, x - gap, y});
                        signs.tile(new double[] {x + gap, y, x + half, y});
                        signs.tileBreak(level(x, y, gap));
                    },
                    "drain tile broken");
        if (scenario.drainTiles().stream().anyMatch(t -> !t.waterFilled().isEmpty()))
            add.accept((x, y, half) -> signs.waterFilled(level(x, y, half)), "drain tile full of water");
    }

    private void openings(BiConsumer<Legend.Sample, String> add) {
        Map<String, Legend.Sample> found = new LinkedHashMap<>();
        for (BlockWall wall : scenario.blockWalls()) {
            SealState tops = wall.tops().state();
            found.put("block wall, tops " + tops.word(), (x, y, half) -> signs.wall(level(x, y, half), tops));
        }
        for (Opening opening : scenario.openings())
            found.put(opening.kind().word() + ", " + opening.seal().state().word(), sample(opening));
        found.forEach((text, sample) -> add.accept(sample, text));
    }

    private Legend.Sample sample(Opening opening) {
        OpeningKind kind = opening.kind();
        SealState state = opening.seal().state();
        if (opening.place() instanceof Opening.Spot) return (x, y, half) -> symbols.opening(kind, state, x, y);
        if (kind == OpeningKind.CRACK) return (x, y, half) -> signs.crack(level(x, y, half), state);
        return (x, y, half) -> signs.joint(level(x, y, half), false, state);
    }

    private static double[] level(double x, double y, double half) {
        return new double[] {x - half, y, x + half, y};
    }
}

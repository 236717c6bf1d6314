package slabfield.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.BlockWall;
import slabfield.model.Gap;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Source;

/**
 * Houses drawn at random, with any of the devices. Each is solved with finite figures, or refused with a reason; sealing
 * what lets room air in never weakens a place, nor does more suction; behind a barrier without a gap the suction is not felt. The profile
 * {@code property} draws 10,000.
 */
class RandomHousesTest {
    private static final int DRAWS = Integer.getInteger("slabfield.draws", 1000) >= 10_000 ? 10_000 : 60;
    private static final double WIDTH = 9;
    private static final double DEPTH = 6;

    private final Random random = new Random(77);

    private double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private double decades(double low, double high) {
        return Math.pow(10, between(low, high));
    }

    private boolean sometimes() {
        return random.nextInt(3) == 0;
    }

    private Scenario draw() {
        double k = decades(-12, -7);
        Houses h =
                Houses.on(k, sometimes() && k > 1e-8 ? between(100, 3000) : 0).rectangle(0, 0, WIDTH, DEPTH);
        if (sometimes()) h.rectangle(WIDTH, 0, WIDTH + 3, 2.5);
        if (sometimes()) h.zone(0, 0, between(1, 8), between(1, 5), k * decades(-4, 4));
        if (sometimes()) h.barrier(0.3, sometimes() ? k * 1e-4 : 0, gap(5), 5, 0, 5, DEPTH);
        if (sometimes()) h.barrier(0.05, 0, gap(7), 7, 0, 7, DEPTH);
        boolean tile = sometimes();
        if (tile) h.tile(sometimes() ? "sump" : null, List.of(), 0.7, 0.7, 8.3, 0.7, 8.3, 5.3);
        h.opening("sump", new Opening.Spot(new Point(0.7, 0.7), 0.2), new Opening.Orifice(decades(-5, -1.5), 0.61));
        if (sometimes())
            h.opening(
                    "joint", new Opening.Perimeter("slab 0"), new Opening.Crack(decades(-4, -2.5), random.nextInt(3)));
        if (sometimes())
            h.opening(
                    "drain",
                    new Opening.Spot(new Point(between(5.5, 6.5), 3), 0.05),
                    new Opening.PowerLaw(decades(-6, -3), 0.65));
        if (sometimes())
            h.wall(new BlockWall(
                    "north",
                    Houses.path(0, DEPTH, WIDTH, DEPTH),
                    2,
                    Seal.of(SealState.LOOSE),
                    between(0, 0.09),
                    decades(-6, -3),
                    2e-5,
                    1e-5,
                    1e-3,
                    true,
                    Optional.empty()));
        h.leakance(sometimes() ? 0 : decades(-9, -4))
                .outdoors(sometimes() ? 0 : between(-5, 10))
                .cell(0.5);
        h.suction("S", between(2, 4), between(2, 5), between(0.05, 0.3), source());
        if (tile && sometimes()) h.onTile("T", 0, 8.3, 3, source());
        return h.scenario();
    }

    private List<Gap> gap(double x) {
        return sometimes() ? List.of() : List.of(new Gap(new Point(x, between(1, 5)), between(0.3, 1.5)));
    }

    private Source source() {
        return switch (random.nextInt(3)) {
            case 0 -> new Source.Pressure(-between(20, 3000));
            case 1 -> new Source.Flow(decades(-4, -1.5));
            default ->
                new Source.Fan(
                        new Source.FanCurve(List.of(0.0, 0.03, 0.08), List.of(450.0, between(150, 400), 0.0)),
                        new Source.Pipe(between(0.07, 0.11), between(1, 15), random.nextInt(6), 1.5, 1.5e-6),
                        0);
        };
    }

    private static Result solve(Scenario s) {
        return SlabSolver.solve(s, SlabSolver.Extent.FAN_ON_ONLY, Progress.NONE);
    }

    @Test
    void everyHouseIsSolvedOrRefusedAndAnswersAreMonotone() {
        List<Integer> refused = new ArrayList<>();
        for (int k = 0; k < DRAWS; k++) {
            Scenario s = draw();
            Result result = solve(s);
            if (result instanceof Result.Unsolved no) {
                assertThat(no.reason()).as("house %s", k).isNotBlank();
                if (no.convergence().ending() != slabfield.field.Convergence.Ending.SINGULAR) refused.add(k);
                continue;
            }
            Result.Solved solved = (Result.Solved) result;
            assertFinite(k, solved);
            // Where the soil's air comes out through the sump, sealing it raises the pressure.
            if (s.outdoorPressure() <= 0)
                assertNoWeaker(k, "sealed", solved, solve(s.withSeal("sump", new Seal(SealState.SEALED, 1, false))));
            assertNoWeaker(k, "stronger", solved, solve(s.withSuctionPoint("S", p -> p.drawnBy(stronger(p.source())))));
        }
        assertThat(refused).as("not settled, of %s", DRAWS).hasSizeLessThanOrEqualTo(DRAWS / 1000);
    }

    private static Source stronger(Source source) {
        if (source instanceof Source.Pressure p) return new Source.Pressure(1.2 * p.pressure());
        if (source instanceof Source.Flow f) return new Source.Flow(1.2 * f.flow());
        Source.Fan fan = (Source.Fan) source;
        return new Source.Fan(
                new Source.FanCurve(
                        fan.curve().flows(),
                        fan.curve().rises().stream().map(v -> v + 50).toList()),
                fan.run(),
                0);
    }

    private static void assertFinite(int k, Result.Solved solved) {
        double[] p = solved.field().pressure();
        for (int c = 0; c < p.length; c++)
            if (solved.field().counts()[c])
                assertThat(p[c]).as("house %s, cell %s", k, c).isFinite();
        assertThat(solved.flows().exhaust()).as("house %s", k).isFinite();
        assertThat(Math.abs(solved.convergence().massBalance()))
                .as("house %s", k)
                .isLessThanOrEqualTo(1e-9);
    }

    private static void assertNoWeaker(int k, String what, Result.Solved before, Result other) {
        // Sealing the only boundary leaves a part without pressure, which is no answer to compare.
        if (!(other instanceof Result.Solved after)) return;
        double[] p = before.field().pressure(), q = after.field().pressure();
        double scale = 0;
        for (double v : p) if (Math.abs(v) > scale) scale = Math.abs(v);
        for (int c = 0; c < p.length; c++)
            if (!Double.isNaN(p[c]) && !Double.isNaN(q[c]))
                assertThat(q[c]).as("house %s %s, cell %s", k, what, c).isLessThanOrEqualTo(p[c] + 1e-8 * scale);
    }

    /** Beyond a barrier from wall to wall the pressures are those of the house without suction. */
    @Test
    void aBarrierWithoutAGapHelpsNothingBeyondIt() {
        for (int k = 0; k < 20; k++) {
            Houses h = Houses.on(decades(-11, -7), 0)
                    .rectangle(0, 0, WIDTH, DEPTH)
                    .barrier(between(0.01, 0.4), 0, List.of(), 5, 0, 5, DEPTH)
                    .opening(
                            "drain",
                            new Opening.Spot(new Point(7, 3), 0.05),
                            new Opening.PowerLaw(decades(-6, -3), 0.65))
                    .leakance(decades(-8, -5))
                    .outdoors(between(-5, 10))
                    .cell(0.5)
                    .suction("S", 2, 3, 0.15, new Source.Pressure(-250));
            Result.Solved s = (Result.Solved) SlabSolver.solve(h.scenario(), Progress.NONE);
            assertThat(Houses.at(s, 3, 3))
                    .isLessThan(s.fanOff().orElseThrow().at(3, 3).orElseThrow());
            for (double x = 5.75; x < WIDTH; x += 0.5)
                assertThat(Houses.at(s, x, 2.75))
                        .as("house %s at %s", k, x)
                        .isCloseTo(
                                s.fanOff().orElseThrow().at(x, 2.75).orElseThrow(),
                                org.assertj.core.api.Assertions.within(1e-7));
        }
    }
}

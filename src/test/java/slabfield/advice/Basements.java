package slabfield.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Air;
import slabfield.model.Barrier;
import slabfield.model.Display;
import slabfield.model.Fill;
import slabfield.model.Layer;
import slabfield.model.Opening;
import slabfield.model.OpeningKind;
import slabfield.model.Path;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Slab;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;
import slabfield.model.Target;
import slabfield.model.TestHole;
import slabfield.network.SlabSolver;

/** Houses for tests of advice, in metres: a slab of 10 by 8 on even fill, whose laws are all linear. */
public final class Basements {
    public static final double CELL = 0.25;

    private Basements() {}

    /** One suction point near the left edge, a joint all round, two spots that leak. */
    public static Scenario plain() {
        return new Scenario(
                "made",
                "",
                "",
                Display.SI,
                List.of(new Slab("slab", rectangle(0, 0, 10, 8), List.of(), 0.1, true)),
                new Layer(Fill.of(0.1, 2e-8, 0), List.of()),
                List.of(),
                List.of(),
                List.of(),
                List.of(
                        leak("joint", new Opening.Perimeter("slab"), 2e-5),
                        leak("drain", new Opening.Spot(new Point(8.1, 2.1), 0.1), 1e-4),
                        leak("pinhole", new Opening.Spot(new Point(1.1, 6.1), 0.1), 1e-9)),
                1e-8,
                0,
                Air.STANDARD,
                List.of(new SuctionPoint(
                        "S1",
                        new Point(2, 4),
                        Optional.empty(),
                        new SuctionPoint.Pit(0.15),
                        new Source.Pressure(-100),
                        false)),
                holes(),
                List.of(),
                Target.COMMON_PRACTICE,
                CELL);
    }

    private static List<TestHole> holes() {
        List<TestHole> out = new ArrayList<>();
        double[][] at = {{3, 4}, {5, 2}, {7.5, 6}, {9, 1}, {9, 7}, {1, 1}};
        for (double[] p : at) out.add(new TestHole("H" + (out.size() + 1), new Point(p[0], p[1]), ""));
        return out;
    }

    public static Opening leak(String id, Opening.Place place, double conductance) {
        OpeningKind kind = place instanceof Opening.Spot ? OpeningKind.PENETRATION : OpeningKind.JOINT;
        return new Opening(id, kind, place, new Opening.PowerLaw(conductance, 1), Seal.of(SealState.OPEN));
    }

    public static List<Point> rectangle(double x0, double y0, double x1, double y1) {
        return List.of(new Point(x0, y0), new Point(x1, y0), new Point(x1, y1), new Point(x0, y1));
    }

    /** A footing across the whole slab. */
    public static Barrier footing(double x, boolean known) {
        return new Barrier("footing", new Path(List.of(new Point(x, 0), new Point(x, 8))), 0.3, 0, known, List.of());
    }

    public static Result.Solved solve(Scenario scenario) {
        return (Result.Solved) SlabSolver.solve(scenario, SlabSolver.Extent.FAN_ON_ONLY, Progress.NONE);
    }
}

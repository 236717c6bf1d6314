package slabfield.desktop.viewmodel.find;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import slabfield.desktop.viewmodel.Bench;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.fit.Unknowns;
import slabfield.model.NoDrillArea;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.model.StageKind;
import slabfield.model.TestHole;
import slabfield.network.SlabSolver;

/** The bench's house with readings of a house that is like it but for a tighter fill and a larger leak. */
public final class ReadHouse {
    /** How much tighter the true fill is than the drawn one. */
    static final double TIGHTER = 0.5;
    /** How much more the true sump leaks than the drawn one. */
    static final double LEAKIER = 2;

    private ReadHouse() {}

    /** As drawn, with four holes, an area kept from drilling and all that was read in the true house. */
    public static Scenario withReadings() {
        return withReadings(drawn());
    }

    /** The same with further holes. */
    static Scenario withReadings(Point... more) {
        Scenario drawn = drawn();
        List<TestHole> holes = new ArrayList<>(drawn.testHoles());
        for (Point p : more) holes.add(new TestHole("T" + (holes.size() + 1), p, ""));
        return withReadings(drawn.withTestHoles(holes));
    }

    private static Scenario withReadings(Scenario drawn) {
        Result.Solved truth = (Result.Solved) SlabSolver.solve(truth(drawn), Progress.NONE);
        List<Stage.HoleReading> holes = truth.holes().stream()
                .map(h -> new Stage.HoleReading(
                        h.id(), OptionalDouble.empty(), h.fanOn(), OptionalDouble.empty(), OptionalDouble.empty(), ""))
                .toList();
        Result.Suction suction = truth.suctions().get(0);
        Stage.SystemReading system = new Stage.SystemReading(
                "S1", OptionalDouble.of(suction.flow()), OptionalDouble.of(suction.pressure()), "");
        return drawn.withStages(List.of(
                new Stage("test", StageKind.COMMUNICATION_TEST, Map.of(), Map.of(), holes, List.of(system), "", "")));
    }

    /** As drawn, without a reading. */
    public static Scenario drawn() {
        Scenario bench = Bench.house().withCellSize(0.5);
        List<TestHole> holes = new ArrayList<>(bench.testHoles());
        holes.add(new TestHole("T3", new Point(1.5, 3.5), ""));
        holes.add(new TestHole("T4", new Point(3, 0.5), ""));
        NoDrillArea kept = new NoDrillArea(
                "duct",
                List.of(new Point(3.2, 2.6), new Point(4.2, 2.6), new Point(4.2, 3.4), new Point(3.2, 3.4)),
                "duct");
        return bench.withTestHoles(holes).withPlan(bench.plan().withNoDrillAreas(List.of(kept)));
    }

    public static Scenario truth(Scenario drawn) {
        Scenario tighter =
                Unknowns.fill(drawn).with(drawn, TIGHTER * drawn.layer().fill().permeability());
        return Unknowns.leak(drawn, "sump").with(tighter, LEAKIER);
    }
}

package slabfield.desktop.viewmodel;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.advice.Advisor;
import slabfield.field.Progress;
import slabfield.model.Air;
import slabfield.model.BlockWall;
import slabfield.model.Display;
import slabfield.model.Fill;
import slabfield.model.Layer;
import slabfield.model.Opening;
import slabfield.model.OpeningKind;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Slab;
import slabfield.model.Source;
import slabfield.model.Stage;
import slabfield.model.StageKind;
import slabfield.model.SuctionPoint;
import slabfield.model.Target;
import slabfield.model.TestHole;
import slabfield.network.SlabSolver;

/** Makes the parts of a window without a window. */
public final class Bench {
    private Bench() {}

    /** 6 m by 4 m of sand with a sump, a joint, one block wall, one suction point and two holes, coarse. */
    public static Scenario house() {
        Fill sand = Fill.of(0.1, 1e-9, 0);
        Slab slab = new Slab("slab", corners(6, 4), List.of(), 0.1, true);
        Opening sump = new Opening(
                "sump",
                OpeningKind.SUMP,
                new Opening.Spot(new Point(5, 3), 0.2),
                new Opening.Orifice(0.01, 0.61),
                Seal.of(SealState.OPEN));
        BlockWall wall = new BlockWall(
                "north",
                new slabfield.model.Path(List.of(new Point(0, 4), new Point(6, 4))),
                2,
                Seal.of(SealState.OPEN),
                0.09,
                1e-5,
                1e-6,
                1e-6,
                1e-3,
                true,
                Optional.empty());
        SuctionPoint suction = new SuctionPoint(
                "S1", new Point(1, 2), Optional.empty(), new SuctionPoint.Pit(0.15), new Source.Pressure(-200), false);
        return new Scenario(
                "test house",
                "",
                "",
                new Display("Pa", "cfm", "m"),
                List.of(slab),
                new Layer(sand, List.of()),
                List.of(),
                List.of(),
                List.of(wall),
                List.of(sump),
                1e-8,
                2,
                Air.STANDARD,
                List.of(suction),
                List.of(new TestHole("T1", new Point(3, 2), "sand"), new TestHole("T2", new Point(5.5, 0.5), "")),
                List.of(),
                Target.COMMON_PRACTICE,
                0.25);
    }

    public static List<Point> corners(double x, double y) {
        return List.of(new Point(0, 0), new Point(x, 0), new Point(x, y), new Point(0, y));
    }

    public static Scenario withStages(Scenario s, List<Stage> stages) {
        return new Scenario(
                s.name(),
                s.teaches(),
                s.notes(),
                s.display(),
                s.slabs(),
                s.layer(),
                s.barriers(),
                s.drainTiles(),
                s.blockWalls(),
                s.openings(),
                s.soilLeakance(),
                s.outdoorPressure(),
                s.air(),
                s.suctionPoints(),
                s.testHoles(),
                stages,
                s.target(),
                s.cellSize());
    }

    public static Stage stage(String id, java.util.Map<String, Seal> seals, double t1) {
        return new Stage(
                id,
                StageKind.COMMUNICATION_TEST,
                seals,
                java.util.Map.of(),
                List.of(new Stage.HoleReading(
                        "T1",
                        OptionalDouble.of(0.4),
                        OptionalDouble.of(t1),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        "")),
                List.of(),
                "",
                "");
    }

    public static Workbench workbench(Scenario scenario) {
        return workbench(scenario, new Kept());
    }

    static Workbench workbench(Scenario scenario, Memory memory) {
        TaskRunner inLine = new InLineRunner();
        return new Workbench(
                List.of(new Example("house.json", scenario)),
                memory,
                SlabSolver::solve,
                Advisor::suggest,
                new Workbench.Runners(inLine, inLine, inLine, inLine));
    }

    /** Keeps tasks until the test lets them go. */
    public static final class Held implements TaskRunner {
        public final Deque<Runnable> waiting = new ArrayDeque<>();
        public int cancelled;

        @Override
        public <T> Task run(Work<T> work, Outcome<T> outcome) {
            waiting.add(() -> {
                try {
                    outcome.done(work.run(Progress.NONE));
                } catch (Exception reason) {
                    outcome.failed(reason);
                }
            });
            return () -> cancelled++;
        }

        /** Lets the one that waits longest finish. */
        public void finishOne() {
            waiting.remove().run();
        }
    }

    /** Remembers for the length of a test. */
    public static final class Kept implements Memory {
        final List<Path> files = new ArrayList<>();
        final java.util.Map<String, String> words = new java.util.HashMap<>();
        boolean accepted;

        @Override
        public List<Path> recent() {
            return List.copyOf(files);
        }

        @Override
        public void remember(Path file) {
            files.remove(file);
            files.add(0, file);
        }

        @Override
        public void forget(Path file) {
            files.remove(file);
        }

        @Override
        public boolean accepted() {
            return accepted;
        }

        @Override
        public void accept() {
            accepted = true;
        }

        @Override
        public Optional<String> kept(String word) {
            return Optional.ofNullable(words.get(word));
        }

        @Override
        public void keep(String word, String value) {
            words.put(word, value);
        }
    }
}

package slabfield.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Barrier;
import slabfield.model.Opening;
import slabfield.model.OpeningKind;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Source;
import slabfield.model.Stage;
import slabfield.model.StageKind;
import slabfield.model.TestHole;
import slabfield.model.Zone;

/**
 * A fit of 9 unknowns to 5 stages with 8 holes, and of all usual ones, which have an exponent of each opening and the fill beside some besides. The suite holds
 * the effort of the first; with {@code -Dslabfield.long=true} the time of both is measured and written to
 * validation/studies/fit-speed.md.
 */
class FitSpeedTest {
    private static final Path PAGE = Path.of("validation/studies/fit-speed.md");
    private static final int RUNS = 12;

    /** Zone, inertial loss, two walls' joints, two spots, soil and a suspected footing, each stage with another of them closed. */
    private static Scenario house(double cell) {
        Scenario s = MadeHouses.plain(10, 8, 2e-8, 2e-6, new Point(2.5, 3), new Source.Pressure(-250), cell);
        Zone zone = new Zone(
                "east",
                List.of(new Point(6, 0), new Point(10, 0), new Point(10, 8), new Point(6, 8)),
                slabfield.model.Fill.of(0.1, 1e-8, 0));
        List<TestHole> holes = new ArrayList<>();
        double[][] at = {{3.5, 3}, {5, 5}, {7.5, 3}, {9.5, 7.5}, {0.5, 7.5}, {9.5, 0.5}, {0.5, 0.5}, {6.5, 6.5}};
        for (double[] p : at) holes.add(new TestHole("H" + (holes.size() + 1), new Point(p[0], p[1]), ""));
        return s.withLayer(new slabfield.model.Layer(s.layer().fill(), List.of(zone)))
                .withOpenings(List.of(
                        line("west joint", 0, 0, 0, 8),
                        line("east joint", 10, 0, 10, 8),
                        spot("sump", 9, 7),
                        spot("pipe", 1, 6)))
                .withBarriers(List.of(new Barrier(
                        "footing",
                        new slabfield.model.Path(List.of(new Point(6, 0), new Point(6, 8))),
                        0.4,
                        2e-10,
                        false,
                        List.of())))
                .withTestHoles(holes);
    }

    private static Opening line(String id, double x0, double y0, double x1, double y1) {
        return new Opening(
                id,
                OpeningKind.JOINT,
                new Opening.Along(new slabfield.model.Path(List.of(new Point(x0, y0), new Point(x1, y1)))),
                new Opening.Crack(0.8e-3, 1),
                Seal.of(SealState.OPEN));
    }

    private static Opening spot(String id, double x, double y) {
        return new Opening(
                id,
                OpeningKind.SUMP,
                new Opening.Spot(new Point(x, y), 0.15),
                new Opening.Orifice(1e-3, 0.61),
                Seal.of(SealState.OPEN));
    }

    private static List<Parameter> unknowns(Scenario house) {
        return Unknowns.of(house).stream()
                .filter(p -> p.kind() != Parameter.Kind.EXPONENT && p.kind() != Parameter.Kind.FILL_BESIDE)
                .toList();
    }

    private static Scenario read(Scenario drawn) {
        List<Parameter> unknowns = unknowns(drawn);
        double[] truth = {0.5, -0.4, 0.4, 0.5, -0.5, 0.6, -0.6, 0.4, 0.3};
        Scenario house = HouseModel.house(drawn, unknowns, truth);
        Random random = new Random(4);
        List<Stage> stages = new ArrayList<>();
        for (String closed : List.of("", "west joint", "east joint", "sump", "pipe")) {
            Map<String, Seal> seals =
                    closed.isEmpty() ? Map.of() : Map.of(closed, new Seal(SealState.SEALED, 0.95, false));
            Stage empty = new Stage(
                    "stage " + closed, StageKind.COMMUNICATION_TEST, seals, Map.of(), List.of(), List.of(), "", "");
            Result.Solved solved = SyntheticHouses.solved(house.during(empty));
            List<Stage.HoleReading> readings = solved.holes().stream()
                    .map(h -> MadeHouses.reading(h.id(), h.fanOn().orElseThrow() + 0.3 * random.nextGaussian(), 0.3))
                    .toList();
            stages.add(new Stage(
                    empty.id(),
                    empty.kind(),
                    seals,
                    Map.of(),
                    readings,
                    List.of(new Stage.SystemReading(
                            "S", OptionalDouble.of(solved.flows().exhaust()), OptionalDouble.empty(), "")),
                    "",
                    ""));
        }
        return drawn.withStages(stages);
    }

    @Test
    void nineUnknownsFromFiveStages() throws Exception {
        Scenario house = read(house(0.1));
        List<Parameter> unknowns = unknowns(house);
        assertThat(unknowns).hasSize(9);
        Fitted fit = HouseFit.fit(house, unknowns, Progress.NONE);
        assertThat(fit.converged()).isTrue();
        // the readings carry noise: what they fix is found within its range
        int fill = fit.indexOf("fill");
        assertThat(fit.interval(fill, 0.99).holds(unknowns.get(fill).prior().value(0.5)))
                .isTrue();
        assertThat(fit.iterations()).isLessThan(25);
        assertThat(fit.solves()).isLessThan(150);
        if (Boolean.getBoolean("slabfield.long")) write(measure(house, unknowns), measure(house, Unknowns.of(house)));
    }

    private static String measure(Scenario house, List<Parameter> unknowns) throws Exception {
        double[] seconds = new double[RUNS];
        Optional<Fitted> last = Optional.empty();
        for (int k = 0; k < RUNS; k++) {
            long start = System.nanoTime();
            last = Optional.of(HouseFit.fit(house, unknowns, Progress.NONE));
            seconds[k] = (System.nanoTime() - start) / 1e9;
        }
        double first = seconds[0];
        Arrays.sort(seconds);
        return String.format(
                Locale.ROOT,
                "| %d | %.2f s | %.2f s | %.2f s | %d | %d |%n",
                unknowns.size(),
                first,
                seconds[RUNS / 2],
                seconds[0],
                last.orElseThrow().iterations(),
                last.orElseThrow().solves());
    }

    private static void write(String sought, String usual) throws Exception {
        Files.createDirectories(PAGE.getParent());
        Files.writeString(
                PAGE,
                String.format(
                                Locale.ROOT,
                                "# How long a fit takes%n%n5 stages, 8 holes and a flow in each, a slab of 10 m by 8 m on cells of 0.1 m,"
                                        + " %d processors. Without an exponent of each opening and the fill beside"
                                        + " those of one place the usual unknowns are 9. All were measured last, on a machine that was warm.%n%n| unknowns | first run | median of %d |"
                                        + " least | steps | fields solved |%n|---|---|---|---|---|---|%n",
                                Runtime.getRuntime().availableProcessors(),
                                RUNS)
                        + sought
                        + usual);
    }
}

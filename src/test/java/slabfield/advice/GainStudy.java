package slabfield.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import slabfield.equipment.FanClasses;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.fit.Ensemble;
import slabfield.fit.Fitted;
import slabfield.fit.HouseFit;
import slabfield.fit.NotFitted;
import slabfield.fit.Parameter;
import slabfield.fit.Unknowns;
import slabfield.model.Air;
import slabfield.model.Display;
import slabfield.model.Fill;
import slabfield.model.Layer;
import slabfield.model.Opening;
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
import slabfield.model.Zone;
import slabfield.network.SlabSolver;

/**
 * Houses whose truth is known, to see whether what a suggestion promises is kept. Each house is drawn with usual values; its
 * truth has fill and leaks drawn from the priors, another law for both (inertial loss by Ward, 1964; leaks of exponent 0.65
 * where 0.75 is drawn), fill that differs between six blocks by factors of about 1.5, and cells of half the
 * size. It is read with the errors of
 * ordinary meters, fitted, and asked for a suggestion; the best one is then done in the truth.
 */
final class GainStudy {
    private static final double CELL = 0.3;
    private static final double FILL = 5e-9;
    private static final double DRAWN_EXPONENT = 0.75;
    private static final double TRUE_EXPONENT = 0.65;
    /** Pressure at which both laws pass the same, about that of the holes [Pa]. */
    private static final double SAME_AT = 20;

    private static final double WARD = 0.55;
    /** Standard deviation of the logarithm of a block's permeability. */
    private static final double UNEVEN = 0.4;

    private static final long SEEDS = 7919;
    private static final double UNREST = 0.5;
    private static final double FLOW_ERROR = 0.1;

    /** One house: its best suggestion, and the gain that it has in the truth [Pa]. */
    record Outcome(int house, Suggestion suggestion, double kept) {
        Range promised() {
            return suggestion.odds().orElseThrow().gain();
        }

        boolean held() {
            return promised().holds(kept);
        }
    }

    private GainStudy() {}

    /** Tries one house; empty where it could not be fitted, or its truth has no solution with the suggestion done. */
    static Optional<Outcome> house(int number) {
        Random random = new Random(SEEDS * number + 13);
        double width = 7 + 4 * random.nextDouble(), depth = 6 + 3 * random.nextDouble();
        Scenario drawn = drawn(width, depth, random);
        Scenario truth = truth(drawn, width, depth, UNEVEN, random);
        try {
            Fitted fitted = HouseFit.fit(read(drawn, truth, random), Progress.NONE);
            Houses houses = Houses.of(Ensemble.of(fitted, Advisor.USUAL_HOUSES, number, Progress.NONE));
            Suggestion best = Advisor.suggest(houses, 1, Progress.NONE).get(0);
            double before = Basements.solve(truth).coverage().weakest();
            Result done = SlabSolver.solve(best.measure().apply(truth), SlabSolver.Extent.FAN_ON_ONLY, Progress.NONE);
            return done instanceof Result.Solved after
                    ? Optional.of(new Outcome(number, best, after.coverage().weakest() - before))
                    : Optional.empty();
        } catch (NotFitted e) {
            return Optional.empty();
        }
    }

    private static Scenario drawn(double width, double depth, Random random) {
        Point pit = new Point(width * (0.2 + 0.6 * random.nextDouble()), depth * (0.2 + 0.6 * random.nextDouble()));
        Point drain = new Point(width * (0.1 + 0.8 * random.nextDouble()), depth * (0.1 + 0.8 * random.nextDouble()));
        Source fan =
                new Source.Fan(FanClasses.INVENTED.get(1).curve(), List.of(new Source.Pipe(0.1, 6, 3, 1.5, 1.5e-6)), 0);
        return new Scenario(
                "made",
                "",
                "",
                Display.SI,
                List.of(new Slab("slab", Basements.rectangle(0, 0, width, depth), List.of(), 0.1, true)),
                new Layer(Fill.of(0.1, FILL, 0), List.of()),
                List.of(),
                List.of(),
                List.of(),
                List.of(
                        leak("joint", new Opening.Perimeter("slab"), 1.5e-4, DRAWN_EXPONENT),
                        leak("drain", new Opening.Spot(drain, 0.1), 1e-4, DRAWN_EXPONENT)),
                1e-9,
                0,
                Air.STANDARD,
                List.of(new SuctionPoint("S1", pit, Optional.empty(), new SuctionPoint.Pit(0.15), fan, false)),
                holes(width, depth),
                List.of(),
                Target.COMMON_PRACTICE,
                CELL);
    }

    private static List<TestHole> holes(double width, double depth) {
        double[][] parts = {{0.12, 0.15}, {0.5, 0.1}, {0.88, 0.2}, {0.1, 0.85}, {0.5, 0.9}, {0.9, 0.85}, {0.5, 0.5}};
        List<TestHole> out = new ArrayList<>();
        for (double[] p : parts)
            out.add(new TestHole("H" + (out.size() + 1), new Point(p[0] * width, p[1] * depth), ""));
        return out;
    }

    private static Opening leak(String id, Opening.Place place, double at20, double exponent) {
        Opening plain = Basements.leak(id, place, 1);
        return new Opening(
                id,
                plain.kind(),
                place,
                new Opening.PowerLaw(at20 * SAME_AT / Math.pow(SAME_AT, exponent) / SAME_AT, exponent),
                Seal.of(SealState.OPEN));
    }

    /** Values from the priors of what is unknown, then the other laws, the blocks and the finer cells. */
    private static Scenario truth(Scenario drawn, double width, double depth, double unevenness, Random random) {
        Scenario house = drawn;
        for (Parameter p : Unknowns.of(drawn)) {
            double deviations = Math.max(-3, Math.min(3, random.nextGaussian()));
            house = p.with(house, p.prior().value(deviations));
        }
        double k = house.layer().fill().permeability();
        return house.withLayer(new Layer(fill(k), blocks(k, width, depth, unevenness, random)))
                .withOpenings(house.openings().stream().map(GainStudy::otherLaw).toList())
                .withCellSize(CELL / 2);
    }

    /** Six parts of the slab, each with a fill of its own. */
    private static List<Zone> blocks(double k, double width, double depth, double unevenness, Random random) {
        List<Zone> out = new ArrayList<>();
        for (int j = 0; j < 2; j++)
            for (int i = 0; i < 3; i++) {
                List<Point> corners =
                        Basements.rectangle(i * width / 3, j * depth / 2, (i + 1) * width / 3, (j + 1) * depth / 2);
                out.add(new Zone(
                        "block " + out.size(), corners, fill(k * Math.exp(unevenness * random.nextGaussian()))));
            }
        return out;
    }

    private static Fill fill(double k) {
        return Fill.of(0.1, k, WARD / Math.sqrt(k));
    }

    private static Opening otherLaw(Opening o) {
        double same = Math.pow(SAME_AT, DRAWN_EXPONENT - TRUE_EXPONENT);
        double c = ((Opening.PowerLaw) o.passage()).coefficient();
        return new Opening(o.id(), o.kind(), o.place(), new Opening.PowerLaw(c * same, TRUE_EXPONENT), o.seal());
    }

    /** Two stages: as it is, and with the drain covered. */
    private static Scenario read(Scenario drawn, Scenario truth, Random random) {
        Seal cover = Seal.of(SealState.COVERED);
        return drawn.withStages(List.of(
                stage("as found", Map.of(), truth, random),
                stage("drain covered", Map.of("drain", cover), truth.withSeal("drain", cover), random)));
    }

    private static Stage stage(String id, Map<String, Seal> seals, Scenario truth, Random random) {
        Result.Solved solved = Basements.solve(truth);
        List<Stage.HoleReading> holes = new ArrayList<>();
        for (Result.Hole h : solved.holes()) {
            double seen = Math.rint(10 * (h.fanOn().orElseThrow() + UNREST * random.nextGaussian())) / 10;
            holes.add(new Stage.HoleReading(
                    h.id(),
                    OptionalDouble.empty(),
                    OptionalDouble.of(seen),
                    OptionalDouble.of(UNREST),
                    OptionalDouble.of(0.1),
                    ""));
        }
        double flow = solved.flows().exhaust() * (1 + FLOW_ERROR * random.nextGaussian());
        Stage.SystemReading system = new Stage.SystemReading("S1", OptionalDouble.of(flow), OptionalDouble.empty(), "");
        return new Stage(id, StageKind.COMMUNICATION_TEST, seals, Map.of(), holes, List.of(system), "", "");
    }

    static final String HEADER = "house,suggestion,gain_Pa,low_Pa,high_Pa,true_gain_Pa,held";

    /** A house's row under {@link #HEADER}. */
    static String row(Outcome o) {
        return String.format(
                Locale.ROOT,
                "%d,%s,%.2f,%.2f,%.2f,%.2f,%s",
                o.house(),
                o.suggestion().measure().words().replace("\"", "").replace(",", ";"),
                o.suggestion().gain(),
                o.promised().low(),
                o.promised().high(),
                o.kept(),
                o.held() ? "yes" : "no");
    }
}

package slabfield.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Air;
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
import slabfield.model.Stage;
import slabfield.model.StageKind;
import slabfield.model.SuctionPoint;
import slabfield.model.Target;
import slabfield.model.TestHole;
import slabfield.model.Zone;
import slabfield.network.SlabSolver;

/**
 * Houses whose truth is known, with readings made from it. The truth is on finer cells than the fit's and under other laws:
 * its fill has patches and an inertial part, its joint and sump leak by power laws, where the drawn house has even fill after
 * Darcy, a crack and an orifice. Values are drawn from what the fit believes beforehand.
 *
 * @param drawn as the technician draws it, with stages and readings
 * @param truth that was read
 */
record SyntheticHouses(Scenario drawn, Scenario truth) {
    static final double FINE = 0.1, COARSE = 0.2;
    private static final double FILL = 2e-8, SOIL = 1e-6, SUMP_AREA = 1.5e-3, JOINT_WIDTH = 0.6e-3, THICKNESS = 0.1;
    private static final double NOISE = 0.5, FLOW_ERROR = 0.1, PATCHES = 0.85, INERTIAL = 1500, HELD = 250;
    private static final int HOLES = 6;

    static SyntheticHouses of(long seed) {
        return of(seed, PATCHES);
    }

    /**
     * What even fill leaves of one house: that which comes nearest to its vacuums, with the leaks as they are.
     *
     * @param fall of each hole from the suction, ln(p0/p) of the truth; all holes as drawn, then all with the sump closed
     * @param vacuums how far the even fill's are from the truth's, as a part of them, in the same order
     * @param flows ln of the truth's exhaust over the even fill's: as drawn, with the sump closed, and finished
     */
    record Left(double[] fall, double[] vacuums, double[] flows) {
        /** A hole's part of the vacuum over (ln(p0/p))^power, falls below the least counting as that. */
        double scaled(int i, double power) {
            return vacuums[i] / Math.pow(Math.max(NoiseModel.LEAST_FALL, fall[i]), power);
        }

        static Left of(long seed) {
            Scenario truth = SyntheticHouses.of(seed, PATCHES).truth().withCellSize(COARSE);
            Scenario even = SyntheticHouses.of(seed, 0).truth().withCellSize(COARSE);
            double[] uneven = logarithms(truth);
            double nearest = new BrentOptimizer(1e-6, 1e-3)
                    .optimize(
                            new MaxEval(100),
                            GoalType.MINIMIZE,
                            new SearchInterval(-1.5, 1.5),
                            new UnivariateObjectiveFunction(x -> missed(uneven, logarithms(filled(even, Math.exp(x))))))
                    .getPoint();
            Scenario found = filled(even, Math.exp(nearest));
            double[] predicted = logarithms(found);
            return new Left(
                    Arrays.stream(uneven).map(p -> Math.log(HELD) - p).toArray(),
                    IntStream.range(0, uneven.length)
                            .mapToDouble(i -> Math.expm1(predicted[i] - uneven[i]))
                            .toArray(),
                    Stream.<UnaryOperator<Scenario>>of(
                                    UnaryOperator.identity(),
                                    h -> h.withSeal("sump", closed()),
                                    SyntheticHouses::finished)
                            .mapToDouble(h -> Math.log(exhaust(h.apply(truth)) / exhaust(h.apply(found))))
                            .toArray());
        }

        private static double exhaust(Scenario house) {
            return solved(house).flows().exhaust();
        }
    }

    /** That of so many houses. */
    static List<Left> left(long from, int houses) {
        return LongStream.range(from, from + houses)
                .parallel()
                .mapToObj(Left::of)
                .toList();
    }

    /** The model's own error of a vacuum that has fallen to 1/e of the suction, as a part of it: what even fill leaves, root of the mean square over all holes and both stages. */
    static double modelError(List<Left> houses, double power) {
        return Math.sqrt(houses.stream()
                .flatMapToDouble(l -> IntStream.range(0, l.vacuums().length).mapToDouble(i -> l.scaled(i, power)))
                .map(r -> r * r)
                .average()
                .orElseThrow());
    }

    /** Part of the square of that error that is the same at one hole in both stages. */
    static double modelErrorShared(List<Left> houses) {
        double both = 0, all = 0;
        for (Left l : houses) {
            for (int h = 0; h < HOLES; h++) {
                double a = l.scaled(h, NoiseModel.POWER), b = l.scaled(h + HOLES, NoiseModel.POWER);
                both += a * b;
                all += (a * a + b * b) / 2;
            }
        }
        return both / all;
    }

    /** What that error at two holes has in common where they lie so far apart [m], over its mean square. */
    static double modelErrorTogether(long from, List<Left> houses, double least, double most) {
        double both = 0, all = 0;
        int pairs = 0;
        for (int k = 0; k < houses.size(); k++) {
            Left l = houses.get(k);
            List<TestHole> holes = of(from + k).drawn().testHoles();
            for (int h = 0; h < HOLES; h++) {
                double r = l.scaled(h, NoiseModel.POWER);
                all += r * r / HOLES;
                for (int g = 0; g < h; g++) {
                    double d = holes.get(g).at().distanceTo(holes.get(h).at());
                    if (d < least || d >= most) continue;
                    both += r * l.scaled(g, NoiseModel.POWER);
                    pairs++;
                }
            }
        }
        return both / pairs / (all / houses.size());
    }

    private static double missed(double[] readings, double[] predicted) {
        double sum = 0;
        for (int i = 0; i < readings.length; i++)
            sum += Math.expm1(predicted[i] - readings[i]) * Math.expm1(predicted[i] - readings[i]);
        return sum;
    }

    private static Scenario filled(Scenario house, double multiple) {
        Fill f = house.layer().fill();
        return house.withLayer(new Layer(Fill.of(THICKNESS, multiple * f.permeability(), f.inertial()), List.of()));
    }

    /** Logarithms of the vacuums at all holes, as drawn and with the sump closed. */
    private static double[] logarithms(Scenario house) {
        Scenario coarse = house.withCellSize(COARSE);
        return Stream.of(coarse, coarse.withSeal("sump", closed()))
                .flatMap(h -> solved(h).holes().stream())
                .mapToDouble(h -> Math.log(-h.fanOn().orElseThrow()))
                .toArray();
    }

    private static SyntheticHouses of(long seed, double unevenness) {
        Random random = new Random(seed);
        double width = 7 + 3 * random.nextDouble(), height = 5 + 2 * random.nextDouble();
        List<TestHole> holes = IntStream.rangeClosed(1, HOLES)
                .mapToObj(i -> new TestHole("H" + i, inside(random, width, height), ""))
                .toList();
        Point pit = inside(random, width / 2, height), sump = new Point(width - 0.8, 0.7);
        Scenario plain = new Scenario(
                "synthetic " + seed,
                "",
                "",
                Display.SI,
                List.of(new Slab("slab", MadeHouses.rectangle(width, height), List.of(), 0.1, true)),
                new Layer(Fill.of(THICKNESS, FILL, 0), List.of()),
                List.of(),
                List.of(),
                List.of(),
                List.of(
                        sump(sump, new Opening.Orifice(SUMP_AREA, 0.61)),
                        joint(width, height, new Opening.Crack(JOINT_WIDTH, 1))),
                SOIL,
                0,
                Air.STANDARD,
                List.of(new SuctionPoint(
                        "S", pit, Optional.empty(), new SuctionPoint.Pit(0.15), new Source.Pressure(-HELD), false)),
                holes,
                List.of(),
                Target.COMMON_PRACTICE,
                COARSE);
        Scenario truth = truth(plain, random, width, height, sump, unevenness);
        List<Stage> stages = List.of(
                read(truth, "open", Map.of(), random), read(truth, "sump closed", Map.of("sump", closed()), random));
        return new SyntheticHouses(plain.withStages(stages), truth);
    }

    private static Seal closed() {
        return new Seal(SealState.SEALED, 0.98, false);
    }

    /** What is done in the end: sump and joint are sealed. Nobody has read the house in that state. */
    static Scenario finished(Scenario house) {
        return house.withSeal("sump", closed()).withSeal("joint", new Seal(SealState.SEALED, 0.9, false));
    }

    private static Scenario truth(
            Scenario plain, Random random, double width, double height, Point sump, double unevenness) {
        double k = FILL * Math.exp(Math.log(3) * normal(random));
        List<Zone> patches = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            Point c = inside(random, width, height);
            double r = 0.5 + random.nextDouble();
            patches.add(new Zone(
                    "patch " + i,
                    List.of(
                            new Point(c.x() - r, c.y() - r),
                            new Point(c.x() + r, c.y() - r),
                            new Point(c.x() + r, c.y() + r),
                            new Point(c.x() - r, c.y() + r)),
                    Fill.of(THICKNESS, k * Math.exp(unevenness * random.nextGaussian()), INERTIAL)));
        }
        double leak = Math.exp(Math.log(4) * normal(random)), slit = Math.exp(Math.log(4) * normal(random));
        double atTen = 0.61 * SUMP_AREA * leak * Math.sqrt(2 * 10 / 1.204);
        double perimeter = 2 * (width + height);
        double slitAtTen = slit * perimeter * 10 * Math.pow(JOINT_WIDTH, 3) / (12 * 1.81e-5 * 0.1);
        return plain.withCellSize(FINE)
                .withLayer(new Layer(Fill.of(THICKNESS, k, INERTIAL), patches))
                .withSoilLeakance(SOIL * Math.exp(Math.log(10) * Math.min(1, normal(random))))
                .withOpenings(List.of(
                        sump(sump, new Opening.PowerLaw(atTen / Math.pow(10, 0.55), 0.55)),
                        joint(width, height, new Opening.PowerLaw(slitAtTen / Math.pow(10, 0.8), 0.8))));
    }

    private static double normal(Random random) {
        return Math.max(-2, Math.min(2, random.nextGaussian()));
    }

    private static Point inside(Random random, double width, double height) {
        return new Point(0.4 + (width - 0.8) * random.nextDouble(), 0.4 + (height - 0.8) * random.nextDouble());
    }

    private static Opening sump(Point at, Opening.Passage passage) {
        return new Opening("sump", OpeningKind.SUMP, new Opening.Spot(at, 0.2), passage, Seal.of(SealState.OPEN));
    }

    private static Opening joint(double width, double height, Opening.Passage passage) {
        Path ring = new Path(List.of(
                new Point(0, 0), new Point(width, 0), new Point(width, height), new Point(0, height), new Point(0, 0)));
        return new Opening("joint", OpeningKind.JOINT, new Opening.Along(ring), passage, Seal.of(SealState.OPEN));
    }

    private static Stage read(Scenario truth, String id, Map<String, Seal> seals, Random random) {
        Stage empty = new Stage(id, StageKind.COMMUNICATION_TEST, seals, Map.of(), List.of(), List.of(), "", "");
        Result.Solved solved = solved(truth.during(empty));
        List<Stage.HoleReading> holes = solved.holes().stream()
                .map(h -> new Stage.HoleReading(
                        h.id(),
                        OptionalDouble.empty(),
                        OptionalDouble.of(
                                Math.rint((h.fanOn().orElseThrow() + NOISE * random.nextGaussian()) * 10) / 10),
                        OptionalDouble.of(NOISE),
                        OptionalDouble.of(0.1),
                        ""))
                .toList();
        double flow = solved.flows().exhaust() * (1 + FLOW_ERROR * random.nextGaussian());
        return new Stage(
                id,
                StageKind.COMMUNICATION_TEST,
                seals,
                Map.of(),
                holes,
                List.of(new Stage.SystemReading("S", OptionalDouble.of(flow), OptionalDouble.empty(), "")),
                "",
                "");
    }

    static Result.Solved solved(Scenario house) {
        return (Result.Solved) SlabSolver.solve(house, SlabSolver.Extent.FAN_ON_ONLY, Progress.NONE);
    }
}

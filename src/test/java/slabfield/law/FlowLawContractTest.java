package slabfield.law;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What every flow law promises to the solver, whatever it stands for. */
class FlowLawContractTest {
    private static final double MU = 1.81e-5;
    private static final double RHO = 1.204;
    private static final double LINE = 1e-3;

    /** Central differences with a step of 1e-5 are good to about 1e-10 by truncation and 1e-10 by rounding. */
    private static final double SLOPE_TOLERANCE = 1e-7;
    /** Stated accuracy of the flow. */
    private static final double FLOW_TOLERANCE = 1e-11;

    private static final double[] FALLING_FASTER = {400, 300, 180, 20};
    private static final double[] FLAT_TAIL = {400, 60, 40, 39};
    private static final double[] CLIFF = {400, 398, 100, 98};

    private static final double[] SIZES = {
        1e-12, 1e-9, 1e-6, 1e-4, 9e-4, 1.5e-3, 3e-3, 1e-2, 0.1, 0.3, 1, 2, 4, 10, 30, 50, 100, 150, 200, 300, 420, 1000,
        1e4, 1e6
    };

    /**
     * A law beside its stated pressure drop.
     *
     * @param drop difference that belongs to a flow above 0, written down again from the law's formula
     * @param kinks differences above 0 at which the slope jumps
     * @param odd whether flow(-d) = -flow(d), which makes flow(0) = 0
     * @param scale difference on which the law bends near 0 [Pa]
     */
    private record Case(String name, FlowLaw law, DoubleUnaryOperator drop, double[] kinks, boolean odd, double scale) {
        @Override
        public String toString() {
            return name;
        }
    }

    static Stream<Case> laws() {
        return Stream.of(
                odd("conductance", new Conductance(3e-5), q -> q / 3e-5),
                quadratic("quadratic", 2e4, 5e6),
                quadratic("quadratic, hardly viscous", 1e-3, 5e6),
                quadratic("quadratic, viscous only", 2e4, 0),
                odd("quadratic, inertial only", new QuadraticResistance(0, 5e6), q -> squareOrLine(5e6, q), LINE),
                quadratic("1 mm joint", QuadraticResistance.crack(1e-3, 0.1, 36, 0, MU, RHO)),
                quadratic("0.05 mm crack", QuadraticResistance.crack(5e-5, 0.1, 1, 2, MU, RHO)),
                quadratic(
                        "crack behind",
                        QuadraticResistance.crack(3e-3, 0.1, 5, 1, MU, RHO).behind(1e3)),
                orifice("hole", Orifice.of(1.96e-3, 0.61, RHO)),
                orifice("hole behind a little", Orifice.of(1.96e-3, 0.61, RHO).behind(10)),
                orifice("hole behind much", Orifice.of(1.96e-3, 0.61, RHO).behind(1e6)),
                power("power 0.5", new PowerLaw(2e-3, 0.5, 0)),
                power("power 0.65", new PowerLaw(2e-3, 0.65, 0)),
                power("power 1", new PowerLaw(2e-3, 1, 0)),
                power("power 0.5 behind", new PowerLaw(2e-3, 0.5, 0).behind(300)),
                power("power 0.65 behind a little", new PowerLaw(2e-3, 0.65, 0).behind(1e-3)),
                power("power 0.65 behind much", new PowerLaw(2e-3, 0.65, 0).behind(1e7)),
                power("power 1 behind", new PowerLaw(2e-3, 1, 0).behind(300)),
                odd(
                        "hole behind coarse stone",
                        new InSeries(new QuadraticResistance(300, 2e6), Orifice.of(1.96e-3, 0.61, RHO)),
                        q -> 300 * q + 2e6 * q * q + squareOrLine(RHO / (2 * Math.pow(0.61 * 1.96e-3, 2)), q)),
                odd(
                        "next to no leak behind coarse stone",
                        new InSeries(new QuadraticResistance(300, 2e6), new PowerLaw(1e4, 1, 0)),
                        q -> 300 * q + 2e6 * q * q + q / 1e4),
                tile("tile 0.1 m", TileFriction.corrugated(0.1016, 0.017, 0.1, MU, RHO)),
                tile("tile 30 m", TileFriction.corrugated(0.076, 0.016, 30, MU, RHO)),
                fan("fan and pipe", FALLING_FASTER, 0, 0.1023, 9.144, 4, 1.5),
                fan("fan without loss", FALLING_FASTER, 0, 1, 0, 0, 0),
                fan("fan and fittings only", FALLING_FASTER, 0, 0.0779, 0, 0, 1.5),
                fan("fan curve that starts late", FALLING_FASTER, 0.015, 0.0779, 12, 6, 1.5),
                fan("fan curve with a flat tail", FLAT_TAIL, 0, 0.0779, 12, 6, 1.5),
                fan("fan curve with a flat tail, no loss", FLAT_TAIL, 0, 1, 0, 0, 0),
                fan("fan curve with a cliff, where plain Newton steps cycle", CLIFF, 0, 0.1023, 9.144, 4, 1.5));
    }

    static Stream<Case> oddLaws() {
        return laws().filter(Case::odd);
    }

    @ParameterizedTest
    @MethodSource("laws")
    void slopeIsTheDerivativeOfTheFlow(Case c) {
        for (double d : differences()) {
            double h = 1e-5 * Math.max(Math.abs(d), Math.max(c.scale, 1e-15));
            if (Arrays.stream(c.kinks).anyMatch(k -> Math.abs(Math.abs(d) - Math.abs(k)) <= h)) continue;
            double expected = (c.law.flow(d + h) - c.law.flow(d - h)) / (d + h - (d - h));
            assertThat(c.law.slope(d) / expected).as("slope at %s Pa", d).isCloseTo(1, within(SLOPE_TOLERANCE));
        }
    }

    @ParameterizedTest
    @MethodSource("laws")
    void slopeIsFiniteAndAboveZero(Case c) {
        for (double d : differences())
            assertThat(c.law.slope(d)).as("at %s Pa", d).isFinite().isPositive();
        for (double k : c.kinks)
            assertThat(c.law.slope(k)).as("at the kink %s Pa", k).isFinite().isPositive();
    }

    @ParameterizedTest
    @MethodSource("laws")
    void flowRisesStrictly(Case c) {
        double last = Double.NEGATIVE_INFINITY;
        for (double d : rising()) {
            double flow = c.law.flow(d);
            assertThat(flow).as("at %s Pa", d).isFinite().isGreaterThan(last);
            last = flow;
        }
    }

    @ParameterizedTest
    @MethodSource("laws")
    void flowInvertsTheStatedDrop(Case c) {
        for (double d : rising()) {
            double flow = c.law.flow(d);
            if (c.odd && flow <= 0) continue;
            double slack = FLOW_TOLERANCE * Math.max(Math.abs(d), c.scale);
            assertThat(c.drop.applyAsDouble(flow))
                    .as("drop at the flow of %s Pa", d)
                    .isCloseTo(d, within(slack));
        }
    }

    @ParameterizedTest
    @MethodSource("oddLaws")
    void oddLawsLetNothingThroughWithoutADifference(Case c) {
        assertThat(c.law.flow(0)).isZero();
        for (double d : SIZES) assertThat(c.law.flow(-d)).isEqualTo(-c.law.flow(d));
    }

    @ParameterizedTest
    @MethodSource("laws")
    void flowIsContinuousWhereTheRegimeChanges(Case c) {
        for (double k : c.kinks) {
            double left = k - 1e-12 * Math.abs(k);
            double right = k + 1e-12 * Math.abs(k);
            double most = (c.law.slope(left) + c.law.slope(right)) * (right - left);
            double rounding = 1e-12 * Math.abs(c.law.flow(k));
            assertThat(c.law.flow(right)).as("flow past %s Pa", k).isCloseTo(c.law.flow(left), within(most + rounding));
        }
    }

    private static double[] differences() {
        return DoubleStream.concat(DoubleStream.of(0), Arrays.stream(SIZES).flatMap(d -> DoubleStream.of(-d, d)))
                .toArray();
    }

    private static double[] rising() {
        return Arrays.stream(differences()).sorted().toArray();
    }

    private static Case odd(String name, FlowLaw law, DoubleUnaryOperator drop, double... kinks) {
        return new Case(name, law, drop, kinks, true, 0);
    }

    private static Case quadratic(String name, double a, double b) {
        return quadratic(name, new QuadraticResistance(a, b));
    }

    private static Case quadratic(String name, QuadraticResistance law) {
        return odd(name, law, q -> law.linear() * q + law.quadratic() * q * q);
    }

    private static Case orifice(String name, Orifice law) {
        double kink = LINE + law.series() * Math.sqrt(LINE / law.quadratic());
        return odd(name, law, q -> law.series() * q + squareOrLine(law.quadratic(), q), kink);
    }

    private static double squareOrLine(double b, double q) {
        return Math.max(b * q * q, Math.min(LINE, Math.sqrt(b * LINE) * q));
    }

    private static Case power(String name, PowerLaw law) {
        double atKink = law.coefficient() * Math.pow(LINE, law.exponent());
        DoubleUnaryOperator own =
                q -> q < atKink ? LINE * q / atKink : Math.pow(q / law.coefficient(), 1 / law.exponent());
        return odd(name, law, q -> law.series() * q + own.applyAsDouble(q), LINE + law.series() * atKink);
    }

    private static Case tile(String name, TileFriction law) {
        double a = law.laminar();
        double b = law.turbulent();
        return odd(name, law, q -> Math.max(a * q, b * q * q), a * a / b);
    }

    private static Case fan(
            String name, double[] rises, double firstFlow, double diameter, double length, int ells, double fittings) {
        double[] flows = {firstFlow, 0.03, 0.05, 0.07};
        FanAndPipe law = new FanAndPipe(flows, rises, diameter, length, ells, fittings, 1.5e-6, MU, RHO);
        DoubleUnaryOperator drop = q -> law.lossAt(q) - law.riseAt(q);
        double flowPerReynolds = Math.PI / 4 * diameter * MU / RHO;
        double[] kinks = DoubleStream.of(
                        0.03,
                        0.05,
                        2300 * flowPerReynolds,
                        4000 * flowPerReynolds,
                        -2300 * flowPerReynolds,
                        -4000 * flowPerReynolds)
                .map(drop)
                .toArray();
        return new Case(name, law, drop, kinks, false, 100);
    }
}

package slabfield.readings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.field.Result;
import slabfield.law.AirState;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Stage;

/**
 * Readings of one stage held against the prediction for the house as it stood then.
 *
 * @param stage id of the stage
 * @param holes in the order of the stage's readings
 * @param systems flow and suction at suction points, in the stage's order
 * @param fit how well all holes agree
 * @param findings what is odd about the readings themselves
 */
public record Comparison(
        String stage, List<HoleComparison> holes, List<SystemComparison> systems, Fit fit, List<Finding> findings) {

    /** What a reading says about the prediction. */
    public enum Verdict {
        AS_EXPECTED("as expected"),
        /** Less vacuum, or less flow. */
        WEAKER("weaker than expected"),
        /** More vacuum, or more flow. */
        STRONGER("stronger than expected"),
        /** The band is so wide that no vacuum at all would count as expected too. */
        CANNOT_TELL("can't tell"),
        NOTHING_TO_COMPARE("nothing to compare");

        private final String words;

        Verdict(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * One hole. Where fan on and fan off were both read, their difference is what is compared, so that wind and stack, which
     * the prediction does not know, cancel.
     *
     * @param measured with the fan on; empty where not read [Pa]
     * @param predicted with the fan on; empty where the layer has no pressure [Pa]
     * @param measuredOff with the fan off [Pa]
     * @param predictedOff with the fan off [Pa]
     * @param noise standard error of what is compared [Pa]
     * @param band half-width within which measured and predicted count as equal [Pa]
     */
    public record HoleComparison(
            String hole,
            Point at,
            OptionalDouble measured,
            OptionalDouble predicted,
            OptionalDouble measuredOff,
            OptionalDouble predictedOff,
            double noise,
            double band,
            Verdict verdict) {
        /** True where on minus off is compared, and not the reading with the fan on. */
        public boolean byPair() {
            return measured.isPresent() && predicted.isPresent() && measuredOff.isPresent() && predictedOff.isPresent();
        }

        /** What was read: on minus off, or with the fan on [Pa]. */
        public OptionalDouble found() {
            return byPair() ? OptionalDouble.of(measured.getAsDouble() - measuredOff.getAsDouble()) : measured;
        }

        /** What was to be expected of {@link #found} [Pa]. */
        public OptionalDouble expected() {
            return byPair() ? OptionalDouble.of(predicted.getAsDouble() - predictedOff.getAsDouble()) : predicted;
        }

        /** Found minus expected; above 0 where there is less vacuum than predicted [Pa]. */
        public OptionalDouble difference() {
            return found().isPresent() && expected().isPresent()
                    ? OptionalDouble.of(found().getAsDouble() - expected().getAsDouble())
                    : OptionalDouble.empty();
        }
    }

    /**
     * Flow [m3/s] and pressure [Pa] at one suction point, each with half the width of its band.
     *
     * @param flowRead as it follows from what was read
     * @param measuredPressure in the pit, or else in the riser
     */
    public record SystemComparison(
            String suctionPoint,
            Optional<MeasuredFlow> flowRead,
            double predictedFlow,
            double flowBand,
            Verdict flowVerdict,
            OptionalDouble measuredPressure,
            double predictedPressure,
            double pressureBand,
            Verdict pressureVerdict) {
        /** Best value of the flow; empty where none was read [m3/s]. */
        public OptionalDouble measuredFlow() {
            return flowRead.isPresent() ? OptionalDouble.of(flowRead.get().flow()) : OptionalDouble.empty();
        }
    }

    /**
     * How well the holes of a stage agree with the prediction; all empty without readings.
     *
     * @param bias mean difference [Pa]
     * @param scatter root mean square of the differences [Pa]
     * @param chiSquare mean of (difference / noise)^2: about 1 where meter and unrest explain all, above it where the
     *     prediction is wrong
     */
    public record Fit(OptionalDouble bias, OptionalDouble scatter, OptionalDouble chiSquare) {
        static Fit of(List<HoleComparison> holes) {
            double sum = 0, squares = 0, chi = 0;
            int n = 0;
            for (HoleComparison h : holes) {
                if (h.difference().isEmpty()) continue;
                double d = h.difference().getAsDouble();
                sum += d;
                squares += d * d;
                chi += d * d / (h.noise() * h.noise());
                n++;
            }
            OptionalDouble none = OptionalDouble.empty();
            if (n == 0) return new Fit(none, none, none);
            return new Fit(
                    OptionalDouble.of(sum / n), OptionalDouble.of(Math.sqrt(squares / n)), OptionalDouble.of(chi / n));
        }
    }

    /**
     * A point of a parity plot (expected across, found up) and of a map of residuals.
     *
     * @param hole its id
     * @param at its place
     * @param expected [Pa]
     * @param found [Pa]
     * @param band half-width within which they count as equal [Pa]
     */
    public record ParityPoint(String hole, Point at, double expected, double found, double band, Verdict verdict) {
        /** Found minus expected [Pa]. */
        public double residual() {
            return found - expected;
        }
    }

    /** All holes that have both values, for a parity plot or a map of residuals. */
    public List<ParityPoint> parity() {
        return holes.stream()
                .filter(h -> h.difference().isPresent())
                .map(h -> new ParityPoint(
                        h.hole(), h.at(), h.expected().getAsDouble(), h.found().getAsDouble(), h.band(), h.verdict()))
                .toList();
    }

    /** Mean difference over all holes; empty without readings [Pa]. */
    public OptionalDouble bias() {
        return fit.bias();
    }

    /** Root mean square of the differences; empty without readings [Pa]. */
    public OptionalDouble scatter() {
        return fit.scatter();
    }

    /** The sentences of the findings. */
    public List<String> remarks() {
        return findings.stream().map(Finding::sentence).toList();
    }

    /**
     * Compares.
     *
     * @param scenario as drawn; the stage's own differences are known to {@code solved} already
     * @param stage whose readings are compared
     * @param solved prediction for {@code scenario.during(stage)}
     * @param band how much may differ
     */
    public static Comparison of(Scenario scenario, Stage stage, Result.Solved solved, Band band) {
        if (!solved.convergence().converged())
            throw new IllegalArgumentException("a comparison needs a converged field");
        AirState air = AirState.of(scenario.air().temperature(), scenario.air().altitude());
        List<HoleComparison> holes = new ArrayList<>();
        for (Stage.HoleReading r : stage.holes()) holes.add(hole(r, solved.hole(r.hole()), band));
        List<SystemComparison> systems = stage.systems().stream()
                .flatMap(r -> solved.suction(r.suctionPoint()).map(s -> system(r, s, air, band)).stream())
                .toList();
        return new Comparison(
                stage.id(), holes, systems, Fit.of(holes), ReadingChecks.of(scenario, stage, Optional.of(solved)));
    }

    private static HoleComparison hole(Stage.HoleReading r, Optional<Result.Hole> hole, Band band) {
        OptionalDouble on = hole.map(Result.Hole::fanOn).orElse(OptionalDouble.empty());
        OptionalDouble off = hole.map(Result.Hole::fanOff).orElse(OptionalDouble.empty());
        boolean pair = r.change().isPresent() && on.isPresent() && off.isPresent();
        double noise = pair ? Noise.ofChange(r) : Noise.of(r);
        OptionalDouble expected = pair ? OptionalDouble.of(on.getAsDouble() - off.getAsDouble()) : on;
        OptionalDouble found = pair ? r.change() : r.fanOn();
        double width = band.halfWidth(noise, expected.orElse(0));
        Point at = hole.map(Result.Hole::at).orElse(new Point(0, 0));
        return new HoleComparison(
                r.hole(), at, r.fanOn(), on, r.fanOff(), off, noise, width, pressure(found, expected, width));
    }

    private static SystemComparison system(Stage.SystemReading r, Result.Suction s, AirState air, Band band) {
        Optional<MeasuredFlow> flow = MeasuredFlow.of(r, air);
        double flowBand = band.halfWidth(flow.map(MeasuredFlow::standardError).orElse(0.0), s.flow());
        double pressureBand = band.halfWidth(Noise.ofSuction(r), s.pressure());
        OptionalDouble predicted =
                Double.isFinite(s.pressure()) ? OptionalDouble.of(s.pressure()) : OptionalDouble.empty();
        return new SystemComparison(
                r.suctionPoint(),
                flow,
                s.flow(),
                flowBand,
                flow(flow, s.flow(), flowBand),
                r.suction(),
                s.pressure(),
                pressureBand,
                pressure(r.suction(), predicted, pressureBand));
    }

    private static Verdict pressure(OptionalDouble found, OptionalDouble expected, double band) {
        if (found.isEmpty() || expected.isEmpty()) return Verdict.NOTHING_TO_COMPARE;
        return verdict(-found.getAsDouble(), -expected.getAsDouble(), band);
    }

    private static Verdict flow(Optional<MeasuredFlow> found, double expected, double band) {
        if (found.isEmpty()) return Verdict.NOTHING_TO_COMPARE;
        MeasuredFlow flow = found.get();
        if (!flow.belowMeter()) return verdict(flow.flow(), expected, band);
        return expected - band > 2 * flow.flow() ? Verdict.WEAKER : Verdict.CANNOT_TELL;
    }

    private static Verdict verdict(double found, double expected, double band) {
        if (Math.abs(found - expected) > band) return found < expected ? Verdict.WEAKER : Verdict.STRONGER;
        return band >= Math.abs(expected) ? Verdict.CANNOT_TELL : Verdict.AS_EXPECTED;
    }
}

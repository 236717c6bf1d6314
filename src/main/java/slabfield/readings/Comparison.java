package slabfield.readings;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.field.Result;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.model.SuctionPoint;

/**
 * Readings of one stage held against the prediction for the house as it stood then.
 *
 * @param stage id of the stage
 * @param holes in the order of the stage's readings
 * @param systems flow and riser pressure at suction points, in the stage's order
 * @param bias mean of measured minus predicted with the fan on; empty without readings [Pa]
 * @param scatter root mean square of the same differences; empty without readings [Pa]
 * @param remarks what is odd about the readings themselves, in plain sentences
 */
public record Comparison(
        String stage,
        List<HoleComparison> holes,
        List<SystemComparison> systems,
        OptionalDouble bias,
        OptionalDouble scatter,
        List<String> remarks) {

    /** What a reading says about the prediction. */
    public enum Verdict {
        AS_EXPECTED("as expected"),
        WEAKER("weaker than expected"),
        STRONGER("stronger than expected"),
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
     * One hole.
     *
     * @param measured with the fan on; empty where not read [Pa]
     * @param predicted with the fan on; empty where the layer has no pressure [Pa]
     * @param measuredOff with the fan off [Pa]
     * @param predictedOff with the fan off [Pa]
     * @param band half-width within which measured and predicted count as equal [Pa]
     */
    public record HoleComparison(
            String hole,
            Point at,
            OptionalDouble measured,
            OptionalDouble predicted,
            OptionalDouble measuredOff,
            OptionalDouble predictedOff,
            double band,
            Verdict verdict) {
        /** Measured minus predicted, fan on; above 0 where there is less vacuum than predicted [Pa]. */
        public OptionalDouble difference() {
            return measured.isPresent() && predicted.isPresent()
                    ? OptionalDouble.of(measured.getAsDouble() - predicted.getAsDouble())
                    : OptionalDouble.empty();
        }
    }

    /** Flow [m3/s] and pressure [Pa] at one suction point. */
    public record SystemComparison(
            String suctionPoint,
            OptionalDouble measuredFlow,
            double predictedFlow,
            OptionalDouble measuredPressure,
            double predictedPressure) {}

    /**
     * Compares.
     *
     * @param scenario as drawn; the stage's own differences are known to {@code solved} already
     * @param stage whose readings are compared
     * @param solved prediction for {@code scenario.during(stage)}
     * @param band how much may differ
     */
    public static Comparison of(Scenario scenario, Stage stage, Result.Solved solved, Band band) {
        List<HoleComparison> holes = new ArrayList<>();
        double sum = 0, squares = 0;
        int n = 0;
        for (Stage.HoleReading r : stage.holes()) {
            Optional<Result.Hole> hole = solved.hole(r.hole());
            OptionalDouble predicted = hole.map(Result.Hole::fanOn).orElse(OptionalDouble.empty());
            OptionalDouble off = hole.map(Result.Hole::fanOff).orElse(OptionalDouble.empty());
            double width = band.halfWidth(r, predicted);
            HoleComparison c = new HoleComparison(
                    r.hole(),
                    hole.map(Result.Hole::at).orElse(new Point(0, 0)),
                    r.fanOn(),
                    predicted,
                    r.fanOff(),
                    off,
                    width,
                    verdict(r.fanOn(), predicted, width));
            holes.add(c);
            if (c.difference().isPresent()) {
                double d = c.difference().getAsDouble();
                sum += d;
                squares += d * d;
                n++;
            }
        }
        List<SystemComparison> systems = stage.systems().stream()
                .flatMap(r -> solved.suction(r.suctionPoint())
                        .map(s -> new SystemComparison(s.id(), r.flow(), s.flow(), r.riser(), s.pressure()))
                        .stream())
                .toList();
        return new Comparison(
                stage.id(),
                holes,
                systems,
                n > 0 ? OptionalDouble.of(sum / n) : OptionalDouble.empty(),
                n > 0 ? OptionalDouble.of(Math.sqrt(squares / n)) : OptionalDouble.empty(),
                remarks(scenario, stage, solved));
    }

    private static Verdict verdict(OptionalDouble measured, OptionalDouble predicted, double band) {
        if (measured.isEmpty() || predicted.isEmpty()) return Verdict.NOTHING_TO_COMPARE;
        double d = measured.getAsDouble() - predicted.getAsDouble();
        if (Math.abs(d) <= band) return Verdict.AS_EXPECTED;
        return d > 0 ? Verdict.WEAKER : Verdict.STRONGER;
    }

    private static List<String> remarks(Scenario scenario, Stage stage, Result.Solved solved) {
        List<String> out = new ArrayList<>();
        OptionalDouble deepest = stage.systems().stream()
                .filter(s -> s.riser().isPresent())
                .mapToDouble(s -> s.riser().getAsDouble())
                .min();
        for (Stage.HoleReading r : stage.holes()) {
            if (r.fanOn().isEmpty()) continue;
            double on = r.fanOn().getAsDouble();
            if (deepest.isPresent() && on < deepest.getAsDouble())
                out.add(String.format(
                        Locale.ROOT,
                        "Hole \"%s\" reads %.1f Pa, stronger than any riser (%.1f Pa): no hole can. Check units and"
                                + " hoses, and look for a second source of suction.",
                        r.hole(),
                        on,
                        deepest.getAsDouble()));
            if (r.fanOff().isPresent() && on == r.fanOff().getAsDouble())
                out.add("Hole \"" + r.hole() + "\" reads the same with the fan on and off: check that the hole is open to"
                        + " the layer and the hose is on the right port.");
            if (r.fanOff().isPresent() && on > r.fanOff().getAsDouble() + r.spread().orElse(Band.ASSUMED_SPREAD))
                out.add("Hole \"" + r.hole() + "\" reads higher with the fan on than off: hoses may be swapped, or a test"
                        + " vacuum may be blowing into the room.");
        }
        if (stage.systems().stream().allMatch(s -> s.flow().isEmpty()) && !stage.holes().isEmpty()
                && scenario.suctionPoints().stream().map(SuctionPoint::source).findAny().isPresent())
            out.add("No flow was measured in this stage. Without it a leaky slab cannot be told from tight fill.");
        if (!solved.convergence().converged()) throw new IllegalArgumentException("a comparison needs a converged field");
        return out;
    }
}

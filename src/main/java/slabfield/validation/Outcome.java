package slabfield.validation;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a run of a case gave.
 *
 * @param of the case
 * @param checks one for each claim, in the case's order; empty where it could not be run
 * @param problem why it could not be run
 * @param imbalance largest of its scenarios, relative to the flow through each
 * @param control what the control's change did
 * @param refined the same claims on other grids, from coarse to fine; empty where nothing is solved or none were asked for
 */
public record Outcome(
        ValidationCase of,
        List<Check> checks,
        Optional<String> problem,
        double imbalance,
        Control control,
        List<Refined> refined) {

    /**
     * A claim held against its source and against the last accepted run.
     *
     * @param ours in the claim's unit
     * @param baseline the accepted value in the claim's unit; empty where none was accepted
     */
    public record Check(Claim claim, double ours, OptionalDouble baseline) {
        /** Widest relative distance from the accepted value. */
        public static final double SAME = 1e-9;

        public boolean agrees() {
            return claim.agrees(ours);
        }

        /** Whether it is the accepted value still. */
        public boolean stands() {
            return baseline.isPresent()
                    && Math.abs(ours - baseline.getAsDouble()) <= SAME * Math.abs(baseline.getAsDouble());
        }
    }

    /**
     * What the control's change did.
     *
     * @param red claims that it turned red
     * @param of so many
     * @param broke why the changed case could not be run, which proves nothing
     */
    public record Control(int red, int of, Optional<String> broke) {
        /** Whether the case is tight enough to be evidence. */
        public boolean works() {
            return red > 0 && broke.isEmpty();
        }
    }

    /**
     * The solved claims on another grid.
     *
     * @param cellFactor by which the cells are larger than the case's
     * @param cell largest cell side of its scenarios [m]
     * @param values in the claims' units, by claim in the case's order; NaN for those that no scenario stands behind
     */
    public record Refined(double cellFactor, double cell, List<Double> values) {}

    /** How a case stands. */
    public enum Verdict {
        /** It cannot be run. */
        BROKEN("cannot be run"),
        /** A number is outside its tolerance. */
        RED("RED"),
        /** All agree, but so they do under the control's change: too loose to be evidence. */
        LOOSE("too loose"),
        /** All agree, but a number moved since it was accepted. */
        MOVED("moved"),
        /** All agree with the source and with the last accepted run, and the control turns it red. */
        GREEN("green");

        private final String word;

        Verdict(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    public Verdict verdict() {
        if (problem.isPresent()) return Verdict.BROKEN;
        if (!checks.stream().allMatch(Check::agrees)) return Verdict.RED;
        if (!control.works()) return Verdict.LOOSE;
        return checks.stream().allMatch(Check::stands) ? Verdict.GREEN : Verdict.MOVED;
    }

    /** Largest distance from the middle of the tolerance, in parts of it. */
    public double worst() {
        return checks.stream()
                .mapToDouble(c -> Math.abs(c.claim().partOfTolerance(c.ours())))
                .max()
                .orElse(Double.NaN);
    }
}

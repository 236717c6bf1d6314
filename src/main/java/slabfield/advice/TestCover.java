package slabfield.advice;

import java.util.List;
import java.util.OptionalDouble;
import slabfield.readings.Noise;

/**
 * A cover laid over one opening for as long as it takes to read again: the cheapest way to learn whether it leaks.
 *
 * @param measure what is covered
 * @param holes what would change at the test holes if it leaks as drawn, in the scenario's order
 * @param exhaustBefore drawn without the cover [m3/s]
 * @param exhaustAfter drawn with it [m3/s]
 */
public record TestCover(Measure.CoverForTest measure, List<Change> holes, double exhaustBefore, double exhaustAfter) {
    /** Change of the flow, as part of it, that a pitot tube still shows; common practice. */
    private static final double FLOW = 0.1;

    /** Change of a hole's pressure that two ordinary readings tell apart: twice the standard error of their difference [Pa]. */
    public static final double VISIBLE = 2 * Math.sqrt(2) * Noise.ofOrdinaryReading();

    public TestCover {
        holes = List.copyOf(holes);
    }

    /**
     * One test hole.
     *
     * @param before pressure without the cover; empty where the layer has none [Pa]
     * @param after pressure with it [Pa]
     */
    public record Change(String hole, OptionalDouble before, OptionalDouble after) {
        /** Vacuum gained; 0 where there is no pressure [Pa]. */
        public double gain() {
            return before.isPresent() && after.isPresent() ? before.getAsDouble() - after.getAsDouble() : 0;
        }
    }

    /** Largest gain of vacuum at any hole; 0 without holes [Pa]. */
    public double largestGain() {
        return holes.stream().mapToDouble(Change::gain).max().orElse(0);
    }

    /** True where a leak as drawn would show, at a hole or in the flow: then a cover without effect says that it is none. */
    public boolean tells() {
        return largestGain() >= VISIBLE || exhaustBefore - exhaustAfter >= FLOW * exhaustBefore;
    }
}

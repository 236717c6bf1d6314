package slabfield.figure;

import java.util.List;

/**
 * One axis of a chart, in shown units.
 *
 * @param label quantity and unit
 * @param low end at the left or below
 * @param high other end, above low
 */
record Axis(String label, double low, double high) {
    private static final double ROOM = 0.06;

    Axis {
        if (!(low < high) || !Double.isFinite(high - low))
            throw new IllegalArgumentException("an axis needs two ends, low below high");
    }

    /** An axis that holds all values, with a little room, and ends at 0 where they lie on one side of it. */
    static Axis around(String label, boolean fromZero, double... values) {
        double low = Double.POSITIVE_INFINITY, high = Double.NEGATIVE_INFINITY;
        for (double v : values) {
            if (!Double.isFinite(v)) continue;
            low = Math.min(low, v);
            high = Math.max(high, v);
        }
        if (!(low <= high)) return new Axis(label, 0, 1);
        if (fromZero) {
            low = Math.min(0, low);
            high = Math.max(0, high);
        }
        double room = high > low ? ROOM * (high - low) : Math.max(1, Math.abs(high)) * ROOM;
        return new Axis(label, fromZero && low == 0 ? 0 : low - room, fromZero && high == 0 ? 0 : high + room);
    }

    /** 0 at the low end, 1 at the high end. */
    double position(double value) {
        return (value - low) / (high - low);
    }

    /** Round values, no more than about so many. */
    List<Double> ticks(double most) {
        return Steps.multiples(Steps.atLeast((high - low) / Math.max(2, most)), low, high);
    }
}

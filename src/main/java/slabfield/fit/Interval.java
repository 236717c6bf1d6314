package slabfield.fit;

/**
 * A range that holds a number with a given probability.
 *
 * @param low its lower end
 * @param high its upper end
 */
public record Interval(double low, double high) {
    /** How many times the upper end is the lower one; for numbers above 0. */
    public double factor() {
        return high / low;
    }

    public boolean holds(double value) {
        return value >= low && value <= high;
    }
}

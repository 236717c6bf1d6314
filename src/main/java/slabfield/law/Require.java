package slabfield.law;

/** Guards of the laws' constructors and factories. */
final class Require {
    private Require() {}

    static double positive(String part, double value) {
        if (!(value > 0) || Double.isInfinite(value))
            throw new IllegalArgumentException(part + " must be a finite number above 0, but is " + value);
        return value;
    }

    static double notNegative(String part, double value) {
        if (!(value >= 0) || Double.isInfinite(value))
            throw new IllegalArgumentException(part + " must be a finite number not below 0, but is " + value);
        return value;
    }

    static double within(String part, double low, double high, double value) {
        if (!(value >= low && value <= high))
            throw new IllegalArgumentException(
                    part + " must lie between " + low + " and " + high + ", but is " + value);
        return value;
    }
}

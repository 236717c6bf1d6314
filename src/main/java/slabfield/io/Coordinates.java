package slabfield.io;

import java.math.BigDecimal;
import java.math.RoundingMode;
import slabfield.quantity.Unit;

/** Places on the plan between a file's unit of length and metres, to the nanometre both ways. */
final class Coordinates {
    private static final int NANO = 9;

    private Coordinates() {}

    /** Metres for a number of the file. */
    static double metres(double number, Unit unit) {
        double metres = unit.toSi(number);
        return Double.isFinite(metres) ? round(metres).doubleValue() : metres;
    }

    /** The shortest number of the file that is read as these metres, rounded to the nanometre. */
    static BigDecimal number(double metres, Unit unit) {
        double nano = round(metres).doubleValue();
        BigDecimal exact = BigDecimal.valueOf(unit.fromSi(nano));
        for (int decimals = 0; decimals < exact.scale(); decimals++) {
            BigDecimal shorter = exact.setScale(decimals, RoundingMode.HALF_UP);
            if (metres(shorter.doubleValue(), unit) == nano) return shorter;
        }
        return exact.scale() < 0 ? exact.setScale(0, RoundingMode.UNNECESSARY) : exact;
    }

    private static BigDecimal round(double metres) {
        return BigDecimal.valueOf(metres).setScale(NANO, RoundingMode.HALF_UP);
    }
}

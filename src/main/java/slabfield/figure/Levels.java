package slabfield.figure;

import java.util.ArrayList;
import java.util.List;
import slabfield.field.PressureField;

/** Which isolines a field gets. */
final class Levels {
    private static final double SPAN = 500;
    private static final double NARROW = 6;

    /**
     * A level.
     *
     * @param pressure [Pa]
     * @param index whether its lines are drawn stronger and labelled
     */
    record Level(double pressure, boolean index) {}

    private Levels() {}

    /**
     * Over a wide span of pressures the numbers 1, 2, 5 of each decade, 1 and 5 as index lines; over a narrow one
     * multiples of one step, every other an index line; 0 where the field has both signs. Left out are the target's
     * level and what is below a five-hundredth of the largest pressure.
     */
    static List<Level> of(PressureField field, double target, double unit) {
        double low = Double.MAX_VALUE, high = -Double.MAX_VALUE;
        for (int i = 0; i < field.pressure().length; i++) {
            double p = field.pressure()[i];
            if (!field.counts()[i] || Double.isNaN(p)) continue;
            low = Math.min(low, p);
            high = Math.max(high, p);
        }
        List<Level> levels = new ArrayList<>();
        if (low < 0 && high > 0) levels.add(new Level(0, true));
        double floor = Math.max(Math.abs(low), Math.abs(high)) / SPAN;
        if (low < 0) levels.addAll(side(-1, Math.max(floor, -high), -low, unit));
        if (high > 0) levels.addAll(side(1, Math.max(floor, low), high, unit));
        levels.removeIf(l -> Math.abs(l.pressure() + target) < 1e-6 * target);
        return levels;
    }

    private static List<Level> side(int sign, double least, double most, double unit) {
        List<Level> levels = new ArrayList<>();
        if (least * NARROW > most) {
            if (most - least < 1e-3 * most) return levels;
            double step = Steps.atLeast((most - least) / unit / 8);
            for (double m : Steps.multiples(step, least / unit, most / unit))
                levels.add(new Level(sign * m * unit, Math.round(m / step) % 2 == 0));
            return levels;
        }
        for (double size : Steps.between(least / unit, most / unit))
            levels.add(new Level(sign * size * unit, Steps.roughness(size) <= 1));
        return levels;
    }
}

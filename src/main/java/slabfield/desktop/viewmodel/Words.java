package slabfield.desktop.viewmodel;

import slabfield.figure.Bounds;
import slabfield.model.Point;

/** Small pieces of sentences that several models write. */
public final class Words {
    private static final String[][] PARTS = {
        {"lower left", "lower middle", "lower right"},
        {"middle left", "middle", "middle right"},
        {"upper left", "upper middle", "upper right"}
    };

    private Words() {}

    /** A part of a whole in whole percents; 0 and 100 only where they are meant. */
    public static String percent(double part) {
        if (Double.isNaN(part)) return "unknown";
        if (part > 0 && part < 0.005) return "below 1 %";
        if (part < 1 && part > 0.995) return "above 99 %";
        return Math.round(100 * part) + " %";
    }

    /** In which ninth of the plan a place lies, such as "upper left". */
    public static String part(Bounds plan, Point at) {
        return PARTS[third((at.y() - plan.bottom()) / plan.height())][third((at.x() - plan.left()) / plan.width())];
    }

    private static int third(double along) {
        return along < 1.0 / 3 ? 0 : along < 2.0 / 3 ? 1 : 2;
    }

    /** A number with its noun. */
    public static String count(int n, String one, String many) {
        return n == 1 ? "1 " + one : n + " " + many;
    }
}

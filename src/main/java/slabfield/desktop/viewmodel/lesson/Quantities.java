package slabfield.desktop.viewmodel.lesson;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import slabfield.desktop.viewmodel.Units;
import slabfield.field.Result;

/**
 * Numbers of a solved house by name: {@code hole T1} and {@code pit S1} are vacuums, {@code weakest} the least vacuum, {@code
 * exhaust}, {@code roomAir} and {@code from joint} flows, {@code area} the part of the area on target.
 */
final class Quantities {
    private static final Pattern PLACE = Pattern.compile("\\{(before|after):([^}]+)}");

    private Quantities() {}

    /** Size of a quantity [Pa, m3/s or 1]; a vacuum counts above 0. */
    static double of(Result.Solved solved, String name) {
        if (name.startsWith("hole "))
            return -solved.hole(name.substring(5)).orElseThrow().fanOn().orElse(0);
        if (name.startsWith("pit "))
            return -solved.suction(name.substring(4)).orElseThrow().pressure();
        if (name.startsWith("from ")) return solved.flows().bySource().get(name.substring(5));
        return switch (name) {
            case "weakest" -> solved.coverage().weakest();
            case "exhaust" -> solved.flows().exhaust();
            case "roomAir" -> solved.flows().fromRoom();
            case "area" -> solved.coverage().meeting();
            default -> throw new IllegalArgumentException("no quantity is called " + name);
        };
    }

    /** A quantity in words, in the units shown; a vacuum as the pressure below the room's that it is. */
    static String words(Result.Solved solved, String name, Units units) {
        double value = of(solved, name);
        if (name.equals("area")) return value > 0 && value < 0.005 ? "less than 1 %" : Math.round(100 * value) + " %";
        boolean flow = name.equals("exhaust") || name.equals("roomAir") || name.startsWith("from ");
        return flow ? units.flow(value) : units.pressure(-value);
    }

    /** A text with its places filled in. */
    static String filled(String text, Result.Solved before, Result.Solved after, Units units) {
        return PLACE.matcher(text)
                .replaceAll(m -> Matcher.quoteReplacement(
                        words(m.group(1).equals("before") ? before : after, m.group(2), units)));
    }
}

package slabfield.desktop.drawing;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import slabfield.quantity.Dimension;
import slabfield.quantity.NotAQuantity;
import slabfield.quantity.Quantity;
import slabfield.quantity.Unit;

/**
 * Lengths and angles as they are typed while drawing. A number alone has the unit that is shown; a unit that is typed
 * comes before it. "12-6.5" and "12'6" are feet and inches; lengths may be added with "+".
 */
public final class Typed {
    private static final Pattern BARE = Pattern.compile("[+-]?\\s*[\\d.,]+(?:\\s+\\d+/\\d+|/\\d+)?");
    private static final Pattern DASHED =
            Pattern.compile("(-?)(\\d+)\\s*-\\s*([\\d.,]+(?:\\s+\\d+/\\d+|/\\d+)?)\\s*(?:in|\")?");
    private static final Pattern OPEN_FEET =
            Pattern.compile("(.*\\d\\s*(?:ft|')\\s*-?\\s*[\\d.,]+(?:\\s+\\d+/\\d+|/\\d+)?)");

    private Typed() {}

    /**
     * @param unit of a number alone
     * @return length [m]
     * @throws NotAQuantity where it is none, with words for the user
     */
    public static double length(String text, Unit unit) {
        double sum = 0;
        for (String part : text.split("\\+", -1)) sum += one(plain(part), unit);
        return sum;
    }

    private static String plain(String text) {
        return text.replace('\u2212', '-')
                .replaceAll("[\u2018\u2019\u2032]", "'")
                .replaceAll("[\u201c\u201d\u2033]", "\"")
                .strip();
    }

    private static double one(String text, Unit unit) {
        if (BARE.matcher(text).matches()) return Quantity.parse(text + " " + unit.symbol(), Dimension.LENGTH);
        Matcher dashed = DASHED.matcher(text);
        if (dashed.matches()) {
            double size = Quantity.parse(dashed.group(2) + " ft " + dashed.group(3) + " in", Dimension.LENGTH);
            return dashed.group(1).isEmpty() ? size : -size;
        }
        if (OPEN_FEET.matcher(text).matches()) return Quantity.parse(text + " in", Dimension.LENGTH);
        return Quantity.parse(text, Dimension.LENGTH);
    }

    /**
     * @return angle [rad]
     * @throws IllegalArgumentException where it is none, with words for the user
     */
    public static double angle(String text) {
        String number =
                plain(text).replaceAll("(?:\u00b0|deg(?:ree)?s?)$", "").strip().replace(',', '.');
        try {
            return Math.toRadians(Double.parseDouble(number));
        } catch (NumberFormatException notOne) {
            throw new IllegalArgumentException("\"" + text + "\" is not an angle; write degrees, for instance \"45\".");
        }
    }
}

package slabfield.figure;

import java.util.ArrayList;
import java.util.List;
import slabfield.figure.Canvas.Lettering;

/** Breaks text into lines. */
public final class Words {
    private Words() {}

    /** Lines no wider than a width, broken at spaces; a single word that is wider stands alone. */
    public static List<String> wrap(Canvas canvas, String text, double width, Lettering lettering) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : text.strip().split("\\s+")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (!line.isEmpty() && canvas.textWidth(longer, lettering) > width) {
                lines.add(line);
                line = word;
            } else line = longer;
        }
        lines.add(line);
        return lines;
    }

    /** The text, cut with an ellipsis where it is wider than a width. */
    public static String cut(Canvas canvas, String text, double width, Lettering lettering) {
        if (canvas.textWidth(text, lettering) <= width) return text;
        int n = text.length();
        while (n > 1 && canvas.textWidth(text.substring(0, n) + "…", lettering) > width) n--;
        return text.substring(0, n) + "…";
    }
}

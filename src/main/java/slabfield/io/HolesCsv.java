package slabfield.io;

import java.util.OptionalDouble;
import slabfield.field.Result;

/** Predictions at test holes as a table: RFC 4180, decimal points, SI with the unit in the name of the column; what is not known is empty. */
public final class HolesCsv {
    static final String PREDICTED = "hole,x_m,y_m,predictedFanOff_Pa,predictedFanOn_Pa";
    private static final String END = "\r\n";

    private HolesCsv() {}

    /** What is predicted at each hole. */
    public static String predicted(Result.Solved solved) {
        StringBuilder text = new StringBuilder(PREDICTED).append(END);
        for (Result.Hole h : solved.holes())
            row(
                    text,
                    CsvCell.of(h.id()),
                    String.valueOf(h.at().x()),
                    String.valueOf(h.at().y()),
                    number(h.fanOff()),
                    number(h.fanOn()));
        return text.toString();
    }

    private static void row(StringBuilder text, String... cells) {
        text.append(String.join(",", cells)).append(END);
    }

    private static String number(OptionalDouble value) {
        return value.isPresent() && Double.isFinite(value.getAsDouble()) ? String.valueOf(value.getAsDouble()) : "";
    }
}

package slabfield.io;

import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.field.Result;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.model.TestHole;

/** Test holes as tables: RFC 4180, decimal points, SI with the unit in the name of the column; what is not known is empty. */
public final class HolesCsv {
    static final String PREDICTED = "hole,x_m,y_m,predictedFanOff_Pa,predictedFanOn_Pa";
    static final String READINGS = "stage,kind,time,hole,x_m,y_m,measuredFanOff_Pa,measuredFanOn_Pa,spread_Pa,meterStep_Pa";
    private static final String END = "\r\n";

    private HolesCsv() {}

    /** What is predicted at each hole. */
    public static String predicted(Result.Solved solved) {
        StringBuilder text = new StringBuilder(PREDICTED).append(END);
        for (Result.Hole h : solved.holes())
            row(text, quoted(h.id()), String.valueOf(h.at().x()), String.valueOf(h.at().y()), number(h.fanOff()), number(h.fanOn()));
        return text.toString();
    }

    /** What was read at each hole, stage by stage. */
    public static String readings(Scenario scenario) {
        StringBuilder text = new StringBuilder(READINGS).append(END);
        for (Stage stage : scenario.stages())
            for (Stage.HoleReading r : stage.holes()) {
                Optional<Point> at = scenario.testHole(r.hole()).map(TestHole::at);
                String time = r.time().isEmpty() ? stage.time() : r.time();
                row(
                        text, quoted(stage.id()), stage.kind().words(), time, quoted(r.hole()), at.map(p -> String.valueOf(p.x())).orElse(""),
                        at.map(p -> String.valueOf(p.y())).orElse(""), number(r.fanOff()), number(r.fanOn()), number(r.spread()), number(r.meterStep()));
            }
        return text.toString();
    }

    private static void row(StringBuilder text, String... cells) {
        text.append(String.join(",", cells)).append(END);
    }

    private static String number(OptionalDouble value) {
        return value.isPresent() && Double.isFinite(value.getAsDouble()) ? String.valueOf(value.getAsDouble()) : "";
    }

    /** A text as RFC 4180 wants it; one that a spreadsheet would take for a formula is led by an apostrophe. */
    static String quoted(String text) {
        String safe = text.matches("[=+\\-@\\t].*") ? "'" + text : text;
        return safe.matches("(?s).*[,\"\\r\\n].*") ? '"' + safe.replace("\"", "\"\"") + '"' : safe;
    }
}

package slabfield.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import slabfield.diagnosis.Checklist;
import slabfield.diagnosis.Diagnosis;
import slabfield.diagnosis.NextCheck;
import slabfield.io.JsonText;
import slabfield.io.OwnFile;
import slabfield.model.Scenario;

/** A diagnosis as JSON, in SI with the unit in the key. */
final class DiagnoseJson {
    private DiagnoseJson() {}

    static String of(Scenario scenario, Diagnosis diagnosis) {
        ObjectNode root = JsonNodeFactory.instance
                .objectNode()
                .put(OwnFile.KEY, OwnFile.NAME)
                .put("scenario", scenario.name());
        root.put("answer", word(diagnosis.answer()));
        ArrayNode causes = root.putArray("causes");
        diagnosis.causes().forEach(w -> cause(causes.addObject(), w));
        diagnosis.next().ifPresent(c -> next(root.putObject("nextCheck"), c));
        ArrayNode notes = root.putArray("notes");
        diagnosis.notes().forEach(notes::add);
        ArrayNode rows = root.putArray("checklist");
        for (Checklist row : Checklist.all())
            rows.addObject()
                    .put("pattern", row.pattern())
                    .put("cause", row.cause())
                    .put("check", row.check())
                    .put("reason", row.reason())
                    .put("stop", row.stop());
        return JsonText.of(root);
    }

    private static void cause(ObjectNode node, Diagnosis.Weighed w) {
        node.put("cause", word(w.cause()))
                .put("probability", w.probability())
                .put("explanation", w.explanation().words())
                .put(
                        "meanSquareResidual",
                        w.fitted().chiSquare() / w.fitted().observations().size());
        w.speaks()
                .ifPresent(s -> node.putObject("speaksForIt")
                        .put("stage", s.observation().stage())
                        .put("reading", s.observation().what().words())
                        .put("place", s.observation().place())
                        .put("measured", s.observation().measured())
                        .put("withCause", s.explained())
                        .put("asDrawn", s.drawn()));
    }

    private static void next(ObjectNode node, NextCheck c) {
        String unit = c.flow() ? "_m3_per_s" : "_Pa";
        node.put("effort", word(c.effort()))
                .put("words", c.words())
                .put("reading", c.reading())
                .put("ifFirst" + unit, c.first())
                .put("ifSecond" + unit, c.second())
                .put("standardErrorsApart", c.separation());
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}

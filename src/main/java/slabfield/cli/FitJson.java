package slabfield.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import slabfield.fit.Band;
import slabfield.fit.Fitted;
import slabfield.fit.Identifiability;
import slabfield.fit.Interval;
import slabfield.fit.Observation;
import slabfield.fit.Outlook;
import slabfield.fit.Parameter;
import slabfield.io.JsonText;
import slabfield.io.OwnFile;

/** A fit as JSON, in SI with the unit in the key. An unknown that the readings do not fix has a range and no value. */
final class FitJson {
    private FitJson() {}

    /** With ranges of unknowns by moving each alone, by their places; none where nobody asked for them. */
    static String of(Fitted fit, Identifiability known, Map<Integer, Interval> profiles, Optional<Outlook> outlook) {
        ObjectNode root = JsonNodeFactory.instance
                .objectNode()
                .put(OwnFile.KEY, OwnFile.NAME)
                .put("scenario", fit.drawn().name())
                .put("converged", fit.converged())
                .put("iterations", fit.iterations())
                .put("chiSquare", fit.chiSquare())
                .put("unknownsFixed", fit.fixed())
                .put("logEvidence", fit.logEvidence())
                .put("informationCriterion", fit.informationCriterion());
        ArrayNode unknowns = root.putArray("unknowns");
        known.findings().forEach(f -> unknown(unknowns.addObject(), fit, f, profiles));
        ArrayNode ratios = root.putArray("ratios");
        for (Identifiability.Ratio r : known.ratios())
            range(
                    ratios.addObject()
                            .put("of", id(fit, r.first()))
                            .put("over", id(fit, r.second()))
                            .put("value", r.value()),
                    r.range());
        ArrayNode groups = root.putArray("exchangeable");
        for (Identifiability.Group g : known.exchangeable()) {
            ArrayNode group = groups.addArray();
            g.members().forEach(j -> group.add(id(fit, j)));
        }
        ArrayNode directions = root.putArray("directions");
        for (Identifiability.Direction d : known.directions()) {
            ArrayNode weights = directions.addObject().put("gain", d.gain()).putArray("weights");
            for (double w : d.weights()) weights.add(w);
        }
        ArrayNode measure = root.putArray("measure");
        known.measure().forEach(measure::add);
        ArrayNode readings = root.putArray("readings");
        fit.residuals().forEach(r -> reading(readings.addObject(), r));
        outlook.ifPresent(o -> expected(root.putObject("asDrawn"), fit, o));
        return JsonText.of(root);
    }

    private static String id(Fitted fit, int parameter) {
        return fit.parameters().get(parameter).id();
    }

    private static void unknown(
            ObjectNode node, Fitted fit, Identifiability.Finding f, Map<Integer, Interval> profiles) {
        Parameter p = fit.parameters().get(f.parameter());
        node.put("id", p.id())
                .put("words", p.words())
                .put("unit", unit(p.kind()))
                .put("standing", f.standing().words());
        if (f.standing() == Identifiability.Standing.FOUND) node.put("value", fit.value(f.parameter()));
        else node.putNull("value");
        range(node, f.range());
        node.put("drawn", p.prior().median())
                .put("priorSpread", p.prior().spread())
                .put("priorFrom", p.prior().source());
        Interval moved = profiles.get(f.parameter());
        if (moved != null) range(node.putObject("profile"), moved);
        node.put("doubtLeft", fit.doubtLeft(f.parameter()));
    }

    private static String unit(Parameter.Kind kind) {
        return switch (kind) {
            case PERMEABILITY, BARRIER -> "m2";
            case INERTIAL -> "1/m";
            case SOIL -> "m/s/Pa";
            case LEAK, TILE -> "times drawn";
            case LEFT_BY_SEAL -> "fraction";
            case EXPONENT, INERTIAL_NOT_DRAWN, FILL_BESIDE -> "-";
            case GAP, PIT -> "m";
            case OUTDOORS -> "Pa";
        };
    }

    private static void reading(ObjectNode node, Fitted.Residual r) {
        Observation o = r.observation();
        String unit = o.what() == Observation.What.FLOW ? "_m3_per_s" : "_Pa";
        node.put("stage", o.stage())
                .put("place", o.place())
                .put("what", o.what().words());
        node.put("measured" + unit, o.measured())
                .put("fitted" + unit, r.predicted())
                .put("offBy_deviations", r.deviations());
        node.put("upperBound", o.upperBound());
    }

    private static void expected(ObjectNode node, Fitted fit, Outlook o) {
        node.put("houses", o.forecasts().size());
        band(node, "weakest_Pa", o.weakest());
        band(node, "exhaust_m3_per_s", o.exhaust());
        band(node, "fromRoom_m3_per_s", o.fromRoom());
        node.put("target_Pa", fit.drawn().target().vacuum());
        node.put("chanceThatAllMeet", o.chanceThatAllMeet(fit.drawn().target().vacuum()));
    }

    private static void band(ObjectNode node, String key, Band band) {
        range(node.putObject(key).put("median", band.median()), band.interval(Identifiability.PROBABILITY));
    }

    private static void range(ObjectNode node, Interval i) {
        String part = String.format(Locale.ROOT, "%.0f", 100 * Identifiability.PROBABILITY);
        node.put("low" + part, i.low()).put("high" + part, i.high());
    }
}

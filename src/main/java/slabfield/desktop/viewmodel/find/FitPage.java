package slabfield.desktop.viewmodel.find;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.function.UnaryOperator;
import slabfield.desktop.viewmodel.Edit;
import slabfield.desktop.viewmodel.HouseSearch;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Words;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.field.Progress;
import slabfield.figure.Charts;
import slabfield.figure.ValueLayer;
import slabfield.fit.Ensemble;
import slabfield.fit.Fitted;
import slabfield.fit.Identifiability;
import slabfield.fit.Interval;
import slabfield.fit.NotFitted;
import slabfield.fit.Observation;
import slabfield.fit.Outlook;
import slabfield.fit.Parameter;
import slabfield.fit.Profile;
import slabfield.model.Scenario;

/** Fill and leaks that explain the readings, what the readings cannot tell, and how sure the map is. */
final class FitPage extends Asked<FitPage.Found> {
    private static final String PARITY = "Readings over fit";
    private static final String ODDS = "Odds of the target";
    private static final String WIDTH = "Uncertainty";
    /** Deviation from which a reading is not explained. */
    private static final double FAR = 2.5;
    /** Normal deviate of the 90 % range. */
    private static final double OUTER = 1.6449;

    /** A fit with what follows from it. */
    record Found(Fitted fit, Identifiability known, Outlook outlook) {}

    /** A fit's unknowns, each moved by itself. */
    private record Moved(Fitted fit, SortedMap<Integer, Interval> ranges) {}

    private final HouseSearch<Moved> moved;

    FitPage(Workbench bench, Explained explained, TaskRunner runner) {
        super(
                bench,
                runner,
                new Names(
                        "Fit",
                        "Values of fill and leaks that explain the readings, with their ranges, and what the readings cannot tell apart.",
                        "Fit to the readings",
                        "there is nothing to fit"),
                (house, progress) -> find(explained, house, progress),
                new HouseSearch.Phrases(
                        "Searches for the fill and the leaks that explain the readings of all stages together; nothing is changed.",
                        "Fitting, then solving houses that explain the readings",
                        "fit",
                        "Fit again."),
                f -> Words.count(f.fit().observations().size(), "number", "numbers") + " read, "
                        + f.outlook().forecasts().size() + " houses that explain them.");
        moved = new HouseSearch<>(
                bench.document(),
                (house, progress) -> move(explained, house, progress),
                runner,
                new HouseSearch.Phrases(
                        "Then, or instead: moves each unknown by itself and fits all others anew; nothing is changed.",
                        "Moving each unknown by itself",
                        "search for ranges",
                        "Move each unknown again."),
                m -> Words.count(m.ranges().size(), "unknown", "unknowns") + " moved, each by itself.");
    }

    private static Moved move(Explained explained, Scenario house, Progress progress) throws NotFitted {
        Fitted fit = explained.fit(house, Phases.part(progress, 0, 0.3));
        return new Moved(fit, Profile.intervals(fit, Identifiability.PROBABILITY, Phases.part(progress, 0.3, 1)));
    }

    @Override
    public List<Job> jobs() {
        return List.of(
                job(),
                new Job(
                        "Move each unknown alone",
                        moved,
                        () -> moved.start("There is no suction point yet, so there is nothing to fit.")));
    }

    @Override
    public boolean stale() {
        return search.outOfDate().get();
    }

    /** What the fit says, and the ranges of the unknowns moved alone as long as the house is the one that they are of. */
    @Override
    public Sheet sheet() {
        Sheet fit = super.sheet();
        Optional<Moved> now = moved.found().get().filter(m -> !moved.outOfDate().get());
        if (now.isEmpty()) return fit;
        List<Sheet.Table> tables = new ArrayList<>(fit.tables());
        tables.add(Math.min(1, tables.size()), alone(now.get()));
        return new Sheet(fit.headline(), fit.words(), tables, fit.acts());
    }

    private Sheet.Table alone(Moved m) {
        List<Sheet.Row> rows = m.ranges().entrySet().stream()
                .map(r -> {
                    Parameter p = m.fit().parameters().get(r.getKey());
                    return Sheet.Row.of(Amounts.capital(p.words()), amounts().of(p, r.getValue()));
                })
                .toList();
        return new Sheet.Table(
                "Each unknown moved alone, all others fitted anew",
                List.of(Sheet.Column.words("Unknown", 260), Sheet.Column.number("90 % range", 225)),
                rows,
                List.of(
                        "Within it the readings are still explained about as well as at best. It may be lopsided, which the range of the fit"
                                + " cannot."));
    }

    private static Found find(Explained explained, Scenario house, Progress progress) throws NotFitted {
        Ensemble ensemble = explained.ensemble(house, Ensemble.USUAL, Phases.part(progress, 0, 0.7));
        Outlook outlook = ensemble.outlook(UnaryOperator.identity(), Phases.part(progress, 0.7, 1));
        return new Found(ensemble.fit(), Identifiability.of(ensemble.fit()), outlook);
    }

    @Override
    public List<String> views() {
        return List.of(PARITY, ODDS, WIDTH);
    }

    @Override
    Sheet sheet(Found f) {
        List<String> words = new ArrayList<>();
        if (!f.fit().converged()) words.add("The search did not settle: the values are the best so far.");
        words.addAll(f.known().measure());
        words.addAll(together(f));
        words.add("A number is given only where the readings fix it to a factor of "
                + Amounts.plain(Identifiability.NUMBER)
                + " either way; elsewhere the range alone counts. Leaks are multiples of what is drawn. "
                + Amounts.SIGN);
        List<Sheet.Act> acts = stale()
                ? List.of()
                : List.of(new Sheet.Act(
                        "Use these values in the drawing",
                        "Use the fitted values in the drawing; one step that can be undone",
                        () -> use(f.fit())));
        return new Sheet(headline(f), words, List.of(unknowns(f), residuals(f.fit())), acts);
    }

    private String headline(Found f) {
        Outlook o = f.outlook();
        Interval weakest = o.weakest().interval(Identifiability.PROBABILITY);
        double target = f.fit().drawn().target().vacuum();
        return "Weakest place " + bench.units().pressure(-o.weakest().median()) + ", nine times of ten "
                + bench.units().pressure(-weakest.low()) + " to "
                + bench.units().pressure(-weakest.high()) + ". It meets "
                + bench.units().exactPressure(-target) + " in "
                + Math.round(o.chanceThatAllMeet(target) * o.forecasts().size()) + " of "
                + o.forecasts().size() + " houses that explain the readings.";
    }

    private void use(Fitted fit) {
        bench.document().edit(Edit.of("use fitted values", s -> s.equals(fit.drawn()) ? fit.house() : s));
    }

    private List<String> together(Found f) {
        List<Parameter> p = f.fit().parameters();
        List<String> out = new ArrayList<>();
        for (Identifiability.Ratio r : f.known().ratios()) {
            Parameter a = p.get(r.first()), b = p.get(r.second());
            double drawn = a.prior().median() / b.prior().median();
            out.add("Known only together: " + a.words() + " over " + b.words() + " is "
                    + Amounts.plain(r.value() / drawn) + " ("
                    + Amounts.plain(r.range().low() / drawn) + " to "
                    + Amounts.plain(r.range().high() / drawn) + ") times what is drawn.");
        }
        for (Identifiability.Group g : f.known().exchangeable())
            out.add("Explain the same readings, so that more of one means less of another: "
                    + String.join(
                            "; ",
                            g.members().stream().map(j -> p.get(j).words()).toList()) + ".");
        return out;
    }

    private Sheet.Table unknowns(Found f) {
        List<Sheet.Column> columns = List.of(
                Sheet.Column.words("Unknown", 260),
                Sheet.Column.words("How it is known", 200),
                Sheet.Column.number("Found", 120),
                Sheet.Column.number("90 % range", 225),
                Sheet.Column.number("As drawn", 120),
                Sheet.Column.number("90 % range before\nany reading", 225));
        List<Identifiability.Finding> sought = f.known().findings().stream()
                .filter(x -> f.fit().parameters().get(x.parameter()).kind().sought())
                .toList();
        List<String> sources = sought.stream()
                .map(x -> f.fit().parameters().get(x.parameter()).prior().source())
                .distinct()
                .toList();
        return new Sheet.Table(
                "What the readings say of each unknown",
                columns,
                sought.stream().map(x -> unknown(f.fit(), x)).toList(),
                List.of("Ranges before any reading come from: " + String.join("; ", sources) + "."));
    }

    private Sheet.Row unknown(Fitted fit, Identifiability.Finding x) {
        Parameter p = fit.parameters().get(x.parameter());
        boolean found = x.standing() == Identifiability.Standing.FOUND;
        return Sheet.Row.of(
                Amounts.capital(p.words()),
                x.standing().words(),
                found ? amounts().of(p, fit.value(x.parameter())) : Amounts.NONE,
                amounts().of(p, x.range()),
                amounts().of(p, p.prior().median()),
                amounts().of(p, new Interval(p.prior().value(-OUTER), p.prior().value(OUTER))));
    }

    private Sheet.Table residuals(Fitted fit) {
        List<Sheet.Column> columns = List.of(
                Sheet.Column.words("Place", 70),
                Sheet.Column.words("What", 180),
                Sheet.Column.number("Measured", 110),
                Sheet.Column.number("Fitted", 110),
                Sheet.Column.number("Off by\n[std. errors]", 100),
                Sheet.Column.words("Stage", 220));
        List<Sheet.Row> rows = fit.residuals().stream()
                .map(r -> {
                    Observation o = r.observation();
                    return new Sheet.Row(
                            List.of(
                                    o.place(),
                                    o.what().words(),
                                    amounts().reading(o, o.measured()),
                                    amounts().reading(o, r.predicted()),
                                    Amounts.decimals(r.deviations(), 1),
                                    o.stage()),
                            Math.abs(r.deviations()) > FAR,
                            Optional.empty(),
                            List.of());
                })
                .toList();
        boolean far = rows.stream().anyMatch(Sheet.Row::off);
        return new Sheet.Table(
                "Readings and the fitted house",
                columns,
                rows,
                far
                        ? List.of(
                                "Coloured readings are not explained by any values of the unknowns: look at these holes again, or for something that is not drawn.")
                        : List.of());
    }

    @Override
    public Optional<Picture> picture(String view, Optional<Glances.Glance> glance) {
        Optional<Found> found = search.found().get();
        if (found.isEmpty()) return plans.glance(view, Optional.empty(), "");
        return switch (view) {
            case ODDS -> odds(found.get().outlook(), found.get().fit().drawn());
            case WIDTH -> width(found.get().outlook());
            default ->
                Optional.of(
                        new Picture.Drawn(
                                parity(found.get().fit()),
                                "MEASURED AND FITTED: each reading over the fitted house. Above the line: less vacuum than the fit."));
        };
    }

    private slabfield.figure.Figure parity(Fitted fit) {
        List<Charts.Pair> pairs = fit.residuals().stream()
                .filter(r -> r.observation().isPressureAtHole())
                .map(r -> new Charts.Pair(
                        r.observation().place(),
                        r.predicted(),
                        r.observation().measured(),
                        OUTER * r.observation().deviation()))
                .toList();
        return Charts.parity(fit.drawn().name(), "all stages", pairs, plans.style());
    }

    private Optional<Picture> odds(Outlook o, Scenario drawn) {
        double target = drawn.target().vacuum();
        String what = "Probability that the vacuum is at least " + bench.units().exactPressure(target);
        ValueLayer layer = new ValueLayer(
                o.grid(),
                o.chanceOf(target),
                new ValueLayer.Subject(
                        what.toLowerCase(java.util.Locale.ROOT),
                        List.of(
                                what + ". The darker the likelier.",
                                "From " + o.forecasts().size() + " houses that explain the readings, each with a draw"
                                        + " of the model's own error."),
                        0,
                        1,
                        List.of(0.1, 0.5, 0.9),
                        p -> Math.round(100 * p) + " %"),
                plans.style().monochrome());
        return plans.plan(
                what + ", place by place",
                what + ": " + Words.percent(o.chanceThatAllMeet(target)) + " everywhere.",
                List.of(layer),
                List.of(),
                stale());
    }

    private Optional<Picture> width(Outlook o) {
        double[] low = o.quantile(0.05), high = o.quantile(0.95);
        double most = 0;
        for (int c = 0; c < low.length; c++) {
            high[c] -= low[c];
            if (!Double.isNaN(high[c])) most = Math.max(most, high[c]);
        }
        String symbol = bench.units().pressure().get().symbol();
        ValueLayer layer = new ValueLayer(
                o.grid(),
                high,
                ValueLayer.Subject.round(
                        "width of the 90 % range of the pressure",
                        List.of("Width of the range that holds the pressure nine times of ten, " + symbol
                                + ". The darker the less sure; a hole there tells more."),
                        0,
                        most,
                        bench.units().pressure().get().toSi(1),
                        bench.units().shown().get()::round),
                plans.style().monochrome());
        String words = "Width of the 90 % range of the pressure, at most "
                + bench.units().pressure(most);
        return plans.plan(words, words, List.of(layer), List.of(), stale());
    }
}

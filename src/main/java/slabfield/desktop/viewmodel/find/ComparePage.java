package slabfield.desktop.viewmodel.find;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.desktop.viewmodel.HoleRow;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.figure.Charts;
import slabfield.model.Stage;
import slabfield.readings.Comparison;

/** Each reading of a stage beside its prediction. */
final class ComparePage implements Page {
    private static final String PARITY = "Readings over predictions";
    private static final String MAP = "Map";

    private final Workbench bench;
    private final Plans plans;

    ComparePage(Workbench bench) {
        this.bench = bench;
        this.plans = new Plans(bench);
    }

    @Override
    public String title() {
        return "Compare";
    }

    @Override
    public String help() {
        return "Readings beside what was predicted for the house as it stood then; it follows every change.";
    }

    @Override
    public List<Job> jobs() {
        return List.of();
    }

    @Override
    public List<String> views() {
        return List.of(PARITY, MAP);
    }

    private Amounts amounts() {
        return new Amounts(bench.units());
    }

    @Override
    public Sheet sheet() {
        Optional<Comparison> made = bench.readings().comparison().get();
        List<String> words = new ArrayList<>();
        if (!bench.readings().note().get().isEmpty())
            words.add(bench.readings().note().get());
        made.ifPresent(c -> words.addAll(c.remarks()));
        words.add("The band is what meter, unrest and model explain. " + Amounts.SIGN);
        return new Sheet(
                made.map(this::headline).orElse("There are no readings to compare. Type them under Readings."),
                words,
                List.of(table()),
                stages());
    }

    /** The stages, of which one is compared. */
    private List<Sheet.Act> stages() {
        Optional<Stage> shown = bench.readings().stage().get();
        return bench.readings().stages().stream()
                .map(s -> new Sheet.Act(
                        s.id(),
                        "Compare stage " + s.id(),
                        () -> bench.readings().stage().set(Optional.of(s)),
                        Optional.of(shown.filter(s::equals).isPresent())))
                .toList();
    }

    private String headline(Comparison c) {
        long off = bench.readings().rows().stream().filter(HoleRow::off).count();
        String what = off == 0
                ? "No hole differs from its prediction by more than its band."
                : off + " of " + c.holes().size() + " holes " + (off == 1 ? "differs" : "differ")
                        + " from the prediction by more than the band.";
        return "Stage \u201c" + c.stage() + "\u201d: " + what;
    }

    private Sheet.Table table() {
        Amounts a = amounts();
        List<Sheet.Column> columns = List.of(
                Sheet.Column.words("Hole", 60),
                Sheet.Column.number(a.inPressure("Predicted"), 92),
                Sheet.Column.number(a.inPressure("Measured"), 92),
                Sheet.Column.number(a.inPressure("Difference"), 92),
                Sheet.Column.number(a.inPressure("\u00b1 Band"), 80),
                Sheet.Column.words("Verdict", 190),
                Sheet.Column.words("Found", 110));
        List<Sheet.Row> rows = bench.readings().rows().stream()
                .map(r -> new Sheet.Row(
                        List.of(
                                r.hole(),
                                a.number(r.predicted()),
                                a.number(r.measured()),
                                a.number(r.difference()),
                                a.number(r.band()),
                                r.verdict(),
                                r.found()),
                        r.off(),
                        Optional.of(new Sheet.Subject(
                                "Hole " + r.hole() + ": " + r.verdict(), Optional.empty(), Optional.of(r.at()))),
                        List.of()))
                .toList();
        return new Sheet.Table("Holes", columns, rows, List.of());
    }

    @Override
    public Optional<Picture> picture(String view, Optional<Glances.Glance> glance) {
        Optional<Comparison> made = bench.readings().comparison().get();
        if (view.equals(MAP) || made.isEmpty()) return plans.glance(view, glance, "");
        List<Charts.Pair> pairs = new ArrayList<>();
        for (Comparison.HoleComparison h : made.get().holes()) {
            OptionalDouble found = h.found(), expected = h.expected();
            if (found.isPresent() && expected.isPresent())
                pairs.add(new Charts.Pair(h.hole(), expected.getAsDouble(), found.getAsDouble(), h.band()));
        }
        if (pairs.isEmpty()) return plans.glance(view, glance, "");
        return Optional.of(
                new Picture.Drawn(
                        Charts.parity(
                                bench.document().scenario().get().name(),
                                made.get().stage(),
                                pairs,
                                plans.style()),
                        "MEASURED AND PREDICTED: each reading over its prediction. Above the line: less vacuum than predicted."));
    }
}

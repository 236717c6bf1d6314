package slabfield.validation;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** The table of all cases, the worst standing first. */
public final class ValidationIndex {
    private ValidationIndex() {}

    /** Outcomes in the order of the index. */
    public static List<Outcome> ordered(List<Outcome> outcomes) {
        return outcomes.stream()
                .sorted(Comparator.comparing(Outcome::verdict).thenComparing(o -> o.of().id()))
                .toList();
    }

    /** The index as Markdown. */
    static String text(List<Outcome> outcomes, String version) {
        List<Outcome> ordered = ordered(outcomes);
        long green = ordered.stream()
                .filter(o -> o.verdict() == Outcome.Verdict.GREEN)
                .count();
        int claims = ordered.stream().mapToInt(o -> o.checks().size()).sum();
        List<String> lines = new ArrayList<>(List.of(
                "# Validation",
                "",
                "Written by `slabfield validate` (" + version + "); do not edit. " + ordered.size() + " cases with "
                        + claims + " numbers; " + green + " cases are green.",
                "",
                "Each folder holds the case (`case.json`), its source (`SOURCE.md`), the source's numbers (`reference.csv`), the"
                        + " last accepted values (`baseline.csv`) and what the last run found (`report.md`, `figure.svg`). The"
                        + " tolerance comes from the source; where it, or the case, was set after a first run, `SOURCE.md` says so. The control is a change that"
                        + " must turn the case red; each run makes it and looks. \"Worst\" is the largest error in parts of its"
                        + " tolerance: 1 is the edge. `docs/limits.md` says where the model is known to be wrong, and [MISSING.md](MISSING.md) which evidence could not"
                        + " be had.",
                "",
                "| case | kind | verdict | worst | source | control | covers |",
                "| --- | --- | --- | ---: | --- | --- | --- |"));
        ordered.forEach(o -> lines.add(row(o)));
        lines.addAll(List.of("", "## Known misses", ""));
        List<Outcome> missed =
                ordered.stream().filter(o -> o.of().missed().isPresent()).toList();
        if (missed.isEmpty()) lines.add("None.");
        missed.forEach(
                o -> lines.add("- " + o.of().id() + ": " + o.of().missed().orElseThrow()));
        return String.join("\n", lines) + "\n";
    }

    private static String row(Outcome o) {
        String name = o.of().id().substring(0, 4) + " " + o.of().title();
        String control = o.of().control()
                + (o.control().works()
                        ? ": " + o.control().red() + " of " + o.control().of() + " red"
                        : "");
        return "| "
                + String.join(
                        " | ",
                        "[" + name + "](" + o.of().id() + "/report.md)",
                        o.of().kind().word(),
                        o.verdict().word(),
                        String.format(Locale.ROOT, "%.2f", o.worst()),
                        o.of().source(),
                        control,
                        String.join(", ", o.of().covers()))
                + " |";
    }
}

package slabfield.validation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The page that a run writes into its case's folder. */
final class CaseReport {
    private CaseReport() {}

    /** @param version of the program */
    static String text(Outcome outcome, String version) {
        ValidationCase of = outcome.of();
        List<String> lines = new ArrayList<>(List.of(
                "# " + of.id().substring(0, 4) + " " + of.title(),
                "",
                "Written by `slabfield validate` (" + version + "); do not edit.",
                "",
                "**Question.** " + of.tree().path("question").asText(),
                "",
                "**Verdict: " + outcome.verdict().word() + ".** Kind: "
                        + of.kind().word() + ". Source: " + of.source() + " (`SOURCE.md`). Covers: "
                        + String.join(", ", of.covers()) + ".",
                ""));
        of.missed().ifPresent(why -> lines.addAll(List.of("**Missed, and known to be:** " + why, "")));
        outcome.problem().ifPresent(why -> lines.addAll(List.of("**Cannot be run:** " + why, "")));
        if (outcome.problem().isEmpty()) {
            claims(outcome, lines);
            refinement(outcome, lines);
            control(outcome, lines);
        }
        lines.addAll(List.of(
                "",
                "## What this does not show",
                "",
                of.tree().path("doesNotShow").asText()));
        return String.join("\n", lines) + "\n";
    }

    private static void claims(Outcome outcome, List<String> lines) {
        lines.addAll(List.of(
                "| number | unit | source | ours | error | tolerance | | accepted |",
                "| --- | --- | ---: | ---: | ---: | ---: | --- | --- |"));
        for (Outcome.Check c : outcome.checks()) {
            Claim claim = c.claim();
            String error = claim.reference().isEmpty() || claim.reference().getAsDouble() == 0
                    ? ""
                    : Numbers.percent(c.ours() / claim.reference().getAsDouble() - 1);
            lines.add("| "
                    + String.join(
                            " | ",
                            claim.name(),
                            claim.unit(),
                            source(claim),
                            Numbers.value(c.ours(), 6),
                            error,
                            claim.tolerance(),
                            c.agrees() ? "agrees" : "**RED**",
                            standing(c))
                    + " |");
        }
        lines.addAll(List.of(
                "", "![Errors in parts of the tolerance, or the curve](figure.svg)", "", "Why these tolerances:", ""));
        outcome.checks().stream().map(c -> c.claim().why()).distinct().forEach(why -> lines.add("- " + why));
    }

    private static String source(Claim claim) {
        if (claim.reference().isPresent())
            return Numbers.value(claim.reference().getAsDouble(), 6);
        if (Double.isInfinite(claim.high())) return "at least " + Numbers.value(claim.low(), 4);
        return Numbers.value(claim.low(), 4) + " to " + Numbers.value(claim.high(), 4);
    }

    private static String standing(Outcome.Check c) {
        if (c.baseline().isEmpty()) return "never accepted";
        return c.stands() ? "stands" : "was " + Numbers.value(c.baseline().getAsDouble(), 10);
    }

    private static void refinement(Outcome outcome, List<String> lines) {
        if (!outcome.of().solves()) return;
        lines.addAll(List.of(
                "",
                "## Mass balance",
                "",
                "Largest imbalance of its scenarios, in parts of the flow through them: "
                        + Numbers.imbalance(outcome.imbalance()) + "."));
        if (outcome.refined().isEmpty()) return;
        List<Outcome.Refined> grids = outcome.refined();
        String heads = String.join(
                " | ",
                grids.stream()
                        .map(g -> Numbers.value(g.cell() * 100, 3) + " cm")
                        .toList());
        lines.addAll(List.of(
                "",
                "## Finer and coarser cells",
                "",
                "The order is that of the error where the source is exact, else that of the changes from grid to grid. It is"
                        + " left out where the errors are rounding, or do not fall one after the other.",
                "",
                "| number | " + heads + " | order |",
                "| --- |" + " ---: |".repeat(grids.size() + 1)));
        for (int i = 0; i < outcome.checks().size(); i++) {
            int claim = i;
            List<Double> values = grids.stream().map(g -> g.values().get(claim)).toList();
            if (values.get(0).isNaN()) continue;
            lines.add("| " + outcome.checks().get(i).claim().name() + " | "
                    + String.join(
                            " | ", values.stream().map(v -> Numbers.value(v, 6)).toList()) + " | "
                    + order(outcome, outcome.checks().get(i).claim(), values) + " |");
        }
    }

    /** Observed order of convergence from three grids. */
    private static String order(Outcome outcome, Claim claim, List<Double> v) {
        boolean exact =
                outcome.of().kind() == Kind.ANALYTIC && claim.reference().isPresent();
        double ref = claim.reference().orElse(Double.NaN);
        double coarse = exact ? v.get(0) - ref : v.get(0) - v.get(1),
                fine = exact ? v.get(2) - ref : v.get(1) - v.get(2);
        double middle = exact ? v.get(1) - ref : Double.NaN;
        double scale = Math.abs(v.get(2));
        boolean falls = coarse * fine > 0
                && Math.abs(fine) < Math.abs(coarse)
                && (!exact
                        || (middle * fine > 0
                                && Math.abs(middle) < Math.abs(coarse)
                                && Math.abs(fine) < Math.abs(middle)));
        if (!falls || Math.abs(fine) < 1e-7 * scale) return "";
        double halvings = exact ? 2 : 1;
        return String.format(Locale.ROOT, "%.2f", Math.log(coarse / fine) / Math.log(2) / halvings);
    }

    private static void control(Outcome outcome, List<String> lines) {
        Outcome.Control c = outcome.control();
        String did = c.broke()
                .map(why -> "the changed case cannot be run: " + why)
                .orElse(
                        c.works()
                                ? "turns " + c.red() + " of " + c.of() + " red, as it must"
                                : "**turns nothing red: too loose**");
        lines.addAll(List.of("", "## Control", "", "\"" + outcome.of().control() + "\" " + did + "."));
    }
}

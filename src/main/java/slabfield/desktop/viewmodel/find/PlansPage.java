package slabfield.desktop.viewmodel.find;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import slabfield.advice.Combinations;
import slabfield.advice.CombinedPlan;
import slabfield.desktop.viewmodel.Advising;
import slabfield.desktop.viewmodel.Edit;
import slabfield.desktop.viewmodel.HouseSearch;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Words;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.figure.Charts;

/** Measures put together, and the plans that no other beats. */
final class PlansPage extends Asked<Combinations> {
    private static final int STEPS = 3;
    private static final String FRONTIER = "Vacuum over room air";

    PlansPage(Workbench bench, TaskRunner runner) {
        super(
                bench,
                runner,
                new Names(
                        "Plans",
                        "Measures put together: vacuum against room air drawn, and power where it is known.",
                        "Put measures together",
                        "there is nothing to improve on"),
                (house, progress) -> Combinations.search(house, STEPS, Phases.part(progress, 0, 1)),
                new HouseSearch.Phrases(
                        "Puts up to " + STEPS + " measures together, step by step; nothing is changed.",
                        "Putting measures together",
                        "search",
                        "Search again."),
                c -> Words.count(c.frontier().best().size(), "plan", "plans")
                        + " that no other beats, found step by step; there may be better ones.");
    }

    @Override
    public List<String> views() {
        return List.of(FRONTIER, Plans.WITH, Plans.CHANGE);
    }

    @Override
    Sheet sheet(Combinations found) {
        List<CombinedPlan> best = found.frontier().best();
        Optional<CombinedPlan> thrifty = best.stream()
                .filter(CombinedPlan::meets)
                .min(java.util.Comparator.comparingDouble(p -> p.flows().fromRoom()));
        String headline = thrifty.map(p -> "Least room air on target: " + words(p) + " \u2013 "
                        + bench.units().flow(p.flows().fromRoom()) + ", weakest place "
                        + bench.units().pressure(-p.coverage().weakest()) + ".")
                .orElse("No plan of up to " + STEPS + " measures meets the target everywhere.");
        List<String> words = List.of(
                "Numbers of one house, as drawn; each step counts after those before it."
                        + (found.frontier().byPower() ? " Room air and power count." : " Room air counts."),
                Amounts.SIGN);
        return new Sheet(headline, words, List.of(table(best)), List.of());
    }

    private String words(CombinedPlan p) {
        return p.measures().isEmpty()
                ? "As drawn"
                : p.measures().stream()
                        .map(m -> Advising.words(m, bench.units()))
                        .collect(Collectors.joining("; "));
    }

    private Sheet.Table table(List<CombinedPlan> best) {
        Amounts a = amounts();
        List<Sheet.Column> columns = List.of(
                Sheet.Column.number("#", 36),
                Sheet.Column.words("Plan", 560),
                Sheet.Column.number(a.inPressure("Weakest place"), 110),
                Sheet.Column.number("Area on\ntarget", 90),
                Sheet.Column.number(a.inFlow("Room air"), 100),
                Sheet.Column.number("Power\n[W]", 80));
        List<Sheet.Row> rows = new ArrayList<>();
        for (CombinedPlan p : best) {
            String watts =
                    p.watts().isPresent() ? String.valueOf(Math.round(p.watts().getAsDouble())) : Amounts.NONE;
            boolean apply = !p.measures().isEmpty() && !stale();
            rows.add(new Sheet.Row(
                    List.of(
                            String.valueOf(rows.size() + 1),
                            words(p),
                            a.weakest(p.coverage().weakest()),
                            Words.percent(p.coverage().meeting()),
                            a.flow(p.flows().fromRoom()),
                            watts),
                    false,
                    Optional.of(new Sheet.Subject(
                            words(p),
                            Optional.of(p.apply(bench.document().scenario().get())),
                            Optional.empty())),
                    apply ? List.of(new Sheet.Act("Apply all", "Apply all: " + words(p), () -> apply(p))) : List.of()));
        }
        return new Sheet.Table(
                "Plans that no other beats, from the weakest vacuum to the strongest", columns, rows, List.of());
    }

    private void apply(CombinedPlan p) {
        bench.document().edit(Edit.of("apply a plan", p::apply));
    }

    @Override
    public Optional<Picture> picture(String view, Optional<Glances.Glance> glance) {
        Optional<Combinations> found = search.found().get();
        if (found.isEmpty() || !view.equals(FRONTIER))
            return plans.glance(view, glance, found.isEmpty() ? "" : "Point at a plan to see the house with it.");
        List<Charts.Choice> choices = new ArrayList<>();
        List<CombinedPlan> best = found.get().frontier().best();
        for (CombinedPlan p : best)
            choices.add(new Charts.Choice(
                    String.valueOf(choices.size() + 1),
                    p.flows().fromRoom(),
                    p.coverage().weakest()));
        for (CombinedPlan p : found.get().frontier().dominated())
            choices.add(new Charts.Choice("", p.flows().fromRoom(), p.coverage().weakest()));
        var house = bench.document().scenario().get();
        return Optional.of(new Picture.Drawn(
                Charts.frontier(
                        house.name(),
                        choices,
                        Charts.Price.ROOM_AIR,
                        house.target().vacuum(),
                        plans.style()),
                "PREDICTED: vacuum held against the air drawn from the room. Numbers are those of the table."));
    }
}

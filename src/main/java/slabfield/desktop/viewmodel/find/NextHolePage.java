package slabfield.desktop.viewmodel.find;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import slabfield.advice.DrillPlaces;
import slabfield.desktop.drawing.Makers;
import slabfield.desktop.viewmodel.Edit;
import slabfield.desktop.viewmodel.HouseSearch;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Words;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.siting.HoleLayout;
import slabfield.siting.NextHole;

/** Where to drill the next test hole. */
final class NextHolePage extends Asked<NextHolePage.Found> {
    private static final int PLACES = 5;
    private static final double PREPARE = 0.5;
    private static final String MAP = "Map";

    record Found(NextHole next, Plans.Mask mask) {}

    NextHolePage(Workbench bench, Explained explained, TaskRunner runner) {
        super(
                bench,
                runner,
                new Names(
                        "Next hole",
                        "Where the next test hole would tell most about whether the target is met.",
                        "Look for places",
                        "no hole can tell anything"),
                (house, progress) -> new Found(
                        NextHole.suggest(
                                explained.houses(house, NextHole.USUAL_HOUSES, Phases.part(progress, 0, PREPARE)),
                                PLACES,
                                Phases.part(progress, PREPARE, 1)),
                        Plans.Mask.of(house, DrillPlaces.forHoles(house))),
                new HouseSearch.Phrases(
                        "Solves plausible houses and asks where one reading more would settle most; nothing is changed.",
                        "Solving plausible houses",
                        "search",
                        "Search again."),
                f -> Words.count(f.next().houses(), "plausible house", "plausible houses") + " solved, "
                        + f.next().basis().words() + ".");
    }

    @Override
    public List<String> views() {
        return List.of(MAP);
    }

    @Override
    Sheet sheet(Found found) {
        NextHole next = found.next();
        List<String> words = new ArrayList<>();
        if (next.places().isEmpty())
            words.add(
                    "There is no place left to drill: all of the slab is kept from drilling or too close to something.");
        else if (next.tellsNothing()) words.add("No single hole would tell much more than is known now.");
        else if (next.settled())
            words.add(
                    "Pass or fail is as good as settled, so the places are ranked by what they tell of the vacuum itself.");
        words.add("Doubt now " + bits(next.doubtNow()) + " of 1 bit about pass or fail, "
                + bench.units().pressure(next.scatterNow()) + " about the vacuum at the weakest place.");
        for (HoleLayout.Shortfall s : next.shortfalls())
            words.add(s.words()
                    + s.around()
                            .map(p -> " Try around " + bench.units().about(p) + ".")
                            .orElse(""));
        words.add("Locate what is buried before you drill. " + Amounts.SIGN);
        String headline = "Odds that the weakest place meets "
                + bench.units()
                        .exactPressure(
                                -bench.document().scenario().get().target().vacuum()) + ": "
                + Words.percent(next.meets()) + ", " + next.basis().words() + ".";
        return new Sheet(headline, words, List.of(table(next)), List.of());
    }

    private static String bits(double bits) {
        return Amounts.decimals(bits, 2);
    }

    private Sheet.Table table(NextHole next) {
        Amounts a = amounts();
        List<Sheet.Column> columns = List.of(
                Sheet.Column.number("#", 36),
                Sheet.Column.words("Place", 190),
                Sheet.Column.number("Doubt left\n[bit]", 90),
                Sheet.Column.number(a.inPressure("Scatter left"), 100),
                Sheet.Column.number(a.inPressure("Expected there,\n9 of 10"), 170),
                Sheet.Column.words("Also mends", 240));
        List<Sheet.Row> rows = new ArrayList<>();
        for (NextHole.Place p : next.places()) {
            String where = bench.units().about(p.at());
            rows.add(new Sheet.Row(
                    List.of(
                            String.valueOf(rows.size() + 1),
                            where,
                            bits(p.doubtLeft()),
                            bench.units().pressureNumber(p.scatterLeft()),
                            bench.units().pressureNumber(p.pressure().low()) + " to "
                                    + bench.units().pressureNumber(p.pressure().high()),
                            p.mends().stream()
                                    .map(m -> m.rule()
                                            .name()
                                            .toLowerCase(Locale.ROOT)
                                            .replace('_', ' '))
                                    .distinct()
                                    .collect(Collectors.joining(", "))),
                    false,
                    Optional.of(new Sheet.Subject("Next hole at " + where, Optional.empty(), Optional.of(p.at()))),
                    stale()
                            ? List.of()
                            : List.of(new Sheet.Act("Draw it", "Draw a test hole at " + where, () -> draw(p)))));
        }
        return new Sheet.Table("Best places for the next hole, each by itself", columns, rows, List.of());
    }

    private void draw(NextHole.Place p) {
        bench.document()
                .edit(Edit.of("draw the next hole", s -> Makers.hole(s, p.at()).scenario()));
    }

    @Override
    public Optional<Picture> picture(String view, Optional<Glances.Glance> glance) {
        Optional<Found> found = search.found().get();
        if (found.isEmpty()) return plans.glance(view, Optional.empty(), "");
        List<slabfield.model.Point> marks =
                found.get().next().places().stream().map(NextHole.Place::at).toList();
        String words =
                "Numbered places for the next hole on the predicted pressure; grey: not to be drilled, or it would only repeat";
        return plans.plan(
                words,
                words,
                List.of(
                        found.get()
                                .mask()
                                .layer(
                                        "no test hole here: kept from drilling, or too near to an edge, footing, opening or hole")),
                marks,
                stale());
    }
}

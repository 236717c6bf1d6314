package slabfield.desktop.viewmodel.find;

import java.util.List;
import java.util.Optional;
import slabfield.advice.Advisor;
import slabfield.advice.TestCover;
import slabfield.desktop.viewmodel.HouseSearch;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Words;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.model.Scenario;

/** What a temporary cover over each opening would show: the cheapest way to learn whether it leaks. */
final class CoversPage extends Asked<List<TestCover>> {
    CoversPage(Workbench bench, TaskRunner runner) {
        super(
                bench,
                runner,
                new Names(
                        "Covers",
                        "What a temporary cover over each opening would show: the cheapest way to learn whether it leaks.",
                        "Try covers",
                        "a cover can show nothing"),
                (house, progress) -> Advisor.covers(house, Phases.part(progress, 0, 1)),
                new HouseSearch.Phrases(
                        "Lays a cover over each opening in turn; nothing is changed.",
                        "Trying a cover over each opening",
                        "search",
                        "Try again."),
                c -> Words.count(c.size(), "cover", "covers") + " tried.");
    }

    @Override
    public List<String> views() {
        return Plans.GLANCES;
    }

    @Override
    Sheet sheet(List<TestCover> all) {
        String headline = all.isEmpty()
                ? "Nothing is open, so there is nothing to cover."
                : all.get(0).tells()
                        ? "Cover " + all.get(0).measure().id() + " first: it would show most."
                        : "No cover would show anything that a meter sees.";
        return new Sheet(
                headline,
                List.of("Cover one at a time, wait, and read the holes and the flow again. " + Amounts.SIGN),
                List.of(table(all)),
                List.of());
    }

    private Sheet.Table table(List<TestCover> all) {
        Amounts a = amounts();
        List<Sheet.Column> columns = List.of(
                Sheet.Column.words("Cover for a test", 250),
                        Sheet.Column.number(a.inPressure("Largest gain\nat a hole"), 130),
                Sheet.Column.number(a.inFlow("Exhaust"), 130), Sheet.Column.words("Does it tell?", 320));
        Scenario house = bench.document().scenario().get();
        List<Sheet.Row> rows = all.stream()
                .map(c -> new Sheet.Row(
                        List.of(
                                c.measure().id(),
                                bench.units().pressureNumber(-c.largestGain()),
                                a.flow(c.exhaustBefore()) + " \u2192 " + a.flow(c.exhaustAfter()),
                                c.tells() ? "yes: no change means no leak" : "no: too small to see"),
                        false,
                        Optional.of(new Sheet.Subject(
                                c.measure().words(), Optional.of(c.measure().apply(house)), Optional.empty())),
                        List.of()))
                .toList();
        return new Sheet.Table(
                "What a temporary cover would show if the opening leaks as drawn", columns, rows, List.of());
    }

    @Override
    public Optional<Picture> picture(String view, Optional<Glances.Glance> glance) {
        return plans.glance(
                view, glance, search.found().get().isEmpty() ? "" : "Point at a cover to see the house with it.");
    }
}

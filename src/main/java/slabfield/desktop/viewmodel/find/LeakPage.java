package slabfield.desktop.viewmodel.find;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import slabfield.desktop.viewmodel.HouseSearch;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Words;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.figure.ValueLayer;
import slabfield.siting.LeakMap;

/** Where one leak more would explain the readings. */
final class LeakPage extends Asked<LeakMap> {
    private static final double FIT = 0.6;
    private static final String MAP = "Map";

    LeakPage(Workbench bench, Explained explained, TaskRunner runner) {
        super(
                bench,
                runner,
                new Names(
                        "Leak map",
                        "Where a leak that nobody drew would explain the readings, or that they do not say.",
                        "Look for a leak",
                        "no leak can be looked for"),
                (house, progress) ->
                        LeakMap.of(explained.fit(house, Phases.part(progress, 0, FIT)), Phases.part(progress, FIT, 1)),
                new HouseSearch.Phrases(
                        "Fits the house, then tries one leak more in every cell; nothing is changed.",
                        "Trying a leak in every cell",
                        "search",
                        "Search again."),
                m -> Words.count(m.readings(), "number", "numbers") + " read.");
    }

    @Override
    public List<String> views() {
        return List.of(MAP);
    }

    private static String number(double gain) {
        return Amounts.decimals(gain, 1);
    }

    @Override
    Sheet sheet(LeakMap map) {
        String answer = map.readingsSay()
                ? "A leak more would explain the readings better: best gain " + number(map.bestGain()) + "; from "
                        + number(LeakMap.LEAST) + " it is worth a look."
                : "The readings do not say: no single leak that is not drawn explains them much better (best gain "
                        + number(map.bestGain()) + "; from " + number(LeakMap.LEAST) + " it is worth a look).";
        List<String> words = List.of(
                "If there is just one leak more, it lies with 90 % in the likeliest "
                        + Words.percent(map.region() / map.area())
                        + " of the slab. Check with smoke, or cover the spot and read again.",
                "Gain: natural logarithm of how much more likely the readings are with the leak than without. Many leaks can look like one.");
        return new Sheet(answer, words, List.of(table(map)), List.of());
    }

    private Sheet.Table table(LeakMap map) {
        Amounts a = amounts();
        List<Sheet.Column> columns = List.of(
                Sheet.Column.number("#", 36),
                Sheet.Column.words("Place", 200),
                Sheet.Column.number("Gain", 80),
                Sheet.Column.number(a.inFlow("Air let in"), 110),
                Sheet.Column.words("Drawn opening within a metre", 260));
        List<Sheet.Row> rows = new ArrayList<>();
        for (LeakMap.Place p : map.places())
            rows.add(new Sheet.Row(
                    List.of(
                            String.valueOf(rows.size() + 1),
                            bench.units().about(p.at()),
                            number(p.gain()),
                            a.flow(p.flow()),
                            p.nearest().orElse(Amounts.NONE)),
                    false,
                    Optional.of(new Sheet.Subject(
                            "Leak at " + bench.units().about(p.at()), Optional.empty(), Optional.of(p.at()))),
                    List.of()));
        return new Sheet.Table(
                "Likely places, best first",
                columns,
                rows,
                rows.isEmpty() ? List.of("No place is named, because the readings do not say.") : List.of());
    }

    @Override
    public Optional<Picture> picture(String view, Optional<Glances.Glance> glance) {
        Optional<LeakMap> found = search.found().get();
        if (found.isEmpty()) return plans.glance(view, Optional.empty(), "");
        LeakMap map = found.get();
        ValueLayer layer = new ValueLayer(
                map.grid(),
                map.gain(),
                ValueLayer.Subject.round(
                        "where one leak more would explain the readings",
                        List.of(
                                "Gain of one leak more at a place: natural logarithm of how much likelier the readings are with it. The darker the likelier;"
                                        + " below " + number(LeakMap.LEAST) + " the readings do not say."),
                        0,
                        Math.max(LeakMap.LEAST, map.bestGain()),
                        1,
                        v -> Amounts.decimals(v, v == Math.rint(v) ? 0 : 1)),
                plans.style().monochrome());
        String words = "Where one leak more would explain the readings: best gain " + number(map.bestGain());
        return plans.plan(
                words,
                words,
                List.of(layer),
                map.places().stream().map(LeakMap.Place::at).toList(),
                stale());
    }
}

package slabfield.desktop.viewmodel.find;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import slabfield.advice.DrillPlaces;
import slabfield.advice.Measure;
import slabfield.desktop.viewmodel.Advising;
import slabfield.desktop.viewmodel.HouseSearch;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Words;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.figure.MaskLayer;
import slabfield.figure.ValueLayer;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;
import slabfield.network.PlacementMap;
import slabfield.network.SlabSolver;

/** What one more suction point would do, for every place where it could be cored. */
final class PlacementPage extends Asked<PlacementPage.Found> {
    private static final SuctionPoint.Pit PIT = new SuctionPoint.Pit(0.15);
    private static final int PLACES = 5;
    /** Places named are at least this far apart, so that they are choices [m]. */
    private static final double APART = 2;

    private static final String MAP = "Map of places";

    /**
     * What was found.
     *
     * @param places named, best first, by their cells
     */
    record Found(Scenario house, Source source, PlacementMap map, List<Integer> places, Plans.Mask mask) {}

    PlacementPage(Workbench bench, TaskRunner runner) {
        super(
                bench,
                runner,
                new Names(
                        "Placement",
                        "Vacuum left at the weakest place if the next suction point were cored at each place.",
                        "Try every place",
                        "no further one can be placed"),
                PlacementPage::find,
                new HouseSearch.Phrases(
                        "Asks of every place what a further suction point there would do; nothing is changed.",
                        "Trying places",
                        "search",
                        "Search again."),
                f -> "A further point that draws as \u201c"
                        + f.house().suctionPoints().get(0).id() + "\u201d does, at every place.");
    }

    private static Found find(Scenario house, Progress progress) {
        SuctionPoint like = house.suctionPoints().get(0);
        Source source =
                like.source() instanceof Source.Branch ? new Source.Pressure(pressure(house, like)) : like.source();
        PlacementMap map = PlacementMap.of(
                        house,
                        new PlacementMap.Question(PIT, source, PlacementMap.USUAL_SPACING),
                        Phases.part(progress, 0, 1))
                .orElseThrow(() -> new IllegalStateException("the house as drawn has no solution."));
        DrillPlaces allowed = DrillPlaces.forCores(house);
        return new Found(house, source, map, named(map, allowed), Plans.Mask.of(house, allowed));
    }

    private static double pressure(Scenario house, SuctionPoint like) {
        if (SlabSolver.solve(house, SlabSolver.Extent.FAN_ON_ONLY, Progress.NONE) instanceof Result.Solved s)
            return s.suction(like.id()).orElseThrow().pressure();
        throw new IllegalStateException("the house as drawn has no solution.");
    }

    private static List<Integer> named(PlacementMap map, DrillPlaces allowed) {
        List<Integer> order = IntStream.range(0, map.weakest().length)
                .filter(c -> !Double.isNaN(map.weakest()[c]))
                .boxed()
                .sorted(Comparator.comparingDouble(c -> -map.weakest()[c]))
                .toList();
        List<Integer> out = new ArrayList<>();
        for (int c : order) {
            if (out.size() == PLACES) break;
            if (out.stream().allMatch(k -> map.at(k).distanceTo(map.at(c)) >= APART) && allowed.allows(map.at(c)))
                out.add(c);
        }
        return List.copyOf(out);
    }

    @Override
    public List<String> views() {
        return List.of(MAP, Plans.WITH, Plans.CHANGE);
    }

    @Override
    Sheet sheet(Found f) {
        PlacementMap map = f.map();
        String now = "Weakest place now " + bench.units().pressure(-map.weakestNow()) + ", "
                + Words.percent(map.coveredNow() / map.area()) + " of the area on target. ";
        String best = f.places().isEmpty()
                ? "There is no place left to core."
                : "A further point at place 1 would make it "
                        + bench.units().pressure(-map.weakest()[f.places().get(0)]) + ".";
        List<String> words = List.of(
                "Numbers of one house, as drawn. The point draws as the first one does, from a pit of "
                        + bench.units().length(PIT.radius()) + " radius."
                        + (map.misfit() > 0
                                ? " Places predict each other to " + Words.percent(map.misfit()) + "."
                                : ""),
                "Locate what is buried and ask about the slab before you core. " + Amounts.SIGN);
        return new Sheet(now + best, words, List.of(table(f)), List.of());
    }

    private Sheet.Table table(Found f) {
        Amounts a = amounts();
        List<Sheet.Column> columns = List.of(
                Sheet.Column.number("#", 36),
                Sheet.Column.words("Place", 200),
                Sheet.Column.number(a.inPressure("Weakest place"), 150),
                Sheet.Column.number("Area on target", 130),
                Sheet.Column.number(a.inFlow("It draws"), 110));
        List<Sheet.Row> rows = new ArrayList<>();
        for (int c : f.places()) rows.add(row(f, c, rows.size() + 1));
        return new Sheet.Table("Best places for a further suction point, each by itself", columns, rows, List.of());
    }

    private Sheet.Row row(Found f, int cell, int rank) {
        PlacementMap map = f.map();
        Point at = map.at(cell);
        Measure core = new Measure.AddSuction("S" + (f.house().suctionPoints().size() + 1), at, PIT, f.source());
        String where = bench.units().about(at);
        return new Sheet.Row(
                List.of(
                        String.valueOf(rank),
                        where,
                        amounts().change(map.weakestNow(), map.weakest()[cell]),
                        Amounts.percents(map.coveredNow() / map.area(), map.covered()[cell] / map.area()),
                        amounts().flow(map.flow()[cell])),
                false,
                Optional.of(new Sheet.Subject(
                        "a further suction point at " + where, Optional.of(core.apply(f.house())), Optional.of(at))),
                stale()
                        ? List.of()
                        : List.of(new Sheet.Act(
                                "Core here",
                                Advising.words(core, bench.units()),
                                () -> bench.advising().apply(core))));
    }

    @Override
    public Optional<Picture> picture(String view, Optional<Glances.Glance> glance) {
        Optional<Found> found = search.found().get();
        if (found.isEmpty() || !view.equals(MAP))
            return plans.glance(view, glance, found.isEmpty() ? "" : "Choose a place to see the house with the point.");
        Found f = found.get();
        String symbol = bench.units().pressure().get().symbol();
        double best = f.map().best().isPresent()
                ? f.map().weakest()[f.map().best().getAsInt()]
                : f.map().weakestNow();
        double least = Math.max(0, Math.min(f.map().weakestNow(), best));
        ValueLayer layer = new ValueLayer(
                f.map().grid(),
                f.map().weakest(),
                ValueLayer.Subject.round(
                        "pressure left at the weakest place by a further point",
                        List.of("Pressure at the weakest place if the next point were cored at a place, " + symbol
                                + ". " + Amounts.SIGN + " The darker the better the place."),
                        least,
                        Math.max(best, least + 1e-3),
                        bench.units().pressure().get().toSi(1),
                        v -> bench.units().shown().get().round(-v)),
                plans.style().monochrome());
        MaskLayer mask =
                f.mask().layer("no core here: kept from drilling, or too near to an edge, footing, opening or pit");
        String words = "Pressure at the weakest place if the next point were cored there; now "
                + bench.units().pressure(-f.map().weakestNow());
        return plans.plan(
                words,
                words,
                List.of(layer, mask),
                f.places().stream().map(f.map()::at).toList(),
                stale());
    }
}

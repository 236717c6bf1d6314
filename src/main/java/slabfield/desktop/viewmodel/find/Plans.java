package slabfield.desktop.viewmodel.find;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import slabfield.advice.DrillPlaces;
import slabfield.desktop.viewmodel.Headline;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.field.Grid;
import slabfield.field.Result;
import slabfield.figure.ChangeLayer;
import slabfield.figure.MapFoot;
import slabfield.figure.MapStyle;
import slabfield.figure.MarksLayer;
import slabfield.figure.MaskLayer;
import slabfield.figure.PlanLayer;
import slabfield.model.Point;
import slabfield.model.Scenario;

/** Pictures of the plan that the pages share. */
final class Plans {
    static final String WITH = "With it";
    static final String CHANGE = "Change";
    /** Pictures of what is pointed at. */
    static final List<String> GLANCES = List.of(WITH, CHANGE);

    private static final double MASK = 0.1;
    private static final int MOST_CELLS = 40_000;

    private final Workbench bench;

    Plans(Workbench bench) {
        this.bench = bench;
    }

    MapStyle style() {
        return bench.look().style().get();
    }

    Optional<Result.Solved> now() {
        return bench.solving().picture().get().solved();
    }

    /** The plan of the house as it is predicted, with layers and marks. */
    Optional<Picture> plan(
            String caption, String description, List<PlanLayer> layers, List<Point> marks, boolean stale) {
        return now().map(s ->
                new Picture.Plan(s, laid(layers, marks, s.scenario(), stale), !layers.isEmpty(), caption, description));
    }

    private List<PlanLayer> laid(List<PlanLayer> layers, List<Point> marks, Scenario house, boolean stale) {
        List<PlanLayer> out = new ArrayList<>(layers);
        if (!marks.isEmpty()) out.add(numbered(marks));
        out.add(new MapFoot(
                stale ? "PREDICTED, OUT OF DATE" : "PREDICTED",
                style().units(),
                house.plan().north()));
        return out;
    }

    /** Marks with the numbers of a table's rows. */
    static MarksLayer numbered(List<Point> at) {
        List<MarksLayer.Mark> marks = new ArrayList<>();
        for (Point p : at) marks.add(new MarksLayer.Mark(p, String.valueOf(marks.size() + 1)));
        return new MarksLayer(marks, Optional.empty());
    }

    /** What somebody points at, or the house as it is. */
    Optional<Picture> glance(String view, Optional<Glances.Glance> glance, String hint) {
        if (now().isEmpty()) return Optional.empty();
        if (glance.isEmpty())
            return plan(
                    "The house as drawn. " + hint,
                    Headline.summary(bench.solving().picture().get(), bench.units()),
                    List.of(),
                    List.of(),
                    false);
        String words = glance.get().subject().words();
        if (glance.get().result().isEmpty()) {
            String state = glance.get().failed()
                    ? "No solution: "
                    : glance.get().subject().house().isPresent() ? "Solving: " : "";
            return plan(
                    state + words,
                    state + words,
                    List.of(),
                    glance.get().subject().at().stream().toList(),
                    false);
        }
        return Optional.of(glanced(view, words, glance.get().result().get(), now().get()));
    }

    private Picture glanced(String view, String words, Result.Solved with, Result.Solved now) {
        boolean change = view.equals(CHANGE);
        List<PlanLayer> layers = change ? List.of(new ChangeLayer(now, with, style())) : List.of();
        Amounts amounts = new Amounts(bench.units());
        String weakest = "weakest place "
                + amounts.change(now.coverage().weakest(), with.coverage().weakest()) + " "
                + bench.units().pressure().get().symbol() + ", on target "
                + Amounts.percents(now.coverage().meeting(), with.coverage().meeting());
        String caption = (change ? "Change by: " : "With: ") + words + " \u2013 " + weakest;
        return new Picture.Plan(
                with, laid(layers, List.of(), with.scenario(), false), false, caption, "Map of the house. " + caption);
    }

    /** Cells of a plan where something may not be drilled. */
    record Mask(Grid grid, boolean[] masked) {
        static Mask of(Scenario house, DrillPlaces allowed) {
            double left = Double.MAX_VALUE, bottom = left, right = -left, top = -left;
            for (var slab : house.slabs())
                for (Point p : slab.outline()) {
                    left = Math.min(left, p.x());
                    right = Math.max(right, p.x());
                    bottom = Math.min(bottom, p.y());
                    top = Math.max(top, p.y());
                }
            double side = Math.max(MASK, Math.sqrt((right - left) * (top - bottom) / MOST_CELLS));
            Grid grid = new Grid(left, bottom, side, side, (int) Math.ceil((right - left) / side), (int)
                    Math.ceil((top - bottom) / side));
            boolean[] masked = new boolean[grid.cells()];
            for (int c = 0; c < masked.length; c++)
                masked[c] = !allowed.allows(new Point(grid.x(c % grid.columns()), grid.y(c / grid.columns())));
            return new Mask(grid, masked);
        }

        MaskLayer layer(String words) {
            return new MaskLayer(grid, masked, words);
        }
    }
}

package slabfield.figure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.field.Result;
import slabfield.model.Opening;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.model.SuctionPoint;
import slabfield.model.TestHole;

/** The plan within a box: field, house, signs at points, then labels where room is left. */
final class Plan {
    private static final double LABEL_EVERY = 230;
    private static final double LARGE = 1.4;

    private final Canvas canvas;
    private final Scenario scenario;
    private final Optional<Result.Solved> solved;
    private final Optional<VacuumScale> scale;
    private final MapStyle style;
    private final UnitsShown units;
    private final PlanView view;
    private final Box box;
    private final Ink ink;
    private final Symbols symbols;
    private final Labels labels;
    private final List<PlanLayer> layers;
    /** True where a layer shows the test holes by itself. */
    private final boolean ownHoles;

    private int leftOut;

    Plan(Canvas canvas, Result result, MapStyle style, List<PlanLayer> layers, PlanView view, Box box) {
        this.layers = layers;
        this.canvas = canvas;
        this.scenario = result.scenario();
        boolean predicted = layers.stream().noneMatch(PlanLayer::hidesPrediction);
        this.solved = result instanceof Result.Solved s && predicted ? Optional.of(s) : Optional.empty();
        this.ownHoles = !predicted;
        this.scale = solved.map(s -> VacuumMap.scale(s, style));
        this.style = style;
        this.units = style.units();
        this.view = view;
        this.box = box;
        this.ink = new Ink(style.fontScale());
        this.symbols = new Symbols(canvas, ink);
        this.labels = new Labels(box);
    }

    /** Draws it; returns how many labels of suction points and holes found no room. */
    int draw() {
        canvas.clipped(List.of(box.ring()), () -> {
            List<double[]> slabs = Lines.rings(scenario.slabs(), view);
            canvas.fill(slabs, Ink.GROUND);
            List<FieldLayer.Labelled> lines = new ArrayList<>();
            boolean hidden = layers.stream().anyMatch(PlanLayer::hidesField);
            if (!hidden)
                solved.ifPresent(s ->
                        lines.addAll(new FieldLayer(canvas, s, scale.orElseThrow(), style, view, box).draw(slabs)));
            canvas.clipped(slabs, () -> lay(PlanLayer.Depth.FIELD));
            new HouseLayer(canvas, scenario, view, ink).draw();
            signs();
            if (style.labels()) write(lines);
            lay(PlanLayer.Depth.TOP);
        });
        return leftOut;
    }

    private void lay(PlanLayer.Depth depth) {
        for (PlanLayer layer : layers) if (layer.depth() == depth) layer.draw(canvas, view, box, ink.size());
    }

    private void signs() {
        if (!ownHoles)
            for (TestHole hole : scenario.testHoles()) {
                double x = view.pageX(hole.at().x()), y = view.pageY(hole.at().y());
                measured(scenario, hole.id()).ifPresent(p -> symbols.measured(x, y, colour(p)));
                OptionalDouble predicted = predicted(hole.id());
                symbols.hole(x, y, predicted.isPresent() ? colour(predicted.getAsDouble()) : Ink.GROUND);
            }
        weakest()
                .ifPresent(w -> symbols.weakest(
                        view.pageX(w.weakestAt().x()), view.pageY(w.weakestAt().y())));
        for (SuctionPoint point : scenario.suctionPoints())
            symbols.suction(view.pageX(point.at().x()), view.pageY(point.at().y()));
    }

    private int colour(double pressure) {
        return scale.map(s -> s.argb(pressure)).orElse(Ink.GROUND);
    }

    private OptionalDouble predicted(String hole) {
        return solved.flatMap(s -> s.hole(hole)).map(Result.Hole::fanOn).orElse(OptionalDouble.empty());
    }

    private Optional<Result.Coverage> weakest() {
        return solved.map(Result.Solved::coverage).filter(c -> !Double.isNaN(c.weakest()));
    }

    /** What the latest stage with the house as drawn read at a hole with the suction on [Pa]. */
    static OptionalDouble measured(Scenario scenario, String hole) {
        OptionalDouble latest = OptionalDouble.empty();
        for (Stage stage : scenario.stages())
            if (stage.asDrawn())
                for (Stage.HoleReading reading : stage.holes())
                    if (reading.hole().equals(hole) && reading.fanOn().isPresent()) latest = reading.fanOn();
        return latest;
    }

    private void write(List<FieldLayer.Labelled> lines) {
        double reach = symbols.reach();
        Lines.rings(scenario.slabs(), view).forEach(labels::shun);
        for (PlanLayer layer : layers)
            layer.keepsFree(canvas, view, box, ink.size()).forEach(labels::take);
        for (TestHole hole : scenario.testHoles()) take(hole.at(), reach);
        for (SuctionPoint point : scenario.suctionPoints()) take(point.at(), reach);
        weakest().ifPresent(w -> take(w.weakestAt(), reach));
        for (Opening opening : scenario.openings())
            if (opening.place() instanceof Opening.Spot spot) take(spot.at(), reach);
        for (SuctionPoint point : scenario.suctionPoints()) note(point.at(), point.id(), suctionText(point.id()), true);
        if (!ownHoles) for (TestHole hole : scenario.testHoles()) note(hole.at(), hole.id(), holeText(hole.id()), true);
        weakest().ifPresent(w -> note(w.weakestAt(), "weakest", labelled(-w.weakest()), false));
        lines.stream()
                .filter(FieldLayer.Labelled::target)
                .max(Comparator.comparingDouble(l -> Lines.length(l.line())))
                .ifPresent(this::target);
        for (FieldLayer.Labelled line : lines) if (!line.target()) along(line);
        for (Opening opening : scenario.openings())
            if (opening.place() instanceof Opening.Spot spot)
                note(spot.at(), "", opening.id() + ", " + opening.seal().state().word(), false);
    }

    private void take(slabfield.model.Point at, double reach) {
        labels.take(Box.around(view.pageX(at.x()), view.pageY(at.y()), reach));
    }

    private String suctionText(String id) {
        return solved.flatMap(s -> s.suction(id))
                .map(s -> pressure(s.pressure()) + ", " + units.flow(s.flow()) + " " + units.flowSymbol())
                .orElse("");
    }

    private String holeText(String id) {
        OptionalDouble predicted = predicted(id), measured = measured(scenario, id);
        String first = predicted.isPresent() ? units.pressure(predicted.getAsDouble()) : "no pressure";
        if (measured.isPresent())
            return (solved.isPresent() ? first + " / " : "measured ") + labelled(measured.getAsDouble());
        if (solved.isEmpty()) return "";
        return predicted.isPresent() ? labelled(predicted.getAsDouble()) : first;
    }

    private String pressure(double si) {
        return units.pressure(si) + " " + units.pressureSymbol();
    }

    /** A pressure whose unit is left to the legend where letters are large. */
    private String labelled(double si) {
        return compact(style) ? units.pressure(si) : pressure(si);
    }

    /** Whether letters are so large that labels of holes leave their unit to the legend. */
    static boolean compact(MapStyle style) {
        return style.fontScale() > LARGE;
    }

    /** A name and a value beside a sign, on a veil; with a leader where it stands far off. */
    private void note(slabfield.model.Point at, String name, String value, boolean needed) {
        double x = view.pageX(at.x()), y = view.pageY(at.y()), size = ink.body(), pad = 0.25 * size;
        if (!box.holds(Box.around(x, y, 0))) return;
        var bold = ink.bold(Ink.DARK);
        var plain = name.isEmpty() ? ink.fine(Ink.DARK) : ink.text(Ink.DARK);
        double gap = name.isEmpty() || value.isEmpty() ? 0 : 0.4 * size, nameWidth = canvas.textWidth(name, bold);
        double width = nameWidth + gap + canvas.textWidth(value, plain) + 2 * pad;
        double near = symbols.reach() + 1.5 * ink.size();
        double[] gaps = {near, 2.5 * near, 4.5 * near, 7 * near};
        if (!needed) gaps = Arrays.copyOf(gaps, name.isEmpty() ? 1 : 2);
        var place = labels.place(x, y, width, 1.35 * size, gaps);
        if (place.isEmpty()) {
            if (needed) leftOut++;
            return;
        }
        Box b = place.get();
        leader(x, y, b, near);
        canvas.fill(List.of(b.ring()), Ink.VEIL);
        double base = (b.top() + b.bottom()) / 2 + 0.36 * size;
        canvas.text(name, b.left() + pad, base, Canvas.Anchor.START, 0, bold);
        canvas.text(value, b.left() + pad + nameWidth + gap, base, Canvas.Anchor.START, 0, plain);
    }

    private void leader(double x, double y, Box label, double near) {
        double toX = Math.max(label.left(), Math.min(label.right(), x));
        double toY = Math.max(label.top(), Math.min(label.bottom(), y));
        double distance = Math.hypot(toX - x, toY - y), from = symbols.reach() / distance;
        if (distance < 1.6 * near) return;
        double[] line = {x + from * (toX - x), y + from * (toY - y), toX, toY};
        canvas.line(line, false, ink.solid(Ink.WHITE, 2.6));
        canvas.line(line, false, ink.solid(Ink.DARK, 0.8));
    }

    /** Along the line, or beside its middle where that finds no room. */
    private void target(FieldLayer.Labelled line) {
        if (along(line)) return;
        double[] middle = Lines.at(line.line(), Lines.length(line.line()) / 2);
        note(view.plan(middle[0], middle[1]), line.text(), "", true);
    }

    private boolean along(FieldLayer.Labelled line) {
        var lettering = ink.rimmed(line.target() ? ink.body() : ink.small(), line.target());
        double width = canvas.textWidth(line.text(), lettering);
        int most = line.target() ? 1 : Math.max(1, (int) (Lines.length(line.line()) / (LABEL_EVERY * ink.size())));
        List<LineLabels.Spot> spots = LineLabels.places(line.line(), width, lettering.size(), most, labels);
        for (LineLabels.Spot spot : spots) {
            double drop = 0.36 * lettering.size();
            if (line.target()) canvas.fill(List.of(veil(spot, width, lettering.size())), 0xF0FFFFFF);
            canvas.text(
                    line.text(),
                    spot.x() - drop * Math.sin(spot.angle()),
                    spot.y() + drop * Math.cos(spot.angle()),
                    Canvas.Anchor.MIDDLE,
                    spot.angle(),
                    lettering);
        }
        return !spots.isEmpty();
    }

    private static double[] veil(LineLabels.Spot spot, double width, double size) {
        double c = Math.cos(spot.angle()), s = Math.sin(spot.angle()), half = width / 2 + 0.2 * size;
        double ux = half * c, uy = half * s, vx = -0.6 * size * s, vy = 0.6 * size * c;
        double x = spot.x(), y = spot.y();
        return new double[] {
            x - ux - vx, y - uy - vy, x + ux - vx, y + uy - vy, x + ux + vx, y + uy + vy, x - ux + vx, y - uy + vy
        };
    }
}

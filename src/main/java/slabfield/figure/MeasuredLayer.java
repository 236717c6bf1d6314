package slabfield.figure;

import java.util.List;
import java.util.OptionalDouble;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.model.TestHole;

/** What was measured at the holes at one stage, and nothing between them: no field is made up from a few readings. */
public final class MeasuredLayer implements PlanLayer {
    private static final double SQUARE = 13;

    private final Scenario scenario;
    private final Stage stage;
    private final VacuumScale scale;
    private final UnitsShown units;

    /** @param scale of the map, so that measured and predicted colours agree */
    public MeasuredLayer(Scenario scenario, Stage stage, VacuumScale scale, UnitsShown units) {
        this.scenario = scenario;
        this.stage = stage;
        this.scale = scale;
        this.units = units;
    }

    @Override
    public String heading() {
        return "readings with the suction on, relative to the room";
    }

    @Override
    public boolean hidesField() {
        return true;
    }

    @Override
    public boolean hidesPrediction() {
        return true;
    }

    @Override
    public Depth depth() {
        return Depth.TOP;
    }

    @Override
    public void draw(Canvas canvas, PlanView view, Box box, double fontScale) {
        Ink ink = new Ink(fontScale);
        double u = ink.size(), r = SQUARE * u;
        Labels labels = new Labels(box);
        for (TestHole hole : scenario.testHoles()) {
            OptionalDouble read = read(hole.id());
            double x = view.pageX(hole.at().x()), y = view.pageY(hole.at().y());
            labels.take(Box.around(x, y, r + 1.5 * u));
            canvas.fill(List.of(Box.around(x, y, r + 1.5 * u).ring()), Ink.WHITE);
            canvas.fill(
                    List.of(Box.around(x, y, r).ring()),
                    read.isPresent() ? scale.argb(read.getAsDouble()) : Ink.GROUND);
            canvas.line(Box.around(x, y, r).ring(), true, ink.solid(Ink.DARK, 1.4));
            boolean dark = read.isPresent()
                    && OkLab.ofArgb(scale.argb(read.getAsDouble())).l() < 0.6;
            canvas.text(
                    hole.id(),
                    x,
                    y + 0.36 * ink.body(),
                    Canvas.Anchor.MIDDLE,
                    0,
                    ink.bold(dark ? Ink.WHITE : Ink.DARK));
        }
        for (TestHole hole : scenario.testHoles()) value(canvas, view, hole, labels, ink);
    }

    /** The reading beside its square, where nothing else stands. */
    private void value(Canvas canvas, PlanView view, TestHole hole, Labels labels, Ink ink) {
        OptionalDouble read = read(hole.id());
        String text = read.isPresent() ? units.pressure(read.getAsDouble()) + " " + units.pressureSymbol() : "not read";
        double width = canvas.textWidth(text, ink.bold(Ink.DARK)) + 6 * ink.size(), near = (SQUARE + 3) * ink.size();
        labels.place(
                        view.pageX(hole.at().x()),
                        view.pageY(hole.at().y()),
                        width,
                        1.4 * ink.body(),
                        near,
                        1.6 * near,
                        2.4 * near)
                .ifPresent(b -> {
                    canvas.fill(List.of(b.ring()), Ink.VEIL);
                    canvas.text(
                            text,
                            b.left() + 3 * ink.size(),
                            b.bottom() - 0.36 * ink.body(),
                            Canvas.Anchor.START,
                            0,
                            ink.bold(Ink.DARK));
                });
    }

    private OptionalDouble read(String hole) {
        return stage.holes().stream()
                .filter(h -> h.hole().equals(hole))
                .map(Stage.HoleReading::fanOn)
                .findFirst()
                .orElse(OptionalDouble.empty());
    }

    @Override
    public void explain(Key key, double fontScale) {
        Ink ink = new Ink(fontScale);
        key.paragraph("Readings of \"" + stage.id()
                + "\" with the suction on, relative to the room. Negative = soil under vacuum. Between the"
                + " holes nothing was measured, so nothing is drawn.");
        key.entry(
                (canvas, x, y, half) -> {
                    Box box = Box.around(x, y, 5 * ink.size());
                    canvas.fill(List.of(box.ring()), scale.argb(scale.range().low() / 3));
                    canvas.line(box.ring(), true, ink.solid(Ink.DARK, 1.2));
                },
                "test hole, coloured by its reading");
    }
}

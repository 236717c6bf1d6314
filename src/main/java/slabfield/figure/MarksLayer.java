package slabfield.figure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import slabfield.model.Point;

/** Places that somebody pinned, with what was read there, and the line of a profile. */
public final class MarksLayer implements PlanLayer {
    private static final int PIN = 0xFF0B5CAD;
    private static final double PAD = 3;

    /** A pinned place and what is written beside it. */
    public record Mark(Point at, String text) {}

    private final List<Mark> marks;
    private final Optional<Profile> profile;

    public MarksLayer(List<Mark> marks, Optional<Profile> profile) {
        this.marks = List.copyOf(marks);
        this.profile = profile;
    }

    @Override
    public Depth depth() {
        return Depth.TOP;
    }

    @Override
    public void draw(Canvas canvas, PlanView view, Box box, double fontScale) {
        Ink ink = new Ink(fontScale);
        profile.ifPresent(p -> line(canvas, view, p, ink));
        for (Mark m : marks) pin(canvas, view.pageX(m.at().x()), view.pageY(m.at().y()), m.text(), box, ink);
    }

    private static void line(Canvas canvas, PlanView view, Profile p, Ink ink) {
        double u = ink.size();
        double[] line = {
            view.pageX(p.from().x()), view.pageY(p.from().y()), view.pageX(p.to().x()), view.pageY(p.to().y())
        };
        canvas.line(line, false, ink.solid(Ink.WHITE, 4));
        canvas.line(line, false, ink.dashed(PIN, 2, 7, 3));
        double dx = line[2] - line[0], dy = line[3] - line[1], d = Math.max(1e-9, Math.hypot(dx, dy));
        String[] names = {"A", "B"};
        for (int i = 0; i < 2; i++) {
            double x = line[2 * i], y = line[2 * i + 1], away = i == 0 ? -1 : 1;
            canvas.line(
                    new double[] {x - 5 * u * dy / d, y + 5 * u * dx / d, x + 5 * u * dy / d, y - 5 * u * dx / d},
                    false,
                    ink.solid(PIN, 2));
            canvas.text(
                    names[i],
                    x + away * 9 * u * dx / d,
                    y + away * 9 * u * dy / d + 3 * u,
                    Canvas.Anchor.MIDDLE,
                    0,
                    ink.rimmed(1.15 * ink.body(), true));
        }
    }

    @Override
    public List<Box> keepsFree(Canvas measure, PlanView view, Box box, double fontScale) {
        Ink ink = new Ink(fontScale);
        List<Box> out = new ArrayList<>();
        for (Mark m : marks) {
            double x = view.pageX(m.at().x()), y = view.pageY(m.at().y());
            out.add(label(measure, x, y, m.text(), box, ink));
            out.add(Box.around(x, y, 3.4 * ink.size()));
        }
        return out;
    }

    private static Box label(Canvas measure, double x, double y, String text, Box box, Ink ink) {
        double u = ink.size(),
                width = measure.textWidth(text, ink.text(Ink.DARK)) + 2 * PAD * u,
                tall = 1.5 * ink.body();
        double left = x + 9 * u + width > box.right() ? x - 9 * u - width : x + 9 * u;
        return new Box(left, y - 15 * u - tall / 2, left + width, y - 15 * u + tall / 2);
    }

    private static void pin(Canvas canvas, double x, double y, String text, Box box, Ink ink) {
        double u = ink.size();
        Box label = label(canvas, x, y, text, box, ink);
        double[] tie = {x, y, label.left() < x ? label.right() : label.left(), y - 15 * u};
        canvas.line(tie, false, ink.solid(PIN, 1));
        canvas.fill(List.of(label.ring()), Ink.WHITE);
        canvas.line(label.ring(), true, ink.solid(PIN, 1));
        double base = y - 15 * u + 0.36 * ink.body();
        canvas.text(text, label.left() + PAD * u, base, Canvas.Anchor.START, 0, ink.text(Ink.DARK));
        canvas.fill(List.of(Lines.circle(x, y, 3.4 * u)), Ink.WHITE);
        canvas.fill(List.of(Lines.circle(x, y, 2.4 * u)), PIN);
    }
}

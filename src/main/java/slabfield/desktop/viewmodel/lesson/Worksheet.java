package slabfield.desktop.viewmodel.lesson;

import java.util.ArrayList;
import java.util.List;
import slabfield.field.Result;
import slabfield.figure.Bounds;
import slabfield.figure.Box;
import slabfield.figure.Canvas;
import slabfield.figure.Figure;
import slabfield.figure.MapStyle;
import slabfield.figure.PlanView;
import slabfield.figure.UnitsShown;
import slabfield.figure.VacuumMap;
import slabfield.figure.VacuumScale.Sense;

/**
 * A lesson on paper: the house before the change and the questions with boxes to tick; on the key also the house after, the
 * right answers and why.
 *
 * @param items questions with their answers
 * @param explanation with its numbers filled in
 * @param withKey whether the outcome is shown
 */
public record Worksheet(
        Lesson lesson, Course.Solved solved, List<Item> items, String explanation, boolean withKey, UnitsShown units)
        implements Figure {
    private static final double MARGIN = 36;
    private static final int DARK = 0xFF18222E;
    private static final double SIZE = 10;
    private static final double LINE = 1.35 * SIZE;
    private static final double GAP = 16;

    /** A question and its answer. */
    public record Item(String question, String answer) {}

    @Override
    public String title() {
        return lesson.title() + (withKey ? " \u2013 key" : "");
    }

    @Override
    public String description() {
        return (withKey ? "Answer key" : "Worksheet") + " of the lesson \u201c" + lesson.title() + "\u201d.";
    }

    @Override
    public double height(Canvas measure, double width) {
        return new Page(measure, width, false).flow() + MARGIN;
    }

    @Override
    public void draw(Canvas canvas) {
        new Page(canvas, canvas.width(), true).flow();
    }

    /** One pass down the page, which draws or only measures. */
    private final class Page {
        private final Canvas canvas;
        private final double width;
        private final boolean draws;
        private double y = MARGIN;

        Page(Canvas canvas, double width, boolean draws) {
            this.canvas = canvas;
            this.width = width;
            this.draws = draws;
        }

        double flow() {
            text(title(), 17, true, 0);
            y += 4;
            if (!withKey) text("Name: ______________________________     Date: ____________", SIZE, false, 0);
            y += 4;
            text(lesson.story(), SIZE, false, 0);
            y += 8;
            maps();
            int number = 1;
            for (Item item : items) question(number++, item);
            if (withKey) {
                y += 6;
                text("Why", SIZE, true, 0);
                text(explanation, SIZE, false, 0);
            }
            y += 6;
            text(
                    "Predicted by a model: steady flow in one layer, seen from above. Invented house. Negative = soil under vacuum relative to the room.",
                    8,
                    false,
                    0);
            return y;
        }

        private void question(int number, Item item) {
            y += 6;
            text(number + ". " + item.question(), SIZE, true, 0);
            if (withKey) {
                text(item.answer(), SIZE, false, 14);
                return;
            }
            for (Change c : Change.values()) {
                box();
                text(c.words(), SIZE, false, 30);
            }
        }

        private void box() {
            if (draws)
                canvas.line(
                        new Box(MARGIN + 14, y + 2.2, MARGIN + 23, y + 11.2).ring(), true, Canvas.Pen.solid(DARK, 0.8));
        }

        /** Before alone; on the key before and after beside each other, on one scale. */
        private void maps() {
            MapStyle style = MapStyle.of(units).with(solved.range(Sense.SIGNED, 1));
            double room = width - 2 * MARGIN, side = (room - GAP) / 2;
            Bounds bounds = Bounds.of(solved.before().scenario());
            double high = side * bounds.height() / bounds.width() + 6;
            map(lesson.beforeName(), solved.before(), new Box(MARGIN, y, MARGIN + side, y + high + LINE), style);
            Box right = new Box(MARGIN + side + GAP, y, width - MARGIN, y + high + LINE);
            if (withKey) map(lesson.afterName(), solved.after(), right, style);
            else if (draws) {
                label(lesson.afterName() + ": sketch what you expect", right);
                canvas.line(
                        new Box(right.left() + 4, right.top() + LINE + 4, right.right() - 4, right.bottom() - 4).ring(),
                        true,
                        Canvas.Pen.dashed(DARK, 0.8, 4.0, 3.0));
            }
            y += high + LINE + 10;
        }

        private void map(String name, Result.Solved house, Box box, MapStyle style) {
            if (!draws) return;
            label(name, box);
            Box plan = new Box(box.left(), box.top() + LINE, box.right(), box.bottom());
            VacuumMap.drawPlan(canvas, house, style, PlanView.fit(Bounds.of(house.scenario()), plan.inset(4)), plan);
        }

        private void label(String name, Box box) {
            canvas.text(
                    name,
                    box.left(),
                    box.top() + SIZE,
                    Canvas.Anchor.START,
                    0,
                    new Canvas.Lettering(SIZE, true, DARK, 0));
        }

        private void text(String words, double size, boolean bold, double indent) {
            var letters = new Canvas.Lettering(size, bold, DARK, 0);
            for (String line : wrapped(words, width - 2 * MARGIN - indent, letters)) {
                if (draws) canvas.text(line, MARGIN + indent, y + size, Canvas.Anchor.START, 0, letters);
                y += 1.35 * size;
            }
        }

        private List<String> wrapped(String words, double room, Canvas.Lettering letters) {
            List<String> lines = new ArrayList<>();
            String line = "";
            for (String word : words.strip().split(" +")) {
                String longer = line.isEmpty() ? word : line + " " + word;
                if (!line.isEmpty() && canvas.textWidth(longer, letters) > room) {
                    lines.add(line);
                    line = word;
                } else line = longer;
            }
            lines.add(line);
            return lines;
        }
    }
}

package slabfield.desktop.viewmodel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import slabfield.desktop.drawing.Frame;
import slabfield.desktop.drawing.Places;
import slabfield.desktop.drawing.Snap;
import slabfield.desktop.drawing.Snapper;
import slabfield.desktop.drawing.Typed;
import slabfield.model.Point;
import slabfield.model.Scenario;

/** Drawing something new: the places taken so far, the pointer's, and what is typed. */
final class Drafting {
    /** What is done with the places once they are enough. */
    interface Finish {
        /** A line or outline was drawn. */
        void drawn(List<Point> points);

        /** A place was clicked that is no end of a line: on an edge, before any point; true where that was all. */
        boolean clicked(Snap at, Pointer pointer);
    }

    private static final double BESIDE = 1;
    private static final double SAME = 1e-6;

    private final Document document;
    private final Layers layers;
    private final Units units;
    private final List<Point> points = new ArrayList<>();
    private final TypedFields typed = new TypedFields();
    private Tool tool = Tool.SELECT;
    private Optional<Snap> cursor = Optional.empty();
    private Optional<Snap> pressed = Optional.empty();
    private Snapper snapper;
    private Scenario snapsTo;
    private double snapGrid;

    Drafting(Document document, Layers layers, Units units) {
        this.document = document;
        this.layers = layers;
        this.units = units;
    }

    void use(Tool other) {
        tool = other;
        clear();
        cursor = Optional.empty();
    }

    void clear() {
        points.clear();
        typed.clear();
        pressed = Optional.empty();
    }

    boolean isBegun() {
        return !points.isEmpty() || !typed.isEmpty();
    }

    /** Whether a letter belongs to a measure: it begins like a number, or one is begun. */
    boolean isBegunByTyping(String letter) {
        return !typed.isEmpty() || "0123456789.,+-".contains(letter);
    }

    void hover(Pointer p) {
        cursor = Optional.of(snap(p));
    }

    void leave() {
        cursor = Optional.empty();
    }

    private Snap snap(Pointer p) {
        if (p.free()) return Snap.free(p.at());
        double grid = units.grid(p.reach());
        if (snapsTo != document.scenario().get() || grid != snapGrid) {
            snapsTo = document.scenario().get();
            snapGrid = grid;
            snapper = new Snapper(snapsTo, List.of(), layers.shown().get(), grid);
        }
        Optional<Point> close =
                points.stream().filter(q -> q.distanceTo(p.at()) <= p.reach()).findFirst();
        if (close.isPresent()) return new Snap(close.get(), Snap.Sort.CORNER, List.of());
        return snapper.snap(p.at(), last(), p.reach());
    }

    private Optional<Point> last() {
        return points.isEmpty() ? Optional.empty() : Optional.of(points.get(points.size() - 1));
    }

    /** The place with what is typed held fixed; text that is no number yet holds nothing. */
    private Snap held(Snap free) {
        if (typed.isEmpty()) return free;
        try {
            return new Snap(typedPlace(free.at()), Snap.Sort.STRAIGHT, free.guides());
        } catch (IllegalArgumentException unfinished) {
            return free;
        }
    }

    void press(Pointer p) {
        cursor = Optional.of(snap(p));
        pressed = Optional.of(held(cursor.get()));
    }

    /** The button is up: a drag is a whole rectangle or piece, a click a place. */
    void release(Pointer p, Finish finish) {
        if (pressed.isEmpty()) return;
        Snap from = pressed.get();
        boolean dragged = p.at().distanceTo(from.at()) > 2.5 * p.reach();
        pressed = Optional.empty();
        if (!points.isEmpty() || !dragged) {
            click(from, p, finish);
            return;
        }
        points.add(from.at());
        Point to = held(snap(p)).at();
        points.clear();
        if (tool.style() == Tool.Style.SPOT || to.distanceTo(from.at()) < SAME) click(from, p, finish);
        else finish.drawn(isArea() ? Places.rectangle(from.at(), to) : List.of(from.at(), to));
    }

    private boolean isArea() {
        return tool.style() == Tool.Style.AREA || tool.style() == Tool.Style.RECTANGLE;
    }

    private void click(Snap at, Pointer p, Finish finish) {
        if (points.isEmpty() && !p.add() && finish.clicked(at, p)) typed.clear();
        else place(at.at(), finish);
    }

    private void place(Point at, Finish finish) {
        typed.clear();
        if (tool.style() == Tool.Style.SPOT) {
            finish.drawn(List.of(at));
            return;
        }
        boolean closes = points.size() > 2 && points.get(0).distanceTo(at) < SAME;
        if (closes) close(finish);
        else if (last().filter(q -> q.distanceTo(at) < SAME).isPresent()) {
            if (!isArea()) enough(finish);
        } else {
            points.add(at);
            boolean two = points.size() == 2;
            if (two && tool.style() == Tool.Style.RECTANGLE) done(Places.rectangle(points.get(0), at), finish);
            else if (two && (tool.style() == Tool.Style.SPAN || tool.style() == Tool.Style.MEASURE))
                done(List.copyOf(points), finish);
        }
    }

    private void close(Finish finish) {
        List<Point> ring = new ArrayList<>(points);
        if (!isArea()) ring.add(points.get(0));
        done(ring, finish);
    }

    private void done(List<Point> drawn, Finish finish) {
        List<Point> all = List.copyOf(drawn);
        clear();
        finish.drawn(all);
    }

    /**
     * Takes what is typed, or ends the line.
     *
     * @throws IllegalArgumentException where what is typed is no measure, with words for the user
     */
    void enter(Finish finish) {
        if (typed.isEmpty()) {
            enough(finish);
            return;
        }
        boolean sizeAlone = tool.style() == Tool.Style.RECTANGLE && points.isEmpty();
        Point to = typedPlace(cursor.map(Snap::at).orElse(new Point(0, 0)));
        if (sizeAlone) points.add(firstCorner());
        place(to, finish);
    }

    private void enough(Finish finish) {
        int fewest = isArea() ? 3 : 2;
        if (points.size() >= fewest) done(points, finish);
    }

    /** Where a rectangle begins whose size alone is typed: at the origin, or beside what is there. */
    private Point firstCorner() {
        List<Point> all = document.scenario().get().slabs().stream()
                .flatMap(s -> s.outline().stream())
                .toList();
        if (all.isEmpty()) return new Point(0, 0);
        Frame frame = Frame.about(all);
        return Places.whole(frame.right() + BESIDE, frame.low());
    }

    /** The place that is typed, in the direction of the pointer where no angle is given. */
    private Point typedPlace(Point towards) {
        Optional<Point> from = last();
        if (tool.style() == Tool.Style.RECTANGLE) {
            Point corner = from.orElseGet(this::firstCorner);
            double width = length(typed.first(), towards.x() - corner.x()),
                    depth = length(typed.second(), towards.y() - corner.y());
            return Places.moved(
                    corner,
                    signed(width, towards.x() - corner.x(), from),
                    signed(depth, towards.y() - corner.y(), from));
        }
        if (from.isEmpty())
            return Places.whole(length(typed.first(), towards.x()), length(typed.second(), towards.y()));
        double length = length(typed.first(), from.get().distanceTo(towards));
        double angle = typed.second().isBlank() ? Places.angle(from.get(), towards) : Typed.angle(typed.second());
        return Places.at(from.get(), length, angle);
    }

    private static double signed(double size, double towards, Optional<Point> from) {
        return from.isPresent() && towards < 0 ? -Math.abs(size) : size;
    }

    private double length(String text, double otherwise) {
        return text.isBlank() ? otherwise : Typed.length(text, units.length().get());
    }

    TypedFields typed() {
        return typed;
    }

    /** Names of the two numbers that can be typed now. */
    List<String> names() {
        if (tool.style() == Tool.Style.RECTANGLE) return List.of("width", "depth");
        return points.isEmpty() ? List.of("x", "y") : List.of("length", "angle");
    }

    void backspace() {
        if (!typed.isEmpty()) typed.backspace();
        else if (!points.isEmpty()) points.remove(points.size() - 1);
    }

    Sketch sketch() {
        if (cursor.isEmpty() && !isBegun()) return Sketch.NONE;
        Snap here = held(cursor.orElseGet(() -> Snap.free(last().orElseGet(this::firstCorner))));
        List<Point> line = new ArrayList<>(points);
        Optional<Point> begun = points.isEmpty() ? pressed.map(Snap::at) : Optional.empty();
        begun.ifPresent(line::add);
        if (line.isEmpty() && tool.style() == Tool.Style.RECTANGLE && !typed.isEmpty()) line.add(firstCorner());
        line.add(here.at());
        boolean rectangle = line.size() == 2 && (tool.style() == Tool.Style.RECTANGLE || isArea() && begun.isPresent());
        List<Point> shown = rectangle ? Places.rectangle(line.get(0), line.get(1)) : line;
        return new Sketch(shown, isArea() && shown.size() > 2, false, Optional.of(here), words(line, rectangle));
    }

    private String words(List<Point> line, boolean rectangle) {
        if (!typed.isEmpty()) return typed.words(names());
        if (line.size() < 2) return units.place(line.get(0));
        Point a = line.get(line.size() - 2), b = line.get(line.size() - 1);
        if (rectangle) {
            double width = Math.abs(b.x() - a.x()), depth = Math.abs(b.y() - a.y());
            return units.length(width) + " \u00d7 " + units.length(depth) + "  =  " + units.area(width * depth);
        }
        long degrees = Math.round(Math.toDegrees(Places.angle(a, b)));
        return units.length(a.distanceTo(b)) + "   " + degrees + "\u00b0";
    }
}

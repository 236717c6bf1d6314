package slabfield.desktop.viewmodel;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import slabfield.desktop.drawing.Makers;
import slabfield.desktop.drawing.Places;
import slabfield.desktop.drawing.Snap;
import slabfield.desktop.drawing.Typed;
import slabfield.model.Path;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Slab;

/** Makes things of what was drawn, as the tool says. */
final class Finisher implements Drafting.Finish {
    private static final double USUAL_GAP = 0.9;
    private static final double USUAL_BREAK = 0.3;
    private static final double NO_LENGTH = 1e-6;

    private final Document document;
    private final Selection selection;
    private final Units units;
    private final Supplier<Tool> tool;
    private final Consumer<String> say;
    private List<Point> span = List.of();
    private String typed = "";
    private boolean said;

    Finisher(Document document, Selection selection, Units units, Supplier<Tool> tool, Consumer<String> say) {
        this.document = document;
        this.selection = selection;
        this.units = units;
        this.tool = tool;
        this.say = say;
    }

    @Override
    public void drawn(List<Point> points) {
        Point first = points.get(0), last = points.get(points.size() - 1);
        said = false;
        switch (tool.get()) {
            case SELECT -> {}
            case OUTLINE, RECTANGLE -> outline(points, Makers::slab);
            case ZONE -> outline(points, Makers::zone);
            case NO_DRILL -> outline(points, Makers::noDrill);
            case CUT_OUT -> made(s -> Makers.cutOut(s, points), "A cut-out lies inside a slab; begin it there.");
            case BARRIER -> make(s -> Makers.barrier(s, points));
            case TILE -> make(s -> Makers.tile(s, new Path(points)));
            case WALL -> make(s -> Makers.wall(s, points));
            case JOINT -> make(s -> Makers.joint(s, points));
            case CRACK -> make(s -> Makers.crack(s, points));
            case OPENING -> make(s -> Makers.spot(s, first));
            case SUCTION -> make(s -> Makers.suction(s, first));
            case HOLE -> make(s -> Makers.hole(s, first));
            case GAP -> gap(Places.middle(first, last), first.distanceTo(last));
            case BREAK -> tileBreak(Places.middle(first, last), first.distanceTo(last));
            case MEASURE -> tell(measure(first, last));
            case SCALE, CHECK -> ask(points);
        }
    }

    private interface Maker {
        Makers.Made of(Scenario scenario);
    }

    private interface MayMake {
        Optional<Makers.Made> of(Scenario scenario);
    }

    private interface Outline {
        Makers.Made of(Scenario scenario, List<Point> corners);
    }

    private void outline(List<Point> corners, Outline maker) {
        if (Math.abs(Places.twiceArea(corners)) < NO_LENGTH)
            tell("These corners enclose no area; draw them further apart.");
        else make(s -> maker.of(s, corners));
    }

    private void make(Maker maker) {
        made(s -> Optional.of(maker.of(s)), "");
    }

    private void made(MayMake maker, String otherwise) {
        Optional<Makers.Made> made = maker.of(document.scenario().get());
        if (made.isEmpty()) tell(otherwise);
        else {
            document.edit(
                    Edit.of("draw " + made.get().item().title(), s -> made.get().scenario()));
            selection.set(List.of(made.get().item()));
        }
    }

    private void gap(Point at, double length) {
        made(
                s -> Makers.gap(s, at, length > NO_LENGTH ? length : USUAL_GAP),
                "A gap lies in a barrier; draw the barrier first.");
    }

    private void tileBreak(Point at, double length) {
        made(
                s -> Makers.tileBreak(s, at, length > NO_LENGTH ? length : USUAL_BREAK),
                "A break lies in a tile; draw the tile first.");
    }

    /** A click on a slab's edge stands for the whole edge, for the tools that usually follow one. */
    @Override
    public boolean clicked(Snap at, Pointer p) {
        said = false;
        if (tool.get() == Tool.GAP) gap(at.at(), 0);
        else if (tool.get() == Tool.BREAK) tileBreak(at.at(), 0);
        else {
            return along(p.at(), p.reach());
        }
        return true;
    }

    private boolean along(Point at, double reach) {
        for (Slab slab : document.scenario().get().slabs())
            for (int i = 0; i < slab.outline().size(); i++) {
                Point a = slab.outline().get(i),
                        b = slab.outline().get((i + 1) % slab.outline().size());
                boolean near = Places.nearest(at, a, b).distanceTo(at) <= reach;
                if (!near || a.distanceTo(at) <= reach || b.distanceTo(at) <= reach) continue;
                switch (tool.get()) {
                    case WALL -> make(s -> Makers.wall(s, List.of(a, b)));
                    case JOINT -> make(s -> Makers.perimeter(s, slab.id()));
                    case TILE ->
                        made(
                                s -> Makers.loopInside(slab).map(loop -> Makers.tile(s, loop)),
                                "This slab is too narrow for a loop of tile; draw the tile point by point.");
                    default -> {
                        return false;
                    }
                }
                return true;
            }
        return false;
    }

    private String measure(Point a, Point b) {
        return units.length(a.distanceTo(b)) + "; across " + units.length(Math.abs(b.x() - a.x())) + ", up "
                + units.length(Math.abs(b.y() - a.y())) + ", angle " + Math.round(Math.toDegrees(Places.angle(a, b)))
                + "\u00b0";
    }

    private void ask(List<Point> points) {
        if (document.scenario().get().plan().underlay().isEmpty()) {
            tell("There is no picture to trace yet: choose one with File, Picture to trace.");
            return;
        }
        span = points;
        typed = "";
        said = true;
        say.accept("Type the true length of this line, then Enter.");
    }

    private void tell(String words) {
        said = true;
        say.accept(words);
    }

    /** True where the last gesture left words that should stand. */
    boolean hasSaid() {
        return said;
    }

    /** True while a line waits for its true length. */
    boolean wantsLength() {
        return !span.isEmpty();
    }

    void forget() {
        span = List.of();
        typed = "";
        said = false;
    }

    void type(String letter) {
        typed += letter;
    }

    void backspace() {
        if (!typed.isEmpty()) typed = typed.substring(0, typed.length() - 1);
    }

    /** Takes the true length that was typed. */
    void enter() {
        double length = Typed.length(typed, units.length().get()),
                drawn = span.get(0).distanceTo(span.get(1));
        if (!(length > 0)) throw new IllegalArgumentException("A length must be above 0.");
        if (tool.get() == Tool.CHECK) {
            double error = 100 * (drawn - length) / length;
            forget();
            tell("On the picture it is " + units.length(drawn) + ": "
                    + String.format(Locale.ROOT, "%+.1f", error).replace('-', '\u2212') + " % off."
                    + (Math.abs(error) > 2
                            ? " Scale it again over a longer line; a photograph taken at a slant never fits."
                            : ""));
            return;
        }
        Point fixed = span.get(0);
        document.edit(Edit.of("scale the picture", s -> Tracing.scaled(s, fixed, length / drawn)));
        forget();
        tell("Scaled. Now check another length that you know (key " + Tool.CHECK.key() + ").");
    }

    Sketch sketch() {
        return new Sketch(span, false, false, Optional.empty(), "true length: " + typed + "\u258f");
    }
}

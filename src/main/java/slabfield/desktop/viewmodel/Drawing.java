package slabfield.desktop.viewmodel;

import java.util.List;
import java.util.Optional;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleObjectProperty;
import slabfield.desktop.drawing.Hit;
import slabfield.desktop.drawing.Item;
import slabfield.desktop.drawing.Kind;
import slabfield.desktop.drawing.Typed;
import slabfield.model.Scenario;

/** The pointer and the keys on the plan: chooses, moves, draws. Knows nothing of pixels and toolkits. */
public final class Drawing {
    private final Document document;
    private final Units units;
    private final SuctionMoves suctions;
    private final Layers layers = new Layers();
    private final Selection selection;
    private final Inspector inspector;
    private final Selecting selecting;
    private final Drafting drafting;
    private final Finisher finisher;
    private final ObjectProperty<Tool> tool = new SimpleObjectProperty<>(Tool.SELECT);
    private final ReadOnlyObjectWrapper<Sketch> sketch = new ReadOnlyObjectWrapper<>(Sketch.NONE);
    private final ReadOnlyStringWrapper hint = new ReadOnlyStringWrapper(Tool.SELECT.hint());
    private boolean pressed;

    Drawing(Document document, Solving solving, SuctionMoves suctions, Units units) {
        this.document = document;
        this.units = units;
        this.suctions = suctions;
        this.selection = new Selection(document);
        this.inspector = new Inspector(document, selection, units);
        this.selecting = new Selecting(document, solving, selection, suctions, layers, units);
        this.drafting = new Drafting(document, layers, units);
        this.finisher = new Finisher(document, selection, units, tool::get, hint::set);
        tool.addListener((o, was, is) -> {
            drafting.use(is);
            finisher.forget();
            if (is != Tool.SELECT) selection.clear();
            hint.set(usual());
            show();
        });
        selection
                .items()
                .addListener((o, was, is) -> suctions.selected()
                        .set(selection
                                .single()
                                .filter(i -> i.kind() == Kind.SUCTION)
                                .map(Item::id)));
        suctions.selected()
                .addListener((o, was, is) -> is.ifPresent(id -> selection.set(List.of(Item.of(Kind.SUCTION, id)))));
        document.opened().addListener((o, was, is) -> tool.set(Tool.SELECT));
        document.scenario().addListener((o, was, is) -> {
            if (!lacking(was).equals(lacking(is))
                    && hint.get().equals(tool.get().hint() + lacking(was))) hint.set(usual());
        });
    }

    /** What can be done with the tool, and what the drawing lacks next. */
    private String usual() {
        return tool.get().hint() + lacking(document.scenario().get());
    }

    private static String lacking(Scenario drawn) {
        return !drawn.slabs().isEmpty() && drawn.suctionPoints().isEmpty()
                ? " There is no suction point yet: S, then click."
                : "";
    }

    public ObjectProperty<Tool> tool() {
        return tool;
    }

    public Layers layers() {
        return layers;
    }

    public Selection selection() {
        return selection;
    }

    public Inspector inspector() {
        return inspector;
    }

    /** What is being drawn. */
    public ReadOnlyObjectProperty<Sketch> sketch() {
        return sketch.getReadOnlyProperty();
    }

    /** One line on what can be done now, or on what went wrong. */
    public ReadOnlyStringProperty hint() {
        return hint.getReadOnlyProperty();
    }

    /** What a press would take hold of. */
    public Optional<Hit> under(Pointer p) {
        return tool.get() == Tool.SELECT ? selecting.hover(p) : Optional.empty();
    }

    public void hover(Pointer p) {
        if (tool.get() == Tool.SELECT) return;
        drafting.hover(p);
        show();
    }

    /** The pointer has left the plan; a line that is begun stays where it was. */
    public void leave() {
        if (tool.get() == Tool.SELECT || pressed || drafting.isBegun() || finisher.wantsLength()) return;
        drafting.leave();
        show();
    }

    public void press(Pointer p) {
        pressed = true;
        if (tool.get() == Tool.SELECT) selecting.press(p);
        else drafting.press(p);
        show();
    }

    public void drag(Pointer p) {
        if (!pressed) return;
        if (tool.get() == Tool.SELECT) selecting.drag(p);
        else drafting.hover(p);
        show();
    }

    public void release(Pointer p) {
        if (!pressed) return;
        pressed = false;
        if (tool.get() == Tool.SELECT) selecting.release(p);
        else drafting.release(p, finisher);
        show();
    }

    /** A press and release at one place. */
    public void click(Pointer p) {
        hover(p);
        press(p);
        release(p);
    }

    /** A second click: ends a line, or adds a corner to an edge of the chosen thing; false where it meant neither. */
    public boolean doubleClick(Pointer p) {
        if (tool.get() == Tool.SELECT) return selecting.split(p);
        enter();
        return true;
    }

    /** A letter; false where it means nothing here, so that others may take it. */
    public boolean type(String letter) {
        if (letter.length() != 1 || letter.charAt(0) < ' ' || letter.charAt(0) == 127) return false;
        boolean measure = tool.get() != Tool.SELECT && (finisher.wantsLength() || drafting.isBegunByTyping(letter));
        if (measure) {
            if (finisher.wantsLength()) finisher.type(letter);
            else drafting.typed().type(letter);
            show();
            return true;
        }
        for (Tool each : Tool.values())
            if (each.key().equalsIgnoreCase(letter)) {
                tool.set(each);
                return true;
            }
        return false;
    }

    /** Takes what is typed, or ends the line that is drawn. */
    public void enter() {
        try {
            if (finisher.wantsLength()) finisher.enter();
            else drafting.enter(finisher);
            if (!finisher.wantsLength() && !finisher.hasSaid()) hint.set(usual());
        } catch (IllegalArgumentException wrong) {
            hint.set(wrong.getMessage());
        }
        show();
    }

    /** Goes to the other number that can be typed, or to the next of the things under the pointer; false where neither. */
    public boolean tab() {
        if (tool.get() == Tool.SELECT) return selecting.cycle();
        if (!drafting.isBegun()) return false;
        drafting.typed().tab();
        show();
        return true;
    }

    public void backspace() {
        if (tool.get() == Tool.SELECT) selection.delete();
        else if (finisher.wantsLength()) finisher.backspace();
        else drafting.backspace();
        show();
    }

    /** Backs out by one level: what is typed and drawn, then the tool, then what is chosen. */
    public void escape() {
        if (pressed) selecting.cancel();
        pressed = false;
        if (finisher.wantsLength()) finisher.forget();
        else if (drafting.isBegun()) drafting.clear();
        else if (tool.get() != Tool.SELECT) tool.set(Tool.SELECT);
        else selection.clear();
        hint.set(usual());
        show();
    }

    /** Moves what is chosen by steps; false where nothing is. */
    public boolean nudge(int right, int up) {
        if (selection.items().get().isEmpty()) return false;
        if (suctions.selected().get().isPresent()) suctions.nudge(right, up);
        else selection.nudge(right * units.step(), up * units.step());
        return true;
    }

    public void selectAll() {
        tool.set(Tool.SELECT);
        selection.all(layers.open());
    }

    /** Takes away the corner under the pointer; false where there is none. */
    public boolean deleteCorner(Pointer p) {
        return selecting.deleteCorner(p);
    }

    /**
     * Gives an edge of the chosen thing the length that is typed.
     *
     * @return what is wrong with the text, in words; empty where it was taken
     */
    public Optional<String> change(Selection.Dimension dimension, String text) {
        try {
            double length = Typed.length(text, units.length().get());
            if (!(length > 0)) return Optional.of("A length must be above 0.");
            selection.change(dimension, length);
            return Optional.empty();
        } catch (IllegalArgumentException wrong) {
            return Optional.of(wrong.getMessage());
        }
    }

    private void show() {
        if (tool.get() == Tool.SELECT) sketch.set(selecting.sketch());
        else sketch.set(finisher.wantsLength() ? finisher.sketch() : drafting.sketch());
    }
}

package slabfield.desktop.view;

import java.util.Optional;
import javafx.animation.PauseTransition;
import javafx.css.PseudoClass;
import javafx.scene.control.Label;
import javafx.util.Duration;
import slabfield.desktop.viewmodel.Advising;
import slabfield.desktop.viewmodel.Solving;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.desktop.viewmodel.guide.Guide;
import slabfield.desktop.viewmodel.work.Previews.Preview;

/** Says over the map what it shows, where that is not the house as it is. */
final class MapStamp extends Label {
    private static final PseudoClass STALE = PseudoClass.getPseudoClass("stale");
    private static final Duration BEFORE = Duration.millis(150);

    private final Guide guide;
    private final Workbench bench;
    private final PauseTransition before = new PauseTransition(BEFORE);

    MapStamp(Guide guide) {
        this.guide = guide;
        this.bench = guide.bench();
        getStyleClass().add("stamp");
        setManaged(false);
        setMouseTransparent(true);
        setVisible(false);
        before.setOnFinished(e -> write());
    }

    /** Says how things stand now; a solve that is quickly done is not worth a word. */
    void update() {
        boolean begun = bench.solving().picture().get().state() == Solving.State.SOLVING
                && !isVisible()
                && !bench.solving().dragging().get();
        if (begun) before.playFromStart();
        else {
            before.stop();
            write();
        }
    }

    /** Whether the map is of an earlier state of the house. */
    boolean isOld() {
        Solving.Picture picture = bench.solving().picture().get();
        return picture.solved().isPresent()
                && picture.state() != Solving.State.UP_TO_DATE
                && !bench.solving().dragging().get();
    }

    private void write() {
        Solving.State state = bench.solving().picture().get().state();
        String words = words(state);
        if (!words.equals(getText()) && getParent() != null) getParent().requestLayout();
        setText(words);
        setVisible(!words.isEmpty());
        pseudoClassStateChanged(
                STALE,
                state != Solving.State.UP_TO_DATE && !bench.solving().dragging().get());
    }

    private String words(Solving.State state) {
        Solving.Picture picture = bench.solving().picture().get();
        boolean shown = picture.solved().isPresent();
        if (bench.document().scenario().get().slabs().isEmpty()) return "";
        return switch (state) {
            case FAILED -> shown ? "OUT OF DATE: not solved as it is now" : "NOT SOLVED";
            case SOLVING ->
                bench.solving().dragging().get()
                        ? "following on a coarse grid"
                        : shown ? "OUT OF DATE: solving" : "solving";
            case UP_TO_DATE -> picture.quick() ? "following on a coarse grid" : remark();
        };
    }

    private String remark() {
        Optional<Preview> preview = guide.previews().shown().get();
        return preview.map(p -> (p.result().isPresent() ? "WITH IT: " : "solving with it: ")
                        + Advising.words(p.measure(), bench.units()))
                .orElseGet(guide.sight()::missing);
    }
}

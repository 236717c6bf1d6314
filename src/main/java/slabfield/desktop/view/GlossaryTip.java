package slabfield.desktop.view;

import javafx.animation.PauseTransition;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.input.MouseEvent;
import javafx.util.Duration;
import slabfield.desktop.viewmodel.Glossary;

/** Says what the words of a label mean while the mouse rests on it; a label with a tip of its own keeps that. */
final class GlossaryTip {
    private static final Duration REST = Duration.millis(700);
    private static final double BELOW = 14;
    /** A longer text explains itself, or has too many words to explain. */
    private static final int LONGEST = 48;

    private final Tooltip tip = new Tooltip();
    private final PauseTransition rest = new PauseTransition(REST);
    private Glossary glossary;
    private Label under;
    private double x;
    private double y;

    GlossaryTip(Scene scene) {
        tip.setWrapText(true);
        tip.setMaxWidth(380);
        rest.setOnFinished(e -> show());
        scene.addEventFilter(MouseEvent.MOUSE_MOVED, this::moved);
        scene.addEventFilter(MouseEvent.MOUSE_PRESSED, e -> leave());
        scene.addEventFilter(MouseEvent.MOUSE_EXITED_TARGET, e -> {
            if (e.getTarget() == scene) leave();
        });
    }

    private void moved(MouseEvent e) {
        Label now = label(e.getTarget());
        x = e.getScreenX();
        y = e.getScreenY();
        if (now == under) return;
        leave();
        under = now;
        if (now != null) rest.playFromStart();
    }

    private static Label label(Object target) {
        Node node = target instanceof Node n ? n : null;
        while (node != null && !(node instanceof Label)) node = node.getParent();
        return node instanceof Label l
                        && l.getTooltip() == null
                        && l.getText() != null
                        && l.getText().length() <= LONGEST
                ? l
                : null;
    }

    private void show() {
        if (under == null || under.getScene() == null) return;
        if (glossary == null) glossary = Glossary.ofProgram();
        String words = glossary.explain(under.getText());
        if (words.isEmpty()) return;
        tip.setText(words);
        tip.show(under, x, y + BELOW);
    }

    private void leave() {
        rest.stop();
        tip.hide();
        under = null;
    }
}

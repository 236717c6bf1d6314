package slabfield.desktop.view;

import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.AccessibleAttribute;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressIndicator;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import slabfield.desktop.viewmodel.Solving;
import slabfield.desktop.viewmodel.Workbench;

/** The line at the foot: what the solver is doing, or why it could not. */
final class StatusRow extends HBox {
    private static final PseudoClass FAILED = PseudoClass.getPseudoClass("failed");

    private final Workbench bench;
    private final Label words = new Label();
    private final ProgressIndicator busy = new ProgressIndicator();

    StatusRow(Workbench bench) {
        this.bench = bench;
        getStyleClass().add("status");
        setAlignment(Pos.CENTER_LEFT);
        busy.getStyleClass().add("busy");
        words.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(words, Priority.ALWAYS);
        Label limits = Parts.label("PREDICTED, not measured. Only a radon test shows success.", "soft");
        limits.setMinWidth(USE_PREF_SIZE);
        getChildren().addAll(busy, words, limits);
        bench.solving().picture().addListener((o, was, is) -> {
            if (!bench.solving().dragging().get()) update();
        });
        bench.units().shown().addListener((o, was, is) -> update());
        update();
    }

    private void update() {
        Solving.Picture picture = bench.solving().picture().get();
        boolean blank = bench.document().scenario().get().slabs().isEmpty();
        boolean failed = picture.state() == Solving.State.FAILED && !blank;
        pseudoClassStateChanged(FAILED, failed);
        busy.setVisible(picture.state() == Solving.State.SOLVING);
        words.setText(
                switch (picture.state()) {
                    case SOLVING -> "Solving\u2026";
                    case FAILED -> blank ? "Nothing is drawn yet." : picture.reason();
                    case UP_TO_DATE ->
                        picture.solved()
                                .map(s -> "Solved on cells of "
                                        + bench.units().length(s.coverage().cell()) + ". "
                                        + doubts(s.doubts().size()))
                                .orElse("");
                });
        Parts.tip(words, words.getText());
        words.notifyAccessibleAttributeChanged(AccessibleAttribute.TEXT);
    }

    private static String doubts(int n) {
        return n == 0 ? "No doubts." : n == 1 ? "1 doubt: see the tab." : n + " doubts: see the tab.";
    }
}

package slabfield.desktop.view;

import java.util.Optional;
import javafx.css.PseudoClass;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import slabfield.desktop.viewmodel.Selection;
import slabfield.desktop.viewmodel.Workbench;

/** A measure of the plan that is being changed, at its place. */
final class DimensionField extends TextField {
    private static final PseudoClass WRONG = PseudoClass.getPseudoClass("wrong");

    private final Workbench bench;
    private final MapPane pane;
    private Optional<Selection.Dimension> edited = Optional.empty();

    DimensionField(Workbench bench, MapPane pane) {
        this.bench = bench;
        this.pane = pane;
        setManaged(false);
        setVisible(false);
        setId("dimension");
        getStyleClass().add("dimension-field");
        setPrefColumnCount(10);
        setAccessibleText("New length of this edge");
        setOnAction(e -> take());
        setOnKeyPressed(e -> {
            if (e.getCode() == KeyCode.ESCAPE) {
                close();
                pane.requestFocus();
                e.consume();
            }
        });
        focusedProperty().addListener((o, was, is) -> {
            if (was && isVisible()) close();
        });
    }

    void open(MapOverlay.Shown shown) {
        edited = Optional.of(shown.dimension());
        setText(bench.units().length(shown.dimension().length()));
        pseudoClassStateChanged(WRONG, false);
        setVisible(true);
        autosize();
        relocate(
                Math.max(0, (shown.box().left() + shown.box().right() - getWidth()) / 2),
                Math.max(0, (shown.box().top() + shown.box().bottom() - getHeight()) / 2));
        requestFocus();
        selectAll();
    }

    private void take() {
        Optional<String> wrong = edited.flatMap(d -> bench.drawing().change(d, getText()));
        pseudoClassStateChanged(WRONG, wrong.isPresent());
        if (wrong.isPresent()) {
            Parts.tip(this, wrong.get());
            setAccessibleHelp(wrong.get());
            getTooltip()
                    .show(
                            this,
                            localToScreen(0, getHeight()).getX(),
                            localToScreen(0, getHeight()).getY() + 4);
            return;
        }
        close();
        pane.requestFocus();
    }

    void close() {
        if (getTooltip() != null) getTooltip().hide();
        edited = Optional.empty();
        setVisible(false);
    }
}

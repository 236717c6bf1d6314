package slabfield.desktop.view;

import javafx.scene.control.TableCell;
import javafx.scene.control.Tooltip;
import javafx.scene.text.Text;

/** Text in a table; where there is no room for all of it, resting the mouse on it shows the whole. */
final class TextCell<S> extends TableCell<S, String> {
    TextCell() {
        hoverProperty().addListener((o, was, is) -> setTooltip(is && isCut() ? new Tooltip(getText()) : null));
    }

    private boolean isCut() {
        return getText() != null
                && lookup(".text") instanceof Text shown
                && !getText().equals(shown.getText());
    }

    @Override
    protected void updateItem(String text, boolean empty) {
        super.updateItem(text, empty);
        setText(empty ? null : text);
    }
}

package slabfield.desktop.view;

import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.HBox;
import slabfield.desktop.viewmodel.HouseSearch;

/**
 * Begins long work, shows how far it is, stops it. Whoever began it with the keys has the keys on the button that stops it,
 * and on the first one again once it is done.
 */
final class SearchRow extends HBox {
    /** @param what the work is called by those who do not see it */
    SearchRow(String words, String what, HouseSearch<?> search, Runnable begin) {
        super(8);
        setAlignment(Pos.CENTER_LEFT);
        Button start = new Button(words);
        start.disableProperty().bind(search.searching());
        start.setOnAction(e -> begin.run());
        Button cancel = new Button("Cancel");
        cancel.setAccessibleText("Cancel: " + what);
        cancel.setOnAction(e -> search.cancel());
        ProgressBar progress = new ProgressBar();
        progress.progressProperty().bind(search.progress());
        progress.setAccessibleText(what);
        for (Node shown : List.of(cancel, progress)) {
            shown.visibleProperty().bind(search.searching());
            shown.managedProperty().bind(search.searching());
        }
        for (Button button : List.of(start, cancel)) button.setMinWidth(USE_PREF_SIZE);
        search.searching().addListener((o, was, is) -> {
            Button from = is ? start : cancel;
            if (from.isFocused()) (is ? cancel : start).requestFocus();
        });
        getChildren().addAll(start, cancel, progress);
    }
}

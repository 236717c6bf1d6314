package slabfield.desktop.view;

import javafx.geometry.Pos;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.VBox;
import javafx.scene.shape.SVGPath;
import slabfield.desktop.viewmodel.guide.Guide;
import slabfield.desktop.viewmodel.guide.Guide.Mode;

/** At the left edge: what the window is about. */
final class ModeRail extends VBox {
    ModeRail(Guide guide) {
        getStyleClass().add("rail");
        setAlignment(Pos.TOP_CENTER);
        for (Mode mode : Mode.values()) {
            SVGPath sign = new SVGPath();
            sign.setContent(path(mode));
            sign.getStyleClass().add("sign");
            ToggleButton button = new ToggleButton(mode.words(), sign);
            button.setContentDisplay(ContentDisplay.TOP);
            button.setMaxWidth(Double.MAX_VALUE);
            button.setAccessibleText(mode.words() + ": " + help(mode));
            Parts.tip(button, help(mode));
            button.setSelected(guide.mode().get() == mode);
            button.setOnAction(e -> {
                button.setSelected(true);
                guide.mode().set(mode);
            });
            guide.mode().addListener((o, was, is) -> button.setSelected(is == mode));
            getChildren().add(button);
        }
    }

    private static String help(Mode mode) {
        return switch (mode) {
            case HOUSE -> "draw the house and see its map";
            case COMPARE -> "variants of the house side by side";
            case READINGS -> "enter readings with large keys";
            case FINDINGS -> "what the readings tell: diagnosis, fit, next hole, measures";
            case LEARN -> "lessons and practice";
        };
    }

    private static String path(Mode mode) {
        return switch (mode) {
            case HOUSE -> "M2 10 L12 2 L22 10 V21 H14 V14 H10 V21 H2 Z";
            case COMPARE -> "M2 4 H10.5 V20 H2 Z M13.5 4 H22 V20 H13.5 Z M15 5.5 V18.5 H20.5 V5.5 Z";
            case READINGS ->
                "M3 3 H8 V8 H3 Z M9.5 3 H14.5 V8 H9.5 Z M16 3 H21 V8 H16 Z M3 9.5 H8 V14.5 H3 Z M9.5 9.5 H14.5 V14.5 H9.5 Z M16 9.5 H21 V14.5 H16 Z M3 16 H8 V21 H3 Z M9.5 16 H21 V21 H9.5 Z";
            case FINDINGS ->
                "M10 2 A8 8 0 1 0 14.6 16.6 L20.5 22.5 L22.5 20.5 L16.6 14.6 A8 8 0 0 0 10 2 Z M10 5 A5 5 0 1 1 10 15 A5 5 0 1 1 10 5 Z";
            case LEARN -> "M12 3 L23 9 L12 15 L1 9 Z M5 12.5 L12 16.5 L19 12.5 V17 L12 21 L5 17 Z";
        };
    }
}

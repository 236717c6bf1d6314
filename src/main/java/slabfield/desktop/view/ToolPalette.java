package slabfield.desktop.view;

import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import slabfield.desktop.viewmodel.Drawing;
import slabfield.desktop.viewmodel.Tool;

/** The tools of the drawing, each with its key. */
final class ToolPalette extends ScrollPane {
    private static final List<List<Tool>> GROUPS = List.of(
            List.of(Tool.SELECT, Tool.MEASURE),
            List.of(Tool.RECTANGLE, Tool.OUTLINE, Tool.CUT_OUT, Tool.ZONE, Tool.NO_DRILL),
            List.of(Tool.BARRIER, Tool.GAP, Tool.TILE, Tool.BREAK, Tool.WALL),
            List.of(Tool.JOINT, Tool.CRACK, Tool.OPENING),
            List.of(Tool.SUCTION, Tool.HOLE),
            List.of(Tool.SCALE, Tool.CHECK));

    ToolPalette(Drawing drawing, MapPane map) {
        VBox column = new VBox();
        column.getStyleClass().add("tool-column");
        for (List<Tool> group : GROUPS) {
            VBox part = new VBox();
            part.getStyleClass().add("tool-group");
            for (Tool tool : group) part.getChildren().add(button(drawing, map, tool));
            column.getChildren().add(part);
        }
        setContent(column);
        setFitToWidth(true);
        setHbarPolicy(ScrollBarPolicy.NEVER);
        getStyleClass().add("tool-palette");
    }

    private static ToggleButton button(Drawing drawing, MapPane map, Tool tool) {
        Label name = Parts.label(tool.words(), "tool-name"), key = Parts.label(tool.key(), "tool-key");
        HBox words = new HBox(4, name, key);
        HBox.setHgrow(name, Priority.ALWAYS);
        name.setMaxWidth(Double.MAX_VALUE);
        name.setMinWidth(Region.USE_PREF_SIZE);
        key.setMinWidth(Region.USE_PREF_SIZE);
        words.setAlignment(Pos.CENTER_LEFT);
        ToggleButton button = new ToggleButton();
        button.setGraphic(words);
        button.getStyleClass().add("tool");
        button.setId("tool-" + tool.name().toLowerCase(java.util.Locale.ROOT));
        button.setMaxWidth(Double.MAX_VALUE);
        words.prefWidthProperty().bind(button.widthProperty().subtract(16));
        button.setAccessibleText(tool.words() + ", key " + tool.key());
        button.setAccessibleHelp(tool.hint());
        Parts.tip(button, tool.words() + " (" + tool.key() + "). " + tool.hint());
        button.setSelected(drawing.tool().get() == tool);
        button.setOnAction(e -> {
            drawing.tool().set(tool);
            button.setSelected(true);
            map.requestFocus();
        });
        drawing.tool().addListener((o, was, is) -> button.setSelected(is == tool));
        return button;
    }
}

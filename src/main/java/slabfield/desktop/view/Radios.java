package slabfield.desktop.view;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.beans.property.ObjectProperty;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.RadioButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** Radio buttons in a row, one of which is down; where there is no room they wrap. */
final class Radios<T> extends FlowPane {
    private static final double ONE_ROW = 1000;

    private final Map<T, RadioButton> buttons = new LinkedHashMap<>();

    /** @param chosen is told what the user chooses */
    Radios(String what, List<T> values, Function<T, String> words, Consumer<T> chosen) {
        getStyleClass().add("radios");
        setAlignment(Pos.CENTER_LEFT);
        setPrefWrapLength(ONE_ROW);
        ToggleGroup group = new ToggleGroup();
        for (T value : values) {
            RadioButton button = new RadioButton(words.apply(value));
            button.setMinWidth(USE_PREF_SIZE);
            button.setAccessibleText(what + ": " + words.apply(value));
            button.setToggleGroup(group);
            button.setOnAction(e -> chosen.accept(value));
            buttons.put(value, button);
            getChildren().add(button);
        }
    }

    /** Radio buttons that follow a property and set it. */
    static <T> Radios<T> over(String what, List<T> values, Function<T, String> words, ObjectProperty<T> property) {
        Radios<T> radios = new Radios<>(what, values, words, property::set);
        property.addListener((o, was, is) -> radios.show(is));
        radios.show(property.get());
        return radios;
    }

    /** The same buttons below each other. */
    VBox column() {
        VBox column = new VBox();
        column.getStyleClass().add("radio-column");
        column.getChildren().addAll(buttons.values());
        return column;
    }

    /** Gives the keys to the first radio button within something. */
    static void focusFirst(Parent within) {
        Optional.ofNullable(within.lookup(".radio-button")).ifPresent(Node::requestFocus);
    }

    /** Puts one down, without telling that it was chosen. */
    void show(T value) {
        buttons.get(value).setSelected(true);
    }
}

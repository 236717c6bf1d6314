package slabfield.desktop.view;

import java.util.List;
import java.util.function.Function;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.value.ChangeListener;
import javafx.beans.value.WeakChangeListener;
import javafx.geometry.Pos;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableView;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;

/** Small pieces of which the window is made. */
final class Parts {
    private static final double LARGE = 1.35;
    private static final double SQUEEZE = 1.05;

    /** Heights of a table's head and of a row in window.css, and of a scroll bar [em]. */
    private static final double HEAD = 3.1;

    private static final double ROW = 1.85;
    private static final double BAR = 1.7;

    private Parts() {}

    /** A label with style classes. */
    static Label label(String text, String... classes) {
        Label label = new Label(text);
        label.getStyleClass().addAll(classes);
        return label;
    }

    /** A label that wraps. */
    static Label paragraph(String text, String... classes) {
        Label label = label(text, classes);
        label.setWrapText(true);
        label.setMinHeight(Region.USE_PREF_SIZE);
        return label;
    }

    /**
     * Buttons side by side of which exactly one is down: that of a property's value, if it has one. The property does not
     * keep them alive: a row that is no longer shown is forgotten.
     */
    static <T> HBox choice(String what, List<T> values, Function<T, String> words, ObjectProperty<T> property) {
        HBox row = new HBox();
        row.getStyleClass().add("choice");
        row.setAlignment(Pos.CENTER_LEFT);
        ToggleGroup group = new ToggleGroup();
        for (int i = 0; i < values.size(); i++) {
            T value = values.get(i);
            ToggleButton button = new ToggleButton(words.apply(value));
            button.getStyleClass().add(i == 0 ? "first" : i == values.size() - 1 ? "last" : "between");
            button.setAccessibleText(what + ": " + words.apply(value));
            button.setToggleGroup(group);
            button.setSelected(value.equals(property.get()));
            button.setOnAction(e -> {
                button.setSelected(true);
                property.set(value);
            });
            row.getChildren().add(button);
        }
        ChangeListener<T> follows = (o, was, is) -> {
            for (int i = 0; i < values.size(); i++)
                ((ToggleButton) row.getChildren().get(i))
                        .setSelected(values.get(i).equals(is));
        };
        row.getProperties().put(ChangeListener.class, follows);
        property.addListener(new WeakChangeListener<>(follows));
        return row;
    }

    /** A column of text. */
    static <S> TableColumn<S, String> column(String title, double width, Function<S, String> text) {
        TableColumn<S, String> column = new TableColumn<>(title);
        column.setCellValueFactory(cell -> new ReadOnlyStringWrapper(text.apply(cell.getValue())));
        column.setCellFactory(c -> new TextCell<>());
        column.setPrefWidth(width);
        column.setSortable(false);
        column.setReorderable(false);
        return column;
    }

    /** A column of numbers, which stand to the right. */
    static <S> TableColumn<S, String> numbers(String title, double width, Function<S, String> text) {
        TableColumn<S, String> column = column(title, width, text);
        column.getStyleClass().add("number");
        return column;
    }

    /** Puts columns into a table, wider where the type is larger. */
    static <S> void fill(TableView<S> table, List<TableColumn<S, ?>> columns, boolean large) {
        for (TableColumn<S, ?> column : columns) column.setPrefWidth(column.getPrefWidth() * (large ? LARGE : 1));
        choosePolicy(table, columns);
        table.getColumns().setAll(columns);
    }

    /** Columns fill the width where they have room in it; else they keep their own and the table scrolls. */
    private static <S> void choosePolicy(TableView<S> table, List<TableColumn<S, ?>> columns) {
        double wanted = columns.stream().mapToDouble(TableColumn::getPrefWidth).sum();
        boolean room = wanted <= SQUEEZE * table.getWidth() || table.getWidth() < 1;
        table.setColumnResizePolicy(
                room ? TableView.CONSTRAINED_RESIZE_POLICY_FLEX_LAST_COLUMN : TableView.UNCONSTRAINED_RESIZE_POLICY);
    }

    /** A table that fills its width. */
    static <S> TableView<S> table(String what, String whenEmpty) {
        TableView<S> table = new TableView<>();
        table.setColumnResizePolicy(TableView.CONSTRAINED_RESIZE_POLICY_FLEX_LAST_COLUMN);
        table.widthProperty().addListener((o, was, is) -> choosePolicy(table, table.getColumns()));
        table.setPlaceholder(paragraph(whenEmpty, "soft"));
        table.setAccessibleText(what);
        return table;
    }

    /** Gives a table the height of its rows, with room for a bar to scroll sideways. */
    static void asHighAsItsRows(TableView<?> table) {
        double ems = HEAD + ROW * table.getItems().size() + BAR;
        table.setStyle("-fx-pref-height: " + ems + "em; -fx-min-height: " + ems + "em;");
    }

    static <T extends Control> T tip(T control, String text) {
        Tooltip tip = new Tooltip(text);
        tip.setWrapText(true);
        tip.setMaxWidth(360);
        control.setTooltip(tip);
        return control;
    }
}

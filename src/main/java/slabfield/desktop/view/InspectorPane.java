package slabfield.desktop.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import slabfield.desktop.viewmodel.Inspector;
import slabfield.desktop.viewmodel.Property;
import slabfield.desktop.viewmodel.Workbench;

/** All properties of what is chosen, each with what is wrong with it beneath. */
final class InspectorPane extends VBox {
    private final Inspector inspector;
    private final Label title = Parts.label("", "heading");
    private final GridPane grid = new GridPane();
    private List<String> labels = List.of();
    private final List<Field> fields = new ArrayList<>();

    /** One property on the screen, which follows the drawing. */
    private interface Field {
        void show(Property property);
    }

    InspectorPane(Workbench bench) {
        this.inspector = bench.drawing().inspector();
        getStyleClass().addAll("part", "inspector");
        grid.getStyleClass().add("inspector-grid");
        ColumnConstraints words = new ColumnConstraints(), values = new ColumnConstraints();
        words.setPercentWidth(38);
        values.setHgrow(Priority.ALWAYS);
        grid.getColumnConstraints().addAll(words, values);
        VBox paper = new VBox(grid);
        paper.getStyleClass().add("row");
        getChildren().addAll(title, paper);
        bench.document().scenario().addListener((o, was, is) -> {
            if (!bench.solving().dragging().get()) update();
        });
        bench.solving().dragging().addListener((o, was, is) -> {
            if (!is) update();
        });
        bench.drawing().selection().items().addListener((o, was, is) -> update());
        bench.units().shown().addListener((o, was, is) -> update());
        update();
    }

    /** Builds anew only where other properties are to be shown, so that the focus stays where it is. */
    private void update() {
        title.setText(inspector.title().substring(0, 1).toUpperCase(java.util.Locale.ROOT)
                + inspector.title().substring(1));
        List<Property> properties = inspector.properties();
        List<String> now = properties.stream().map(p -> p.label() + p.choices()).toList();
        if (!now.equals(labels)) {
            labels = now;
            build(properties);
        }
        for (int i = 0; i < fields.size(); i++) fields.get(i).show(properties.get(i));
    }

    private void build(List<Property> properties) {
        grid.getChildren().clear();
        fields.clear();
        for (int i = 0; i < properties.size(); i++) {
            Property p = properties.get(i);
            Label label = Parts.label(p.label());
            Label wrong = Parts.paragraph("", "wrong");
            Node control = p.choices().isEmpty() ? text(p, wrong) : choice(p, wrong);
            label.setLabelFor(control);
            show(wrong, Optional.empty());
            grid.add(label, 0, i);
            grid.add(new VBox(control, wrong), 1, i);
        }
        if (properties.isEmpty())
            grid.add(Parts.paragraph("These things have nothing in common that can be changed.", "soft"), 0, 0, 2, 1);
    }

    private static void show(Label wrong, Optional<String> words) {
        wrong.setText(words.orElse(""));
        wrong.setVisible(words.isPresent());
        wrong.setManaged(words.isPresent());
    }

    private TextField text(Property first, Label wrong) {
        TextField field = new TextField();
        field.setId(
                "property-" + first.label().toLowerCase(java.util.Locale.ROOT).replace(' ', '-'));
        field.setAccessibleText(first.label() + ". " + first.help());
        Parts.tip(field, first.help());
        Property[] shown = {first};
        Runnable take = () -> show(wrong, inspector.set(shown[0], field.getText()));
        field.setOnAction(e -> take.run());
        field.focusedProperty().addListener((o, was, is) -> {
            if (was && !field.getText().equals(shown[0].value())) take.run();
        });
        fields.add(p -> {
            boolean other =
                    !p.value().equals(shown[0].value()) || field.getText().isEmpty();
            shown[0] = p;
            if (other || !field.isFocused()) {
                field.setText(p.value());
                show(wrong, Optional.empty());
            }
        });
        return field;
    }

    private ComboBox<String> choice(Property first, Label wrong) {
        ComboBox<String> box = new ComboBox<>();
        box.getItems().setAll(first.choices());
        box.setMaxWidth(Double.MAX_VALUE);
        box.setId("property-" + first.label().toLowerCase(java.util.Locale.ROOT).replace(' ', '-'));
        box.setAccessibleText(first.label() + ". " + first.help());
        Parts.tip(box, first.help());
        Property[] shown = {first};
        boolean[] following = {false};
        box.setOnAction(e -> {
            if (!following[0] && box.getValue() != null) show(wrong, inspector.set(shown[0], box.getValue()));
        });
        fields.add(p -> {
            shown[0] = p;
            following[0] = true;
            box.setValue(p.choices().contains(p.value()) ? p.value() : null);
            box.setPromptText(p.value());
            following[0] = false;
        });
        return box;
    }
}

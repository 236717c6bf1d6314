package slabfield.desktop.view;

import java.util.List;
import java.util.Optional;
import javafx.beans.property.Property;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.geometry.Orientation;
import javafx.geometry.VPos;
import javafx.scene.control.Button;
import javafx.scene.control.Separator;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.FlowPane;
import slabfield.desktop.viewmodel.MapLook;
import slabfield.desktop.viewmodel.Units;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.figure.VacuumScale.Sense;
import slabfield.quantity.Unit;

/** What is used most: undo, units, colours. */
final class ToolRow extends FlowPane {
    ToolRow(Workbench bench, FileActions files, Property<Boolean> keyShown, Property<Boolean> mapAlone) {
        getStyleClass().add("tools");
        setRowValignment(VPos.CENTER);
        Units units = bench.units();
        MapLook look = bench.look();
        Button open = new Button("Open\u2026");
        open.setOnAction(e -> files.open());
        getChildren()
                .addAll(
                        open,
                        step("\u21b6 Undo", "Undo", bench.document().undoLabel(), bench.document()::undo),
                        step("\u21b7 Redo", "Redo", bench.document().redoLabel(), bench.document()::redo),
                        bar(),
                        Parts.choice("Pressure", Units.PRESSURES, Unit::symbol, units.pressure()),
                        Parts.choice("Flow", Units.FLOWS, Unit::symbol, units.flow()),
                        Parts.choice("Length", Units.LENGTHS, Unit::symbol, units.length()),
                        bar(),
                        Parts.choice("Colours", List.of(Sense.values()), ToolRow::words, look.sense()),
                        lock(bench),
                        new LayersButton(bench.drawing().layers()),
                        toggle("Key", "Shows what colours and signs mean", keyShown),
                        toggle("Map alone", "The map takes the room of the tables and of the right column", mapAlone),
                        toggle(
                                "Large type",
                                "Everything larger, to be seen from the back of a room",
                                look.presentation()),
                        toggle(
                                "Touch",
                                "Large targets: whatever is pressed or dragged is at least 44 pixels wide and high, for fingers and gloves; the type stays",
                                look.largeTargets()));
    }

    private static String words(Sense sense) {
        return sense == Sense.SIGNED ? "Both signs" : "Vacuum only";
    }

    private static Separator bar() {
        return new Separator(Orientation.VERTICAL);
    }

    private static Button step(
            String text, String what, ReadOnlyObjectProperty<Optional<String>> label, Runnable action) {
        Button button = new Button(text);
        button.setOnAction(e -> action.run());
        Runnable update = () -> {
            button.setDisable(label.get().isEmpty());
            String words = label.get().map(l -> what + ": " + l).orElse(what);
            button.setAccessibleText(words);
            Parts.tip(button, words);
        };
        label.addListener((o, was, is) -> update.run());
        update.run();
        return button;
    }

    private static ToggleButton lock(Workbench bench) {
        ToggleButton button = new ToggleButton("Lock range");
        Parts.tip(button, "Keeps the range of the colours as it is now, so that changes of the house can be compared");
        button.setOnAction(e -> {
            if (button.isSelected()) bench.look().lock(bench.solving().picture().get());
            else bench.look().unlock();
            button.setSelected(bench.look().locked().get().isPresent());
        });
        bench.look().locked().addListener((o, was, is) -> button.setSelected(is.isPresent()));
        return button;
    }

    private static ToggleButton toggle(String text, String help, Property<Boolean> property) {
        ToggleButton button = Parts.tip(new ToggleButton(text), help);
        button.selectedProperty().bindBidirectional(property);
        return button;
    }
}

package slabfield.desktop.view;

import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import slabfield.desktop.viewmodel.see.Sight;
import slabfield.desktop.viewmodel.see.Sight.Flow;
import slabfield.desktop.viewmodel.see.Sight.Marking;
import slabfield.desktop.viewmodel.see.Sight.Show;

/** Above the map: what its colours show, how the air is drawn, and what is marked on it. */
final class SightRow extends FlowPane {
    SightRow(Sight sight) {
        getStyleClass().add("sight");
        setAlignment(Pos.CENTER_LEFT);
        ToggleButton doubts = Parts.tip(
                new ToggleButton("Doubts"),
                "Hatches where Darcy's law alone is doubtful, and where no test hole is near");
        doubts.selectedProperty().bindBidirectional(sight.doubts());
        getChildren()
                .addAll(
                        named("Show", Parts.choice("Map shows", List.of(Show.values()), Show::words, sight.show())),
                        named("Air", Parts.choice("Moving air", List.of(Flow.values()), Flow::words, sight.flow())),
                        doubts,
                        marking(
                                sight,
                                "Pin",
                                Marking.PIN,
                                "Pins the pressure at a place: press on the map, or drag a pin to move it. Pins are listed in the tab Profile"),
                        marking(
                                sight,
                                "Profile",
                                Marking.PROFILE,
                                "Pressure along a line: drag it over the map, or press at both its ends"));
    }

    private static HBox named(String name, HBox choice) {
        Label label = Parts.label(name, "soft");
        label.setMinWidth(USE_PREF_SIZE);
        HBox row = new HBox(5, label, choice);
        row.setAlignment(Pos.CENTER_LEFT);
        return row;
    }

    private static ToggleButton marking(Sight sight, String text, Marking marking, String help) {
        ToggleButton button = Parts.tip(new ToggleButton(text), help);
        button.setOnAction(e -> sight.marking().set(button.isSelected() ? marking : Marking.NONE));
        sight.marking().addListener((o, was, is) -> button.setSelected(is == marking));
        return button;
    }
}

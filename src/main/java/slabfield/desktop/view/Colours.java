package slabfield.desktop.view;

import java.util.ArrayList;
import java.util.List;
import javafx.beans.property.ObjectProperty;
import javafx.scene.Scene;
import slabfield.desktop.viewmodel.Theme;

/** Gives a scene the style sheets of the window's colours, and changes them along. */
final class Colours {
    Colours(Scene scene, ObjectProperty<Theme> theme) {
        scene.getStylesheets().setAll(sheets(theme.get()));
        theme.addListener((o, was, is) -> scene.getStylesheets().setAll(sheets(is)));
    }

    private static List<String> sheets(Theme theme) {
        List<String> names = new ArrayList<>(List.of("window.css", "drawing.css", "guide.css"));
        if (theme == Theme.DARK) names.add("dark.css");
        if (theme == Theme.CONTRAST) names.add("contrast.css");
        return names.stream()
                .map(n -> Colours.class.getResource("/slabfield/desktop/" + n).toExternalForm())
                .toList();
    }
}

package slabfield.desktop.view;

import java.util.List;
import java.util.Optional;
import javafx.scene.control.Label;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import slabfield.desktop.viewmodel.Advising;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.desktop.viewmodel.work.Previews;
import slabfield.field.Result;
import slabfield.figure.Bounds;
import slabfield.figure.MapStyle;
import slabfield.figure.PlanView;
import slabfield.figure.VacuumMap;
import slabfield.figure.VacuumScale.Range;

/** The house with the measure that is pointed at, small, on the scale of the map. */
final class PreviewCard extends VBox {
    private final Workbench bench;
    private final Previews previews;
    private final Label title = Parts.paragraph("", "soft");
    private final PlanPicture picture;

    PreviewCard(Workbench bench, Previews previews, TaskRunner painting) {
        this.bench = bench;
        this.previews = previews;
        this.picture = new PlanPicture(painting, "Map of the house with the measure pointed at");
        getStyleClass().add("preview");
        setMinWidth(USE_PREF_SIZE);
        VBox.setVgrow(picture, Priority.ALWAYS);
        getChildren().addAll(title, picture);
        previews.shown().addListener((o, was, is) -> show());
        bench.look().style().addListener((o, was, is) -> show());
        show();
    }

    private void show() {
        Optional<Previews.Preview> now = previews.shown().get();
        Optional<Result.Solved> with = now.flatMap(Previews.Preview::result);
        if (now.isEmpty()) title.setText("Point at a measure to see the house with it.");
        else
            title.setText((with.isPresent() ? "" : "Solving: ")
                    + Advising.words(now.get().measure(), bench.units()));
        if (with.isEmpty()) {
            picture.show(Optional.empty());
            return;
        }
        Result.Solved house = with.get();
        MapStyle plain = bench.look().style().get().withFontScale(0.8).showing(true, false, true);
        Range range = bench.solving()
                .picture()
                .get()
                .solved()
                .map(s -> VacuumMap.scale(s, plain).range())
                .orElseGet(() -> VacuumMap.scale(house, plain).range());
        MapStyle style = plain.with(range);
        picture.show(Optional.of((canvas, box) -> VacuumMap.drawPlan(
                canvas, house, style, List.of(), PlanView.fit(Bounds.of(house.scenario()), box.inset(6)), box)));
    }
}

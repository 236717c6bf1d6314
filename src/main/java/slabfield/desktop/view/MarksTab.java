package slabfield.desktop.view;

import java.util.Optional;
import javafx.collections.ListChangeListener;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.util.Duration;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.desktop.viewmodel.see.Sight;
import slabfield.field.Result;
import slabfield.figure.MapStyle;
import slabfield.figure.Profile;

/** The profile along a drawn line, and the pinned places. */
final class MarksTab extends BorderPane {
    /** How far a hole may stand from the line to be shown at it [m]. */
    private static final double REACH = 0.5;
    /** While the map follows a drag the profile is drawn no more often than this. */
    private static final Duration LEAST = Duration.millis(80);

    private static final double APART = 12;

    private final Workbench bench;
    private final Sight sight;
    private final PlanPicture chart;
    private final Label none =
            Parts.paragraph("No line is drawn: choose Profile above the map, then drag a line over the slab.", "soft");
    private final VBox pins = new VBox(4);

    MarksTab(Workbench bench, Sight sight, TaskRunner painting) {
        this.bench = bench;
        this.sight = sight;
        this.chart = new PlanPicture(painting, "Pressure along the drawn line");
        getStyleClass().add("tab-body");
        VBox left = new VBox(4, none, chart);
        VBox.setVgrow(chart, Priority.ALWAYS);
        setCenter(left);
        ScrollPane scroll = new ScrollPane(new VBox(6, Parts.label("Pins", "heading"), pins));
        scroll.setFitToWidth(true);
        scroll.setPrefWidth(330);
        setRight(scroll);
        setMargin(left, new Insets(0, APART, 0, 0));
        sight.cut().addListener((o, was, is) -> draw());
        Throttle drawn = new Throttle(LEAST, this::draw), listed = new Throttle(LEAST, this::list);
        bench.solving().picture().addListener((o, was, is) -> {
            if (was.result() != is.result()) drawn.ask();
        });
        bench.look().style().addListener((o, was, is) -> draw());
        sight.rows().addListener((ListChangeListener<Sight.PinRow>) c -> listed.ask());
        draw();
        list();
    }

    private void draw() {
        Optional<Profile> line = sight.cut().get();
        Optional<Result.Solved> solved = bench.solving().picture().get().solved();
        none.setVisible(line.isEmpty());
        none.setManaged(line.isEmpty());
        if (line.isEmpty() || solved.isEmpty()) chart.show(Optional.empty());
        else {
            MapStyle style = bench.look().style().get();
            chart.setAccessibleText(
                    line.get().figure(solved.get(), REACH, style).description());
            chart.show(Optional.of(
                    (canvas, box) -> line.get().drawPanel(canvas, box.inset(3), solved.get(), REACH, style)));
        }
    }

    private void list() {
        pins.getChildren().setAll(sight.rows().stream().map(this::row).toList());
        if (pins.getChildren().isEmpty())
            pins.getChildren()
                    .add(Parts.paragraph(
                            "No place is pinned: choose Pin above the map, then press on the slab. Choose it again to drag a pin elsewhere.",
                            "soft"));
    }

    private Node row(Sight.PinRow row) {
        Label name = Parts.label(row.pin().number() + ": " + row.value(), "name");
        Label what = Parts.paragraph(row.place() + "; " + row.what(), "soft");
        Button remove = new Button("Remove");
        remove.getStyleClass().add("small");
        remove.setMinWidth(USE_PREF_SIZE);
        remove.setAccessibleText("Remove pin " + row.pin().number());
        remove.setOnAction(e -> sight.unpin(row.pin()));
        VBox words = new VBox(name, what);
        HBox.setHgrow(words, Priority.ALWAYS);
        HBox line = new HBox(8, words, remove);
        line.setAlignment(Pos.CENTER_LEFT);
        return line;
    }
}

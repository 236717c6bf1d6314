package slabfield.desktop.view;

import java.nio.file.Path;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import javafx.collections.ListChangeListener;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import slabfield.desktop.viewmodel.Example;
import slabfield.desktop.viewmodel.Recovery;
import slabfield.desktop.viewmodel.Tool;
import slabfield.desktop.viewmodel.Workbench;

/** Three ways to begin, over the window: trace a plan, type a rectangle, open an example. */
final class WelcomePane extends StackPane {
    private static final DateTimeFormatter WHEN = DateTimeFormatter.ofPattern("d MMMM, HH:mm");
    private static final int MOST_RECENT = 5;
    /** Rims of an example's button, and a scroll bar [px]. */
    private static final double BESIDE_EXAMPLE = 60;

    private final Workbench bench;
    private final FileActions files;
    private final MapPane map;
    private final VBox lower = new VBox(6);

    WelcomePane(Workbench bench, FileActions files, MapPane map) {
        this.bench = bench;
        this.files = files;
        this.map = map;
        getStyleClass().add("welcome-shade");
        setAccessibleRole(AccessibleRole.DIALOG);
        VBox card = new VBox(14, Parts.label("What would you like to do?", "welcome-title"), doors(), lower, close());
        card.getStyleClass().add("welcome");
        card.setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
        getChildren().add(card);
        setOnMouseClicked(e -> {
            if (e.getTarget() == this) hide();
        });
        setOnKeyPressed(e -> {
            if (e.getCode() == KeyCode.ESCAPE) hide();
        });
        bench.recent().addListener((ListChangeListener<Path>) c -> fill());
        fill();
    }

    private HBox doors() {
        HBox doors = new HBox(
                12,
                door(
                        "trace",
                        "Trace a plan",
                        "Lay a scan or a photo of the plan under the drawing, scale it by one known length, draw over it.",
                        this::trace),
                door(
                        "rectangle",
                        "Type a rectangle",
                        "Width, Tab, depth, Enter: the first slab stands, and the map appears with the first suction point.",
                        this::rectangle),
                door(
                        "example",
                        "Open an example",
                        "A house that shows what the map can tell. Nothing that you do to it is saved over it.",
                        this::example));
        doors.setAlignment(Pos.CENTER);
        return doors;
    }

    private static Button door(String id, String title, String words, Runnable action) {
        Label name = Parts.label(title, "door-title"), text = Parts.paragraph(words, "soft");
        VBox inside = new VBox(6, name, text);
        Button door = new Button();
        door.setGraphic(inside);
        door.setId("door-" + id);
        door.getStyleClass().add("door");
        door.setAccessibleText(title + ". " + words);
        door.setOnAction(e -> action.run());
        return door;
    }

    private Node close() {
        Button close = new Button("Look at the house behind this");
        close.setCancelButton(true);
        close.setOnAction(e -> hide());
        HBox row = new HBox(close);
        row.setAlignment(Pos.CENTER_RIGHT);
        return row;
    }

    private void fill() {
        lower.getChildren().clear();
        bench.recovery().ifPresent(this::leftovers);
        List<Path> recent = bench.recent().stream().limit(MOST_RECENT).toList();
        if (recent.isEmpty()) return;
        lower.getChildren().add(Parts.label("Opened lately", "heading"));
        for (Path file : recent) {
            Hyperlink link = new Hyperlink(file.toString());
            link.setTextOverrun(javafx.scene.control.OverrunStyle.CENTER_ELLIPSIS);
            link.setMaxWidth(640);
            link.setOnAction(e -> {
                hide();
                files.open(file);
            });
            lower.getChildren().add(link);
        }
    }

    private void leftovers(Recovery recovery) {
        if (recovery.leftovers().isEmpty()) return;
        lower.getChildren().add(Parts.label("Not saved when a window ended without closing", "heading"));
        for (Recovery.Left left : recovery.leftovers()) {
            String name = left.file().map(f -> f.getFileName().toString()).orElse("a house that was never saved");
            Label words = Parts.label(name + ", " + WHEN.format(left.time().atZone(ZoneId.systemDefault())));
            HBox.setHgrow(words, Priority.ALWAYS);
            words.setMaxWidth(Double.MAX_VALUE);
            Button restore = new Button("Restore"), discard = new Button("Throw away");
            restore.setOnAction(e -> {
                hide();
                bench.restore(left);
            });
            discard.setOnAction(e -> {
                recovery.discard(left);
                fill();
            });
            HBox row = new HBox(8, words, restore, discard);
            row.setAlignment(Pos.CENTER_LEFT);
            lower.getChildren().add(row);
        }
    }

    private void trace() {
        Optional<Path> picture = files.choosePicture();
        if (picture.isEmpty()) return;
        begin(Tool.SCALE);
        bench.pictures().choose(picture.get());
    }

    private void rectangle() {
        begin(Tool.RECTANGLE);
    }

    private void begin(Tool tool) {
        if (!files.mayLeave()) return;
        bench.begin();
        hide();
        bench.drawing().tool().set(tool);
        map.requestFocus();
    }

    private void example() {
        VBox list = new VBox(4);
        ScrollPane scroll = new ScrollPane(list);
        for (Example example : bench.examples()) {
            Button button = new Button();
            button.setGraphic(new ExampleWords(example, scroll.widthProperty().subtract(BESIDE_EXAMPLE)));
            button.getStyleClass().add("door-example");
            button.setMaxWidth(Double.MAX_VALUE);
            button.setAccessibleText(example.name() + ". " + example.teaches());
            button.setOnAction(e -> {
                hide();
                files.open(example);
                map.requestFocus();
            });
            list.getChildren().add(button);
        }
        scroll.setFitToWidth(true);
        scroll.setPrefHeight(330);
        scroll.getStyleClass().add("door-examples");
        lower.getChildren().setAll(scroll);
        list.getChildren().get(0).requestFocus();
    }

    void show() {
        fill();
        setVisible(true);
        setManaged(true);
        lookup("#door-trace").requestFocus();
    }

    void hide() {
        setVisible(false);
        setManaged(false);
        map.requestFocus();
    }
}

package slabfield.desktop.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.collections.ListChangeListener;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.MenuButton;
import javafx.scene.control.MenuItem;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.RowConstraints;
import javafx.scene.layout.VBox;
import slabfield.desktop.viewmodel.guide.Guide;
import slabfield.desktop.viewmodel.work.ReadingEntry;
import slabfield.desktop.viewmodel.work.ReadingEntry.What;
import slabfield.model.Stage;
import slabfield.model.StageKind;

/** Enters readings with keys so large that a gloved finger finds them; a keyboard works as well. */
final class ReadingsPane extends BorderPane {
    private static final PseudoClass DONE = PseudoClass.getPseudoClass("done");
    private static final PseudoClass ODD = PseudoClass.getPseudoClass("odd");

    private static final Map<Character, What> LETTERS =
            Map.of('s', What.SPREAD, 'n', What.COUNT, 'w', What.WAITED, 'p', What.PIT, 'r', What.RISER);

    private final Guide guide;
    private final ReadingEntry entry;
    private final Label where = Parts.label("", "reading-where");
    private final Label number = Parts.label("", "reading-number");
    private final Button unit = new Button();
    private final Label remark = Parts.paragraph("", "reading-remark");
    private final MenuButton stage = new MenuButton();
    private final ListView<ReadingEntry.Row> list = new ListView<>();
    private final Button mark = key("", "pad-key");

    ReadingsPane(Guide guide) {
        this.guide = guide;
        this.entry = guide.entry();
        getStyleClass().add("readings");
        setLeft(round());
        setCenter(pad());
        addEventFilter(KeyEvent.KEY_PRESSED, this::pressed);
        addEventFilter(KeyEvent.KEY_TYPED, this::typed);
        entry.shown().addListener((o, was, is) -> update());
        entry.remark().addListener((o, was, is) -> update());
        entry.at().addListener((o, was, is) -> update());
        entry.stage().addListener((o, was, is) -> update());
        entry.mark().addListener((o, was, is) -> update());
        entry.rows().addListener((ListChangeListener<ReadingEntry.Row>) c -> update());
        guide.bench().units().shown().addListener((o, was, is) -> update());
        guide.bench().readings().stages().addListener((ListChangeListener<Stage>) c -> stages());
        stages();
        update();
    }

    private Node round() {
        list.setItems(entry.rows());
        list.setCellFactory(v -> new Cell());
        list.setAccessibleText("Readings of the stage in the order of the round");
        list.getSelectionModel().selectedIndexProperty().addListener((o, was, is) -> {
            if (is.intValue() >= 0 && is.intValue() != entry.at().get()) entry.go(is.intValue());
        });
        VBox.setVgrow(list, Priority.ALWAYS);
        stage.getStyleClass().add("large-choice");
        stage.setMaxWidth(Double.MAX_VALUE);
        ToggleButton pairs = Parts.tip(
                new ToggleButton("Off and on hole by hole"),
                "Each hole with the suction off and on before the next; else all holes off, then all on");
        pairs.selectedProperty().bindBidirectional(entry.pairs());
        pairs.setMaxWidth(Double.MAX_VALUE);
        pairs.getStyleClass().add("large-choice");
        ToggleButton details = Parts.tip(
                new ToggleButton("Spread, number, waiting, pit"),
                "What is known about the readings is in the round too. Keys go there at once: S spread, N number of readings, W waiting time, P pit, R riser");
        details.selectedProperty().bindBidirectional(entry.details());
        details.setMaxWidth(Double.MAX_VALUE);
        details.getStyleClass().add("large-choice");
        VBox part = new VBox(8, Parts.label("Stage", "heading"), stage, pairs, details, list);
        part.getStyleClass().add("round");
        return part;
    }

    private void stages() {
        List<MenuItem> items = new ArrayList<>();
        for (Stage s : guide.bench().readings().stages())
            items.add(item(s.id(), () -> entry.stage().set(Optional.of(s.id()))));
        for (StageKind kind : StageKind.values()) items.add(item("Begin: " + kind.words(), () -> entry.begin(kind)));
        stage.getItems().setAll(items);
    }

    private static MenuItem item(String text, Runnable action) {
        MenuItem item = new MenuItem(text);
        item.setMnemonicParsing(false);
        item.setOnAction(e -> action.run());
        return item;
    }

    private Node pad() {
        unit.getStyleClass().add("reading-unit");
        unit.setMinWidth(USE_PREF_SIZE);
        unit.setOnAction(e -> entry.otherUnit());
        Parts.tip(unit, "Switches the unit; no stored value changes");
        number.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(number, Priority.ALWAYS);
        HBox display = new HBox(12, number, unit);
        display.setAlignment(Pos.CENTER_RIGHT);
        display.getStyleClass().add("display");
        GridPane keys = keys();
        VBox.setVgrow(keys, Priority.ALWAYS);
        remark.setMinHeight(52);
        remark.setMaxWidth(Double.MAX_VALUE);
        VBox part = new VBox(8, where, display, remark, keys);
        part.getStyleClass().add("pad");
        return part;
    }

    private GridPane keys() {
        GridPane grid = new GridPane();
        grid.getStyleClass().add("keys");
        for (int k = 1; k <= 9; k++) {
            int digit = k;
            grid.add(action(key(String.valueOf(k), "pad-key"), () -> entry.digit(digit)), (k - 1) % 3, (k - 1) / 3);
        }
        mark.setAccessibleText("decimal mark");
        grid.add(action(key("\u00b1", "pad-key"), entry::sign), 0, 3);
        grid.add(action(key("0", "pad-key"), () -> entry.digit(0)), 1, 3);
        grid.add(action(mark, entry::decimalMark), 2, 3);
        grid.add(action(key("\u232b", "pad-key"), entry::back), 3, 0);
        grid.add(action(key("Erase", "pad-key"), entry::erase), 3, 1);
        grid.add(action(key("\u25c0 Back", "pad-key"), entry::previous), 3, 2);
        grid.add(action(key("Next \u25b6", "pad-key", "next"), entry::next), 3, 3);
        for (int c = 0; c < 4; c++) {
            ColumnConstraints column = new ColumnConstraints();
            column.setPercentWidth(25);
            grid.getColumnConstraints().add(column);
            RowConstraints row = new RowConstraints();
            row.setPercentHeight(25);
            grid.getRowConstraints().add(row);
        }
        return grid;
    }

    private static Button key(String text, String... classes) {
        Button button = new Button(text);
        button.getStyleClass().addAll(classes);
        button.setMaxSize(Double.MAX_VALUE, Double.MAX_VALUE);
        button.setFocusTraversable(false);
        return button;
    }

    private static Button action(Button button, Runnable action) {
        button.setOnAction(e -> action.run());
        return button;
    }

    private void pressed(KeyEvent e) {
        if (e.isShortcutDown() || e.isAltDown()) return;
        if (e.getCode() == KeyCode.ENTER && getScene().getFocusOwner() != stage) entry.next();
        else if (e.getCode() == KeyCode.BACK_SPACE) entry.back();
        else if (e.getCode() == KeyCode.PAGE_UP) entry.previous();
        else if (e.getCode() == KeyCode.PAGE_DOWN) entry.go(entry.at().get() + 1);
        else if (e.getCode() == KeyCode.DELETE) entry.erase();
        else return;
        e.consume();
    }

    private void typed(KeyEvent e) {
        if (e.isShortcutDown() || e.isAltDown() || e.getCharacter().isEmpty()) return;
        char letter = Character.toLowerCase(e.getCharacter().charAt(0));
        if (LETTERS.containsKey(letter)) {
            entry.goTo(LETTERS.get(letter));
            e.consume();
            return;
        }
        if ("0123456789.,-\u2212".indexOf(letter) < 0) return;
        if (letter == ',' || letter == '.') entry.mark().set(letter);
        entry.type(letter);
        e.consume();
    }

    private void update() {
        stage.setText(entry.stage().get().orElse("Choose or begin a stage"));
        Optional<ReadingEntry.Slot> slot = entry.slot();
        where.setText(slot.map(s -> s.id() + ", " + s.what().words()).orElse("No test hole is drawn"));
        String typed = entry.shown().get();
        number.setText(typed.isEmpty() ? stored() : typed);
        number.pseudoClassStateChanged(DONE, typed.isEmpty());
        number.setAccessibleText(typed + " " + entry.unit());
        unit.setText(entry.unit());
        unit.setVisible(!entry.unit().isEmpty());
        unit.setDisable(!entry.isPressure());
        mark.setText(String.valueOf(entry.mark().get()));
        remark.setText(entry.remark().get());
        remark.pseudoClassStateChanged(ODD, !entry.remark().get().isEmpty());
        if (entry.at().get() < list.getItems().size()) {
            list.getSelectionModel().select(entry.at().get());
            if (entry.at().get() > 3) list.scrollTo(entry.at().get() - 3);
        }
    }

    private String stored() {
        return entry.at().get() < entry.rows().size()
                ? entry.rows().get(entry.at().get()).number()
                : "";
    }

    /** A row with the place and what was read there. */
    private static final class Cell extends ListCell<ReadingEntry.Row> {
        @Override
        protected void updateItem(ReadingEntry.Row row, boolean empty) {
            super.updateItem(row, empty);
            pseudoClassStateChanged(DONE, !empty && row != null && !row.value().isEmpty());
            setText(null);
            if (empty || row == null) {
                setGraphic(null);
                return;
            }
            Label place = Parts.label(row.slot().id(), "name");
            place.setMinWidth(USE_PREF_SIZE);
            Label what = Parts.label(row.slot().what().words(), "soft");
            HBox.setHgrow(what, Priority.ALWAYS);
            what.setMaxWidth(Double.MAX_VALUE);
            Label value = Parts.label(row.value().isEmpty() ? "\u2013" : row.value(), "name");
            value.setMinWidth(USE_PREF_SIZE);
            HBox line = new HBox(8, place, what, value);
            line.setAlignment(Pos.CENTER_LEFT);
            setGraphic(line);
        }
    }
}

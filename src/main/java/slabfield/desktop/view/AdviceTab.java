package slabfield.desktop.view;

import java.util.List;
import java.util.Optional;
import javafx.css.PseudoClass;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TableCell;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableRow;
import javafx.scene.control.TableView;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import slabfield.advice.Suggestion;
import slabfield.desktop.viewmodel.Advising;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.desktop.viewmodel.work.Previews;

/** Measures that were tried, and what each would change; the map shows the house with the one that is pointed at. */
final class AdviceTab extends VBox {
    private static final PseudoClass STALE = PseudoClass.getPseudoClass("stale");
    private final Workbench bench;
    private final Previews previews;
    private final TableView<Suggestion> table = Parts.table("Suggested measures", "Press \"Look for measures\".");

    /** @param previews are told which measure is pointed at */
    AdviceTab(Workbench bench, Previews previews) {
        this.bench = bench;
        this.previews = previews;
        getStyleClass().add("tab-body");
        Advising advising = bench.advising();
        SearchRow first =
                new SearchRow("_Look for measures", "Search for measures", advising.search(), advising::start);
        Label message = Parts.paragraph("", "soft");
        message.textProperty().bind(advising.search().message());
        HBox.setHgrow(message, Priority.ALWAYS);
        first.getChildren().add(message);
        VBox.setVgrow(table, Priority.ALWAYS);
        getChildren().addAll(first, table);
        table.setRowFactory(t -> {
            TableRow<Suggestion> row = new TableRow<>();
            row.hoverProperty().addListener((o, was, is) -> point(is ? row.getItem() : null));
            return row;
        });
        table.getSelectionModel().selectedItemProperty().addListener((o, was, is) -> point(null));
        table.focusedProperty().addListener((o, was, is) -> point(null));
        table.setItems(advising.suggestions());
        table.setOnKeyPressed(e -> {
            Suggestion chosen = table.getSelectionModel().getSelectedItem();
            if (e.getCode() == KeyCode.ENTER && chosen != null) advising.apply(chosen);
        });
        advising.search().outOfDate().addListener((o, was, is) -> table.pseudoClassStateChanged(STALE, is));
        bench.units().shown().addListener((o, was, is) -> columns());
        bench.look().presentation().addListener((o, was, is) -> columns());
        columns();
    }

    /** The map shows the house with the measure under the mouse, else with the one that the keys are on. */
    private void point(Suggestion under) {
        Suggestion chosen = table.isFocused() ? table.getSelectionModel().getSelectedItem() : null;
        previews.point(Optional.ofNullable(under == null ? chosen : under));
    }

    private void columns() {
        String pressure = "\n[" + bench.units().pressure().get().symbol() + "]",
                flow = "\n[" + bench.units().flow().get().symbol() + "]";
        List<TableColumn<Suggestion, ?>> all = List.of(
                apply(),
                Parts.column("Measure", 256, s -> Advising.words(s.measure(), bench.units())),
                Parts.numbers("Weakest" + pressure, 76, s -> pressure(-s.after().weakest())),
                Parts.numbers("On\ntarget", 62, s -> percent(s.after().meeting())),
                Parts.numbers("Exhaust" + flow, 74, s -> flow(s.flowsAfter().exhaust())),
                Parts.numbers("Room air\nsaved" + flow.replace('\n', ' '), 100, s -> flow(s.roomAirSaved())),
                Parts.column("Outcome", 100, AdviceTab::meaning));
        Parts.fill(table, all, bench.look().presentation().get());
    }

    private TableColumn<Suggestion, String> apply() {
        TableColumn<Suggestion, String> column = Parts.column("", 70, s -> "");
        column.setMinWidth(70);
        column.setCellFactory(c -> new TableCell<>() {
            private final Button button = new Button("Apply");

            @Override
            protected void updateItem(String text, boolean empty) {
                super.updateItem(text, empty);
                button.getStyleClass().add("small");
                Suggestion suggestion = empty ? null : getTableRow().getItem();
                setGraphic(suggestion == null ? null : button);
                if (suggestion == null) return;
                button.setAccessibleText("Apply: " + Advising.words(suggestion.measure(), bench.units()));
                button.setOnAction(e -> bench.advising().apply(suggestion));
            }
        });
        return column;
    }

    private static String meaning(Suggestion s) {
        if (s.doesNothing()) return "no real change";
        if (s.after().meeting() >= 1 && s.before().meeting() < 1) return "all on target";
        return s.gain() >= Suggestion.NOTICEABLE
                        || s.after().meeting() > s.before().meeting()
                ? "helps"
                : "worse";
    }

    private String pressure(double si) {
        return bench.units().pressureNumber(si);
    }

    private String flow(double si) {
        return bench.units().shown().get().flow(si);
    }

    private static String percent(double part) {
        return Math.round(100 * part) + " %";
    }
}

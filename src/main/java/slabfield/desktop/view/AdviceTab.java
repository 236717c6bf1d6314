package slabfield.desktop.view;

import java.util.List;
import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
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
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.desktop.viewmodel.work.Previews;

/** Measures that were tried, and what each would change. */
final class AdviceTab extends VBox {
    private static final PseudoClass STALE = PseudoClass.getPseudoClass("stale");
    private static final String ARROW = " \u2192 ";

    /** Part of the width for the picture of a measure, and its bounds. */
    private static final double CARD = 0.28, LEAST_CARD = 190, MOST_CARD = 300;

    private final Workbench bench;
    private final TableView<Suggestion> table = Parts.table("Suggested measures", "Press \"Look for measures\".");

    /** @param previews are told which measure is pointed at */
    AdviceTab(Workbench bench, Previews previews, TaskRunner painting) {
        this.bench = bench;
        getStyleClass().add("tab-body");
        Advising advising = bench.advising();
        Button start = new Button("_Look for measures");
        start.setMinWidth(USE_PREF_SIZE);
        start.disableProperty().bind(advising.search().searching());
        start.setOnAction(e -> advising.start());
        Button cancel = new Button("Cancel");
        cancel.visibleProperty().bind(advising.search().searching());
        cancel.managedProperty().bind(advising.search().searching());
        cancel.setOnAction(e -> advising.search().cancel());
        ProgressBar progress = new ProgressBar();
        progress.progressProperty().bind(advising.search().progress());
        progress.visibleProperty().bind(advising.search().searching());
        progress.managedProperty().bind(advising.search().searching());
        progress.setAccessibleText("Search for measures");
        Label message = Parts.paragraph("", "soft");
        message.textProperty().bind(advising.search().message());
        HBox.setHgrow(message, Priority.ALWAYS);
        HBox first = new HBox(8, start, cancel, progress, message);
        first.setAlignment(Pos.CENTER_LEFT);
        HBox.setHgrow(table, Priority.ALWAYS);
        PreviewCard card = new PreviewCard(bench, previews, painting);
        card.visibleProperty().bind(Bindings.isNotEmpty(advising.suggestions()));
        card.managedProperty().bind(card.visibleProperty());
        card.prefWidthProperty()
                .bind(Bindings.createDoubleBinding(
                        () -> Math.max(LEAST_CARD, Math.min(MOST_CARD, CARD * getWidth())), widthProperty()));
        HBox both = new HBox(8, table, card);
        VBox.setVgrow(both, Priority.ALWAYS);
        getChildren().addAll(first, both);
        table.setRowFactory(t -> {
            TableRow<Suggestion> row = new TableRow<>();
            row.hoverProperty().addListener((o, was, is) -> {
                if (is) previews.point(Optional.ofNullable(row.getItem()));
            });
            return row;
        });
        table.getSelectionModel()
                .selectedItemProperty()
                .addListener((o, was, is) -> previews.point(Optional.ofNullable(is)));
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

    private void columns() {
        String pressure = "\n[" + bench.units().pressure().get().symbol() + "]",
                flow = "\n[" + bench.units().flow().get().symbol() + "]";
        List<TableColumn<Suggestion, ?>> all = List.of(
                apply(),
                Parts.column("Measure", 215, s -> Advising.words(s.measure(), bench.units())),
                Parts.numbers(
                        "Weakest place" + pressure,
                        152,
                        s -> pressure(-s.before().weakest())
                                + ARROW
                                + pressure(-s.after().weakest())),
                Parts.numbers(
                        "Meets\ntarget",
                        122,
                        s -> percent(s.before().meeting())
                                + ARROW
                                + percent(s.after().meeting())),
                Parts.numbers(
                        "Exhaust" + flow,
                        112,
                        s -> flow(s.flowsBefore().exhaust())
                                + ARROW
                                + flow(s.flowsAfter().exhaust())),
                Parts.numbers("Room air\nsaved" + flow.replace('\n', ' '), 112, s -> flow(s.roomAirSaved())),
                Parts.column("Outcome", 106, AdviceTab::meaning));
        Parts.fill(table, all, bench.look().presentation().get());
    }

    private TableColumn<Suggestion, String> apply() {
        TableColumn<Suggestion, String> column = Parts.column("", 70, s -> "");
        column.setMinWidth(76);
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

package slabfield.desktop.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import javafx.collections.FXCollections;
import javafx.collections.ListChangeListener;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableRow;
import javafx.scene.control.TableView;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import slabfield.desktop.viewmodel.HoleRow;
import slabfield.desktop.viewmodel.Solving;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.model.Stage;
import slabfield.readings.Comparison;

/** Test holes: prediction beside the readings of a stage. The same values as on the map, for those who do not see it. */
final class HolesTab extends VBox {
    private static final PseudoClass STALE = PseudoClass.getPseudoClass("stale");
    private static final PseudoClass OFF = PseudoClass.getPseudoClass("off");

    private final Workbench bench;
    private final ComboBox<Optional<Stage>> stage = new ComboBox<>();
    private final TableView<HoleRow> table =
            Parts.table("Test holes", "No test hole is drawn. Press H and click on the map, or type x, Tab, y, Enter.");
    private final Label note = Parts.paragraph("", "soft");
    private final Label summary = Parts.paragraph("", "remarks");

    HolesTab(Workbench bench) {
        this.bench = bench;
        getStyleClass().add("tab-body");
        stage.setConverter(new StringConverter<>() {
            @Override
            public String toString(Optional<Stage> chosen) {
                return chosen == null ? "" : chosen.map(HolesTab::title).orElse("prediction alone");
            }

            @Override
            public Optional<Stage> fromString(String text) {
                return Optional.empty();
            }
        });
        stage.setAccessibleText("Stage whose readings are shown");
        note.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(note, Priority.ALWAYS);
        Label title = Parts.label("Readings of stage");
        title.setMinWidth(USE_PREF_SIZE);
        stage.setMinWidth(USE_PREF_SIZE);
        HBox first = new HBox(8, title, stage, note);
        first.setAlignment(Pos.CENTER_LEFT);
        VBox.setVgrow(table, Priority.ALWAYS);
        table.setRowFactory(t -> new Row());
        getChildren().addAll(first, table, summary);
        table.setItems(bench.readings().rows());
        bench.readings().note().addListener((o, was, is) -> summarise());
        bench.readings().stages().addListener((ListChangeListener<Stage>) c -> fillStages());
        bench.readings().stage().addListener((o, was, is) -> stage.setValue(is));
        stage.valueProperty().addListener((o, was, is) -> {
            if (is != null) bench.readings().stage().set(is);
        });
        bench.readings().comparison().addListener((o, was, is) -> summarise());
        bench.solving()
                .picture()
                .addListener((o, was, is) -> table.pseudoClassStateChanged(STALE, is.state() == Solving.State.FAILED));
        bench.units().shown().addListener((o, was, is) -> {
            columns();
            summarise();
        });
        bench.look().presentation().addListener((o, was, is) -> columns());
        fillStages();
        columns();
        summarise();
    }

    private static String title(Stage stage) {
        String kind = stage.kind().words();
        return stage.id().toLowerCase(Locale.ROOT).contains(kind) ? stage.id() : stage.id() + " (" + kind + ")";
    }

    private void fillStages() {
        List<Optional<Stage>> choices = new ArrayList<>(List.of(Optional.empty()));
        bench.readings().stages().forEach(s -> choices.add(Optional.of(s)));
        Optional<Stage> chosen = bench.readings().stage().get();
        stage.setItems(FXCollections.observableArrayList(choices));
        stage.setValue(chosen);
        stage.setDisable(choices.size() == 1);
    }

    private void columns() {
        String unit = "\n[" + bench.units().pressure().get().symbol() + "]";
        List<TableColumn<HoleRow, ?>> all = List.of(
                Parts.column("Hole", 48, HoleRow::hole),
                Parts.numbers("Predicted" + unit, 82, r -> number(r.predicted())),
                Parts.numbers("Measured" + unit, 82, r -> number(r.measured())),
                Parts.numbers("Differs" + unit, 74, r -> number(r.difference())),
                Parts.numbers("\u00b1 Band" + unit, 68, r -> number(r.band())),
                Parts.column("Verdict", 172, HoleRow::verdict),
                Parts.column("Found", 84, HoleRow::found),
                Parts.numbers(
                        "Off, pred. /\nmeas." + unit.replace('\n', ' '),
                        112,
                        r -> number(r.predictedOff()) + " / " + number(r.measuredOff())));
        Parts.fill(table, all, bench.look().presentation().get());
    }

    private String number(OptionalDouble si) {
        return si.isPresent() ? bench.units().pressureNumber(si.getAsDouble()) : "\u2013";
    }

    private void summarise() {
        String mean = bench.readings().comparison().get().map(this::mean).orElse("");
        note.setText(mean);
        String words = (bench.readings().note().get() + "\n"
                        + bench.readings().comparison().get().map(this::words).orElse(""))
                .strip();
        summary.setText(words);
        summary.setManaged(!words.isEmpty());
        summary.setVisible(!words.isEmpty());
    }

    private String mean(Comparison c) {
        if (c.bias().isEmpty() || c.scatter().isEmpty()) return "";
        return "Mean difference " + bench.units().pressure(c.bias().getAsDouble()) + ", root mean square "
                + bench.units().pressure(c.scatter().getAsDouble()) + ".";
    }

    private String words(Comparison c) {
        List<String> lines = new ArrayList<>();
        for (Comparison.SystemComparison s : c.systems()) lines.add(system(s));
        lines.addAll(c.remarks());
        return String.join("\n", lines);
    }

    private String system(Comparison.SystemComparison s) {
        List<String> parts = new ArrayList<>();
        s.measuredFlow()
                .ifPresent(q -> parts.add("flow " + bench.units().flow(q) + " measured, "
                        + bench.units().flow(s.predictedFlow()) + " predicted"));
        s.measuredPressure()
                .ifPresent(p -> parts.add("pressure " + bench.units().pressure(p) + " measured, "
                        + bench.units().pressure(s.predictedPressure()) + " predicted"));
        return s.suctionPoint() + ": " + String.join("; ", parts) + ".";
    }

    /** A row that stands out where reading and prediction disagree. */
    private final class Row extends TableRow<HoleRow> {
        @Override
        protected void updateItem(HoleRow row, boolean empty) {
            super.updateItem(row, empty);
            pseudoClassStateChanged(OFF, !empty && row != null && row.off());
            setTooltip(
                    empty || row == null
                            ? null
                            : new Tooltip(row.hole() + " at " + bench.units().place(row.at())));
        }
    }
}

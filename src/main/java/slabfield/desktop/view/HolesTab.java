package slabfield.desktop.view;

import java.util.ArrayList;
import java.util.List;
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
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import slabfield.desktop.viewmodel.HoleRow;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.model.Stage;
import slabfield.readings.Comparison;

/** Test holes: prediction beside the readings of a stage. The same values as on the map, for those who do not see it. */
final class HolesTab extends VBox {
    private static final PseudoClass OFF = PseudoClass.getPseudoClass("off");

    private final Workbench bench;
    private final ComboBox<Optional<Stage>> stage = new ComboBox<>();
    private final TableView<HoleRow> table = Parts.table("Test holes", "No test hole is drawn.");
    private final Label note = Parts.paragraph("", "soft");
    private final Label summary = Parts.paragraph("", "remarks");

    HolesTab(Workbench bench) {
        this.bench = bench;
        getStyleClass().add("tab-body");
        stage.setConverter(new StringConverter<>() {
            @Override
            public String toString(Optional<Stage> chosen) {
                return chosen == null ? "" : chosen.map(s -> s.id() + " (" + s.kind().words() + ")").orElse("prediction alone");
            }

            @Override
            public Optional<Stage> fromString(String text) {
                return Optional.empty();
            }
        });
        stage.setAccessibleText("Stage whose readings are shown");
        note.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(note, Priority.ALWAYS);
        HBox first = new HBox(8, Parts.label("Readings of stage"), stage, note);
        first.setAlignment(Pos.CENTER_LEFT);
        VBox.setVgrow(table, Priority.ALWAYS);
        table.setRowFactory(t -> new Row());
        getChildren().addAll(first, table, summary);
        table.setItems(bench.readings().rows());
        note.textProperty().bind(bench.readings().note());
        bench.readings().stages().addListener((ListChangeListener<Stage>) c -> fillStages());
        bench.readings().stage().addListener((o, was, is) -> stage.setValue(is));
        stage.valueProperty().addListener((o, was, is) -> {
            if (is != null) bench.readings().stage().set(is);
        });
        bench.readings().comparison().addListener((o, was, is) -> summarise());
        bench.units().shown().addListener((o, was, is) -> {
            columns();
            summarise();
        });
        fillStages();
        columns();
        summarise();
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
        String unit = " [" + bench.units().pressure().get().symbol() + "]";
        List<TableColumn<HoleRow, ?>> all = List.of(
                Parts.column("Hole", 60, HoleRow::hole),
                Parts.numbers("Predicted" + unit, 110, r -> number(r.predicted())),
                Parts.numbers("Measured" + unit, 110, r -> number(r.measured())),
                Parts.numbers("Difference" + unit, 110, r -> number(r.difference())),
                Parts.numbers("Band \u00b1" + unit, 90, r -> number(r.band())),
                Parts.column("Verdict", 150, HoleRow::verdict),
                Parts.numbers("Off, predicted" + unit, 120, r -> number(r.predictedOff())),
                Parts.numbers("Off, measured" + unit, 120, r -> number(r.measuredOff())),
                Parts.column("Found below", 90, HoleRow::found),
                Parts.column("Place", 170, r -> bench.units().place(r.at())));
        table.getColumns().setAll(all);
    }

    private String number(OptionalDouble si) {
        return si.isPresent() ? bench.units().pressureNumber(si.getAsDouble()) : "\u2013";
    }

    private void summarise() {
        String words = bench.readings().comparison().get().map(this::words).orElse("");
        summary.setText(words);
        summary.setManaged(!words.isEmpty());
        summary.setVisible(!words.isEmpty());
    }

    private String words(Comparison c) {
        List<String> lines = new ArrayList<>();
        for (Comparison.SystemComparison s : c.systems()) lines.add(system(s));
        if (c.bias().isPresent() && c.scatter().isPresent())
            lines.add("Mean difference " + bench.units().pressure(c.bias().getAsDouble()) + ", root mean square "
                    + bench.units().pressure(c.scatter().getAsDouble()) + ".");
        lines.addAll(c.remarks());
        return String.join("\n", lines);
    }

    private String system(Comparison.SystemComparison s) {
        List<String> parts = new ArrayList<>();
        s.measuredFlow().ifPresent(q -> parts.add("flow " + bench.units().flow(q) + " measured, " + bench.units().flow(s.predictedFlow()) + " predicted"));
        s.measuredPressure().ifPresent(p -> parts.add("pressure " + bench.units().pressure(p) + " measured, " + bench.units().pressure(s.predictedPressure()) + " predicted"));
        return s.suctionPoint() + ": " + String.join("; ", parts) + ".";
    }

    /** A row that stands out where reading and prediction disagree. */
    private static final class Row extends TableRow<HoleRow> {
        @Override
        protected void updateItem(HoleRow row, boolean empty) {
            super.updateItem(row, empty);
            pseudoClassStateChanged(OFF, !empty && row != null && row.off());
        }
    }
}

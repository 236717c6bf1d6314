package slabfield.desktop.view;

import java.util.List;
import javafx.scene.control.Label;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableView;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import slabfield.desktop.viewmodel.AirShare;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.field.Result;

/** Where the exhaust air comes from. */
final class AirTab extends VBox {
    private final Workbench bench;
    private final TableView<AirShare> table = Parts.table("Air by source", "No prediction yet.");
    private final Label sums = Parts.paragraph("", "soft");

    AirTab(Workbench bench) {
        this.bench = bench;
        getStyleClass().add("tab-body");
        VBox.setVgrow(table, Priority.ALWAYS);
        getChildren().addAll(sums, table);
        bench.solving().picture().addListener((o, was, is) -> {
            if (was.result() != is.result() && !bench.solving().dragging().get()) update();
        });
        bench.units().shown().addListener((o, was, is) -> {
            columns();
            update();
        });
        bench.look().presentation().addListener((o, was, is) -> columns());
        columns();
        update();
    }

    private void columns() {
        List<TableColumn<AirShare, ?>> all = List.of(
                Parts.column("Air comes through", 320, AirShare::source),
                Parts.numbers(
                        "Flow [" + bench.units().flow().get().symbol() + "]",
                        140,
                        a -> bench.units().shown().get().flow(a.flow())),
                Parts.numbers("Share of the exhaust", 160, AirShare::shareText));
        Parts.fill(table, all, bench.look().presentation().get());
    }

    private void update() {
        var solved = bench.solving().picture().get().solved();
        table.getItems().setAll(solved.map(AirShare::of).orElse(List.of()));
        sums.setText(solved.map(s -> words(s.flows())).orElse(""));
    }

    private String words(Result.Flows f) {
        var units = bench.units();
        return "Exhaust " + units.flow(f.exhaust()) + " = from the room " + units.flow(f.fromRoom())
                + " + through soil " + units.flow(f.fromSoil()) + " + through outside faces of walls "
                + units.flow(f.fromOutdoors());
    }
}

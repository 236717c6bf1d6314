package slabfield.desktop.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.css.PseudoClass;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableRow;
import javafx.scene.control.TableView;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import slabfield.desktop.viewmodel.SystemPart;
import slabfield.desktop.viewmodel.SystemSizing;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.figure.Figure;
import slabfield.figure.Figures;

/** Fans and pipes that were tried, and what follows from the best fan. */
final class SystemTab extends VBox {
    private static final PseudoClass STALE = PseudoClass.getPseudoClass("stale");
    private static final PseudoClass OFF = PseudoClass.getPseudoClass("off");
    private static final String CURVE = "Fan curve";
    private static final double CURVE_HEIGHT = 330;
    private static final List<String> TITLES =
            List.of("Fans", CURVE, "Pipes", "Worst day", "Seasons", "House pressure", "Year");

    private final Workbench bench;
    private final Label headline = Parts.paragraph("", "name");
    private final VBox body = new VBox();
    private final ObjectProperty<String> chosen = new SimpleObjectProperty<>(TITLES.get(0));
    private final HBox choice = Parts.choice("Part of the system", TITLES, t -> t, chosen);

    private final PlanPicture curve;

    /** @param painting of the fan's curve */
    SystemTab(Workbench bench, TaskRunner painting) {
        this.bench = bench;
        this.curve = new PlanPicture(painting, "Curve of the fan and of the system");
        curve.setMinHeight(CURVE_HEIGHT);
        getStyleClass().add("tab-body");
        body.getStyleClass().add("system");
        ScrollPane scroll = new ScrollPane(body);
        scroll.setFitToWidth(true);
        scroll.setAccessibleText("Sizes of the system");
        VBox.setVgrow(scroll, Priority.ALWAYS);
        getChildren().addAll(first(), message(), headline, scroll);
        bench.sizing().search().found().addListener((o, was, is) -> update());
        bench.sizing().search().outOfDate().addListener((o, was, is) -> body.pseudoClassStateChanged(STALE, is));
        bench.units().shown().addListener((o, was, is) -> update());
        bench.look().style().addListener((o, was, is) -> update());
        chosen.addListener((o, was, is) -> update());
        update();
    }

    private Node first() {
        SystemSizing sizing = bench.sizing();
        SearchRow first = new SearchRow("Si_ze the system", "Sizing of the system", sizing.search(), sizing::start);
        choice.setMinWidth(USE_PREF_SIZE);
        first.getChildren().add(choice);
        return first;
    }

    private Label message() {
        Label message = Parts.paragraph("", "soft");
        message.textProperty().bind(bench.sizing().search().message());
        return message;
    }

    private void update() {
        List<SystemPart> parts = bench.sizing().parts();
        headline.setText(bench.sizing().headline());
        for (Node node : List.of(headline, choice)) {
            node.setVisible(!headline.getText().isEmpty() && (node == headline || !parts.isEmpty()));
            node.setManaged(node.isVisible());
        }
        List<Node> shown = new ArrayList<>();
        parts.stream().filter(p -> p.title().equals(chosen.get())).forEach(part -> {
            part.before().forEach(s -> shown.add(Parts.paragraph(s)));
            if (!part.columns().isEmpty()) shown.add(table(part));
            part.after().forEach(s -> shown.add(Parts.paragraph("\u2022 " + s, "soft")));
        });
        if (chosen.get().equals(CURVE)) shown.addAll(curve());
        body.getChildren().setAll(shown);
    }

    private List<Node> curve() {
        Optional<Figure> figure = bench.sizing().curve(bench.look().style().get());
        if (figure.isEmpty()) return List.of(Parts.paragraph("No fan was solved, so there is no curve to draw."));
        curve.show(figure.map(f -> (canvas, box) -> Figures.panel(f, canvas, box.inset(6))));
        curve.setAccessibleText(figure.get().description());
        return List.of(curve);
    }

    private TableView<SystemPart.Row> table(SystemPart part) {
        TableView<SystemPart.Row> table = Parts.table(part.title(), "");
        List<TableColumn<SystemPart.Row, ?>> columns = new ArrayList<>();
        for (int i = 0; i < part.columns().size(); i++) {
            SystemPart.Column column = part.columns().get(i);
            int at = i;
            columns.add(
                    column.number()
                            ? Parts.numbers(
                                    column.title(),
                                    column.width(),
                                    r -> r.cells().get(at))
                            : Parts.column(
                                    column.title(),
                                    column.width(),
                                    r -> r.cells().get(at)));
        }
        Parts.fill(table, columns, bench.look().presentation().get());
        table.getItems().setAll(part.rows());
        table.setRowFactory(t -> new Row());
        Parts.asHighAsItsRows(table);
        return table;
    }

    /** A row that stands out where it misses what is wanted. */
    private static final class Row extends TableRow<SystemPart.Row> {
        @Override
        protected void updateItem(SystemPart.Row row, boolean empty) {
            super.updateItem(row, empty);
            pseudoClassStateChanged(OFF, !empty && row != null && row.off());
        }
    }
}

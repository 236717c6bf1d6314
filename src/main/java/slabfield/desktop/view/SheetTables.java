package slabfield.desktop.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.css.PseudoClass;
import javafx.scene.Node;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TableCell;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableRow;
import javafx.scene.control.TableView;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.VBox;
import slabfield.desktop.viewmodel.find.Findings;
import slabfield.desktop.viewmodel.find.Sheet;
import slabfield.desktop.viewmodel.guide.Guide;

/** The tables of a page. Who points at a row, or goes to it with the keys, sees on the map what it is about; Enter does its act. */
final class SheetTables extends ScrollPane {
    private static final PseudoClass OFF = PseudoClass.getPseudoClass("off");
    private static final double ACT = 34;
    private static final double LETTER = 8;

    private final Guide guide;
    private final Findings findings;
    private final VBox body = new VBox();

    SheetTables(Guide guide) {
        this.guide = guide;
        this.findings = guide.findings();
        setContent(body);
        setFitToWidth(true);
        setAccessibleText("Tables of the page");
        getStyleClass().add("finding-tables");
        body.getStyleClass().addAll("system", "tab-body");
        guide.bench()
                .look()
                .presentation()
                .addListener((o, was, is) -> show(findings.sheet().get()));
    }

    void show(Sheet sheet) {
        boolean held = holdsFocus();
        body.getChildren().clear();
        for (Sheet.Table table : sheet.tables()) {
            if (table.rows().isEmpty() && table.after().isEmpty()) continue;
            body.getChildren().add(Parts.label(table.title(), "heading"));
            if (!table.rows().isEmpty()) body.getChildren().add(table(table));
            table.after().forEach(line -> body.getChildren().add(Parts.paragraph(line, "soft")));
        }
        if (held)
            body.getChildren().stream()
                    .filter(TableView.class::isInstance)
                    .findFirst()
                    .ifPresent(Node::requestFocus);
    }

    /** Whether the keys go to one of the tables, so that they go to the one that takes its place. */
    private boolean holdsFocus() {
        Node owner = getScene() == null ? null : getScene().getFocusOwner();
        while (owner != null && owner != body) owner = owner.getParent();
        return owner != null;
    }

    private TableView<Sheet.Row> table(Sheet.Table sheet) {
        TableView<Sheet.Row> table = Parts.table(sheet.title(), "");
        List<TableColumn<Sheet.Row, ?>> columns = new ArrayList<>();
        if (sheet.rows().stream().anyMatch(r -> !r.acts().isEmpty())) columns.add(acts(sheet));
        for (int i = 0; i < sheet.columns().size(); i++) {
            Sheet.Column c = sheet.columns().get(i);
            int at = i;
            columns.add(
                    c.number()
                            ? Parts.numbers(c.title(), c.width(), r -> r.cells().get(at))
                            : Parts.column(c.title(), c.width(), r -> r.cells().get(at)));
        }
        Parts.fill(table, columns, guide.bench().look().presentation().get());
        table.getItems().setAll(sheet.rows());
        table.setRowFactory(t -> new Row());
        table.getSelectionModel()
                .selectedItemProperty()
                .addListener((o, was, is) -> findings.point(Optional.ofNullable(is)));
        table.setOnKeyPressed(e -> {
            Sheet.Row chosen = table.getSelectionModel().getSelectedItem();
            if (e.getCode() == KeyCode.ENTER && chosen != null && !chosen.acts().isEmpty())
                chosen.acts().get(0).run().run();
        });
        Parts.asHighAsItsRows(table);
        return table;
    }

    private static TableColumn<Sheet.Row, String> acts(Sheet.Table sheet) {
        int longest = sheet.rows().stream()
                .flatMap(r -> r.acts().stream())
                .mapToInt(a -> a.words().length())
                .max()
                .orElse(0);
        TableColumn<Sheet.Row, String> column = Parts.column("", ACT + LETTER * longest, r -> "");
        column.setMinWidth(ACT + LETTER * longest);
        column.setMaxWidth(2 * (ACT + LETTER * longest));
        column.setCellFactory(c -> new TableCell<>() {
            @Override
            protected void updateItem(String text, boolean empty) {
                super.updateItem(text, empty);
                Sheet.Row row = empty ? null : getTableRow().getItem();
                setGraphic(
                        row == null || row.acts().isEmpty()
                                ? null
                                : JobRow.act(row.acts().get(0), "small"));
            }
        });
        return column;
    }

    /** A row that stands out, and that shows what it is about when the mouse is over it. */
    private final class Row extends TableRow<Sheet.Row> {
        Row() {
            hoverProperty().addListener((o, was, is) -> {
                if (is && getItem() != null) findings.point(Optional.of(getItem()));
            });
        }

        @Override
        protected void updateItem(Sheet.Row row, boolean empty) {
            super.updateItem(row, empty);
            pseudoClassStateChanged(OFF, !empty && row != null && row.off());
        }
    }
}

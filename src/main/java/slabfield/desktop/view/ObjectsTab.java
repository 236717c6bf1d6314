package slabfield.desktop.view;

import java.util.List;
import java.util.Optional;
import javafx.collections.ListChangeListener;
import javafx.scene.control.SelectionMode;
import javafx.scene.control.TableView;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import slabfield.desktop.drawing.Form;
import slabfield.desktop.drawing.Item;
import slabfield.desktop.drawing.Items;
import slabfield.desktop.drawing.Kind;
import slabfield.desktop.viewmodel.Workbench;

/** Every drawn thing as a row of a table: an equal way to what the plan shows. What is chosen here is chosen there. */
final class ObjectsTab extends VBox {
    private final Workbench bench;
    private final TableView<Item> table = Parts.table(
            "All drawn things",
            "Nothing is drawn yet. Press R and type a width, Tab, a depth, Enter; or drag on the plan.");
    private boolean following;

    ObjectsTab(Workbench bench) {
        this.bench = bench;
        getStyleClass().add("tab-body");
        table.setId("objects");
        table.getSelectionModel().setSelectionMode(SelectionMode.MULTIPLE);
        Parts.fill(
                table,
                List.of(
                        Parts.column("Kind", 120, i -> i.kind().word()),
                                Parts.column("Name", 170, i -> i.kind().isPart() ? i.title() : i.id()),
                        Parts.column("Where", 190, this::where), Parts.column("Size", 160, this::size)),
                false);
        VBox.setVgrow(table, Priority.ALWAYS);
        getChildren().add(table);
        bench.document().scenario().addListener((o, was, is) -> {
            if (!bench.solving().dragging().get()) rows();
        });
        bench.solving().dragging().addListener((o, was, is) -> {
            if (!is) rows();
        });
        bench.units().shown().addListener((o, was, is) -> table.refresh());
        bench.drawing().selection().items().addListener((o, was, is) -> follow());
        table.getSelectionModel().getSelectedItems().addListener((ListChangeListener<Item>) c -> {
            if (!following)
                bench.drawing()
                        .selection()
                        .set(table.getSelectionModel().getSelectedItems().stream()
                                .filter(i -> i != null)
                                .toList());
        });
        rows();
    }

    private void rows() {
        following = true;
        table.getItems().setAll(Items.all(bench.document().scenario().get()));
        following = false;
        follow();
    }

    private void follow() {
        if (following || isFocusWithin()) return;
        following = true;
        table.getSelectionModel().clearSelection();
        for (Item item : bench.drawing().selection().items().get())
            table.getSelectionModel().select(item);
        following = false;
    }

    private Optional<Form> form(Item item) {
        return Items.form(bench.document().scenario().get(), item);
    }

    private String where(Item item) {
        return form(item).map(f -> bench.units().place(f.points().get(0))).orElse("");
    }

    private String size(Item item) {
        return form(item)
                .map(f -> switch (f.shape()) {
                    case SPOT ->
                        item.kind() == Kind.HOLE || item.kind() == Kind.UNDERLAY
                                ? ""
                                : item.kind().isPart()
                                        ? "length " + bench.units().length(2 * f.reach())
                                        : "radius " + bench.units().length(f.reach());
                    case AREA ->
                        bench.units().area(Math.abs(slabfield.desktop.drawing.Places.twiceArea(f.points())) / 2);
                    case LINE, LOOP -> {
                        double length = 0;
                        for (int i = 0; i < f.edges(); i++) length += f.from(i).distanceTo(f.to(i));
                        yield "length " + bench.units().length(length);
                    }
                })
                .orElse("");
    }
}

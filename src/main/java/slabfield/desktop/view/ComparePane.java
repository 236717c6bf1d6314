package slabfield.desktop.view;

import java.util.List;
import java.util.Optional;
import javafx.collections.FXCollections;
import javafx.collections.ListChangeListener;
import javafx.geometry.Pos;
import javafx.geometry.Side;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TableView;
import javafx.scene.control.TextField;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.compare.Options;
import slabfield.desktop.viewmodel.compare.Options.Mode;
import slabfield.desktop.viewmodel.compare.Variants;
import slabfield.desktop.viewmodel.guide.Guide;
import slabfield.field.Result;
import slabfield.figure.ChangeLayer;
import slabfield.figure.MapFoot;
import slabfield.figure.MapStyle;
import slabfield.figure.PlanLayer;
import slabfield.quantity.Unit;

/** Variants of the house: the tree of them, two of them on one scale, and a table of all. */
final class ComparePane extends BorderPane {
    private static final double INDENT = 16;

    private final Guide guide;
    private final Variants variants;
    private final Options options;
    private final VBox tree = new VBox(3);
    private final KeyedMaps map;
    private final Label what = Parts.paragraph("", "soft");
    private final TableView<Options.Row> table = Parts.table("Variants compared", "No variant.");
    private final ComboBox<Variants.Row> before = new ComboBox<>();
    private final ComboBox<Variants.Row> after = new ComboBox<>();
    private boolean filling;

    ComparePane(Guide guide, TaskRunner painting) {
        this.guide = guide;
        this.variants = guide.variants();
        this.options = guide.options();
        this.map = new KeyedMaps(painting, Side.RIGHT);
        getStyleClass().add("compare");
        map.divider().bindBidirectional(options.divider());
        setLeft(treePart());
        setCenter(mapPart());
        setBottom(tablePart());
        variants.rows().addListener((ListChangeListener<Variants.Row>) c -> fill());
        options.rows().addListener((ListChangeListener<Options.Row>)
                c -> table.getItems().setAll(options.rows()));
        options.pair().addListener((o, was, is) -> draw());
        options.mode().addListener((o, was, is) -> draw());
        guide.bench().solving().picture().addListener((o, was, is) -> {
            if (!is.quick() && options.pair().get().isEmpty()) draw();
        });
        guide.bench().look().style().addListener((o, was, is) -> {
            draw();
            columns();
        });
        fill();
        columns();
        draw();
    }

    private Node treePart() {
        Button branch = new Button("Branch from this");
        branch.getStyleClass().add("primary");
        branch.setMaxWidth(Double.MAX_VALUE);
        Parts.tip(branch, "Begins a new variant with the house as it is now; the one you branch from stays as it is");
        branch.setOnAction(e -> {
            variants.branch("variant");
            options.after().set(variants.current().get());
            if (options.before().get() == options.after().get())
                options.before().set(variants.rows().get(0).id());
        });
        Label help = Parts.paragraph(
                "Each variant is the whole house. Switch to one, change it under House, and come back: the table and the maps follow.",
                "soft");
        ScrollPane scroll = new ScrollPane(tree);
        scroll.setFitToWidth(true);
        VBox.setVgrow(scroll, Priority.ALWAYS);
        VBox part = new VBox(8, Parts.label("Variants", "heading"), scroll, branch, help);
        part.getStyleClass().add("variant-tree");
        return part;
    }

    private Node mapPart() {
        chooser(before, "The variant before", options.before()::set);
        chooser(after, "The variant after", options.after()::set);
        FlowPane row = new FlowPane(
                8,
                4,
                Parts.label("Compare"),
                before,
                Parts.label("with"),
                after,
                Parts.choice("Comparison", List.of(Mode.values()), Mode::words, options.mode()));
        row.setAlignment(Pos.CENTER_LEFT);
        row.getStyleClass().add("sight");
        BorderPane part = new BorderPane(map);
        what.getStyleClass().add("compare-words");
        part.setTop(new VBox(row, what));
        part.getStyleClass().add("map-part");
        return part;
    }

    private void chooser(ComboBox<Variants.Row> box, String words, java.util.function.IntConsumer choose) {
        box.setAccessibleText(words);
        box.setConverter(new StringConverter<>() {
            @Override
            public String toString(Variants.Row row) {
                return row == null ? "" : row.name();
            }

            @Override
            public Variants.Row fromString(String text) {
                return null;
            }
        });
        box.valueProperty().addListener((o, was, is) -> {
            if (is != null && !filling) choose.accept(is.id());
        });
    }

    private Node tablePart() {
        table.setPrefHeight(210);
        table.setMinHeight(110);
        VBox part = new VBox(table);
        part.getStyleClass().add("option-table");
        return part;
    }

    private void columns() {
        Parts.fill(
                table,
                List.of(
                        Parts.column("Variant", 190, Options.Row::name),
                        Parts.numbers("Weakest place", 110, r -> r.cells().get(0)),
                        Parts.numbers("Area on target", 110, r -> r.cells().get(1)),
                        Parts.numbers("Exhaust", 100, r -> r.cells().get(2)),
                        Parts.numbers("Room air (share)", 150, r -> r.cells().get(3)),
                        Parts.numbers("Power", 80, r -> r.cells().get(4)),
                        Parts.numbers(
                                "Cost of a year,\nat most", 110, r -> r.cells().get(5)),
                        Parts.column("Remark", 240, Options.Row::note)),
                guide.bench().look().presentation().get());
    }

    private void fill() {
        tree.getChildren().setAll(variants.rows().stream().map(this::row).toList());
        filling = true;
        for (ComboBox<Variants.Row> box : List.of(before, after))
            box.setItems(FXCollections.observableArrayList(variants.rows()));
        before.setValue(variants.row(options.before().get()).orElse(null));
        after.setValue(variants.row(options.after().get()).orElse(null));
        filling = false;
    }

    private Node row(Variants.Row row) {
        TextField name = new TextField(row.name());
        name.setAccessibleText("Name of the variant");
        name.setOnAction(e -> variants.rename(row.id(), name.getText()));
        name.focusedProperty().addListener((o, was, is) -> {
            if (!is) variants.rename(row.id(), name.getText());
        });
        HBox.setHgrow(name, Priority.ALWAYS);
        Button show = new Button(row.current() ? "shown" : "Show");
        show.setDisable(row.current());
        show.setMinWidth(USE_PREF_SIZE);
        show.setAccessibleText("Show variant " + row.name());
        show.setOnAction(e -> variants.switchTo(row.id()));
        Button delete = new Button("\u2715");
        delete.getStyleClass().add("sign-only");
        delete.setDisable(row.current());
        delete.setMinWidth(USE_PREF_SIZE);
        delete.setAccessibleText("Delete variant " + row.name());
        Parts.tip(delete, "Deletes this variant");
        delete.setOnAction(e -> variants.delete(row.id()));
        HBox line = new HBox(4, name, show, delete);
        line.setAlignment(Pos.CENTER_LEFT);
        line.setPadding(new javafx.geometry.Insets(0, 0, 0, INDENT * row.depth()));
        if (row.current()) line.getStyleClass().add("current");
        return line;
    }

    private void draw() {
        fill();
        Optional<Options.Pair> pair = options.pair().get();
        if (pair.isEmpty()) {
            alone();
            return;
        }
        Options.Pair p = pair.get();
        MapStyle plain = guide.bench().look().style().get();
        Unit unit = guide.bench().units().pressure().get();
        MapStyle style = plain.with(Options.shared(p, plain.sense(), unit.toSi(1)));
        PlanLayer foot = new MapFoot(
                "PREDICTED", style.units(), p.other().scenario().plan().north());
        boolean change = options.mode().get() == Mode.CHANGE;
        List<PlanLayer> layers = change ? List.of(new ChangeLayer(p.one(), p.other(), style), foot) : List.of(foot);
        what.setText(
                change
                        ? "Pressure of \u201c" + p.after().name() + "\u201d less that of \u201c"
                                + p.before().name() + "\u201d."
                        : "Both maps have one scale. Drag the divider, or move it with the arrow keys.");
        if (change)
            map.showOne(
                    "\u201c" + p.after().name() + "\u201d less \u201c"
                            + p.before().name() + "\u201d",
                    p.other(),
                    style,
                    layers);
        else map.show(p.before().name(), p.one(), p.after().name(), p.other(), style, layers);
    }

    /** Without two houses to compare the one that stands is shown. */
    private void alone() {
        boolean one = variants.rows().size() < 2;
        what.setText(
                one
                        ? "There is one variant. Press \u201cBranch from this\u201d, change the branch under House, and come back to compare."
                        : "Solving the variants.");
        Optional<Result.Solved> now = guide.bench().solving().picture().get().current();
        if (!one || now.isEmpty()) {
            map.clear();
            return;
        }
        MapStyle style = guide.bench().look().style().get();
        double north = now.get().scenario().plan().north();
        map.showOne(
                variants.rows().get(0).name(),
                now.get(),
                style,
                List.of(new MapFoot("PREDICTED", style.units(), north)));
    }
}

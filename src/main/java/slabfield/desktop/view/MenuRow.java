package slabfield.desktop.view;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.application.Platform;
import javafx.beans.binding.Bindings;
import javafx.beans.property.Property;
import javafx.collections.ListChangeListener;
import javafx.scene.control.CheckMenuItem;
import javafx.scene.control.CustomMenuItem;
import javafx.scene.control.Menu;
import javafx.scene.control.MenuBar;
import javafx.scene.control.MenuItem;
import javafx.scene.control.RadioMenuItem;
import javafx.scene.control.SeparatorMenuItem;
import javafx.scene.control.TextInputControl;
import javafx.scene.control.ToggleGroup;
import javafx.scene.input.KeyCombination;
import slabfield.desktop.viewmodel.Example;
import slabfield.desktop.viewmodel.MapLook;
import slabfield.desktop.viewmodel.Theme;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.desktop.viewmodel.guide.Guide;
import slabfield.desktop.viewmodel.guide.Guide.Mode;
import slabfield.figure.VacuumScale.Law;

/** All commands, with their keys. */
final class MenuRow extends MenuBar {
    private static final double EXAMPLE = 480;
    private static final double WIDE_EXAMPLE = 700;
    /** What the window shows of the house beside its map. */
    record Shown(Property<Boolean> key, Property<Boolean> mapAlone) {}

    private final Guide guide;
    private final Workbench bench;
    private final FileActions files;
    private final MapPane map;
    private final WelcomePane welcome;

    MenuRow(Guide guide, FileActions files, MapPane map, WelcomePane welcome, Shown shown) {
        this.welcome = welcome;
        this.guide = guide;
        this.bench = guide.bench();
        this.files = files;
        this.map = map;
        getMenus().addAll(file(), edit(), view(shown), goTo(), examples(), help());
    }

    private Menu file() {
        Menu recent = new Menu("Open _recent");
        bench.recent().addListener((ListChangeListener<Path>) c -> fillRecent(recent));
        fillRecent(recent);
        MenuItem save = item("_Save", "Shortcut+S", files::save);
        save.disableProperty().bind(bench.document().dirty().not());
        return new Menu(
                "_File",
                null,
                item("_New\u2026", "Shortcut+N", welcome::show),
                item("_Open\u2026", "Shortcut+O", files::open),
                recent,
                save,
                item("Save _as\u2026", "Shortcut+Shift+S", files::saveAs),
                new SeparatorMenuItem(),
                item("_Picture to trace\u2026", null, files::layPicture),
                item("_Export the map\u2026", "Shortcut+E", files::exportPicture),
                new SeparatorMenuItem(),
                item("_Quit", "Shortcut+Q", () -> {
                    if (files.mayLeave()) Platform.exit();
                }));
    }

    private void fillRecent(Menu recent) {
        recent.getItems()
                .setAll(bench.recent().stream()
                        .map(f -> {
                            MenuItem item = new MenuItem(f.toString());
                            item.setMnemonicParsing(false);
                            item.setOnAction(e -> files.open(f));
                            return item;
                        })
                        .toList());
        recent.setDisable(bench.recent().isEmpty());
    }

    private Menu edit() {
        MenuItem undo = item("Undo", "Shortcut+Z", bench.document()::undo);
        MenuItem redo = item("Redo", "Shortcut+Shift+Z", bench.document()::redo);
        named(undo, "Undo", bench.document().undoLabel().get());
        named(redo, "Redo", bench.document().redoLabel().get());
        bench.document().undoLabel().addListener((o, was, is) -> named(undo, "Undo", is));
        bench.document().redoLabel().addListener((o, was, is) -> named(redo, "Redo", is));
        return new Menu(
                "_Edit",
                null,
                undo,
                redo,
                new SeparatorMenuItem(),
                item("Cu_t", "Shortcut+X", onMap(bench.drawing().selection()::cut)),
                item("_Copy", "Shortcut+C", onMap(bench.drawing().selection()::copy)),
                item("_Paste", "Shortcut+V", onMap(bench.drawing().selection()::paste)),
                item("D_uplicate", "Shortcut+D", onMap(bench.drawing().selection()::duplicate)),
                item("_Delete", null, onMap(bench.drawing().selection()::delete)),
                item("Select _all", "Shortcut+A", onMap(bench.drawing()::selectAll)),
                new SeparatorMenuItem(),
                item("Select the _next suction point", "Shortcut+J", () -> {
                    map.requestFocus();
                    bench.moves().selectNext();
                }),
                new SeparatorMenuItem(),
                item("_Look for measures", "Shortcut+L", bench.advising()::start),
                item("Si_ze the system", "Shortcut+M", bench.sizing()::start));
    }

    /** A command of the drawing; a text field that has the focus keeps the keys for its own text. */
    private Runnable onMap(Runnable command) {
        return () -> {
            if (!(map.getScene().getFocusOwner() instanceof TextInputControl)) command.run();
        };
    }

    private static void named(MenuItem item, String what, Optional<String> label) {
        item.setMnemonicParsing(false);
        item.setText(label.map(l -> what + ": " + l).orElse(what));
        item.setDisable(label.isEmpty());
    }

    private Menu goTo() {
        Menu menu = new Menu("_Go to");
        ToggleGroup group = new ToggleGroup();
        for (Mode each : Mode.values()) {
            RadioMenuItem item = new RadioMenuItem(each.words());
            item.setAccelerator(KeyCombination.keyCombination("Shortcut+" + (each.ordinal() + 1)));
            item.setToggleGroup(group);
            item.setSelected(guide.mode().get() == each);
            item.setOnAction(e -> guide.mode().set(each));
            guide.mode().addListener((o, was, is) -> item.setSelected(is == each));
            menu.getItems().add(item);
        }
        return menu;
    }

    private Menu view(Shown shown) {
        MapLook look = bench.look();
        Menu law = new Menu("_Colours follow the pressure");
        ToggleGroup group = new ToggleGroup();
        for (Law each : Law.values()) {
            RadioMenuItem item = new RadioMenuItem(words(each));
            item.setToggleGroup(group);
            item.setSelected(look.law().get() == each);
            item.setOnAction(e -> look.law().set(each));
            law.getItems().add(item);
        }
        return new Menu(
                "_View",
                null,
                check("_Isolines", "Shortcut+I", look.isolines()),
                check("_Labels", null, look.labels()),
                check("_Hatch below target", "Shortcut+H", look.hatch()),
                check("_Greys", null, look.greys()),
                check("_Key of the map", "Shortcut+K", shown.key()),
                check("_Map alone", "F9", shown.mapAlone()),
                law,
                new SeparatorMenuItem(),
                themes(),
                new SeparatorMenuItem(),
                item("_Whole plan", "Shortcut+0", map.port()::fit),
                new SeparatorMenuItem(),
                check("L_arge type", "F11", look.presentation()),
                check("Large _targets", "Shift+F11", look.largeTargets()));
    }

    private Menu themes() {
        Menu menu = new Menu("Co_lours of the window");
        ToggleGroup group = new ToggleGroup();
        for (Theme each : Theme.values()) {
            RadioMenuItem item = new RadioMenuItem(each.words());
            item.setToggleGroup(group);
            item.setSelected(bench.theme().get() == each);
            item.setOnAction(e -> bench.theme().set(each));
            menu.getItems().add(item);
        }
        return menu;
    }

    private static String words(Law law) {
        return switch (law) {
            case LINEAR -> "evenly";
            case SQUARE_ROOT -> "by its square root";
            case SYMMETRIC_LOG -> "by its logarithm";
        };
    }

    private Menu examples() {
        Menu menu = new Menu("E_xamples", null, new MenuItem());
        menu.setOnShowing(e -> {
            if (menu.getItems().size() < bench.examples().size())
                menu.getItems().setAll(exampleItems());
        });
        return menu;
    }

    private List<MenuItem> exampleItems() {
        List<MenuItem> items = new ArrayList<>();
        for (Example example : bench.examples()) {
            CustomMenuItem item = new CustomMenuItem(new ExampleWords(
                    example,
                    Bindings.when(bench.look().presentation())
                            .then(WIDE_EXAMPLE)
                            .otherwise(EXAMPLE)));
            item.setOnAction(e -> files.open(example));
            items.add(item);
        }
        return items;
    }

    private Menu help() {
        return new Menu(
                "_Help",
                null,
                item("_Keys and mouse", "F1", () -> files.tell("Keys and mouse", KeyList.pane())),
                item("_Validation\u2026", null, files::showValidation),
                item(
                        "_About",
                        null,
                        () -> files.tell(
                                "Slabfield",
                                "Predicts how far the vacuum of a suction point reaches under a"
                                        + " slab: steady air flow in one layer, seen from above, with leaks, walls, tile and fan. An aid for people"
                                        + " who know the work; it approves no design and cannot judge combustion safety.")));
    }

    private static MenuItem item(String text, String keys, Runnable action) {
        MenuItem item = new MenuItem(text);
        if (keys != null) item.setAccelerator(KeyCombination.keyCombination(keys));
        item.setOnAction(e -> action.run());
        return item;
    }

    private static CheckMenuItem check(String text, String keys, Property<Boolean> property) {
        CheckMenuItem item = new CheckMenuItem(text);
        if (keys != null) item.setAccelerator(KeyCombination.keyCombination(keys));
        item.selectedProperty().bindBidirectional(property);
        return item;
    }
}

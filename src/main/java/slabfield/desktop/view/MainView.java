package slabfield.desktop.view;

import javafx.application.Platform;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.value.ChangeListener;
import javafx.beans.value.ObservableValue;
import javafx.css.PseudoClass;
import javafx.geometry.Orientation;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.SplitPane;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.scene.input.KeyCombination;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;
import slabfield.desktop.viewmodel.Caution;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.desktop.viewmodel.guide.Guide;
import slabfield.desktop.viewmodel.guide.Guide.Mode;
import slabfield.desktop.viewmodel.work.JobStage.Place;
import slabfield.field.Result;

/** The whole window. */
public final class MainView {
    private static final double WIDTH = 1280;
    private static final double HEIGHT = 800;
    private static final double SCROLL_BAR = 30;
    private static final double MAP_PART = 0.61;
    private static final double ROOM_FOR_KEY = 1600;
    private static final PseudoClass TOUCH = PseudoClass.getPseudoClass("touch");
    private static final PseudoClass LARGE = PseudoClass.getPseudoClass("large");

    private final Stage stage;
    private final Guide guide;
    private final TaskRunner painting;
    private final Workbench bench;
    private final FileActions files;
    private final MapPane map;
    private final AfterMap afterMap;
    private final BorderPane root = new BorderPane();
    private final HouseTabs tabs;
    private final StackPane whole = new StackPane(root);
    private final WelcomePane welcome;
    private final BooleanProperty keyShown = new SimpleBooleanProperty(true);
    /** Whether the map has the room of the tables and of the column at its side. */
    private final BooleanProperty mapAlone = new SimpleBooleanProperty();

    /**
     * @param painting one after the other; of maps
     */
    public MainView(Stage stage, Guide guide, TaskRunner painting) {
        this.stage = stage;
        this.guide = guide;
        this.painting = painting;
        this.bench = guide.bench();
        Scene scene = new Scene(whole, WIDTH, HEIGHT);
        new Colours(scene, bench.theme());
        new GlossaryTip(scene);
        stage.setScene(scene);
        this.files = new FileActions(stage, bench, guide.sight()::figure);
        this.map = new MapPane(guide, painting);
        this.afterMap = new AfterMap(map.key());
        this.tabs = new HouseTabs(guide, files, painting, afterMap, () -> mapAlone.set(false));
        this.welcome = new WelcomePane(bench, files, map);
        welcome.hide();
        whole.getChildren().add(welcome);
        files.acceptDrops(scene);
        scene.getAccelerators().put(KeyCombination.keyCombination("Shortcut+Y"), bench.document()::redo);
        build();
        bench.document().scenario().addListener((o, was, is) -> title());
        bench.document().dirty().addListener((o, was, is) -> title());
        bench.document().file().addListener((o, was, is) -> title());
        bench.look().presentation().addListener((o, was, is) -> {
            root.pseudoClassStateChanged(LARGE, is);
            keyShown.set(!is || scene.getWidth() >= ROOM_FOR_KEY);
            mapAlone.set(is && scene.getWidth() < ROOM_FOR_KEY);
        });
        bench.look().largeTargets().addListener((o, was, is) -> root.pseudoClassStateChanged(TOUCH, is));
        root.pseudoClassStateChanged(TOUCH, bench.look().largeTargets().get());
        title();
    }

    /** Paints a map where nobody sees it, so that the first one on the screen finds all that it needs loaded. */
    public static void warm(Result result) {
        MapPainter.warm(result);
    }

    MapPane map() {
        return map;
    }

    /** True once every part of the window stands; the first map comes before some of them. */
    public boolean isWhole() {
        return afterMap.made().get();
    }

    public void show() {
        stage.show();
        map.requestFocus();
    }

    /** Runs something once, when the first map is on the screen. */
    public void onFirstMap(Runnable then) {
        map.key().addListener(new ChangeListener<>() {
            @Override
            public void changed(ObservableValue<? extends Image> o, Image was, Image is) {
                map.key().removeListener(this);
                if (bench.solving().picture().get().solved().isPresent()) Platform.runLater(then);
                else map.key().addListener(this);
            }
        });
    }

    /** Offers the ways to begin. */
    public void welcome() {
        welcome.show();
    }

    private void title() {
        stage.setTitle(bench.title());
    }

    private void build() {
        root.getStyleClass().add("window");
        VBox top = new VBox(
                new MenuRow(guide, files, map, welcome, new MenuRow.Shown(keyShown, mapAlone)),
                new ToolRow(bench, files, keyShown, mapAlone),
                new StagesStrip(guide.stages(), bench.look().presentation(), this::lead),
                banner());
        SplitPane left = new SplitPane(mapPart(), tabs);
        left.setOrientation(Orientation.VERTICAL);
        left.setDividerPositions(MAP_PART);
        SplitPane.setResizableWithParent(tabs, false);
        mapAlone.addListener((o, was, is) -> {
            if (is) left.getItems().remove(tabs);
            else {
                left.getItems().add(tabs);
                left.setDividerPositions(MAP_PART);
            }
        });
        root.setTop(top);
        BorderPane house = new BorderPane(left);
        house.setLeft(new ToolPalette(bench.drawing(), map));
        root.setLeft(new ModeRail(guide));
        new ModePanes(root, guide, files, painting, house, side());
        root.setBottom(new StatusRow(bench));
    }

    private Node banner() {
        Label words =
                Parts.paragraph(Caution.LICENCE.text() + " Read the Safety tab before you drill, core or start a fan.");
        HBox.setHgrow(words, Priority.ALWAYS);
        Button accept = new Button("I have read this");
        accept.setMinWidth(Region.USE_PREF_SIZE);
        accept.setOnAction(e -> bench.accept());
        HBox banner = new HBox(12, words, accept);
        banner.setAlignment(Pos.CENTER_LEFT);
        banner.getStyleClass().add("banner");
        banner.visibleProperty().bind(bench.accepted().not());
        banner.managedProperty().bind(bench.accepted().not());
        return banner;
    }

    private Node mapPart() {
        Label name = Parts.label("", "house-name");
        Label teaches = Parts.label("", "soft");
        teaches.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(teaches, Priority.ALWAYS);
        name.setMinWidth(Region.USE_PREF_SIZE);
        Runnable update = () -> {
            var scenario = bench.document().scenario().get();
            name.setText(scenario.name());
            teaches.setText(scenario.teaches());
            Parts.tip(teaches, scenario.teaches());
        };
        bench.document().scenario().addListener((o, was, is) -> {
            if (!was.name().equals(is.name())) update.run();
        });
        update.run();
        HBox head = new HBox(10, name, teaches);
        head.setAlignment(Pos.BASELINE_LEFT);
        head.getStyleClass().add("map-head");
        BorderPane part = new BorderPane(map);
        part.setTop(new VBox(head, new SightRow(guide.sight())));
        part.setBottom(hint());
        part.setRight(key());
        part.getStyleClass().add("map-part");
        return part;
    }

    private Node hint() {
        Label hint = Parts.label("", "hint");
        hint.setId("hint");
        hint.setMaxWidth(Double.MAX_VALUE);
        hint.textProperty().bind(bench.drawing().hint());
        bench.drawing().hint().addListener((o, was, is) -> Parts.tip(hint, is));
        return hint;
    }

    private Node key() {
        ImageView image = new ImageView();
        image.setPreserveRatio(true);
        map.key().addListener((o, was, is) -> {
            image.setImage(is);
            image.setFitWidth(MapPainter.keyWidth(bench.look().style().get()));
        });
        ScrollPane scroll = new ScrollPane(image);
        scroll.minWidthProperty().bind(image.fitWidthProperty().add(SCROLL_BAR));
        scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        scroll.getStyleClass().add("key");
        scroll.setAccessibleText("Key of the map: colours, lines and signs");
        scroll.visibleProperty().bind(keyShown);
        scroll.managedProperty().bind(keyShown);
        return scroll;
    }

    private Node side() {
        VBox content = new VBox();
        content.getStyleClass().add("side");
        afterMap.then(() ->
                content.getChildren().setAll(new HeadlinePane(bench), new InspectorPane(bench), new HousePane(bench)));
        ScrollPane scroll = new ScrollPane(content);
        scroll.setFitToWidth(true);
        scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        scroll.getStyleClass().add("side-scroll");
        scroll.visibleProperty().bind(mapAlone.not());
        scroll.managedProperty().bind(scroll.visibleProperty());
        return scroll;
    }

    /** Shows where something that a stage of the job lacks is done. */
    private void lead(Place place) {
        guide.mode().set(place == Place.READINGS ? Mode.READINGS : Mode.HOUSE);
        tabs.show(place);
        if (place == Place.DRAWING) map.requestFocus();
        if (place == Place.FILE) files.save();
    }
}

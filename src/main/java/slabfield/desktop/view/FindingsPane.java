package slabfield.desktop.view;

import java.util.Optional;
import javafx.css.PseudoClass;
import javafx.geometry.Orientation;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.SplitPane;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.find.Findings;
import slabfield.desktop.viewmodel.find.Page;
import slabfield.desktop.viewmodel.find.Picture;
import slabfield.desktop.viewmodel.find.Sheet;
import slabfield.desktop.viewmodel.guide.Guide;
import slabfield.figure.Bounds;
import slabfield.figure.Box;
import slabfield.figure.Figures;
import slabfield.figure.MapStyle;
import slabfield.figure.VacuumMap;

/** What readings and drawing together tell: a page at a time, with its picture, its sentences and its tables. */
final class FindingsPane extends BorderPane {
    private static final PseudoClass STALE = PseudoClass.getPseudoClass("stale");
    private static final double KEY = 250;
    private static final double KEY_HEIGHT = 470;
    private static final double LARGEST_KEY = 1.15;
    private static final double WORDS = 330;

    private final Guide guide;
    private final Findings findings;
    private final PlanPicture picture;
    private final PlanRoom view;
    private final PlanPicture key;
    private final ScrollPane keyScroll;
    private final Label caption = Parts.paragraph("", "soft");
    private final Label stamp = Parts.label("OUT OF DATE: the house was changed since", "stamp");
    private final VBox words = new VBox();
    private final FlowPane views = new FlowPane();
    private final SheetTables tables;

    FindingsPane(Guide guide, TaskRunner painting) {
        this.guide = guide;
        this.findings = guide.findings();
        this.picture = new PlanPicture(painting, "Picture of the page");
        this.view = new PlanRoom(picture);
        this.key = new PlanPicture(painting, "Key of the map");
        this.keyScroll = new ScrollPane(key);
        this.tables = new SheetTables(guide);
        getStyleClass().add("findings");
        setTop(new VBox(pages(), new JobRow(guide)));
        VBox lower = new VBox(stamp, tables);
        lower.getStyleClass().add("finding-lower");
        VBox.setVgrow(tables, Priority.ALWAYS);
        SplitPane middle = new SplitPane(upper(), lower);
        middle.setOrientation(Orientation.VERTICAL);
        middle.setDividerPositions(0.6);
        setCenter(middle);
        findings.sheet().addListener((o, was, is) -> write());
        findings.picture().addListener((o, was, is) -> draw());
        findings.page().addListener((o, was, is) -> choices());
        findings.stale().addListener((o, was, is) -> mark());
        choices();
        write();
        draw();
        mark();
    }

    /** Where plans are shown, moved and enlarged. */
    PlanRoom plan() {
        return view;
    }

    private Node pages() {
        HBox choice = Parts.choice("Page", findings.pages(), Page::title, findings.page());
        for (int i = 0; i < findings.pages().size(); i++)
            Parts.tip(
                    (javafx.scene.control.ToggleButton) choice.getChildren().get(i),
                    findings.pages().get(i).help());
        FlowPane row = new FlowPane(choice);
        row.getStyleClass().add("sight");
        return row;
    }

    private Node upper() {
        views.setHgap(6);
        views.getStyleClass().add("sight");
        caption.getStyleClass().add("compare-words");
        stamp.pseudoClassStateChanged(STALE, true);
        stamp.managedProperty().bind(stamp.visibleProperty());
        BorderPane map = new BorderPane(picture);
        map.setTop(new VBox(views, caption));
        map.setRight(keyPart());
        map.getStyleClass().add("map-part");
        HBox.setHgrow(map, Priority.ALWAYS);
        words.getStyleClass().add("notes");
        ScrollPane scroll = new ScrollPane(words);
        scroll.setFitToWidth(true);
        scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        scroll.setMinWidth(WORDS);
        scroll.setPrefWidth(WORDS);
        scroll.getStyleClass().add("finding-words");
        scroll.setAccessibleText("What the page says");
        return new HBox(map, scroll);
    }

    private Node keyPart() {
        keyScroll.setFitToWidth(true);
        keyScroll.setMinWidth(KEY);
        keyScroll.setPrefWidth(KEY);
        keyScroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        keyScroll.getStyleClass().add("key");
        keyScroll.setAccessibleText("Key of the map: colours, lines and signs");
        return keyScroll;
    }

    private void choices() {
        views.getChildren()
                .setAll(
                        Parts.label("Show", "soft"),
                        Parts.choice("Picture", findings.page().get().views(), v -> v, findings.view()));
        write();
    }

    private void mark() {
        stamp.setVisible(findings.stale().get());
        fade();
        words.pseudoClassStateChanged(STALE, findings.stale().get());
        tables.pseudoClassStateChanged(STALE, findings.stale().get());
    }

    private void write() {
        Sheet sheet = findings.sheet().get();
        words.getChildren().clear();
        if (sheet.headline().isEmpty())
            words.getChildren().add(Parts.paragraph(findings.page().get().help()));
        else words.getChildren().add(Parts.paragraph(sheet.headline(), "heading"));
        for (String line : sheet.words())
            words.getChildren().add(Parts.paragraph(line, line.startsWith("Next check") ? "name" : "plain"));
        tables.show(sheet);
    }

    private void draw() {
        Optional<Picture> now = findings.picture().get();
        boolean plan = now.orElse(null) instanceof Picture.Plan;
        keyScroll.setVisible(plan);
        keyScroll.setManaged(plan);
        String line = now.map(Picture::caption).orElse("There is no prediction to show.");
        caption.setText(line);
        caption.setVisible(!line.isEmpty());
        caption.setManaged(!line.isEmpty());
        fade();
        picture.setAccessibleText(now.map(Picture::description).orElse(line));
        if (now.isEmpty()) view.showOther(Optional.empty());
        else if (now.get() instanceof Picture.Plan p) plan(p);
        else if (now.get() instanceof Picture.Drawn d)
            view.showOther(Optional.of((canvas, box) -> Figures.panel(d.figure(), canvas, box.inset(6))));
    }

    /** A picture of what was found fades with it; the map of the house is always that of the house as it is. */
    private void fade() {
        boolean found = findings.picture()
                .get()
                .map(p -> p instanceof Picture.Plan plan ? plan.layered() : true)
                .orElse(false);
        picture.setOpacity(findings.stale().get() && found ? 0.55 : 1);
    }

    private void plan(Picture.Plan p) {
        MapStyle style = guide.bench().look().style().get();
        view.show(
                Bounds.of(p.result().scenario()),
                style.fontScale(),
                (canvas, at, box) -> VacuumMap.drawPlan(canvas, p.result(), style, p.layers(), at, box));
        double size = Math.min(LARGEST_KEY, style.fontScale());
        key.setMinHeight(KEY_HEIGHT * size);
        key.show(Optional.of((canvas, box) -> VacuumMap.drawLegend(
                canvas,
                p.result(),
                style.withFontScale(size),
                p.layers(),
                new Box(4, 4, box.right() - 2, box.bottom()))));
    }
}

package slabfield.desktop.view;

import java.util.List;
import java.util.Optional;
import javafx.application.Platform;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.geometry.Rectangle2D;
import javafx.scene.AccessibleRole;
import javafx.scene.canvas.Canvas;
import javafx.scene.control.Label;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.scene.layout.Region;
import javafx.scene.shape.Rectangle;
import slabfield.desktop.drawing.Snap;
import slabfield.desktop.viewmodel.Headline;
import slabfield.desktop.viewmodel.Probe;
import slabfield.desktop.viewmodel.Sketch;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.desktop.viewmodel.guide.Guide;
import slabfield.desktop.viewmodel.see.Sight;
import slabfield.desktop.viewmodel.work.Previews;
import slabfield.field.Result;
import slabfield.figure.Bounds;
import slabfield.figure.Box;
import slabfield.figure.MapFoot;
import slabfield.figure.MapStyle;
import slabfield.figure.PlanView;
import slabfield.figure.VacuumMap;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.SuctionPoint;

/** The map: the painted figure, handles above it, what is under the pointer, and a stamp while it is out of date. */
final class MapPane extends Region {
    private static final double NEAR = 9;

    private final Workbench bench;
    private final Sight sight;
    private final Previews previews;
    private final ViewPort port = new ViewPort();
    private final MapPainter painter;
    private final LiveField live;
    private final LiveLayers over;
    private final TracedPicture traced;
    private final ImageView map = new ImageView();
    private final Canvas overlay = new Canvas();
    private final Region ring = new Region();
    private final MapStamp stamp;
    private final Label reading = new Label();
    private final ObjectProperty<Optional<Point>> probe = new SimpleObjectProperty<>(Optional.empty());
    private final ObjectProperty<Image> key = new SimpleObjectProperty<>();
    private final DimensionField dimensionField;
    private List<MapOverlay.Shown> dimensions = List.of();
    private final Runnable beforeFrame = this::beforeFrame;
    private boolean stale;
    private PlanView painted = port.view().get();
    private boolean anotherHouse;
    private double paintedWidth = 1;

    MapPane(Guide guide, TaskRunner runner) {
        this.bench = guide.bench();
        this.sight = guide.sight();
        this.previews = guide.previews();
        this.stamp = new MapStamp(guide);
        this.painter = new MapPainter(runner, this::show);
        this.live = new LiveField(bench, port, runner, this::drawOverlay);
        this.over = new LiveLayers(bench, port, runner);
        this.traced = new TracedPicture(bench, port);
        this.dimensionField = new DimensionField(bench, this);
        getStyleClass().add("map");
        reading.getStyleClass().add("reading");
        reading.setManaged(false);
        reading.setMouseTransparent(true);
        reading.setVisible(false);
        map.setSmooth(true);
        overlay.setMouseTransparent(true);
        ring.getStyleClass().add("ring");
        ring.setManaged(false);
        ring.setMouseTransparent(true);
        ring.visibleProperty().bind(focusedProperty());
        map.visibleProperty().bind(live.field().imageProperty().isNull());
        over.all()
                .forEach(v ->
                        v.visibleProperty().bind(live.field().imageProperty().isNotNull()));
        getChildren().addAll(map, live.field());
        getChildren().addAll(over.all());
        getChildren().addAll(traced.view(), overlay, reading, stamp, dimensionField, ring);
        setFocusTraversable(true);
        setAccessibleRole(AccessibleRole.IMAGE_VIEW);
        setAccessibleHelp(
                "Arrow keys move a cross-hair that reads the pressure, or what is chosen. N selects the next suction point."
                        + " A letter chooses a tool; places can be typed. The Objects tab lists everything that is drawn, and the"
                        + " table of test holes the same values.");
        clip();
        new SightGestures(this, sight, bench.look(), port);
        new MapGestures(this, bench, port, probe);
        listen();
        port.house(bounds(bench.document().scenario().get()));
    }

    /** What a fit shows: the house, or room for one. */
    private static Bounds bounds(Scenario scenario) {
        return scenario.slabs().isEmpty() ? new Bounds(-1, -1, 15, 10) : Bounds.of(scenario);
    }

    private void clip() {
        Rectangle inside = new Rectangle();
        inside.widthProperty().bind(widthProperty());
        inside.heightProperty().bind(heightProperty());
        setClip(inside);
    }

    private void listen() {
        bench.document().opened().addListener((o, was, is) -> {
            probe.set(Optional.empty());
            anotherHouse = true;
        });
        bench.document().scenario().addListener((o, was, is) -> {
            showWhole(was, is);
            if (!bench.solving().dragging().get()) repaint();
            else if (bench.moves().selected().get().isEmpty()) over.paintHouse();
            drawOverlay();
        });
        bench.solving().picture().addListener((o, was, is) -> {
            if (was.result() != is.result() && !live.takes(is)) repaint();
            mark();
            if (is.quick()) return;
            describe();
            drawOverlay();
        });
        bench.solving().dragging().addListener((o, was, is) -> {
            if (is) {
                live.begin();
                over.begin(sight.layers().get());
            }
            mark();
            drawOverlay();
        });
        previews.shown().addListener((o, was, is) -> {
            repaint();
            mark();
        });
        bench.drawing().sketch().addListener((o, was, is) -> drawOverlay());
        bench.drawing().selection().items().addListener((o, was, is) -> drawOverlay());
        bench.drawing().layers().shown().addListener((o, was, is) -> {
            repaint();
            drawOverlay();
        });
        bench.look().style().addListener((o, was, is) -> drawOverlay());
        sight.layers().addListener((o, was, is) -> {
            mark();
            if (bench.solving().dragging().get()) over.show(is);
            else repaint();
        });
        focusedProperty().addListener((o, was, is) -> drawOverlay());
        probe.addListener((o, was, is) -> drawOverlay());
        port.view().addListener((o, was, is) -> {
            place();
            endLive();
            traced.place();
            dimensionField.close();
            repaint();
            drawOverlay();
        });
        sceneProperty().addListener((o, was, is) -> {
            if (was != null) was.removePreLayoutPulseListener(beforeFrame);
            if (is != null) is.addPreLayoutPulseListener(beforeFrame);
        });
        describe();
    }

    /** Another house is shown whole, and so is the first slab of a new one where it would not be seen. */
    private void showWhole(Scenario was, Scenario is) {
        Bounds plan = bounds(is);
        boolean first = was.slabs().isEmpty() && !is.slabs().isEmpty();
        if (anotherHouse || first && !port.shows(plan)) port.house(plan);
        else port.know(plan);
        anotherHouse = false;
    }

    ViewPort port() {
        return port;
    }

    /** The key of the map as it was last painted. */
    ObjectProperty<Image> key() {
        return key;
    }

    /** Pixels of an image to one of the screen. */
    double fine() {
        return getScene() == null || getScene().getWindow() == null
                ? 1
                : getScene().getWindow().getOutputScaleX();
    }

    @Override
    protected void layoutChildren() {
        double width = Math.max(1, getWidth()), height = Math.max(1, getHeight());
        if (width != overlay.getWidth() || height != overlay.getHeight()) {
            overlay.setWidth(width);
            overlay.setHeight(height);
            port.size(width, height);
        }
        ring.resizeRelocate(0, 0, width, height);
        stamp.autosize();
        stamp.relocate(Math.max(0, (width - stamp.getWidth()) / 2), 3);
    }

    private void repaint() {
        if (getWidth() < 2 || getHeight() < 2) return;
        Optional<Result.Solved> with = preview();
        painter.paint(new MapPainter.Wanted(
                with.map(w -> visible(w, w.scenario()))
                        .orElseGet(() ->
                                visible(result(), bench.document().scenario().get())),
                with.isPresent() ? onScaleOfTheMap() : bench.look().style().get(),
                with.isPresent()
                        ? sight.layers().get().stream()
                                .filter(MapFoot.class::isInstance)
                                .toList()
                        : sight.layers().get(),
                port.view().get(),
                port.width(),
                port.height(),
                fine()));
    }

    private Result result() {
        return bench.solving().picture().get().result();
    }

    /** The house with the measure that somebody points at. */
    private Optional<Result.Solved> preview() {
        return previews.shown().get().flatMap(Previews.Preview::result);
    }

    private MapStyle onScaleOfTheMap() {
        MapStyle style = bench.look().style().get();
        return result() instanceof Result.Solved s
                ? style.with(VacuumMap.scale(s, style).range())
                : style;
    }

    /** A prediction under a drawing, with what is on the layers that are shown. */
    private Result visible(Result result, Scenario drawn) {
        Scenario now = bench.drawing().layers().visible(drawn);
        if (now.equals(result.scenario())) return result;
        if (result instanceof Result.Solved s)
            return new Result.Solved(
                    now,
                    s.convergence(),
                    s.field(),
                    s.fanOff(),
                    s.flows(),
                    s.holes(),
                    s.suctions(),
                    s.coverage(),
                    s.unreached(),
                    s.doubts(),
                    s.inertialShare());
        return new Result.Unsolved(now, result.convergence(), "");
    }

    private void show(MapPainter.Painted now) {
        if (!bench.solving().dragging().get()) endLive();
        painted = now.wanted().view();
        paintedWidth = now.wanted().width();
        map.setImage(now.map());
        map.setViewport(new Rectangle2D(0, 0, now.map().getWidth(), now.map().getHeight()));
        key.set(now.key());
        place();
    }

    private void endLive() {
        live.end();
        over.end();
    }

    /** Puts the image where it belongs in the present view, which may have moved on since it was painted. */
    private void place() {
        if (map.getImage() == null) return;
        double factor = port.view().get().scale() / painted.scale();
        map.setFitWidth(paintedWidth * factor);
        map.setFitHeight(
                map.getImage().getHeight() * paintedWidth / map.getImage().getWidth() * factor);
        map.setX(port.view().get().originX() - painted.originX() * factor);
        map.setY(port.view().get().originY() - painted.originY() * factor);
    }

    private void mark() {
        stamp.update();
        map.setOpacity(stamp.isOld() ? 0.55 : 1);
    }

    private void describe() {
        setAccessibleText(Headline.summary(bench.solving().picture().get(), bench.units()));
    }

    /** Draws what lies above the map, once before the next frame whatever asked for it. */
    private void drawOverlay() {
        stale = true;
        Platform.requestNextPulse();
    }

    private void beforeFrame() {
        if (stale) paintOverlay();
    }

    private void paintOverlay() {
        stale = false;
        dimensions =
                MapOverlay.draw(overlay, port, bench, isFocused() ? probe.get() : Optional.empty(), live.targets());
        Sketch sketch = bench.drawing().sketch().get();
        Optional<SuctionPoint> dragged = bench.solving().dragging().get()
                ? bench.moves()
                        .selected()
                        .get()
                        .flatMap(bench.document().scenario().get()::suctionPoint)
                : Optional.empty();
        reading.setVisible(probe.get().isPresent()
                || dragged.isPresent()
                || !sketch.words().isEmpty());
        probe.get().ifPresent(this::read);
        dragged.ifPresent(p -> write(p.id() + ": " + bench.units().place(p.at()) + "\n" + follows(), p.at()));
        if (!sketch.words().isEmpty())
            write(sketchWords(sketch), sketch.line().get(sketch.line().size() - 1));
    }

    private static String sketchWords(Sketch sketch) {
        String snap = sketch.snap()
                .filter(s -> s.sort() != Snap.Sort.FREE && s.sort() != Snap.Sort.GRID)
                .map(s -> "\n" + s.sort().words())
                .orElse("");
        return sketch.words() + snap;
    }

    /** The measure of the chosen thing whose words stand at a place of the screen. */
    Optional<MapOverlay.Shown> dimensionAt(double x, double y) {
        return dimensions.stream()
                .filter(d -> d.box().holds(Box.around(x, y, 0)))
                .findFirst();
    }

    void editDimension(MapOverlay.Shown shown) {
        dimensionField.open(shown);
    }

    private String follows() {
        return bench.solving()
                .picture()
                .get()
                .solved()
                .map(s ->
                        "weakest place " + bench.units().pressure(-s.coverage().weakest()) + "\n"
                                + Math.round(100 * s.coverage().meeting()) + " % on target")
                .orElse("");
    }

    private void read(Point at) {
        Probe found = Probe.at(preview().map(Result.class::cast).orElseGet(this::result), at, port.metres(NEAR));
        String value = found.pressure().isPresent()
                ? bench.units().bothPressures(found.pressure().getAsDouble())
                : "no pressure";
        String words = value + "\n" + String.join("\n", found.what()) + "\n"
                + bench.units().place(at);
        write(words, at);
        if (isFocused()) setAccessibleText(words.replace('\n', ','));
    }

    private void write(String words, Point at) {
        reading.setText(words);
        reading.autosize();
        double x = port.x(at) + 16, y = port.y(at) + 16;
        if (x + reading.getWidth() > getWidth()) x = port.x(at) - 16 - reading.getWidth();
        if (y + reading.getHeight() > getHeight()) y = port.y(at) - 16 - reading.getHeight();
        reading.relocate(Math.max(2, x), Math.max(2, y));
    }
}

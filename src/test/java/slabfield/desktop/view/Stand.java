package slabfield.desktop.view;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import javafx.application.Platform;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.robot.Robot;
import javafx.stage.Stage;
import slabfield.desktop.viewmodel.DaemonRunner;
import slabfield.desktop.viewmodel.Example;
import slabfield.desktop.viewmodel.Memory;
import slabfield.desktop.viewmodel.Solving;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.desktop.viewmodel.guide.Guide;
import slabfield.desktop.viewmodel.lesson.ScoreBook;
import slabfield.model.Point;
import slabfield.model.Scenario;

/** The real window on a screen, with hands: mouse and keys as the toolkit gets them from the system. */
final class Stand implements AutoCloseable {
    /** How long something may take [s]; longer where a machine may stand still meanwhile. */
    private static final long PATIENCE = Long.getLong("slabfield.patience", 60);

    final Workbench bench;
    final Guide guide;
    private final Stage stage;
    private final MainView view;
    private final Robot robot;

    private Stand(Guide guide, Stage stage, MainView view) {
        this.guide = guide;
        this.bench = guide.bench();
        this.stage = stage;
        this.view = view;
        this.robot = fx(Robot::new);
    }

    /** Skips the test where there is no screen. */
    static void needsScreen() {
        boolean screen = Optional.ofNullable(System.getenv("DISPLAY"))
                .filter(d -> !d.isBlank())
                .isPresent();
        assumeTrue(screen, "there is no display: run the tests under xvfb-run");
        try {
            Platform.startup(() -> Platform.setImplicitExit(false));
        } catch (IllegalStateException started) {
            return;
        }
    }

    static Stand open(Scenario scenario, double width, double height) {
        return open(List.of(new Example("house.json", scenario)), width, height);
    }

    /** @param examples the first is open at the start */
    static Stand open(List<Example> examples, double width, double height) {
        return open(examples, width, height, v -> {});
    }

    /** @param before done with the window before it is shown */
    static Stand open(List<Example> examples, double width, double height, Consumer<MainView> before) {
        Stand stand = fx(() -> {
            Workbench bench = new Workbench(
                    examples,
                    new Forgetful(),
                    new Workbench.Runners(runner("solve"), runner("compare"), runner("advise"), runner("size")));
            Stage stage = new Stage();
            Guide guide = new Guide(
                    bench,
                    new Forgetful(),
                    new Guide.Runners(runner("trace"), runner("options"), runner("lessons"), runner("find")));
            MainView view = new MainView(stage, guide, runner("paint"));
            stage.setWidth(width);
            stage.setHeight(height);
            stage.setX(0);
            stage.setY(0);
            before.accept(view);
            view.show();
            bench.solving().start();
            return new Stand(guide, stage, view);
        });
        stand.await("every part of the window stands", stand.view::isWhole);
        return stand;
    }

    private static DaemonRunner runner(String name) {
        return new DaemonRunner(name, Platform::runLater);
    }

    /** Remembers nothing; cautions are accepted. */
    private static final class Forgetful implements Memory, ScoreBook {
        @Override
        public Score of(String lesson) {
            return Score.NONE;
        }

        @Override
        public void keep(String lesson, Score score) {
            return;
        }

        @Override
        public void clear() {
            return;
        }

        @Override
        public List<Path> recent() {
            return List.of();
        }

        @Override
        public void remember(Path file) {
            return;
        }

        @Override
        public void forget(Path file) {
            return;
        }

        @Override
        public boolean accepted() {
            return true;
        }

        @Override
        public void accept() {
            return;
        }
    }

    /** Does something on the thread of the screen and waits for it. */
    static <T> T fx(Callable<T> work) {
        if (Platform.isFxApplicationThread()) return call(work);
        CompletableFuture<T> done = new CompletableFuture<>();
        Platform.runLater(() -> {
            try {
                done.complete(work.call());
            } catch (Throwable reason) {
                done.completeExceptionally(reason);
            }
        });
        try {
            return done.get(PATIENCE, TimeUnit.SECONDS);
        } catch (InterruptedException | TimeoutException reason) {
            throw new IllegalStateException(reason);
        } catch (ExecutionException reason) {
            throw new IllegalStateException(reason.getCause());
        }
    }

    private static <T> T call(Callable<T> work) {
        try {
            return work.call();
        } catch (Exception reason) {
            throw new IllegalStateException(reason);
        }
    }

    static void run(Runnable work) {
        fx(() -> {
            work.run();
            return true;
        });
    }

    void await(String what, BooleanSupplier until) {
        await(what, until, PATIENCE);
    }

    /** @param patience [s] */
    void await(String what, BooleanSupplier until, long patience) {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(patience);
        while (!fx(until::getAsBoolean)) {
            if (System.nanoTime() > end) throw new AssertionError("waited in vain until " + what);
            pause(20);
        }
    }

    static void pause(long millis) {
        try {
            Thread.sleep(millis);
        } catch (InterruptedException reason) {
            throw new IllegalStateException(reason);
        }
    }

    /** Waits until the map shows the house as it is, or cannot. */
    void settle() {
        await("the map is up to date", () -> bench.solving().picture().get().state() != Solving.State.SOLVING);
        pulses(3);
    }

    void awaitMap() {
        await("the map is painted", () -> map().key().get() != null);
        pulses(3);
    }

    /** Lets the screen draw some times. */
    void pulses(int many) {
        for (int i = 0; i < many; i++) {
            fx(() -> true);
            pause(18);
        }
    }

    MainView view() {
        return view;
    }

    Stage stage() {
        return stage;
    }

    MapPane map() {
        return (MapPane) stage.getScene().lookup(".map");
    }

    <N extends Node> N node(String selector, Class<N> kind) {
        await(selector + " is there", () -> stage.getScene().lookup(selector) != null);
        return kind.cast(fx(() -> stage.getScene().lookup(selector)));
    }

    private Point2D screen(Point place) {
        return map().localToScreen(map().port().x(place), map().port().y(place));
    }

    /** Moves the mouse; to be called on the thread of the screen. */
    void moveNow(MapPane map, Point place) {
        robot.mouseMove(map.localToScreen(map.port().x(place), map.port().y(place)));
    }

    void moveTo(Point place) {
        run(() -> robot.mouseMove(screen(place)));
        pulses(1);
    }

    void click(double x, double y) {
        moveTo(new Point(x, y));
        run(() -> robot.mousePress(MouseButton.PRIMARY));
        run(() -> robot.mouseRelease(MouseButton.PRIMARY));
        pulses(1);
    }

    void drag(double x, double y, double toX, double toY) {
        moveTo(new Point(x, y));
        run(() -> robot.mousePress(MouseButton.PRIMARY));
        for (int i = 1; i <= 4; i++) moveTo(new Point(x + (toX - x) * i / 4, y + (toY - y) * i / 4));
        run(() -> robot.mouseRelease(MouseButton.PRIMARY));
        pulses(1);
    }

    void press() {
        run(() -> robot.mousePress(MouseButton.PRIMARY));
    }

    /** Moves the mouse on from where it is, in some steps [px]. */
    void moveBy(double right, double down) {
        Point2D from = fx(robot::getMousePosition);
        for (int i = 1; i <= 4; i++) {
            double part = i / 4.0;
            run(() -> robot.mouseMove(from.getX() + part * right, from.getY() + part * down));
            pulses(1);
        }
    }

    void release() {
        run(() -> robot.mouseRelease(MouseButton.PRIMARY));
    }

    /** Rests the mouse on something. */
    void hover(Node node) {
        run(() -> robot.mouseMove(node.localToScreen(
                node.getBoundsInLocal().getCenterX() - 1,
                node.getBoundsInLocal().getCenterY())));
        pulses(1);
        run(() -> robot.mouseMove(node.localToScreen(
                node.getBoundsInLocal().getCenterX(), node.getBoundsInLocal().getCenterY())));
    }

    void clickOn(Node node) {
        run(() -> {
            Point2D middle = node.localToScreen(
                    node.getBoundsInLocal().getCenterX(),
                    node.getBoundsInLocal().getCenterY());
            robot.mouseMove(middle);
            robot.mousePress(MouseButton.PRIMARY);
            robot.mouseRelease(MouseButton.PRIMARY);
        });
        pulses(2);
    }

    void key(KeyCode code) {
        run(() -> {
            robot.keyPress(code);
            robot.keyRelease(code);
        });
        pulses(1);
    }

    /** A key together with the one for shortcuts. */
    void shortcut(KeyCode code) {
        run(() -> {
            robot.keyPress(KeyCode.CONTROL);
            robot.keyPress(code);
            robot.keyRelease(code);
            robot.keyRelease(KeyCode.CONTROL);
        });
        pulses(2);
    }

    /** Types digits, small letters, points and spaces. */
    void type(String text) {
        for (char c : text.toCharArray()) {
            KeyCode code = c == '.'
                    ? KeyCode.PERIOD
                    : c == ' '
                            ? KeyCode.SPACE
                            : c == '\t'
                                    ? KeyCode.TAB
                                    : c == '-'
                                            ? KeyCode.MINUS
                                            : KeyCode.getKeyCode(String.valueOf(Character.toUpperCase(c)));
            key(code);
        }
    }

    /** All nodes of a kind that are on the screen, in the order of the scene. */
    <N extends Node> List<N> shown(String selector, Class<N> kind) {
        return fx(() -> stage.getScene().getRoot().lookupAll(selector).stream()
                .filter(kind::isInstance)
                .filter(Stand::isOnScreen)
                .map(kind::cast)
                .toList());
    }

    /** Whether it and all that it lies in is visible. */
    static boolean isOnScreen(Node node) {
        for (Node n = node; n != null; n = n.getParent()) if (!n.isVisible()) return false;
        return node.getScene() != null;
    }

    /** What the window shows, as an image. */
    WritableImage image() {
        return fx(() -> stage.getScene().snapshot(null));
    }

    /** Saves a picture of the window, or of a part of it. */
    void save(Path file, Optional<Node> part) {
        try {
            Files.createDirectories(file.getParent());
            Files.write(
                    file,
                    SmallPng.of(part.map(p -> fx(() -> p.snapshot(null, null))).orElseGet(this::image)));
        } catch (IOException reason) {
            throw new UncheckedIOException(reason);
        }
    }

    @Override
    public void close() {
        run(stage::hide);
    }
}

package slabfield.desktop;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.stage.Stage;
import slabfield.desktop.view.MainView;
import slabfield.desktop.viewmodel.DaemonRunner;
import slabfield.desktop.viewmodel.FirstHouse;
import slabfield.desktop.viewmodel.Recovery;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.desktop.viewmodel.guide.Guide;
import slabfield.io.RecoveryFolder;

/** The program with a window: puts the parts together. */
public final class Window extends Application {
    /** Changes that follow each other closer than this are kept together [ms]. */
    private static final long QUIET = 1000;

    private static final String TIMING = "slabfield.timing";
    private static final String END = "end";

    /** The toolkit makes the window itself, so what was begun before waits here. */
    private static final AtomicReference<FirstHouse> BEGUN = new AtomicReference<>();

    /**
     * Begins with the house that is shown first, before there is a toolkit.
     *
     * @param shown false where a file will be shown
     */
    static void begin(boolean shown) {
        BEGUN.set(new FirstHouse(shown, MainView::warm));
    }

    @Override
    public void start(Stage stage) {
        FirstHouse first = BEGUN.get();
        Workbench bench = new Workbench(
                new Examples(first),
                SettingsFile.ofUser(),
                new Workbench.Runners(
                        new DaemonRunner("solve", Platform::runLater), new DaemonRunner("compare", Platform::runLater),
                        new DaemonRunner("advise", Platform::runLater), new DaemonRunner("size", Platform::runLater)));
        Thread.currentThread()
                .setUncaughtExceptionHandler((thread, fault) -> bench.trouble()
                        .set(Optional.of(new Workbench.Trouble(
                                "Something went wrong",
                                "A fault in the program: " + fault
                                        + ". The house is still open; save it under another name to be safe."))));
        Recovery recovery = new Recovery(
                new RecoveryFolder(SettingsFile.recoveryOfUser()), new DaemonRunner("keep", Platform::runLater), QUIET);
        bench.keepIn(recovery);
        stage.setOnHidden(e -> recovery.close());
        Guide guide = new Guide(
                bench,
                ScoreFile.ofUser(),
                new Guide.Runners(
                        new DaemonRunner("trace", Platform::runLater), new DaemonRunner("options", Platform::runLater),
                        new DaemonRunner("lessons", Platform::runLater), new DaemonRunner("find", Platform::runLater)));
        MainView view = new MainView(stage, guide, new DaemonRunner("paint", Platform::runLater));
        if (System.getProperty(TIMING) != null) view.onFirstMap(Window::time);
        Optional<Path> file = getParameters().getUnnamed().stream().findFirst().map(Path::of);
        boolean known = file.isEmpty() && first.startAtOnce(bench.solving());
        view.show();
        file.ifPresentOrElse(bench::open, view::welcome);
        if (!known && bench.document().file().get().isEmpty()) bench.solving().start(first.solver());
    }

    /** Writes how long the start took, from the start of the process to the first map; ends the program where "end" is asked for. */
    private static void time() {
        ProcessHandle.Info process = ProcessHandle.current().info();
        long wall = process.startInstant()
                .map(s -> Duration.between(s, Instant.now()).toMillis())
                .orElse(-1L);
        long work = process.totalCpuDuration().map(Duration::toMillis).orElse(-1L);
        System.err.println("first map after " + wall + " ms, " + work + " ms of processor time");
        if (END.equals(System.getProperty(TIMING))) Platform.exit();
    }
}

package slabfield.desktop;

import java.nio.file.Path;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.stage.Stage;
import slabfield.advice.Advisor;
import slabfield.desktop.view.MainView;
import slabfield.desktop.viewmodel.DaemonRunner;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.network.SlabSolver;

/** The program with a window: puts the parts together. */
public final class Window extends Application {
    @Override
    public void start(Stage stage) {
        Workbench bench = new Workbench(
                BundledExamples.all(),
                SettingsFile.ofUser(),
                SlabSolver::solve,
                Advisor::suggest,
                new DaemonRunner("solve", Platform::runLater),
                new DaemonRunner("compare", Platform::runLater),
                new DaemonRunner("advise", Platform::runLater));
        MainView view = new MainView(stage, bench, new DaemonRunner("paint", Platform::runLater));
        view.show();
        bench.solving().start();
        getParameters().getUnnamed().stream().findFirst().map(Path::of).ifPresent(bench::open);
    }
}

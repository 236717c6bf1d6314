package slabfield.desktop;

import java.awt.image.BufferedImage;
import java.util.concurrent.CompletableFuture;
import slabfield.desktop.viewmodel.Example;
import slabfield.desktop.viewmodel.Solving;
import slabfield.desktop.viewmodel.Units;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.figure.AwtCanvas;
import slabfield.figure.Bounds;
import slabfield.figure.Box;
import slabfield.figure.MapStyle;
import slabfield.figure.PlanView;
import slabfield.figure.VacuumMap;
import slabfield.io.ExampleScenarios;
import slabfield.network.SlabSolver;

/** The house that the window opens with, read and solved while the toolkit is still starting. */
final class FirstHouse {
    private static final int WIDTH = 400, HEIGHT = 300;

    private static final CompletableFuture<Example> READ = new CompletableFuture<>();
    private static final CompletableFuture<Result> SOLVED = new CompletableFuture<>();

    private static boolean begun;
    private static boolean solves;

    private FirstHouse() {}

    /**
     * Begins, on a thread of its own.
     *
     * @param solve false where the window will show another house anyway
     */
    static void prepare(boolean solve) {
        begun = true;
        solves = solve;
        Thread early = new Thread(() -> {
            try {
                Example example = read(ExampleScenarios.files().get(0));
                READ.complete(example);
                if (!solve) return;
                SOLVED.complete(SlabSolver.solve(example.scenario(), Progress.NONE));
                paint(SOLVED.join());
            } catch (RuntimeException | Error reason) {
                READ.completeExceptionally(reason);
                SOLVED.completeExceptionally(reason);
            }
        }, "first house");
        early.setDaemon(true);
        early.start();
    }

    static Example read(String file) {
        return new Example(file, ExampleScenarios.read(file).scenario());
    }

    /** The house; waits until it is read. */
    static Example example() {
        if (!begun) prepare(false);
        return READ.join();
    }

    /** Solves as another does, but for the first house, which is solved already or very soon. */
    static Solving.Solver before(Solving.Solver other) {
        return (scenario, extent, progress) -> solves && scenario == READ.join().scenario() && extent == SlabSolver.Extent.FULL
                ? SOLVED.join()
                : other.solve(scenario, extent, progress);
    }

    /** Paints the map where nobody sees it, so that the first one on the screen finds all it needs loaded. */
    private static void paint(Result result) {
        BufferedImage image = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_ARGB_PRE);
        var graphics = image.createGraphics();
        Units units = new Units();
        units.take(result.scenario().display());
        MapStyle style = MapStyle.of(units.shown().get());
        Box box = new Box(0, 0, WIDTH, HEIGHT);
        AwtCanvas canvas = new AwtCanvas(graphics, WIDTH, HEIGHT, 1);
        VacuumMap.drawPlan(canvas, result, style, PlanView.fit(Bounds.of(result.scenario()), box.inset(20)), box);
        VacuumMap.drawLegend(canvas, result, style, box);
        graphics.dispose();
    }
}

package slabfield.desktop.viewmodel;

import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.io.ExampleScenarios;
import slabfield.network.SlabSolver;

/** The house that the window opens with, read and solved on a thread of its own while the window is still being made. */
public final class FirstHouse {
    private final CompletableFuture<Example> read = new CompletableFuture<>();
    private final CompletableFuture<Result> solved = new CompletableFuture<>();
    private final boolean solves;

    /**
     * Begins at once.
     *
     * @param solves false where the window will show another house anyway
     * @param then done with the answer on that thread, to load what the first picture needs
     */
    public FirstHouse(boolean solves, Consumer<Result> then) {
        this.solves = solves;
        Thread early = new Thread(() -> work(then), "first house");
        early.setDaemon(true);
        early.start();
    }

    private void work(Consumer<Result> then) {
        try {
            Example example = read(ExampleScenarios.files().get(0));
            read.complete(example);
            if (!solves) return;
            Result result = SlabSolver.solve(example.scenario(), Progress.NONE);
            solved.complete(result);
            then.accept(result);
        } catch (RuntimeException | Error reason) {
            read.completeExceptionally(reason);
            solved.completeExceptionally(reason);
        }
    }

    /** A house that comes with the program, by its file name. */
    public static Example read(String file) {
        return new Example(file, ExampleScenarios.read(file).scenario());
    }

    /** The house; waits until it is read. */
    public Example example() {
        return read.join();
    }

    /** Starts the window's solving with the answer, where it is known already; false where it is not. */
    public boolean startAtOnce(Solving solving) {
        if (!solved.isDone() || solved.isCompletedExceptionally()) return false;
        solving.start(solved.join());
        return true;
    }

    /** Solves as usual, but for the first house, which is solved already or very soon. */
    public Solving.Solver solver() {
        return (scenario, extent, progress) ->
                solves && scenario == example().scenario() && extent == SlabSolver.Extent.FULL
                        ? solved.join()
                        : SlabSolver.solve(scenario, extent, progress);
    }
}

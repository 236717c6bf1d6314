package slabfield.advice;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Function;
import java.util.stream.IntStream;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Scenario;
import slabfield.network.SlabSolver;
import slabfield.network.SolveSession;

/** Solves many like houses, each worker by a session of its own, so that a house starts from the answer of the last one. */
public final class Trials {
    private final Progress progress;
    private final int total;
    private final AtomicInteger done = new AtomicInteger();

    /**
     * Nothing is solved yet.
     *
     * @param progress asked before each solve and within it
     * @param total solves to announce; raised where more are done
     */
    public Trials(Progress progress, int total) {
        this.progress = progress;
        this.total = total;
    }

    public boolean isCancelled() {
        return progress.isCancelled();
    }

    /** Counts something done that was not a solve. */
    public void step() {
        int now = done.incrementAndGet();
        progress.step(now, Math.max(now, total), Double.NaN);
    }

    /**
     * In the order of the houses; empty where one did not converge or the search was cancelled before it.
     *
     * @param kept what to keep of an answer
     */
    public <T> List<Optional<T>> solve(List<Scenario> houses, Function<Result.Solved, T> kept) {
        int workers = Math.max(1, Math.min(houses.size(), Runtime.getRuntime().availableProcessors()));
        List<Optional<T>> out = new ArrayList<>(Collections.nCopies(houses.size(), Optional.empty()));
        IntStream.range(0, workers).parallel().forEach(w -> {
            SolveSession session = new SolveSession();
            int from = w * houses.size() / workers, to = (w + 1) * houses.size() / workers;
            for (int k = from; k < to && !progress.isCancelled(); k++) {
                Result r = session.solve(houses.get(k), SlabSolver.Extent.FAN_ON_ONLY, stopOnly());
                if (r instanceof Result.Solved s) out.set(k, Optional.of(kept.apply(s)));
                step();
            }
        });
        return out;
    }

    /** Passes on a wish to stop, but no steps. */
    public Progress stopOnly() {
        return progress.stopOnly();
    }
}

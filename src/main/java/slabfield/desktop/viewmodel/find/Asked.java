package slabfield.desktop.viewmodel.find;

import java.util.List;
import java.util.function.Function;
import slabfield.desktop.viewmodel.HouseSearch;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.Workbench;

/**
 * A page whose answer takes one long work.
 *
 * @param <T> what the work finds
 */
abstract class Asked<T> implements Page {
    /**
     * What a page is called and says of itself.
     *
     * @param job on the button that begins the work
     * @param without what to say where the house has no suction point
     */
    record Names(String title, String help, String job, String without) {}

    final Workbench bench;
    final Plans plans;
    final HouseSearch<T> search;
    private final Names names;

    Asked(
            Workbench bench,
            TaskRunner runner,
            Names names,
            HouseSearch.Work<T> work,
            HouseSearch.Phrases phrases,
            Function<T, String> summary) {
        this.bench = bench;
        this.plans = new Plans(bench);
        this.names = names;
        search = new HouseSearch<>(bench.document(), work, runner, phrases, summary);
    }

    @Override
    public final String title() {
        return names.title();
    }

    @Override
    public final String help() {
        return names.help();
    }

    @Override
    public List<Job> jobs() {
        return List.of(job());
    }

    final Job job() {
        return new Job(
                names.job(), search, () -> search.start("There is no suction point yet, so " + names.without() + "."));
    }

    @Override
    public Sheet sheet() {
        return search.found().get().map(this::sheet).orElse(Sheet.EMPTY);
    }

    /** What it says of something found. */
    abstract Sheet sheet(T found);

    final Amounts amounts() {
        return new Amounts(bench.units());
    }
}

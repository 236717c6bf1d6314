package slabfield.desktop.viewmodel;

import java.util.Optional;
import java.util.function.Function;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import slabfield.field.Progress;
import slabfield.model.Scenario;

/**
 * Long work on the house as it stands, in the background. A change of the house ends the work and marks
 * what it found, until the change is undone.
 *
 * @param <T> what it finds
 */
public final class HouseSearch<T> {
    /** The work. */
    public interface Work<T> {
        T run(Scenario scenario, Progress progress) throws Exception;
    }

    /**
     * What is said about the work.
     *
     * @param first before it was ever started
     * @param underWay while it runs, without a full stop
     * @param noun what it is called, such as "search"
     * @param again how to ask for it again, a sentence
     */
    public record Phrases(String first, String underWay, String noun, String again) {}

    private final Document document;
    private final Work<T> work;
    private final TaskRunner runner;
    private final Phrases phrases;
    private final Function<T, String> summary;
    private final ReadOnlyObjectWrapper<Optional<T>> found = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyBooleanWrapper searching = new ReadOnlyBooleanWrapper();
    private final ReadOnlyBooleanWrapper outOfDate = new ReadOnlyBooleanWrapper();
    private final ReadOnlyDoubleWrapper progress = new ReadOnlyDoubleWrapper();
    private final ReadOnlyStringWrapper message = new ReadOnlyStringWrapper();
    private Optional<TaskRunner.Task> running = Optional.empty();
    private Optional<Scenario> of = Optional.empty();
    private long asked;

    /** @param summary what is said about something found */
    public HouseSearch(
            Document document, Work<T> work, TaskRunner runner, Phrases phrases, Function<T, String> summary) {
        this.document = document;
        this.work = work;
        this.runner = runner;
        this.phrases = phrases;
        this.summary = summary;
        message.set(phrases.first());
        document.opened().addListener((o, was, is) -> {
            stop(phrases.first());
            forget();
        });
        document.scenario().addListener((o, was, is) -> changed());
    }

    private void changed() {
        if (searching.get()) stop("The house was changed, so the " + phrases.noun() + " was ended. " + phrases.again());
        if (found.get().isEmpty()) return;
        outOfDate.set(!of.equals(Optional.of(document.scenario().get())));
        message.set(outOfDate.get() ? old() : summary.apply(found.get().get()));
    }

    private String old() {
        return "The house was changed since: these numbers are out of date. " + phrases.again();
    }

    /** What the last work found, kept while new work is under way; empty before that. */
    public ReadOnlyObjectProperty<Optional<T>> found() {
        return found.getReadOnlyProperty();
    }

    public ReadOnlyBooleanProperty searching() {
        return searching.getReadOnlyProperty();
    }

    /** True where what was found belongs to an earlier state of the house. */
    public ReadOnlyBooleanProperty outOfDate() {
        return outOfDate.getReadOnlyProperty();
    }

    /** Part of the work that is done, 0 to 1; below 0 where it is not known. */
    public ReadOnlyDoubleProperty progress() {
        return progress.getReadOnlyProperty();
    }

    public ReadOnlyStringProperty message() {
        return message.getReadOnlyProperty();
    }

    /**
     * Starts the work.
     *
     * @param without what to say where the house has no suction point
     */
    public void start(String without) {
        running.ifPresent(TaskRunner.Task::cancel);
        Scenario scenario = document.scenario().get();
        if (scenario.suctionPoints().isEmpty()) {
            message.set(without);
            return;
        }
        long number = ++asked;
        searching.set(true);
        progress.set(-1);
        message.set(phrases.underWay() + ".");
        running = Optional.of(runner.run(watch -> work.run(scenario, watch), new TaskRunner.Outcome<>() {
            @Override
            public void done(T value) {
                if (number == asked) landed(scenario, value);
            }

            @Override
            public void failed(Throwable reason) {
                if (number == asked) stop("The " + phrases.noun() + " failed: " + reason.getMessage());
            }

            @Override
            public void step(int done, int total) {
                if (number == asked) stepped(done, total);
            }
        }));
    }

    private void forget() {
        of = Optional.empty();
        outOfDate.set(false);
        found.set(Optional.empty());
    }

    private void stepped(int done, int total) {
        progress.set(total > 0 ? Math.max(progress.get(), Math.min(1, (double) done / total)) : -1);
        message.set(
                total <= 0
                        ? phrases.underWay() + "."
                        : phrases.underWay() + ": " + Math.round(100 * Math.max(0, progress.get())) + " % done.");
    }

    private void landed(Scenario house, T value) {
        searching.set(false);
        of = Optional.of(house);
        outOfDate.set(false);
        found.set(Optional.of(value));
        message.set(summary.apply(value));
    }

    /** Ends the work without finding anything. */
    public void cancel() {
        stop("The " + phrases.noun() + " was cancelled.");
    }

    private void stop(String words) {
        asked++;
        running.ifPresent(TaskRunner.Task::cancel);
        running = Optional.empty();
        searching.set(false);
        message.set(found.get().isPresent() && outOfDate.get() ? words + " " + old() : words);
    }
}

package slabfield.desktop.viewmodel;

import java.util.List;
import java.util.Optional;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import slabfield.advice.Measure;
import slabfield.advice.Suggestion;
import slabfield.field.Progress;
import slabfield.model.Scenario;

/** Looks for measures in the background and applies them. A change of the house ends the search and marks the list. */
public final class Advising {
    /** What finds measures. */
    public interface Search {
        List<Suggestion> suggest(Scenario scenario, Progress progress);
    }

    private final Document document;
    private final Search search;
    private final TaskRunner runner;
    private final ObservableList<Suggestion> suggestions = FXCollections.observableArrayList();
    private final ReadOnlyBooleanWrapper searching = new ReadOnlyBooleanWrapper();
    private final BooleanProperty outOfDate = new ReadOnlyBooleanWrapper();
    private final ReadOnlyDoubleWrapper progress = new ReadOnlyDoubleWrapper();
    private final ReadOnlyStringWrapper message = new ReadOnlyStringWrapper(FIRST);
    private Optional<TaskRunner.Task> running = Optional.empty();
    private long asked;

    private static final String FIRST = "Each measure is tried by solving the house with it; nothing is changed until you apply one.";

    public Advising(Document document, Search search, TaskRunner runner) {
        this.document = document;
        this.search = search;
        this.runner = runner;
        document.opened().addListener((o, was, is) -> {
            stop(FIRST);
            suggestions.clear();
            outOfDate.set(false);
        });
        document.scenario().addListener((o, was, is) -> {
            if (searching.get()) stop("The house was changed, so the search was ended. Search again.");
            if (!suggestions.isEmpty()) {
                outOfDate.set(true);
                message.set("The house was changed since: these numbers are out of date. Search again.");
            }
        });
    }

    /** Best first. */
    public ObservableList<Suggestion> suggestions() {
        return suggestions;
    }

    public ReadOnlyBooleanProperty searching() {
        return searching.getReadOnlyProperty();
    }

    /** True where the list belongs to an earlier state of the house. */
    public ReadOnlyBooleanProperty outOfDate() {
        return outOfDate;
    }

    /** Part of the search that is done, 0 to 1; below 0 where it is not known. */
    public ReadOnlyDoubleProperty progress() {
        return progress.getReadOnlyProperty();
    }

    public ReadOnlyStringProperty message() {
        return message.getReadOnlyProperty();
    }

    /** Starts to look for measures. */
    public void start() {
        running.ifPresent(TaskRunner.Task::cancel);
        Scenario scenario = document.scenario().get();
        if (scenario.suctionPoints().isEmpty()) {
            message.set("There is no suction point yet, so there is nothing to improve on.");
            return;
        }
        long number = ++asked;
        suggestions.clear();
        outOfDate.set(false);
        searching.set(true);
        progress.set(-1);
        message.set("Trying measures one by one.");
        running = Optional.of(runner.run(watch -> search.suggest(scenario, watch), new TaskRunner.Outcome<>() {
            @Override
            public void done(List<Suggestion> found) {
                if (number == asked) landed(found);
            }

            @Override
            public void failed(Throwable reason) {
                if (number == asked) stop("The search failed: " + reason.getMessage());
            }

            @Override
            public void step(int done, int total) {
                if (number == asked) stepped(done, total);
            }
        }));
    }

    private void stepped(int done, int total) {
        progress.set(total > 0 ? Math.max(progress.get(), (double) done / total) : -1);
        message.set("Trying measures one by one: " + Math.round(100 * Math.max(0, progress.get())) + " % done.");
    }

    private void landed(List<Suggestion> found) {
        searching.set(false);
        suggestions.setAll(found);
        message.set(found.isEmpty() ? "Nothing was found that could be sealed or cored." : Words.count(found.size(), "measure", "measures")
                + " tried, best first. Gains are of the prediction; whether a place can be cored is for you to judge.");
    }

    /** Ends the search without a list. */
    public void cancel() {
        stop("The search was cancelled.");
    }

    private void stop(String words) {
        asked++;
        running.ifPresent(TaskRunner.Task::cancel);
        running = Optional.empty();
        searching.set(false);
        message.set(words);
    }

    /** Does to the house what a suggestion says; a step that can be undone. */
    public void apply(Suggestion suggestion) {
        Measure measure = withFreeName(suggestion.measure());
        document.edit(Edit.of(measure.words(), measure::apply));
    }

    /** A suction point of an older list can bear a name that another one got since. */
    private Measure withFreeName(Measure measure) {
        if (!(measure instanceof Measure.AddSuction add)) return measure;
        Scenario scenario = document.scenario().get();
        String id = add.id();
        for (int k = 1; scenario.suctionPoint(id).isPresent(); k++) id = "S" + (scenario.suctionPoints().size() + k);
        return new Measure.AddSuction(id, add.at(), add.pit(), add.source());
    }

    /** A measure in words, with its place where it has one. */
    public static String words(Measure measure, Units units) {
        if (measure instanceof Measure.AddSuction add) return "Core " + add.id() + " at " + units.about(add.at());
        String words = measure.words();
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}

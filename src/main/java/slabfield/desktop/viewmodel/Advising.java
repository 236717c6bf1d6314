package slabfield.desktop.viewmodel;

import java.util.List;
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
    private final HouseSearch<List<Suggestion>> search;
    private final ObservableList<Suggestion> suggestions = FXCollections.observableArrayList();

    public Advising(Document document, Search finder, TaskRunner runner) {
        this.document = document;
        this.search = new HouseSearch<>(
                document,
                finder::suggest,
                runner,
                new HouseSearch.Phrases(
                        "Each measure is tried by solving the house with it; nothing is changed until you apply one.",
                        "Trying measures one by one",
                        "search",
                        "Search again."),
                Advising::summary);
        search.found().addListener((o, was, is) -> suggestions.setAll(is.orElse(List.of())));
    }

    private static String summary(List<Suggestion> found) {
        return found.isEmpty()
                ? "Nothing was found that could be sealed or cored."
                : Words.count(found.size(), "measure", "measures")
                        + " tried, best first; the numbers are predicted for the house with it. Whether a place can be cored is for you to judge.";
    }

    /** How the search stands. */
    public HouseSearch<List<Suggestion>> search() {
        return search;
    }

    /** Best first. */
    public ObservableList<Suggestion> suggestions() {
        return suggestions;
    }

    /** Starts to look for measures. */
    public void start() {
        search.start("There is no suction point yet, so there is nothing to improve on.");
    }

    /** Does to the house what a suggestion says; a step that can be undone. */
    public void apply(Suggestion suggestion) {
        apply(suggestion.measure());
    }

    /** Does a measure to the house; a step that can be undone. */
    public void apply(Measure proposed) {
        Measure measure = withFreeName(proposed);
        document.edit(Edit.of(measure.words(), measure::apply));
    }

    /** A suction point of an older list can bear a name that another one got since. */
    private Measure withFreeName(Measure measure) {
        if (!(measure instanceof Measure.AddSuction add)) return measure;
        Scenario scenario = document.scenario().get();
        String id = add.id();
        for (int k = 1; scenario.suctionPoint(id).isPresent(); k++)
            id = "S" + (scenario.suctionPoints().size() + k);
        return new Measure.AddSuction(id, add.at(), add.pit(), add.source());
    }

    /** A measure in words, with its place where it has one. */
    public static String words(Measure measure, Units units) {
        if (measure instanceof Measure.AddSuction add) return "Core " + add.id() + " at " + units.about(add.at());
        String words = measure.words();
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}

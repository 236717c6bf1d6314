package slabfield.desktop.viewmodel;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import slabfield.io.RecordFile;
import slabfield.io.ScenarioProblems;
import slabfield.model.ImpossibleValue;
import slabfield.safety.Answer;
import slabfield.safety.Blocked;
import slabfield.safety.Gate;
import slabfield.safety.GateAnswer;
import slabfield.safety.JobRecord;
import slabfield.safety.RadonTest;

/**
 * The record of a job's dangers that stands beside the scenario file. Every change is written at once, onto what is in the
 * file at that moment, so that what another program wrote there is kept.
 */
public final class Checklist {
    /** A change that the record may refuse. */
    private interface Change {
        JobRecord apply(JobRecord before, LocalDateTime moment) throws Blocked;
    }

    private static final String UNSAVED =
            "The record stands beside the scenario file, and this house has none yet: save it"
                    + " first (File, Save as).";

    private final Document document;
    private final Consumer<Workbench.Trouble> trouble;
    private final Supplier<LocalDateTime> clock;
    private final ReadOnlyObjectWrapper<Optional<JobRecord>> record = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyStringWrapper note = new ReadOnlyStringWrapper(UNSAVED);
    private final StringProperty by = new SimpleStringProperty("");
    private final StringProperty time = new SimpleStringProperty("");
    private final DraftEntry draft = new DraftEntry();

    /**
     * @param trouble is told what could not be done
     * @param clock the time now
     */
    public Checklist(Document document, Consumer<Workbench.Trouble> trouble, Supplier<LocalDateTime> clock) {
        this.document = document;
        this.trouble = trouble;
        this.clock = clock;
        document.file().addListener((o, was, is) -> moved(was, is));
        document.opened().addListener((o, was, is) -> {
            draft.clear();
            time.set("");
            reload();
        });
        document.scenario().addListener((o, was, is) -> {
            if (!was.name().equals(is.name())) reload();
        });
        reload();
    }

    private void moved(Optional<Path> was, Optional<Path> is) {
        boolean answered = record.get()
                .filter(r -> !r.equals(JobRecord.empty(r.scenario())))
                .isPresent();
        reload();
        boolean begun = is.map(RecordFile::beside).filter(Files::exists).isPresent();
        if (answered && !begun && was.isPresent() && is.isPresent())
            note.set("Nothing is answered for this file yet. The answers given before stay in "
                    + RecordFile.beside(was.get()).getFileName()
                    + "; copy that file where they hold for this house too.");
    }

    /** The record; empty where there is no scenario file yet, or where its record cannot be read. */
    public ReadOnlyObjectProperty<Optional<JobRecord>> record() {
        return record.getReadOnlyProperty();
    }

    /** Where the record stands, or why there is none. */
    public ReadOnlyStringProperty note() {
        return note.getReadOnlyProperty();
    }

    /** Who answers. */
    public StringProperty by() {
        return by;
    }

    /** When it was, such as 2026-01-20T14:05; blank for now. */
    public StringProperty time() {
        return time;
    }

    /** The draft test that is being entered. */
    public DraftEntry draft() {
        return draft;
    }

    /** Reads the file again. */
    public void reload() {
        Optional<Path> place = place();
        try {
            record.set(place.isEmpty() ? Optional.empty() : Optional.of(read(place.get())));
            note.set(place.map(this::where).orElse(UNSAVED));
        } catch (ScenarioProblems problems) {
            record.set(Optional.empty());
            note.set("The record cannot be read, so nothing is written to it. " + problems.getMessage());
        }
    }

    private String where(Path place) {
        String name = document.scenario().get().name();
        String other = record.get()
                .map(JobRecord::scenario)
                .filter(s -> !s.equals(name))
                .map(s -> " It was begun for \u201c" + s + "\u201d: see whether it belongs to this house.")
                .orElse("");
        return "Kept in " + place.getFileName() + ", written at each answer." + other;
    }

    private Optional<Path> place() {
        return document.file().get().map(RecordFile::beside);
    }

    private JobRecord read(Path place) throws ScenarioProblems {
        return Files.exists(place)
                ? RecordFile.read(place)
                : JobRecord.empty(document.scenario().get().name());
    }

    /** Answers a gate; an answer with the same note that stands already keeps its time. */
    public void answer(Gate gate, Answer answer, String words) {
        change("This answer is not recorded", (before, moment) -> {
            boolean same = before.answer(gate)
                    .filter(a -> a.answer() == answer && a.note().equals(words.strip()))
                    .isPresent();
            return same
                    ? before
                    : before.with(gate, new GateAnswer(answer, by.get().strip(), moment, words.strip()));
        });
    }

    /** Takes an answer back. */
    public void takeBack(Gate gate) {
        change(
                "This answer is not taken back",
                (before, moment) -> before.answer(gate).isPresent() ? before.without(gate) : before);
    }

    /** Records the draft test that was entered, and empties the entry. */
    public void recordDraft() {
        List<String> problems = draft.problems();
        if (!problems.isEmpty()) {
            trouble.accept(new Workbench.Trouble("This draft test is not recorded", String.join("\n", problems)));
            return;
        }
        if (change(
                "This draft test is not recorded",
                (before, moment) -> before.with(draft.test(by.get().strip(), moment)))) draft.clear();
    }

    /** Records that the fan is started, unless a draft test forbids it. */
    public void start() {
        change("The start of the fan is not recorded", JobRecord::started);
    }

    /**
     * Records a radon test.
     *
     * @param result in the laboratory's words, or blank while it runs
     * @return whether it is recorded
     */
    public boolean radonTest(String result) {
        return change(
                "This radon test is not recorded",
                (before, moment) -> before.with(new RadonTest(moment, result.strip())));
    }

    /** Marks the record complete, unless something is open. */
    public void complete() {
        change("The record is not marked complete", JobRecord::complete);
    }

    private boolean change(String title, Change change) {
        Optional<Path> place = place();
        if (place.isEmpty()) return refused(title, UNSAVED);
        try {
            JobRecord before = read(place.get());
            JobRecord after = change.apply(before, moment());
            if (!after.equals(before)) RecordFile.write(place.get(), after);
            record.set(Optional.of(after));
            note.set(where(place.get()));
            return true;
        } catch (DateTimeParseException e) {
            return refused(title, "When: \"" + time.get() + "\" is not a local time such as 2026-01-20T14:05.");
        } catch (ImpossibleValue e) {
            return refused(title, "\"" + e.part() + "\" " + e.reason() + ".");
        } catch (Blocked | ScenarioProblems | IOException e) {
            return refused(title, e.getMessage());
        }
    }

    private boolean refused(String title, String reason) {
        reload();
        trouble.accept(new Workbench.Trouble(title, reason));
        return false;
    }

    private LocalDateTime moment() {
        String given = time.get().strip();
        return given.isEmpty()
                ? clock.get().truncatedTo(ChronoUnit.MINUTES)
                : LocalDateTime.parse(given.replace(' ', 'T'));
    }
}

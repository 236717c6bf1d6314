package slabfield.desktop.view;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javafx.css.PseudoClass;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import slabfield.desktop.viewmodel.Checklist;
import slabfield.desktop.viewmodel.RecordWords;
import slabfield.safety.Answer;
import slabfield.safety.Gate;
import slabfield.safety.GateAnswer;
import slabfield.safety.JobRecord;

/** One gate or notice of the record with its answer. */
final class GateRow extends VBox {
    private static final PseudoClass OPEN = PseudoClass.getPseudoClass("open");

    private final Checklist checklist;
    private final Gate gate;
    private final Label standing = Parts.label("", "standing");
    private final TextField note = new TextField();
    private final Radios<Optional<Answer>> radios;
    private Optional<GateAnswer> shown = Optional.empty();

    GateRow(Checklist checklist, Gate gate) {
        this.checklist = checklist;
        this.gate = gate;
        getStyleClass().addAll("row", "gate");
        radios = new Radios<>(gate.word(), answers(), a -> a.map(Answer::word).orElse("unanswered"), this::answer);
        note.setPromptText("note");
        note.setAccessibleText("Note on " + gate.word());
        note.setOnAction(e -> keepNote());
        note.focusedProperty().addListener((o, was, is) -> {
            if (!is) keepNote();
        });
        HBox.setHgrow(note, Priority.ALWAYS);
        standing.setMinWidth(USE_PREF_SIZE);
        getChildren()
                .addAll(
                        new HBox(10, Parts.label(gate.word(), "name"), standing),
                        Parts.paragraph(gate.question()),
                        new HBox(12, radios, note));
        radios.show(Optional.empty());
    }

    private List<Optional<Answer>> answers() {
        List<Optional<Answer>> all = new ArrayList<>(List.of(Optional.empty()));
        Arrays.stream(Answer.values())
                .filter(a -> a != Answer.NOT_PRESENT || gate.mayBeAbsent())
                .map(Optional::of)
                .forEach(all::add);
        return all;
    }

    private void answer(Optional<Answer> chosen) {
        chosen.ifPresentOrElse(a -> checklist.answer(gate, a, note.getText()), () -> checklist.takeBack(gate));
        checklist.record().get().ifPresent(this::show);
    }

    /** A note belongs to an answer: before there is one, it waits in its field. */
    private void keepNote() {
        shown.filter(a -> !a.note().equals(note.getText().strip()))
                .ifPresent(a -> checklist.answer(gate, a.answer(), note.getText()));
    }

    void show(JobRecord record) {
        Optional<GateAnswer> now = record.answer(gate);
        standing.setText(RecordWords.answer(record, gate));
        boolean open = gate.mustBeAnswered()
                && now.filter(a -> a.answer() != Answer.NO).isEmpty();
        standing.pseudoClassStateChanged(OPEN, open);
        radios.show(now.map(GateAnswer::answer));
        if (!now.equals(shown) && now.isPresent()) note.setText(now.get().note());
        shown = now;
    }

    /** Forgets what was typed for another house. */
    void forget() {
        shown = Optional.empty();
        note.clear();
    }
}

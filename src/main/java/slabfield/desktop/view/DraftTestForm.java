package slabfield.desktop.view;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.StringProperty;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import slabfield.desktop.viewmodel.Checklist;
import slabfield.desktop.viewmodel.DraftEntry;
import slabfield.safety.Answer;
import slabfield.safety.DraftStep;
import slabfield.safety.DraftTest;

/** Where a draft test is entered. */
final class DraftTestForm extends VBox {
    private final GridPane grid = new GridPane();
    private int row;

    DraftTestForm(Checklist checklist) {
        DraftEntry entry = checklist.draft();
        getStyleClass().addAll("row", "form");
        grid.getStyleClass().add("fields");
        field("Appliance", "such as water heater", entry.appliance());
        radios("Radon fan", List.of(true, false), on -> on ? "running" : "off", entry.fanRunning());
        radios(
                "Outcome, as you judged it",
                List.of(DraftTest.Outcome.values()),
                DraftTest.Outcome::word,
                entry.outcome());
        for (DraftStep step : DraftStep.values())
            radios(step.text(), Arrays.asList(Answer.values()), Answer::word, entry.step(step));
        field("House pressure, room against outdoors", "such as -3 Pa", entry.housePressure());
        field("Draft, flue against room", "such as -5 Pa", entry.draft());
        field("Spillage after lighting", "such as 40 s", entry.spillage());
        field("Carbon monoxide in the flue, ppm", "a number", entry.carbonMonoxide());
        field("Note", "", entry.note());
        Button record = new Button("Record this draft test");
        record.setOnAction(e -> checklist.recordDraft());
        getChildren().addAll(Parts.label("Enter a draft test under worst-case exhaust", "heading"), grid, record);
    }

    private void field(String title, String prompt, StringProperty text) {
        TextField field = new TextField();
        field.setPromptText(prompt);
        field.setAccessibleText(title);
        field.textProperty().bindBidirectional(text);
        add(title, field);
    }

    private <T> void radios(
            String title, List<T> values, Function<T, String> words, ObjectProperty<Optional<T>> property) {
        List<Optional<T>> all = new ArrayList<>(List.of(Optional.empty()));
        values.forEach(v -> all.add(Optional.of(v)));
        add(title, Radios.over(title, all, v -> v.map(words).orElse("unanswered"), property));
    }

    private void add(String title, Node what) {
        Label label = Parts.paragraph(title);
        GridPane.setHgrow(label, Priority.ALWAYS);
        grid.addRow(row++, label, what);
    }
}

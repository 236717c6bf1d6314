package slabfield.desktop.view;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.StringProperty;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TableView;
import javafx.scene.control.TextField;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import slabfield.desktop.viewmodel.Checklist;
import slabfield.desktop.viewmodel.RecordWords;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.safety.DraftTest;
import slabfield.safety.Gate;
import slabfield.safety.JobRecord;
import slabfield.safety.RadonTest;

/** The record of the job's dangers: what was asked, what was answered, and what is open. */
final class ChecklistTab extends BorderPane {
    private static final PseudoClass OPEN = PseudoClass.getPseudoClass("open");
    private static final List<String> TITLES = List.of("Gates", "Draft tests", "Radon tests", "Notices");

    private final Workbench bench;
    private final Checklist checklist;
    private final Label note = Parts.paragraph("", "soft");
    private final Button saveAs = new Button("Save as\u2026");
    private final Label state = Parts.paragraph("", "value"),
            fan = Parts.paragraph("", "value"),
            radon = Parts.paragraph("", "soft");
    private final Button start = new Button("Record the start of the fan"), complete = new Button("Mark complete");
    private final VBox blocked = new VBox(), open = new VBox();
    private final VBox standing = new VBox(), body = new VBox();
    private final List<GateRow> gates = new ArrayList<>(), notices = new ArrayList<>();
    private final DraftTestForm form;
    private final TextField result = new TextField();
    private final ObjectProperty<String> chosen = new SimpleObjectProperty<>(TITLES.get(0));
    private final Node by, when;
    private final VBox entry;
    private final ScrollPane side;

    ChecklistTab(Workbench bench, FileActions files) {
        this.bench = bench;
        this.checklist = bench.checklist();
        this.form = new DraftTestForm(checklist);
        this.by = who("By", "name", checklist.by());
        this.when = who("When", "now", checklist.time());
        getStyleClass().addAll("tab-body", "checklist");
        Arrays.stream(Gate.values())
                .forEach(g -> (g.mustBeAnswered() ? gates : notices).add(new GateRow(checklist, g)));
        saveAs.setMinWidth(USE_PREF_SIZE);
        saveAs.setOnAction(e -> files.saveAs());
        note.textProperty().bind(checklist.note());
        note.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(note, Priority.ALWAYS);
        HBox top = new HBox(10, note, saveAs, by, when);
        top.setAlignment(Pos.CENTER_LEFT);
        setTop(top);
        side = standing();
        setLeft(side);
        entry = entry();
        setCenter(entry);
        checklist.record().addListener((o, was, is) -> update());
        bench.document().opened().addListener((o, was, is) -> {
            gates.forEach(GateRow::forget);
            notices.forEach(GateRow::forget);
            result.clear();
            update();
        });
        bench.units().shown().addListener((o, was, is) -> fill());
        bench.look().presentation().addListener((o, was, is) -> fill());
        chosen.addListener((o, was, is) -> fill());
        update();
    }

    private ScrollPane standing() {
        for (Button b : List.of(start, complete)) b.setMaxWidth(Double.MAX_VALUE);
        start.setOnAction(e -> checklist.start());
        complete.setOnAction(e -> checklist.complete());
        standing.getStyleClass().add("standing-part");
        standing.getChildren()
                .addAll(
                        Parts.label("Record", "heading"),
                        state,
                        complete,
                        Parts.label("Fan", "heading"),
                        fan,
                        blocked,
                        start,
                        Parts.label("Still open", "heading"),
                        open,
                        Parts.label("Radon test", "heading"),
                        radon);
        ScrollPane scroll = new ScrollPane(standing);
        scroll.setFitToWidth(true);
        scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        scroll.getStyleClass().add("standing-scroll");
        scroll.setAccessibleText("How the record stands");
        return scroll;
    }

    private VBox entry() {
        HBox choice = Parts.choice("Part of the checklist", TITLES, t -> t, chosen);
        ScrollPane scroll = new ScrollPane(body);
        scroll.setFitToWidth(true);
        scroll.setAccessibleText("Answers");
        body.getStyleClass().add("answers");
        VBox.setVgrow(scroll, Priority.ALWAYS);
        VBox all = new VBox(choice, scroll);
        all.getStyleClass().add("entry");
        return all;
    }

    private static Node who(String title, String prompt, StringProperty text) {
        TextField field = new TextField();
        field.setPromptText(prompt);
        field.setPrefColumnCount(10);
        field.setMinWidth(USE_PREF_SIZE);
        field.setAccessibleText(title);
        field.textProperty().bindBidirectional(text);
        Label label = Parts.label(title);
        label.setMinWidth(USE_PREF_SIZE);
        HBox both = new HBox(5, label, field);
        both.setAlignment(Pos.CENTER_LEFT);
        return both;
    }

    private void update() {
        boolean there = checklist.record().get().isPresent();
        for (Node node : List.of(side, entry, by, when)) {
            node.setVisible(there);
            node.setManaged(there);
        }
        saveAs.setVisible(bench.document().file().get().isEmpty());
        saveAs.setManaged(saveAs.isVisible());
        checklist.record().get().ifPresent(record -> {
            gates.forEach(g -> g.show(record));
            notices.forEach(g -> g.show(record));
            stand(record);
        });
        fill();
    }

    private void stand(JobRecord record) {
        List<String> openNow = record.openBeforeCompletion(), blocking = record.openBeforeStartUp();
        state.setText(RecordWords.state(record) + "; gates: " + RecordWords.unanswered(record));
        state.pseudoClassStateChanged(OPEN, !openNow.isEmpty());
        complete.setDisable(!openNow.isEmpty() || record.completed().isPresent());
        open.getChildren()
                .setAll((openNow.isEmpty() ? List.of("Nothing is open in this record.") : openNow)
                        .stream().map(s -> Parts.paragraph("\u2022 " + s)).toList());
        fan.setText(RecordWords.fan(record));
        fan.pseudoClassStateChanged(OPEN, !blocking.isEmpty());
        start.setDisable(!blocking.isEmpty());
        start.setText(record.startUp().isPresent() ? "Record another start of the fan" : "Record the start of the fan");
        blocked.getChildren()
                .setAll(blocking.stream()
                        .map(s -> Parts.paragraph("\u2022 " + s))
                        .toList());
        radon.setText(RecordWords.radonTest(record));
    }

    private void fill() {
        checklist
                .record()
                .get()
                .ifPresent(record -> body.getChildren()
                        .setAll(
                                switch (chosen.get()) {
                                    case "Draft tests" -> drafts(record);
                                    case "Radon tests" -> radonTests(record);
                                    case "Notices" -> notices;
                                    default -> gates;
                                }));
    }

    private List<Node> drafts(JobRecord record) {
        if (record.draftTests().isEmpty()) return List.of(Parts.paragraph("No draft test is recorded.", "soft"), form);
        TableView<DraftTest> table = Parts.table("Draft tests", "");
        String pressure = "\n[" + bench.units().pressure().get().symbol() + "]";
        Parts.fill(
                table,
                List.of(
                        Parts.column("Appliance", 102, DraftTest::appliance),
                        Parts.column("Radon\nfan", 62, t -> t.fanRunning() ? "running" : "off"),
                        Parts.column("Outcome", 72, t -> t.outcome().word()),
                        Parts.numbers("House" + pressure, 56, t -> pressure(t.housePressure())),
                        Parts.numbers("Draft" + pressure, 54, t -> pressure(t.draft())),
                        Parts.numbers("Spill\n[s]", 46, t -> plain(t.spillage())),
                        Parts.numbers("CO\n[ppm]", 56, t -> plain(t.carbonMonoxide())),
                        Parts.column("When, by", 168, t -> (RecordWords.time(t.time()) + " " + t.by()).strip())),
                bench.look().presentation().get());
        table.getItems().setAll(record.draftTests());
        Parts.asHighAsItsRows(table);
        DraftTest last = record.draftTests().get(record.draftTests().size() - 1);
        return List.of(
                table,
                Parts.paragraph("Steps of the last one that are open: " + RecordWords.openSteps(last) + ".", "soft"),
                form);
    }

    private List<Node> radonTests(JobRecord record) {
        List<Node> out = new ArrayList<>();
        if (record.radonTests().isEmpty()) out.add(Parts.paragraph("No radon test is recorded.", "soft"));
        for (RadonTest test : record.radonTests())
            out.add(Parts.paragraph("Set out " + RecordWords.time(test.start()) + ": "
                    + (test.result().isEmpty() ? "running" : test.result())));
        result.setPromptText("result in the laboratory's words; empty while it runs");
        result.setAccessibleText("Result of a radon test");
        HBox.setHgrow(result, Priority.ALWAYS);
        Button add = new Button("Record a radon test set out at \u201cWhen\u201d");
        add.setMinWidth(USE_PREF_SIZE);
        add.setDisable(record.startUp().isEmpty());
        add.setOnAction(e -> {
            if (checklist.radonTest(result.getText())) result.clear();
        });
        out.add(new HBox(8, result, add));
        out.add(Parts.paragraph(
                "Only a radon test shows success. It starts " + RecordWords.radonTest(record) + ".", "soft"));
        return out;
    }

    private String pressure(OptionalDouble si) {
        return si.isPresent() ? bench.units().pressureNumber(si.getAsDouble()) : "\u2013";
    }

    private static String plain(OptionalDouble value) {
        return value.isPresent() ? String.valueOf(Math.round(value.getAsDouble())) : "\u2013";
    }
}

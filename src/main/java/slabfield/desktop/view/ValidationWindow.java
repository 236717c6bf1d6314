package slabfield.desktop.view;

import java.util.List;
import javafx.css.PseudoClass;
import javafx.geometry.Orientation;
import javafx.scene.Scene;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.SplitPane;
import javafx.scene.control.TableRow;
import javafx.scene.control.TableView;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;
import slabfield.validation.PrintedReports;
import slabfield.validation.PrintedReports.ClaimLine;
import slabfield.validation.PrintedReports.Line;
import slabfield.validation.PrintedReports.Report;

/** What the program was held against: the index of the validation cases, and the numbers of the one that is chosen. */
final class ValidationWindow {
    private static final PseudoClass OFF = PseudoClass.getPseudoClass("off");
    private static final double WIDTH = 1160;
    private static final double HEIGHT = 740;

    private final TableView<Line> cases = Parts.table("Validation cases", "No case came with this copy.");
    private final VBox detail = new VBox();
    private final boolean large;

    private ValidationWindow(boolean large) {
        this.large = large;
        PrintedReports.Index index = PrintedReports.index();
        Parts.fill(
                cases,
                List.of(
                        Parts.column("Case", 340, Line::title),
                        Parts.column("Kind", 98, Line::kind),
                        Parts.column("Verdict", 70, Line::verdict),
                        Parts.numbers("Worst, parts\nof tolerance", 112, Line::worst),
                        Parts.column("Source", 260, Line::source),
                        Parts.column("Control, which must turn it red", 280, Line::control)),
                large);
        cases.setRowFactory(t -> new TableRow<>() {
            @Override
            protected void updateItem(Line line, boolean empty) {
                super.updateItem(line, empty);
                pseudoClassStateChanged(OFF, !empty && line != null && !line.isGreen());
            }
        });
        cases.getItems().setAll(index.cases());
        cases.getSelectionModel().selectedItemProperty().addListener((o, was, is) -> {
            if (is != null) show(is);
        });
        cases.getSelectionModel().selectFirst();
    }

    /** Opens it beside the window. */
    static void open(Stage owner, boolean large) {
        ValidationWindow window = new ValidationWindow(large);
        Stage stage = new Stage();
        stage.initOwner(owner);
        stage.setTitle("Validation \u2013 Slabfield");
        Scene scene = new Scene(window.content(), WIDTH, HEIGHT);
        scene.getStylesheets().setAll(owner.getScene().getStylesheets());
        scene.getAccelerators().put(new KeyCodeCombination(KeyCode.ESCAPE), stage::close);
        stage.setScene(scene);
        stage.show();
    }

    private VBox content() {
        ScrollPane below = new ScrollPane(detail);
        below.setFitToWidth(true);
        detail.getStyleClass().add("tab-body");
        SplitPane parts = new SplitPane(cases, below);
        parts.setOrientation(Orientation.VERTICAL);
        parts.setDividerPositions(0.52);
        VBox.setVgrow(parts, Priority.ALWAYS);
        VBox all = new VBox(
                Parts.paragraph(
                        PrintedReports.index().summary() + " They are of the run that came with this copy; "
                                + "\u201cslabfield validate\u201d runs them again. Tolerances come from the source; where one was set after a first run, its SOURCE.md says so."),
                parts);
        all.getStyleClass().addAll("window", "tab-body");
        all.pseudoClassStateChanged(PseudoClass.getPseudoClass("large"), large);
        return all;
    }

    private void show(Line line) {
        Report report = PrintedReports.report(line);
        TableView<ClaimLine> claims = Parts.table("Numbers of the case", "It has no numbers.");
        Parts.fill(
                claims,
                List.of(
                        Parts.column("Number", 330, ClaimLine::name),
                        Parts.column("Unit", 84, ClaimLine::unit),
                        Parts.numbers("Source", 130, ClaimLine::source),
                        Parts.numbers("Ours", 110, ClaimLine::ours),
                        Parts.numbers("Error", 110, ClaimLine::error),
                        Parts.column("Tolerance", 170, ClaimLine::tolerance),
                        Parts.column("Verdict", 90, ClaimLine::verdict)),
                large);
        claims.setRowFactory(t -> new TableRow<>() {
            @Override
            protected void updateItem(ClaimLine claim, boolean empty) {
                super.updateItem(claim, empty);
                pseudoClassStateChanged(OFF, !empty && claim != null && !claim.agrees());
            }
        });
        claims.getItems().setAll(report.claims());
        Parts.asHighAsItsRows(claims);
        detail.getChildren().setAll(Parts.paragraph(line.title() + ". " + report.question(), "name"));
        report.missed()
                .ifPresent(
                        why -> detail.getChildren().add(Parts.paragraph("Missed, and known to be: " + why, "missed")));
        detail.getChildren()
                .addAll(
                        claims,
                        Parts.paragraph("Covers " + line.covers() + ".", "soft"),
                        Parts.paragraph("What this does not show: " + report.doesNotShow(), "soft"));
    }
}

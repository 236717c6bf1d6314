package slabfield.desktop.view;

import java.util.List;
import java.util.Optional;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.geometry.Side;
import javafx.scene.control.Button;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TableView;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.VBox;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.guide.Guide;
import slabfield.desktop.viewmodel.lesson.Cause;
import slabfield.desktop.viewmodel.lesson.Practice;
import slabfield.desktop.viewmodel.lesson.ScoreBook.Score;
import slabfield.field.Result;
import slabfield.figure.MapFoot;
import slabfield.figure.MapStyle;
import slabfield.figure.PlanLayer;
import slabfield.figure.VacuumScale;
import slabfield.figure.VacuumScale.Range;

/** Practice: readings of a house in which something is not as drawn. */
final class PracticePane extends BorderPane {
    private final Guide guide;
    private final Practice practice;
    private final KeyedMaps map;
    private final VBox page = new VBox(10);
    private final VBox foot = new VBox(8);

    PracticePane(Guide guide, TaskRunner painting) {
        this.guide = guide;
        this.practice = guide.practice();
        this.map = new KeyedMaps(painting, Side.BOTTOM);
        page.getStyleClass().add("lesson-page");
        ScrollPane scroll = new ScrollPane(page);
        scroll.setFitToWidth(true);
        scroll.getStyleClass().add("lesson-scroll");
        foot.getStyleClass().add("lesson-foot");
        BorderPane side = new BorderPane(scroll);
        side.setBottom(foot);
        side.getStyleClass().add("lesson-side");
        setCenter(map);
        setRight(side);
        practice.now().addListener((o, was, is) -> show());
        guide.bench().look().style().addListener((o, was, is) -> show());
        show();
    }

    private void show() {
        Optional<Practice.Case> now = practice.now().get();
        page.getChildren()
                .setAll(
                        Parts.label("What is wrong here?", "lesson-title"),
                        Parts.paragraph(
                                "The map shows the house as drawn and predicted. The readings come from a house in which one thing is otherwise, read with"
                                        + " a meter that scatters. Which is it?"));
        if (now.isEmpty()) {
            map.clear();
            foot.getChildren().clear();
            page.getChildren().add(Parts.paragraph("Making a case.", "soft"));
            return;
        }
        Practice.Case c = now.get();
        maps(c);
        page.getChildren().add(table(c));
        if (c.given().isEmpty()) ask();
        else outcome(c);
        Score score = practice.score();
        foot.getChildren().add(Parts.label("Score: " + score.right() + " of " + score.asked() + " right", "soft"));
    }

    private void maps(Practice.Case c) {
        MapStyle plain = guide.bench().look().style().get();
        double unit = guide.bench().units().pressure().get().toSi(1);
        List<PlanLayer> foot = List.of(new MapFoot("PREDICTED", plain.units(), 0));
        Range drawn = VacuumScale.rangeOf(c.drawn().field(), plain.sense(), unit);
        if (c.given().isEmpty()) {
            map.showOne("as drawn", c.drawn(), plain.with(drawn), foot);
            return;
        }
        Result.Solved real = c.real();
        Range other = VacuumScale.rangeOf(real.field(), plain.sense(), unit);
        map.show(
                "as drawn",
                c.drawn(),
                "as it is",
                real,
                plain.with(new Range(Math.min(drawn.low(), other.low()), Math.max(drawn.high(), other.high()))),
                foot);
    }

    private TableView<Practice.Reading> table(Practice.Case c) {
        TableView<Practice.Reading> table = Parts.table("Readings beside the prediction", "");
        table.getItems().setAll(c.readings());
        Parts.fill(
                table,
                List.of(
                        Parts.column("Place", 88, Practice.Reading::place),
                        Parts.numbers("Expected", 96, Practice.Reading::expected),
                        Parts.numbers("Read", 96, Practice.Reading::read)),
                guide.bench().look().presentation().get());
        Parts.asHighAsItsRows(table);
        return table;
    }

    private void ask() {
        ObjectProperty<Cause> given = new SimpleObjectProperty<>();
        page.getChildren().add(Parts.label("The cause is", "phase"));
        Radios<Cause> radios = new Radios<>("The cause", List.of(Cause.values()), Cause::words, given::set);
        page.getChildren().add(radios.column());
        Button answer = new Button("Answer");
        answer.getStyleClass().add("primary");
        answer.disableProperty().bind(given.isNull());
        answer.setOnAction(e -> {
            practice.answer(given.get());
            map.takeFocus();
        });
        foot.getChildren().setAll(answer);
    }

    private void outcome(Practice.Case c) {
        page.getChildren()
                .add(Parts.paragraph(
                        c.isRight()
                                ? "\u2713 right"
                                : "\u2717 you said: " + c.given().orElseThrow().words() + ".",
                        c.isRight() ? "right" : "wrong"));
        page.getChildren().add(Parts.paragraph(practice.explanation()));
        Button next = new Button("Another house");
        next.getStyleClass().add("primary");
        next.setOnAction(e -> {
            practice.next();
            map.takeFocus();
        });
        foot.getChildren().setAll(next);
    }
}

package slabfield.desktop.view;

import java.util.List;
import java.util.function.Consumer;
import javafx.geometry.Side;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import slabfield.desktop.viewmodel.TaskRunner;
import slabfield.desktop.viewmodel.guide.Guide;
import slabfield.desktop.viewmodel.lesson.Change;
import slabfield.desktop.viewmodel.lesson.Course;
import slabfield.desktop.viewmodel.lesson.Lesson;
import slabfield.desktop.viewmodel.lesson.ScoreBook.Score;
import slabfield.desktop.viewmodel.lesson.Worksheet;
import slabfield.figure.MapFoot;
import slabfield.figure.MapStyle;
import slabfield.figure.PlanLayer;

/** Lessons: predict, reveal, explain; and practice with a hidden cause. */
final class LearnPane extends BorderPane {
    private final Guide guide;
    private final Course course;
    private final KeyedMaps map;
    private final PracticePane practice;
    private final Consumer<Worksheet> print;
    private final VBox list = new VBox(4);
    private final VBox page = new VBox(10);
    private final VBox foot = new VBox(8);
    private final BorderPane lesson = new BorderPane();
    private boolean practising;

    /** @param print writes a sheet to a file of the user's choice */
    LearnPane(Guide guide, TaskRunner painting, Consumer<Worksheet> print) {
        this.guide = guide;
        this.course = guide.course();
        this.print = print;
        this.map = new KeyedMaps(painting, Side.BOTTOM);
        this.practice = new PracticePane(guide, painting);
        getStyleClass().add("learn");
        setLeft(contents());
        ScrollPane scroll = new ScrollPane(page);
        scroll.setFitToWidth(true);
        scroll.getStyleClass().add("lesson-scroll");
        page.getStyleClass().add("lesson-page");
        foot.getStyleClass().add("lesson-foot");
        BorderPane side = new BorderPane(scroll);
        side.setBottom(foot);
        side.getStyleClass().add("lesson-side");
        lesson.setCenter(map);
        lesson.setRight(side);
        setCenter(lesson);
        course.lesson().addListener((o, was, is) -> show());
        course.solved().addListener((o, was, is) -> show());
        course.revealed().addListener((o, was, is) -> show());
        course.scored().addListener((o, was, is) -> fill());
        guide.bench().look().style().addListener((o, was, is) -> show());
        fill();
        show();
    }

    private Node contents() {
        ScrollPane scroll = new ScrollPane(list);
        scroll.setFitToWidth(true);
        VBox.setVgrow(scroll, Priority.ALWAYS);
        VBox part = new VBox(8, Parts.label("Lessons", "heading"), scroll);
        part.getStyleClass().add("contents");
        return part;
    }

    private void fill() {
        list.getChildren().clear();
        int number = 1;
        for (Lesson each : course.lessons()) {
            Score score = course.score(each);
            ToggleButton button = entry(
                    number++ + ". " + each.title(),
                    score,
                    !practising && each == course.lesson().get());
            button.setOnAction(e -> {
                practising = false;
                setCenter(lesson);
                if (course.lesson().get() == each) course.begin();
                else course.lesson().set(each);
                fill();
                show();
            });
            list.getChildren().add(button);
        }
        ToggleButton cause =
                entry("Practice: what is wrong here?", guide.practice().score(), practising);
        cause.setOnAction(e -> {
            practising = true;
            setCenter(practice);
            if (guide.practice().now().get().isEmpty()) guide.practice().next();
            fill();
        });
        list.getChildren().addAll(Parts.label("", "soft"), cause);
    }

    private static ToggleButton entry(String title, Score score, boolean chosen) {
        ToggleButton button = new ToggleButton(
                title + (score.asked() == 0 ? "" : "\n" + score.right() + " of " + score.asked() + " right so far"));
        button.setWrapText(true);
        button.setMaxWidth(Double.MAX_VALUE);
        button.setMinHeight(USE_PREF_SIZE);
        button.setSelected(chosen);
        button.getStyleClass().add("contents-entry");
        return button;
    }

    private void show() {
        Lesson now = course.lesson().get();
        page.getChildren().setAll(Parts.paragraph(now.title(), "lesson-title"), Parts.paragraph(now.story()));
        course.solved().get().ifPresentOrElse(this::maps, map::clear);
        if (course.revealed().get()) outcome();
        else questions(now);
        foot.getChildren().add(sheets());
    }

    private void maps(Course.Solved both) {
        MapStyle plain = guide.bench().look().style().get();
        MapStyle style = plain.with(
                both.range(plain.sense(), guide.bench().units().pressure().get().toSi(1)));
        List<PlanLayer> foot = List.of(new MapFoot("PREDICTED", style.units(), 0));
        Lesson now = course.lesson().get();
        if (course.revealed().get())
            map.show(now.beforeName(), both.before(), now.afterName(), both.after(), style, foot);
        else map.showOne(now.beforeName(), both.before(), style, foot);
    }

    private void questions(Lesson now) {
        Label phase = Parts.label("Predict", "phase");
        page.getChildren().add(phase);
        for (Lesson.Question q : now.questions()) {
            Radios<Change> radios =
                    new Radios<>(q.text(), List.of(Change.values()), Change::words, c -> course.answer(q, c));
            course.answer(q).ifPresent(radios::show);
            page.getChildren().addAll(Parts.paragraph(q.text(), "name"), radios.column());
        }
        Button reveal = new Button("Reveal");
        reveal.getStyleClass().add("primary");
        reveal.disableProperty().bind(course.ready().not());
        reveal.setOnAction(e -> course.reveal());
        Label wait = Parts.paragraph(
                course.trouble().isEmpty()
                        ? "Answer every question, then reveal. Both houses are solved meanwhile."
                        : course.trouble(),
                "soft");
        foot.getChildren().setAll(wait, reveal);
    }

    private void outcome() {
        page.getChildren().add(Parts.label("Revealed", "phase"));
        for (Course.Verdict v : course.verdicts()) {
            String mark = v.isRight()
                    ? "\u2713 right"
                    : v.given().sameDirection(v.truth()) ? "\u2248 right direction, other size" : "\u2717 not so";
            Label head = Parts.paragraph(v.question().text(), "name");
            Label what = Parts.paragraph(mark + ": it " + v.truth().words() + ".", v.isRight() ? "right" : "wrong");
            page.getChildren().add(new VBox(2, head, what, Parts.paragraph(v.words(), "soft")));
        }
        page.getChildren().addAll(Parts.label("Why", "phase"), Parts.paragraph(course.explanation()));
        Button again = new Button("Try again");
        again.setOnAction(e -> {
            course.begin();
            Radios.focusFirst(page);
        });
        Button next = new Button("Next lesson");
        next.getStyleClass().add("primary");
        int at = course.lessons().indexOf(course.lesson().get());
        next.setDisable(at + 1 >= course.lessons().size());
        next.setOnAction(e -> {
            course.lesson().set(course.lessons().get(at + 1));
            fill();
            Radios.focusFirst(page);
        });
        foot.getChildren().setAll(new FlowPane(8, 4, again, next));
        map.takeFocus();
    }

    private Node sheets() {
        Button sheet = new Button("Worksheet\u2026"), key = new Button("Key\u2026");
        sheet.setOnAction(e -> course.worksheet(false).ifPresent(print));
        key.setOnAction(e -> course.worksheet(true).ifPresent(print));
        sheet.setDisable(course.solved().get().isEmpty());
        key.setDisable(course.solved().get().isEmpty());
        FlowPane row = new FlowPane(8, 4, Parts.label("To print:", "soft"), sheet, key);
        row.getStyleClass().add("sheets");
        return row;
    }
}

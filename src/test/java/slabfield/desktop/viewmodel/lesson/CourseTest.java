package slabfield.desktop.viewmodel.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.desktop.viewmodel.InLineRunner;
import slabfield.desktop.viewmodel.Units;
import slabfield.desktop.viewmodel.lesson.Lesson.Question;
import slabfield.desktop.viewmodel.lesson.ScoreBook.Score;
import slabfield.figure.Figures;
import slabfield.io.ExampleScenarios;
import slabfield.network.SlabSolver;
import slabfield.quantity.Unit;

class CourseTest {
    /** Scores for the length of a test. */
    static final class Book implements ScoreBook {
        final Map<String, Score> kept = new HashMap<>();

        @Override
        public Score of(String lesson) {
            return kept.getOrDefault(lesson, Score.NONE);
        }

        @Override
        public void keep(String lesson, Score score) {
            kept.put(lesson, score);
        }

        @Override
        public void clear() {
            kept.clear();
        }
    }

    private final Book book = new Book();
    private final Units units = new Units();
    private final Course course = new Course(
            Lessons.all(),
            f -> ExampleScenarios.lesson(f).withCellSize(0.2),
            units,
            book,
            SlabSolver::solve,
            new InLineRunner());

    private void answerAll(Change change) {
        for (Question q : course.lesson().get().questions()) course.answer(q, change);
    }

    @Test
    void nothingIsShownBeforeEveryQuestionIsAnswered() {
        course.begin();
        assertThat(course.solved().get()).isPresent();
        course.reveal();
        assertThat(course.revealed().get()).isFalse();
        assertThat(course.explanation()).isEmpty();
        assertThat(course.verdicts()).isEmpty();
        answerAll(Change.SAME);
        assertThat(course.ready().get()).isTrue();
        course.reveal();
        assertThat(course.revealed().get()).isTrue();
        assertThat(course.verdicts()).hasSize(3);
    }

    @Test
    void answersCountOnceAndCannotBeChangedAfterwards() {
        course.begin();
        answerAll(Change.MUCH_MORE);
        course.reveal();
        course.reveal();
        assertThat(book.of("sealing")).isEqualTo(new Score(1, 3));
        answerAll(Change.LESS);
        assertThat(course.verdicts()).extracting(Course.Verdict::given).containsOnly(Change.MUCH_MORE);
        course.begin();
        assertThat(course.revealed().get()).isFalse();
        answerAll(Change.MUCH_MORE);
        course.reveal();
        assertThat(book.of("sealing")).isEqualTo(new Score(2, 6));
    }

    @Test
    void numbersOfTheExplanationFollowTheUnits() {
        course.begin();
        answerAll(Change.SAME);
        course.reveal();
        assertThat(course.explanation()).contains("L/s").contains(" Pa").doesNotContain("{");
        units.pressure().set(Unit.INCH_OF_WATER);
        units.flow().set(Unit.CFM);
        assertThat(course.explanation()).contains("cfm").contains("inH2O").doesNotContain("L/s");
    }

    @Test
    void theWorksheetHidesWhatTheKeyTells() {
        course.begin();
        Worksheet sheet = course.worksheet(false).orElseThrow(),
                key = course.worksheet(true).orElseThrow();
        assertThat(sheet.withKey()).isFalse();
        assertThat(key.items())
                .allSatisfy(i -> assertThat(i.answer()).contains("before").contains("after"));
        assertThat(key.title()).endsWith("key");
        assertThat(Figures.png(sheet, 900, 110)).hasSizeGreaterThan(10_000);
        assertThat(new String(Figures.pdf(key, 595), 0, 5, java.nio.charset.StandardCharsets.ISO_8859_1))
                .isEqualTo("%PDF-");
    }

    @ParameterizedTest
    @CsvSource({
        "100, 5, GONE",
        "100, 10, MUCH_LESS",
        "100, 50, LESS",
        "100, 97, SAME",
        "100, 105, MORE",
        "100, 199, MORE",
        "100, 200, MUCH_MORE",
        "0, 1, MUCH_MORE",
        "0, 0, SAME",
        "5, -1, GONE"
    })
    void aChangeIsSortedByItsRatio(double before, double after, Change change) {
        assertThat(Change.of(before, after)).isEqualTo(change);
    }
}

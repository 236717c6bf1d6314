package slabfield.desktop.viewmodel.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import slabfield.desktop.viewmodel.Units;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.io.ExampleScenarios;
import slabfield.model.Scenario;
import slabfield.network.SlabSolver;

/** Holds what the lessons' words claim against the solver. */
class LessonsTest {
    private static final Map<String, Result.Solved[]> SOLVED = new HashMap<>();

    static Stream<Lesson> lessons() {
        return Lessons.all().stream();
    }

    private static Result.Solved[] solved(Lesson lesson) {
        return SOLVED.computeIfAbsent(lesson.id(), id -> {
            Scenario house = ExampleScenarios.lesson(lesson.file());
            return new Result.Solved[] {
                solve(lesson.before().apply(house)), solve(lesson.after().apply(house))
            };
        });
    }

    private static Result.Solved solve(Scenario scenario) {
        return (Result.Solved) SlabSolver.solve(scenario, SlabSolver.Extent.FAN_ON_ONLY, Progress.NONE);
    }

    private static Result.Solved[] solved(String id) {
        return solved(Lessons.all().stream()
                .filter(l -> l.id().equals(id))
                .findFirst()
                .orElseThrow());
    }

    @ParameterizedTest
    @MethodSource("lessons")
    void everyNumberOfAnExplanationIsFound(Lesson lesson) {
        Result.Solved[] both = solved(lesson);
        assertThat(Quantities.filled(lesson.explanation(), both[0], both[1], new Units()))
                .doesNotContain("{")
                .doesNotContain("no pressure");
        for (Lesson.Question q : lesson.questions())
            assertThat(Quantities.of(both[0], q.quantity())).isFinite();
    }

    @ParameterizedTest
    @MethodSource("lessons")
    void noNumberOfTheOutcomeIsTyped(Lesson lesson) {
        String words = lesson.explanation().replaceAll("\\{[^}]*}", "").replaceAll("\\b[TS]\\d\\b", "");
        assertThat(words).doesNotContainPattern("\\d");
    }

    @Test
    void theyHaveIdsOfTheirOwn() {
        assertThat(Lessons.all()).extracting(Lesson::id).doesNotHaveDuplicates().hasSizeGreaterThanOrEqualTo(6);
    }

    /** What each explanation says in words: which way a quantity goes, and that it is no small matter where it says so. */
    @ParameterizedTest
    @CsvSource({
        "sealing, hole T4, 10, 1e9",
        "sealing, exhaust, 0, 0.5",
        "sealing, pit S1, 1.05, 2",
        "sealing, area, 1.05, 2",
        "footing, hole T4, 0, 0.1",
        "footing, hole T1, 1.001, 2",
        "footing, exhaust, 0, 0.99",
        "doorway, hole T4, 2, Infinity",
        "doorway, hole T1, 0.8, 1",
        "pit, hole T1, 1.2, 5",
        "pit, exhaust, 1.2, 5",
        "tile, hole T4, 2, 1e12",
        "tile, exhaust, 1.05, 1e9",
        "broken tile, hole T4, 0, 0.7",
        "broken tile, hole T1, 0.95, 1.2",
        "bigger fan, hole T4, 1.05, 2.2",
        "bigger fan, roomAir, 1.05, 2.2",
        "far leak, hole T1, 1, 1.5",
        "far leak, hole T4, 1.5, 1e9",
        "far leak, exhaust, 0, 0.95"
    })
    void theWordsHoldForTheSolvedHouses(String lesson, String quantity, double least, double most) {
        Result.Solved[] both = solved(lesson);
        double before = Quantities.of(both[0], quantity), after = Math.max(0, Quantities.of(both[1], quantity));
        double ratio = before > 0 ? after / before : after > 0 ? Double.POSITIVE_INFINITY : 1;
        assertThat(ratio).as("%s of lesson %s", quantity, lesson).isBetween(least, most);
    }

    @Test
    void aLargerPitRaisesAllHolesInOneProportion() {
        Result.Solved[] both = solved("pit");
        double first = Quantities.of(both[1], "hole T1") / Quantities.of(both[0], "hole T1");
        for (String hole : new String[] {"hole T2", "hole T3", "hole T4"})
            assertThat(Quantities.of(both[1], hole) / Quantities.of(both[0], hole))
                    .isCloseTo(first, org.assertj.core.data.Percentage.withPercentage(10));
    }

    @Test
    void sealingDoesMoreThanTheBiggerFan() {
        assertThat(Quantities.of(solved("sealing")[1], "hole T4"))
                .isGreaterThan(Quantities.of(solved("bigger fan")[1], "hole T4"));
    }
}

package slabfield.desktop.viewmodel.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import slabfield.desktop.viewmodel.InLineRunner;
import slabfield.desktop.viewmodel.Units;
import slabfield.desktop.viewmodel.lesson.ScoreBook.Score;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.io.ExampleScenarios;
import slabfield.model.Scenario;
import slabfield.network.SlabSolver;

class PracticeTest {
    private static final Scenario HOUSE =
            ExampleScenarios.lesson("far-sump.json").withCellSize(0.2);
    private static final Result.Solved DRAWN = solve(HOUSE);

    private final CourseTest.Book book = new CourseTest.Book();

    private static Result.Solved solve(Scenario scenario) {
        return (Result.Solved) SlabSolver.solve(scenario, SlabSolver.Extent.FAN_ON_ONLY, Progress.NONE);
    }

    private Practice practice(long seed) {
        return new Practice(HOUSE, new Units(), book, SlabSolver::solve, new InLineRunner(), new Random(seed));
    }

    /** What each cause is said to look like is so, wherever the lot puts it. */
    @ParameterizedTest
    @EnumSource(Cause.class)
    void aCauseShowsAsItsWordsSay(Cause cause) {
        for (int seed = 0; seed < 4; seed++) {
            Result.Solved real = solve(cause.hidden(new Random(seed)).apply(HOUSE));
            double flow = real.flows().exhaust() / DRAWN.flows().exhaust(),
                    near = ratio(real, "T1"),
                    far = ratio(real, "T4");
            switch (cause) {
                case LEAK -> {
                    assertThat(flow).isGreaterThan(1.02);
                    assertThat(far).isLessThan(near).isLessThan(0.97);
                }
                case TIGHT -> {
                    assertThat(flow).isLessThan(0.9);
                    assertThat(far).isLessThan(near).isLessThan(0.9);
                    assertThat(-real.suctions().get(0).pressure())
                            .isGreaterThanOrEqualTo(-DRAWN.suctions().get(0).pressure());
                }
                case LOOSE -> {
                    assertThat(flow).isGreaterThan(1.5);
                    assertThat(-real.suctions().get(0).pressure())
                            .isLessThan(-DRAWN.suctions().get(0).pressure());
                    assertThat(far).isGreaterThan(near).isGreaterThan(1.02);
                }
                case FOOTING -> {
                    assertThat(flow).isLessThan(0.5);
                    assertThat(near).isGreaterThan(1);
                    assertThat(far).isLessThan(0.1);
                }
                case SMALL_PIT -> {
                    assertThat(flow).isLessThan(0.97);
                    assertThat(near).isLessThan(0.97);
                    assertThat(far / near).isBetween(0.8, 1.25);
                }
                case NOTHING -> assertThat(flow).isEqualTo(1);
            }
        }
    }

    private static double ratio(Result.Solved real, String hole) {
        return real.hole(hole).orElseThrow().fanOn().orElseThrow()
                / DRAWN.hole(hole).orElseThrow().fanOn().orElseThrow();
    }

    @Test
    void theFirstAnswerCountsAndThenTheCauseIsTold() {
        Practice practice = practice(7);
        practice.next();
        Practice.Case c = practice.now().get().orElseThrow();
        assertThat(practice.explanation()).isEmpty();
        Cause wrong = c.cause() == Cause.LEAK ? Cause.TIGHT : Cause.LEAK;
        practice.answer(wrong);
        practice.answer(c.cause());
        assertThat(practice.now().get().orElseThrow().isRight()).isFalse();
        assertThat(practice.score()).isEqualTo(new Score(0, 1));
        assertThat(practice.explanation()).contains(c.cause().words());
        practice.next();
        practice.answer(practice.now().get().orElseThrow().cause());
        assertThat(practice.score()).isEqualTo(new Score(1, 2));
    }

    @Test
    void everyCauseComesUp() {
        assertThat(IntStream.range(0, 60)
                        .mapToObj(seed -> Cause.values()[new Random(seed * 7919L).nextInt(Cause.values().length)]))
                .contains(Cause.values());
    }

    @Test
    void readingsScatterAboutTheRealHouse() {
        Practice practice = practice(3);
        practice.next();
        Practice.Case c = practice.now().get().orElseThrow();
        assertThat(c.readings()).hasSize(6);
        assertThat(c.readings().get(0).expected())
                .isNotEqualTo(c.readings().get(0).read());
    }
}

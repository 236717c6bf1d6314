package slabfield.solve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@Timeout(value = 60, unit = TimeUnit.SECONDS, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class WorkersTest {
    /** Each worker passes a number on to the next; a step that somebody skips or starts early would show in the sum. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 5})
    void everyStepWaitsForAll(int count) {
        int steps = 2000;
        int[] now = new int[count];
        int[] next = new int[count];
        try (var team = new Workers(count)) {
            for (int round = 0; round < 3; round++) {
                team.run(me -> {
                    for (int step = 0; step < steps; step++) {
                        next[me] = now[(me + 1) % count] + 1;
                        team.await(me);
                        now[me] = next[me];
                        team.await(me);
                    }
                });
            }
        }
        assertThat(now).containsOnly(3 * steps);
    }

    @Test
    void whatAWorkerThrowsReachesTheCaller() {
        try (var team = new Workers(2)) {
            assertThatIllegalStateException()
                    .isThrownBy(() -> team.run(me -> {
                        if (me == 1) {
                            throw new ArithmeticException("worker 1");
                        }
                        team.await(me);
                    }))
                    .withCauseInstanceOf(ArithmeticException.class);
            assertThatIllegalStateException()
                    .isThrownBy(() -> team.run(me -> {}))
                    .withMessageContaining("dismissed");
        }
    }
}

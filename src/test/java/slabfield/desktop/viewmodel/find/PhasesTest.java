package slabfield.desktop.viewmodel.find;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import slabfield.field.Progress;

class PhasesTest {
    private final List<Double> told = new ArrayList<>();
    private boolean stopped;
    private final Progress whole = new Progress() {
        @Override
        public boolean isCancelled() {
            return stopped;
        }

        @Override
        public void step(int done, int total, double residual) {
            told.add((double) done / total);
        }
    };

    @Test
    void partsFollowEachOtherAndNeverGoBack() {
        Progress first = Phases.part(whole, 0, 0.4), second = Phases.part(whole, 0.4, 1);
        first.step(1, 2, 0);
        first.step(1, 4, 0);
        first.step(2, 2, 0);
        second.step(1, 2, 0);
        second.step(2, 2, 0);
        assertThat(told).containsExactly(0.2, 0.4, 0.7, 1.0);
    }

    @Test
    void aPartOfUnknownLengthNearsItsEndWithoutReachingIt() {
        Progress part = Phases.part(whole, 0, 0.5);
        for (int k = 1; k <= 100; k++) part.step(k, 0, 0);
        assertThat(told).isSorted().allMatch(t -> t > 0 && t < 0.5);
    }

    @Test
    void aWishToStopPassesThrough() {
        stopped = true;
        assertThat(Phases.part(whole, 0, 1).isCancelled()).isTrue();
    }
}

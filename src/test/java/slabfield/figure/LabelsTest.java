package slabfield.figure;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class LabelsTest {
    private final Labels labels = new Labels(new Box(0, 0, 200, 200));

    @Test
    void standsOnTheRightWhereNothingIs() {
        assertThat(labels.place(50, 100, 40, 10, 5)).contains(new Box(55, 95, 95, 105));
    }

    @Test
    void doesNotCrossAnOutlineWhereAnotherSideIsFree() {
        labels.shun(new double[] {70, 0, 70, 200, 200, 200, 200, 0});
        assertThat(labels.place(50, 100, 40, 10, 5)).contains(new Box(5, 95, 45, 105));
    }

    @Test
    void crossesASlantingOutlineOnlyWhereItsRectangleIsNotClear() {
        labels.shun(new double[] {60, 60, 100, 94, 60, 110});
        assertThat(labels.place(50, 100, 40, 10, 5)).contains(new Box(5, 95, 45, 105));
    }

    @Test
    void crossesAnOutlineRatherThanHavingNoPlace() {
        labels.take(new Box(0, 0, 48, 200));
        labels.take(new Box(0, 0, 200, 90));
        labels.take(new Box(0, 106, 200, 200));
        labels.shun(new double[] {70, 0, 70, 200, 200, 200, 200, 0});
        assertThat(labels.place(50, 100, 40, 10, 5)).contains(new Box(55, 95, 95, 105));
    }

    @Test
    void goesAStepFartherBeforeItCrosses() {
        labels.take(new Box(0, 0, 48, 200));
        labels.take(new Box(0, 101, 200, 200));
        labels.shun(new double[] {0, 96, 200, 96});
        assertThat(labels.place(50, 100, 20, 10, 3, 12, 80))
                .as("above, at the second distance")
                .hasValueSatisfying(
                        box -> assertThat(box.bottom()).isLessThan(96).isGreaterThan(80));
    }
}

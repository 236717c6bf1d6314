package slabfield.advice;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import slabfield.field.Result;
import slabfield.model.Point;

class FrontierTest {
    private static CombinedPlan plan(String name, int measures, double weakest, double litresPerSecond, double watts) {
        Measure m = new Measure.SealOpening(name);
        return new CombinedPlan(
                Collections.nCopies(measures, m),
                Basements.plain(),
                new Result.Coverage(4, 0.5, weakest, new Point(0, 0), 0.1),
                new Result.Flows(0.02, litresPerSecond / 1000, 0, 0, Map.of()),
                Double.isNaN(watts) ? OptionalDouble.empty() : OptionalDouble.of(watts));
    }

    private static final CombinedPlan DRAWN = plan("a", 0, 1, 20, 50);

    @Test
    void whatIsBeatenInEverythingIsDropped() {
        CombinedPlan better = plan("b", 1, 3, 15, 50), worse = plan("c", 1, 2, 16, 60);
        Frontier f = Frontier.of(List.of(DRAWN, worse, better));
        assertThat(f.best()).containsExactly(better);
        assertThat(f.dominated()).containsExactly(DRAWN, worse);
    }

    @Test
    void aTradeKeepsBothByRisingVacuum() {
        CombinedPlan strong = plan("b", 1, 9, 30, 50), thrifty = plan("c", 1, 0.5, 5, 50);
        assertThat(Frontier.of(List.of(strong, DRAWN, thrifty)).best()).containsExactly(thrifty, DRAWN, strong);
    }

    @Test
    void lessPowerIsAReasonToo() {
        CombinedPlan small = plan("b", 1, 1, 20, 20);
        assertThat(Frontier.of(List.of(DRAWN, small)).best()).containsExactly(small);
        CombinedPlan weaker = plan("b", 1, 0.5, 20, 20);
        assertThat(Frontier.of(List.of(DRAWN, weaker)).best()).containsExactly(weaker, DRAWN);
    }

    /** Where the power of one plan is not known, nobody can say that it takes less. */
    @Test
    void powerCountsOnlyWhereAllAreKnown() {
        CombinedPlan unknown = plan("b", 1, 0.5, 20, Double.NaN);
        Frontier f = Frontier.of(List.of(DRAWN, unknown));
        assertThat(f.byPower()).isFalse();
        assertThat(f.best()).containsExactly(DRAWN);
    }

    @Test
    void amongEqualsTheFewestMeasuresCount() {
        CombinedPlan two = plan("b", 2, 5, 10, 50), one = plan("c", 1, 5.004, 10.01, 50.2);
        assertThat(Frontier.of(List.of(two, one)).best()).containsExactly(one);
        assertThat(Frontier.of(List.of(one, one)).best()).hasSize(1);
    }
}

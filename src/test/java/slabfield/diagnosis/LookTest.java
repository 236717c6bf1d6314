package slabfield.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import slabfield.field.Progress;
import slabfield.fit.Fitted;
import slabfield.fit.HouseFit;
import slabfield.fit.InertialNotDrawn;
import slabfield.fit.NotFitted;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.SuctionPoint;

/** A house with an opening hidden at 0.6 m from hole T3, which the fit of the house as drawn takes for more leaks all over. */
class LookTest {
    private static List<Explanation> all;
    private static Fitted drawn;

    @BeforeAll
    static void fitOnce() throws NotFitted {
        Scenario made = HiddenCauses.of(1099, Cause.LEAK, true).drawn();
        Scenario house = InertialNotDrawn.usual(made).withCellSize(Diagnoser.cell(made));
        all = Explanations.of(house);
        drawn = HouseFit.fit(house, all.get(0).unknowns(), Diagnoser.NOISE, Progress.NONE);
    }

    /** At the least of its own misfit nothing is gained by a further step. */
    @Test
    void theHouseAsDrawnIsAsFarAsItsFit() {
        double prior = Arrays.stream(drawn.deviations()).map(x -> x * x).sum();
        assertThat(new Look(drawn).at(all.get(0))).isCloseTo(drawn.chiSquare() + prior, within(0.05));
    }

    @Test
    void openingsBesideTheHoleThatLeaksComeNearest() {
        Look look = new Look(drawn);
        List<String> nearest = all.stream()
                .filter(e -> e.cause() == Cause.LEAK)
                .sorted(Comparator.comparingDouble(e -> look.at(e)))
                .limit(4)
                .map(Explanation::words)
                .toList();
        assertThat(nearest).allMatch(words -> words.endsWith("near hole \"T3\""));
    }

    private static Explanation nearest() {
        Look look = new Look(drawn);
        return all.stream()
                .filter(e -> e.cause() == Cause.LEAK)
                .min(Comparator.comparingDouble(look::at))
                .orElseThrow();
    }

    /** What a fit finds is not far from what the look promised. */
    @Test
    void aFitFindsWhatTheLookPromised() throws NotFitted {
        Explanation best = nearest();
        Fitted fitted = HouseFit.fit(best.house(), best.unknowns(), Diagnoser.NOISE, Progress.NONE);
        assertThat(fitted.chiSquare()).isLessThan(drawn.chiSquare() / 2);
    }

    /**
     * Looser fill acts as the factor of all fill does, so it comes no nearer than the house as drawn. The look goes straight from a
     * house with far looser fill, where that factor has far to come back, so it is only roughly as near.
     */
    @Test
    void aSizeThatActsAsAnotherUnknownComesNoNearer() {
        Explanation loose = all.stream()
                .filter(e -> e.cause() == Cause.LOOSE_FILL)
                .findFirst()
                .orElseThrow();
        Look look = new Look(drawn);
        double asDrawn = look.at(all.get(0));
        assertThat(look.at(loose)).isBetween(asDrawn - 0.5, 1.5 * asDrawn);
    }

    /** A footing that the fit of the house as drawn takes for leaks many times as large, from which nothing is linear any more. */
    @Test
    void leaksFittedFarTooLargeDoNotHideTheFooting() throws NotFitted {
        Scenario made = HiddenCauses.of(1774, Cause.BARRIER_WITH_GAP, true).drawn();
        Scenario house = InertialNotDrawn.usual(made).withCellSize(Diagnoser.cell(made));
        List<Explanation> some = Explanations.of(house);
        Fitted without = HouseFit.fit(house, some.get(0).unknowns(), Diagnoser.NOISE, Progress.NONE);
        assertThat(without.value(without.indexOf(Explanations.ALL_LEAKS))).isGreaterThan(10);
        Look look = new Look(without);
        assertThat(some.stream()
                        .filter(e -> e.cause() == Cause.BARRIER_WITH_GAP)
                        .min(Comparator.comparingDouble(look::at))
                        .orElseThrow()
                        .words())
                .isEqualTo("a footing across the slab at x = 4.0 m with a gap");
    }

    @Test
    void openingsAroundAPitAreShortCircuitsAndNoLeaks() {
        SuctionPoint pit = drawn.drawn().suctionPoints().get(0);
        double near = pit.pit().radius() + 0.5, far = pit.pit().radius() + 1;
        assertThat(distances(Cause.SHORT_CIRCUIT, pit.at()))
                .hasSize(4)
                .allSatisfy(d -> assertThat(d).isCloseTo(near, within(1e-9)));
        assertThat(distances(Cause.LEAK, pit.at())).isNotEmpty().allMatch(d -> d >= far);
    }

    private static List<Double> distances(Cause cause, Point from) {
        return all.stream()
                .filter(e -> e.cause() == cause && e.house() != all.get(0).house())
                .map(e -> e.house().openings().get(e.house().openings().size() - 1))
                .map(o -> ((Opening.Spot) o.place()).at().distanceTo(from))
                .toList();
    }
}

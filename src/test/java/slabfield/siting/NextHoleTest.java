package slabfield.siting;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import slabfield.advice.Basements;
import slabfield.advice.DrillPlaces;
import slabfield.advice.Houses;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.NoDrillArea;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Target;
import slabfield.model.TestHole;

/** A house with a footing that is only suspected. */
class NextHoleTest {
    private static Scenario house;
    private static Houses houses;
    private static NextHole found;

    @BeforeAll
    static void suggest() {
        house = Basements.plain()
                .withBarriers(List.of(Basements.footing(6, false)))
                .withTestHoles(List.of())
                .withTarget(new Target(2, "made"));
        houses = Houses.assumed(house, 80, 11);
        found = NextHole.suggest(houses, 3, Progress.NONE);
    }

    @Test
    void theBestPlaceLiesBeyondTheFooting() {
        assertThat(found.settled()).isFalse();
        assertThat(found.tellsNothing()).isFalse();
        assertThat(found.places().get(0).at().x()).isGreaterThan(6);
        assertThat(found.places().get(0).doubtLeft()).isLessThan(0.6 * found.doubtNow());
        assertThat(found.places()).isSortedAccordingTo(Comparator.comparingDouble(NextHole.Place::doubtLeft));
    }

    /**
     * A rule that weighs nothing: whether a house passes is guessed from the five other houses whose pressure at the place is
     * nearest to its own. At the best place such guesses are wrong as seldom as at the best tenth of all places.
     */
    @Test
    void guessesFromTheBestPlaceAreSeldomWrong() {
        List<Result.Solved> solved =
                houses.members().stream().map(m -> Basements.solve(m.house())).toList();
        List<Double> all = new ArrayList<>();
        for (Point p : DrillPlaces.forHoles(house).net(0.6)) all.add(wrong(solved, p));
        double best = wrong(solved, found.places().get(0).at());
        double least = all.stream().mapToDouble(w -> w).min().orElseThrow();
        double usual = all.stream().sorted().skip(all.size() / 2).findFirst().orElseThrow();
        assertThat(best).isLessThanOrEqualTo(least + 0.05).isLessThan(usual);
    }

    private static double wrong(List<Result.Solved> solved, Point p) {
        double[] v = solved.stream()
                .mapToDouble(s -> s.field().at(p.x(), p.y()).orElseThrow())
                .toArray();
        int wrong = 0;
        for (int i = 0; i < v.length; i++) {
            double mine = v[i];
            int self = i;
            long passing = IntStream.range(0, v.length)
                    .filter(k -> k != self)
                    .boxed()
                    .sorted(Comparator.comparingDouble(k -> Math.abs(v[k] - mine)))
                    .limit(5)
                    .filter(k -> passes(solved.get(k)))
                    .count();
            if (passing > 2 != passes(solved.get(i))) wrong++;
        }
        return (double) wrong / v.length;
    }

    private static boolean passes(Result.Solved s) {
        return s.coverage().weakest() >= house.target().vacuum();
    }

    @Test
    void noHoleIsProposedWhereDrillingIsForbidden() {
        Scenario kept = house.withPlan(house.plan()
                .withNoDrillAreas(List.of(new NoDrillArea("heated floor", Basements.rectangle(6, 0, 10, 8), ""))));
        NextHole other =
                NextHole.suggest(new Houses(kept, houses.members(), Houses.Basis.ASSUMPTIONS), 3, Progress.NONE);
        assertThat(other.places()).isNotEmpty().allMatch(p -> p.at().x() < 6);
        assertThat(other.places().get(0).doubtLeft())
                .as("and it tells less")
                .isGreaterThan(found.places().get(0).doubtLeft());
    }

    /** A hole that is drawn and will be read anyway leaves little for a second one beside it. */
    @Test
    void holesThatAreDrawnCountAsRead() {
        List<TestHole> drawn = List.of(new TestHole("H1", found.places().get(0).at(), ""));
        Scenario with = house.withTestHoles(drawn);
        NextHole next =
                NextHole.suggest(new Houses(with, houses.members(), Houses.Basis.ASSUMPTIONS), 1, Progress.NONE);
        assertThat(next.doubtNow()).isEqualTo(found.places().get(0).doubtLeft());
        assertThat(next.doubtNow() - next.places().get(0).doubtLeft())
                .isLessThan(0.5 * (found.doubtNow() - found.places().get(0).doubtLeft()));
    }

    @Test
    void whereNothingIsInDoubtItRanksByTheVacuumItself() {
        NextHole sure = NextHole.suggest(
                new Houses(house.withTarget(new Target(1e-9, "made")), houses.members(), Houses.Basis.ASSUMPTIONS),
                2,
                Progress.NONE);
        assertThat(sure.settled()).isTrue();
        assertThat(sure.places().get(0).scatterLeft()).isLessThan(sure.scatterNow());
        assertThat(sure.meets()).isEqualTo(1);
    }

    @Test
    void itSaysWhatTheLayoutLacksAndMends() {
        assertThat(found.shortfalls()).extracting(HoleLayout.Shortfall::rule).contains(HoleLayout.Rule.ACROSS_FOOTINGS);
        assertThat(found.places().get(0).mends())
                .extracting(HoleLayout.Shortfall::rule)
                .contains(HoleLayout.Rule.ACROSS_FOOTINGS);
    }
}

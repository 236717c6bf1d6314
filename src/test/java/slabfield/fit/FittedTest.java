package slabfield.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedMap;
import java.util.concurrent.CancellationException;
import java.util.function.UnaryOperator;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.assertj.core.data.Offset;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import slabfield.field.Progress;
import slabfield.model.FlowReading;
import slabfield.model.Scenario;
import slabfield.model.Stage;

/** A synthetic house fitted once: what the fit says of itself, by profile and by ensemble. */
class FittedTest {
    private static SyntheticHouses house;
    private static Fitted fit;

    @BeforeAll
    static void fitOnce() throws NotFitted {
        house = SyntheticHouses.of(3);
        fit = HouseFit.fit(house.drawn(), Progress.NONE);
    }

    /** The sum of squares is below what one house in a hundred has. */
    @Test
    void explainsWhatWasRead() {
        assertThat(fit.converged()).isTrue();
        assertThat(fit.chiSquare())
                .isLessThan(new ChiSquaredDistribution(null, fit.observations().size() - fit.fixed())
                        .inverseCumulativeProbability(0.99));
        assertThat(fit.fixed()).isBetween(1.0, 4.0);
        assertThat(fit.residuals()).hasSameSizeAs(fit.observations());
    }

    /** ln p(d | x) - |x|^2/2 + ln det(covariance)/2, each part from what the fit gives away. */
    @Test
    void theEvidenceChargesForTheRoomThatUnknownsHave() {
        double squares = fit.chiSquare(),
                determinant = new LUDecomposition(new Array2DRowRealMatrix(fit.covariance())).getDeterminant();
        for (double x : fit.deviations()) squares += x * x;
        assertThat(fit.logEvidence())
                .isCloseTo(fit.misfit().logNorm() - squares / 2 + Math.log(determinant) / 2, Offset.offset(1e-6));
    }

    /** The pit is held at 250 Pa. */
    @Test
    void readingsCarryTheModelsError() {
        for (Observation o : fit.observations()) {
            double share = o.what() == Observation.What.FLOW
                    ? 0.05
                    : 0.085 * Math.pow(Math.max(0.25, Math.log(250 / Math.abs(o.measured()))), 0.7);
            assertThat(o.model()).isCloseTo(share * Math.abs(o.measured()), Percentage.withPercentage(1e-6));
        }
        assertThat(fit.observations()).extracting(Observation::what).contains(Observation.What.FLOW);
    }

    @Test
    void theFittedHousePredictsWhatTheFitSays() {
        Scenario found = fit.house().during(fit.house().stages().get(1));
        var solved = SyntheticHouses.solved(found);
        for (Fitted.Residual r : fit.residuals())
            if (r.observation().stage().equals("sump closed") && r.observation().what() == Observation.What.FAN_ON)
                assertThat(solved.hole(r.observation().place())
                                .orElseThrow()
                                .fanOn()
                                .orElseThrow())
                        .isCloseTo(r.predicted(), Offset.offset(1e-4));
    }

    /** An unknown that the readings fix well has nearly normal doubt, where profile and Laplace agree. */
    @Test
    void profileAgreesWithLaplaceWhereTheDoubtIsSmall() throws NotFitted {
        Scenario drawn = house.drawn();
        Fitted sure = HouseFit.fit(drawn, Unknowns.of(drawn), new NoiseModel(0.02, 0.02), Progress.NONE);
        assertThat(sure.doubtLeft(0)).isLessThan(0.15);
        Interval profile = Profile.interval(sure, 0, 0.9, Progress.NONE), laplace = sure.interval(0, 0.9);
        assertThat(profile.low()).isCloseTo(laplace.low(), Percentage.withPercentage(15));
        assertThat(profile.high()).isCloseTo(laplace.high(), Percentage.withPercentage(15));
    }

    @Test
    void allSoughtUnknownsHaveAProfile() {
        SortedMap<Integer, Interval> all = Profile.intervals(fit, 0.9, Progress.NONE);
        assertThat(all.keySet()).allMatch(j -> fit.parameters().get(j).kind().sought());
        assertThat(all).containsKeys(fit.indexOf("fill"), fit.indexOf("soil"));
        assertThat(all).doesNotContainKey(fit.indexOf("exponent joint"));
        int fill = fit.indexOf("fill");
        assertThat(all.get(fill)).isEqualTo(Profile.interval(fit, fill, 0.9, Progress.NONE));
        assertThat(all.get(fill).holds(fit.value(fill))).isTrue();
    }

    @Test
    void theEnsembleAgreesWithLaplaceAndKeepsToItsSeed() {
        Ensemble a = Ensemble.of(fit, 40, 5, Progress.NONE), b = Ensemble.of(fit, 40, 5, Progress.NONE);
        for (int m = 0; m < 40; m++)
            assertThat(a.members().get(m).deviations())
                    .containsExactly(b.members().get(m).deviations(), Offset.offset(1e-6));
        int fill = fit.indexOf("fill");
        assertThat(a.interval(fill, 0.9).factor())
                .isBetween(
                        Math.sqrt(fit.interval(fill, 0.9).factor()),
                        Math.pow(fit.interval(fill, 0.9).factor(), 1.5));
        assertThat(a.distanceFromLaplace()).isLessThan(1);
    }

    /** 40 draws from the standard normal distribution: their mean is known to 0.16, their deviation to a ninth. */
    @Test
    void membersCarryTheModelsError() {
        List<Ensemble.Member> members = Ensemble.of(fit, 40, 5, Progress.NONE).members();
        assertThat(members).allMatch(m -> m.error().noise().equals(fit.noise()));
        Band pressures =
                Band.of(members.stream().mapToDouble(m -> m.error().pressures()).toArray());
        assertThat(pressures.mean()).isCloseTo(0, Offset.offset(0.5));
        assertThat(pressures.deviation()).isBetween(0.7, 1.4);
        Band flows =
                Band.of(members.stream().mapToDouble(m -> m.error().flows()).toArray());
        assertThat(flows.mean()).isCloseTo(0, Offset.offset(0.5));
        assertThat(flows.deviation()).isBetween(0.7, 1.4);
    }

    /**
     * The model's error of a flow is mostly the same in all stages. Read to 0.1 % in two, the flow of the house as drawn is known to
     * 5 % sqrt(1 - 2 x 0.9^2/1.9) = 1.9 %, and not only to the 5 % of the model.
     */
    @Test
    void aFlowThatWasReadIsKnownBetterThanTheModel() throws NotFitted {
        Scenario read = house.drawn()
                .withStages(
                        house.drawn().stages().stream().map(FittedTest::exactly).toList());
        double flow = read.stages().get(0).systems().get(0).flow().orElseThrow();
        Band exhaust = Ensemble.of(HouseFit.fit(read, Progress.NONE), 60, 5, Progress.NONE)
                .outlook(UnaryOperator.identity(), Progress.NONE)
                .exhaust();
        assertThat(exhaust.deviation() / flow).isBetween(0.012, 0.03);
        assertThat(exhaust.mean()).isCloseTo(flow, Percentage.withPercentage(3));
    }

    private static Stage exactly(Stage s) {
        double flow = s.systems().get(0).flow().orElseThrow();
        return new Stage(
                s.id(),
                s.kind(),
                s.seals(),
                s.sources(),
                s.holes(),
                List.of(new Stage.SystemReading(
                        "S",
                        Optional.of(new FlowReading.Stated(flow, OptionalDouble.of(1e-3 * flow))),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        "")),
                s.time(),
                s.notes());
    }

    @Test
    void theOutlookIsThatOfItsMembers() {
        Ensemble e = Ensemble.of(fit, 20, 5, Progress.NONE);
        Outlook drawn = e.outlook(UnaryOperator.identity(), Progress.NONE);
        Outlook sealed = e.outlook(SyntheticHouses::finished, Progress.NONE);
        assertThat(drawn.forecasts()).hasSize(20);
        // both with the draws of the model's errors
        assertThat(drawn.exhaust().sorted())
                .containsExactly(drawn.forecasts().stream()
                        .mapToDouble(f -> e.members()
                                .get(f.member())
                                .error()
                                .flow(f.solved().flows().exhaust()))
                        .sorted()
                        .toArray());
        assertThat(drawn.weakest().sorted())
                .containsExactly(drawn.forecasts().stream()
                        .mapToDouble(f -> e.members()
                                .get(f.member())
                                .error()
                                .pressure(f.solved().coverage().weakest(), 250))
                        .sorted()
                        .toArray());
        double[] low = drawn.quantile(0.05), high = drawn.quantile(0.95), chance = drawn.chanceOf(5);
        for (int c = 0; c < low.length; c++) {
            if (Double.isNaN(low[c])) continue;
            assertThat(low[c]).isLessThanOrEqualTo(high[c]);
            assertThat(chance[c]).isBetween(0.0, 1.0);
            if (low[c] > 5.001) assertThat(chance[c]).isGreaterThanOrEqualTo(0.9);
        }
        // sealing helps in every one of the houses
        assertThat(sealed.gainOver(drawn).sorted()[0]).isPositive();
        assertThat(sealed.exhaust().median()).isLessThan(drawn.exhaust().median());
    }

    /** Without the sump among what leaks, the stage in which it was closed cannot be explained. */
    @Test
    void theEvidenceSpeaksForTheHouseThatExplainsBothStages() throws NotFitted {
        Scenario without = house.drawn()
                .withOpenings(List.of(house.drawn().opening("joint").orElseThrow()))
                .withStages(house.drawn().stages().stream()
                        .map(s -> new slabfield.model.Stage(
                                s.id(),
                                s.kind(),
                                java.util.Map.of(),
                                s.sources(),
                                s.holes(),
                                s.systems(),
                                s.time(),
                                s.notes()))
                        .toList());
        Fitted other = HouseFit.fit(without, Progress.NONE);
        assertThat(fit.logEvidence()).isGreaterThan(other.logEvidence() + 3);
        assertThat(fit.informationCriterion()).isLessThan(other.informationCriterion());
    }

    @Test
    void tooFewReadingsAreRefusedKindly() {
        Scenario none = house.drawn().withStages(List.of());
        assertThatThrownBy(() -> HouseFit.fit(none, Progress.NONE))
                .isInstanceOf(NotFitted.class)
                .hasMessageContaining("too little to fit")
                .hasMessageContaining("measure the flow");
    }

    @Test
    void aFitCanBeStopped() {
        Progress stop = new Progress() {
            @Override
            public boolean isCancelled() {
                return true;
            }
        };
        assertThatThrownBy(() -> HouseFit.fit(house.drawn(), stop)).isInstanceOf(CancellationException.class);
    }
}

package slabfield.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.assertj.core.data.Offset;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.model.Barrier;
import slabfield.model.BlockWall;
import slabfield.model.Fill;
import slabfield.model.FillWord;
import slabfield.model.FlowReading;
import slabfield.model.Layer;
import slabfield.model.Opening;
import slabfield.model.Path;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Source;
import slabfield.model.Stage;
import slabfield.model.StageKind;
import slabfield.model.Zone;

/** What each unknown changes, and what is believed of it. */
class UnknownsTest {
    private static final Scenario HOUSE = SyntheticHouses.of(1).drawn();

    @Test
    void aHousesUsualUnknowns() {
        assertThat(Unknowns.of(HOUSE))
                .extracting(Parameter::id)
                .containsExactly(
                        "fill",
                        "inertial not drawn",
                        "opening sump",
                        "exponent sump",
                        "fill beside sump",
                        "opening joint",
                        "exponent joint",
                        "soil");
    }

    @Test
    void theMedianIsWhatIsDrawn() {
        for (Parameter p : Unknowns.of(HOUSE)) {
            if (!p.kind().sought()) continue;
            Scenario same = p.with(HOUSE, p.prior().median());
            assertThat(same.soilLeakance()).isEqualTo(HOUSE.soilLeakance());
            assertThat(same.openings()).isEqualTo(HOUSE.openings());
            assertThat(same.layer().fill().permeability())
                    .isEqualTo(HOUSE.layer().fill().permeability());
        }
    }

    /** 0.55/sqrt(k) by hand: 3889.1 1/m at 2e-8 m2; the multiple follows the permeability that the fit tries. */
    @Test
    void coarseFillDrawnWithoutInertiaMayHaveSome() {
        Parameter p = InertialNotDrawn.of(HOUSE).orElseThrow();
        assertThat(p.kind().sought()).isFalse();
        assertThat(p.with(HOUSE, 2).layer().fill().inertial()).isCloseTo(2 * 3889.1, Percentage.withPercentage(0.01));
        Scenario tighter = Unknowns.fill(HOUSE).with(HOUSE, 2e-10);
        assertThat(p.with(tighter, 1).layer().fill().inertial()).isCloseTo(38891, Percentage.withPercentage(0.01));
    }

    @Test
    void sandAndVoidAndFillDrawnWithInertiaHaveNoOther() {
        Fill coarse = HOUSE.layer().fill();
        for (Fill f : List.of(
                Fill.of(FillWord.SAND, 0.1), Fill.of(FillWord.VOID, 0.02), Fill.of(FillWord.CLEAN_STONE, 0.1))) {
            assertThat(InertialNotDrawn.of(HOUSE.withLayer(new Layer(f, List.of()))))
                    .as(f.word().words())
                    .isEmpty();
            Zone part = new Zone("part", MadeHouses.rectangle(1, 1), f);
            Scenario both = HOUSE.withLayer(new Layer(coarse, List.of(part)));
            Layer with = InertialNotDrawn.of(both).orElseThrow().with(both, 1).layer();
            assertThat(with.zones().get(0)).isEqualTo(part);
            assertThat(with.fill().inertial()).isPositive();
        }
    }

    @Test
    void aLeakGrowsInProportion() {
        Scenario twice = Unknowns.leak(HOUSE, "sump").with(HOUSE, 2);
        Opening.Orifice before =
                (Opening.Orifice) HOUSE.opening("sump").orElseThrow().passage();
        assertThat(((Opening.Orifice) twice.opening("sump").orElseThrow().passage()).area())
                .isEqualTo(2 * before.area());
        // flow through a slit goes with the cube of its width
        Scenario eight = Unknowns.leak(HOUSE, "joint").with(HOUSE, 8);
        Opening.Crack slit =
                (Opening.Crack) HOUSE.opening("joint").orElseThrow().passage();
        assertThat(((Opening.Crack) eight.opening("joint").orElseThrow().passage()).width())
                .isCloseTo(2 * slit.width(), Offset.offset(1e-12));
        assertThat(eight.opening("joint").orElseThrow().seal())
                .isEqualTo(HOUSE.opening("joint").orElseThrow().seal());
    }

    /** C dp^n with the drawn flow at 10 Pa, worked by hand: 0.61 x 1.5e-3 m2 x sqrt(20/1.204), and the flow of twice the leak. */
    @Test
    void anExponentKeepsTheLeakAtTenPascals() {
        Scenario twice = Unknowns.leak(HOUSE, "sump").with(HOUSE, 2);
        Opening.PowerLaw law = (Opening.PowerLaw) Unknowns.exponent(HOUSE, "sump")
                .with(twice, 0.7)
                .opening("sump")
                .orElseThrow()
                .passage();
        assertThat(law.exponent()).isEqualTo(0.7);
        assertThat(law.coefficient() * Math.pow(10, 0.7))
                .isCloseTo(2 * 0.61 * 1.5e-3 * Math.sqrt(20 / 1.204), Percentage.withPercentage(0.01));
        // 12 mu z q/w^3 + rho C q^2/(2 w^2) = 10 Pa per metre of the joint; C = 2.5 with one bend
        double w = 0.6e-3, a = 1.204 * 2.5 / (2 * w * w), b = 12 * 1.81e-5 * 0.1 / (w * w * w);
        double perMetre = (-b + Math.sqrt(b * b + 40 * a)) / (2 * a);
        Opening joint = Unknowns.exponent(HOUSE, "joint")
                .with(HOUSE, 3)
                .opening("joint")
                .orElseThrow();
        Opening.PowerLaw slit = (Opening.PowerLaw) joint.passage();
        assertThat(slit.exponent()).isEqualTo(1);
        assertThat(slit.coefficient() * 10)
                .isCloseTo(perMetre * ((Opening.Along) joint.place()).path().length(), Percentage.withPercentage(0.01));
    }

    /** 5 and 95 % of the prior hold the word's range, on its wider side exactly. */
    @ParameterizedTest
    @CsvSource({"SAND", "MIXED", "CLEAN_STONE", "SILT_OR_CLAY"})
    void aWordsRangeHoldsNineOfTen(FillWord word) {
        Scenario house = HOUSE.withLayer(new Layer(Fill.of(word, 0.1), List.of()));
        Prior prior = Unknowns.fill(house).prior();
        assertThat(prior.value(-1.6449)).isLessThanOrEqualTo(word.leastPermeability() * 1.001);
        assertThat(prior.value(1.6449)).isGreaterThanOrEqualTo(word.largestPermeability() * 0.999);
        assertThat(Math.min(
                        word.leastPermeability() / prior.value(-1.6449),
                        prior.value(1.6449) / word.largestPermeability()))
                .isCloseTo(1, Percentage.withPercentage(0.1));
        assertThat(prior.source()).contains(word.words());
    }

    @ParameterizedTest
    @CsvSource({"LOGARITHMIC, 3, 2, 1.5, 8.485281374", "LINEAR, 3, 2, 1.5, 6"})
    void priorsGoBothWays(Prior.Scale scale, double median, double spread, double deviations, double value) {
        Prior prior = new Prior(scale, median, spread, "test");
        assertThat(prior.value(deviations)).isCloseTo(value, Offset.offset(1e-8));
        assertThat(prior.deviations(value)).isCloseTo(deviations, Offset.offset(1e-8));
    }

    @Test
    void whatIsNotDrawnIsRefused() {
        assertThatThrownBy(() -> Unknowns.leak(HOUSE, "chimney")).hasMessageContaining("chimney");
    }

    @Test
    void readingsThatASourceHoldsTellNothing() {
        Stage.SystemReading both = new Stage.SystemReading("S", OptionalDouble.of(0.01), OptionalDouble.of(-240), "");
        Stage stage = HOUSE.stages().get(0);
        Scenario pressure = HOUSE.withStages(List.of(stage.with(stage.holes(), List.of(both))));
        assertThat(Observations.of(pressure, NoiseModel.USUAL, false))
                .extracting(Observation::what)
                .contains(Observation.What.FLOW)
                .doesNotContain(Observation.What.RISER);
        Scenario flow = pressure.withSuctionPoint("S", s -> s.drawnBy(new Source.Flow(0.01)));
        assertThat(Observations.of(flow, NoiseModel.USUAL, false))
                .extracting(Observation::what)
                .contains(Observation.What.RISER)
                .doesNotContain(Observation.What.FLOW);
    }

    /** The meter shows nothing below 0.004 m3/s: the true flow lies below that, and the model has no say in it. */
    @Test
    void aFlowBelowTheMeterIsABound() {
        Stage.SystemReading below = new Stage.SystemReading(
                "S",
                Optional.of(new FlowReading.Below(0.004)),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                "");
        Stage stage = HOUSE.stages().get(0);
        Scenario house = HOUSE.withStages(List.of(stage.with(stage.holes(), List.of(below))));
        assertThat(Observations.of(house, NoiseModel.USUAL, false))
                .filteredOn(Observation::upperBound)
                .containsExactly(new Observation(stage.id(), Observation.What.FLOW, "S", 0.004, 4e-4, 0, true));
    }

    /** Fan on and off count each where the pressure outdoors is unknown, else their difference alone. */
    @Test
    void aPairOfReadingsCountsAsItsDifference() {
        Stage stage = HOUSE.stages().get(0);
        Stage.HoleReading pair = new Stage.HoleReading(
                stage.holes().get(0).hole(),
                OptionalDouble.of(1),
                OptionalDouble.of(-9),
                OptionalDouble.of(0.5),
                OptionalDouble.of(0.1),
                "");
        Scenario house = HOUSE.withStages(List.of(stage.with(List.of(pair), List.of())));
        assertThat(Observations.of(house, NoiseModel.USUAL, false))
                .extracting(Observation::what, Observation::measured)
                .containsExactly(tuple(Observation.What.DIFFERENCE, -10.0));
        assertThat(Observations.of(house, NoiseModel.USUAL, true))
                .extracting(Observation::what, Observation::measured)
                .containsExactly(tuple(Observation.What.FAN_ON, -9.0), tuple(Observation.What.FAN_OFF, 1.0));
    }

    /** A suspected footing, a wall that leaks at its foot alone, and outdoors where the fan was off as well. */
    @Test
    void onlyWhatIsDrawnOrReadIsUnknown() {
        Path line = new Path(List.of(new Point(1, 0), new Point(1, 4)));
        Barrier known = new Barrier("known", line, 0.4, 0, true, List.of());
        Barrier suspected = new Barrier("suspected", line, 0.4, 0, false, List.of());
        Seal filled = Seal.of(SealState.SEALED);
        BlockWall foot = new BlockWall("foot", line, 2.1, filled, 0, 1e-4, 0, 0, 1e-3, false, Optional.empty());
        BlockWall tops = new BlockWall("tops", line, 2.1, filled, 0.09, 0, 0, 0, 1e-3, false, Optional.empty());
        Scenario house = HOUSE.withBarriers(List.of(known, suspected))
                .withBlockWalls(List.of(foot, tops))
                .withOutdoorPressure(2);
        assertThat(Unknowns.of(house))
                .extracting(Parameter::id)
                .contains("foot foot", "tops tops", "barrier suspected")
                .doesNotContain("tops foot", "foot tops", "barrier known", "outdoors");
        // a footing drawn as tight passes a hundredth of what the fill does
        assertThat(Unknowns.barrier(house, "suspected").prior().median())
                .isCloseTo(0.01 * house.layer().fill().permeability(), Percentage.withPercentage(1e-6));
        Stage stage = house.stages().get(0);
        Stage.HoleReading off = new Stage.HoleReading(
                stage.holes().get(0).hole(),
                OptionalDouble.of(1),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                "");
        Scenario read = house.withStages(List.of(stage.with(List.of(off), List.of())));
        assertThat(Unknowns.of(read)).extracting(Parameter::id).contains("outdoors");
        assertThat(Unknowns.of(read.withOutdoorPressure(0)))
                .extracting(Parameter::id)
                .doesNotContain("outdoors");
    }

    /** All of it at most; a stage that leaves the opening alone stays as it is. */
    @Test
    void whatASealLeavesOpenIsAtMostAll() {
        Stage covered = sump("covered", SealState.COVERED), open = sump("open", SealState.OPEN);
        Scenario house = HOUSE.withStages(List.of(covered, open));
        Parameter left = Unknowns.leftBySeal(house, "sump");
        assertThat(left.prior().median()).isCloseTo(0.1, Offset.offset(1e-12));
        assertThat(fractions(left.with(house, 0.3))).containsExactly(0.7, 0.0);
        assertThat(fractions(left.with(house, 1.5))).containsExactly(0.0, 0.0);
    }

    private static Stage sump(String id, SealState state) {
        return new Stage(
                id,
                StageKind.COMMUNICATION_TEST,
                Map.of("sump", Seal.of(state)),
                Map.of(),
                List.of(),
                List.of(),
                "",
                "");
    }

    private static List<Double> fractions(Scenario house) {
        return house.stages().stream()
                .map(s -> s.seals().get("sump").fraction())
                .toList();
    }
}

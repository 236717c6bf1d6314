package slabfield.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.assertj.core.data.Offset;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.model.Fill;
import slabfield.model.FillWord;
import slabfield.model.Layer;
import slabfield.model.Opening;
import slabfield.model.Scenario;
import slabfield.model.Source;

/** What each unknown changes, and what is believed of it. */
class UnknownsTest {
    private static final Scenario HOUSE = SyntheticHouses.of(1).drawn();

    @Test
    void aHousesUsualUnknowns() {
        assertThat(Unknowns.of(HOUSE)).extracting(Parameter::id)
                .containsExactly("fill", "opening sump", "opening joint", "soil");
    }

    @Test
    void theMedianIsWhatIsDrawn() {
        for (Parameter p : Unknowns.of(HOUSE)) {
            Scenario same = p.with(HOUSE, p.prior().median());
            assertThat(same.soilLeakance()).isEqualTo(HOUSE.soilLeakance());
            assertThat(same.openings()).isEqualTo(HOUSE.openings());
            assertThat(same.layer().fill().permeability()).isEqualTo(HOUSE.layer().fill().permeability());
        }
    }

    @Test
    void aLeakGrowsInProportion() {
        Scenario twice = Unknowns.leak(HOUSE, "sump").with(HOUSE, 2);
        Opening.Orifice before = (Opening.Orifice) HOUSE.opening("sump").orElseThrow().passage();
        assertThat(((Opening.Orifice) twice.opening("sump").orElseThrow().passage()).area()).isEqualTo(2 * before.area());
        // flow through a slit goes with the cube of its width
        Scenario eight = Unknowns.leak(HOUSE, "joint").with(HOUSE, 8);
        Opening.Crack slit = (Opening.Crack) HOUSE.opening("joint").orElseThrow().passage();
        assertThat(((Opening.Crack) eight.opening("joint").orElseThrow().passage()).width())
                .isCloseTo(2 * slit.width(), Offset.offset(1e-12));
        assertThat(eight.opening("joint").orElseThrow().seal()).isEqualTo(HOUSE.opening("joint").orElseThrow().seal());
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
                        word.leastPermeability() / prior.value(-1.6449), prior.value(1.6449) / word.largestPermeability()))
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
        List<Observation> held = Observations.of(HOUSE, NoiseModel.USUAL, false);
        assertThat(held).extracting(Observation::what).contains(Observation.What.FLOW).doesNotContain(Observation.What.RISER);
        Scenario flow = HOUSE.withSuctionPoint("S", s -> s.drawnBy(new Source.Flow(0.01)));
        assertThat(Observations.of(flow, NoiseModel.USUAL, false)).extracting(Observation::what)
                .doesNotContain(Observation.What.FLOW);
    }
}

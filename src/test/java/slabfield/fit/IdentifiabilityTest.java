package slabfield.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import slabfield.field.Progress;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Source;

/** Numbers only where the readings give them. */
class IdentifiabilityTest {
    private static final NoiseModel METER = new NoiseModel(0);

    private static Identifiability told(Scenario house) throws NotFitted {
        return Identifiability.of(HouseFit.fit(house, Unknowns.of(house), METER, Progress.NONE));
    }

    @Test
    void spreadHolesWithFlowGiveNumbers() throws NotFitted {
        Identifiability i = told(RecoveryTest.read(1, 1, 0.5, 0, 1, 7));
        assertThat(i.findings()).extracting(Identifiability.Finding::standing)
                .containsExactly(Identifiability.Standing.FOUND, Identifiability.Standing.FOUND);
        assertThat(i.ratios()).isEmpty();
        assertThat(i.measure()).isEmpty();
    }

    @Test
    void clusteredFarHolesGiveNoNumberForTheFill() throws NotFitted {
        Identifiability i = told(RecoveryTest.read(1, 1, 0.5, 5, 6, 8));
        assertThat(i.findings().get(0).standing()).isNotEqualTo(Identifiability.Standing.FOUND);
        assertThat(i.findings().get(0).range().factor()).isGreaterThan(4);
        assertThat(i.measure()).anyMatch(s -> s.contains("Read more holes"));
    }

    /** The shape of the field knows lambda^2 = k h / (mu g) only: fill over soil, not each. */
    @Test
    void withoutFlowOnlyTheRatioIsKnown() throws NotFitted {
        Scenario drawn = MadeHouses.plain(
                10, 8, 4e-8, 2 * 6.906077e-6, new Point(2.5, 3), new Source.Pressure(-120), 0.2);
        List<Point> places = List.of(
                new Point(3, 3), new Point(4.5, 3), new Point(7.5, 3), new Point(0.5, 7.5), new Point(9.5, 7.5));
        Scenario truth = MadeHouses.read(
                MadeHouses.plain(10, 8, 2e-8, 6.906077e-6, new Point(2.5, 3), new Source.Pressure(-120), 0.2), places,
                List.of(-1.0, -1.0, -1.0, -1.0, -1.0), 0.3);
        List<Double> exact = SyntheticHouses.solved(truth).holes().stream()
                .map(h -> h.fanOn().orElseThrow())
                .toList();
        Identifiability i = told(MadeHouses.read(drawn, places, exact, 0.3));
        assertThat(i.findings()).extracting(Identifiability.Finding::standing)
                .containsExactly(Identifiability.Standing.COMBINED, Identifiability.Standing.COMBINED);
        assertThat(i.ratios()).hasSize(1);
        Identifiability.Ratio ratio = i.ratios().get(0);
        assertThat(ratio.value()).isCloseTo(6.906077e-6 / 2e-8, Percentage.withPercentage(5));
        assertThat(ratio.range().factor()).isLessThan(1.5);
        assertThat(i.measure()).anyMatch(s -> s.startsWith("Measure the flow"));
        assertThat(i.directions().get(0).gain()).isGreaterThan(10);
        assertThat(i.directions().get(1).gain()).isLessThan(0.5);
    }
}

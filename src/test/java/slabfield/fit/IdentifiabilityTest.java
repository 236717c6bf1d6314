package slabfield.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import slabfield.field.Progress;
import slabfield.model.Opening;
import slabfield.model.OpeningKind;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Source;

/** Numbers only where the readings give them. */
class IdentifiabilityTest {
    private static final NoiseModel METER = NoiseModel.METER_ONLY;

    private static Identifiability told(Scenario house) throws NotFitted {
        return Identifiability.of(HouseFit.fit(house, Unknowns.of(house), METER, Progress.NONE));
    }

    @Test
    void spreadHolesWithFlowGiveNumbers() throws NotFitted {
        Identifiability i = told(RecoveryTest.read(1, 1, 0.5, 0, 1, 7));
        assertThat(i.findings())
                .extracting(Identifiability.Finding::standing)
                .as("fill, inertia that is not drawn, soil")
                .containsExactly(
                        Identifiability.Standing.FOUND, Identifiability.Standing.RANGE, Identifiability.Standing.FOUND);
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
        Scenario drawn =
                MadeHouses.plain(10, 8, 4e-8, 2 * 6.906077e-6, new Point(2.5, 3), new Source.Pressure(-120), 0.2);
        List<Point> places = List.of(
                new Point(3, 3), new Point(4.5, 3), new Point(7.5, 3), new Point(0.5, 7.5), new Point(9.5, 7.5));
        Scenario truth = MadeHouses.read(
                MadeHouses.plain(10, 8, 2e-8, 6.906077e-6, new Point(2.5, 3), new Source.Pressure(-120), 0.2),
                places,
                List.of(-1.0, -1.0, -1.0, -1.0, -1.0),
                0.3);
        List<Double> exact = SyntheticHouses.solved(truth).holes().stream()
                .map(h -> h.fanOn().orElseThrow())
                .toList();
        Identifiability i = told(MadeHouses.read(drawn, places, exact, 0.3));
        assertThat(i.findings())
                .extracting(Identifiability.Finding::standing)
                .as("fill, inertia that is not drawn, soil")
                .containsExactly(
                        Identifiability.Standing.COMBINED,
                        Identifiability.Standing.RANGE,
                        Identifiability.Standing.COMBINED);
        assertThat(i.ratios()).hasSize(1);
        Identifiability.Ratio ratio = i.ratios().get(0);
        assertThat(ratio.value()).isCloseTo(6.906077e-6 / 2e-8, Percentage.withPercentage(5));
        assertThat(ratio.range().factor()).isLessThan(1.5);
        assertThat(i.measure()).anyMatch(s -> s.startsWith("Measure the flow"));
        assertThat(i.directions().get(0).gain()).isGreaterThan(10);
        assertThat(i.directions().get(2).gain()).isLessThan(0.5);
    }

    /** Two openings side by side: their sum is known, neither by itself. */
    @Test
    void neighboursAreMistakenForEachOther() throws NotFitted {
        Scenario plain = MadeHouses.plain(10, 8, 2e-8, 1e-7, new Point(2.5, 3), new Source.Flow(0.012), 0.2);
        Scenario house = plain.withOpenings(List.of(spot("sump", 7, 5), spot("pipe", 7.4, 5)));
        List<Point> places = List.of(
                new Point(3, 3), new Point(4.5, 3), new Point(7.2, 3), new Point(0.5, 7.5), new Point(9.5, 7.5));
        Scenario blank = MadeHouses.read(house, places, List.of(-1.0, -1.0, -1.0, -1.0, -1.0), 0.3);
        List<Double> exact = SyntheticHouses.solved(blank).holes().stream()
                .map(h -> h.fanOn().orElseThrow())
                .toList();
        Scenario read = MadeHouses.read(house, places, exact, 0.5);
        List<Parameter> unknowns =
                List.of(Unknowns.fill(read), Unknowns.leak(read, "sump"), Unknowns.leak(read, "pipe"));
        Identifiability i = Identifiability.of(HouseFit.fit(read, unknowns, METER, Progress.NONE));
        assertThat(i.findings().get(0).standing()).isEqualTo(Identifiability.Standing.FOUND);
        assertThat(i.exchangeable()).containsExactly(new Identifiability.Group(List.of(1, 2)));
        assertThat(i.findings().get(1).standing()).isEqualTo(Identifiability.Standing.COMBINED);
        assertThat(i.measure())
                .anyMatch(s -> s.startsWith("Cover one at a time") && s.contains("sump") && s.contains("pipe"));
    }

    private static Opening spot(String id, double x, double y) {
        return new Opening(
                id,
                OpeningKind.PENETRATION,
                new Opening.Spot(new Point(x, y), 0.1),
                new Opening.Orifice(1.5e-3, 0.61),
                Seal.of(SealState.OPEN));
    }
}

package slabfield.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.model.Stage;
import slabfield.model.StageKind;

class NoiseModelTest {
    private static final NoiseModel TENTH = new NoiseModel(0.1, 0.03);
    private static final Point PIT = new Point(2, 2), HOLE = new Point(5, 3);

    @Test
    void theErrorGrowsWithTheFallOfTheSuction() {
        double e = Math.E;
        assertThat(TENTH.shareAt(-100 / e, 100)).isCloseTo(0.1, within(1e-12));
        // fallen to 1/e^3: 3^0.7 = 2.157669...
        assertThat(TENTH.shareAt(100 / (e * e * e), 100)).isCloseTo(0.2157669, within(1e-7));
        assertThat(TENTH.shareAt(-100, 100)).as("beside the pit, 0.25^0.7").isCloseTo(0.0378929, within(1e-7));
        assertThat(TENTH.shareAt(-101, 100)).as("stronger than the pit").isEqualTo(TENTH.shareAt(-100, 100));
        assertThat(TENTH.shareAt(0, 100)).as("nothing left, 15^0.7").isCloseTo(0.6656775, within(1e-7));
        assertThat(TENTH.shareAt(-1, 0)).as("no suction").isEqualTo(0.1);
    }

    @Test
    void aDrawMovesPressuresByTheirOwnErrorAndNeverBeyondTheSuction() {
        ModelError up = new ModelError(TENTH, 2, -1), wild = new ModelError(new NoiseModel(2, 0), 9, -9);
        assertThat(up.pressure(-100 / Math.E, 100)).isCloseTo(-100 / Math.E * Math.exp(0.2), within(1e-9));
        assertThat(up.flow(0.02)).isCloseTo(0.0194, within(1e-12));
        assertThat(wild.pressure(-20, 100)).isEqualTo(-100);
        assertThat(wild.pressure(20, 100)).isEqualTo(100);
        assertThat(wild.pressures()).as("no more than three deviations").isEqualTo(3);
        assertThat(ModelError.NONE.pressure(-3, 100)).isEqualTo(-3);
    }

    /** Without a pit reading or a held pressure the house as drawn tells how strong the suction is. */
    @Test
    void theSuctionIsWhatIsReadElseHeldElseDrawn() {
        Scenario held = house(new Source.Pressure(-100));
        double[] share = {
            share(held, OptionalDouble.empty()),
            share(house(new Source.Flow(0.01)), OptionalDouble.of(-300)),
            share(house(new Source.Flow(0.01)), OptionalDouble.empty())
        };
        assertThat(share[0]).isCloseTo(TENTH.shareAt(-5, 100), within(1e-12));
        assertThat(share[1]).isCloseTo(TENTH.shareAt(-5, 300), within(1e-12));
        double drawn = SyntheticHouses.solved(house(new Source.Flow(0.01)).withCellSize(0.3))
                .strongest();
        assertThat(drawn).isGreaterThan(5);
        assertThat(share[2]).isCloseTo(TENTH.shareAt(-5, drawn), within(1e-12));
    }

    private static Scenario house(Source source) {
        return MadeHouses.read(MadeHouses.plain(8, 6, 2e-8, 1e-7, PIT, source, 0.3), List.of(HOLE), List.of(-5.0), 0.5);
    }

    private static double share(Scenario house, OptionalDouble pit) {
        Stage read = house.stages().get(0);
        Stage.SystemReading system = new Stage.SystemReading("S", OptionalDouble.empty(), pit, "");
        Stage with = new Stage(
                "test", StageKind.COMMUNICATION_TEST, Map.of(), Map.of(), read.holes(), List.of(system), "", "");
        Observation hole = Observations.of(house.withStages(List.of(with)), TENTH, false).stream()
                .filter(Observation::isPressureAtHole)
                .findFirst()
                .orElseThrow();
        return hole.model() / 5;
    }
}

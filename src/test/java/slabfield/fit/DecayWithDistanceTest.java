package slabfield.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.field.Result;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Source;

/**
 * The ratio of two holes tells the leakage length, whatever the flow: K0(2/lambda)/K0(5/lambda) and K0(1/lambda)/K0(3/lambda)
 * (Hantush and Jacob 1955) on a wide leaky slab, a quarter of which is solved with the pit in its corner.
 */
class DecayWithDistanceTest {
    private static final double FILL = 2e-8, TRANSMISSIVITY = FILL * 0.1 / 1.81e-5;

    @ParameterizedTest
    @CsvSource({"1, 30.856, 12.120", "2, 6.7529, 4.3236", "3, 4.0360, 3.0321", "4, 3.1062, 2.5246", "6, 2.3750, 2.0856"
    })
    void ratiosOfTheTable(double lambda, double twoOverFive, double oneOverThree) {
        double side = 8 * lambda, cell = Math.max(0.1, side / 240);
        Scenario slab = MadeHouses.plain(
                side,
                side,
                FILL,
                TRANSMISSIVITY / (lambda * lambda),
                new Point(0.06, 0.06),
                new Source.Flow(0.01),
                cell);
        List<Point> places = List.of(at(1), at(2), at(3), at(5));
        Scenario read = MadeHouses.read(slab, places, List.of(-1.0, -1.0, -1.0, -1.0), 1);
        Result.Solved solved = SyntheticHouses.solved(read);
        double[] p = solved.holes().stream()
                .mapToDouble(h -> h.fanOn().orElseThrow())
                .toArray();
        assertThat(p[1] / p[3]).isCloseTo(twoOverFive, Percentage.withPercentage(1.5));
        assertThat(p[0] / p[2]).isCloseTo(oneOverThree, Percentage.withPercentage(1.5));
    }

    /** Distances count from the corner, around which the pit and its three mirror images lie. */
    private static Point at(double r) {
        return new Point(r / Math.sqrt(2), r / Math.sqrt(2));
    }
}

package slabfield.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Source;

/** A house that its readings fix so well that it is linear in what is left open, on cells far smaller than a member's. */
class EnsembleTest {
    private static final int MEMBERS = 40;
    private static Fitted fit;
    private static Ensemble ensemble;

    @BeforeAll
    static void makeOnce() throws NotFitted {
        List<Point> places =
                List.of(new Point(2.6, 3.1), new Point(4.1, 2.2), new Point(6.9, 4.8), new Point(7.4, 0.7));
        Scenario house = MadeHouses.plain(8, 6, 2e-8, 1e-6, new Point(2, 3), new Source.Pressure(-250), 0.08);
        Result.Solved solved =
                SyntheticHouses.solved(MadeHouses.read(house, places, List.of(0.0, 0.0, 0.0, 0.0), 0.05));
        List<Double> read =
                solved.holes().stream().map(h -> h.fanOn().orElseThrow()).toList();
        Scenario drawn = MadeHouses.read(house, places, read, 0.05);
        fit = HouseFit.fit(
                drawn, List.of(Unknowns.fill(drawn), Unknowns.soil(1e-6)), NoiseModel.METER_ONLY, Progress.NONE);
        ensemble = Ensemble.of(fit, MEMBERS, 1, Progress.NONE);
    }

    /** What coarse cells change is taken off, so members lie around the best values and as far apart as Laplace says. */
    @Test
    void membersLieAroundTheFit() {
        assertThat(ensemble.distanceFromLaplace()).isLessThan(0.45);
    }

    /** A linear house's members end where their first step leads: one solve to begin with, hardly another to see that it was right. */
    @Test
    void theFirstStepLeadsToTheMember() {
        assertThat((double) ensemble.solves() / MEMBERS).isLessThan(2.3);
    }
}

package slabfield.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.field.Progress;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;

/** A placement map, which leaves out parts of the slab that cannot matter, against going through every cell for every place. */
class JudgeTest {
    /** Fine fill, where much of the slab misses the target; coarse stone; a pit too weak, which lets air in; both with a drain. */
    @ParameterizedTest
    @CsvSource({"3e-9,0,-200", "2e-8,0,-5", "2e-8,1500,-200", "2e-8,0,-200"})
    void leavingOutPartsChangesNothing(double permeability, double inertial, double pressure) {
        Scenario s = Houses.on(permeability, inertial)
                .rectangle(0, 0, 12, 9)
                .barrier(0.4, 0, List.of(), 6, 0, 6, 5)
                .opening("drain", new Opening.Spot(new Point(9, 6), 0.1), new Opening.Orifice(0.002, 0.61))
                .leakance(2e-6)
                .suction("S", 2, 4, 0.15, new Source.Pressure(-200))
                .scenario();
        var question = new PlacementMap.Question(new SuctionPoint.Pit(0.15), new Source.Pressure(pressure), 0.3);
        Coring house = Coring.of(s, question, Progress.NONE).orElseThrow();
        int[] tried = house.places();
        Samples samples = house.samples(tried);
        PlacementMap map = house.map(tried, samples).orElseThrow();
        assertThat(tried.length).isGreaterThan(500);
        int partly = 0;
        for (int k = 0; k < tried.length; k += 7) {
            int p = tried[k], cell = house.places.cell(p);
            int u = house.unknown(cell);
            double[] g = new double[house.state.at().length], fall = new double[g.length];
            g[u] = 1;
            house.factor.solve(g, g);
            double q = house.fall(cell, g, fall);
            Samples.Share share = samples.at(u, g[u]);
            double inPit = -house.pit.pressure(cell, house.state.at()[u], g[u], q);
            double weakest = Coring.bounded(house.weakest(fall, share.weakest()), house.weakest(fall, 0), inPit, q);
            double covered = house.covered(fall, share.area()) - house.places.pitArea;
            assertThat(map.weakest()[p]).as("weakest").isCloseTo(weakest, within(1e-7 * Math.abs(weakest) + 1e-9));
            assertThat(map.covered()[p]).as("covered").isCloseTo(Math.max(0, covered), within(1e-9));
            assertThat(map.flow()[p]).as("flow").isCloseTo(q * share.flow(), within(1e-7 * Math.abs(q)));
            if (covered > 0 && covered < 0.99 * house.area()) partly++;
        }
        if (permeability < 1e-8) assertThat(partly).isGreaterThan(50);
    }
}

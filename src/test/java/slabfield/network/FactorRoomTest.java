package slabfield.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Source;

/** One order of elimination and one analysis serve while a pit is dragged, over a tile too. */
class FactorRoomTest {
    private static final double[][] WAY = {
        {2.7, 1}, {2.5, 4}, {2.6, 4.1}, {2.65, 2}, {2.7, 1.1}, {2.7, 1}, {2.7, 0.9}, {6, 4}
    };

    private static Scenario house(double inertial) {
        return Houses.on(1e-7, inertial)
                .rectangle(0, 0, 10, 8)
                .tile(null, List.of(), 1, 1, 9, 1, 9, 7)
                .leakance(1e-6)
                .suction(
                        "S",
                        WAY[0][0],
                        WAY[0][1],
                        0.25,
                        new Source.Fan(
                                new Source.FanCurve(List.of(0.0, 0.05), List.of(300.0, 0.0)),
                                new Source.Pipe(0.1, 6, 2, 1, 1e-6),
                                0))
                .cell(0.2)
                .scenario();
    }

    private static SlabSolver.State solve(Scenario scenario, FactorRoom room) {
        LayerGrid layer = new LayerGrid(scenario, SlabSolver.airOf(scenario));
        Devices.addDiscs(scenario, layer);
        layer.isolateDiscs();
        SlabSolver.State state = SlabSolver.State.of(
                Devices.build(scenario, layer, SlabSolver.airOf(scenario), true), Progress.NONE, Guess.NONE, room, 0);
        assertThat(state.convergence().converged()).isTrue();
        return state;
    }

    @Test
    void isLaidOnceForADrag() {
        for (double inertial : new double[] {0, 1500}) {
            FactorRoom room = FactorRoom.kept();
            for (double[] at : WAY) {
                Scenario moved = house(inertial).withSuctionPoint("S", s -> s.movedTo(new Point(at[0], at[1])));
                SlabSolver.State alone = solve(moved, FactorRoom.once()), kept = solve(moved, room);
                for (int u = 0; u < alone.at().length; u++)
                    assertThat(Math.abs(kept.at()[u] - alone.at()[u]))
                            .isLessThan(1e-8 * Math.abs(alone.at()[u]) + 1e-10);
            }
            assertThat(room.laid()).as("analyses for %d places", WAY.length).isEqualTo(1);
        }
    }

    @Test
    void isLaidAnewForAnotherTile() {
        FactorRoom room = FactorRoom.kept();
        Scenario house = house(0);
        solve(house, room);
        solve(house.withDrainTiles(List.of()), room);
        assertThat(room.laid()).isEqualTo(2);
    }

    @Test
    void theSuctionOffIsFollowedToo() {
        SolveSession session = new SolveSession();
        for (double[] at : WAY) {
            Result r = session.solve(
                    house(1500).withSuctionPoint("S", s -> s.movedTo(new Point(at[0], at[1]))),
                    SlabSolver.Extent.FULL,
                    Progress.NONE);
            assertThat(((Result.Solved) r).fanOff()).isPresent();
        }
    }
}

package slabfield.equipment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.io.ExampleScenarios;
import slabfield.model.Equipment;
import slabfield.model.FanOffer;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.network.SlabSolver;

class DrawnPowerTest {
    private static final Scenario HOUSE =
            ExampleScenarios.lesson("far-sump.json").withCellSize(0.5);
    private static final Source.FanCurve DRAWN =
            ((Source.Fan) HOUSE.suctionPoints().get(0).source()).curve();

    private static Result.Solved with(List<FanOffer> offers) {
        return (Result.Solved)
                SlabSolver.solve(HOUSE.withEquipment(new Equipment(List.of(), offers, List.of())), Progress.NONE);
    }

    private static FanOffer offer(Source.FanCurve curve, List<Double> watts) {
        return new FanOffer(
                "fan",
                curve,
                watts,
                FanOffer.STANDARD_DENSITY,
                OptionalDouble.empty(),
                FanOffer.Arrangement.SINGLE,
                true);
    }

    @Test
    void aListedFanGivesItsPowerAtTheFlowSolved() {
        Result.Solved solved = with(List.of(offer(DRAWN, List.of(20.0, 40.0, 60.0, 80.0))));
        double flow = solved.flows().exhaust(), first = DRAWN.flows().get(1);
        assertThat(flow).as("between the first two points").isBetween(0.0, first);
        assertThat(DrawnPower.of(solved)).hasValueCloseTo(20 + 20 * flow / first, within(1e-9));
    }

    @Test
    void anUnlistedFanOneWithoutPowerOrAHeldPressureGivesNone() {
        assertThat(DrawnPower.of(with(List.of()))).isEmpty();
        assertThat(DrawnPower.of(with(List.of(offer(DRAWN, List.of()))))).isEmpty();
        Scenario held = HOUSE.withSuctionPoint("S1", p -> p.drawnBy(new Source.Pressure(-100)));
        Optional<Result> solved = Optional.of(SlabSolver.solve(held, Progress.NONE));
        assertThat(DrawnPower.of((Result.Solved) solved.get())).isEmpty();
    }
}

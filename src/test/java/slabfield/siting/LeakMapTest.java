package slabfield.siting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.advice.Basements;
import slabfield.equipment.FanClasses;
import slabfield.field.Grid;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.fit.Fitted;
import slabfield.fit.HouseFit;
import slabfield.fit.NoiseModel;
import slabfield.fit.Parameter;
import slabfield.fit.Unknowns;
import slabfield.model.FlowReading;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.model.Stage;
import slabfield.model.StageKind;
import slabfield.network.Adjoint;

/** A linear house read at six holes and by its flow; a leak that is not drawn stands at (6.6, 5.4). */
class LeakMapTest {
    private static final NoiseModel NOISE = NoiseModel.METER_ONLY;
    private static final double STEP = 0.01, UNREST = 0.2, FLOW_SHARE = 0.05;
    private static final Point HIDDEN = new Point(6.625, 5.375);
    private static final double HIDDEN_LEAK = 1e-4;

    private static Scenario with(Scenario house, Point at, double conductance) {
        List<Opening> all = new ArrayList<>(house.openings());
        all.add(Basements.leak("hidden", new Opening.Spot(at, 0.05), conductance));
        return house.withOpenings(all);
    }

    /** The drawn house with readings that the true one gives, with errors of so many standard deviations. */
    private static Scenario read(Scenario truth, double errors, long seed) {
        Random random = new Random(seed);
        Result.Solved solved = Basements.solve(truth);
        List<Stage.HoleReading> holes = solved.holes().stream()
                .map(h -> new Stage.HoleReading(
                        h.id(),
                        OptionalDouble.empty(),
                        OptionalDouble.of(h.fanOn().orElseThrow() + errors * UNREST * random.nextGaussian()),
                        OptionalDouble.of(UNREST),
                        OptionalDouble.of(STEP),
                        ""))
                .toList();
        double flow = solved.flows().exhaust() * (1 + errors * FLOW_SHARE * random.nextGaussian());
        FlowReading stated = new FlowReading.Stated(flow, OptionalDouble.of(FLOW_SHARE * flow));
        Stage.SystemReading system = new Stage.SystemReading(
                "S1",
                Optional.of(stated),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                "");
        Stage stage =
                new Stage("test", StageKind.COMMUNICATION_TEST, Map.of(), Map.of(), holes, List.of(system), "", "");
        return Basements.plain().withStages(List.of(stage));
    }

    private static Fitted fit(Scenario house) throws Exception {
        List<Parameter> unknowns = List.of(Unknowns.fill(house), Unknowns.leak(house, "joint"));
        return HouseFit.fit(house, unknowns, NOISE, Progress.NONE);
    }

    private static double cost(Fitted f) {
        double sum = f.chiSquare();
        for (double d : f.deviations()) sum += d * d;
        return sum / 2;
    }

    /** The responses are those of whole solves with a small leak, whose disc is there in both. */
    @ParameterizedTest
    @CsvSource({"6.625, 5.375", "4.375, 1.625", "0.875, 7.125", "9.375, 4.125"})
    void responsesAreThoseOfWholeSolves(double x, double y) throws Exception {
        Fitted fitted = fit(read(Basements.plain(), 0, 1));
        LeakResponses responses = LeakResponses.of(fitted, Progress.NONE);
        double small = 1e-8;
        Result.Solved without = Basements.solve(with(fitted.house(), new Point(x, y), 1e-6 * small));
        Result.Solved with = Basements.solve(with(fitted.house(), new Point(x, y), small));
        int cell = responses
                .grid()
                .index(responses.grid().column(x), responses.grid().row(y));
        for (int i = 0; i < 6; i++) {
            double exact = with.holes().get(i).fanOn().orElseThrow()
                    - without.holes().get(i).fanOn().orElseThrow();
            assertThat(responses.byLeak()[i][cell] * small)
                    .as("hole %s", i)
                    .isCloseTo(exact, within(0.01 * exact + 1e-9));
        }
        double flow = with.flows().exhaust() - without.flows().exhaust();
        assertThat(responses.byLeak()[6][cell] * small).as("flow").isCloseTo(flow, within(0.01 * flow));
    }

    /** Behind a fan, a leak changes the flow and the pressure in the pit as whole solves have it. */
    @Test
    void behindAFanFlowAndPitPressureRespond() {
        Source fan =
                new Source.Fan(FanClasses.INVENTED.get(1).curve(), List.of(new Source.Pipe(0.1, 6, 3, 1.5, 1.5e-6)), 0);
        Scenario house = Basements.plain().withSuctionPoint("S1", s -> s.drawnBy(fan));
        double small = 1e-8;
        Result.Suction without =
                Basements.solve(with(house, HIDDEN, 1e-6 * small)).suctions().get(0);
        Result.Suction with =
                Basements.solve(with(house, HIDDEN, small)).suctions().get(0);
        Adjoint adjoint = Adjoint.of(house, Progress.NONE).orElseThrow();
        Grid grid = adjoint.grid();
        int cell = grid.index(grid.column(HIDDEN.x()), grid.row(HIDDEN.y()));
        double inflow = -adjoint.cellPressures()[cell] * small;
        double flow = with.flow() - without.flow(), pressure = with.pressure() - without.pressure();
        assertThat(adjoint.suctionFlowByInflow(0)[cell] * inflow).isCloseTo(flow, within(0.01 * flow));
        assertThat(adjoint.suctionPressureByInflow(0)[cell] * inflow).isCloseTo(pressure, within(0.01 * pressure));
    }

    /** The gain of a cell is that of a fit with a leak there, its strength tried in steps, all else fitted anew. */
    @ParameterizedTest
    @CsvSource({"6.625, 5.375", "5.125, 6.125", "8.125, 5.125"})
    void gainIsThatOfAFitWithTheLeak(double x, double y) throws Exception {
        Scenario house = read(with(Basements.plain(), HIDDEN, 2e-6), 0.5, 3);
        Fitted fitted = fit(house);
        LeakMap map = LeakMap.of(fitted, Progress.NONE);
        int cell = map.grid().index(map.grid().column(x), map.grid().row(y));
        double best = 0;
        for (double share = 0.5; share < 1.6; share += 0.1)
            best = Math.max(
                    best, cost(fitted) - cost(fit(with(house, new Point(x, y), share * map.conductance()[cell]))));
        assertThat(map.gain()[cell]).isGreaterThan(1).isCloseTo(best, within(0.05 * best));
    }

    @Test
    void theHiddenLeakIsFound() throws Exception {
        LeakMap map = LeakMap.of(fit(read(with(Basements.plain(), HIDDEN, HIDDEN_LEAK), 1, 5)), Progress.NONE);
        assertThat(map.readingsSay()).isTrue();
        assertThat(map.places().get(0).at().distanceTo(HIDDEN)).isLessThan(1);
        assertThat(map.region()).isLessThan(0.2 * map.area());
        double sum = 0;
        for (double s : map.share()) if (!Double.isNaN(s)) sum += s;
        assertThat(sum).isCloseTo(1, within(1e-9));
        Grid g = map.grid();
        assertThat(map.share()[g.index(g.column(HIDDEN.x()), g.row(HIDDEN.y()))])
                .isPositive();
    }

    /** Without a hidden leak the readings say nothing, save by chance. */
    @Test
    void withoutOneTheReadingsDoNotSay() throws Exception {
        int said = 0, trials = 12;
        for (int seed = 0; seed < trials; seed++)
            if (LeakMap.of(fit(read(Basements.plain(), 1, 100 + seed)), Progress.NONE)
                    .readingsSay()) said++;
        assertThat(said).isLessThanOrEqualTo(2);
    }

    /** Readings that no leak explains, because there is more vacuum than expected, give no place. */
    @Test
    void tooMuchVacuumIsNoLeak() throws Exception {
        Scenario house =
                read(Basements.plain().withOpenings(Basements.plain().openings().subList(0, 1)), 0, 1);
        LeakMap map =
                LeakMap.of(HouseFit.fit(house, List.of(Unknowns.soil(1e-8)), NOISE, Progress.NONE), Progress.NONE);
        assertThat(map.places()).isEmpty();
        assertThat(map.readingsSay()).isFalse();
    }
}

package slabfield.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static slabfield.network.Houses.at;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import slabfield.field.CellKind;
import slabfield.field.Convergence;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.law.PipeFriction;
import slabfield.model.BlockWall;
import slabfield.model.Equipment;
import slabfield.model.Gap;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Riser;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Source;

/** Each device alone, against its own law or a closed form. */
class DevicesTest {
    private static final double MU = 1.81e-5;
    private static final Source.Pressure SUCTION = new Source.Pressure(-250);
    /** So permeable that the whole layer has one pressure. */
    private static final double PLENUM = 1e-2;

    private static Opening.Spot spot(double x, double y, double radius) {
        return new Opening.Spot(new Point(x, y), radius);
    }

    /** Orifice: Q = Cd A sqrt(2 dp / rho), Cd 0.61; a 50 mm hole at 100 Pa passes 1.54369e-2 m3/s. */
    @ParameterizedTest
    @CsvSource({"0.025,10,1.22040e-3", "0.05,100,1.54369e-2", "0.1,50,4.36623e-2"})
    void spotOpeningPassesAnOrificeFlow(double diameter, double vacuum, double flow) {
        Result.Solved s = Houses.on(PLENUM, 0)
                .rectangle(0, 0, 4, 3)
                .suction("S", 1, 1, 0.15, new Source.Pressure(-vacuum))
                .opening("hole", spot(3, 2, 0.1), new Opening.Orifice(Math.PI * diameter * diameter / 4, 0.61))
                .solved();
        assertThat(s.flows().bySource().get("hole")).isCloseTo(flow, Percentage.withPercentage(0.1));
        assertThat(s.flows().roomShare().orElseThrow()).isCloseTo(1, within(1e-9));
    }

    /** Crack: 12 mu z q / w^3 + rho C q^2 / (2 w^2), C = 1.5 (Baker, Sharples and Ward 1987): 1 mm at 10 Pa. */
    @ParameterizedTest
    @CsvSource({"5e-4,10,5.7482e-5", "1e-3,10,4.5191e-4", "2e-3,10,2.9565e-3"})
    void jointPassesACrackFlowPerMetre(double width, double vacuum, double flowPerMetre) {
        Scenario house = Houses.on(PLENUM, 0)
                .rectangle(0, 0, 4, 3)
                .suction("S", 1, 1, 0.15, new Source.Pressure(-vacuum))
                .opening("joint", new Opening.Perimeter("slab 0"), new Opening.Crack(width, 0))
                .scenario();
        assertThat(Houses.solve(house).flows().bySource().get("joint"))
                .isCloseTo(14 * flowPerMetre, Percentage.withPercentage(0.3));
        Result.Solved half = Houses.solve(house.withSeal("joint", new Seal(SealState.SEALED, 0.75, false)));
        assertThat(half.flows().bySource().get("joint"))
                .isCloseTo(14 * 0.25 * flowPerMetre, Percentage.withPercentage(0.3));
    }

    /** A strip of three fills in series: the drop across each is as its length over its permeability. */
    @Test
    void fillsAlongTheFlowResistInSeries() {
        Result.Solved s = Houses.on(2e-8, 0)
                .rectangle(0, 0, 9, 1)
                .zone(3.03, 0, 6.07, 1, 2e-10)
                .drainedLine("right", 9, 0, 9, 1)
                .wall(feed())
                .outdoors(100)
                .solved();
        double whole = 3.03 / 2e-8 + 3.04 / 2e-10 + 2.93 / 2e-8;
        double flow = 100 / whole * 0.1 / MU;
        assertThat(-s.flows().bySource().get("right")).isCloseTo(flow, Percentage.withPercentage(0.01));
    }

    /** Two fills side by side, their edge on a grid line or anywhere between two: each passes air as it is broad. The ends of the
     * strip are fed by half cells, which have one fill each. */
    @ParameterizedTest
    @ValueSource(doubles = {0.3, 0.4321, 0.4679, 0.5187})
    void fillsBesideTheFlowPassAirByTheirBreadth(double breadth) {
        Result.Solved s = Houses.on(2e-8, 0)
                .rectangle(0, 0, 9, 1)
                .zone(-1, -1, 10, breadth, 2e-10)
                .drainedLine("right", 9, 0, 9, 1)
                .wall(feed())
                .outdoors(100)
                .solved();
        double flow = 100.0 / 9 * (breadth * 2e-10 + (1 - breadth) * 2e-8) * 0.1 / MU;
        assertThat(-s.flows().bySource().get("right")).isCloseTo(flow, Percentage.withPercentage(0.4));
    }

    /** A gap as broad as drawn, not as whole cells: each further centimetre lets a little more air past, about as much as the last. */
    @Test
    void aGapInAPermeableBarrierIsAsBroadAsDrawn() {
        double[] flows = IntStream.range(0, 12)
                .mapToDouble(k -> -Houses.on(2e-8, 0)
                        .rectangle(0, 0, 9, 1)
                        .barrier(0.3, 1e-13, List.of(new Gap(new Point(4, 0.5), 0.34 + 0.01 * k)), 4, 0, 4, 1)
                        .drainedLine("right", 9, 0, 9, 1)
                        .wall(feed())
                        .outdoors(100)
                        .solved()
                        .flows()
                        .bySource()
                        .get("right"))
                .toArray();
        double mean = (flows[11] - flows[0]) / 11;
        for (int k = 1; k < flows.length; k++)
            assertThat(flows[k] - flows[k - 1]).isBetween(mean / 2, 2 * mean);
    }

    private static BlockWall feed() {
        return new BlockWall(
                "feed",
                Houses.path(0, 0, 0, 1),
                1,
                Seal.of(SealState.SEALED),
                0,
                1e4,
                0,
                1e4,
                0,
                false,
                Optional.empty());
    }

    /** A permeable barrier, wider or narrower than a cell, on grid lines or between them, resists by its true width. */
    @ParameterizedTest
    @CsvSource({"4.0,0.4", "4.03,0.4", "4.0,0.06", "4.03,0.06", "4.05,0.02"})
    void permeableBarrierResistsByItsTrueWidth(double x, double width) {
        Result.Solved s = Houses.on(2e-8, 0)
                .rectangle(0, 0, 9, 1)
                .barrier(width, 1e-11, List.of(), x, 0, x, 1)
                .drainedLine("right", 9, 0, 9, 1)
                .wall(feed())
                .outdoors(100)
                .solved();
        double flow = 100 / ((9 - width) / 2e-8 + width / 1e-11) * 0.1 / MU;
        assertThat(-s.flows().bySource().get("right")).isCloseTo(flow, Percentage.withPercentage(0.05));
    }

    /** An impermeable one lets nothing past, however it lies on the grid, thin or wide, level or aslant. */
    @ParameterizedTest
    @CsvSource({
        "0.4,4,4",
        "0.4,4.05,4.05",
        "0.02,4,4",
        "0.02,4.05,4.05",
        "0.02,3.2,4.9",
        "0.3,3.2,4.9",
        "0.05,4.031,4.031"
    })
    void impermeableBarrierLetsNothingPast(double width, double xLow, double xHigh) {
        Result.Solved s = Houses.on(2e-8, 0)
                .rectangle(0, 0, 9, 3)
                .barrier(width, 0, List.of(), xLow, -0.5, xHigh, 3.5)
                .suction("S", 1, 1, 0.15, SUCTION)
                .leakance(1e-6)
                .solved();
        assertThat(at(s, 8, 1.5)).isCloseTo(0, within(1e-15));
        assertThat(at(s, 2, 1.5)).isLessThan(-50);
        assertThat(s.unreached()).isEmpty();
    }

    @Test
    void doorwayThroughABarrierLetsAirPast() {
        Houses shut = Houses.on(2e-8, 0).rectangle(0, 0, 9, 4).leakance(1e-7).suction("S", 1, 1, 0.15, SUCTION);
        Result.Solved open = Houses.on(2e-8, 0)
                .rectangle(0, 0, 9, 4)
                .leakance(1e-7)
                .suction("S", 1, 1, 0.15, SUCTION)
                .barrier(0.4, 0, List.of(new Gap(new Point(5, 2), 0.9)), 5, 0, 5, 4)
                .solved();
        Result.Solved none = shut.solved();
        assertThat(at(open, 8, 2)).isBetween(at(none, 8, 2), 0.8 * at(none, 8, 2));
        // through the throat goes what leaks in beyond it
        assertThat(open.flows().exhaust()).isLessThan(none.flows().exhaust());
    }

    /** Far side without any leak: it is named, has no pressure, and the near side is not disturbed. */
    @Test
    void partThatNoBoundaryReachesIsNamed() {
        Result.Solved s = Houses.on(2e-8, 0)
                .rectangle(0, 0, 9, 3)
                .barrier(0.4, 0, List.of(), 4, 0, 4, 3)
                .suction("S", 1, 1, 0.15, SUCTION)
                .hole("T", 8, 1)
                .solved();
        assertThat(s.unreached()).hasSize(1);
        assertThat(s.unreached().get(0).area()).isCloseTo(4.8 * 3, within(1e-6));
        assertThat(s.holes().get(0).fanOn()).isEmpty();
        assertThat(s.field().kind()[s.field().grid().index(85, 10)]).isEqualTo(CellKind.UNREACHED);
        assertThat(s.coverage().meeting())
                .isCloseTo((3.8 * 3 - Math.PI * 0.0225) / (8.6 * 3 - Math.PI * 0.0225), within(1e-3));
    }

    @Test
    void fixedFlowFromASealedLayerIsRefusedWithAReason() {
        Result r = SlabSolver.solve(
                Houses.on(2e-8, 0)
                        .rectangle(0, 0, 4, 3)
                        .suction("S", 1, 1, 0.15, new Source.Flow(0.01))
                        .scenario(),
                Progress.NONE);
        assertThat(r).isInstanceOf(Result.Unsolved.class);
        assertThat(r.convergence().ending()).isEqualTo(Convergence.Ending.SINGULAR);
        assertThat(((Result.Unsolved) r).reason()).contains("no air can come");
    }

    @Test
    void aSolveCanBeCancelled() {
        Result r = SlabSolver.solve(
                Houses.on(2e-8, 0)
                        .rectangle(0, 0, 4, 3)
                        .leakance(1e-6)
                        .suction("S", 1, 1, 0.15, SUCTION)
                        .scenario(),
                new Progress() {
                    @Override
                    public boolean isCancelled() {
                        return true;
                    }
                });
        assertThat(r.convergence().ending()).isEqualTo(Convergence.Ending.CANCELLED);
    }

    /** Pipe in three stretches of one diameter is one pipe. */
    @Test
    void stretchesOfPipeAddUp() {
        Source.FanCurve curve = new Source.FanCurve(List.of(0.0, 0.09), List.of(350.0, 0.0));
        Source one = new Source.Fan(curve, new Source.Pipe(0.08, 12, 3, 1.5, 1.5e-6), -1);
        Source three = new Source.Fan(
                curve,
                List.of(
                        new Source.Pipe(0.08, 5, 0, 0.5, 1.5e-6),
                        new Source.Pipe(0.08, 3, 3, 0, 1.5e-6),
                        new Source.Pipe(0.08, 4, 0, 1, 1.5e-6)),
                -1);
        Result.Suction a = piped(one), b = piped(three);
        assertThat(b.flow()).isCloseTo(a.flow(), Percentage.withPercentage(1e-6));
        assertThat(b.pressure()).isCloseTo(a.pressure(), Percentage.withPercentage(1e-6));
    }

    private static Result.Suction piped(Source source) {
        return Houses.on(2e-8, 0)
                .rectangle(0, 0, 6, 4)
                .leakance(1e-6)
                .suction("S", 2, 2, 0.15, source)
                .solved()
                .suctions()
                .get(0);
    }

    /**
     * Two mirrored points on a riser draw alike, and from pit to discharge every pressure is accounted for:
     * pit - branch loss(q) + rise(2q) - riser loss(2q) = discharge.
     */
    @Test
    void branchesMeetAtTheFootOfTheirRiser() {
        Result.Solved s = Houses.solve(branched(0, 0));
        Result.Suction a = s.suctions().get(0), b = s.suctions().get(1);
        assertThat(a.flow()).isCloseTo(b.flow(), Percentage.withPercentage(1e-6));
        double q = a.flow();
        double branch = PipeFriction.pressureLoss(q, 0.05, 4, 2, 0.5, 1.5e-6, MU, 1.204);
        double riser = PipeFriction.pressureLoss(2 * q, 0.1, 8, 3, 1, 1.5e-6, MU, 1.204);
        assertThat(a.pressure() - branch + (350 - 350 / 0.09 * 2 * q) - riser).isCloseTo(-2, within(1e-5));
    }

    /** A valve in one branch takes flow from it, gives flow to the other and deepens the vacuum at the foot of the riser. */
    @Test
    void aBalanceValveShiftsTheVacuum() {
        Result.Solved even = Houses.solve(branched(0, 0)), uneven = Houses.solve(branched(20, 0));
        assertThat(uneven.suctions().get(0).flow())
                .isLessThan(0.9 * even.suctions().get(0).flow());
        assertThat(uneven.suctions().get(1).flow())
                .isGreaterThan(even.suctions().get(1).flow());
        assertThat(footBehind(uneven.suctions().get(1)))
                .isLessThan(footBehind(even.suctions().get(1)) - 1);
    }

    private static double footBehind(Result.Suction point) {
        return point.pressure() - PipeFriction.pressureLoss(point.flow(), 0.05, 4, 2, 0.5, 1.5e-6, MU, 1.204);
    }

    private static Scenario branched(double valveA, double valveB) {
        Source.Pipe pipe = new Source.Pipe(0.05, 4, 2, 0.5, 1.5e-6);
        Riser riser = new Riser(
                "R",
                new Source.FanCurve(List.of(0.0, 0.09), List.of(350.0, 0.0)),
                List.of(new Source.Pipe(0.1, 8, 3, 1, 1.5e-6)),
                -2);
        return Houses.on(2e-8, 0)
                .rectangle(0, 0, 9, 4)
                .leakance(1e-6)
                .suction("A", 2, 2, 0.15, new Source.Branch("R", List.of(pipe.withValve(valveA))))
                .suction("B", 7, 2, 0.15, new Source.Branch("R", List.of(pipe.withValve(valveB))))
                .scenario()
                .withEquipment(Equipment.NONE.withRisers(List.of(riser)));
    }

    /** Fan, pipe and slab: where 350 (1 - (Q/0.09)^2) meets 10 m of 4 in pipe with 4 ells and the leaky round slab. */
    @Test
    void fanPipeAndSlabMeetAtTheOperatingPoint() {
        List<Double> flows = new java.util.ArrayList<>(), rises = new java.util.ArrayList<>();
        for (int i = 0; i <= 90; i++) {
            flows.add(i * 1e-3);
            rises.add(350 * (1 - Math.pow(i / 90.0, 2)));
        }
        Source fan = new Source.Fan(
                new Source.FanCurve(flows, rises),
                new Source.Pipe(0.102260, 10, 4, Source.Pipe.ENTRANCE_AND_EXIT, 1.5e-6),
                0);
        Result.Solved s = Houses.on(2e-8, 0)
                .round(6)
                .leakance(1e-6)
                .suction("S", 0, 0, 0.15, fan)
                .solved();
        assertThat(s.suctions().get(0).flow()).isCloseTo(2.259464e-2, Percentage.withPercentage(1));
        assertThat(-s.suctions().get(0).pressure()).isCloseTo(294.969, Percentage.withPercentage(1));
    }

    /**
     * A tile 20 m long that collects 40 cfm evenly: friction from the far end is f L / (3 D) velocity heads, 16.18 Pa.
     * Tight soil all around under one pressure makes the inflow even; the momentum term is left out by definition.
     */
    @Test
    void tileThatCollectsEvenlyLosesAThirdOfItsLengthInFriction() {
        double flow = 40 * 4.719474432e-4;

        Result.Solved s = Houses.on(1e-11, 0)
                .rectangle(0, 0, 20, 2)
                .tile(null, List.of(), 0, 1, 20, 1)
                .onTile("S", 0, 20, 1, new Source.Flow(flow))
                .drainedLine("low", 0, 0, 20, 0)
                .drainedLine("high", 0, 2, 20, 2)
                .solved();
        // in the soil the vacuum falls evenly from the tile to the drained edge 1 m away; read 0.05 m from the tile
        double near = at(s, 19.95, 1.05), far = at(s, 0.05, 1.05);
        double friction = (far - near) / 0.95;
        assertThat(friction).isCloseTo(16.18, Percentage.withPercentage(2));
        Result.Solved broken = Houses.on(1e-11, 0)
                .rectangle(0, 0, 20, 2)
                .tile(null, List.of(new Gap(new Point(10, 1), 0.5)), 0, 1, 20, 1)
                .onTile("S", 0, 20, 1, new Source.Pressure(-250))
                .drainedLine("low", 0, 0, 20, 0)
                .drainedLine("high", 0, 2, 20, 2)
                .solved();
        assertThat(at(broken, 15, 1.05)).isLessThan(-200);
        assertThat(at(broken, 2, 1.05)).isBetween(-12.5, 0.0);
    }

    /** Cores of a wall: joint, tops and faces in series and parallel around one plenum. */
    @Test
    void blockWallLeaksThroughItsTopsAndFaces() {
        BlockWall wall = new BlockWall(
                "north",
                Houses.path(0, 3, 4, 3),
                2,
                new Seal(SealState.SEALED, 1, false),
                0.09,
                1e-4,
                2e-5,
                1e-5,
                0,
                true,
                Optional.empty());
        Result.Solved s = Houses.on(PLENUM, 0)
                .rectangle(0, 0, 4, 3)
                .wall(wall)
                .suction("S", 1, 1, 0.15, new Source.Pressure(-50))
                .outdoors(5)
                .solved();
        double joint = 1e-4 * 4, in = 2e-5 * 8, out = 1e-5 * 8;
        double core = (joint * -50 + out * 5) / (joint + in + out);
        assertThat(s.flows().bySource().get("north: inside face"))
                .isCloseTo(-core * in, Percentage.withPercentage(0.1));
        assertThat(s.flows().bySource().get("north: outside face"))
                .isCloseTo((5 - core) * out, Percentage.withPercentage(0.1));
        assertThat(s.flows().fromOutdoors()).isCloseTo((5 - core) * out, Percentage.withPercentage(0.1));
        Result.Solved open = Houses.solve(Houses.on(PLENUM, 0)
                .rectangle(0, 0, 4, 3)
                .wall(wall)
                .suction("S", 1, 1, 0.15, new Source.Pressure(-50))
                .scenario()
                .withTops("north", Seal.of(SealState.OPEN)));
        // with fully open tops the cores stand at the room's pressure and the joint alone resists
        assertThat(open.flows().fromRoom()).isCloseTo(joint * 50, Percentage.withPercentage(1));
    }

    @Test
    void wallsThatShareAnEndAreJoinedAtTheCorner() {
        BlockWall north = new BlockWall(
                "north",
                Houses.path(0, 3, 4, 3),
                2,
                Seal.of(SealState.OPEN),
                0.09,
                0,
                0,
                0,
                1e-3,
                true,
                Optional.empty());
        BlockWall east = new BlockWall(
                "east",
                Houses.path(4, 3, 4, 0),
                2,
                Seal.of(SealState.OPEN),
                0,
                1e-4,
                0,
                0,
                1e-3,
                true,
                Optional.empty());
        Result.Solved joined = Houses.on(PLENUM, 0)
                .rectangle(0, 0, 4, 3)
                .wall(north)
                .wall(east)
                .suction("S", 1, 1, 0.15, new Source.Pressure(-50))
                .solved();
        assertThat(joined.flows().bySource().get("north: block tops")).isGreaterThan(1e-4);
    }

    @Test
    void sumpOnATileLetsTheRoomInThroughTheTile() {
        Result.Solved s = Houses.on(1e-11, 0)
                .rectangle(0, 0, 10, 8)
                .tile("sump", List.of(), 1, 1, 9, 1, 9, 7)
                .opening("sump", spot(9, 7, 0.23), new Opening.Orifice(0.02, 0.61))
                .onTile("S", 0, 1, 1, SUCTION)
                .leakance(1e-9)
                .solved();
        assertThat(s.flows().bySource().get("sump") / s.flows().exhaust()).isGreaterThan(0.99);
        Result.Solved shut = Houses.solve(s.scenario().withSeal("sump", new Seal(SealState.SEALED, 1, false)));
        assertThat(shut.flows().exhaust()).isLessThan(0.01 * s.flows().exhaust());
        assertThat(shut.coverage().weakest()).isGreaterThan(s.coverage().weakest());
    }

    @Test
    void soilPushesIntoTheRoomWhenTheFanIsOff() {
        Result.Solved s = Houses.on(2e-8, 0)
                .rectangle(0, 0, 10, 8)
                .leakance(1e-6)
                .outdoors(3)
                .opening("hole", spot(5, 4, 0.05), new Opening.Orifice(1e-4, 0.61))
                .suction("S", 1, 1, 0.15, SUCTION)
                .hole("T", 9, 7)
                .solved();
        Result.Hole t = s.holes().get(0);
        assertThat(t.fanOff().orElseThrow()).isBetween(0.5, 3.0);
        assertThat(t.fanOn().orElseThrow()).isLessThan(-50);
    }
}

package slabfield.diagnosis;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.fit.Fitted;
import slabfield.fit.NoiseModel;
import slabfield.fit.Observation;
import slabfield.model.BlockWall;
import slabfield.model.Opening;
import slabfield.model.Plan;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Stage;
import slabfield.model.SuctionPoint;
import slabfield.model.TestHole;
import slabfield.network.SlabSolver;
import slabfield.readings.MeasuredFlow;
import slabfield.readings.Noise;

/**
 * Looks for the check whose outcome would tell two fitted houses apart. Each check is played through in both; its worth is
 * the difference between the two outcomes over the noise of the reading. The cheapest that is worth enough is taken, else
 * the one that is worth most.
 */
final class NextChecks {
    private static final double LEVEL = 0.5;
    private static final int ALONG_SIDE = 5;
    /** No flow in a pipe is told better than this; an assumption [m3/s]. */
    private static final double LEAST_FLOW_ERROR = 5e-4;

    /** Difference of the pressures outdoors from which two houses differ by how far they are depressurized [Pa]; a choice. */
    private static final double DEPRESSURIZED = 5;
    /** By which wind moves a pressure outdoors while it is read [Pa]; common practice. */
    private static final double WIND = 1.5;

    private final Scenario house;
    private final Optional<Stage> last;
    private final Scenario first;
    private final Scenario second;
    private final NoiseModel noise;
    private final List<NextCheck> checks = new ArrayList<>();

    private NextChecks(Scenario house, Fitted first, Fitted second) {
        this.house = house;
        this.last = house.stages().isEmpty()
                ? Optional.empty()
                : Optional.of(house.stages().get(house.stages().size() - 1));
        this.first = during(first.house());
        this.second = during(second.house());
        this.noise = first.noise();
    }

    private Scenario during(Scenario fitted) {
        return last.map(s -> fitted.during(fitted.stage(s.id()).orElseThrow())).orElse(fitted);
    }

    static Optional<NextCheck> between(Scenario house, Fitted first, Fitted second) {
        NextChecks n = new NextChecks(house, first, second);
        n.readings();
        n.depressurization();
        n.covers();
        n.secondLevel();
        n.drill();
        Optional<NextCheck> cheapest = n.checks.stream()
                .filter(NextCheck::clear)
                .min(Comparator.comparing(NextCheck::effort).thenComparing(c -> -c.separation()));
        return cheapest.or(() -> n.checks.stream().max(Comparator.comparingDouble(NextCheck::separation)));
    }

    /** Both houses after a change, solved; empty where one has no solution. */
    private Optional<Result.Solved[]> both(UnaryOperator<Scenario> change) {
        Result[] both = Stream.of(first, second)
                .parallel()
                .map(h -> SlabSolver.solve(change.apply(h), Progress.NONE))
                .toArray(Result[]::new);
        return both[0] instanceof Result.Solved a && both[1] instanceof Result.Solved b
                ? Optional.of(new Result.Solved[] {a, b})
                : Optional.empty();
    }

    /** What could be read as the house stands and was not. */
    private void readings() {
        Optional<Result.Solved[]> solved = both(h -> h);
        if (solved.isEmpty()) return;
        for (SuctionPoint s : house.suctionPoints()) {
            boolean flow = last.stream()
                    .flatMap(l -> l.systems().stream())
                    .anyMatch(r ->
                            r.suctionPoint().equals(s.id()) && r.flowReading().isPresent());
            boolean suction = last.stream()
                    .flatMap(l -> l.systems().stream())
                    .anyMatch(
                            r -> r.suctionPoint().equals(s.id()) && r.suction().isPresent());
            if (!flow)
                add(
                        NextCheck.Effort.READ_FLOW,
                        "Measure the flow at \"" + s.id() + "\".",
                        solved.get(),
                        Observation.What.FLOW,
                        s.id());
            if (!suction)
                add(
                        NextCheck.Effort.READ_SUCTION,
                        "Read the pressure in the pit of \"" + s.id() + "\".",
                        solved.get(),
                        Observation.What.RISER,
                        s.id());
        }
        for (TestHole h : house.testHoles()) {
            Optional<Stage.HoleReading> read = last.stream()
                    .flatMap(l -> l.holes().stream())
                    .filter(r -> r.hole().equals(h.id()))
                    .findFirst();
            if (read.isEmpty() || read.get().fanOn().isEmpty())
                add(
                        NextCheck.Effort.READ_UNREAD_HOLE,
                        "Read hole \"" + h.id() + "\" with the fan on and off.",
                        solved.get(),
                        Observation.What.DIFFERENCE,
                        h.id());
            if ((read.isEmpty() || read.get().fanOff().isEmpty()) && !depressurizationCompetes())
                add(
                        NextCheck.Effort.READ_FAN_OFF,
                        "Read hole \"" + h.id() + "\" with the fan off.",
                        solved.get(),
                        Observation.What.FAN_OFF,
                        h.id());
        }
    }

    private boolean depressurizationCompetes() {
        return Math.abs(first.outdoorPressure() - second.outdoorPressure()) >= DEPRESSURIZED;
    }

    /**
     * With a door to outdoors open or the house's exhausts off, the basement is at the pressure outdoors: what the holes show less
     * then with the fan off is the house's doing, and not a meter's. Where little of it comes through the soil, only the pressure
     * outdoors itself tells. Common practice.
     */
    private void depressurization() {
        if (!depressurizationCompetes()) return;
        Optional<Result.Solved[]> closed = both(h -> h), open = both(h -> h.withOutdoorPressure(0));
        for (TestHole hole : closed.isEmpty() || open.isEmpty() ? List.<TestHole>of() : house.testHoles()) {
            OptionalDouble a = change(closed.get()[0], open.get()[0], hole.id()),
                    b = change(closed.get()[1], open.get()[1], hole.id());
            if (a.isPresent() && b.isPresent())
                told(
                        NextCheck.Effort.CHANGE_THE_HOUSE,
                        "Read hole \"" + hole.id()
                                + "\" with the fan off, then again with a door to outdoors open or the"
                                + " house's exhausts turned off.",
                        "difference of both at \"" + hole.id() + "\"",
                        a.getAsDouble(),
                        b.getAsDouble(),
                        Math.sqrt(2) * Noise.ofOrdinaryReading());
        }
        told(
                NextCheck.Effort.READ_OUTDOORS,
                "Read the pressure outdoors against the basement with a hose through a window, doors and exhausts as they were"
                        + " during the test.",
                "pressure outdoors at floor level",
                first.outdoorPressure(),
                second.outdoorPressure(),
                Math.hypot(WIND, Noise.ofOrdinaryReading()));
    }

    private static OptionalDouble change(Result.Solved closed, Result.Solved open, String hole) {
        OptionalDouble a = Forecast.of(closed, Observation.What.FAN_OFF, hole),
                b = Forecast.of(open, Observation.What.FAN_OFF, hole);
        return a.isEmpty() || b.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(a.getAsDouble() - b.getAsDouble());
    }

    private void told(NextCheck.Effort effort, String words, String reading, double p, double q, double error) {
        checks.add(new NextCheck(effort, words, reading, p, q, false, Math.abs(p - q) / error));
    }

    private void add(
            NextCheck.Effort effort, String words, Result.Solved[] solved, Observation.What what, String place) {
        OptionalDouble a = Forecast.of(solved[0], what, place), b = Forecast.of(solved[1], what, place);
        if (a.isEmpty() || b.isEmpty()) return;
        double p = a.getAsDouble(), q = b.getAsDouble(), size = (Math.abs(p) + Math.abs(q)) / 2;
        boolean flow = what == Observation.What.FLOW;
        double meter = flow
                ? Math.max(MeasuredFlow.ASSUMED_SHARE * size, LEAST_FLOW_ERROR)
                : Noise.ofOrdinaryReading() * (what == Observation.What.DIFFERENCE ? Math.sqrt(2) : 1);
        double strongest = (solved[0].strongest() + solved[1].strongest()) / 2;
        double share = what == Observation.What.DIFFERENCE ? noise.shareAt(size, strongest) : noise.share(what);
        double error = Math.hypot(meter, share * size);
        String reading = flow ? "flow at \"" + place + "\"" : what.words() + " at \"" + place + "\"";
        checks.add(new NextCheck(effort, words, reading, p, q, flow, Math.abs(p - q) / error));
    }

    /** Everything that is read as soon as something is changed for a while. */
    private void all(NextCheck.Effort effort, String words, UnaryOperator<Scenario> change) {
        Optional<Result.Solved[]> solved = both(change);
        if (solved.isEmpty()) return;
        for (SuctionPoint s : house.suctionPoints()) add(effort, words, solved.get(), Observation.What.FLOW, s.id());
        for (TestHole h : house.testHoles()) add(effort, words, solved.get(), Observation.What.DIFFERENCE, h.id());
    }

    private void covers() {
        Seal cover = Seal.of(SealState.COVERED);
        for (Opening o : house.openings())
            if (o.seal().fraction() < cover.fraction())
                all(
                        NextCheck.Effort.COVER_FOR_A_WHILE,
                        "Cover \"" + o.id() + "\" for a while and read flow and holes again.",
                        h -> h.withSeal(o.id(), cover));
        if (!house.blockWalls().isEmpty())
            all(
                    NextCheck.Effort.COVER_FOR_A_WHILE,
                    "Cover the tops of the block walls for a while and read flow and holes again.",
                    h -> h.withBlockWalls(
                            h.blockWalls().stream().map(w -> covered(w, cover)).toList()));
    }

    private static BlockWall covered(BlockWall wall, Seal cover) {
        return wall.tops().fraction() < cover.fraction() ? wall.with(cover) : wall;
    }

    private void secondLevel() {
        all(
                NextCheck.Effort.SECOND_SUCTION_LEVEL,
                "Read everything again with the suction at half its pressure.",
                h -> h.withSuctionPoints(h.suctionPoints().stream()
                        .map(s -> s.drawnBy(Changes.slower(s.source(), LEVEL)))
                        .toList()));
    }

    /** A hole at each of a grid of places where drilling is allowed. */
    private void drill() {
        DoubleSummaryStatistics x = new DoubleSummaryStatistics(), y = new DoubleSummaryStatistics();
        house.slabs().stream().flatMap(s -> s.outline().stream()).forEach(p -> {
            x.accept(p.x());
            y.accept(p.y());
        });
        Map<String, Point> places = new TreeMap<>();
        for (int i = 0; i < ALONG_SIDE; i++)
            for (int j = 0; j < ALONG_SIDE; j++) {
                Point at = new Point(
                        x.getMin() + (i + 0.5) / ALONG_SIDE * (x.getMax() - x.getMin()),
                        y.getMin() + (j + 0.5) / ALONG_SIDE * (y.getMax() - y.getMin()));
                if (free(at)) places.put(String.format(Locale.ROOT, "x = %.1f m, y = %.1f m", at.x(), at.y()), at);
            }
        List<TestHole> holes = new ArrayList<>(house.testHoles());
        places.forEach((name, at) -> holes.add(new TestHole(name, at, "")));
        both(h -> h.withTestHoles(holes))
                .ifPresent(solved -> places.keySet()
                        .forEach(name -> add(
                                NextCheck.Effort.DRILL_HOLE,
                                "Drill a hole at " + name + " (locate what is buried first) and read it with the fan on"
                                        + " and off.",
                                solved,
                                Observation.What.DIFFERENCE,
                                name)));
    }

    private boolean free(Point at) {
        Plan plan = house.plan();
        return house.hasLayerAt(at)
                && plan.mayDrill(at)
                && house.testHoles().stream().allMatch(h -> h.at().distanceTo(at) > 0.5)
                && house.suctionPoints().stream()
                        .allMatch(s -> s.at().distanceTo(at) > s.pit().radius() + 0.3);
    }
}

package slabfield.readings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.field.Result;
import slabfield.law.AirState;
import slabfield.model.Fill;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.model.Stage;
import slabfield.model.SuctionPoint;
import slabfield.model.TestHole;

/**
 * Looks at readings as they are entered for what physics does not allow or makes unlikely. Nothing is refused: each finding
 * says what to look at. Without a prediction the checks that need one are left out.
 */
public final class ReadingChecks {
    /** One inch of water in pascals: a reading in the wrong unit is off by this factor. */
    static final double UNIT_FACTOR = 249.08891;
    /** Factor within which a corrected value must fit to be named. */
    private static final double FITS = 4;
    /** Factor beyond which a far hole is much stronger than a near one. */
    private static final double MUCH_STRONGER = 2;
    /** Standard errors that a difference must have to count. */
    private static final double CLEAR = 3;

    private final Scenario scenario;
    private final Stage stage;
    private final Optional<Result.Solved> solved;
    private final List<Finding> found = new ArrayList<>();

    private ReadingChecks(Scenario scenario, Stage stage, Optional<Result.Solved> solved) {
        this.scenario = scenario.during(stage);
        this.stage = stage;
        this.solved = solved;
    }

    /**
     * Checks one stage.
     *
     * @param scenario as drawn, with the other stages
     * @param stage of the scenario, or as it would be with new readings
     * @param solved prediction for {@code scenario.during(stage)}, where there is one
     * @return in the order of holes and then of {@link Finding.Kind}
     */
    public static List<Finding> of(Scenario scenario, Stage stage, Optional<Result.Solved> solved) {
        ReadingChecks checks = new ReadingChecks(scenario, stage, solved);
        stage.holes().forEach(checks::hole);
        checks.farAgainstNear();
        before(scenario, stage).ifPresent(checks::against);
        checks.flows();
        return List.copyOf(checks.found);
    }

    private void add(Finding.Kind kind, String where, String sentence, Object... values) {
        found.add(new Finding(kind, where, String.format(Locale.ROOT, sentence, values)));
    }

    private void hole(Stage.HoleReading r) {
        if (r.fanOn().isEmpty()) return;
        double on = r.fanOn().getAsDouble();
        boolean slipped = unit(r) || sign(r);
        OptionalDouble source = strongest();
        if (!slipped && source.isPresent() && drop(r) < source.getAsDouble() - CLEAR * error(r))
            add(
                    Finding.Kind.STRONGER_THAN_SOURCE,
                    r.hole(),
                    "Hole \"%s\" reads %.1f Pa, stronger than any riser (%.1f Pa): no hole can. Check units and hoses, and"
                            + " look for a second source of suction.",
                    r.hole(),
                    on,
                    source.getAsDouble());
        if (!slipped && r.change().isPresent()) pair(r, r.change().getAsDouble());
        settled(r);
    }

    /** Fan on minus fan off where both were read, else the reading with the fan on. */
    private static double drop(Stage.HoleReading r) {
        return r.change().orElse(r.fanOn().orElse(Double.NaN));
    }

    private static double error(Stage.HoleReading r) {
        return r.change().isPresent() ? Noise.ofChange(r) : Noise.of(r);
    }

    private OptionalDouble predictedDrop(String hole) {
        Optional<Result.Hole> h = solved.flatMap(s -> s.hole(hole));
        if (h.isEmpty() || h.get().fanOn().isEmpty()) return OptionalDouble.empty();
        return OptionalDouble.of(
                h.get().fanOn().getAsDouble() - h.get().fanOff().orElse(0));
    }

    private boolean unit(Stage.HoleReading r) {
        double on = drop(r);
        OptionalDouble expected = predictedDrop(r.hole());
        if (expected.isEmpty() || Math.abs(expected.getAsDouble()) < 1) return false;
        double ratio = Math.abs(on / expected.getAsDouble());
        boolean small = fits(ratio * UNIT_FACTOR) && Math.abs(on) < 1.5, large = fits(ratio / UNIT_FACTOR);
        if (small)
            add(
                    Finding.Kind.UNIT_SLIP,
                    r.hole(),
                    "Hole \"%s\" reads %s Pa where about %.0f Pa are expected: was %s read in inches of water? That would be"
                            + " %.1f Pa. Enter it with its unit.",
                    r.hole(),
                    shown(on),
                    expected.getAsDouble(),
                    shown(on),
                    on * UNIT_FACTOR);
        if (large)
            add(
                    Finding.Kind.UNIT_SLIP,
                    r.hole(),
                    "Hole \"%s\" reads %.0f Pa where about %.1f Pa are expected: were pascals entered as inches of water?"
                            + " That would be %.1f Pa. Enter it with its unit.",
                    r.hole(),
                    on,
                    expected.getAsDouble(),
                    on / UNIT_FACTOR);
        return small || large;
    }

    private static boolean fits(double ratio) {
        return ratio < FITS && ratio > 1 / FITS;
    }

    private static String shown(double value) {
        return String.format(Locale.ROOT, Math.abs(value) < 0.1 ? "%.3f" : "%.2f", value);
    }

    private boolean sign(Stage.HoleReading r) {
        OptionalDouble expected = predictedDrop(r.hole());
        if (expected.isEmpty()) return false;
        double drop = drop(r), e = expected.getAsDouble();
        boolean slipped =
                drop > CLEAR * error(r) && e < -CLEAR * error(r) && drop > Math.abs(e) / 2 && drop < Math.abs(e) * 2;
        if (slipped)
            add(
                    Finding.Kind.SIGN_SLIP,
                    r.hole(),
                    "Hole \"%s\" reads %.1f Pa above the room where %.1f Pa are expected: is the sign missing, or are the hoses"
                            + " swapped? Vacuum is entered below zero.",
                    r.hole(),
                    drop,
                    e);
        return slipped;
    }

    private void pair(Stage.HoleReading r, double change) {
        if (change > CLEAR * Noise.ofChange(r))
            add(
                    Finding.Kind.RISES_WITH_FAN,
                    r.hole(),
                    "Hole \"%s\" reads higher with the fan on than off: hoses may be swapped, or a test vacuum may be blowing"
                            + " into the room.",
                    r.hole());
        OptionalDouble expected = predictedDrop(r.hole());
        boolean nothingExpected = expected.isPresent() && Math.abs(expected.getAsDouble()) < CLEAR * Noise.ofChange(r);
        if (Math.abs(change) <= r.meterStep().orElse(Noise.ASSUMED_STEP) / 2 && !nothingExpected)
            add(
                    Finding.Kind.ON_EQUALS_OFF,
                    r.hole(),
                    "Hole \"%s\" reads the same with the fan on and off: check that the hole is open to the layer and the hose"
                            + " is on the right port.",
                    r.hole());
    }

    private void settled(Stage.HoleReading r) {
        Optional<Point> at = place(r.hole());
        if (r.waited().isEmpty() || at.isEmpty()) return;
        Fill fill = scenario.layer().fillAt(at.get());
        double distance = distance(at.get()), time = SettlingTime.of(scenario, fill, distance);
        if (r.waited().getAsDouble() < time)
            add(
                    Finding.Kind.NOT_SETTLED,
                    r.hole(),
                    "Hole \"%s\" was read %s after switching on, and %.1f m of %s take about %s to settle (air-filled"
                            + " porosity x distance^2 x viscosity / (permeability x pressure)). Wait, and read again.",
                    r.hole(),
                    duration(r.waited().getAsDouble()),
                    distance,
                    fill.word().words(),
                    duration(time));
    }

    private static String duration(double seconds) {
        if (seconds < 90) return String.format(Locale.ROOT, "%.0f s", seconds);
        return seconds < 5400
                ? String.format(Locale.ROOT, "%.0f min", seconds / 60)
                : String.format(Locale.ROOT, "%.1f h", seconds / 3600);
    }

    /** Strongest suction that was read or is held, as the most negative pressure [Pa]; empty where none is known. */
    private OptionalDouble strongest() {
        OptionalDouble read = stage.systems().stream()
                .flatMapToDouble(s -> s.suction().stream())
                .min();
        List<Source> sources =
                scenario.suctionPoints().stream().map(SuctionPoint::source).toList();
        boolean allHeld = !sources.isEmpty() && sources.stream().allMatch(Source.Pressure.class::isInstance);
        OptionalDouble held = allHeld
                ? sources.stream()
                        .mapToDouble(s -> ((Source.Pressure) s).pressure())
                        .min()
                : OptionalDouble.empty();
        return read.isPresent() ? read : held;
    }

    private void farAgainstNear() {
        List<Stage.HoleReading> holes = stage.holes().stream()
                .filter(r -> r.fanOn().isPresent() && place(r.hole()).isPresent())
                .filter(r -> found.stream().noneMatch(f -> f.where().equals(r.hole())))
                .sorted(Comparator.comparingDouble(r -> distance(place(r.hole()).orElseThrow())))
                .toList();
        if (scenario.suctionPoints().isEmpty()) return;
        for (int far = 1; far < holes.size(); far++)
            for (int near = 0; near < far; near++)
                if (strangelyStronger(holes.get(far), holes.get(near))) {
                    add(
                            Finding.Kind.FAR_STRONGER_THAN_NEAR,
                            holes.get(far).hole(),
                            "Hole \"%s\" has far more vacuum (%.1f Pa) than \"%s\" (%.1f Pa), which is nearer to the suction."
                                    + " Either a hidden path leads to it (drain tile, trench, void), or the nearer hole is"
                                    + " clogged or beside an opening: probe the nearer one and read both again.",
                            holes.get(far).hole(),
                            drop(holes.get(far)),
                            holes.get(near).hole(),
                            drop(holes.get(near)));
                    break;
                }
    }

    private boolean strangelyStronger(Stage.HoleReading far, Stage.HoleReading near) {
        double a = drop(far), b = drop(near);
        boolean clear = a < b - CLEAR * Math.hypot(error(far), error(near)) && a < MUCH_STRONGER * Math.min(b, 0);
        boolean further = distance(place(far.hole()).orElseThrow())
                > 1.25 * distance(place(near.hole()).orElseThrow());
        OptionalDouble pa = predictedDrop(far.hole()), pb = predictedDrop(near.hole());
        boolean foreseen = pa.isPresent() && pb.isPresent() && pa.getAsDouble() < pb.getAsDouble();
        return clear && further && !foreseen;
    }

    /** The stage before with the same sources and nothing more open then than now is wanted; else the comparison says nothing. */
    private static Optional<Stage> before(Scenario scenario, Stage stage) {
        List<String> ids = scenario.stages().stream().map(Stage::id).toList();
        int at = ids.indexOf(stage.id());
        List<Stage> earlier = at < 0 ? scenario.stages() : scenario.stages().subList(0, at);
        return earlier.stream()
                .filter(e -> e.sources().equals(stage.sources()) && !opened(scenario, e, stage))
                .reduce((a, b) -> b);
    }

    /** True where anything is less closed at the later stage. */
    private static boolean opened(Scenario scenario, Stage earlier, Stage later) {
        Scenario then = scenario.during(earlier), now = scenario.during(later);
        boolean opening = now.openings().stream()
                .anyMatch(o -> o.seal().fraction()
                        < then.opening(o.id()).orElseThrow().seal().fraction());
        for (int i = 0; i < now.blockWalls().size(); i++)
            opening |= now.blockWalls().get(i).tops().fraction()
                    < then.blockWalls().get(i).tops().fraction();
        return opening;
    }

    private void against(Stage earlier) {
        int compared = 0;
        for (Stage.HoleReading now : stage.holes()) {
            Optional<Stage.HoleReading> then = earlier.holes().stream()
                    .filter(r -> r.hole().equals(now.hole()))
                    .findFirst();
            if (then.isEmpty() || then.get().fanOn().isEmpty() || now.fanOn().isEmpty()) continue;
            if (!(drop(now) > drop(then.get()) + CLEAR * Math.hypot(error(now), error(then.get())))) return;
            compared++;
        }
        Optional<MeasuredFlow> now = flow(stage), then = flow(earlier);
        if (compared == 0 || now.isEmpty() || then.isEmpty()) return;
        double more = now.get().flow() - then.get().flow();
        if (more > 2 * Math.hypot(now.get().standardError(), then.get().standardError()))
            add(
                    Finding.Kind.MORE_FLOW_LESS_VACUUM,
                    "",
                    "More flow and less vacuum at every hole than at stage \"%s\", although nothing was opened: an opening has"
                            + " come up since, such as a cover that lifted, a dry trap or an unplugged hole. Look for it"
                            + " before anything else.",
                    earlier.id());
    }

    private Optional<MeasuredFlow> flow(Stage of) {
        List<MeasuredFlow> all = of.systems().stream()
                .flatMap(s -> MeasuredFlow.of(s, air()).stream())
                .toList();
        if (all.isEmpty()) return Optional.empty();
        double flow = all.stream().mapToDouble(MeasuredFlow::flow).sum();
        double squares = all.stream()
                .mapToDouble(f -> f.standardError() * f.standardError())
                .sum();
        return Optional.of(
                new MeasuredFlow(flow, Math.sqrt(squares), all.stream().anyMatch(MeasuredFlow::belowMeter)));
    }

    private void flows() {
        for (Stage.SystemReading s : stage.systems())
            MeasuredFlow.of(s, air())
                    .filter(MeasuredFlow::belowMeter)
                    .ifPresent(f -> add(
                            Finding.Kind.FLOW_BELOW_METER,
                            s.suctionPoint(),
                            "The flow at \"%s\" is below what the meter can tell (%.1f L/s). Put in a test length of narrower"
                                    + " pipe, or take a finer meter.",
                            s.suctionPoint(),
                            2000 * f.flow()));
        boolean none = stage.systems().stream().allMatch(s -> s.flowReading().isEmpty());
        if (none && !stage.holes().isEmpty() && !scenario.suctionPoints().isEmpty())
            add(
                    Finding.Kind.NO_FLOW,
                    "",
                    "No flow was measured in this stage. Without it a leaky slab cannot be told from tight fill.");
    }

    private AirState air() {
        return AirState.of(scenario.air().temperature(), scenario.air().altitude());
    }

    private Optional<Point> place(String hole) {
        return scenario.testHole(hole).map(TestHole::at);
    }

    /** Distance of a place from the nearest suction point, or from the tile that one is teed into [m]. */
    private double distance(Point place) {
        return scenario.suctionPoints().stream()
                .mapToDouble(s -> s.tile()
                        .flatMap(id -> scenario.drainTiles().stream()
                                .filter(t -> t.id().equals(id))
                                .findFirst())
                        .map(t -> t.path().at(t.path().nearest(place)).distanceTo(place))
                        .orElse(s.at().distanceTo(place)))
                .min()
                .orElse(0);
    }
}

package slabfield.siting;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import slabfield.advice.DrillPlaces;
import slabfield.advice.Houses;
import slabfield.advice.Range;
import slabfield.advice.Trials;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.fit.ModelError;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.TestHole;
import slabfield.readings.Noise;

/**
 * Where to drill next: the place whose reading, with the suction as it is drawn, would leave least doubt whether the weakest
 * place meets the target; where that is settled, the place that would tell most of the weakest vacuum itself. Holes that are
 * drawn and not yet read are taken as read first.
 *
 * @param places best first, well apart
 * @param meets part of the plausible houses whose weakest place meets the target
 * @param doubtNow before the next hole, with all drawn holes read: information lacking about pass or fail [bit]
 * @param scatterNow expected error of the vacuum at the weakest place, likewise [Pa]
 * @param shortfalls what the drawn holes lack by the least layout
 * @param houses number of houses that were solved
 * @param basis what makes them plausible
 */
public record NextHole(
        List<Place> places,
        double meets,
        double doubtNow,
        double scatterNow,
        List<HoleLayout.Shortfall> shortfalls,
        int houses,
        Houses.Basis basis) {
    /** Number of plausible houses that usually does. */
    public static final int USUAL_HOUSES = 120;

    private static final double COARSE = 0.2;
    private static final double SPACING = 0.6;
    /** Places kept are at least this far apart, so that they are choices [m]. */
    private static final double APART = 1.5;

    private static final int FEWEST = 3;
    /** Doubt that is too little to choose a place by, and change of it that is none [bit]. */
    private static final double SETTLED = 0.05;

    private static final double NOTHING = 0.01;
    /** Part of the scatter that a useful hole takes away where pass or fail is settled. */
    private static final double LITTLE = 0.02;

    /**
     * A place to drill.
     *
     * @param at on the plan
     * @param doubtLeft as {@link NextHole#doubtNow}, expected once it is read [bit]
     * @param scatterLeft as {@link NextHole#scatterNow}, expected once it is read [Pa]
     * @param pressure that plausible houses have there [Pa]
     * @param mends shortfalls of the layout that a hole there takes away
     */
    public record Place(
            Point at, double doubtLeft, double scatterLeft, Range pressure, List<HoleLayout.Shortfall> mends) {}

    /** True where pass or fail is as good as settled: then the places are ranked by what they tell of the vacuum itself. */
    public boolean settled() {
        return doubtNow < SETTLED;
    }

    /** True where no place would tell anything worth a hole. */
    public boolean tellsNothing() {
        if (places.isEmpty()) return true;
        Place best = places.get(0);
        return settled() ? best.scatterLeft() > (1 - LITTLE) * scatterNow : best.doubtLeft() > doubtNow - NOTHING;
    }

    /** What is read in one house. */
    private record Read(double strongest, double weakest, double[] pressures) {
        Read with(ModelError e) {
            return new Read(
                    strongest,
                    e.pressure(weakest, strongest),
                    Arrays.stream(pressures).map(p -> e.pressure(p, strongest)).toArray());
        }
    }

    /**
     * Looks for places.
     *
     * @param houses plausible ones, at least three that can be solved
     * @param count places to name, from 1
     * @param progress asked once per solve
     * @throws IllegalStateException where fewer than three houses have a solution, or the search was stopped
     */
    public static NextHole suggest(Houses houses, int count, Progress progress) {
        Scenario drawn = houses.best();
        List<Point> net = DrillPlaces.forHoles(drawn).net(SPACING);
        List<Point> unread = drawn.testHoles().stream()
                .filter(h -> !isRead(drawn, h))
                .map(TestHole::at)
                .toList();
        List<Point> all = new ArrayList<>(unread);
        all.addAll(net);
        List<Read> reads = read(houses, all, progress);
        double[][] pressures = IntStream.range(0, all.size())
                .mapToObj(p -> reads.stream().mapToDouble(r -> r.pressures()[p]).toArray())
                .toArray(double[][]::new);
        PassOrFail doubt = new PassOrFail(
                reads.stream().mapToDouble(Read::weakest).toArray(),
                drawn.target().vacuum());
        double noise = Noise.ofOrdinaryReading();
        for (int k = 0; k < unread.size(); k++) if (known(pressures[k])) doubt.take(pressures[k], noise);
        PassOrFail.Left now = doubt.now();
        boolean settled = now.bits() < SETTLED;
        record Tried(int index, PassOrFail.Left left) {}
        List<Tried> tried = IntStream.range(unread.size(), all.size())
                .parallel()
                .filter(k -> known(pressures[k]))
                .mapToObj(k -> new Tried(k, doubt.after(pressures[k], noise)))
                .sorted(Comparator.comparingDouble(
                        t -> settled ? t.left().scatter() : t.left().bits()))
                .toList();
        List<HoleLayout.Shortfall> lacking = HoleLayout.check(drawn);
        List<Place> places = new ArrayList<>();
        for (Tried t : tried) {
            Point at = all.get(t.index());
            if (places.size() == count) break;
            if (places.stream().anyMatch(p -> p.at().distanceTo(at) < APART)) continue;
            places.add(new Place(
                    at,
                    t.left().bits(),
                    t.left().scatter(),
                    Range.of(pressures[t.index()]),
                    mended(drawn, at, lacking)));
        }
        return new NextHole(
                List.copyOf(places), doubt.meeting(), now.bits(), now.scatter(), lacking, reads.size(), houses.basis());
    }

    private static boolean isRead(Scenario drawn, TestHole hole) {
        return drawn.stages().stream()
                .flatMap(s -> s.holes().stream())
                .anyMatch(r -> r.hole().equals(hole.id()) && r.fanOn().isPresent());
    }

    private static List<Read> read(Houses houses, List<Point> places, Progress progress) {
        Houses coarse = houses.withCellSize(Math.max(COARSE, houses.best().cellSize()));
        Trials trials = new Trials(progress, coarse.members().size());
        List<Scenario> members =
                coarse.members().stream().map(Houses.Member::house).toList();
        List<Optional<Read>> solved =
                trials.solve(members, s -> new Read(s.strongest(), s.coverage().weakest(), pressures(s, places)));
        List<Read> out = new ArrayList<>();
        for (int m = 0; m < members.size(); m++) {
            ModelError error = coarse.members().get(m).error();
            solved.get(m).filter(r -> Double.isFinite(r.weakest())).ifPresent(r -> out.add(r.with(error)));
        }
        if (trials.isCancelled()) throw new IllegalStateException("the search for a hole was stopped");
        if (out.size() < FEWEST)
            throw new IllegalStateException(
                    "fewer than three plausible houses have a solution, so nothing can be weighed");
        return out;
    }

    private static double[] pressures(Result.Solved solved, List<Point> places) {
        return places.stream()
                .mapToDouble(p -> solved.field().at(p.x(), p.y()).orElse(Double.NaN))
                .toArray();
    }

    private static boolean known(double[] pressures) {
        for (double p : pressures) if (Double.isNaN(p)) return false;
        return true;
    }

    private static List<HoleLayout.Shortfall> mended(Scenario drawn, Point at, List<HoleLayout.Shortfall> lacking) {
        List<TestHole> holes = new ArrayList<>(drawn.testHoles());
        holes.add(new TestHole("next hole", at, ""));
        List<HoleLayout.Shortfall> left = HoleLayout.check(drawn.withTestHoles(holes));
        return lacking.stream()
                .filter(s -> left.stream()
                        .noneMatch(l -> l.rule() == s.rule() && l.around().equals(s.around())))
                .toList();
    }
}

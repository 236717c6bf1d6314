package slabfield.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import slabfield.field.Result;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;

/**
 * Places at which a house with a further pit is solved in full, and what part of its linear response each of these solves
 * finds. Both are taken on a coarser grid of the same house, as a ratio of two answers of one grid hardly depends on it. At
 * another place the samples count by how much the two places feel of each other on the house's own grid: with
 * {@code r^2 = G(x, y)^2 / (G(x, x) G(y, y))}, by {@code (r^2 / (1 - r^2))^2}.
 */
final class Samples {
    /** Samples taken. */
    private static final int MOST = 24;
    /** Farthest that a part may be from 1, either way. */
    private static final double RANGE = 5;
    /** A sample whose linear flow is a smaller part of the largest one says nothing. */
    private static final double FAINT = 0.03;

    /** Relative residual of a sample's solve; what it is off by is far below what is taken over from place to place. */
    private static final double ENOUGH = 1e-3;

    private static final double LEAST_WEIGHT = 1e-12;
    private static final int HALVINGS = 30;

    private final List<Sample> samples;

    private Samples(List<Sample> samples) {
        this.samples = samples;
    }

    /**
     * Parts of the linear response.
     *
     * @param flow of the flow drawn
     * @param weakest of the fall at the weakest place
     * @param area of the fall that decides which area meets the target
     */
    record Share(double flow, double weakest, double area) {
        static final Share ALL = new Share(1, 1, 1);
    }

    /**
     * A place, the column of G there on the house's own grid, and what was found on the coarse one.
     *
     * @param flow that the linear response draws [m3/s]
     * @param excess weakest vacuum by a part of the linear response, less what the solve found [Pa]
     */
    private record Sample(int unknown, double[] response, double flow, Share share, DoubleUnaryOperator excess) {}

    /** For a linear house: the response is the answer. */
    static Samples none() {
        return new Samples(List.of());
    }

    /** Unknowns at which samples are taken, and the columns of G there. */
    record Choice(List<Integer> unknowns, List<double[]> responses) {}

    /**
     * Chooses where samples are taken: beside spot openings, then always at the place that feels those chosen so far the least.
     *
     * @param tried places of the map at which a pit can be
     */
    static Choice choose(Coring house, int[] tried) {
        int[] at = Arrays.stream(tried)
                .map(p -> house.unknown(house.places.cell(p)))
                .toArray();
        Choice choice = new Choice(new ArrayList<>(), new ArrayList<>());
        double[] felt = new double[at.length];
        List<Point> leaks = spots(house);
        for (int k = 0; k < Math.min(MOST, at.length) && !house.progress.isCancelled(); k++) {
            int next = k < leaks.size() ? nearest(house, at, leaks.get(k)) : 0;
            for (int i = 1; k >= leaks.size() && i < at.length; i++) if (felt[i] < felt[next]) next = i;
            double[] g = new double[house.state.at().length];
            g[at[next]] = 1;
            house.factor.solve(g, g);
            for (int i = 0; i < at.length; i++) felt[i] = Math.max(felt[i], g[at[i]] / g[at[next]]);
            choice.responses.add(g);
            choice.unknowns.add(at[next]);
        }
        return choice;
    }

    /**
     * Takes samples, one after the other by as many threads as there are processors.
     *
     * @param coarse the same house on a coarser grid
     */
    static Samples of(Coring house, Coring coarse, Choice choice) {
        int count = choice.unknowns.size();
        List<Optional<Sample>> taken = new ArrayList<>(Collections.nCopies(count, Optional.empty()));
        AtomicInteger next = new AtomicInteger();
        IntStream.range(0, Math.min(Runtime.getRuntime().availableProcessors(), count))
                .parallel()
                .forEach(worker -> {
                    FactorRoom room = FactorRoom.kept();
                    for (int k = next.getAndIncrement(); k < count; k = next.getAndIncrement())
                        taken.set(k, sample(house, coarse, room, choice.unknowns.get(k), choice.responses.get(k)));
                });
        List<Sample> found = taken.stream().flatMap(Optional::stream).toList();
        double most = found.stream().mapToDouble(s -> Math.abs(s.flow)).max().orElse(0);
        return new Samples(
                found.stream().filter(s -> Math.abs(s.flow) >= FAINT * most).toList());
    }

    /** Spot openings: beside them a pit changes most what a leak lets in. */
    private static List<Point> spots(Coring house) {
        return house.scenario.openings().stream()
                .filter(o -> o.place() instanceof Opening.Spot)
                .map(o -> ((Opening.Spot) o.place()).at())
                .limit(MOST / 3)
                .toList();
    }

    private static int nearest(Coring house, int[] at, Point to) {
        var g = house.layer.grid;
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < at.length; i++) {
            int cell = house.state.network().nodeOf(at[i]);
            double d = Math.hypot(g.x(cell % g.columns()) - to.x(), g.y(cell / g.columns()) - to.y());
            if (d < least) {
                least = d;
                best = i;
            }
        }
        return best;
    }

    /** Parts at an unknown whose own response G(x, x) is given. */
    Share at(int unknown, double own) {
        return at(unknown, own, null);
    }

    private Share at(int unknown, double own, Sample except) {
        double sum = 0, flow = 0, weakest = 0, area = 0;
        for (Sample s : samples) {
            if (s == except) continue;
            double felt = s.response[unknown], r2 = felt * felt / (own * s.response[s.unknown]);
            if (r2 > 1 - 1e-9) return s.share;
            double w = Math.max(LEAST_WEIGHT, Math.pow(r2 / (1 - r2), 2));
            sum += w;
            flow += w * s.share.flow;
            weakest += w * s.share.weakest;
            area += w * s.share.area;
        }
        return sum == 0 ? Share.ALL : new Share(flow / sum, weakest / sum, area / sum);
    }

    /** Largest error of a sample's weakest vacuum when the others predict it [Pa]. */
    double misfit() {
        double worst = 0;
        for (Sample s : samples) {
            Share others = at(s.unknown, s.response[s.unknown], s);
            worst = Math.max(worst, Math.abs(s.excess.applyAsDouble(others.weakest)));
        }
        return worst;
    }

    private static Optional<Sample> sample(
            Coring house, Coring coarse, FactorRoom room, int unknown, double[] response) {
        var fine = house.layer.grid;
        int cell = house.state.network().nodeOf(unknown), columns = fine.columns();
        var grid = coarse.layer.grid;
        int c = grid.index(grid.column(fine.x(cell % columns)), grid.row(fine.y(cell / columns)));
        if (house.progress.isCancelled() || !coarse.places.canHold(c)) return Optional.empty();
        double[] own = new double[coarse.state.at().length];
        own[coarse.unknown(c)] = 1;
        coarse.factor.sweep().solve(own, own);
        return solve(coarse, room, c, own).map(found -> {
            double inPit =
                    -coarse.pit.pressure(c, coarse.state.at()[coarse.unknown(c)], own[coarse.unknown(c)], found.linear);
            DoubleUnaryOperator excess =
                    s -> Coring.bounded(coarse.weakest(found.fall, s), coarse.weakest(own, 0), inPit, found.linear)
                            - found.weakest;
            return new Sample(unknown, response, found.linear, share(coarse, found), excess);
        });
    }

    /** What a solve with the further pit gave, beside the linear fall and flow. */
    private record Found(
            double[] fall, double linear, double drawn, double[] pressure, double weakest, double covered) {}

    private static Optional<Found> solve(Coring house, FactorRoom room, int cell, double[] response) {
        double[] fall = new double[response.length];
        double flow = house.fall(cell, response, fall);
        Result result = SlabSolver.solve(
                        withPoint(house, cell),
                        SlabSolver.Extent.FAN_ON_ONLY,
                        house.progress.stopOnly(),
                        new LayerGrid(house.bare),
                        guess(house, fall, cell),
                        room,
                        ENOUGH)
                .result();
        if (!(result instanceof Result.Solved solved)) return Optional.empty();
        return Optional.of(new Found(
                fall,
                flow,
                solved.suctions().get(solved.suctions().size() - 1).flow(),
                solved.field().pressure(),
                solved.coverage().weakest(),
                solved.coverage().meeting() * house.area() + house.places.pitArea));
    }

    private static Share share(Coring house, Found found) {
        double fell = 0, linear = 0;
        for (int u : house.counting()) {
            double now = found.pressure[house.state.network().nodeOf(u)];
            if (Double.isNaN(now)) continue;
            fell += house.state.at()[u] - now;
            linear += found.fall[u];
        }
        double mean = within(fell / linear);
        return new Share(
                within(found.drawn / found.linear),
                part(mean, found.weakest, s -> house.weakest(found.fall, s)),
                part(mean, found.covered, s -> house.covered(found.fall, s)));
    }

    private static double within(double part) {
        return Double.isNaN(part) ? 1 : Math.max(1 / RANGE, Math.min(RANGE, part));
    }

    /** Part at which a rising figure is the wanted one; the mean where it is not reached or does not depend on the part. */
    private static double part(double mean, double wanted, DoubleUnaryOperator figure) {
        double low = 1 / RANGE, high = RANGE;
        double least = figure.applyAsDouble(low), most = figure.applyAsDouble(high);
        if (!(least < wanted && wanted < most)) return mean;
        for (int k = 0; k < HALVINGS; k++) {
            double middle = (low + high) / 2;
            if (figure.applyAsDouble(middle) < wanted) low = middle;
            else high = middle;
        }
        return (low + high) / 2;
    }

    private static Scenario withPoint(Coring house, int cell) {
        Scenario s = house.scenario;
        var g = house.layer.grid;
        Point at = new Point(g.x(cell % g.columns()), g.y(cell / g.columns()));
        List<SuctionPoint> points = new ArrayList<>(s.suctionPoints());
        String id = "further point";
        while (s.suctionPoint(id).isPresent()) id += "'";
        points.add(new SuctionPoint(id, at, Optional.empty(), house.question.pit(), house.question.source(), false));
        return s.withSuctionPoints(points);
    }

    /** The linear answer, as a place to start from. */
    private static Guess guess(Coring house, double[] fall, int cell) {
        double[] at = house.state.at(), lowered = new double[at.length];
        for (int u = 0; u < at.length; u++) lowered[u] = at[u] - fall[u];
        double pressure = lowered[house.unknown(cell)];
        Guess guess = house.guess(lowered).withDevice(Devices.nodeOfNextPit(house.scenario), pressure);
        if (house.question.source() instanceof Source.Fan fan)
            for (int k = 0; k < Math.max(1, fan.run().size()); k++)
                guess = guess.withDevice(guess.devices().length, pressure);
        return guess;
    }
}

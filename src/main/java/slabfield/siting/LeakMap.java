package slabfield.siting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import slabfield.field.Grid;
import slabfield.field.Progress;
import slabfield.fit.Fitted;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Scenario;

/**
 * Where a leak that nobody drew would explain the readings better: for each cell, how much.
 *
 * <p>A leak of effective conductance g at a cell c lets in g (-p_c) there, with p_c the pressure of the fitted house, and
 * changes reading i by g a_i, a_i = -p_c dp_i/dq_c summed over what the reading is made of; one adjoint solve for each
 * reading gives dp_i/dq_c for all cells. With a and the residuals r in standard deviations of the errors, and the doubt
 * about all fitted unknowns left in, C = 1 + S S^T for S the sensitivities to them, the likelihood of the readings has its
 * greatest value at g = a.C^-1 r / a.C^-1 a and is larger than without the leak by
 *
 * <p>gain = (a.r)^2 / (2 a.C^-1 a)
 *
 * <p>in natural logarithms, where g is above 0 (at the best fit, C^-1 times the prior's residuals are the residuals that
 * remain). No leak can do more than bring its own cell to the room's pressure, so g is at most 1/G_cc with G_cc the
 * change of p_c per air let in there. All this is the first step of a Newton method: exact in a linear house without other
 * unknowns, an estimate elsewhere.
 *
 * @param grid cells of the map
 * @param gain for each cell, row-major; 0 where a leak explains nothing, NaN where there is no layer
 * @param conductance the best g of each cell, likewise [m3/(s Pa)]
 * @param share probability of each cell that the leak lies in it, if there is just one: in proportion to its area and
 *     exp(gain), likewise
 * @param places most likely first, each the best of its surroundings; empty where the readings do not say
 * @param region area of the fewest cells that hold 90 % of the probability [m2]
 * @param area of the slab [m2]
 * @param readings number that were used
 * @see "LeakMapTest"
 */
public record LeakMap(
        Grid grid,
        double[] gain,
        double[] conductance,
        double[] share,
        List<Place> places,
        double region,
        double area,
        int readings) {
    /** Gain below which the readings do not say: what three numbers, two for the place and one for the leak, gain by chance. */
    public static final double LEAST = 3;

    /** Places whose gain is this much below the best are not named: a seventh of its likelihood. */
    private static final double BEHIND = 2;

    private static final double APART = 1;
    private static final int MOST = 5;
    private static final double HELD = 0.9;

    /**
     * A likely place.
     *
     * @param at middle of the cell
     * @param gain as in the map
     * @param flow that the leak lets in during the first stage that was read [m3/s]
     * @param conductance g [m3/(s Pa)]
     * @param nearest drawn opening within a metre, if any: it may leak more, or elsewhere, than drawn
     */
    public record Place(Point at, double gain, double flow, double conductance, Optional<String> nearest) {}

    /** True where one leak more explains the readings so much better that it is worth looking for. */
    public boolean readingsSay() {
        return bestGain() >= LEAST;
    }

    /** The largest gain of any cell. */
    public double bestGain() {
        double best = 0;
        for (double g : gain) best = Math.max(best, Double.isNaN(g) ? 0 : g);
        return best;
    }

    /**
     * Draws the map.
     *
     * @param fitted house with its readings
     * @param progress asked once per stage
     * @throws IllegalStateException where a stage cannot be solved on the map's cells, or the search was stopped
     */
    public static LeakMap of(Fitted fitted, Progress progress) {
        LeakResponses responses = LeakResponses.of(fitted, progress);
        Grid grid = responses.grid();
        double[] gain = new double[grid.cells()], conductance = new double[grid.cells()];
        new OneMoreLeak(fitted, responses).weigh(gain, conductance);
        double[] share = share(gain, responses.openArea());
        List<Place> places = places(fitted.house(), responses, gain, conductance);
        double area = 0;
        for (double a : responses.openArea()) area += a;
        return new LeakMap(
                grid,
                gain,
                conductance,
                share,
                places,
                region(share, responses.openArea()),
                area,
                fitted.observations().size());
    }

    private static double[] share(double[] gain, double[] area) {
        double sum = 0, top = 0;
        for (double g : gain) if (!Double.isNaN(g)) top = Math.max(top, g);
        double[] out = new double[gain.length];
        for (int c = 0; c < out.length; c++) {
            out[c] = Double.isNaN(gain[c]) ? Double.NaN : area[c] * Math.exp(gain[c] - top);
            if (!Double.isNaN(out[c])) sum += out[c];
        }
        for (int c = 0; c < out.length; c++) out[c] /= sum;
        return out;
    }

    /** Area of the likeliest cells that hold most of the probability [m2]. */
    private static double region(double[] share, double[] area) {
        int[] order = IntStream.range(0, share.length)
                .filter(c -> !Double.isNaN(share[c]))
                .boxed()
                .sorted(Comparator.comparingDouble(c -> -share[c] / area[c]))
                .mapToInt(c -> c)
                .toArray();
        double held = 0, sum = 0;
        for (int c : order) {
            if (held >= HELD) break;
            held += share[c];
            sum += area[c];
        }
        return sum;
    }

    private static List<Place> places(Scenario house, LeakResponses responses, double[] gain, double[] conductance) {
        Grid grid = responses.grid();
        double best = 0;
        for (double g : gain) if (!Double.isNaN(g)) best = Math.max(best, g);
        double least = Math.max(LEAST, best - BEHIND);
        int[] order = IntStream.range(0, gain.length)
                .filter(c -> gain[c] >= least)
                .boxed()
                .sorted(Comparator.comparingDouble(c -> -gain[c]))
                .mapToInt(c -> c)
                .toArray();
        List<Place> out = new ArrayList<>();
        for (int c : order) {
            Point at = new Point(grid.x(c % grid.columns()), grid.y(c / grid.columns()));
            if (out.size() == MOST) break;
            if (out.stream().anyMatch(p -> p.at().distanceTo(at) < APART)) continue;
            out.add(new Place(
                    at, gain[c], -conductance[c] * responses.firstPressure()[c], conductance[c], near(house, at)));
        }
        return List.copyOf(out);
    }

    private static Optional<String> near(Scenario house, Point at) {
        return house.openings().stream()
                .filter(o -> distance(o, at) < APART)
                .min(Comparator.comparingDouble(o -> distance(o, at)))
                .map(Opening::id);
    }

    private static double distance(Opening o, Point at) {
        if (o.place() instanceof Opening.Spot spot) return spot.at().distanceTo(at);
        if (o.place() instanceof Opening.Along along)
            return along.path().at(along.path().nearest(at)).distanceTo(at);
        return Double.MAX_VALUE;
    }
}

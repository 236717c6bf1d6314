package slabfield.network;

import java.util.Optional;
import java.util.OptionalInt;
import slabfield.field.Grid;
import slabfield.field.Progress;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Source;
import slabfield.model.SuctionPoint;

/**
 * What one more suction point would do, for every place where it could be cored: the least vacuum that would be left on
 * the slab, and the area that would meet the target. Ask with {@link #of}; the answer is immutable.
 *
 * <pre>
 *   var question = new PlacementMap.Question(new SuctionPoint.Pit(0.15), new Source.Pressure(-200), 0.2);
 *   PlacementMap map = PlacementMap.of(scenario, question, progress).orElseThrow();
 *   int best = map.best().orElseThrow();
 *   map.at(best), map.weakest()[best], map.covered()[best], map.flow()[best]
 * </pre>
 *
 * <p>All arrays have one element a cell of {@link #grid}, row-major, and NaN where no pit can be: outside the slab, on or
 * over a barrier, an opening or another pit, in an area kept from drilling, and in a part of the layer without pressure.
 *
 * <p>How exact it is. With A the curvature of the solved house and G = A^-1, a flow q drawn from cell c lowers the pressure of
 * cell x by q G(x, c); all columns of G are computed, from one Cholesky factor. In a house all of whose laws are linear
 * that is the solution itself: weakest vacuums agree with solves of the house with the further point within 0.5 % of
 * that at the best place, flows within 2 %; what remains comes from tying the pit to one cell. Openings at one spot enter
 * with their own laws. Where further laws are not linear (coarse stone, cracks, tile, fans), the house is solved in full at
 * some places spread over the slab; the ratio of what these solves give to what the linear response gives is taken over to
 * the other places. The same agreement is then within 10 %, mostly 3 %, and 11 % was seen at a place of a house with inertial fill,
 * tile, hollow walls and a joint at once; {@link #misfit} says for this house how well the
 * places solved predict each other. A pit that draws never weakens a place, and its own vacuum bounds what it can give.
 *
 * @param grid cells whose middles are the places tried; each is a middle of a cell of the solve, too
 * @param weakest vacuum left at the weakest place [Pa]
 * @param covered area whose vacuum is at least the target [m2]
 * @param flow that the further point would draw [m3/s]
 * @param weakestNow vacuum at the weakest place without it [Pa]
 * @param coveredNow area that meets the target without it [m2]
 * @param area open area of the slab, parts without pressure included [m2]
 * @param misfit largest difference between a sample's weakest vacuum and that which the other samples predict there, over
 *     that at the best place; 0 in a linear house and where there are fewer than two samples
 * @see "PlacementMapTest"
 */
public record PlacementMap(
        Grid grid,
        double[] weakest,
        double[] covered,
        double[] flow,
        double weakestNow,
        double coveredNow,
        double area,
        double misfit) {
    /** Distance between places that usually does [m]. */
    public static final double USUAL_SPACING = 0.2;

    /**
     * What would be cored, and how closely places are tried.
     *
     * @param pit dug below the core
     * @param source what draws there: a pressure, a flow, or a fan of its own; no branch of a riser
     * @param spacing wanted distance between places, taken to the nearest whole number of the solve's cells [m]
     */
    public record Question(SuctionPoint.Pit pit, Source source, double spacing) {
        public Question {
            if (!(spacing > 0)) throw new IllegalArgumentException("the spacing must be above 0 m, not " + spacing);
            if (source instanceof Source.Branch)
                throw new IllegalArgumentException(
                        "a branch of a riser cannot be tried place by place; take a pressure or a fan of its own");
        }
    }

    /**
     * Computes the map.
     *
     * @param scenario that has passed its checks
     * @param progress told of each batch of places; a cancelled search gives nothing
     * @return empty where the house as drawn has no solution, or the search was cancelled
     */
    public static Optional<PlacementMap> of(Scenario scenario, Question question, Progress progress) {
        return Coring.of(scenario, question, progress).flatMap(Coring::map);
    }

    /** Middle of a cell of the map: where the pit would be. */
    public Point at(int cell) {
        return new Point(grid.x(cell % grid.columns()), grid.y(cell / grid.columns()));
    }

    /** Place that leaves the most vacuum at the weakest place; empty where no pit can be anywhere. */
    public OptionalInt best() {
        int best = -1;
        for (int c = 0; c < weakest.length; c++)
            if (!Double.isNaN(weakest[c]) && (best < 0 || weakest[c] > weakest[best])) best = c;
        return best < 0 ? OptionalInt.empty() : OptionalInt.of(best);
    }
}

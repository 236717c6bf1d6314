package slabfield.desktop.viewmodel;

import slabfield.model.Scenario;
import slabfield.model.Shapes;

/**
 * Which grid a drag is followed on: the finest, down to a smallest cell, whose solves keep up with the screen. Where the
 * solves of one grid take too long the next has fewer cells, and where they are fast again it has more.
 */
final class Pace {
    /** Smallest cell [m]. */
    static final double SMALLEST_CELL = 0.2;

    /** Cells of the finest and the coarsest grid. */
    static final int MOST_CELLS = 4000, FEWEST_CELLS = 800;

    /** Longest time of a solve that still keeps up [ns]; two cores have a thirtieth of a second for each. */
    static final long LONGEST = 30_000_000;

    private static final double STEP = 1.6;
    /** Solves of a new grid that tell nothing: they lay the grid, and have no answer to start from. */
    private static final int FIRST = 3;

    private static final int JUDGED = 6;

    private double most = MOST_CELLS;
    private double cell;
    private int solves;
    private long sum;

    /** Side of the cells on which a house is to be followed now, never smaller than its own [m]. */
    synchronized double cell(Scenario scenario) {
        double area = Shapes.union(scenario.slabs()).getEnvelope().getArea();
        return Math.max(Math.max(SMALLEST_CELL, scenario.cellSize()), Math.sqrt(area / most));
    }

    /** Takes note of how long a solve took [ns]. */
    synchronized void took(double side, long time) {
        if (side != cell) {
            cell = side;
            solves = 0;
            sum = 0;
        }
        if (++solves <= FIRST) return;
        sum += time;
        if (solves < FIRST + JUDGED) return;
        double mean = (double) sum / JUDGED;
        if (mean > LONGEST) most = Math.max(FEWEST_CELLS, most / STEP);
        else if (mean < LONGEST / STEP / STEP) most = Math.min(MOST_CELLS, most * STEP);
        solves = FIRST;
        sum = 0;
    }
}

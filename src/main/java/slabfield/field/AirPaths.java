package slabfield.field;

import java.util.List;

/**
 * How the air moves under the slab in one solved state, and where it came from. The arrays are shared, not copied; nobody
 * changes them.
 *
 * @param grid the cells
 * @param toEast flow from each cell to the one at its right, length {@code grid.cells()} [m3/s]
 * @param toNorth flow from each cell to the one above it, same length [m3/s]
 * @param origins where air enters, by name, the one that gives most to the exhaust first
 * @param share for each origin, part of the air that passes a cell and entered there, 0 to 1; NaN where none passes
 * @param exhaustShare for each origin, part of the exhaust that entered there; NaN where nothing is drawn
 */
public record AirPaths(
        Grid grid, double[] toEast, double[] toNorth, List<String> origins, double[][] share, double[] exhaustShare) {
    public AirPaths {
        origins = List.copyOf(origins);
    }

    /** The origin of most of the air that passes a cell, as an index of {@link #origins}; -1 where none passes. */
    public int main(int cell) {
        int best = -1;
        for (int k = 0; k < share.length; k++) if (share[k][cell] > (best < 0 ? 0 : share[best][cell])) best = k;
        return best;
    }
}

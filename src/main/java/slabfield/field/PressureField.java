package slabfield.field;

import java.util.OptionalDouble;

/**
 * Pressure in the layer on a grid. The arrays are shared, not copied; nobody changes them.
 *
 * @param grid the cells
 * @param kind of each cell, length {@code grid.cells()}
 * @param pressure relative to the room at each cell's middle, NaN where there is none, same length [Pa]
 * @param counts whether a cell stands for the layer when the weakest place and area fractions are looked for: its middle
 *     lies under a slab and outside pit discs, opening discs and barrier strips
 * @param openArea of each cell: under a slab, outside barriers and discs [m2]
 */
public record PressureField(Grid grid, CellKind[] kind, double[] pressure, boolean[] counts, double[] openArea) {
    /**
     * Pressure at a place: bilinear between cell middles; where some of the four have none, the weights of the others
     * are raised to sum to one.
     *
     * @return empty where none of the four cells around has a pressure [Pa]
     */
    public OptionalDouble at(double x, double y) {
        double fx = (x - grid.left()) / grid.width() - 0.5, fy = (y - grid.bottom()) / grid.height() - 0.5;
        int i = (int) Math.floor(fx), j = (int) Math.floor(fy);
        double tx = fx - i, ty = fy - j, sum = 0, weight = 0;
        for (int b = 0; b < 2; b++)
            for (int a = 0; a < 2; a++) {
                int column = i + a, row = j + b;
                if (column < 0 || row < 0 || column >= grid.columns() || row >= grid.rows()) continue;
                double p = pressure[grid.index(column, row)];
                double w = (a == 0 ? 1 - tx : tx) * (b == 0 ? 1 - ty : ty);
                if (Double.isNaN(p) || w <= 0) continue;
                sum += w * p;
                weight += w;
            }
        return weight < 1e-12 ? OptionalDouble.empty() : OptionalDouble.of(sum / weight);
    }
}

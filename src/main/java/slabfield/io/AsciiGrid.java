package slabfield.io;

import slabfield.field.Grid;
import slabfield.field.PressureField;

/**
 * A pressure field as an ASCII grid, the open text format of geographic programs: six lines of head, then rows from the top.
 * Its cells are square with the shorter side of ours; each takes the pressure of the cell of ours in which its middle lies.
 * Lengths in metres, pressures in pascals.
 */
public final class AsciiGrid {
    /** Stands where there is no pressure. */
    public static final int NO_DATA = -9999;

    private static final double ALMOST = 1e-6;

    private AsciiGrid() {}

    /** The file's text. */
    public static String text(PressureField field) {
        Grid grid = field.grid();
        double side = Math.min(grid.width(), grid.height());
        int columns = cells(grid.right() - grid.left(), side), rows = cells(grid.top() - grid.bottom(), side);
        double bottom = grid.top() - rows * side;
        StringBuilder text = new StringBuilder();
        text.append("ncols ").append(columns).append("\nnrows ").append(rows);
        text.append("\nxllcorner ").append(grid.left()).append("\nyllcorner ").append(bottom);
        text.append("\ncellsize ")
                .append(side)
                .append("\nNODATA_value ")
                .append(NO_DATA)
                .append('\n');
        for (int row = rows - 1; row >= 0; row--) {
            for (int column = 0; column < columns; column++) {
                double pressure = nearest(field, grid.left() + (column + 0.5) * side, bottom + (row + 0.5) * side);
                text.append(column == 0 ? "" : " ");
                if (Double.isFinite(pressure)) text.append(pressure);
                else text.append(NO_DATA);
            }
            text.append('\n');
        }
        return text.toString();
    }

    private static int cells(double length, double side) {
        return (int) Math.ceil(length / side - ALMOST);
    }

    private static double nearest(PressureField field, double x, double y) {
        int column = field.grid().column(x), row = field.grid().row(y);
        return column < 0 || row < 0
                ? Double.NaN
                : field.pressure()[field.grid().index(column, row)];
    }
}

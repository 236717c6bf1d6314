package slabfield.figure;

import slabfield.field.PressureField;

/**
 * The field as coloured pixels. A pixel belongs to the cell it lies in; where that has no pressure the pixel is
 * transparent. Else its pressure is bilinear between the cell middles around it; a cell without pressure is left out,
 * and so is one that is reached only across a corner, so that nothing shines through a barrier that covers cells.
 */
public final class HeatMap {
    private HeatMap() {}

    /**
     * Colours of a rectangle of the plan.
     *
     * @param width number of pixels along x
     * @param height number of pixels along y
     * @param viewport what they show of the plan [m]
     * @return 0xAARRGGBB row by row from the top, length {@code width * height}
     */
    public static int[] pixels(PressureField field, VacuumScale scale, int width, int height, Bounds viewport) {
        int[] argb = new int[width * height];
        var grid = field.grid();
        int[] column = new int[width];
        double[] across = new double[width];
        for (int i = 0; i < width; i++) {
            double x = viewport.left() + (i + 0.5) * viewport.width() / width;
            column[i] = grid.column(x);
            across[i] = (x - grid.x(column[i])) / grid.width();
        }
        for (int j = 0; j < height; j++) {
            double y = viewport.top() - (j + 0.5) * viewport.height() / height;
            int row = grid.row(y);
            if (row >= 0) line(field, scale, row, (y - grid.y(row)) / grid.height(), column, across, argb, j * width);
        }
        return argb;
    }

    /** One line of pixels; where all four cells around have a pressure it is {@link #value} written out. */
    private static void line(
            PressureField field,
            VacuumScale scale,
            int row,
            double up,
            int[] column,
            double[] across,
            int[] argb,
            int start) {
        double[] p = field.pressure();
        int columns = field.grid().columns(), beyond = row + (up < 0 ? -1 : 1);
        int own = row * columns, above = beyond < 0 || beyond >= field.grid().rows() ? own : beyond * columns;
        double ty = Math.abs(up), ry = 1 - ty;
        for (int i = 0; i < column.length; i++) {
            int here = column[i];
            if (here < 0) continue;
            int beside = here + (across[i] < 0 ? -1 : 1);
            double tx = Math.abs(across[i]), pressure = Double.NaN;
            if (above != own && beside >= 0 && beside < columns)
                pressure = ry * ((1 - tx) * p[own + here] + tx * p[own + beside])
                        + ty * ((1 - tx) * p[above + here] + tx * p[above + beside]);
            if (Double.isNaN(pressure)) pressure = value(field, here, row, across[i], up);
            argb[start + i] = scale.argb(pressure);
        }
    }

    /** Pressure at a place as it is coloured [Pa]; NaN where there is none. */
    static double value(PressureField field, double x, double y) {
        var grid = field.grid();
        int column = grid.column(x), row = grid.row(y);
        if (column < 0 || row < 0) return Double.NaN;
        return value(field, column, row, (x - grid.x(column)) / grid.width(), (y - grid.y(row)) / grid.height());
    }

    /** Pressure in a cell, at an offset from its middle of -1/2 to 1/2 of a cell to the right and up. */
    private static double value(PressureField field, int column, int row, double across, double up) {
        var grid = field.grid();
        double[] p = field.pressure();
        int columns = grid.columns(), here = row * columns + column;
        double own = p[here];
        if (Double.isNaN(own)) return Double.NaN;
        int besideColumn = across < 0 ? column - 1 : column + 1, aboveRow = up < 0 ? row - 1 : row + 1;
        boolean hasBeside = besideColumn >= 0 && besideColumn < columns;
        boolean hasAbove = aboveRow >= 0 && aboveRow < grid.rows();
        double beside = hasBeside ? p[row * columns + besideColumn] : Double.NaN;
        double above = hasAbove ? p[aboveRow * columns + column] : Double.NaN;
        double corner = hasBeside && hasAbove ? p[aboveRow * columns + besideColumn] : Double.NaN;
        double tx = Math.abs(across), ty = Math.abs(up);
        double sum = beside + above + corner;
        if (!Double.isNaN(sum))
            return (1 - ty) * ((1 - tx) * own + tx * beside) + ty * ((1 - tx) * above + tx * corner);
        return partly(own, beside, above, corner, tx, ty);
    }

    private static double partly(double own, double beside, double above, double corner, double tx, double ty) {
        double weight = (1 - tx) * (1 - ty), sum = weight * own;
        boolean reached = false;
        if (!Double.isNaN(beside)) {
            sum += tx * (1 - ty) * beside;
            weight += tx * (1 - ty);
            reached = true;
        }
        if (!Double.isNaN(above)) {
            sum += (1 - tx) * ty * above;
            weight += (1 - tx) * ty;
            reached = true;
        }
        if (reached && !Double.isNaN(corner)) {
            sum += tx * ty * corner;
            weight += tx * ty;
        }
        return sum / weight;
    }
}

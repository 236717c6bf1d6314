package slabfield.field;

/**
 * Square-cornered cells of one size over the bounding box of all slabs. Cell (column, row) has index
 * {@code row * columns + column}; rows count up the plan.
 *
 * @param left x of the left edge [m]
 * @param bottom y of the lower edge [m]
 * @param width of a cell [m]
 * @param height of a cell [m]
 * @param columns number along x
 * @param rows number along y
 */
public record Grid(double left, double bottom, double width, double height, int columns, int rows) {
    public int cells() {
        return columns * rows;
    }

    public int index(int column, int row) {
        return row * columns + column;
    }

    /** x of a column's middle [m]. */
    public double x(int column) {
        return left + (column + 0.5) * width;
    }

    /** y of a row's middle [m]. */
    public double y(int row) {
        return bottom + (row + 0.5) * height;
    }

    public double right() {
        return left + columns * width;
    }

    public double top() {
        return bottom + rows * height;
    }

    /** Column that holds x, or -1 outside. */
    public int column(double x) {
        int i = (int) Math.floor((x - left) / width);
        return i < 0 || i >= columns ? (x == right() ? columns - 1 : -1) : i;
    }

    /** Row that holds y, or -1 outside. */
    public int row(double y) {
        int j = (int) Math.floor((y - bottom) / height);
        return j < 0 || j >= rows ? (y == top() ? rows - 1 : -1) : j;
    }
}

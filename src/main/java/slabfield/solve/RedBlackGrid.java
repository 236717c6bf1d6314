package slabfield.solve;

/**
 * A {@link GridOperator} laid out by colour. A cell is red where column + row is even, so red cells touch only black
 * ones and the black unknowns can be eliminated exactly: {@code S = R - C B^-1 C'} acts on the red ones alone, with R and
 * B the diagonals and C the conductances. Everything iterative works on S, at half the length.
 *
 * <p>Row j's red cells are element k + 1 of an array of their own, k = column / 2, and its black cells likewise, with
 * one element of padding at each end. A cell and its neighbours in the rows beside it then have the same element
 * number, and so has one of the two beside it in its own row (the inner link). The other (the outer link) is one
 * element further: it is brought in line by copying, since compiled loops use vector instructions only when all arrays
 * are read at one index, and only when there are few arrays; hence the many short loops.
 */
final class RedBlackGrid {
    final int columns;
    final int rows;
    /** Length of a row's arrays. */
    final int length;
    /** Of each row, padded by one row at each end: first element used, and one past the last. */
    final int[] first;

    final int[] end;
    /** Inner and outer link of each black cell. */
    final double[][] inner;

    final double[][] outer;
    /** Link of each red, and of each black cell to the row above. */
    final double[][] redUp;

    final double[][] blackUp;
    /** Diagonal of each red cell; 0 where inactive. */
    final double[][] red;
    /** Reciprocal of the diagonal of each black cell; 0 where inactive. */
    final double[][] black;

    final float[][] innerF;
    final float[][] outerF;
    final float[][] redUpF;
    final float[][] blackUpF;
    final float[][] redF;
    final float[][] blackF;

    RedBlackGrid(int columns, int rows) {
        this.columns = columns;
        this.rows = rows;
        length = (columns + 1) / 2 + 2;
        first = new int[rows + 2];
        end = new int[rows + 2];
        inner = new double[rows + 2][length];
        outer = new double[rows + 2][length];
        redUp = new double[rows + 2][length];
        blackUp = new double[rows + 2][length];
        red = new double[rows + 2][length];
        black = new double[rows + 2][length];
        innerF = new float[rows + 2][length];
        outerF = new float[rows + 2][length];
        redUpF = new float[rows + 2][length];
        blackUpF = new float[rows + 2][length];
        redF = new float[rows + 2][length];
        blackF = new float[rows + 2][length];
    }

    /** Takes over the operator's coefficients in rows from .. to - 1. */
    void load(GridOperator grid, int from, int to) {
        for (int row = from; row < to; row++) {
            int j = row + 1;
            int low = length - 1;
            int high = 1;
            for (int column = 0; column < columns; column++) {
                int c = row * columns + column;
                int k = column / 2 + 1;
                boolean active = grid.active()[c];
                double e = grid.eastOf(c, column);
                double n = grid.northOf(c, row);
                double diagonal = active ? grid.leak()[c] + e + n : 0;
                diagonal += column > 0 ? grid.eastOf(c - 1, column - 1) : 0;
                diagonal += row > 0 ? grid.northOf(c - columns, row - 1) : 0;
                if (active) {
                    low = Math.min(low, k);
                    high = k + 1;
                }
                place(j, k, column, e, n, diagonal);
            }
            first[j] = Math.min(low, high);
            end[j] = high;
            round(j);
        }
    }

    private void place(int j, int k, int column, double e, double n, double diagonal) {
        boolean isRed = (column + j - 1) % 2 == 0;
        boolean toInner = column % 2 == 0;
        if (toInner) {
            inner[j][k] = e;
        } else {
            // From an odd column to the next even one: the black one of the two holds the link.
            outer[j][isRed ? k + 1 : k] = e;
        }
        if (isRed) {
            redUp[j][k] = n;
            red[j][k] = diagonal;
        } else {
            blackUp[j][k] = n;
            black[j][k] = diagonal > 0 ? 1 / diagonal : 0;
        }
    }

    private void round(int j) {
        for (int k = 0; k < length; k++) {
            innerF[j][k] = (float) inner[j][k];
            outerF[j][k] = (float) outer[j][k];
            redUpF[j][k] = (float) redUp[j][k];
            blackUpF[j][k] = (float) blackUp[j][k];
            redF[j][k] = red[j][k] > 0 ? (float) (1 / red[j][k]) : 0;
            blackF[j][k] = (float) black[j][k];
        }
    }

    /** Step from a black cell's element to that of the red cell at its outer link, in row j of the padded arrays. */
    private static int outward(int j) {
        return (j & 1) != 0 ? 1 : -1;
    }

    /** b = B^-1 (C' x) in row j, from red rows below, here and above. */
    void black(int j, double[] below, double[] here, double[] above, double[] b, double[] shifted) {
        int a = first[j];
        int e = end[j];
        System.arraycopy(here, a + outward(j), shifted, a, e - a);
        double[] in = inner[j];
        double[] out = outer[j];
        for (int k = a; k < e; k++) {
            b[k] = in[k] * here[k] + out[k] * shifted[k];
        }
        double[] up = blackUp[j];
        double[] down = redUp[j - 1];
        double[] inverse = black[j];
        for (int k = a; k < e; k++) {
            b[k] = inverse[k] * (b[k] + up[k] * above[k] + down[k] * below[k]);
        }
    }

    /** r = C b in row j, from black rows below, here and above. */
    void red(int j, double[] below, double[] here, double[] above, double[] r, double[] shifted) {
        int a = first[j];
        int e = end[j];
        if (a >= e) {
            return;
        }
        double[] out = outer[j];
        int step = outward(j);
        int from = Math.max(1, a - step);
        int to = Math.min(length - 1, e - step);
        for (int k = from; k < to; k++) {
            r[k] = out[k] * here[k];
        }
        shifted[a] = 0;
        shifted[e - 1] = 0;
        System.arraycopy(r, from, shifted, from + step, to - from);
        double[] in = inner[j];
        for (int k = a; k < e; k++) {
            r[k] = in[k] * here[k] + shifted[k];
        }
        double[] up = redUp[j];
        double[] down = blackUp[j - 1];
        for (int k = a; k < e; k++) {
            r[k] += up[k] * above[k] + down[k] * below[k];
        }
    }

    /** As {@link #black(int, double[], double[], double[], double[], double[])}, in single precision. */
    void black(int j, float[] below, float[] here, float[] above, float[] b, float[] shifted) {
        int a = first[j];
        int e = end[j];
        System.arraycopy(here, a + outward(j), shifted, a, e - a);
        float[] in = innerF[j];
        float[] out = outerF[j];
        for (int k = a; k < e; k++) {
            b[k] = in[k] * here[k] + out[k] * shifted[k];
        }
        float[] up = blackUpF[j];
        float[] down = redUpF[j - 1];
        float[] inverse = blackF[j];
        for (int k = a; k < e; k++) {
            b[k] = inverse[k] * (b[k] + up[k] * above[k] + down[k] * below[k]);
        }
    }

    /** As {@link #red(int, double[], double[], double[], double[], double[])}, in single precision. */
    void red(int j, float[] below, float[] here, float[] above, float[] r, float[] shifted) {
        int a = first[j];
        int e = end[j];
        if (a >= e) {
            return;
        }
        float[] out = outerF[j];
        int step = outward(j);
        int from = Math.max(1, a - step);
        int to = Math.min(length - 1, e - step);
        for (int k = from; k < to; k++) {
            r[k] = out[k] * here[k];
        }
        shifted[a] = 0;
        shifted[e - 1] = 0;
        System.arraycopy(r, from, shifted, from + step, to - from);
        float[] in = innerF[j];
        for (int k = a; k < e; k++) {
            r[k] = in[k] * here[k] + shifted[k];
        }
        float[] up = redUpF[j];
        float[] down = blackUpF[j - 1];
        for (int k = a; k < e; k++) {
            r[k] += up[k] * above[k] + down[k] * below[k];
        }
    }
}

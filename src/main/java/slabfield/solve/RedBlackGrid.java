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
    /** Reciprocal of the diagonal of each red cell; 0 where inactive. */
    final float[][] redF;

    /** Conductance of each red, and of each black cell to where x = 0. */
    final float[][] redLeakF;

    final float[][] blackLeakF;
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
        redLeakF = new float[rows + 2][length];
        blackLeakF = new float[rows + 2][length];
        blackF = new float[rows + 2][length];
    }

    /** Takes over padded row j, given in natural order. */
    void load(int j, NinePoint.Row row) {
        boolean redFirst = (j & 1) != 0;
        double[] d = row.diagonal;
        double[] e = row.east;
        double[] n = row.north;
        int a = (row.first + 1) / 2;
        int b = row.end / 2 + 1;
        first[j] = a;
        end[j] = row.first < row.end ? b : a;
        double[] evenUp = redFirst ? redUp[j] : blackUp[j];
        double[] oddUp = redFirst ? blackUp[j] : redUp[j];
        for (int k = a; k < b; k++) {
            int even = 2 * k - 1;
            inner[j][k] = e[even];
            evenUp[k] = n[even];
            oddUp[k] = n[even + 1];
        }
        // From an odd column to the next even one: the black one of the two holds the link.
        int shift = redFirst ? 0 : 1;
        for (int k = a; k < b; k++) {
            outer[j][k] = e[2 * (k - shift)];
        }
        double[] reds = red[j];
        double[] blacks = black[j];
        for (int k = a; k < b; k++) {
            int at = 2 * k - 1;
            double ofRed = d[at + shift];
            double ofBlack = d[at + 1 - shift];
            reds[k] = ofRed;
            redF[j][k] = ofRed > 0 ? (float) (1 / ofRed) : 0;
            blacks[k] = ofBlack > 0 ? 1 / ofBlack : 0;
        }
        round(inner[j], innerF[j], a, b);
        round(outer[j], outerF[j], a, b);
        round(redUp[j], redUpF[j], a, b);
        round(blackUp[j], blackUpF[j], a, b);
        round(blacks, blackF[j], a, b);
    }

    /** True where {@link #load} with this row would change nothing. */
    boolean holds(int j, NinePoint.Row row) {
        boolean redFirst = (j & 1) != 0;
        int a = (row.first + 1) / 2;
        int b = row.end / 2 + 1;
        if (first[j] != a || end[j] != (row.first < row.end ? b : a)) {
            return false;
        }
        double[] d = row.diagonal;
        double[] e = row.east;
        double[] n = row.north;
        double[] evenUp = redFirst ? redUp[j] : blackUp[j];
        double[] oddUp = redFirst ? blackUp[j] : redUp[j];
        int shift = redFirst ? 0 : 1;
        for (int k = a; k < b; k++) {
            int even = 2 * k - 1;
            double ofBlack = d[even + 1 - shift];
            if (inner[j][k] != e[even]
                    || outer[j][k] != e[2 * (k - shift)]
                    || evenUp[k] != n[even]
                    || oddUp[k] != n[even + 1]
                    || red[j][k] != d[even + shift]
                    || black[j][k] != (ofBlack > 0 ? 1 / ofBlack : 0)) {
                return false;
            }
        }
        return true;
    }

    /** Works out the leaks of row j, once it and the row below are loaded; returns their sum. */
    double leaks(int j) {
        double sum = 0;
        double[] shifted = new double[length];
        int step = outward(j);
        int from = Math.max(first[j], first[j] + step);
        int to = Math.min(end[j], end[j] + step);
        if (from < to) {
            System.arraycopy(outer[j], from - step, shifted, from, to - from);
        }
        for (int k = first[j]; k < end[j]; k++) {
            double links = inner[j][k] + shifted[k] + redUp[j][k] + blackUp[j - 1][k];
            redLeakF[j][k] = (float) Math.max(0, red[j][k] - links);
            sum += redLeakF[j][k];
        }
        for (int k = first[j]; k < end[j]; k++) {
            double links = inner[j][k] + outer[j][k] + blackUp[j][k] + redUp[j - 1][k];
            blackLeakF[j][k] = black[j][k] > 0 ? (float) Math.max(0, 1 / black[j][k] - links) : 0;
            sum += blackLeakF[j][k];
        }
        return sum;
    }

    private static void round(double[] from, float[] to, int first, int end) {
        for (int k = first; k < end; k++) {
            to[k] = (float) from[k];
        }
    }

    /** Step from a black cell's element to that of the red cell at its outer link, in row j of the padded arrays. */
    static int outward(int j) {
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

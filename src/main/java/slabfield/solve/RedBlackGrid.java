package slabfield.solve;

import java.util.Arrays;

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

    /**
     * Takes over padded row j, with its leaks in single precision.
     *
     * @param spare a row's length
     */
    void load(int j, SplitRow row, float[] leakOfEven, float[] leakOfOdd, double[] spare) {
        boolean redFirst = (j & 1) != 0;
        int a = row.first;
        int b = row.end;
        first[j] = a;
        end[j] = b;
        System.arraycopy(row.east.even, a, inner[j], a, b - a);
        System.arraycopy(row.east.odd, redFirst ? a : a - 1, outer[j], a, b - a);
        System.arraycopy(row.north.even, a, redFirst ? redUp[j] : blackUp[j], a, b - a);
        System.arraycopy(row.north.odd, a, redFirst ? blackUp[j] : redUp[j], a, b - a);
        System.arraycopy(redFirst ? row.diagonal.even : row.diagonal.odd, a, red[j], a, b - a);
        Loops.invert(black[j], redFirst ? row.diagonal.odd : row.diagonal.even, a, b);
        System.arraycopy(leakOfEven, a, redFirst ? redLeakF[j] : blackLeakF[j], a, b - a);
        System.arraycopy(leakOfOdd, a, redFirst ? blackLeakF[j] : redLeakF[j], a, b - a);
        round(j, a, b);
        Loops.invert(spare, red[j], a, b);
        Loops.round(redF[j], spare, a, b);
    }

    private void round(int j, int a, int b) {
        Loops.round(innerF[j], inner[j], a, b);
        Loops.round(outerF[j], outer[j], a, b);
        Loops.round(redUpF[j], redUp[j], a, b);
        Loops.round(blackUpF[j], blackUp[j], a, b);
        Loops.round(blackF[j], black[j], a, b);
    }

    /** True where {@link #load} with this row would change nothing. */
    boolean holds(int j, SplitRow row, float[] leakOfEven, float[] leakOfOdd) {
        boolean redFirst = (j & 1) != 0;
        int a = row.first;
        int b = row.end;
        if (first[j] != a || end[j] != b) {
            return false;
        }
        int before = redFirst ? 0 : 1;
        double[] reds = redFirst ? row.diagonal.even : row.diagonal.odd;
        double[] blacks = redFirst ? row.diagonal.odd : row.diagonal.even;
        return Arrays.equals(inner[j], a, b, row.east.even, a, b)
                && Arrays.equals(outer[j], a, b, row.east.odd, a - before, b - before)
                && Arrays.equals(redFirst ? redUp[j] : blackUp[j], a, b, row.north.even, a, b)
                && Arrays.equals(redFirst ? blackUp[j] : redUp[j], a, b, row.north.odd, a, b)
                && Arrays.equals(red[j], a, b, reds, a, b)
                && Arrays.equals(redFirst ? redLeakF[j] : blackLeakF[j], a, b, leakOfEven, a, b)
                && Arrays.equals(redFirst ? blackLeakF[j] : redLeakF[j], a, b, leakOfOdd, a, b)
                && areReciprocals(black[j], blacks, a, b);
    }

    private static boolean areReciprocals(double[] x, double[] diagonal, int first, int end) {
        double[] inverse = new double[x.length];
        Loops.invert(inverse, diagonal, first, end);
        return Arrays.equals(x, first, end, inverse, first, end);
    }

    /** Sum of the leaks of row j. */
    double leaks(int j) {
        return sum(redLeakF[j], first[j], end[j]) + sum(blackLeakF[j], first[j], end[j]);
    }

    /** Four sums side by side, which a processor adds to faster than to one. */
    private static double sum(float[] x, int first, int end) {
        double s = 0;
        double t = 0;
        double u = 0;
        double v = 0;
        int k = first;
        for (; k + 3 < end; k += 4) {
            s += x[k];
            t += x[k + 1];
            u += x[k + 2];
            v += x[k + 3];
        }
        for (; k < end; k++) {
            s += x[k];
        }
        return s + t + (u + v);
    }

    /** Sum of the red diagonals of row j. */
    double diagonals(int j) {
        double[] x = red[j];
        double s = 0;
        double t = 0;
        double u = 0;
        double v = 0;
        int k = 0;
        for (; k + 3 < x.length; k += 4) {
            s += x[k];
            t += x[k + 1];
            u += x[k + 2];
            v += x[k + 3];
        }
        for (; k < x.length; k++) {
            s += x[k];
        }
        return s + t + (u + v);
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

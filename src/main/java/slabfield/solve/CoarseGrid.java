package slabfield.solve;

import java.util.Arrays;

/**
 * A coarse level: a nine-point symmetric operator with negative couplings stored as conductances, and the smoothing,
 * restriction and interpolation that go with it. Row j's arrays are number j + 1 and column i's element i + 1, with
 * zeros all round.
 *
 * <p>Smoothing is four-colour Gauss-Seidel, even rows first: (even, even), (odd, even), (even, odd), (odd, odd) columns
 * and rows before the correction, the same backwards after it, so that a cycle is symmetric.
 */
final class CoarseGrid {
    final int columns;
    final int rows;
    /** Couplings east, north, north-east and north-west, and the reciprocal of the diagonal (0 where inactive). */
    final float[][] east;

    final float[][] north;
    final float[][] northEast;
    final float[][] northWest;
    final float[][] inverse;
    final float[][] x;
    final float[][] b;
    /** Weights of the next level's points: of those west and east of a point in an even row, and south and north of one in an odd. */
    final float[][] fromWest;

    final float[][] fromEast;
    final float[][] fromSouth;
    final float[][] fromNorth;
    /** Of each row: first element in use, rounded down to an even column's, and one past the last. */
    private final int[] first;

    private final int[] end;

    CoarseGrid(int columns, int rows) {
        this.columns = columns;
        this.rows = rows;
        first = new int[rows + 2];
        end = new int[rows + 2];
        east = rows(columns, rows);
        north = rows(columns, rows);
        northEast = rows(columns, rows);
        northWest = rows(columns, rows);
        inverse = rows(columns, rows);
        x = rows(columns, rows);
        b = rows(columns, rows);
        int halfColumns = (columns + 1) / 2;
        int halfRows = (rows + 1) / 2;
        fromWest = rows(halfColumns, halfRows);
        fromEast = rows(halfColumns, halfRows);
        fromSouth = rows(halfColumns, halfRows);
        fromNorth = rows(halfColumns, halfRows);
    }

    private static float[][] rows(int columns, int rows) {
        return new float[rows + 2][columns + 3];
    }

    /** Notes where row j has points in use. */
    void range(int j, int from, int to) {
        first[j] = (from - 1) / 2 * 2 + 1;
        end[j] = to;
    }

    /** First smoothing of the even rows among padded rows from .. to - 1, from x = 0. */
    void smoothEvenFromZero(int from, int to) {
        for (int j = from | 1; j < to; j += 2) {
            float[] xj = x[j];
            float[] bj = b[j];
            float[] dj = inverse[j];
            float[] ej = east[j];
            int stop = end[j];
            for (int i = first[j]; i < stop; i += 2) {
                xj[i] = dj[i] * bj[i];
            }
            for (int i = first[j] + 1; i < stop; i += 2) {
                xj[i] = dj[i] * (bj[i] + ej[i] * xj[i + 1] + ej[i - 1] * xj[i - 1]);
            }
        }
    }

    /** First smoothing of the odd rows among padded rows from .. to - 1, from x = 0 there. */
    void smoothOddFromZero(int from, int to) {
        for (int j = from + (from & 1); j < to; j += 2) {
            Arrays.fill(x[j], 0);
            relax(j, 0);
            relax(j, 1);
        }
    }

    /** Last smoothing of the odd rows. */
    void smoothOdd(int from, int to) {
        for (int j = from + (from & 1); j < to; j += 2) {
            relax(j, 1);
            relax(j, 0);
        }
    }

    /** Last smoothing of the even rows. */
    void smoothEven(int from, int to) {
        for (int j = from | 1; j < to; j += 2) {
            relax(j, 1);
            relax(j, 0);
        }
    }

    private void relax(int j, int offset) {
        float[] here = x[j];
        float[] below = x[j - 1];
        float[] above = x[j + 1];
        float[] bj = b[j];
        float[] dj = inverse[j];
        float[] e = east[j];
        float[] n = north[j];
        float[] s = north[j - 1];
        float[] ne = northEast[j];
        float[] sw = northEast[j - 1];
        float[] nw = northWest[j];
        float[] se = northWest[j - 1];
        int to = end[j];
        for (int i = first[j] + offset; i < to; i += 2) {
            here[i] = dj[i] * (bj[i] + e[i] * here[i + 1] + e[i - 1] * here[i - 1]
                    + (n[i] * above[i] + s[i] * below[i])
                    + (ne[i] * above[i + 1] + sw[i - 1] * below[i - 1])
                    + (nw[i] * above[i - 1] + se[i + 1] * below[i + 1]));
        }
    }

    /**
     * Next level's right-hand side, padded rows from .. to - 1 of it, after smoothing from zero. The last points
     * smoothed have no residual, and the others only what came from those smoothed after them.
     */
    void restrict(float[][] coarse, int from, int to) {
        for (int row = from; row < to; row++) {
            int j = 2 * row - 1;
            float[] below = x[j - 1];
            float[] above = x[j + 1];
            float[] n = north[j];
            float[] s = north[j - 1];
            float[] ne = northEast[j];
            float[] sw = northEast[j - 1];
            float[] nw = northWest[j];
            float[] se = northWest[j - 1];
            float[] eastHere = east[j];
            float[] eastBelow = east[j - 1];
            float[] eastAbove = east[j + 1];
            float[] here = x[j];
            float[] pw = fromWest[row];
            float[] pe = fromEast[row];
            float[] ps = fromSouth[row];
            float[] pn = fromNorth[row - 1];
            float[] out = coarse[row];
            float fromLeft = 0;
            int stop = end[j] / 2 + 1;
            for (int k = (first[j] + 1) / 2; k < stop; k++) {
                int i = 2 * k - 1;
                float centre = eastHere[i] * here[i + 1] + eastHere[i - 1] * here[i - 1]
                        + (n[i] * above[i] + s[i] * below[i])
                        + (ne[i] * above[i + 1] + sw[i - 1] * below[i - 1])
                        + (nw[i] * above[i - 1] + se[i + 1] * below[i + 1]);
                float right = n[i + 1] * above[i + 1] + s[i + 1] * below[i + 1]
                        + (ne[i + 1] * above[i + 2] + sw[i] * below[i])
                        + (nw[i + 1] * above[i] + se[i + 2] * below[i + 2]);
                float up = eastAbove[i] * above[i + 1] + eastAbove[i - 1] * above[i - 1];
                float down = eastBelow[i] * below[i + 1] + eastBelow[i - 1] * below[i - 1];
                out[k] = centre + fromLeft + pw[k] * right + ps[k] * up + pn[k] * down;
                fromLeft = pe[k] * right;
            }
        }
    }

    /** x += P of the next level's solution, in padded rows from .. to - 1, but for the points that are relaxed first. */
    void correct(float[][] coarse, int from, int to) {
        for (int j = from; j < to; j++) {
            float[] xj = x[j];
            int begin = (first[j] + 1) / 2;
            int stop = end[j] / 2 + 1;
            int row = (j + 1) / 2;
            float[] c = coarse[row];
            if ((j & 1) != 0) {
                float[] pw = fromWest[row];
                float[] pe = fromEast[row];
                for (int k = begin; k < stop; k++) {
                    xj[2 * k - 1] += c[k];
                    xj[2 * k] += pw[k] * c[k] + pe[k] * c[k + 1];
                }
            } else {
                row = j / 2;
                float[] ps = fromSouth[row];
                float[] pn = fromNorth[row];
                float[] south = coarse[row];
                float[] norths = coarse[row + 1];
                for (int k = begin; k < stop; k++) {
                    xj[2 * k - 1] += ps[k] * south[k] + pn[k] * norths[k];
                }
            }
        }
    }
}

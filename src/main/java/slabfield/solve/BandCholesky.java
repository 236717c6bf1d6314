package slabfield.solve;

/**
 * Exact solve on the coarsest level: L L' factors of a matrix of some hundred unknowns, row by row, each from the first element that is
 * not 0.
 */
final class BandCholesky {
    private final CoarseGrid level;
    /** Padded row and element of each unknown. */
    private final int[] row;

    private final int[] element;
    /** First unknown that each row of L reaches. */
    private final int[] first;
    /** Rows of L from there on, the diagonal inverted; 0 where the matrix is singular, which sets that unknown to 0. */
    private final double[][] factor;

    private final double[] y;

    BandCholesky(NinePoint operator, CoarseGrid level) {
        this.level = level;
        int[][] number = new int[operator.rows + 2][operator.columns + 3];
        int[] rows = new int[operator.rows * operator.columns];
        int[] elements = new int[rows.length];
        int n = 0;
        for (int j = 1; j <= operator.rows; j++) {
            for (int i = 1; i <= operator.columns; i++) {
                if (operator.row[j].diagonal.get(i) > 0) {
                    rows[n] = j;
                    elements[n++] = i;
                    number[j][i] = n;
                }
            }
        }
        row = rows;
        element = elements;
        factor = new double[n][];
        first = new int[n];
        y = new double[n];
        for (int a = 0; a < n; a++) {
            int j = row[a];
            int i = element[a];
            first[a] = reach(a, number[j][i - 1], number[j - 1][i], number[j - 1][i - 1], number[j - 1][i + 1]);
            factor[a] = new double[a + 1 - first[a]];
            factor[a][a - first[a]] = operator.row[j].diagonal.get(i);
            couple(a, number[j][i - 1], operator.row[j].east.get(i - 1));
            couple(a, number[j - 1][i], operator.row[j - 1].north.get(i));
            couple(a, number[j - 1][i - 1], operator.row[j - 1].northEast.get(i - 1));
            couple(a, number[j - 1][i + 1], operator.row[j - 1].northWest(i + 1));
        }
        for (int a = 0; a < n; a++) {
            factorRow(a);
        }
    }

    /** First of some unknowns, given by their numbers from 1 on or 0 for none. */
    private static int reach(int a, int... numbers) {
        int first = a;
        for (int number : numbers) {
            first = number > 0 ? Math.min(first, number - 1) : first;
        }
        return first;
    }

    private void couple(int a, int other, double conductance) {
        if (other > 0) {
            factor[a][other - 1 - first[a]] = -conductance;
        }
    }

    private void factorRow(int a) {
        double[] r = factor[a];
        int begin = first[a];
        double whole = r[a - begin];
        for (int c = begin; c < a; c++) {
            double[] s = factor[c];
            int from = Math.max(begin, first[c]);
            double sum = r[c - begin] - Loops.dot(r, from - begin, s, from - first[c], c - from);
            r[c - begin] = sum * s[c - first[c]];
        }
        double pivot = whole - Loops.dot(r, 0, r, 0, a - begin);
        r[a - begin] = pivot > whole * 1e-13 ? 1 / Math.sqrt(pivot) : 0;
    }

    /** Solves for the level's right-hand side into its x. */
    void solve() {
        for (int a = 0; a < y.length; a++) {
            double[] r = factor[a];
            int begin = first[a];
            double sum = level.b.get(row[a], element[a]) - Loops.dot(r, 0, y, begin, a - begin);
            y[a] = sum * r[a - begin];
        }
        for (int a = y.length - 1; a >= 0; a--) {
            double[] r = factor[a];
            int begin = first[a];
            double value = y[a] * r[a - begin];
            for (int k = begin; k < a; k++) {
                y[k] -= r[k - begin] * value;
            }
            level.x.set(row[a], element[a], (float) value);
        }
    }
}

package slabfield.solve;

/** Exact solve on the coarsest level: L L' factors of a matrix of at most some hundred unknowns. */
final class DenseCholesky {
    private final CoarseGrid level;
    /** Padded row and element of each unknown. */
    private final int[] row;

    private final int[] element;
    /** Rows of L, the diagonal inverted; 0 where the matrix is singular, which sets that unknown to 0. */
    private final double[][] factor;

    private final double[] y;

    DenseCholesky(NinePoint operator, CoarseGrid level) {
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
        y = new double[n];
        for (int a = 0; a < n; a++) {
            factor[a] = new double[a + 1];
            int j = row[a];
            int i = element[a];
            factor[a][a] = operator.row[j].diagonal.get(i);
            couple(a, number[j][i - 1], operator.row[j].east.get(i - 1));
            couple(a, number[j - 1][i], operator.row[j - 1].north.get(i));
            couple(a, number[j - 1][i - 1], operator.row[j - 1].northEast.get(i - 1));
            couple(a, number[j - 1][i + 1], operator.row[j - 1].northWest(i + 1));
        }
        for (int a = 0; a < n; a++) {
            factorRow(a);
        }
    }

    private void couple(int a, int other, double conductance) {
        if (other > 0) {
            factor[a][other - 1] = -conductance;
        }
    }

    private void factorRow(int a) {
        double[] r = factor[a];
        double whole = r[a];
        for (int c = 0; c < a; c++) {
            double[] s = factor[c];
            double sum = r[c];
            for (int k = 0; k < c; k++) {
                sum -= r[k] * s[k];
            }
            r[c] = sum * s[c];
        }
        double pivot = whole;
        for (int k = 0; k < a; k++) {
            pivot -= r[k] * r[k];
        }
        r[a] = pivot > whole * 1e-13 ? 1 / Math.sqrt(pivot) : 0;
    }

    /** Solves for the level's right-hand side into its x. */
    void solve() {
        for (int a = 0; a < y.length; a++) {
            double[] r = factor[a];
            double sum = level.b.get(row[a], element[a]);
            for (int k = 0; k < a; k++) {
                sum -= r[k] * y[k];
            }
            y[a] = sum * r[a];
        }
        for (int a = y.length - 1; a >= 0; a--) {
            double[] r = factor[a];
            double value = y[a] * r[a];
            for (int k = 0; k < a; k++) {
                y[k] -= r[k] * value;
            }
            level.x.set(row[a], element[a], (float) value);
        }
    }
}

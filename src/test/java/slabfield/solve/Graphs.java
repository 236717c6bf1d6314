package slabfield.solve;

import java.util.Arrays;
import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;

/** Test graphs with coordinates and conductances, and their dense answers. */
record Graphs(SymmetricMatrix matrix, double[] x, double[] y) {

    /** Every cell of a columns by rows grid that is not masked, 5-point or, with diagonals, 9-point; conductances over 4 decades. */
    static Graphs grid(int columns, int rows, boolean diagonals, double masked, long seed) {
        var random = new Random(seed);
        int[] node = new int[columns * rows];
        int n = 0;
        for (int c = 0; c < node.length; c++) {
            node[c] = random.nextDouble() < masked ? -1 : n++;
        }
        double[] x = new double[n];
        double[] y = new double[n];
        var builder = new SymmetricMatrix.Builder(n);
        int[][] steps = diagonals ? new int[][] {{1, 0}, {0, 1}, {1, 1}, {-1, 1}} : new int[][] {{1, 0}, {0, 1}};
        for (int c = 0; c < node.length; c++) {
            if (node[c] < 0) {
                continue;
            }
            int i = c % columns;
            int j = c / columns;
            x[node[c]] = i;
            y[node[c]] = j;
            for (int[] step : steps) {
                int a = i + step[0];
                int b = j + step[1];
                if (a >= 0 && a < columns && b < rows && node[b * columns + a] >= 0) {
                    builder.couple(node[c], node[b * columns + a]);
                }
            }
        }
        return new Graphs(builder.build(), x, y).withConductances(random);
    }

    /** Nodes anywhere in the unit square, coupled at random. */
    static Graphs scattered(int nodes, int couplings, long seed) {
        var random = new Random(seed);
        var builder = new SymmetricMatrix.Builder(nodes);
        for (int k = 0; k < couplings; k++) {
            builder.couple(random.nextInt(nodes), random.nextInt(nodes));
        }
        double[] x = random.doubles(nodes).toArray();
        double[] y = random.doubles(nodes).toArray();
        return new Graphs(builder.build(), x, y).withConductances(random);
    }

    /** A conductance on each coupling and a leak of 1e-3 on each node. */
    private Graphs withConductances(Random random) {
        double[] values = matrix.values();
        Arrays.fill(values, 0, matrix.size(), 1e-3);
        for (int i = 0; i < matrix.size(); i++) {
            for (int k = matrix.first(i); k < matrix.first(i + 1); k++) {
                double conductance = Math.pow(10, -4 * random.nextDouble());
                values[matrix.size() + k] = -conductance;
                values[i] += conductance;
                values[matrix.column(k)] += conductance;
            }
        }
        return this;
    }

    double[] someRightHandSide() {
        return new Random(99).doubles(matrix.size(), -1, 1).toArray();
    }

    Array2DRowRealMatrix dense() {
        int n = matrix.size();
        var dense = new Array2DRowRealMatrix(n, n);
        for (int i = 0; i < n; i++) {
            dense.setEntry(i, i, matrix.values()[i]);
            for (int k = matrix.first(i); k < matrix.first(i + 1); k++) {
                dense.setEntry(i, matrix.column(k), matrix.values()[n + k]);
                dense.setEntry(matrix.column(k), i, matrix.values()[n + k]);
            }
        }
        return dense;
    }

    double[] denseSolve(double[] rhs) {
        return new CholeskyDecomposition(dense(), 1e-12, 1e-14)
                .getSolver()
                .solve(new ArrayRealVector(rhs))
                .toArray();
    }
}

package slabfield.benchmark;

import slabfield.solve.GridOperator;
import slabfield.solve.Workers;

/** The unit of work: y = A x once over the active part of the grid, with ready diagonal, arrays of doubles, and nothing else. */
final class StencilPass {
    private final int columns;
    private final int rows;
    private final double[] diagonal;
    private final double[] east;
    private final double[] north;
    private final double[] x;
    private final double[] y;
    private final int[] first;
    private final int[] end;
    private final int pitch;
    private final Workers team;

    StencilPass(GridOperator operator, Workers team) {
        this.team = team;
        columns = operator.columns();
        rows = operator.rows();
        pitch = columns + 8;
        int size = pitch * (rows + 2);
        diagonal = new double[size];
        east = new double[size];
        north = new double[size];
        x = new double[size];
        y = new double[size];
        first = new int[rows];
        end = new int[rows];
        for (int j = 0; j < rows; j++) {
            first[j] = columns;
            for (int i = 0; i < columns; i++) {
                int c = j * columns + i;
                int q = (j + 1) * pitch + 4 + i;
                if (operator.active()[c]) {
                    first[j] = Math.min(first[j], i);
                    end[j] = i + 1;
                }
                x[q] = (q % 17) * 0.1;
                diagonal[q] = 4.1;
                east[q] = 1;
                north[q] = 1;
            }
        }
    }

    /** Seconds a pass takes at best. */
    double best(int repetitions) {
        double best = Double.POSITIVE_INFINITY;
        long warm = System.nanoTime() + GridBenchmark.AT_LEAST / 4;
        for (int k = 0; k < 20 * repetitions || System.nanoTime() < warm; k++) {
            long start = System.nanoTime();
            team.run(this::pass);
            best = Math.min(best, (System.nanoTime() - start) * 1e-9);
        }
        return best;
    }

    /** Rows are dealt out in turn, so that long and short ones are shared evenly. */
    private void pass(int me) {
        for (int j = me; j < rows; j += team.count()) {
            row((j + 1) * pitch + 4 + first[j], (j + 1) * pitch + 4 + end[j]);
        }
    }

    private void row(int from, int to) {
        for (int q = from; q < to; q++) {
            y[q] = diagonal[q] * x[q]
                    - east[q] * x[q + 1]
                    - east[q - 1] * x[q - 1]
                    - north[q] * x[q + pitch]
                    - north[q - pitch] * x[q - pitch];
        }
    }
}

package slabfield.solve;

import java.util.Arrays;

/**
 * Takes the slow part of the error out of an iteration: the level of each closed room ({@link RoomFinder}), exactly
 * (deflation: Nicolaides 1987, SIAM J. Numer. Anal. 24). With Z the rooms' indicators over the red cells of a
 * {@link RedBlackGrid} and S its operator, every direction d is replaced by {@code d - Z E^-1 (S Z)' d}, E = Z' S Z.
 */
final class Rooms {
    private final int count;
    /** Room of each red cell, from 1 on, by padded row and element. */
    private final short[][] room;
    /** Of each red cell, the element of S Z in its own room's column. */
    private final double[][] own;
    /** Elements of S Z in other rooms' columns, sorted by row: where each row's begin, and of each its cell, room and value. */
    private final int[] begin;

    private final int[] cell;
    private final short[] other;
    private final double[] value;
    /** Rows of the Cholesky factor of E. */
    private final double[][] factor;
    /** Each worker's sums by room. */
    private final double[][] parts;

    private final double[][] levels;

    private Rooms(int count, GridOperator operator, RedBlackGrid grid, short[] numbers, int workers) {
        this.count = count;
        room = new short[grid.rows + 2][grid.length];
        own = new double[grid.rows + 2][grid.length];
        factor = new double[count][count];
        var extras = new Extras();
        int columns = operator.columns();
        for (int c = 0; c < numbers.length; c++) {
            int i = c % columns;
            int j = c / columns;
            if (((i + j) & 1) == 0) {
                room[j + 1][i / 2 + 1] = numbers[c];
            }
        }
        for (int c = 0; c < numbers.length; c++) {
            if (operator.active()[c]) {
                new Cell(operator, numbers, c).enter(extras);
            }
        }
        begin = extras.sort(grid.rows);
        cell = extras.cells;
        other = extras.rooms;
        value = extras.values;
        for (int a = 0; a < count; a++) {
            factorRow(a);
        }
        parts = new double[workers][count];
        levels = new double[workers][count];
    }

    /** The rooms of a grid, or null where it has none. */
    static Rooms of(GridOperator operator, RedBlackGrid grid, int workers) {
        short[] numbers = RoomFinder.find(operator);
        int count = 0;
        for (short number : numbers) {
            count = Math.max(count, number);
        }
        return count == 0 ? null : new Rooms(count, operator, grid, numbers, workers);
    }

    /** A cell, its neighbours, its links and their sum with its leak. */
    private final class Cell {
        private final int at;
        private final int i;
        private final int j;
        private final int columns;
        private final short[] numbers;
        private final double[] links = new double[4];
        private final int[] neighbours;
        private double diagonal;

        Cell(GridOperator operator, short[] numbers, int c) {
            columns = operator.columns();
            this.numbers = numbers;
            at = c;
            i = c % columns;
            j = c / columns;
            neighbours = new int[] {c - 1, c + 1, c - columns, c + columns};
            links[0] = i > 0 ? operator.eastOf(c - 1, i - 1) : 0;
            links[1] = operator.eastOf(c, i);
            links[2] = j > 0 ? operator.northOf(c - columns, j - 1) : 0;
            links[3] = operator.northOf(c, j);
            diagonal = operator.leak()[c] + links[0] + links[1] + links[2] + links[3];
        }

        /** Adds what this cell gives to S Z and to E. */
        void enter(Extras extras) {
            if (((i + j) & 1) == 0) {
                add(at, numbers[at], diagonal, extras);
                return;
            }
            for (int k = 0; k < 4; k++) {
                for (int m = 0; m < 4; m++) {
                    if (links[k] > 0 && links[m] > 0) {
                        add(neighbours[k], numbers[neighbours[m]], -links[k] * links[m] / diagonal, extras);
                    }
                }
            }
        }

        private void add(int red, short column, double v, Extras extras) {
            if (column == 0) {
                return;
            }
            int row = red / columns + 1;
            int element = red % columns / 2 + 1;
            short here = numbers[red];
            if (here == column) {
                own[row][element] += v;
            } else {
                extras.add(row, element, column, v);
            }
            if (here > 0 && here >= column) {
                factor[here - 1][column - 1] += v;
            }
        }
    }

    /** A growing list of elements of S Z. */
    private static final class Extras {
        private int count;
        private int[] rows = new int[64];
        private int[] cells = new int[64];
        private short[] rooms = new short[64];
        private double[] values = new double[64];

        void add(int row, int element, short column, double v) {
            if (count == rows.length) {
                rows = Arrays.copyOf(rows, 2 * count);
                cells = Arrays.copyOf(cells, 2 * count);
                rooms = Arrays.copyOf(rooms, 2 * count);
                values = Arrays.copyOf(values, 2 * count);
            }
            rows[count] = row;
            cells[count] = element;
            rooms[count] = column;
            values[count++] = v;
        }

        /** Sorts by row and returns where each padded row's elements begin. */
        int[] sort(int gridRows) {
            int[] start = new int[gridRows + 3];
            for (int k = 0; k < count; k++) {
                start[rows[k] + 1]++;
            }
            for (int j = 0; j + 1 < start.length; j++) {
                start[j + 1] += start[j];
            }
            int[] next = start.clone();
            int[] sortedCells = new int[count];
            short[] sortedRooms = new short[count];
            double[] sortedValues = new double[count];
            for (int k = 0; k < count; k++) {
                int to = next[rows[k]]++;
                sortedCells[to] = cells[k];
                sortedRooms[to] = rooms[k];
                sortedValues[to] = values[k];
            }
            cells = sortedCells;
            rooms = sortedRooms;
            values = sortedValues;
            return start;
        }
    }

    private void factorRow(int a) {
        double[] r = factor[a];
        for (int c = 0; c < a; c++) {
            double sum = r[c];
            for (int k = 0; k < c; k++) {
                sum -= r[k] * factor[c][k];
            }
            r[c] = sum / factor[c][c];
        }
        double pivot = r[a];
        for (int k = 0; k < a; k++) {
            pivot -= r[k] * r[k];
        }
        r[a] = pivot > 1e-13 * r[a] ? Math.sqrt(pivot) : Double.POSITIVE_INFINITY;
    }

    /** A worker's part of Z' r, from padded rows from .. to - 1. */
    void gather(int me, float[][] r, int from, int to) {
        double[] sums = parts[me];
        Arrays.fill(sums, 0);
        for (int j = from; j < to; j++) {
            for (int k = 0; k < room[j].length; k++) {
                if (room[j][k] > 0) {
                    sums[room[j][k] - 1] += r[j][k];
                }
            }
        }
    }

    /** A worker's part of (S Z)' z, from padded rows from .. to - 1. */
    void gatherConjugate(int me, float[][] z, int from, int to) {
        double[] sums = parts[me];
        Arrays.fill(sums, 0);
        for (int j = from; j < to; j++) {
            short[] here = room[j];
            double[] w = own[j];
            float[] v = z[j];
            for (int k = 0; k < here.length; k++) {
                if (here[k] > 0) {
                    sums[here[k] - 1] += w[k] * v[k];
                }
            }
            for (int k = begin[j]; k < begin[j + 1]; k++) {
                sums[other[k] - 1] += value[k] * v[cell[k]];
            }
        }
    }

    /** Once all parts are there: each room's level E^-1 of the sum of parts, kept for this worker. */
    void solve(int me) {
        double[] y = levels[me];
        Arrays.fill(y, 0);
        for (double[] part : parts) {
            for (int a = 0; a < count; a++) {
                y[a] += part[a];
            }
        }
        for (int a = 0; a < count; a++) {
            for (int k = 0; k < a; k++) {
                y[a] -= factor[a][k] * y[k];
            }
            y[a] /= factor[a][a];
        }
        for (int a = count - 1; a >= 0; a--) {
            y[a] /= factor[a][a];
            for (int k = 0; k < a; k++) {
                y[k] -= factor[a][k] * y[a];
            }
        }
    }

    /** x += times the rooms' levels, in padded rows from .. to - 1. */
    void raise(int me, double times, double[][] x, int from, int to) {
        for (int j = from; j < to; j++) {
            for (int k = 0; k < room[j].length; k++) {
                if (room[j][k] > 0) {
                    x[j][k] += times * levels[me][room[j][k] - 1];
                }
            }
        }
    }

    /** p less the rooms' levels, in padded rows from .. to - 1. */
    void clear(int me, float[][] p, int from, int to) {
        for (int j = from; j < to; j++) {
            for (int k = 0; k < room[j].length; k++) {
                if (room[j][k] > 0) {
                    p[j][k] -= (float) levels[me][room[j][k] - 1];
                }
            }
        }
    }
}

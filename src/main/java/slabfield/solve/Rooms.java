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
    private final float[][] own;
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

    private Rooms(int count, GridOperator operator, RedBlackGrid grid, short[][] numbers, int workers) {
        this.count = count;
        room = new short[grid.rows + 2][grid.length];
        own = new float[grid.rows + 2][grid.length];
        factor = new double[count][count];
        var entries = new Entries(numbers, operator, grid.length);
        for (int j = 1; j <= grid.rows; j++) {
            short[] here = numbers[j];
            for (int i = 1; i <= operator.columns(); i++) {
                if (((i + j) & 1) == 0) {
                    room[j][(i + 1) / 2] = here[i];
                    if (here[i] > 0) {
                        entries.add(j, i, here[i], entries.diagonal(j, i));
                    }
                } else if ((here[i - 1] | here[i + 1] | numbers[j - 1][i] | numbers[j + 1][i]) != 0) {
                    entries.eliminate(j, i);
                }
            }
        }
        for (int j = 1; j <= grid.rows; j++) {
            Loops.round(own[j], entries.own[j], 0, grid.length);
        }
        begin = entries.sort(grid.rows);
        cell = entries.cells;
        other = entries.rooms;
        value = entries.values;
        for (int a = 0; a < count; a++) {
            factorRow(a);
        }
        parts = new double[workers][count];
        levels = new double[workers][count];
    }

    /** The rooms of a grid, or null where it has none. */
    static Rooms of(GridOperator operator, RedBlackGrid grid, int workers) {
        short[][] numbers = RoomFinder.find(operator);
        int count = 0;
        for (short[] row : numbers) {
            for (short number : row) {
                count = Math.max(count, number);
            }
        }
        return count == 0 ? null : new Rooms(count, operator, grid, numbers, workers);
    }

    /** Takes in elements of S Z and E; those of S Z in other rooms' columns go into a growing list. */
    private final class Entries {
        private final short[][] numbers;
        private final int[] rowOf = new int[4];
        private final int[] columnOf = new int[4];
        private final double[] links = new double[4];
        private int count;
        private int[] rows = new int[64];
        private int[] cells = new int[64];
        private short[] rooms = new short[64];
        private double[] values = new double[64];

        private final GridOperator operator;
        /** Sums of what mostly cancels out, not rounded before they are complete. */
        private final double[][] own;

        Entries(short[][] numbers, GridOperator operator, int length) {
            this.numbers = numbers;
            this.operator = operator;
            own = new double[numbers.length][length];
        }

        /** Reads the links of a cell; returns its diagonal, 0 where it is inactive. */
        double diagonal(int j, int i) {
            boolean[] active = operator.active();
            int columns = operator.columns();
            int c = (j - 1) * columns + i - 1;
            if (!active[c]) {
                return 0;
            }
            double[] north = operator.north();
            neighbour(0, j, i - 1, i > 1 && active[c - 1] ? operator.east()[c - 1] : 0);
            neighbour(1, j, i + 1, i < columns && active[c + 1] ? operator.east()[c] : 0);
            neighbour(2, j - 1, i, j > 1 && active[c - columns] ? north[c - columns] : 0);
            neighbour(3, j + 1, i, j < operator.rows() && active[c + columns] ? north[c] : 0);
            return operator.leak()[c] + (links[0] + links[1]) + (links[2] + links[3]);
        }

        /** What a black cell gives when it is eliminated. */
        void eliminate(int j, int i) {
            double diagonal = diagonal(j, i);
            if (!(diagonal > 0)) {
                return;
            }
            short all = common();
            if (all >= 0) {
                double sum = (links[0] + links[1]) + (links[2] + links[3]);
                for (int k = 0; k < 4; k++) {
                    if (links[k] > 0) {
                        add(rowOf[k], columnOf[k], all, -links[k] * sum / diagonal);
                    }
                }
                return;
            }
            for (int k = 0; k < 4; k++) {
                for (int m = 0; m < 4; m++) {
                    if (links[k] > 0 && links[m] > 0) {
                        short column = numbers[rowOf[m]][columnOf[m]];
                        add(rowOf[k], columnOf[k], column, -links[k] * links[m] / diagonal);
                    }
                }
            }
        }

        /** The room, or 0 for none, that all neighbours are in to which there is a link; -1 where they are in several. */
        private short common() {
            short found = -1;
            for (int k = 0; k < 4; k++) {
                if (links[k] > 0) {
                    short number = numbers[rowOf[k]][columnOf[k]];
                    if (found >= 0 && number != found) {
                        return -1;
                    }
                    found = number;
                }
            }
            return found;
        }

        private void neighbour(int k, int j, int i, double link) {
            rowOf[k] = j;
            columnOf[k] = i;
            links[k] = link;
        }

        /** Adds v to a red cell's element of S Z. */
        void add(int j, int i, short column, double v) {
            if (column == 0) {
                return;
            }
            short here = numbers[j][i];
            if (here == column) {
                own[j][(i + 1) / 2] += v;
            } else {
                list(j, (i + 1) / 2, column, v);
            }
            if (here >= column) {
                factor[here - 1][column - 1] += v;
            }
        }

        private void list(int row, int element, short column, double v) {
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
            float[] w = own[j];
            float[] v = z[j];
            for (int k = 0; k < here.length; k++) {
                if (here[k] > 0) {
                    sums[here[k] - 1] += (double) w[k] * v[k];
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

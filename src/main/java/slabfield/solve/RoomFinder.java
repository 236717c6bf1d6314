package slabfield.solve;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Finds the rooms of a grid: groups of cells joined by strong links, with little conductance to anything else. A link is
 * weak where it is below a twentieth of the strongest at either of its cells. A group is a room where all its weak
 * links and leaks together conduct less than a third of its strongest link: then one false tie across its walls, which a
 * coarse level may make, hides its level from the coarse levels.
 *
 * <p>Each row is cut into runs of strongly linked cells, and runs of neighbouring rows are joined.
 */
final class RoomFinder {
    private static final double WEAK = 0.05;
    private static final double CLOSED = 0.3;
    /** Smaller groups are left to smoothing. */
    private static final int SMALLEST = 16;
    /** The most tightly closed are kept, as every room costs a row and a column of a dense matrix. */
    private static final int MOST = 64;

    private final int columns;
    private final int rows;
    /** Run of each cell, from 1 on, by row; 0 where inactive. */
    private final int[][] run;
    /** Of each run: one it is joined to; number of cells; strongest link; conductance of leaks, and later of all that leaves it. */
    private int[] parent = new int[256];

    private int[] size = new int[256];
    private double[] strongest = new double[256];
    private double[] outward = new double[256];
    private int runs;
    private final WeakLinks weak = new WeakLinks();

    private RoomFinder(GridOperator operator) {
        columns = operator.columns();
        rows = operator.rows();
        run = new int[rows + 1][columns + 2];
        var source = new OperatorRows(operator);
        double[] strengthBelow = new double[columns + 2];
        double[] strength = new double[columns + 2];
        OperatorRows.Row below = source.none();
        OperatorRows.Row row = source.none();
        for (int j = 1; j <= rows; j++) {
            source.read(j, row);
            for (int i = 1; i <= columns; i++) {
                strength[i] = Math.max(Math.max(row.east[i], row.east[i - 1]), Math.max(row.north[i], below.north[i]));
            }
            cut(j, row, operator.active(), strength);
            join(j, below, strengthBelow, strength);
            double[] spare = strengthBelow;
            strengthBelow = strength;
            strength = spare;
            OperatorRows.Row next = below;
            below = row;
            row = next;
        }
    }

    /** Cuts row j into runs. */
    private void cut(int j, OperatorRows.Row row, boolean[] active, double[] strength) {
        int[] here = run[j];
        int at = (j - 1) * columns - 1;
        int r = 0;
        int begun = 1;
        double most = 0;
        double leaks = 0;
        for (int i = 1; i <= columns; i++) {
            double link = row.east[i - 1];
            if (r == 0 || !(link > 0) || link < WEAK * Math.max(strength[i - 1], strength[i])) {
                end(r, i - begun, most, leaks);
                most = 0;
                leaks = 0;
                begun = i;
                int before = r;
                r = active[at + i] ? begin() : 0;
                if (link > 0) {
                    weak.add(before, r, link);
                }
            }
            here[i] = r;
            most = Math.max(most, strength[i]);
            leaks += row.leak[i];
        }
        end(r, columns + 1 - begun, most, leaks);
    }

    private void end(int r, int cells, double most, double leaks) {
        size[r] = cells;
        strongest[r] = most;
        outward[r] = leaks;
    }

    private int begin() {
        runs++;
        if (runs == parent.length) {
            parent = Arrays.copyOf(parent, 2 * runs);
            size = Arrays.copyOf(size, 2 * runs);
            strongest = Arrays.copyOf(strongest, 2 * runs);
            outward = Arrays.copyOf(outward, 2 * runs);
        }
        parent[runs] = runs;
        return runs;
    }

    /** Joins runs of row j to those of the row below. */
    private void join(int j, OperatorRows.Row below, double[] strengthBelow, double[] strength) {
        int lastOne = 0;
        int lastOther = 0;
        for (int i = 1; i <= columns; i++) {
            double link = below.north[i];
            if (!(link > 0)) {
                continue;
            }
            int one = run[j - 1][i];
            int other = run[j][i];
            if (link < WEAK * Math.max(strengthBelow[i], strength[i])) {
                weak.add(one, other, link);
            } else if (one != lastOne || other != lastOther) {
                lastOne = one;
                lastOther = other;
                unite(root(one), root(other));
            }
        }
    }

    private void unite(int a, int b) {
        if (a != b) {
            parent[b] = a;
            size[a] += size[b];
            strongest[a] = Math.max(strongest[a], strongest[b]);
            outward[a] += outward[b];
        }
    }

    private int root(int r) {
        int at = r;
        while (parent[at] != at) {
            parent[at] = parent[parent[at]];
            at = parent[at];
        }
        return at;
    }

    /** Links between runs that join nothing. */
    private static final class WeakLinks {
        private int count;
        private int[] one = new int[256];
        private int[] other = new int[256];
        private double[] conductance = new double[256];

        void add(int a, int b, double g) {
            if (count == one.length) {
                one = Arrays.copyOf(one, 2 * count);
                other = Arrays.copyOf(other, 2 * count);
                conductance = Arrays.copyOf(conductance, 2 * count);
            }
            one[count] = a;
            other[count] = b;
            conductance[count++] = g;
        }
    }

    /** Number of the room that each cell is in, from 1 on, by row and column, padded by one at each end; 0 where in none. */
    static short[][] find(GridOperator operator) {
        return new RoomFinder(operator).number();
    }

    private short[][] number() {
        for (int k = 0; k < weak.count; k++) {
            int a = root(weak.one[k]);
            int b = root(weak.other[k]);
            if (a != b) {
                outward[a] += weak.conductance[k];
                outward[b] += weak.conductance[k];
            }
        }
        int[] closed = IntStream.rangeClosed(1, runs)
                .filter(r -> parent[r] == r && size[r] >= SMALLEST && outward[r] < CLOSED * strongest[r])
                .boxed()
                .sorted((a, b) -> Double.compare(outward[a] / strongest[a], outward[b] / strongest[b]))
                .limit(MOST)
                .mapToInt(r -> r)
                .toArray();
        short[] number = new short[runs + 1];
        for (int k = 0; k < closed.length; k++) {
            number[closed[k]] = (short) (k + 1);
        }
        for (int r = 1; r <= runs; r++) {
            number[r] = number[root(r)];
        }
        short[][] room = new short[rows + 2][columns + 2];
        for (int j = 1; j <= rows; j++) {
            for (int i = 1; i <= columns; i++) {
                room[j][i] = number[run[j][i]];
            }
        }
        return room;
    }
}

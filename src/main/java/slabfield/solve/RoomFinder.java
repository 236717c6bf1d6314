package slabfield.solve;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Finds the rooms of a grid: groups of cells joined by strong links, with little conductance to anything else. A link is
 * weak where it is below a twentieth of the strongest at either of its cells. A group is a room where all its weak
 * links and leaks together conduct less than a third of its strongest link: then one false tie across its walls, which a
 * coarse level may make, hides its level from the coarse levels.
 */
final class RoomFinder {
    private static final double WEAK = 0.05;
    private static final double CLOSED = 0.3;
    /** Smaller groups are left to smoothing. */
    private static final int SMALLEST = 16;
    /** The most tightly closed are kept, as every room costs a row and a column of a dense matrix. */
    private static final int MOST = 64;

    private final GridOperator operator;
    private final int[] parent;
    private final double[] strongest;

    private RoomFinder(GridOperator operator) {
        this.operator = operator;
        parent = new int[operator.size()];
        Arrays.setAll(parent, c -> c);
        strongest = new double[operator.size()];
    }

    /** Number of the room that each cell is in, from 1 on; 0 where in none. */
    static short[] find(GridOperator operator) {
        var finder = new RoomFinder(operator);
        finder.eachLink(finder::strengthen);
        finder.eachLink(finder::join);
        return finder.number();
    }

    private interface Link {
        void at(int a, int b, double conductance);
    }

    private void eachLink(Link link) {
        int columns = operator.columns();
        for (int c = 0; c < parent.length; c++) {
            double e = operator.eastOf(c, c % columns);
            if (e > 0) {
                link.at(c, c + 1, e);
            }
            double n = operator.northOf(c, c / columns);
            if (n > 0) {
                link.at(c, c + columns, n);
            }
        }
    }

    private void strengthen(int a, int b, double conductance) {
        strongest[a] = Math.max(strongest[a], conductance);
        strongest[b] = Math.max(strongest[b], conductance);
    }

    private boolean isWeak(int a, int b, double conductance) {
        return conductance < WEAK * Math.max(strongest[a], strongest[b]);
    }

    private void join(int a, int b, double conductance) {
        if (isWeak(a, b, conductance)) {
            return;
        }
        int one = root(a);
        int other = root(b);
        if (one < other) {
            parent[other] = one;
        } else {
            parent[one] = other;
        }
    }

    private int root(int c) {
        int at = c;
        while (parent[at] != at) {
            parent[at] = parent[parent[at]];
            at = parent[at];
        }
        return at;
    }

    private short[] number() {
        int n = parent.length;
        for (int c = 0; c < n; c++) {
            parent[c] = root(c);
        }
        int[] size = new int[n];
        double[] outward = new double[n];
        double[] inward = new double[n];
        for (int c = 0; c < n; c++) {
            if (operator.active()[c]) {
                int group = parent[c];
                size[group]++;
                outward[group] += operator.leak()[c];
                inward[group] = Math.max(inward[group], strongest[c]);
            }
        }
        eachLink((a, b, conductance) -> {
            if (parent[a] != parent[b]) {
                outward[parent[a]] += conductance;
                outward[parent[b]] += conductance;
            }
        });
        short[] room = new short[n];
        int[] closed = IntStream.range(0, n)
                .filter(c -> size[c] >= SMALLEST && outward[c] < CLOSED * inward[c])
                .boxed()
                .sorted((c, d) -> Double.compare(outward[c] / inward[c], outward[d] / inward[d]))
                .limit(MOST)
                .mapToInt(c -> c)
                .toArray();
        short[] numbers = new short[n];
        for (int k = 0; k < closed.length; k++) {
            numbers[closed[k]] = (short) (k + 1);
        }
        for (int c = 0; c < n; c++) {
            room[c] = operator.active()[c] ? numbers[parent[c]] : 0;
        }
        return room;
    }
}

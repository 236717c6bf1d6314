package slabfield.figure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import slabfield.field.PressureField;

/**
 * Lines of equal pressure by marching squares. Every cell with a pressure is cut into four quarters whose corners are
 * cell middles, sides and corners, the latter with the mean of the cells that meet there; a quarter of a cell without
 * pressure holds no line. So lines run up to the edge of the layer and never across a cell without pressure.
 */
public final class Contours {
    /**
     * One line.
     *
     * @param level its pressure [Pa]
     * @param line x0, y0, x1, y1 ... on the plan, the first place not repeated where it is closed [m]
     * @param closed whether its last place joins its first
     */
    public record Isoline(double level, double[] line, boolean closed) {}

    private static final int NONE = -1;

    private final PressureField field;
    private final int nodesX;
    private final int nodesY;
    private final double[] node;
    /** For every side between two nodes, up to two places in {@code ends} of pieces that end on it. */
    private final int[] first;

    private final int[] second;
    private int[] ends = new int[256];
    private int count;

    private Contours(PressureField field) {
        this.field = field;
        nodesX = 2 * field.grid().columns() + 1;
        nodesY = 2 * field.grid().rows() + 1;
        node = new double[nodesX * nodesY];
        for (int j = 0; j < nodesY; j++) for (int i = 0; i < nodesX; i++) node[j * nodesX + i] = nodeValue(i, j);
        first = new int[2 * node.length];
        second = new int[2 * node.length];
    }

    /** Lines at each of the levels [Pa], in that order. */
    public static List<Isoline> of(PressureField field, List<Double> levels) {
        Contours contours = new Contours(field);
        List<Isoline> found = new ArrayList<>();
        for (double level : levels) contours.trace(level, found);
        return found;
    }

    private double nodeValue(int i, int j) {
        int right = i / 2, left = i % 2 == 0 ? right - 1 : right, above = j / 2, below = j % 2 == 0 ? above - 1 : above;
        double a = cell(left, below), b = cell(right, above), c = cell(left, above), d = cell(right, below);
        boolean onlyAcross = Double.isNaN(a) == Double.isNaN(b)
                && Double.isNaN(c) == Double.isNaN(d)
                && Double.isNaN(a) != Double.isNaN(c);
        if (onlyAcross) return Double.NaN;
        int n = has(a) + has(b) + has(c) + has(d);
        return n == 0 ? Double.NaN : (orZero(a) + orZero(b) + orZero(c) + orZero(d)) / n;
    }

    private static int has(double v) {
        return Double.isNaN(v) ? 0 : 1;
    }

    private static double orZero(double v) {
        return Double.isNaN(v) ? 0 : v;
    }

    private double cell(int column, int row) {
        var grid = field.grid();
        boolean inside = column >= 0 && row >= 0 && column < grid.columns() && row < grid.rows();
        return inside ? field.pressure()[grid.index(column, row)] : Double.NaN;
    }

    private void trace(double level, List<Isoline> found) {
        Arrays.fill(first, NONE);
        Arrays.fill(second, NONE);
        count = 0;
        for (int j = 0; j < nodesY - 1; j++)
            for (int i = 0; i < nodesX - 1; i++) if (!Double.isNaN(cell(i / 2, j / 2))) square(i, j, level);
        boolean[] used = new boolean[count];
        for (int pass = 0; pass < 2; pass++)
            for (int end = 0; end < 2 * count; end++) {
                boolean open = second[ends[end]] == NONE;
                if (!used[end / 2] && (open || pass == 1)) found.add(follow(end, level, used));
            }
    }

    /** The pieces of line in one quarter, as pairs of sides. */
    private void square(int i, int j, double level) {
        int low = j * nodesX + i, up = low + nodesX;
        double a = node[low], b = node[low + 1], c = node[up + 1], d = node[up];
        if (Double.isNaN(a + b + c + d)) return;
        int form = (a < level ? 0 : 1) | (b < level ? 0 : 2) | (c < level ? 0 : 4) | (d < level ? 0 : 8);
        int south = low, north = up, west = node.length + low, east = node.length + low + 1;
        boolean middleAbove = (a + b + c + d) / 4 >= level;
        switch (form) {
            case 1, 14 -> piece(west, south);
            case 2, 13 -> piece(south, east);
            case 3, 12 -> piece(west, east);
            case 4, 11 -> piece(east, north);
            case 6, 9 -> piece(south, north);
            case 7, 8 -> piece(west, north);
            case 5, 10 -> {
                boolean joined = middleAbove == (form == 5);
                piece(west, joined ? north : south);
                piece(east, joined ? south : north);
            }
            default -> {}
        }
    }

    private void piece(int from, int to) {
        if (2 * count + 2 > ends.length) ends = Arrays.copyOf(ends, 2 * ends.length);
        for (int side : new int[] {from, to}) {
            int place = 2 * count + (side == from ? 0 : 1);
            ends[place] = side;
            if (first[side] == NONE) first[side] = place;
            else second[side] = place;
        }
        count++;
    }

    /** From one end of a piece along all that join it. */
    private Isoline follow(int start, double level, boolean[] used) {
        List<double[]> places = new ArrayList<>();
        int end = start;
        boolean closed = false;
        add(places, ends[end], level);
        while (!used[end / 2]) {
            used[end / 2] = true;
            int side = ends[end ^ 1];
            if (side == ends[start]) {
                closed = true;
                break;
            }
            add(places, side, level);
            int next = first[side] == (end ^ 1) ? second[side] : first[side];
            if (next == NONE) break;
            end = next;
        }
        double[] line = new double[2 * places.size()];
        for (int k = 0; k < places.size(); k++) System.arraycopy(places.get(k), 0, line, 2 * k, 2);
        return new Isoline(level, line, closed);
    }

    private void add(List<double[]> places, int side, double level) {
        boolean upright = side >= node.length;
        int from = upright ? side - node.length : side, to = from + (upright ? nodesX : 1);
        double t = (level - node[from]) / (node[to] - node[from]);
        double i = from % nodesX + (upright ? 0 : t), j = from / nodesX + (upright ? t : 0);
        var grid = field.grid();
        double[] place = {grid.left() + i * grid.width() / 2, grid.bottom() + j * grid.height() / 2};
        if (places.isEmpty() || !Arrays.equals(places.get(places.size() - 1), place)) places.add(place);
    }
}

package slabfield.benchmark;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import slabfield.solve.KeptResponses;
import slabfield.solve.NestedDissection;
import slabfield.solve.PanelCholesky;
import slabfield.solve.SymmetricMatrix;

/** A held suction point on a square grid of a layer with a leak, moved from cell to cell; all laws linear. */
public final class DragKernel {
    /** Radius of the pit [cells]. */
    static final double RADIUS = 1.5;

    static final double LEAK = 1e-3;
    /** Conductance between the pit and each cell at its rim, and the pressure held in it [Pa]. */
    static final double TIE = 1.5;

    static final double HELD = -200;
    /** Cells around the way for which responses are kept. */
    private static final int AROUND = 4;

    private final int side;
    private final SymmetricMatrix matrix;
    private final PanelCholesky factor;
    private final double[] right;
    private final KeptResponses responses;
    private final double[] answer;
    private final double[] unit;

    /** @param side cells along an edge */
    public DragKernel(int side) {
        this.side = side;
        int n = side * side;
        double[] x = new double[n], y = new double[n];
        matrix = grid(side, x, y);
        factor = new PanelCholesky(matrix, NestedDissection.order(matrix, x, y));
        refactor();
        right = new double[n];
        answer = new double[n];
        unit = new double[n];
        responses = new KeptResponses(factor, right);
    }

    /** A five-point grid of links of one, with a leak at each node. */
    static SymmetricMatrix grid(int side, double[] x, double[] y) {
        int n = side * side;
        var builder = new SymmetricMatrix.Builder(n);
        for (int c = 0; c < n; c++) {
            x[c] = c % side;
            y[c] = c / side;
            if (c % side + 1 < side) builder.couple(c, c + 1);
            if (c + side < n) builder.couple(c, c + side);
        }
        SymmetricMatrix matrix = builder.build();
        Arrays.fill(matrix.values(), 0, n, LEAK);
        for (int c = 0; c < n; c++) {
            if (c % side + 1 < side) link(matrix, c, c + 1);
            if (c + side < n) link(matrix, c, c + side);
        }
        return matrix;
    }

    private static void link(SymmetricMatrix matrix, int a, int b) {
        matrix.values()[matrix.slot(a, b)] = -1;
        matrix.values()[a]++;
        matrix.values()[b]++;
    }

    /** Factors the grid anew. */
    public void refactor() {
        if (factor.factor().isPresent()) throw new IllegalStateException("the grid has a leak everywhere");
    }

    /** One solve with the kept factor. */
    public double[] solveOnce() {
        right[side / 2] = 1;
        factor.solve(right, answer);
        right[side / 2] = 0;
        return answer;
    }

    /** Fetches the responses of all nodes near a column's middle, and says how many are at hand then. */
    public int keepAround(int column) {
        List<Integer> nodes = new ArrayList<>();
        for (int j = -AROUND; j <= AROUND; j++)
            for (int i = -AROUND; i <= AROUND; i++) nodes.add((side / 2 + j) * side + column + i);
        responses.keep(nodes.stream().mapToInt(k -> k).toArray());
        return responses.kept();
    }

    /** The field with the point at a column of the middle row, from kept responses. */
    public double[] moveTo(int column) {
        responses.solve(point(column, HELD), answer);
        return answer;
    }

    /** Keeps what the point at a column adds for each pascal that it is held lower. */
    public void keepUnit(int column) {
        responses.unit(point(column, -1), unit);
    }

    /** The field when the point of {@link #keepUnit} is held so many pascals lower. */
    public double[] strengthen(double by) {
        for (int i = 0; i < answer.length; i++) answer[i] += by * unit[i];
        return answer;
    }

    /** Largest difference between a moved point's field and that of a factor of the changed grid, over the largest pressure. */
    public double error(int column) {
        KeptResponses.Change change = point(column, HELD);
        double[] kept = moveTo(column).clone(), load = new double[kept.length], exact = new double[kept.length];
        double[] x = new double[kept.length], y = new double[kept.length];
        SymmetricMatrix changed = grid(side, x, y);
        for (int a = 0; a < change.nodes().length; a++) {
            load[change.nodes()[a]] += change.load()[a];
            for (int b = a; b < change.nodes().length; b++)
                if (change.matrix()[a][b] != 0)
                    changed.values()[changed.slot(change.nodes()[a], change.nodes()[b])] += change.matrix()[a][b];
        }
        PanelCholesky anew = new PanelCholesky(changed, NestedDissection.order(changed, x, y));
        if (anew.factor().isPresent()) throw new IllegalStateException("the changed grid has a leak everywhere");
        anew.solve(load, exact);
        double worst = 0, most = 0;
        for (int i = 0; i < kept.length; i++) {
            worst = Math.max(worst, Math.abs(kept[i] - exact[i]));
            most = Math.max(most, Math.abs(exact[i]));
        }
        return worst / most;
    }

    /** The cells under the pit lose their links; those at its rim are tied to the pit, which is held at a pressure. */
    private KeptResponses.Change point(int column, double pressure) {
        int reach = (int) Math.ceil(RADIUS) + 1, wide = 2 * reach + 1;
        int[] number = new int[wide * wide], nodes = new int[wide * wide];
        int count = 0;
        for (int j = -reach; j <= reach; j++)
            for (int i = -reach; i <= reach; i++) {
                boolean near =
                        inside(i, j) || inside(i + 1, j) || inside(i - 1, j) || inside(i, j + 1) || inside(i, j - 1);
                number[(j + reach) * wide + i + reach] = near ? count : -1;
                if (near) nodes[count++] = (side / 2 + j) * side + column + i;
            }
        double[][] c = new double[count][count];
        double[] f = new double[count];
        for (int j = -reach; j <= reach; j++)
            for (int i = -reach; i <= reach; i++)
                for (int k = 0; k < 2; k++) {
                    int i2 = i + 1 - k, j2 = j + k;
                    if (!inside(i, j) && !inside(i2, j2)) continue;
                    int a = number[(j + reach) * wide + i + reach], b = number[(j2 + reach) * wide + i2 + reach];
                    c[a][a]--;
                    c[b][b]--;
                    c[a][b]++;
                    c[b][a]++;
                    if (inside(i, j) != inside(i2, j2)) hold(c, f, inside(i, j) ? b : a, pressure);
                }
        return new KeptResponses.Change(Arrays.copyOf(nodes, count), c, f);
    }

    private static void hold(double[][] c, double[] f, int rim, double pressure) {
        c[rim][rim] += TIE;
        f[rim] += TIE * pressure;
    }

    /** True for a cell under the point at a column, which has no pressure of the layer. */
    boolean isUnder(int cell, int column) {
        return inside(cell % side - column, cell / side - side / 2);
    }

    static boolean inside(int i, int j) {
        return i * i + j * j <= RADIUS * RADIUS;
    }
}

package slabfield.solve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Kept columns give the answer of the changed system itself. */
class KeptResponsesTest {
    private static final int SIDE = 20;

    private final Random random = new Random(8);
    private final double[] x = new double[SIDE * SIDE];
    private final double[] y = new double[SIDE * SIDE];

    private SymmetricMatrix grid() {
        int n = SIDE * SIDE;
        var builder = new SymmetricMatrix.Builder(n);
        for (int c = 0; c < n; c++) {
            x[c] = c % SIDE;
            y[c] = c / SIDE;
            if (c % SIDE + 1 < SIDE) builder.couple(c, c + 1);
            if (c + SIDE < n) builder.couple(c, c + SIDE);
        }
        SymmetricMatrix m = builder.build();
        for (int c = 0; c < n; c++) {
            m.values()[c] += 1e-3;
            for (int to : new int[] {c % SIDE + 1 < SIDE ? c + 1 : -1, c + SIDE < n ? c + SIDE : -1}) {
                if (to < 0) continue;
                double h = 0.5 + random.nextDouble();
                m.values()[m.slot(c, to)] -= h;
                m.values()[c] += h;
                m.values()[to] += h;
            }
        }
        return m;
    }

    /** A held point takes the place of a node: its links are cut and its neighbours are tied to the point instead. */
    private KeptResponses.Change point(SymmetricMatrix m, int at, double pressure) {
        int[] nodes = {at, at - 1, at + 1, at - SIDE, at + SIDE};
        double[][] c = new double[5][5];
        double[] f = new double[5];
        for (int k = 1; k < 5; k++) {
            double h = -m.values()[m.slot(at, nodes[k])], tie = 3 * h;
            c[0][0] -= h;
            c[0][k] += h;
            c[k][0] += h;
            c[k][k] += tie - h;
            f[k] = tie * pressure;
        }
        return new KeptResponses.Change(nodes, c, f);
    }

    private double[] direct(SymmetricMatrix m, double[] load, KeptResponses.Change change) {
        SymmetricMatrix changed = grid();
        System.arraycopy(m.values(), 0, changed.values(), 0, m.entries());
        double[] right = load.clone(), answer = new double[right.length];
        for (int a = 0; a < change.nodes().length; a++) {
            right[change.nodes()[a]] += change.load()[a];
            for (int b = a; b < change.nodes().length; b++)
                if (change.matrix()[a][b] != 0)
                    changed.values()[changed.slot(change.nodes()[a], change.nodes()[b])] += change.matrix()[a][b];
        }
        PanelCholesky factor = new PanelCholesky(changed, NestedDissection.order(changed, x, y));
        assertThat(factor.factor()).isEmpty();
        factor.solve(right, answer);
        return answer;
    }

    @Test
    void aPointThatMovesAndItsStrength() {
        SymmetricMatrix m = grid();
        double[] load = new double[SIDE * SIDE], answer = new double[load.length], unit = new double[load.length];
        for (int i = 0; i < load.length; i++) load[i] = random.nextGaussian();
        PanelCholesky factor = new PanelCholesky(m, NestedDissection.order(m, x, y));
        assertThat(factor.factor()).isEmpty();
        KeptResponses kept = new KeptResponses(factor, load);
        int middle = SIDE / 2 * SIDE + SIDE / 2;
        for (int at : new int[] {middle, middle + 1, middle + 1 + SIDE, middle}) {
            KeptResponses.Change change = point(m, at, -200);
            kept.solve(change, answer);
            double[] exact = direct(m, load, change);
            for (int i = 0; i < answer.length; i++)
                assertThat(answer[i]).isCloseTo(exact[i], within(1e-9 * (1 + Math.abs(exact[i]))));
        }
        assertThat(kept.kept()).isLessThan(15);
        kept.unit(point(m, middle, 1), unit);
        double[] exact = direct(m, load, point(m, middle, -150));
        for (int i = 0; i < answer.length; i++)
            assertThat(answer[i] + 50 * unit[i]).isCloseTo(exact[i], within(1e-9 * (1 + Math.abs(exact[i]))));
    }
}

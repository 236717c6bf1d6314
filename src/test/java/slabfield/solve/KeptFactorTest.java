package slabfield.solve;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** When a factor of an earlier matrix is used again and when a new one is made; answers are as good as asked for either way. */
class KeptFactorTest {
    private static final double FINE = 1e-9;

    private final SymmetricMatrix matrix = Graphs.grid(40, 30, false, 0.1, 5).matrix();
    private final Graphs graph = Graphs.grid(40, 30, false, 0.1, 5);
    private final KeptFactor kept =
            new KeptFactor(matrix, RoomyFactor.exact(matrix, NestedDissection.order(matrix, graph.x(), graph.y())));
    private final double[] right = new double[matrix.size()];

    @BeforeEach
    void load() {
        for (int i = 0; i < right.length; i++) right[i] = Math.sin(i);
    }

    /** Makes every node leakier, to so many times its leak of 1e-3. */
    private void changed(double times) {
        for (int i = 0; i < matrix.size(); i++) matrix.values()[i] += 1e-3 * (times - 1);
        kept.changed();
    }

    private void solve(double tolerance, double toGo) {
        double[] x = new double[right.length], back = new double[right.length];
        assertThat(kept.solve(right, x, tolerance, toGo)).isTrue();
        matrix.multiply(x, back);
        double off = 0, all = 0;
        for (int i = 0; i < back.length; i++) {
            off += Math.pow(back[i] - right[i], 2);
            all += right[i] * right[i];
        }
        assertThat(Math.sqrt(off)).isLessThanOrEqualTo(1.01 * tolerance * Math.sqrt(all));
    }

    @Test
    void anEarlierFactorServesAMatrixThatIsLittleChanged() {
        solve(FINE, FINE);
        changed(1.05);
        solve(FINE, FINE);
        assertThat(kept.factors()).isEqualTo(1);
    }

    @Test
    void aMatrixThatIsMuchChangedGetsItsOwn() {
        solve(FINE, FINE);
        changed(1000);
        solve(FINE, FINE);
        assertThat(kept.factors()).isEqualTo(2);
    }

    /** Where much is still to be gained from like matrices, a factor is worth more. */
    @Test
    void aLongWayToGoPaysForANewOne() {
        solve(FINE, FINE);
        changed(4);
        solve(0.1, 0.1);
        assertThat(kept.factors()).isEqualTo(1);
        solve(0.1, 1e-13);
        assertThat(kept.factors()).isEqualTo(2);
    }

    @Test
    void manyRightHandSidesOfOneMatrixPayForANewOne() {
        solve(FINE, FINE);
        changed(1.2);
        solve(FINE, FINE);
        assertThat(kept.factors()).isEqualTo(1);
        for (int k = 0; k < 6; k++) solve(FINE, FINE);
        assertThat(kept.factors()).isEqualTo(2);
    }
}

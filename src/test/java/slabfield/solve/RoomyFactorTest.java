package slabfield.solve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** One analysis serves matrices whose nodes and couplings it has room for. */
class RoomyFactorTest {
    private static SymmetricMatrix matrix(int size, double leak, int[]... links) {
        var builder = new SymmetricMatrix.Builder(size);
        for (int[] l : links) builder.couple(l[0], l[1]);
        SymmetricMatrix m = builder.build();
        for (int i = 0; i < size; i++) m.values()[i] = leak * (i + 1);
        for (int[] l : links) {
            m.values()[m.slot(l[0], l[1])] -= l[2];
            m.values()[l[0]] += l[2];
            m.values()[l[1]] += l[2];
        }
        return m;
    }

    private static final int[][] LADDER = {{0, 1, 1}, {1, 2, 2}, {2, 3, 3}, {0, 3, 1}, {3, 4, 5}, {4, 5, 2}};

    private static void solves(RoomyFactor roomy, SymmetricMatrix m) {
        int n = m.size();
        double[] right = new double[n], answer = new double[n], back = new double[n];
        for (int i = 0; i < n; i++) right[i] = i * i - 3;
        assertThat(roomy.factor()).isEmpty();
        roomy.solve(right, answer);
        m.multiply(answer, back);
        for (int i = 0; i < n; i++) assertThat(back[i]).isCloseTo(right[i], within(1e-11));
    }

    @Test
    void servesOneMatrixAfterAnother() {
        RoomyFactor roomy = new RoomyFactor(matrix(6, 1, LADDER), new int[] {5, 0, 2, 1, 4, 3});
        SymmetricMatrix whole = matrix(6, 0.5, LADDER),
                part = matrix(4, 2, new int[][] {{0, 1, 7}, {1, 2, 1}, {2, 3, 4}});
        assertThat(roomy.isFactored()).isFalse();
        assertThat(roomy.take(whole, new int[] {0, 1, 2, 3, 4, 5})).isTrue();
        solves(roomy, whole);
        assertThat(roomy.take(part, new int[] {5, 4, 3, 2})).isTrue();
        assertThat(roomy.isFactored())
                .as("the factor before is still there to be tried")
                .isTrue();
        solves(roomy, part);
        assertThat(roomy.exactPanels()).isEmpty();
    }

    @Test
    void hasNoRoomForWhatIsNew() {
        RoomyFactor roomy = new RoomyFactor(matrix(6, 1, LADDER), new int[] {0, 1, 2, 3, 4, 5});
        SymmetricMatrix across = matrix(3, 1, new int[][] {{0, 1, 1}, {1, 2, 1}});
        assertThat(roomy.take(across, new int[] {0, 1, 3}))
                .as("1 and 3 are not coupled")
                .isFalse();
        assertThat(roomy.take(across, new int[] {0, 1, -1}))
                .as("a node is not there")
                .isFalse();
        assertThat(roomy.take(across, new int[] {0, 1, 2})).isTrue();
    }

    @Test
    void namesTheNodeThatHangsFree() {
        RoomyFactor roomy = new RoomyFactor(matrix(6, 1, LADDER), new int[] {0, 1, 2, 3, 4, 5});
        SymmetricMatrix bad = matrix(2, 1, new int[][] {{0, 1, 1}});
        bad.values()[1] = -1;
        assertThat(roomy.take(bad, new int[] {3, 4})).isTrue();
        assertThat(roomy.factor()).hasValue(1);
        assertThat(roomy.isFactored()).isFalse();
    }
}

package slabfield.solve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

class SymmetricMatrixTest {
    @Test
    void keepsEachPairOnceHoweverOftenAndWhicheverWayRoundItIsGiven() {
        var matrix = new SymmetricMatrix.Builder(4)
                .couple(2, 0)
                .couple(0, 2)
                .couple(1, 1)
                .couple(0, 1)
                .couple(2, 0)
                .build();

        assertThat(matrix.entries()).isEqualTo(4 + 2);
        assertThat(matrix.slot(0, 2)).isEqualTo(matrix.slot(2, 0)).isNotEqualTo(matrix.slot(0, 1));
        assertThat(matrix.slot(3, 3)).isEqualTo(matrix.slot(3));
    }

    @Test
    void slotsOfARandomPatternAreDistinctAndComplete() {
        var random = new Random(3);
        var builder = new SymmetricMatrix.Builder(60);
        Set<Integer> pairs = new HashSet<>();
        for (int k = 0; k < 900; k++) {
            int i = random.nextInt(60);
            int j = random.nextInt(60);
            builder.couple(i, j);
            pairs.add(Math.min(i, j) * 60 + Math.max(i, j));
        }
        for (int i = 0; i < 60; i++) {
            pairs.add(i * 60 + i);
        }
        var matrix = builder.build();
        Set<Integer> slots = new HashSet<>();
        pairs.forEach(p -> slots.add(matrix.slot(p % 60, p / 60)));

        assertThat(slots).hasSameSizeAs(pairs).hasSize(matrix.entries());
    }

    @Test
    void multipliesAsItsDenseFormDoes() {
        Graphs graph = Graphs.scattered(80, 300, 5);
        double[] x = graph.someRightHandSide();
        double[] y = new double[80];
        graph.matrix().multiply(x, y);

        assertThat(y).containsExactly(graph.dense().operate(x), within(1e-14));
    }

    @Test
    void refusesWhatIsNotInThePattern() {
        var builder = new SymmetricMatrix.Builder(3).couple(0, 1);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> builder.couple(0, 3))
                .withMessageContaining("0..2");
        var matrix = builder.build();
        assertThatIllegalArgumentException().isThrownBy(() -> matrix.slot(1, 2)).withMessageContaining("not coupled");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> matrix.slot(-1, 2))
                .withMessageContaining("not coupled");
    }
}

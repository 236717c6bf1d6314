package slabfield.solve;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NestedDissectionTest {
    @ParameterizedTest
    @CsvSource({"1,1,false,0", "40,30,false,0", "40,30,true,0", "50,50,true,0.4", "200,3,false,0.1"})
    void namesEachNodeOnce(int columns, int rows, boolean diagonals, double masked) {
        Graphs graph = Graphs.grid(columns, rows, diagonals, masked, 1);
        assertEachNodeOnce(NestedDissection.order(graph.matrix(), graph.x(), graph.y()));
    }

    @Test
    void namesEachNodeOnceWhenAllStandInOnePlace() {
        Graphs graph = Graphs.scattered(500, 1500, 2);
        assertEachNodeOnce(NestedDissection.order(graph.matrix(), new double[500], new double[500]));
    }

    /** In a pool the halves follow each other. */
    @Test
    void isTheSameWhetherHalvesAreDissectedTogetherOrNot() throws Exception {
        Graphs graph = Graphs.grid(64, 64, true, 0, 1);
        ForkJoinPool pool = new ForkJoinPool(1);
        try {
            int[] alone = pool.submit(() -> NestedDissection.order(graph.matrix(), graph.x(), graph.y()))
                    .get();
            for (int k = 0; k < 200; k++)
                assertThat(NestedDissection.order(graph.matrix(), graph.x(), graph.y()))
                        .isEqualTo(alone);
        } finally {
            pool.shutdown();
        }
    }

    private static void assertEachNodeOnce(int[] order) {
        assertThat(IntStream.of(order).sorted().toArray())
                .isEqualTo(IntStream.range(0, order.length).toArray());
    }

    @ParameterizedTest
    @CsvSource({"64,false", "64,true", "100,false"})
    void fillsFarLessThanNaturalOrder(int side, boolean diagonals) {
        Graphs graph = Graphs.grid(side, side, diagonals, 0, 1);
        int n = side * side;
        int natural = fill(graph, IntStream.range(0, n).toArray());
        int dissected = fill(graph, NestedDissection.order(graph.matrix(), graph.x(), graph.y()));

        assertThat(dissected).isLessThan(natural * 2 / 5);
    }

    @Test
    void nodesJoinedToAFifthOfAllOthersDoNotSpoilTheOrder() {
        int n = 64 * 64;
        Graphs plain = Graphs.grid(64, 64, false, 0, 1);
        var builder = new SymmetricMatrix.Builder(n + 2);
        for (int i = 0; i < n; i++) {
            for (int k = plain.matrix().first(i); k < plain.matrix().first(i + 1); k++) {
                builder.couple(i, plain.matrix().column(k));
            }
            if (i % 5 < 2) {
                builder.couple(i, n + i % 5);
            }
        }
        var matrix = builder.build();
        double[] x = Arrays.copyOf(plain.x(), n + 2);
        double[] y = Arrays.copyOf(plain.y(), n + 2);
        x[n] = 10;
        x[n + 1] = 50;
        Arrays.fill(matrix.values(), 0, matrix.size(), 1);
        int without = fill(plain, NestedDissection.order(plain.matrix(), plain.x(), plain.y()));

        assertThat(fill(new Graphs(matrix, x, y), NestedDissection.order(matrix, x, y)))
                .isLessThan(without + 2 * n + without / 20);
    }

    private static int fill(Graphs graph, int[] order) {
        var solver = new CholeskySolver(graph.matrix(), order);
        assertThat(solver.factor()).isEmpty();
        return solver.fill();
    }
}

package slabfield.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.field.Grid;

/** Ties of round holes to the grid, against the equivalent radii of Peaceman (1978; from memory, confirmed here). */
class DiscTieTest {
    private static Grid grid(double dx, double dy) {
        return new Grid(0, 0, dx, dy, 40, 40);
    }

    /** In the middle of a square cell the tie is one link, and r0 = exp(-gamma) / (2 sqrt 2) = 0.1985 of the cell. */
    @ParameterizedTest
    @CsvSource({"0.1,0.002", "0.1,0.01", "0.2,0.01"})
    void inTheMiddleOfASquareCell(double cell, double radius) {
        DiscTie tie = new DiscTie(grid(cell, cell), 20.5 * cell, 20.5 * cell, radius);
        assertThat(tie.links).hasSize(1);
        double r0 = radius * Math.exp(2 * Math.PI / tie.links.get(0).conductance());
        assertThat(r0 / cell).isCloseTo(Math.exp(-0.5772156649) / (2 * Math.sqrt(2)), Percentage.withPercentage(0.5));
    }

    /** Rectangular cell: r0 = 0.1403 sqrt(dx^2 + dy^2). */
    @Test
    void inTheMiddleOfARectangularCell() {
        DiscTie tie = new DiscTie(grid(0.1, 0.12), 20.5 * 0.1, 20.5 * 0.12, 0.005);
        double r0 = 0.005 * Math.exp(2 * Math.PI / tie.links.get(0).conductance());
        assertThat(r0).isCloseTo(0.1403 * Math.hypot(0.1, 0.12), Percentage.withPercentage(0.5));
    }

    /** On a corner of four cells each takes a quarter. */
    @Test
    void onACornerOfFourCells() {
        DiscTie tie = new DiscTie(grid(0.1, 0.1), 2.0, 2.0, 0.005);
        assertThat(tie.links).hasSize(4);
        for (DiscTie.Link l : tie.links)
            assertThat(l.conductance()).isCloseTo(tie.links.get(0).conductance(), within(1e-9));
    }

    @Test
    void aLargerDiscTakesTheCellsWhoseMiddlesItHolds() {
        DiscTie tie = new DiscTie(grid(0.1, 0.1), 2.05, 2.05, 0.15);
        assertThat(tie.resolved).isTrue();
        assertThat(tie.inside).hasSize(9);
        assertThat(tie.links).hasSize(12);
    }

    /** The tie must change smoothly as a point is dragged; a jump would show as a flicker of the map. */
    @Test
    void flowOfADraggedPointChangesSmoothly() {
        double last = Double.NaN;
        for (int k = 0; k <= 20; k++) {
            double flow = Houses.on(2e-8, 0)
                    .rectangle(0, 0, 6, 5)
                    .leakance(2e-6)
                    .suction("S", 3 + k * 0.005, 2.5, 0.05, new slabfield.model.Source.Pressure(-250))
                    .solved()
                    .flows()
                    .exhaust();
            if (k > 0) assertThat(flow).isCloseTo(last, Percentage.withPercentage(0.1));
            last = flow;
        }
    }

    /** One found before in another cell, at the same place within it, is the same tie. */
    @Test
    void isFoundOnceForAllCells() {
        var grid = new slabfield.field.Grid(0.3, -1, 0.1, 0.12, 40, 40);
        var found = new java.util.HashMap<DiscTie.Round, DiscTie>();
        for (double[] cell : new double[][] {{20, 21}, {25, 9}, {20, 30}})
            for (double radius : new double[] {0.03, 0.15}) {
                double x = 0.3 + (cell[0] + 0.3) * 0.1, y = -1 + (cell[1] + 0.8) * 0.12;
                DiscTie looked = DiscTie.of(grid, x, y, radius, found), made = new DiscTie(grid, x, y, radius);
                assertThat(looked.inside).hasSameSizeAs(made.inside);
                for (int k = 0; k < made.inside.size(); k++)
                    assertThat(looked.inside.get(k)).isEqualTo(made.inside.get(k));
                assertThat(looked.links).hasSameSizeAs(made.links);
                for (int k = 0; k < made.links.size(); k++) {
                    DiscTie.Link a = looked.links.get(k), b = made.links.get(k);
                    assertThat(new int[] {a.column(), a.row(), a.fromColumn(), a.fromRow()})
                            .isEqualTo(new int[] {b.column(), b.row(), b.fromColumn(), b.fromRow()});
                    assertThat(a.conductance()).isCloseTo(b.conductance(), within(1e-6 * b.conductance()));
                }
            }
        assertThat(found).hasSize(2);
    }
}

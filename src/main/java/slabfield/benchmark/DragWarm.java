package slabfield.benchmark;

import java.util.Arrays;
import slabfield.solve.GridMultigrid;
import slabfield.solve.GridOperator;
import slabfield.solve.Watch;
import slabfield.solve.Workers;

/**
 * The pit of a {@link DragKernel} moved on the same grid without a factor: cycles on the grid start from the last field, and their coarse
 * levels are made anew where the grid has changed.
 */
final class DragWarm implements AutoCloseable {
    private static final double TOLERANCE = 1e-8;
    private static final int LIMIT = 100;

    private final int side;
    private final Workers team = new Workers(Math.min(2, Runtime.getRuntime().availableProcessors()));
    private final GridOperator grid;
    private final GridMultigrid multigrid;
    private final double[] right;
    private final double[] field;

    DragWarm(int side) {
        this.side = side;
        int n = side * side;
        boolean[] active = new boolean[n];
        Arrays.fill(active, true);
        grid = new GridOperator(side, side, new double[n], new double[n], new double[n], active);
        right = new double[n];
        field = new double[n];
        lay(side / 4);
        multigrid = new GridMultigrid(grid, team);
    }

    /** The field with the point at a column of the middle row. */
    double[] moveTo(int column) {
        lay(column);
        multigrid.refresh();
        if (!multigrid.solve(right, field, TOLERANCE, LIMIT, Watch.NONE).hasConverged())
            throw new IllegalStateException("the grid has a leak everywhere");
        return field;
    }

    /** Lays the grid anew; the cells under the pit stand alone, so that the same cells stay unknowns. */
    private void lay(int column) {
        Arrays.fill(grid.east(), 1);
        Arrays.fill(grid.north(), 1);
        Arrays.fill(grid.leak(), DragKernel.LEAK);
        Arrays.fill(right, 0);
        int middle = side / 2 * side + column, reach = (int) Math.ceil(DragKernel.RADIUS) + 1;
        for (int j = -reach; j <= reach; j++)
            for (int i = -reach; i <= reach; i++) {
                int c = middle + j * side + i;
                boolean under = DragKernel.inside(i, j);
                part(grid.east(), c, c + 1, under, DragKernel.inside(i + 1, j));
                part(grid.north(), c, c + side, under, DragKernel.inside(i, j + 1));
            }
    }

    private void part(double[] links, int a, int b, boolean aUnder, boolean bUnder) {
        if (!aUnder && !bUnder) return;
        links[a] = 0;
        if (aUnder && bUnder) return;
        int rim = aUnder ? b : a;
        grid.leak()[rim] += DragKernel.TIE;
        right[rim] += DragKernel.TIE * DragKernel.HELD;
    }

    @Override
    public void close() {
        team.close();
    }
}

package slabfield.solve;

import java.util.Arrays;

/**
 * Preconditioner for a grid to which a few further unknowns ("devices") are tied: block elimination of the devices, with
 * a multigrid cycle in place of the Schur complement's inverse.
 *
 * <pre>
 *   z1 = D^-1 r_d,   z_c = M^-1 (r_c - B z1),   z_d = D^-1 (r_d - B' z_c)
 * </pre>
 *
 * where D is the devices' own block, B couples cells with devices, and M is a five-point operator near the Schur
 * complement: the grid's own links and, between neighbouring cells, what a path over devices adds. The first cells of a
 * vector are the grid's active ones in order, the devices follow.
 */
public final class GridWithDevices implements Preconditioner {
    private final GridOperator grid;
    private final int[] cellOf;
    private final Workers team;
    private final CholeskySolver deviceSolver;
    private final int[] tieCell;
    private final int[] tieDevice;
    private final double[] tie;
    private final double[] gridRight;
    private final double[] gridAnswer;
    private final double[] deviceRight;
    private final double[] deviceAnswer;
    private GridMultigrid multigrid;

    /**
     * @param grid whose arrays hold M's coefficients at each {@link #update()}
     * @param cellOf grid cell of each of the first unknowns
     * @param devices the devices' own block; its values are read at each {@link #update()}
     * @param order elimination order of the devices
     * @param tieCell for each tie the unknown of its cell
     * @param tieDevice for each tie its device, counted from 0
     * @param tie for each tie its entry of B, not above 0, read at every use
     */
    public GridWithDevices(
            GridOperator grid,
            int[] cellOf,
            SymmetricMatrix devices,
            int[] order,
            int[] tieCell,
            int[] tieDevice,
            double[] tie,
            Workers team) {
        this.grid = grid;
        this.cellOf = cellOf;
        this.team = team;
        this.tieCell = tieCell;
        this.tieDevice = tieDevice;
        this.tie = tie;
        deviceSolver = devices == null ? null : new CholeskySolver(devices, order);
        gridRight = new double[grid.size()];
        gridAnswer = new double[grid.size()];
        deviceRight = new double[devices == null ? 0 : devices.size()];
        deviceAnswer = new double[deviceRight.length];
    }

    /**
     * Takes over changed coefficients.
     *
     * @return false where the devices' block is not positive definite
     */
    public boolean update() {
        if (multigrid == null) multigrid = new GridMultigrid(grid, team);
        else multigrid.refresh();
        return deviceSolver == null || deviceSolver.factor().isEmpty();
    }

    @Override
    public void apply(double[] r, double[] z) {
        int cells = cellOf.length;
        if (deviceSolver != null) {
            System.arraycopy(r, cells, deviceRight, 0, deviceRight.length);
            deviceSolver.solve(deviceRight, deviceAnswer);
        }
        Arrays.fill(gridRight, 0);
        for (int u = 0; u < cells; u++) gridRight[cellOf[u]] = r[u];
        for (int k = 0; k < tie.length; k++) gridRight[cellOf[tieCell[k]]] -= tie[k] * deviceAnswer[tieDevice[k]];
        multigrid.apply(gridRight, gridAnswer);
        for (int u = 0; u < cells; u++) z[u] = gridAnswer[cellOf[u]];
        if (deviceSolver == null) return;
        for (int k = 0; k < tie.length; k++) deviceRight[tieDevice[k]] -= tie[k] * z[tieCell[k]];
        deviceSolver.solve(deviceRight, deviceAnswer);
        System.arraycopy(deviceAnswer, 0, z, cells, deviceAnswer.length);
    }
}

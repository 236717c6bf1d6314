package slabfield.network;

import slabfield.field.CellKind;
import slabfield.field.Grid;
import slabfield.field.Progress;
import slabfield.model.Scenario;
import slabfield.solve.Newton;

/**
 * Where the solve of a house starts that has no like one before it: at a rough answer on cells some times as wide (nested
 * iteration; Hackbusch 1985). From rest, laws that rise with a root take Newton's method several steps more.
 */
final class CoarseStart {
    private static final double TIMES = 3;
    /** A grid with fewer cells is solved from rest as quickly. */
    private static final int FROM = 4000;
    /** Relative residual that is good enough. */
    private static final double ROUGH = 0.01;

    private CoarseStart() {}

    /**
     * @param built of the house on its own layer, not closed yet
     * @param layer its own
     */
    static Guess of(Scenario scenario, Devices.Built built, LayerGrid layer, boolean fanOn, Progress progress) {
        if (layer.grid.cells() < FROM) return Guess.NONE;
        double cell = TIMES * Math.max(layer.grid.width(), layer.grid.height());
        Scenario wide = scenario.withCellSize(cell);
        LayerGrid coarse = new LayerGrid(wide, SlabSolver.airOf(wide));
        Devices.addDiscs(wide, coarse);
        coarse.isolateDiscs();
        Devices.Built there = Devices.build(wide, coarse, SlabSolver.airOf(wide), fanOn);
        Network network = there.network();
        network.close();
        double[] at = new double[network.size()], rest = new double[at.length];
        if (at.length == 0) return Guess.NONE;
        Newton.solve(network, at, rest, (k, residual) -> residual < ROUGH || progress.isCancelled());
        Guess rough = Guess.of(network, at, rest).withDiscs(coarse, there.discNode());
        return onto(layer, built.network(), rough, coarse, network);
    }

    /**
     * Pressures of a house taken over onto cells of another size.
     *
     * @param layer with these cells
     * @param network on it, not closed yet
     * @param found pressures on its other layer and network, with discs
     */
    static Guess onto(LayerGrid layer, Network network, Guess found, LayerGrid foundOn, Network foundIn) {
        return new Guess(cells(found, foundOn, layer), devices(found, foundIn, network));
    }

    private static double[] cells(Guess rough, LayerGrid coarse, LayerGrid fine) {
        Grid g = fine.grid;
        double[] out = new double[g.cells()];
        for (int c = 0; c < out.length; c++) {
            if (fine.kind[c] == CellKind.OUTSIDE) continue;
            double x = g.x(c % g.columns()), y = g.y(c / g.columns());
            int own = holding(coarse, x, y);
            boolean shared = fine.kind[c] == CellKind.LAYER && coarse.kind[own] == CellKind.DISC;
            out[c] = shared ? around(rough, coarse, x, y, g, own) : rough.at(coarse, x, y, own);
        }
        return out;
    }

    /** The cell that a place lies in, or where that has no pressure the nearest next to it that has. */
    private static int holding(LayerGrid layer, double x, double y) {
        Grid g = layer.grid;
        int i = g.column(x), j = g.row(y), best = g.index(i, j);
        if (holds(layer, best)) return best;
        double least = Double.POSITIVE_INFINITY;
        for (int b = j - 1; b <= j + 1; b++)
            for (int a = i - 1; a <= i + 1; a++) {
                int c = layer.cellAt(a, b);
                if (c < 0 || !holds(layer, c)) continue;
                double distance = Math.hypot(g.x(a) - x, g.y(b) - y);
                if (distance >= least) continue;
                least = distance;
                best = c;
            }
        return best;
    }

    private static boolean holds(LayerGrid layer, int cell) {
        return layer.kind[cell] == CellKind.LAYER || layer.kind[cell] == CellKind.DISC;
    }

    /** A cell in which a pit lies that does not fill it has a pressure between the pit's and those beyond its faces. */
    private static double around(Guess rough, LayerGrid coarse, double x, double y, Grid g, int own) {
        double w = g.width(), h = g.height();
        return (rough.at(coarse, x + w, y, own)
                        + rough.at(coarse, x - w, y, own)
                        + rough.at(coarse, x, y + h, own)
                        + rough.at(coarse, x, y - h, own))
                / 4;
    }

    /** Each gets the pressure between the two nearest devices of the same part of the house. */
    private static double[] devices(Guess rough, Network coarse, Network fine) {
        int n = fine.cells(), m = coarse.cells();
        double[] out = new double[fine.nodes() - n];
        for (int d = 0; d < out.length; d++) {
            double least = Double.POSITIVE_INFINITY, next = least, near = 0, far = 0;
            for (int e = 0; e < rough.devices().length; e++) {
                if (coarse.part(m + e) != fine.part(n + d)) continue;
                double distance = Math.hypot(coarse.x(m + e) - fine.x(n + d), coarse.y(m + e) - fine.y(n + d));
                if (distance < least) {
                    next = least;
                    far = near;
                    least = distance;
                    near = rough.devices()[e];
                } else if (distance < next) {
                    next = distance;
                    far = rough.devices()[e];
                }
            }
            out[d] = least > 0 && next < Double.POSITIVE_INFINITY ? (near * next + far * least) / (next + least) : near;
        }
        return out;
    }
}

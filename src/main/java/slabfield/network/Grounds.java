package slabfield.network;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import slabfield.model.Scenario;

/**
 * Layers laid on their grids, kept for houses that stand on the same ground: slabs, layer, barriers, soil, air and cell
 * size. The grounds used last are kept. For several threads.
 */
public final class Grounds {
    private static final int KEPT = 48;

    private final Map<List<Object>, LayerGrid> laid = new LinkedHashMap<>(64, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<List<Object>, LayerGrid> eldest) {
            return size() > KEPT;
        }
    };

    /** A layer of the house's own into which its discs can be cut. */
    LayerGrid layer(Scenario scenario) {
        List<Object> ground = key(scenario);
        LayerGrid bare;
        synchronized (laid) {
            bare = laid.get(ground);
        }
        if (bare == null) {
            bare = new LayerGrid(scenario, SlabSolver.airOf(scenario));
            synchronized (laid) {
                laid.put(ground, bare);
            }
        }
        return new LayerGrid(bare);
    }

    private static List<Object> key(Scenario s) {
        return List.of(s.slabs(), s.layer(), s.barriers(), s.soilLeakance(), s.air(), s.cellSize());
    }
}

package slabfield.benchmark;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Shares of the time that a run spends in parts of the solver, from the stacks of its threads looked at every millisecond. */
final class Profile {
    /** Parts in the order in which a stack is searched for them: class and method, and what they are called. */
    private static final String[][] HOUSE = {
        {"PanelCholesky.factor", "new factors"},
        {"PanelCholesky.solve", "solves with a factor"},
        {"FactorRoom.factor", "order and analysis"},
        {"PanelSweep.solve", "solves with a factor"},
        {"KeptFactor.solve", "rest of the conjugate gradients"},
        {"NetworkMatrix.<init>", "laying the matrix"},
        {"Network.assemble", "curvature"},
        {"Network.residual", "residuals"},
        {"CoarseStart.of", "rest of the rough start"},
        {"Judge.", "judging places"},
        {"UnitLoads.solve", "columns of the inverse"},
    };

    /** Parts of the grid solver, likewise. */
    private static final String[][] GRID = {
        {"Workers.await", "waiting for each other"},
        {"GridMultigrid.update", "set-up"},
        {"CycleRows.restrict", "first smoothing, residual and restriction on the cells"},
        {"CycleRows.correct", "prolongation and smoothing on the cells"},
        {"CoarseRows.smooth", "smoothing on coarse levels"},
        {"CoarseRows.restrict", "residual and restriction on coarse levels"},
        {"CoarseRows.correct", "prolongation on coarse levels"},
        {"InnerSteps.", "conjugate gradients on coarse levels"},
        {"BandCholesky.", "coarsest level"},
        {"DirectionRows.multiply", "operator times direction"},
        {"DirectionRows.", "vectors of the conjugate gradients"},
        {"ExactRows.", "conjugate gradients in double"},
        {"SystemRows.", "true residual and answer"},
    };

    private Profile() {}

    /** A row for each part of a house's solve that takes a hundredth or more, in percent. */
    static Map<String, String> of(Runnable run) {
        return of(HOUSE, run, List.of());
    }

    /** The same of a grid's solve, and of the threads of its team. */
    static Map<String, String> ofGrid(Runnable run) {
        List<Thread> team = Thread.getAllStackTraces().keySet().stream()
                .filter(t -> t.getName().startsWith("solver-"))
                .toList();
        return of(GRID, run, team);
    }

    private static Map<String, String> of(String[][] parts, Runnable run, List<Thread> others) {
        Map<String, Integer> seen = new LinkedHashMap<>();
        for (String[] p : parts) seen.put(p[1], 0);
        seen.put("everything else", 0);
        Thread worker = new Thread(run, "profiled");
        worker.start();
        List<Thread> watched = new ArrayList<>(others);
        watched.add(worker);
        int looks = 0;
        while (worker.isAlive()) {
            for (Thread t : watched) {
                StackTraceElement[] stack = t.getStackTrace();
                if (stack.length == 0) continue;
                seen.merge(part(parts, stack), 1, Integer::sum);
                looks++;
            }
            try {
                Thread.sleep(1);
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }
        Map<String, String> out = new LinkedHashMap<>();
        for (var e : seen.entrySet())
            if (100 * e.getValue() >= looks)
                out.put(e.getKey(), String.format(Locale.ROOT, "%.0f", 100.0 * e.getValue() / looks));
        return out;
    }

    private static String part(String[][] parts, StackTraceElement[] stack) {
        for (String[] p : parts)
            if (Arrays.stream(stack).anyMatch(e -> (e.getClassName() + "." + e.getMethodName()).contains("." + p[0])))
                return p[1];
        return "everything else";
    }
}

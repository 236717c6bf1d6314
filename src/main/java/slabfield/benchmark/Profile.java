package slabfield.benchmark;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;

/** Shares of the time that a run spends in parts of the solver, from its stack looked at every millisecond. */
final class Profile {
    /** Parts in the order in which a stack is searched for them: class and method, and what they are called. */
    private static final String[][] PARTS = {
        {"PanelCholesky.factor", "new factors"},
        {"PanelCholesky.solve", "solves with a factor"},
        {"FactorRoom.factor", "order and analysis"},
        {"KeptFactor.solve", "rest of the conjugate gradients"},
        {"NetworkMatrix.<init>", "laying the matrix"},
        {"Network.assemble", "curvature"},
        {"Network.residual", "residuals"},
        {"CoarseStart.of", "rest of the rough start"},
        {"Coring.judge", "judging places"},
        {"UnitLoads.solve", "columns of the inverse"},
    };

    private Profile() {}

    /** A row for each part that takes a hundredth or more, in percent. */
    static Map<String, String> of(Runnable run) {
        Map<String, Integer> seen = new LinkedHashMap<>();
        for (String[] p : PARTS) seen.put(p[1], 0);
        seen.put("everything else", 0);
        Thread worker = new Thread(run, "profiled");
        worker.start();
        int looks = 0;
        while (worker.isAlive()) {
            StackTraceElement[] stack = worker.getStackTrace();
            if (stack.length > 0) {
                seen.merge(part(stack), 1, Integer::sum);
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

    private static String part(StackTraceElement[] stack) {
        for (String[] p : PARTS)
            if (Arrays.stream(stack).anyMatch(e -> (e.getClassName() + "." + e.getMethodName()).endsWith("." + p[0])))
                return p[1];
        return "everything else";
    }
}

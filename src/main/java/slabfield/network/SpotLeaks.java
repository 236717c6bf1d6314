package slabfield.network;

import java.util.ArrayList;
import java.util.List;
import slabfield.law.FlowLaw;
import slabfield.solve.PanelCholesky;

/**
 * The leaks of a solved house that stand at one node each (sump, drain, hole): what they let in more or less than their
 * tangent says, when a further pit draws. With e that excess of each, the pressures fall by {@code q G(., c) + sum e_j G(., j)}.
 */
final class SpotLeaks {
    private static final int MOST = 8;
    private static final int MOST_SWEEPS = 60;
    private static final double SETTLED = 1e-9;

    /** A leak at an unknown: its law at x below the solved house's pressure gives {@code flow(difference - x)}. */
    record Leak(int unknown, FlowLaw law, double difference) {}

    private final List<Leak> leaks = new ArrayList<>();
    private final List<double[]> responses = new ArrayList<>();

    SpotLeaks(Network network, double[] at, double[] rest, PanelCholesky factor) {
        for (Leak leak : network.loneLeaks(at, rest)) {
            if (leaks.size() == MOST) break;
            double[] g = new double[at.length];
            g[leak.unknown] = 1;
            factor.solve(g, g);
            leaks.add(leak);
            responses.add(g);
        }
    }

    int count() {
        return leaks.size();
    }

    /** G(., j) of a leak. */
    double[] response(int leak) {
        return responses.get(leak);
    }

    /** Flow drawn by a pit when nothing but the pressure in its cell before it draws is known. */
    interface Draw {
        double flow(double open);
    }

    /**
     * Excess of each leak and the pit's flow.
     *
     * @param unknown of the pit's cell
     * @param open pressure there in the solved house [Pa]
     * @param toLeak response at each leak's node to the pit's flow, G(j, c) [Pa s/m3]
     * @param excess receives e [m3/s]
     * @return the pit's flow [m3/s]
     */
    double settle(int unknown, double open, Draw pit, double[] toLeak, double[] excess) {
        java.util.Arrays.fill(excess, 0);
        double q = pit.flow(open);
        for (int sweep = 0; sweep < MOST_SWEEPS && !leaks.isEmpty(); sweep++) {
            double change = 0;
            for (int j = 0; j < leaks.size(); j++) {
                double fall = q * toLeak[j];
                for (int k = 0; k < leaks.size(); k++)
                    if (k != j) fall += excess[k] * responses.get(k)[leaks.get(j).unknown];
                double e = excess(leaks.get(j), responses.get(j)[leaks.get(j).unknown], fall);
                change = Math.max(change, Math.abs(e - excess[j]));
                excess[j] = e;
            }
            double before = open;
            for (int j = 0; j < leaks.size(); j++)
                before -= excess[j] * responses.get(j)[unknown];
            q = pit.flow(before);
            if (change <= SETTLED * Math.abs(q)) break;
        }
        return q;
    }

    /** Excess e of one leak: with x = fall + e G, e = flow(d - x) - flow(d) + s x; by bisection, as x rises with fall. */
    private static double excess(Leak leak, double own, double fall) {
        double at = leak.law.flow(leak.difference), slope = leak.law.slope(leak.difference);
        double low = Math.min(0, fall), high = Math.max(0, fall), free = Math.max(1e-9, 1 - slope * own);
        // Where the leak passes nothing further, x is fall / (1 - s G); where it passes without limit, 0.
        if (fall > 0) high = fall / free;
        else low = fall / free;
        for (int k = 0; k < 60; k++) {
            double x = (low + high) / 2;
            if (x * (1 - slope * own) - own * (leak.law.flow(leak.difference - x) - at) < fall) low = x;
            else high = x;
        }
        double x = (low + high) / 2;
        return leak.law.flow(leak.difference - x) - at + slope * x;
    }
}

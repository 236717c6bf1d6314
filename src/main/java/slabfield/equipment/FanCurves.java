package slabfield.equipment;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import slabfield.model.Source.FanCurve;

/**
 * Arithmetic of fan curves: straight lines between the points, the last slope beyond them.
 *
 * <p>Fan laws (handbook): Q ~ N, p ~ N^2 rho, power ~ N^3 rho, for one fan in air of another density rho or at another
 * speed N. So thin air costs pressure and power, not flow.
 *
 * @see "FanCurvesTest"
 */
public final class FanCurves {
    private FanCurves() {}

    /**
     * Pressure rise at a flow.
     *
     * @param flow of either sign [m3/s]
     * @return [Pa]
     */
    public static double rise(FanCurve curve, double flow) {
        int i = segment(curve.flows(), flow);
        return at(curve.flows(), curve.rises(), i, flow);
    }

    /**
     * Flow at a pressure rise.
     *
     * @param rise of either sign [Pa]
     * @return below 0 above the shut-off pressure [m3/s]
     */
    public static double flow(FanCurve curve, double rise) {
        int i = 0;
        while (i < curve.rises().size() - 2 && rise <= curve.rises().get(i + 1)) i++;
        return at(curve.rises(), curve.flows(), i, rise);
    }

    /**
     * The same fan in air of another density: {@code p' = p rho'/rho} at the same flow.
     *
     * @param from density that the curve holds for, above 0 [kg/m3]
     * @param to density of the air that it moves, above 0 [kg/m3]
     */
    public static FanCurve atDensity(FanCurve curve, double from, double to) {
        return new FanCurve(curve.flows(), scaled(curve.rises(), to / from));
    }

    /**
     * The same fan at another speed: {@code Q' = Q r, p' = p r^2}.
     *
     * @param ratio r, new speed over old, above 0
     */
    public static FanCurve atSpeed(FanCurve curve, double ratio) {
        return new FanCurve(scaled(curve.flows(), ratio), scaled(curve.rises(), ratio * ratio));
    }

    /**
     * Two fans side by side, no damper between them: at each pressure rise the flows add. Above the shut-off pressure of
     * the weaker one air goes backwards through it, along its first slope.
     */
    public static FanCurve parallel(FanCurve a, FanCurve b) {
        TreeSet<Double> rises = new TreeSet<>(a.rises());
        rises.addAll(b.rises());
        List<Double> flows = new ArrayList<>(), kept = new ArrayList<>();
        for (double rise : rises.descendingSet()) {
            double flow = flow(a, rise) + flow(b, rise);
            if (flow < 0) continue;
            flows.add(flow);
            kept.add(rise);
        }
        return new FanCurve(flows, kept);
    }

    /** Two fans one behind the other: at each flow the pressure rises add. */
    public static FanCurve series(FanCurve a, FanCurve b) {
        TreeSet<Double> flows = new TreeSet<>(a.flows());
        flows.addAll(b.flows());
        return new FanCurve(
                List.copyOf(flows),
                flows.stream().map(q -> rise(a, q) + rise(b, q)).toList());
    }

    private static int segment(List<Double> along, double value) {
        int i = 0;
        while (i < along.size() - 2 && value >= along.get(i + 1)) i++;
        return i;
    }

    private static double at(List<Double> x, List<Double> y, int i, double value) {
        return y.get(i) + (y.get(i + 1) - y.get(i)) / (x.get(i + 1) - x.get(i)) * (value - x.get(i));
    }

    private static List<Double> scaled(List<Double> values, double factor) {
        return values.stream().map(v -> v * factor).toList();
    }
}

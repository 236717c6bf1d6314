package slabfield.equipment;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.field.SystemCurve;
import slabfield.model.Scenario;
import slabfield.model.Source.FanCurve;
import slabfield.network.SlabSolver;

/**
 * System curves, traced: the house is solved with the fan's pressures scaled, and each solve gives one flow and the rise that
 * drives it.
 *
 * @see "SystemCurvesTest"
 */
public final class SystemCurves {
    /** Parts of the fan's pressure with which the house is solved. */
    private static final double[] PARTS = {0.15, 0.35, 0.6, 0.8, 1, 1.25};

    private SystemCurves() {}

    /** That of a fan that was solved, in its first place; empty where the fan moves no air anywhere. */
    public static Optional<SystemCurve> of(FanRanking.Ranked chosen, Progress progress) {
        Map<String, Double> flows = FanPlacement.flows(chosen.solved());
        if (flows.isEmpty()) return Optional.empty();
        String place = flows.keySet().iterator().next();
        FanCurve curve = chosen.fan().curve();
        List<double[]> system = new ArrayList<>(List.of(new double[] {0, 0})), slab = new ArrayList<>();
        for (double part : PARTS) {
            Scenario tried = FanPlacement.with(chosen.solved().scenario(), scaled(curve, part));
            Result result = SlabSolver.solve(tried, SlabSolver.Extent.FAN_ON_ONLY, progress);
            if (!(result instanceof Result.Solved solved)) continue;
            double flow = FanPlacement.flows(solved).get(place);
            system.add(new double[] {flow, part * FanCurves.rise(curve, flow)});
            solved.suction(place).ifPresent(s -> slab.add(new double[] {flow, -s.pressure()}));
        }
        List<double[]> fan = new ArrayList<>();
        for (int i = 0; i < curve.flows().size(); i++)
            fan.add(new double[] {curve.flows().get(i), curve.rises().get(i)});
        double flow = flows.get(place);
        return Optional.of(
                new SystemCurve(chosen.fan().offer().id(), fan, system, slab, flow, FanCurves.rise(curve, flow)));
    }

    private static FanCurve scaled(FanCurve curve, double part) {
        return new FanCurve(
                curve.flows(), curve.rises().stream().map(r -> part * r).toList());
    }
}

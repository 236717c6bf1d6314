package slabfield.siting;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import slabfield.advice.DrillPlaces;
import slabfield.field.Grid;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.fit.Fitted;
import slabfield.fit.Observation;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.network.Adjoint;
import slabfield.network.SlabSolver;

/**
 * How every reading of a fitted house changes with a small leak in every cell, per conductance of the leak.
 *
 * @param grid cells
 * @param openArea of each cell [m2]
 * @param firstPressure pressure of each cell in the first stage read, NaN where there is none [Pa]
 * @param byLeak change of each reading per conductance, [reading][cell]; NaN where there is no layer [its unit Pa s/m3]
 * @param most largest effective conductance that a leak in each cell can have [m3/(s Pa)]
 */
record LeakResponses(Grid grid, double[] openArea, double[] firstPressure, double[][] byLeak, double[] most) {
    private static final double COARSE = 0.2;
    /** Distance between places where the largest conductance is worked out; the nearest holds for a cell [m]. */
    private static final double NET = 0.75;

    static LeakResponses of(Fitted fitted, Progress progress) {
        Scenario fitHouse = fitted.house();
        Scenario house = fitHouse.withCellSize(Math.max(COARSE, fitHouse.cellSize()));
        List<Observation> readings = fitted.observations();
        double[][] byLeak = new double[readings.size()][];
        Map<String, Adjoint> on = new HashMap<>(), off = new HashMap<>();
        for (int i = 0; i < byLeak.length; i++) {
            if (progress.isCancelled()) throw new IllegalStateException("the leak map was stopped");
            Observation o = readings.get(i);
            Stage stage = house.stage(o.stage()).orElseThrow();
            Scenario then = house.during(stage);
            byLeak[i] = response(o, then, on, off);
            progress.step(i + 1, byLeak.length, Double.NaN);
        }
        Scenario first = house.during(house.stage(readings.get(0).stage()).orElseThrow());
        Adjoint start = solved(first, true, readings.get(0).stage(), on);
        Result.Solved field = (Result.Solved) SlabSolver.solve(first, SlabSolver.Extent.FAN_ON_ONLY, Progress.NONE);
        return new LeakResponses(
                start.grid(), field.field().openArea(), start.cellPressures(), byLeak, most(first, start));
    }

    private static Adjoint solved(Scenario then, boolean fanOn, String stage, Map<String, Adjoint> kept) {
        Adjoint known = kept.get(stage);
        if (known != null) return known;
        Adjoint now = Adjoint.of(then, fanOn, Progress.NONE)
                .orElseThrow(() -> new IllegalStateException(
                        "stage \"" + stage + "\" has no solution on the cells of the leak map"));
        kept.put(stage, now);
        return now;
    }

    private static double[] response(Observation o, Scenario then, Map<String, Adjoint> on, Map<String, Adjoint> off) {
        boolean quiet = then.outdoorPressure() == 0;
        return switch (o.what()) {
            case FAN_ON -> atHole(solved(then, true, o.stage(), on), then, o);
            case FAN_OFF -> atHole(solved(then, false, o.stage(), off), then, o);
            case DIFFERENCE -> {
                double[] with = atHole(solved(then, true, o.stage(), on), then, o);
                if (!quiet) {
                    double[] without = atHole(solved(then, false, o.stage(), off), then, o);
                    for (int c = 0; c < with.length; c++) with[c] -= without[c];
                }
                yield with;
            }
            case FLOW ->
                perConductance(
                        solved(then, true, o.stage(), on),
                        solved(then, true, o.stage(), on).suctionFlowByInflow(index(then, o)));
            case RISER ->
                perConductance(
                        solved(then, true, o.stage(), on),
                        solved(then, true, o.stage(), on).suctionPressureByInflow(index(then, o)));
        };
    }

    private static double[] atHole(Adjoint house, Scenario then, Observation o) {
        return perConductance(
                house,
                house.pressureByInflow(then.testHole(o.place()).orElseThrow().at()));
    }

    private static int index(Scenario then, Observation o) {
        return then.suctionPoints().indexOf(then.suctionPoint(o.place()).orElseThrow());
    }

    /** A leak of conductance g lets in g (-p). */
    private static double[] perConductance(Adjoint house, double[] byInflow) {
        double[] p = house.cellPressures();
        for (int c = 0; c < p.length; c++) p[c] = -p[c] * byInflow[c];
        return p;
    }

    /** 1/G at a net of places, taken over to the cells nearest to each. */
    private static double[] most(Scenario then, Adjoint house) {
        Grid grid = house.grid();
        List<Point> net = DrillPlaces.everywhere(then).net(NET);
        double[] own = new double[net.size()];
        for (int k = 0; k < own.length; k++) own[k] = own(house, net.get(k));
        double[] out = new double[grid.cells()];
        for (int c = 0; c < out.length; c++) {
            Point at = new Point(grid.x(c % grid.columns()), grid.y(c / grid.columns()));
            double nearest = Double.MAX_VALUE;
            for (int k = 0; k < own.length; k++) {
                double d = net.get(k).distanceTo(at);
                if (d < nearest && own[k] > 0) {
                    nearest = d;
                    out[c] = 1 / own[k];
                }
            }
        }
        return out;
    }

    /** Change of a cell's pressure per air let into it; 0 where it has none. */
    private static double own(Adjoint house, Point near) {
        Grid grid = house.grid();
        int column = grid.column(near.x()), row = grid.row(near.y());
        if (column < 0 || row < 0) return 0;
        Point middle = new Point(grid.x(column), grid.y(row));
        double[] p = house.cellPressures();
        int cell = grid.index(column, row);
        return Double.isNaN(p[cell]) ? 0 : house.pressureByInflow(middle)[cell];
    }
}

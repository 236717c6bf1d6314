package slabfield.fit;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.TestHole;

/**
 * How the errors of readings and model go together:
 *
 * <p>C_ii = meter_i^2 + model_i^2, C_ij = s_ij exp(-(d_ij/L)^2) model_i model_j
 *
 * <p>for two readings of one kind, s_ij = 1 in one stage and {@link NoiseModel#SHARED} in two, d_ij the distance of their holes [m],
 * L = {@link NoiseModel#REACH}. model has the sign of its reading: fill that lets less air through than the model's brings every
 * pressure nearer to zero. Uneven fill is as uneven after sealing, and what it does to one hole it does to the next. Flows and pits go
 * together with themselves alone. A product of two covariances, so it is one. Gaussian covariance: Chiles and Delfiner 1999,
 * from memory.
 */
final class ErrorCovariance {
    private final Map<String, Point> holes;
    private final double shared;
    private final double reach;

    /**
     * The covariance in other hands than the usual ones.
     *
     * @param holes where they are, by their ids; one that is not there goes together with itself alone
     * @param shared part of the model's variance at one place that is the same in every stage
     * @param reach L [m], 0 for holes that have nothing in common
     */
    ErrorCovariance(Map<String, Point> holes, double shared, double reach) {
        this.holes = holes;
        this.shared = shared;
        this.reach = reach;
    }

    /** The usual one. */
    static ErrorCovariance of(Scenario house) {
        return new ErrorCovariance(
                house.testHoles().stream().collect(Collectors.toMap(TestHole::id, TestHole::at)),
                NoiseModel.SHARED,
                NoiseModel.REACH);
    }

    /** C, as many rows and columns as readings. */
    RealMatrix of(List<Observation> observations) {
        int n = observations.size();
        RealMatrix c = new Array2DRowRealMatrix(n, n);
        for (int i = 0; i < n; i++)
            for (int j = 0; j <= i; j++) {
                Observation a = observations.get(i), b = observations.get(j);
                double v = i == j ? a.meter() * a.meter() + a.model() * a.model() : together(a, b);
                c.setEntry(i, j, v);
                c.setEntry(j, i, v);
            }
        return c;
    }

    private double together(Observation a, Observation b) {
        if (a.upperBound() || b.upperBound() || a.what() != b.what()) return 0;
        double stages = a.stage().equals(b.stage()) ? 1 : shared;
        return stages * places(a, b) * Math.copySign(a.model(), a.measured()) * Math.copySign(b.model(), b.measured());
    }

    private double places(Observation a, Observation b) {
        if (a.place().equals(b.place())) return 1;
        if (!a.isPressureAtHole() || !holes.containsKey(a.place()) || !holes.containsKey(b.place())) return 0;
        double d = holes.get(a.place()).distanceTo(holes.get(b.place())) / reach;
        return Math.exp(-d * d);
    }
}

package slabfield.fit;

import java.util.List;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.special.Erf;
import slabfield.model.Scenario;

/**
 * Predictions held against readings, in standard deviations.
 *
 * <p>Readings and model differ by an error with the covariance C of {@link ErrorCovariance}. With C = L L^T the residuals are
 * L^-1 (measured - predicted), which are independent with variance one. A reading that is only an upper bound adds
 * -ln Phi((bound - predicted)/deviation) to half the sum of squares.
 */
final class Misfit {
    private static final double LN_2PI = Math.log(2 * Math.PI);

    private static final double SYMMETRIC = 1e-12;
    /** Far below the variance of any flow [m6/s2], which for a faint one is below the 1e-10 that the library takes for none. */
    private static final double LEAST_VARIANCE = 1e-300;

    private final List<Observation> observations;
    private final double[][] lower;
    private final double logNorm;

    /** Readings of a house with the usual errors. */
    Misfit(Scenario house, List<Observation> observations) {
        this(ErrorCovariance.of(house), observations);
    }

    Misfit(ErrorCovariance errors, List<Observation> observations) {
        this.observations = observations;
        int n = observations.size();
        lower = n == 0
                ? new double[0][0]
                : new CholeskyDecomposition(errors.of(observations), SYMMETRIC, LEAST_VARIANCE)
                        .getL()
                        .getData();
        double sum = 0;
        for (int i = 0; i < n; i++) if (!observations.get(i).upperBound()) sum += Math.log(lower[i][i]) + LN_2PI / 2;
        logNorm = -sum;
    }

    int size() {
        return observations.size();
    }

    /** Logarithm of the density's constant: ln p(readings | values) = this - half the sum of squared residuals. */
    double logNorm() {
        return logNorm;
    }

    /** Residuals; half the sum of their squares is the misfit. */
    double[] residuals(double[] predicted) {
        return residuals(predicted, measured());
    }

    /** Residuals against other readings with the same errors. */
    double[] residuals(double[] predicted, double[] measured) {
        double[] r = new double[predicted.length];
        for (int i = 0; i < r.length; i++) r[i] = measured[i] - predicted[i];
        divide(r);
        for (int i = 0; i < r.length; i++) if (observations.get(i).upperBound()) r[i] = bounded(r[i]);
        return r;
    }

    double[] measured() {
        return observations.stream().mapToDouble(Observation::measured).toArray();
    }

    /** Readings that the same house could give as well: measured plus L times standard normal numbers. */
    double[] drawn(double[] normal) {
        double[] out = measured();
        for (int i = 0; i < out.length; i++) for (int j = 0; j <= i; j++) out[i] += lower[i][j] * normal[j];
        return out;
    }

    /** Derivatives of the residuals with respect to the unknowns, from those of the predictions. */
    double[][] slopes(double[][] jacobian, double[] predicted, double[] measured) {
        int n = jacobian.length, p = n == 0 ? 0 : jacobian[0].length;
        double[][] out = new double[n][p];
        double[] z = new double[n];
        for (int i = 0; i < n; i++) z[i] = measured[i] - predicted[i];
        divide(z);
        double[] column = new double[n];
        for (int j = 0; j < p; j++) {
            for (int i = 0; i < n; i++) column[i] = -jacobian[i][j];
            divide(column);
            for (int i = 0; i < n; i++)
                out[i][j] = observations.get(i).upperBound() ? column[i] * boundedSlope(z[i]) : column[i];
        }
        return out;
    }

    /** L^-1 times a vector, in place. */
    private void divide(double[] v) {
        for (int i = 0; i < v.length; i++) {
            for (int j = 0; j < i; j++) v[i] -= lower[i][j] * v[j];
            v[i] /= lower[i][i];
        }
    }

    /** sqrt(-2 ln Phi(z)), whose half square is the bound's part of the misfit. */
    private static double bounded(double z) {
        return Math.sqrt(-2 * logPhi(z));
    }

    private static double boundedSlope(double z) {
        double r = bounded(z);
        double ratio = Math.exp(-z * z / 2 - LN_2PI / 2 - logPhi(z));
        return r > 1e-12 ? -ratio / r : 0;
    }

    /** ln Phi(z); far below 0 by its asymptotic series. */
    private static double logPhi(double z) {
        if (z > 0) return Math.log1p(-0.5 * Erf.erfc(z / Math.sqrt(2)));
        if (z > -8) return Math.log(0.5 * Erf.erfc(-z / Math.sqrt(2)));
        double u = 1 / (z * z);
        return -z * z / 2 - LN_2PI / 2 - Math.log(-z) + Math.log1p(u * (-1 + u * (3 - 15 * u)));
    }
}

package slabfield.siting;

import java.util.Arrays;
import slabfield.fit.Fitted;

/** For every cell, the best leak there and what it gains; the formulas are those of {@link LeakMap}. */
final class OneMoreLeak {
    private final double[][] changes;
    private final double[] residuals;
    private final double[][] sensitivities;
    private final double[][] covariance;
    private final double[] most;

    OneMoreLeak(Fitted fitted, LeakResponses responses) {
        changes = fitted.inDeviations(responses.byLeak());
        residuals = fitted.independentResiduals();
        sensitivities = fitted.scaledSensitivities();
        covariance = fitted.covariance();
        most = responses.most();
    }

    /** Sets gain and conductance of every cell. */
    void weigh(double[] gain, double[] conductance) {
        double[] bySensitivity = new double[covariance.length];
        for (int c = 0; c < gain.length; c++) {
            double along = 0, square = 0;
            Arrays.fill(bySensitivity, 0);
            for (int i = 0; i < residuals.length; i++) {
                double a = changes[i][c];
                along += a * residuals[i];
                square += a * a;
                for (int j = 0; j < bySensitivity.length; j++) bySensitivity[j] += a * sensitivities[i][j];
            }
            double information = square - explained(bySensitivity);
            boolean known = !Double.isNaN(information);
            double g = known && along > 0 && information > 0 ? Math.min(along / information, most[c]) : 0;
            conductance[c] = known ? g : Double.NaN;
            double gained = g > 0 ? g * along - g * g * information / 2 : 0;
            gain[c] = known ? gained : Double.NaN;
        }
    }

    /** What the doubt about the fitted unknowns takes from the information. */
    private double explained(double[] v) {
        double sum = 0;
        for (int j = 0; j < v.length; j++) for (int k = 0; k < v.length; k++) sum += v[j] * covariance[j][k] * v[k];
        return sum;
    }
}

package slabfield.diagnosis;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import slabfield.fit.Fitted;
import slabfield.fit.HouseFit;
import slabfield.fit.Observation;
import slabfield.fit.Parameter;
import slabfield.model.Scenario;

/**
 * How near an explanation could come to the readings, looked at without a fit: solved at two sizes of its own cause, and the rest
 * taken as linear. With r what its house leaves of the readings, J the sensitivities of the usual unknowns in the house as drawn
 * and of the cause's own between the two sizes, all in standard deviations, it is the least over y of
 *
 * <p>|r - J y|^2 + |x + y|^2
 *
 * <p>x values of the unknowns in that house. The fill and the leaks that were fitted without a cause are what the cause would
 * change, so they must not be held, and are not only begun with as they were fitted. Readings with the fan off are taken as in the house as drawn.
 */
final class Look {
    /** Size of a cause, in deviations of its prior: a little below the median, where most fits end. */
    private static final double USUAL = -0.3;

    private static final double SMALL = -1.3;

    /** Deviations of the prior of all leaks within which what is fitted and what is drawn are one and the same to look from. */
    private static final double NEAR = 0.5;

    private final Fitted drawn;
    private final List<Integer> seen;
    private final RealMatrix usual;

    /** A look from the fit of the house as drawn, whose unknowns are the usual ones. */
    Look(Fitted drawn) {
        this.drawn = drawn;
        seen = IntStream.range(0, drawn.observations().size())
                .filter(i -> drawn.observations().get(i).what() != Observation.What.FAN_OFF)
                .boxed()
                .toList();
        usual = new Array2DRowRealMatrix(drawn.scaledSensitivities());
    }

    /**
     * The least, or infinite where the house has no solution: from the leaks as they were fitted without a cause, or from the
     * leaks as drawn, whichever comes nearer where the two are apart. What that fit made of the leaks may be the very thing that the
     * cause explains, and far from there nothing is linear.
     */
    double at(Explanation e) {
        double[] x = drawn.deviations();
        double fitted = from(e, x);
        int leaks = drawn.indexOf(Explanations.ALL_LEAKS);
        if (leaks < 0 || Math.abs(x[leaks]) < NEAR) return fitted;
        x[leaks] = 0;
        return Math.min(fitted, from(e, x));
    }

    private double from(Explanation e, double[] x) {
        Optional<RealVector> first = left(e, x, USUAL);
        if (first.isEmpty()) return Double.POSITIVE_INFINITY;
        boolean sized = e.own() == 1 && e.unknowns().size() == x.length + 1;
        Optional<RealVector> second = sized ? left(e, x, SMALL) : Optional.empty();
        if (second.isEmpty()) return least(first.get(), usual, new ArrayRealVector(x));
        RealMatrix all = new Array2DRowRealMatrix(usual.getRowDimension(), x.length + 1);
        all.setSubMatrix(usual.getData(), 0, 0);
        all.setColumnVector(x.length, second.get().subtract(first.get()).mapDivide(USUAL - SMALL));
        return Math.min(
                least(first.get(), all, new ArrayRealVector(x).append(USUAL)),
                least(second.get(), all, new ArrayRealVector(x).append(SMALL)));
    }

    /** What a house leaves of the readings, in standard deviations. */
    private Optional<RealVector> left(Explanation e, double[] x, double size) {
        Scenario h = e.house();
        for (int j = 0; j < e.unknowns().size(); j++) {
            Parameter p = e.unknowns().get(j);
            boolean own = j >= e.unknowns().size() - e.own();
            h = p.with(h, p.prior().value(own ? size : x[j]));
        }
        return HouseFit.predicted(
                        h, seen.stream().map(drawn.observations()::get).toList())
                .map(this::left);
    }

    private RealVector left(double[] predicted) {
        double[][] change = new double[drawn.observations().size()][1];
        List<Fitted.Residual> residuals = drawn.residuals();
        for (int i = 0; i < predicted.length; i++)
            change[seen.get(i)][0] = predicted[i] - residuals.get(seen.get(i)).predicted();
        return new ArrayRealVector(drawn.independentResiduals())
                .subtract(new Array2DRowRealMatrix(drawn.inDeviations(change)).getColumnVector(0));
    }

    private static double least(RealVector r, RealMatrix j, RealVector x) {
        RealMatrix a = j.transpose().multiply(j);
        for (int i = 0; i < x.getDimension(); i++) a.addToEntry(i, i, 1);
        RealVector y =
                new CholeskyDecomposition(a).getSolver().solve(j.preMultiply(r).subtract(x));
        RealVector off = r.subtract(j.operate(y)), from = x.add(y);
        return off.dotProduct(off) + from.dotProduct(from);
    }
}

package slabfield.network;

import static org.assertj.core.api.Assertions.assertThat;
import static slabfield.network.Houses.at;

import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.field.Result;
import slabfield.model.BlockWall;
import slabfield.model.Opening;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Source;

/**
 * Darcy-Forchheimer flow, -grad p = (mu/k) v + beta rho |v| v, against solutions of ordinary differential equations:
 * radial flow in a leaky round slab by shooting with an eighth-order Runge-Kutta method of a general library, and straight
 * flow in closed form.
 */
class InertialFieldsTest {
    private static final double MU = 1.81e-5;
    private static final double RHO = 1.204;
    private static final double H = 0.1;

    /** Exact radial solution for a suction of 250 Pa: flow into the pit, then pressures at 0.5, 1, 2, 3, 4, 5 m. */
    private static double[] radial(double k, double beta, double leakance, double rw, double outer) {
        double low = 1e-3, high = 250;
        double[] path = {};
        for (int n = 0; n < 200; n++) {
            double rim = (low + high) / 2;
            path = inward(k, beta, leakance, rw, outer, rim);
            if (path[1] > 250) high = rim;
            else low = rim;
        }
        return path;
    }

    /** Integrates from the rim inward; {flow, vacuum at rw, vacuums at the radii}. */
    private static double[] inward(double k, double beta, double g, double rw, double outer, double rim) {
        var ode = new org.apache.commons.math3.ode.FirstOrderDifferentialEquations() {
            @Override
            public int getDimension() {
                return 2;
            }

            @Override
            public void computeDerivatives(double s, double[] y, double[] d) {
                double r = outer - s, v = y[1] / (2 * Math.PI * r * H);
                d[0] = MU / k * v + beta * RHO * v * v;
                d[1] = 2 * Math.PI * r * g * y[0];
            }
        };
        var method = new DormandPrince853Integrator(1e-9, 0.1, 1e-11, 1e-11);
        double[] y = {rim, 0}, radii = {5, 4, 3, 2, 1, 0.5, rw}, out = new double[8];
        double s = 0;
        for (int i = 0; i < radii.length; i++) {
            method.integrate(ode, s, y, outer - radii[i], y);
            s = outer - radii[i];
            if (i < 6) out[7 - i] = y[0];
        }
        out[0] = y[1];
        out[1] = y[0];
        return out;
    }

    @Test
    void shootingAgreesWithTheRecordedValues() {
        double[] n1 = radial(1e-7, 1000, 2e-6, 0.15, 6);
        assertThat(n1[0]).isCloseTo(4.136868e-2, Percentage.withPercentage(1e-3));
        assertThat(n1[2]).isCloseTo(211.4207, Percentage.withPercentage(1e-3));
        assertThat(n1[7]).isCloseTo(180.0220, Percentage.withPercentage(1e-3));
        double[] n5 = radial(2e-8, 0, 1e-6, 0.15, 6);
        assertThat(n5[0]).isCloseTo(1.915005e-2, Percentage.withPercentage(1e-3));
    }

    /** Off the middle of cells on purpose; the radius runs through pits smaller and larger than a cell. */
    @ParameterizedTest
    @CsvSource({
        "2e-8,0,1e-6,0.15,0.1", "1e-7,1000,2e-6,0.15,0.1", "1e-7,1000,2e-6,0.15,0.05", "1e-7,1000,2e-6,0.3,0.1",
        "1e-7,1000,2e-6,0.05,0.1", "1e-7,1000,2e-6,0.05,0.2", "1e-7,3000,2e-6,0.1,0.1", "3e-7,1500,5e-6,0.2,0.1"
    })
    void leakyRoundSlab(double k, double beta, double leakance, double rw, double cell) {
        double x = 0.013, y = 0.021;
        Result.Solved s = Houses.on(k, beta)
                .round(6)
                .leakance(leakance)
                .suction("S", x, y, rw, new Source.Pressure(-250))
                .cell(cell)
                .solved();
        double[] exact = radial(k, beta, leakance, rw, 6);
        assertThat(s.suctions().get(0).flow()).as("flow").isCloseTo(exact[0], Percentage.withPercentage(1));
        double[] radii = {0.5, 1, 2, 3, 4, 5};
        for (int i = 0; i < radii.length; i++)
            assertThat(-at(s, x + radii[i] * 0.8, y + radii[i] * 0.6))
                    .as("vacuum at r = %s", radii[i])
                    .isCloseTo(exact[2 + i], Percentage.withPercentage(1));
    }

    /** Flow along a strip 8 m wide and 10 m long, straight and aslant to the grid lines: 120.6 Pa drive 0.04 m3/s. */
    @Test
    void straightStrip() {
        BlockWall feed = new BlockWall(
                "feed",
                Houses.path(0, 0, 0, 8),
                1,
                Seal.of(SealState.SEALED),
                0,
                1e4,
                0,
                1e4,
                0,
                false,
                java.util.Optional.empty());
        Result.Solved s = Houses.on(1e-7, 1000)
                .rectangle(0, 0, 10, 8)
                .wall(feed)
                .drainedLine("out", 10, 0, 10, 8)
                .outdoors(120.6)
                .solved();
        assertThat(-s.flows().bySource().get("out")).isCloseTo(0.04, Percentage.withPercentage(0.5));
    }

    /** Between two circles without leakage: Darcy part with the logarithm, quadratic part with 1/r1 - 1/r2. */
    @ParameterizedTest
    @CsvSource({"0.02,20.2027,7.88873", "0.05,50.5068,49.3046"})
    void betweenCirclesTheTwoPartsAdd(double q, double linear, double quadratic) {
        int n = 240;
        double[] rim = new double[2 * n + 2];
        for (int i = 0; i <= n; i++) {
            rim[2 * i] = 5 * Math.cos(2 * Math.PI * i / n);
            rim[2 * i + 1] = i == n ? 0 : 5 * Math.sin(2 * Math.PI * i / n);
        }
        Result.Solved s = Houses.on(1e-7, 1000)
                .round(5.0005)
                .suction("S", 0, 0, 0.15, new Source.Flow(q))
                .opening("rim", new Opening.Along(Houses.path(rim)), new Opening.PowerLaw(1e4, 1))
                .cell(0.05)
                .solved();
        assertThat(-s.suctions().get(0).pressure()).isCloseTo(linear + quadratic, Percentage.withPercentage(1));
    }
}

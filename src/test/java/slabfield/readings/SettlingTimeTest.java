package slabfield.readings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.law.AirState;
import slabfield.model.Fill;
import slabfield.model.FillWord;

class SettlingTimeTest {
    private static final double P = 101325;

    private static double time(FillWord word, double k, double distance) {
        return SettlingTime.of(new Fill(word, 0.1, k, 0, false), distance, AirState.STANDARD, P);
    }

    /**
     * A sealed strip of length L whose one end jumps: the far end by explicit steps of dp/dt = D d2p/dx2 with
     * D = k P / (n mu). Its end has made 89 % of its change at L^2/D (Carslaw and Jaeger 1959).
     */
    @Test
    void theFarEndOfAStripHasMade89Percent() {
        double k = 3e-11, length = 5, porosity = SettlingTime.airFilledPorosity(FillWord.SAND);
        double diffusivity = k * P / (porosity * AirState.STANDARD.viscosity());
        int cells = 200;
        double dx = length / cells, dt = 0.4 * dx * dx / diffusivity;
        double[] p = new double[cells];
        double end = time(FillWord.SAND, k, length);
        for (double t = 0; t < end; t += dt) {
            double[] next = p.clone();
            for (int i = 0; i < cells; i++) {
                double left = i == 0 ? 2 - p[0] : p[i - 1], right = i == cells - 1 ? p[i] : p[i + 1];
                next[i] += diffusivity * dt / (dx * dx) * (left - 2 * p[i] + right);
            }
            p = next;
        }
        assertThat(p[cells - 1]).isCloseTo(1 - 4 / Math.PI * Math.exp(-Math.PI * Math.PI / 4), within(2e-3));
        assertThat(p[cells - 1]).isCloseTo(0.89, within(5e-3));
    }

    /** Stone settles at once, sand within minutes, silt takes far longer; each over 5 m. */
    @ParameterizedTest
    @CsvSource({"CLEAN_STONE, 1e-8, 0, 10", "SAND, 1e-11, 60, 180", "SILT_OR_CLAY, 5e-13, 1200, 7200"})
    void fillsSettleAsExperienceHasIt(FillWord word, double k, double least, double most) {
        assertThat(time(word, k, 5)).isBetween(least, most);
    }
}

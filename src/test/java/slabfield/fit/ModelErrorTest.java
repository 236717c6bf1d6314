package slabfield.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.StatUtils;
import org.junit.jupiter.api.Test;

/**
 * How far vacuums and flows of made houses with patches of other fill lie from those of the even fill that comes nearest to their
 * vacuums, all leaks being as they are. With {@code -Dslabfield.long=true} on the seeds on which the method was worked out, written to
 * validation/studies/model-error.md; else on a few.
 */
class ModelErrorTest {
    private static final boolean LONG = Boolean.getBoolean("slabfield.long");
    private static final int FIRST = 1001, HOUSES = LONG ? 150 : 24;
    private static final double[] POWERS = {0, 0.3, 0.5, 0.6, 0.7, 0.8, 1};
    private static final double[] FALLS = {0, 0.2, 0.4, 0.7, 1, 1.5, 2, 3, 4, 6, 20};
    /** Median of what is positive of a normal distribution, in its standard deviations. */
    private static final double MEDIAN = 0.6745;

    private static final Path PAGE = Path.of("validation/studies/model-error.md");

    @Test
    void errorsGrowWithTheFall() throws Exception {
        List<SyntheticHouses.Left> left = SyntheticHouses.left(FIRST, HOUSES);
        double[] likely = Arrays.stream(POWERS).map(p -> logLikelihood(left, p)).toArray();
        double share = SyntheticHouses.modelError(left, NoiseModel.POWER);
        if (LONG) write(left, likely, share);
        int usual = Arrays.binarySearch(POWERS, NoiseModel.POWER);
        assertThat(likely[usual]).isGreaterThan(likely[0]);
        if (LONG) assertThat(likely[usual]).isEqualTo(StatUtils.max(likely));
        assertThat(share)
                .isBetween(
                        NoiseModel.USUAL.fallShare() / (LONG ? 1.15 : 1.5),
                        NoiseModel.USUAL.fallShare() * (LONG ? 1.15 : 1.5));
        if (!LONG) return;
        assertThat(NoiseModel.USUAL.flowShare()).isBetween(usual(flows(left)), root(flows(left)));
    }

    /** Logarithm of the density of all that is left, normal with the deviation s max(fall, least)^power and the likeliest s, apart from a constant. */
    private static double logLikelihood(List<SyntheticHouses.Left> left, double power) {
        double s = SyntheticHouses.modelError(left, power);
        return left.stream()
                .flatMapToDouble(l -> Arrays.stream(l.fall()))
                .map(fall -> -Math.log(s) - power * Math.log(Math.max(NoiseModel.LEAST_FALL, fall)))
                .sum();
    }

    private static double[] flows(List<SyntheticHouses.Left> left) {
        return left.stream().flatMapToDouble(l -> Arrays.stream(l.flows())).toArray();
    }

    private static double root(double[] v) {
        return Math.sqrt(StatUtils.sumSq(v) / v.length);
    }

    /** Standard deviation of the normal distribution with the same median of sizes, which a few large ones do not move. */
    private static double usual(double[] v) {
        return StatUtils.percentile(Arrays.stream(v).map(Math::abs).toArray(), 50) / MEDIAN;
    }

    private static void write(List<SyntheticHouses.Left> left, double[] likely, double share) throws Exception {
        StringBuilder page = new StringBuilder(String.format(
                Locale.ROOT,
                "# How far are vacuums and flows of uneven fill from the model's?%n%n%d houses with fixed seeds from %d, as in"
                        + " [fit-coverage.md](fit-coverage.md), whose seeds are others: six patches of other fill each, all leaks known. Beside them the"
                        + " even fill that comes nearest to the vacuums at six holes, as drawn and with the sump closed. The fall of a vacuum p from the"
                        + " suction p0 is ln(p0/p). Made by `ModelErrorTest` with `-Dslabfield.long=true`.%n%n"
                        + "| fall | readings | differ by, root of the mean square | over max(fall, %.2f)^%.1f |%n|---|---|---|---|%n",
                HOUSES,
                FIRST,
                NoiseModel.LEAST_FALL,
                NoiseModel.POWER));
        for (int k = 0; k + 1 < FALLS.length; k++) {
            double low = FALLS[k], high = FALLS[k + 1];
            ToDoubleFunction<Double> root = p -> root(left.stream()
                    .flatMapToDouble(l -> IntStream.range(0, l.fall().length)
                            .filter(i -> l.fall()[i] >= low && l.fall()[i] < high)
                            .mapToDouble(i -> l.scaled(i, p)))
                    .toArray());
            long count = left.stream()
                    .flatMapToDouble(l -> Arrays.stream(l.fall()))
                    .filter(f -> f >= low && f < high)
                    .count();
            page.append(String.format(
                    Locale.ROOT,
                    "| %.1f to %.1f | %d | %.1f %% | %.1f %% |%n",
                    low,
                    high,
                    count,
                    100 * root.applyAsDouble(0.0),
                    100 * root.applyAsDouble(NoiseModel.POWER)));
        }
        page.append(String.format(
                Locale.ROOT,
                "%nOver that power all differ by %.1f %%; the fit takes %.1f %%.%n%n| power of the fall | logarithm of the differences' density, over"
                        + " that with none |%n|---|---|%n",
                100 * share,
                100 * NoiseModel.USUAL.fallShare()));
        for (int i = 0; i < likely.length; i++)
            page.append(String.format(Locale.ROOT, "| %.1f | %.0f |%n", POWERS[i], likely[i] - likely[0]));
        page.append(
                String.format(
                        Locale.ROOT,
                        "%n| exhaust flow | differs by, root of the mean square | as a normal distribution with the same median |%n|---|---|---|%n"));
        List<String> states = List.of("as drawn", "sump closed", "sump and joint sealed");
        for (int k = 0; k < states.size(); k++) {
            int at = k;
            row(
                    page,
                    states.get(k),
                    left.stream().mapToDouble(l -> l.flows()[at]).toArray());
        }
        row(page, "all", flows(left));
        page.append(String.format(
                Locale.ROOT,
                "%nA few houses, with a patch under the pit, have most of a flow's mean square. The fit takes %.0f %% of a flow, which lies"
                        + " between both columns.%n",
                100 * NoiseModel.USUAL.flowShare()));
        Files.createDirectories(PAGE.getParent());
        Files.writeString(PAGE, page);
    }

    private static void row(StringBuilder page, String state, double[] v) {
        page.append(String.format(Locale.ROOT, "| %s | %.1f %% | %.1f %% |%n", state, 100 * root(v), 100 * usual(v)));
    }
}

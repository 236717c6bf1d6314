package slabfield.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.apache.commons.math3.stat.StatUtils;
import org.junit.jupiter.api.Test;
import slabfield.field.Progress;

/**
 * How far flows lie from the model beyond their meter: the share under which the readings of made houses are likeliest, with the
 * share of pressures as usual. With {@code -Dslabfield.long=true} on the seeds on which the method was worked out, written to
 * validation/studies/flow-share.md; else on a few.
 */
class FlowShareTest {
    private static final boolean LONG = Boolean.getBoolean("slabfield.long");
    private static final int FIRST = 1001, HOUSES = LONG ? 60 : 10;
    private static final double[] SHARES =
            LONG ? new double[] {0, 0.03, 0.05, 0.1, 0.2, 0.4} : new double[] {NoiseModel.USUAL.flowShare(), 0.2};
    /** Difference of the logarithms of two probabilities from which one is notably likelier (Jeffreys 1961, from memory). */
    private static final double NOTABLY = 2.3;

    private static final Path PAGE = Path.of("validation/studies/flow-share.md");

    private static double logEvidence(double share) throws NotFitted {
        NoiseModel noise = new NoiseModel(NoiseModel.USUAL.fallShare(), share);
        double sum = 0;
        for (int seed = FIRST; seed < FIRST + HOUSES; seed++) {
            var drawn = SyntheticHouses.of(seed).drawn();
            sum += HouseFit.fit(drawn, Unknowns.of(drawn), noise, Progress.NONE).logEvidence();
        }
        return sum;
    }

    @Test
    void theUsualShareIsAmongTheLikeliest() throws Exception {
        double[] found = new double[SHARES.length];
        for (int i = 0; i < found.length; i++) found[i] = logEvidence(SHARES[i]);
        if (LONG) write(found);
        assertThat(found[LONG ? 2 : 0]).isGreaterThan(found[found.length - 1]);
        if (LONG) assertThat(found[2]).isGreaterThan(StatUtils.max(found) - NOTABLY);
    }

    private static void write(double[] found) throws Exception {
        StringBuilder page = new StringBuilder(String.format(
                Locale.ROOT,
                "# How far do flows lie from the model?%n%n%d houses with fixed seeds from %d, as in [fit-coverage.md](fit-coverage.md),"
                        + " whose seeds are others. Each is fitted with the model's own error of a flow taken as the share beside; that of a"
                        + " pressure stays %.1f %% where it has fallen to 1/e of the suction. The share that is used is %.0f %%. Made by `FlowShareTest` with"
                        + " `-Dslabfield.long=true`.%n%n| share | logarithm of the readings' probability, over that with none |%n|---|---|%n",
                HOUSES,
                FIRST,
                100 * NoiseModel.USUAL.fallShare(),
                100 * NoiseModel.USUAL.flowShare()));
        for (int i = 0; i < found.length; i++)
            page.append(String.format(Locale.ROOT, "| %.0f %% | %.1f |%n", 100 * SHARES[i], found[i] - found[0]));
        double sum = 0, weighted = 0;
        for (int i = 0; i < found.length; i++) {
            double width = (SHARES[Math.min(i + 1, found.length - 1)] - SHARES[Math.max(i - 1, 0)]) / 2;
            sum += width * Math.exp(found[i] - found[0]);
            weighted += width * SHARES[i] * Math.exp(found[i] - found[0]);
        }
        page.append(String.format(
                Locale.ROOT, "%nMean of the share, all being as likely beforehand: %.1f %%.%n", 100 * weighted / sum));
        Files.createDirectories(PAGE.getParent());
        Files.writeString(PAGE, page);
    }
}

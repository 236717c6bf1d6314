package slabfield.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.field.Progress;
import slabfield.model.Point;
import slabfield.model.Scenario;

/**
 * How far noise on the readings of the leaky rectangle throws fill and soil, against a table worked out here from the sum
 * of images: 300 draws, flow known, 5 to 95 % of the errors. With {@code -Dslabfield.long=true} all rows with 1200 draws of ours, else
 * one with 300.
 */
class NoiseTableTest {
    private static final boolean LONG = Boolean.getBoolean("slabfield.long");
    /** With 300 here as well, two unlucky ends can lie a third apart though both are right: at 1.0 Pa on all holes they did. */
    private static final int DRAWS = LONG ? 1200 : 300;
    /** 300 draws leave the 5 and 95 % ends open by a tenth, in the table and here. */
    private static final double A_THIRD = 1.0 / 3;

    /** The table's last digit. */
    private static final double ROUNDING = 0.05;

    private static final List<Integer> ALL = List.of(0, 1, 2, 3, 4, 5, 6, 7, 8);
    private static final List<Integer> SPREAD = List.of(0, 1, 7);
    private static final List<Integer> FAR = List.of(5, 6, 8);

    @ParameterizedTest(name = "{0} Pa on {1}")
    @CsvSource({
        "0.1, all, -1.2, 1.2, -0.2, 0.3",
        "0.5, all, -6.3, 6.0, -1.2, 1.4",
        "1.0, all, -9.4, 12.2, -2.2, 2.7",
        "0.5, spread, -10, 15, -2.1, 1.9",
        "0.1, far, -22, 30, -9, 10",
        "0.5, far, -64, NaN, -36, 48",
    })
    void bandsAsInTheTable(double noise, String holes, double tLow, double tHigh, double gLow, double gHigh)
            throws NotFitted {
        assumeTrue(LONG || holes.equals("spread"), "the other rows are for -Dslabfield.long=true");
        List<Integer> which = holes.equals("all") ? ALL : holes.equals("far") ? FAR : SPREAD;
        Scenario truth = RecoveryTest.leakyRectangle(1, 1, 0.25);
        List<Point> places = which.stream().map(i -> RecoveryTest.place(i)).toList();
        List<Parameter> unknowns = List.of(wide(Unknowns.fill(truth)), wide(Unknowns.soil(truth.soilLeakance())));
        List<Double> exact = predicted(truth, unknowns, places);
        Random random = new Random(11);
        double[] t = new double[DRAWS], g = new double[DRAWS];
        for (int k = 0; k < DRAWS; k++) {
            List<Double> noisy =
                    exact.stream().map(p -> p + noise * random.nextGaussian()).toList();
            Scenario house = MadeHouses.read(truth, places, noisy, noise);
            Fitted fitted = HouseFit.fit(house, unknowns, NoiseModel.METER_ONLY, Progress.NONE);
            t[k] = 100 * (fitted.value(0) / truth.layer().fill().permeability() - 1);
            g[k] = 100 * (fitted.value(1) / truth.soilLeakance() - 1);
        }
        check("fill, low", Band.of(t).quantile(0.05), tLow);
        // in the last row this end hangs on a few draws: from 300 of ours 480 %, in the table 269 %; the layout is
        // refused
        if (!Double.isNaN(tHigh)) check("fill, high", Band.of(t).quantile(0.95), tHigh);
        check("soil, low", Band.of(g).quantile(0.05), gLow);
        check("soil, high", Band.of(g).quantile(0.95), gHigh);
    }

    private static void check(String name, double ours, double table) {
        assertThat(ours).as(name).isCloseTo(table, Offset.offset(Math.abs(table) * A_THIRD + ROUNDING));
    }

    /** Nothing is believed beforehand, as in the table. */
    private static Parameter wide(Parameter p) {
        return new Parameter(p.id(), p.kind(), p.words(), Prior.factor(p.prior().median(), 1e4), p.change());
    }

    private static List<Double> predicted(Scenario truth, List<Parameter> unknowns, List<Point> places) {
        Scenario house =
                MadeHouses.read(truth, places, places.stream().map(p -> -1.0).toList(), 1);
        HouseModel model = new HouseModel(
                house, unknowns, Observations.of(house, NoiseModel.USUAL, false), truth.cellSize(), Progress.NONE);
        return Arrays.stream(model.evaluate(new double[2], java.util.Optional.empty())
                        .orElseThrow()
                        .predicted())
                .boxed()
                .toList();
    }
}

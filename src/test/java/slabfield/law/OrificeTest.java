package slabfield.law;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OrificeTest {
    private static final double RHO = 1.204;

    /** Bernoulli with Cd 0.61; six digits worked out here. */
    @ParameterizedTest
    @CsvSource({
        "10,  1.23496e-4, 1.95264e-4, 4.36623e-4, 6.17478e-4",
        "25,  7.71847e-4, 1.22040e-3, 2.72889e-3, 3.85924e-3",
        "50,  3.08739e-3, 4.88159e-3, 1.09156e-2, 1.54369e-2",
        "100, 1.23496e-2, 1.95264e-2, 4.36623e-2, 6.17478e-2"
    })
    void flowOfRoundHoles(double millimetres, double at4, double at10, double at50, double at100) {
        double diameter = millimetres / 1000;
        Orifice hole = Orifice.of(Math.PI / 4 * diameter * diameter, 0.61, RHO);
        assertThat(hole.flow(4)).isCloseTo(at4, withinPercentage(0.001));
        assertThat(hole.flow(10)).isCloseTo(at10, withinPercentage(0.001));
        assertThat(hole.flow(50)).isCloseTo(at50, withinPercentage(0.001));
        assertThat(hole.flow(100)).isCloseTo(at100, withinPercentage(0.001));
    }

    /** Slots of 20 cm2 per metre of drain tile, Cd 0.61; three digits worked out here. */
    @ParameterizedTest
    @CsvSource({"1, 0.404", "5, 10.1"})
    void inletLossOfDrainTile(double litresPerSecond, double drop) {
        assertThat(Orifice.of(20e-4, 0.61, RHO).flow(drop)).isCloseTo(litresPerSecond / 1000, withinPercentage(0.15));
    }

    @Test
    void ownDropBelowOneMillipascalIsInProportionToTheFlow() {
        Orifice hole = Orifice.of(1e-3, 0.61, RHO).behind(50);
        double atEnd = Math.sqrt(Orifice.LINEAR_BELOW / hole.quadratic());
        double end = Orifice.LINEAR_BELOW + 50 * atEnd;
        assertThat(hole.flow(end)).isCloseTo(atEnd, within(1e-14 * atEnd));
        assertThat(hole.flow(end / 8)).isCloseTo(atEnd / 8, within(1e-14 * atEnd));
    }

    @Test
    void seriesResistancesAdd() {
        assertThat(new Orifice(3, 4).behind(5)).isEqualTo(new Orifice(3, 9));
    }
}

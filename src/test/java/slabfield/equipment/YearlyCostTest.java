package slabfield.equipment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.model.House;
import slabfield.model.Scenario;

class YearlyCostTest {
    private static final double CFM = Basements.CFM;
    private static final double BTU = 1055.05585262;
    private static final double STANDARD_AIR = 0.075 * 16.01846337;
    private static final double FAHRENHEIT_DAY = 86400 / 1.8;

    /** ASHRAE (2009): 100 of natural and 50 of unbalanced exhaust make 111.8. */
    @Test
    void quadrature() {
        assertThat(YearlyCost.addedInQuadrature(100, 50)).isCloseTo(11.803, within(1e-3));
        assertThat(YearlyCost.addedInQuadrature(0, 50)).isEqualTo(50);
    }

    /** Load in Btu a year = 1.08 Q 24 HDD; 1.08 = 60 min/h, 0.075 lb/ft3, 0.24 Btu/(lb F). */
    @ParameterizedTest
    @CsvSource({"25,5000,3.240e6", "50,6000,7.776e6", "40,7000,7.258e6"})
    void degreeDays(double cfm, double fahrenheitDays, double btu) {
        assertThat(YearlyCost.heat(STANDARD_AIR, cfm * CFM, fahrenheitDays * FAHRENHEIT_DAY) / BTU)
                .isCloseTo(btu, Percentage.withPercentage(0.2));
    }

    /** 0.025 m3/s over 3000 K d: 1.204 x 1006 x 0.025 x 3000 x 86400 J. */
    @Test
    void siLoad() {
        assertThat(YearlyCost.heat(1.204, 0.025, 3000 * 86400.0) / 3.6e6).isCloseTo(2180.2, within(0.1));
    }

    /**
     * The industrial exhaust formula, cost = 0.154 Q dg T c/q, is another route to the same load: 10000 cfm, 6950 degree
     * days, 60 h a week, 3.50 a gallon of 106000 Btu make 21,204.
     */
    @Test
    void industrialConstant() {
        double gallons = YearlyCost.heat(STANDARD_AIR, 10000 * CFM, 6950 * FAHRENHEIT_DAY) * 60 / 168 / BTU / 106000;
        assertThat(3.5 * gallons).isCloseTo(21204, Percentage.withPercentage(0.35));
    }

    /** Common practice: about 60 W all year cost about 60 dollars at about 0.114 a kilowatt hour. */
    @Test
    void sixtyWattsAllYear() {
        House house = with(Optional.of(new House.Tariff("USD", 0.114)), Optional.empty());
        YearlyCost cost = YearlyCost.of(scenario(house), OptionalDouble.of(60), 0);
        assertThat(cost.fanEnergy().orElseThrow() / 3.6e6).isCloseTo(525.6, within(1e-9));
        assertThat(cost.fanCost().orElseThrow()).isCloseTo(60, within(0.5));
    }

    /** 50 cfm of room air, 5000 F d, an oven of 80 %: fuel for 2 x 3.240 MMBtu / 0.8 at most. */
    @Test
    void bothBoundsAndTheFuel() {
        House house = with(
                Optional.of(new House.Tariff("XYZ", 0.2)),
                Optional.of(new House.Heating("oil", 0.8, 3, "gal", 140000 * BTU)));
        YearlyCost cost = YearlyCost.of(scenario(house), OptionalDouble.of(50), 50 * CFM);
        assertThat(cost.addedLeast().orElseThrow() / CFM).isCloseTo(11.803, within(1e-3));
        assertThat(cost.heatMost().orElseThrow() / BTU).isCloseTo(6.48e6, Percentage.withPercentage(0.4));
        assertThat(cost.heatLeast().orElseThrow() / cost.heatMost().orElseThrow())
                .isCloseTo(0.23607, within(1e-4));
        double gallons = cost.heatMost().orElseThrow() / BTU / 0.8 / 140000;
        assertThat(YearlyCost.fuel(house, cost.heatMost()).orElseThrow()).isCloseTo(gallons, within(1e-9));
        assertThat(cost.heatCostMost().orElseThrow()).isCloseTo(3 * gallons, within(1e-9));
        assertThat(cost.most().orElseThrow()).isCloseTo(3 * gallons + 0.05 * 8760 * 0.2, within(1e-9));
        assertThat(cost.least().orElseThrow()).isLessThan(cost.most().orElseThrow());
    }

    @Test
    void nothingIsAssumedOfPricesOrClimate() {
        YearlyCost cost = YearlyCost.of(scenario(House.UNKNOWN), OptionalDouble.of(60), 0.02);
        assertThat(cost.fanCost()).isEmpty();
        assertThat(cost.heatMost()).isEmpty();
        assertThat(cost.addedLeast()).isEmpty();
        assertThat(cost.most()).isEmpty();
        assertThat(YearlyCost.fuel(House.UNKNOWN, OptionalDouble.of(1))).isEmpty();
    }

    /** Bins of 240 h at -10 C and 3000 h at 10 C, from 65 F: 283.33 and 1041.67 K d. */
    @Test
    void binsMakeDegreeDays() {
        double sum = Basements.house().climate().heatingSum().orElseThrow();
        assertThat(sum / 86400).isCloseTo(28.3333 * 10 + 8.3333 * 125, within(0.01));
    }

    private static Scenario scenario(House house) {
        return Basements.of(Basements.fan(300, 0.07)).withHouse(house);
    }

    private static House with(Optional<House.Tariff> tariff, Optional<House.Heating> heating) {
        return new House(
                293.15,
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.of(100 * CFM),
                List.of(),
                Optional.empty(),
                new House.Climate(List.of(), OptionalDouble.of(5000 * FAHRENHEIT_DAY), House.Climate.USUAL_BALANCE),
                List.of(),
                heating,
                tariff);
    }
}

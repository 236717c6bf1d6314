package slabfield.equipment;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.model.House;
import slabfield.model.Scenario;

class HousePressureTest {
    private static final Percentage CLOSE = Percentage.withPercentage(0.2);

    /** dp = 50 (Q/CFM50)^(1/0.65), the power law of airtightness tests, worked out separately. */
    @ParameterizedTest
    @CsvSource({
        "1000,100,1.447",
        "1000,500,17.213",
        "1500,100,0.776",
        "1500,200,2.253",
        "1500,300,4.204",
        "2500,200,1.027",
        "2500,500,4.204"
    })
    void blowerDoor(double cfm50, double exhaust, double pascals) {
        House.BlowerDoor door = new House.BlowerDoor(cfm50 * Basements.CFM, 50, 0.65);
        assertThat(HousePressure.depressurization(door, exhaust * Basements.CFM))
                .isCloseTo(pascals, CLOSE);
    }

    @ParameterizedTest
    @CsvSource({"2,2025.8", "3,1556.5", "5,1116.7"})
    void leakageForALimit(double limit, double cfm50) {
        assertThat(HousePressure.leakageFor(0.65, 250 * Basements.CFM, limit) / Basements.CFM)
                .isCloseTo(cfm50, CLOSE);
    }

    /** Hydrostatics: 0.8646 Pa for each metre at 20 C and 0 C; a review of 1999 has about 3 Pa of 20 K, 2 Pa of 4 m/s. */
    @Test
    void stackAndWind() {
        Scenario scenario = house(Basements.house());
        double metre = HousePressure.stack(scenario, 273.15) / 3.5;
        assertThat(metre).isCloseTo(0.8646, CLOSE);
        assertThat(3.5 * metre).isBetween(2.6, 3.5);
        assertThat(HousePressure.wind(House.DesignDay.USUAL_COEFFICIENT, 1.204, 4))
                .isCloseTo(2, CLOSE);
    }

    @Test
    void worstDayAddsUpAndTheSystemsOwnDrawCounts() {
        Scenario scenario = house(Basements.house());
        HousePressure without = HousePressure.onWorstDay(scenario, 258.15, 0);
        HousePressure with = HousePressure.onWorstDay(scenario, 258.15, 100 * Basements.CFM);
        assertThat(without.exhaust()).isCloseTo(2.253, CLOSE);
        assertThat(with.exhaust()).isCloseTo(4.204, CLOSE);
        assertThat(without.total()).isEqualTo(without.stack() + without.wind() + without.exhaust());
        assertThat(without.stack()).isCloseTo(3461.6 * (1 / 258.15 - 1 / 293.15) * 3.5, CLOSE);
    }

    @Test
    void limitsAreTheUsersAndNoneWithoutATest() {
        List<HousePressure.AgainstLimit> against = HousePressure.againstLimits(Basements.house(), 100 * Basements.CFM);
        assertThat(against).extracting(a -> a.limit().source()).containsExactly("a test's", "another's");
        assertThat(against).extracting(HousePressure.AgainstLimit::exceeded).containsExactly(true, false);
        assertThat(against.get(0).withoutSystem()).isCloseTo(2.253, CLOSE);
        assertThat(HousePressure.againstLimits(House.UNKNOWN, 1)).isEmpty();
    }

    @Test
    void namesWhatTheWorstDayLacks() {
        assertThat(HousePressure.missing(House.UNKNOWN)).containsExactly("house.designDay", "house.neutralLevel");
        assertThat(HousePressure.missing(Basements.house())).isEmpty();
    }

    private static Scenario house(House house) {
        return Basements.of(Basements.fan(300, 0.07)).withHouse(house);
    }
}

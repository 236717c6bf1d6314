package slabfield.desktop.viewmodel.find;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import slabfield.desktop.viewmodel.Units;
import slabfield.quantity.Unit;

class AmountsTest {
    private static final String SENTENCE = "Drill a hole at x = 3.7 m, y = -4.3 m, 2.0 m deep; x = 12.0 m.";

    @Test
    void placesAreWrittenInTheUnitThatIsShown() {
        Units units = new Units();
        units.length().set(Unit.FOOT);
        assertThat(new Amounts(units).placed(SENTENCE))
                .isEqualTo("Drill a hole at x 12 ft 2 in, y -14 ft 1 in, 2.0 m deep; x 39 ft 4 in.");
        units.length().set(Unit.METRE);
        assertThat(new Amounts(units).placed(SENTENCE))
                .isEqualTo("Drill a hole at x 3.70 m, y -4.30 m, 2.0 m deep; x 12.00 m.");
    }
}

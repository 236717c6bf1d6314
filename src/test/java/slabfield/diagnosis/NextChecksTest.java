package slabfield.diagnosis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import slabfield.field.Progress;
import slabfield.fit.Fitted;
import slabfield.fit.HouseFit;
import slabfield.fit.InertialNotDrawn;
import slabfield.fit.NotFitted;
import slabfield.model.Scenario;
import slabfield.model.Stage;

/** Checks that tell a strongly depressurized house from the one drawn, where no hole was read with the fan off. */
class NextChecksTest {
    private static Scenario made;

    @BeforeAll
    static void make() {
        Scenario house = HiddenCauses.of(1009, Cause.DEPRESSURIZED_HOUSE, true).drawn();
        made = InertialNotDrawn.usual(house)
                .withCellSize(Diagnoser.cell(house))
                .withStages(house.stages().stream()
                        .map(s -> s.with(
                                s.holes().stream()
                                        .map(NextChecksTest::fanOnOnly)
                                        .toList(),
                                s.systems()))
                        .toList());
    }

    private static Stage.HoleReading fanOnOnly(Stage.HoleReading r) {
        return new Stage.HoleReading(
                r.hole(), OptionalDouble.empty(), r.fanOn(), r.spread(), OptionalDouble.of(0.1), "");
    }

    private static NextCheck between(Scenario house, Cause a, Cause b) throws NotFitted {
        return NextChecks.between(house, fitted(house, a), fitted(house, b)).orElseThrow();
    }

    private static Fitted fitted(Scenario house, Cause cause) throws NotFitted {
        List<Explanation> all = Explanations.of(house);
        Explanation e = all.stream().filter(x -> x.cause() == cause).findFirst().orElseThrow();
        return HouseFit.fit(e.house(), e.unknowns(), Diagnoser.NOISE, Progress.NONE);
    }

    /** With the door open nothing drives air through the layer of that house, so the difference is all that the hole shows. */
    @Test
    void aDoorIsOpenedWhereTheSoilLetsTheHousesPressureIn() throws NotFitted {
        NextCheck check = between(made, Cause.AS_DRAWN, Cause.DEPRESSURIZED_HOUSE);
        assertThat(check.effort()).isEqualTo(NextCheck.Effort.CHANGE_THE_HOUSE);
        assertThat(check.words()).startsWith("Read hole \"T").contains("a door to outdoors open");
        assertThat(check.clear()).isTrue();
        assertThat(check.second() - check.first()).isGreaterThan(2);
    }

    @Test
    void thePressureOutdoorsIsReadWhereTheHolesDoNotShowIt() throws NotFitted {
        NextCheck check = between(made.withSoilLeakance(1e-13), Cause.AS_DRAWN, Cause.DEPRESSURIZED_HOUSE);
        assertThat(check.effort()).isEqualTo(NextCheck.Effort.READ_OUTDOORS);
        assertThat(check.second() - check.first()).isCloseTo(10, within(3.0));
        assertThat(check.clear()).isTrue();
    }

    @Test
    void otherwiseTheHoleIsReadWithTheFanOffAndNoDoorIsTouched() throws NotFitted {
        NextCheck check = between(made, Cause.AS_DRAWN, Cause.LEAK);
        assertThat(check.effort()).isNotIn(NextCheck.Effort.CHANGE_THE_HOUSE, NextCheck.Effort.READ_OUTDOORS);
    }
}

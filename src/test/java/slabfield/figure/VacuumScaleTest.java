package slabfield.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import slabfield.field.PressureField;
import slabfield.figure.VacuumScale.Law;
import slabfield.figure.VacuumScale.Range;
import slabfield.figure.VacuumScale.Sense;

class VacuumScaleTest {
    /** One step of an 8-bit channel, as lightness. */
    private static final double EIGHT_BIT = 0.006;

    private static OkLab seen(VacuumScale scale, double pressure) {
        return OkLab.ofArgb(scale.argb(pressure));
    }

    private static VacuumScale scale(Sense sense, Law law, double low, double high) {
        return VacuumScale.of(sense, law, new Range(low, high), false);
    }

    @ParameterizedTest
    @CsvSource({
        "SIGNED,LINEAR,false", "SIGNED,SQUARE_ROOT,false", "SIGNED,SYMMETRIC_LOG,false",
        "VACUUM_ONLY,LINEAR,false", "VACUUM_ONLY,SQUARE_ROOT,false", "VACUUM_ONLY,SYMMETRIC_LOG,false",
        "SIGNED,LINEAR,true", "VACUUM_ONLY,SQUARE_ROOT,true"
    })
    void strongerVacuumIsDarker(Sense sense, Law law, boolean greys) {
        VacuumScale scale = VacuumScale.of(sense, law, new Range(-50, 0), greys);
        double before = 2;
        for (int i = 100; i >= 0; i--) {
            double l = seen(scale, scale.pressureAt(i / 100.0)).l();
            assertThat(l).isLessThan(before);
            before = l;
        }
    }

    @ParameterizedTest
    @EnumSource(Law.class)
    void pushingSoilDarkensAsVacuumDoes(Law law) {
        VacuumScale scale = scale(Sense.SIGNED, law, -50, 50);
        for (double p : new double[] {0.5, 2, 10, 30, 50})
            assertThat(seen(scale, p).l()).isEqualTo(seen(scale, -p).l(), within(EIGHT_BIT));
    }

    @ParameterizedTest
    @EnumSource(Law.class)
    void theSidesAreNotStretchedApart(Law law) {
        VacuumScale wide = scale(Sense.SIGNED, law, -50, 50), cut = scale(Sense.SIGNED, law, -50, 4);
        for (double p : new double[] {-50, -7, -1, 1, 3, 4})
            assertThat(seen(cut, p).distanceTo(seen(wide, p))).isLessThan(2 * EIGHT_BIT);
    }

    @Test
    void zeroIsNeutralAndLight() {
        OkLab zero = seen(scale(Sense.SIGNED, Law.LINEAR, -50, 50), 0);
        assertThat(Math.hypot(zero.a(), zero.b())).isLessThan(EIGHT_BIT);
        assertThat(zero.l()).isGreaterThan(0.94);
    }

    @Test
    void theSidesDifferAlongTheBlueYellowAxisThatRedGreenBlindEyesSee() {
        VacuumScale scale = scale(Sense.SIGNED, Law.LINEAR, -50, 50);
        for (double p : new double[] {10, 25, 50}) {
            assertThat(seen(scale, -p).b()).isLessThan(-0.03);
            assertThat(seen(scale, p).b()).isGreaterThan(0.03);
        }
    }

    @Test
    void vacuumColoursStepEvenly() {
        VacuumScale scale = scale(Sense.VACUUM_ONLY, Law.LINEAR, -50, 0);
        double least = 9, most = 0;
        for (int i = 0; i < 10; i++) {
            double step = seen(scale, -5 * i).distanceTo(seen(scale, -5 * (i + 1)));
            least = Math.min(least, step);
            most = Math.max(most, step);
        }
        assertThat(most / least).isLessThan(1.6);
    }

    @Test
    void everyAnchorCanBeShown() {
        for (Sense sense : Sense.values()) {
            VacuumScale scale = scale(sense, Law.LINEAR, -50, 50);
            for (double p = -50; p <= 0; p += 5) {
                OkLab colour = seen(scale, p);
                assertThat(OkLab.ofArgb(colour.argb()).distanceTo(colour)).isLessThan(EIGHT_BIT);
            }
        }
    }

    @Test
    void beyondTheRangeTheEndColourStays() {
        VacuumScale scale = scale(Sense.SIGNED, Law.LINEAR, -50, 5);
        assertThat(scale.argb(-500)).isEqualTo(scale.argb(-50));
        assertThat(scale.argb(500)).isEqualTo(scale.argb(5));
        assertThat(scale.position(-100)).isLessThan(0);
    }

    @Test
    void soilThatPushesHasItsOwnColourOnAVacuumScale() {
        VacuumScale scale = scale(Sense.VACUUM_ONLY, Law.LINEAR, -50, 0);
        assertThat(seen(scale, 0.1).distanceTo(seen(scale, -0.1))).isGreaterThan(0.15);
    }

    @Test
    void noPressureIsTransparent() {
        for (Sense sense : Sense.values())
            assertThat(scale(sense, Law.LINEAR, -5, 0).argb(Double.NaN)).isZero();
    }

    @ParameterizedTest
    @EnumSource(Law.class)
    void placeAndPressureAreInverse(Law law) {
        VacuumScale scale = scale(Sense.SIGNED, law, -50, 8);
        for (double p : new double[] {-50, -12, -0.3, 0, 0.3, 8})
            assertThat(scale.pressureAt(scale.position(p))).isEqualTo(p, within(1e-9));
        assertThat(scale.position(-50)).isZero();
        assertThat(scale.position(8)).isEqualTo(1, within(1e-12));
    }

    @ParameterizedTest
    @EnumSource(Law.class)
    void ticksAreRoundApartAndWhereTheyBelong(Law law) {
        double inch = 249.08891;
        VacuumScale scale = scale(Sense.SIGNED, law, -0.5 * inch, 0.1 * inch);
        List<VacuumScale.Tick> ticks = scale.ticks(inch, 0.12);
        assertThat(ticks)
                .hasSizeGreaterThan(2)
                .extracting(VacuumScale.Tick::pressure)
                .contains(0.0);
        for (int i = 0; i < ticks.size(); i++) {
            assertThat(ticks.get(i).position())
                    .isEqualTo(scale.position(ticks.get(i).pressure()));
            if (i > 0)
                assertThat(ticks.get(i).position() - ticks.get(i - 1).position())
                        .isGreaterThan(0.12 - 1e-9);
            double shown = Math.abs(ticks.get(i).pressure() / inch);
            assertThat(Steps.multiples(0.001, 0, 0.6)).anyMatch(m -> Math.abs(m - shown) < 1e-9);
        }
    }

    @Test
    void theRangeOfAFieldLeavesOutWhatDoesNotCount() {
        PressureField field = HeatMapTest.field(10, 1, (x, y) -> x < 1 ? -900 : x > 9 ? 40 : 6 - 3 * x);
        field.counts()[0] = false;
        field.counts()[9] = false;
        // cells that count run from 6 - 3 * 8.5 to 6 - 3 * 1.5
        assertThat(VacuumScale.rangeOf(field, Sense.SIGNED, 1)).isEqualTo(new Range(-20, 1.5));
        assertThat(VacuumScale.rangeOf(field, Sense.VACUUM_ONLY, 1)).isEqualTo(new Range(-20, 0));
    }

    @Test
    void aRangeWithoutVacuumIsRefused() {
        assertThatThrownBy(() -> new Range(0, 5)).hasMessageContaining("below 0");
        assertThatThrownBy(() -> new Range(-5, Double.NaN)).hasMessageContaining("high end");
    }

    @ParameterizedTest
    @CsvSource({"0xFFFF0000,0.628,0.225,0.126", "0xFFFFFFFF,1,0,0", "0xFF0000FF,0.452,-0.032,-0.312"})
    void okLabAgreesWithItsAuthorsFigures(String argb, double l, double a, double b) {
        // coordinates of sRGB red, white and blue as commonly listed, to three digits
        OkLab colour = OkLab.ofArgb(Long.decode(argb).intValue());
        assertThat(colour.distanceTo(new OkLab(l, a, b))).isLessThan(1e-3);
        assertThat(colour.argb()).isEqualTo(Long.decode(argb).intValue());
    }
}

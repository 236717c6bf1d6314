package slabfield.equipment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import slabfield.law.AirState;
import slabfield.model.NominalPipe;
import slabfield.model.Source;
import slabfield.model.Source.Pipe;

/**
 * Against Colebrook (1939) worked out separately for schedule 40 pipe of 1.5 um roughness in air of 1.204 kg/m3 and
 * 1.81e-5 Pa s. At 100 cfm the 4 in column is 0.53 in of water to 100 ft, as a duct friction chart has it (read from
 * memory).
 */
class PipeLossesTest {
    private static final Percentage ONE = Percentage.withPercentage(1);

    @ParameterizedTest
    @CsvSource({
        "THREE_INCH,40,3.1182,779",
        "THREE_INCH,80,10.6042,1558",
        "THREE_INCH,120,21.8201,2337",
        "FOUR_INCH,80,2.8983,905",
        "FOUR_INCH,100,4.3022,1131",
        "FOUR_INCH,200,14.7875,2262",
        "SIX_INCH,120,0.8408,598"
    })
    void frictionAndVelocity(NominalPipe size, double cfm, double perMetre, double feetPerMinute) {
        PipeLosses losses = of(new Pipe(size.insideDiameter(), 10, 0, 0, 1.5e-6), cfm);
        assertThat(losses.frictionPerLength()).isCloseTo(perMetre, ONE);
        assertThat(losses.friction()).isCloseTo(10 * perMetre, ONE);
        assertThat(losses.velocity() / 0.00508).isCloseTo(feetPerMinute, ONE);
        assertThat(losses.fittings()).isCloseTo(0, within(1e-9));
    }

    /** 30 ft of 4 in pipe, four ells, entrance and exit at 100 cfm: 121.9 Pa, worked by hand with 30 diameters to an ell. */
    @Test
    void wholeRun() {
        PipeLosses losses = of(new Pipe(NominalPipe.FOUR_INCH.insideDiameter(), 9.144, 4, 1.5, 1.5e-6), 100);
        assertThat(losses.total()).isCloseTo(121.9, ONE);
        assertThat(losses.most() - losses.total()).isCloseTo(0.3 * losses.fittings(), within(1e-9));
        assertThat(losses.total() - losses.least()).isCloseTo(0.3 * losses.fittings(), within(1e-9));
    }

    /** Handbook lengths: a tee by its branch as two ells; a half ell, a tee straight through. */
    @Test
    void turnsStandForLengthsOfPipe() {
        double d = 0.1, friction = of(new Pipe(d, 1, 0, 0, 1.5e-6), 60).friction();
        Pipe tees = new Pipe(d, 1, 0, 0, 1.5e-6, new Source.Turns(1, 2, 3), 0, 0);
        assertThat(of(tees, 60).fittings()).isCloseTo(friction * d * (16 + 2 * 20 + 3 * 60), ONE);
        assertThat(of(new Pipe(d, 1, 2, 0, 1.5e-6), 60).fittings())
                .isCloseTo(
                        of(new Pipe(d, 1, 0, 0, 1.5e-6, new Source.Turns(0, 0, 1), 0, 0), 60)
                                .fittings(),
                        within(1e-9));
    }

    /** Common practice: about 80 cfm is too much for 3 in pipe and suits 4 in. */
    @Test
    void eightyCfmIsLoudInThreeInchAndNotInFour() {
        assertThat(of(new Pipe(NominalPipe.THREE_INCH.insideDiameter(), 10, 0, 0, 1.5e-6), 80)
                        .advice())
                .hasSize(1);
        assertThat(of(new Pipe(NominalPipe.FOUR_INCH.insideDiameter(), 10, 0, 0, 1.5e-6), 80)
                        .advice())
                .isEmpty();
    }

    /** A valve of K = 4 costs four velocity heads. */
    @Test
    void valve() {
        Pipe pipe = new Pipe(0.1, 1, 0, 0, 1.5e-6).withValve(4);
        PipeLosses losses = of(pipe, 60);
        double head = 1.204 * losses.velocity() * losses.velocity() / 2;
        assertThat(losses.fittings()).isCloseTo(4 * head, within(1e-9));
    }

    /** 1/8 in to the foot over the 4 ft that are not vertical: 1/2 in. */
    @Test
    void condensateFall() {
        Pipe pipe = new Pipe(0.1, 20 * 0.3048, 0, 0, 1.5e-6, Source.Turns.NONE, 0, 16 * 0.3048);
        assertThat(of(pipe, 60).condensateFall()).isCloseTo(0.0127, within(1e-9));
        assertThat(PipeLosses.of(List.of(pipe, pipe), 0.03, AirState.STANDARD)).hasSize(2);
    }

    private static PipeLosses of(Pipe pipe, double cfm) {
        return PipeLosses.of(pipe, cfm * Basements.CFM, AirState.STANDARD);
    }
}

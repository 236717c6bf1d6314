package slabfield.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.assertj.core.data.Offset;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Fill;
import slabfield.model.Layer;
import slabfield.model.Opening;
import slabfield.model.OpeningKind;
import slabfield.model.Point;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Zone;

/** Fill that differs right where an opening lets air in. */
class FillBesideTest {
    private static final Scenario HOUSE = SyntheticHouses.of(1).drawn();
    private static final Opening SUMP = HOUSE.openings().get(0);
    private static final Point AT = ((Opening.Spot) SUMP.place()).at();
    private static final Parameter BESIDE = FillBeside.of(HOUSE, SUMP).orElseThrow();

    @Test
    void onlyTheFillWithinAMetreChanges() {
        double k = HOUSE.layer().fill().permeability();
        Layer layer = BESIDE.with(HOUSE, 3).layer();
        assertThat(layer.fillAt(new Point(AT.x() - 0.99, AT.y())).permeability())
                .isEqualTo(3 * k);
        assertThat(layer.fillAt(new Point(AT.x() - 1.01, AT.y())).permeability())
                .isEqualTo(k);
    }

    @Test
    void asDrawnItChangesNothing() {
        Result.Solved drawn = SyntheticHouses.solved(HOUSE), same = SyntheticHouses.solved(BESIDE.with(HOUSE, 1));
        for (int h = 0; h < drawn.holes().size(); h++)
            assertThat(same.holes().get(h).fanOn().orElseThrow())
                    .isCloseTo(drawn.holes().get(h).fanOn().orElseThrow(), Percentage.withPercentage(1e-6));
    }

    /** A zone that reaches into the square keeps its own fill, whatever the fit makes of it; one with a bay has two parts there. */
    @Test
    void zonesInTheSquareStayZones() {
        double x = AT.x(), y = AT.y();
        List<Point> comb = List.of(
                new Point(x - 3, y - 0.5),
                new Point(x, y - 0.5),
                new Point(x, y - 0.2),
                new Point(x - 2, y - 0.2),
                new Point(x - 2, y + 0.2),
                new Point(x, y + 0.2),
                new Point(x, y + 0.5),
                new Point(x - 3, y + 0.5));
        Fill sand = Fill.of(0.1, 1e-10, 0), stone = HOUSE.layer().fill();
        Scenario both = HOUSE.withLayer(new Layer(stone, List.of(new Zone("sand", comb, sand))));
        Parameter beside = FillBeside.of(both, SUMP).orElseThrow();
        Layer layer =
                beside.with(Unknowns.zone(both, "sand").with(both, 4e-10), 3).layer();
        Offset<Double> close = Offset.offset(1e-18);
        for (double side : new double[] {-0.4, 0.4})
            assertThat(layer.fillAt(new Point(x - 0.5, y + side)).permeability())
                    .isCloseTo(12e-10, close);
        assertThat(layer.fillAt(new Point(x - 0.5, y)).permeability()).isCloseTo(3 * stone.permeability(), close);
        assertThat(layer.fillAt(new Point(x - 2.5, y)).permeability()).isCloseTo(4e-10, close);
    }

    /** Drawn by a fit whose values were taken over, it is a zone, which is an unknown anyway. */
    @Test
    void whatAFitHasDrawnIsNotAddedAgain() {
        assertThat(FillBeside.of(BESIDE.with(HOUSE, 2), SUMP)).isEmpty();
    }

    @Test
    void aLineAveragesOverItsFillAndHasNoPlaceOfItsOwn() {
        assertThat(FillBeside.of(HOUSE, HOUSE.openings().get(1))).isEmpty();
        Opening outside = new Opening(
                "drain",
                OpeningKind.PENETRATION,
                new Opening.Spot(new Point(-5, -5), 0.1),
                new Opening.Orifice(1e-3, 0.61),
                Seal.of(SealState.OPEN));
        assertThat(FillBeside.of(HOUSE, outside)).isEmpty();
    }

    /**
     * A house of the study whose sump leaks what is drawn. Closing it shows how much air it lets in, but not whether the opening or the
     * fill holds it back; with even fill the fit finds a fifth of it and believes that to a factor of 1.6.
     */
    @Test
    void whatTheFillHoldsBackIsNotTakenForASmallLeak() throws NotFitted {
        SyntheticHouses made = SyntheticHouses.of(1057);
        double truth = at10((Opening.PowerLaw) made.truth().openings().get(0).passage())
                / at10((Opening.PowerLaw) Unknowns.exponent(made.drawn(), "sump")
                        .with(made.drawn(), 0.55)
                        .openings()
                        .get(0)
                        .passage());
        assertThat(truth).isCloseTo(1, Percentage.withPercentage(1));
        Fitted fit = HouseFit.fit(made.drawn(), Progress.NONE);
        int leak = fit.indexOf("opening sump");
        assertThat(fit.interval(leak, 0.9).holds(truth)).isTrue();
        Identifiability told = Identifiability.of(fit);
        assertThat(told.findings().get(leak).standing()).isNotEqualTo(Identifiability.Standing.FOUND);
        assertThat(told.measure())
                .contains(
                        "Read a hole right beside the opening, for nowhere else are a leak and the fill around it told apart: the leak"
                                + " of \"sump\".");
    }

    private static double at10(Opening.PowerLaw law) {
        return law.coefficient() * Math.pow(10, law.exponent());
    }
}

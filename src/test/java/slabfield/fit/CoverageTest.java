package slabfield.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import slabfield.field.Grid;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Point;
import slabfield.model.Scenario;

/**
 * Whether the 90 % bands hold the truth of houses that follow other laws than the fit's. With {@code -Dslabfield.long=true}
 * 200 houses, whose figures are written to validation/studies/fit-coverage.md; else a few, which only shows that the bands
 * are of the right size.
 */
class CoverageTest {
    private static final boolean LONG = Boolean.getBoolean("slabfield.long");
    private static final int HOUSES = LONG ? Integer.getInteger("slabfield.houses", 200) : 4;
    private static final int MEMBERS = LONG ? 40 : 24;
    private static final Path PAGE = Path.of("validation/studies/fit-coverage.md");

    /** How often a band held the truth, and how wide it was. */
    private static final class Count {
        int held;
        int of;
        final List<Double> widths = new ArrayList<>();

        void add(Interval band, double truth) {
            of++;
            if (band.holds(truth)) held++;
            widths.add(Math.abs((band.high() - band.low()) / truth));
        }

        double part() {
            return (double) held / of;
        }
    }

    private final Map<String, Count> counts = new LinkedHashMap<>();

    @Test
    void bandsHoldTheTruth() throws Exception {
        for (int seed = 1; seed <= HOUSES; seed++) {
            one(seed);
            if (LONG) write(seed);
        }
        Count all = new Count();
        counts.values().forEach(c -> {
            all.held += c.held;
            all.of += c.of;
        });
        assertThat(all.part()).as("all bands together").isBetween(LONG ? 0.85 : 0.75, LONG ? 0.95 : 1.0);
        if (LONG) counts.forEach((name, c) -> assertThat(c.part()).as(name).isBetween(0.85, 0.95));
    }

    private void one(long seed) throws NotFitted {
        SyntheticHouses h = SyntheticHouses.of(seed);
        Fitted fit = HouseFit.fit(h.drawn(), Progress.NONE);
        assertThat(fit.converged()).as("house %d", seed).isTrue();
        Ensemble ensemble = Ensemble.of(fit, MEMBERS, seed, Progress.NONE);
        check("as drawn", ensemble, h.truth(), UnaryOperator.identity());
        check("after sealing", ensemble, h.truth(), SyntheticHouses::finished);
    }

    private void check(String name, Ensemble ensemble, Scenario truth, UnaryOperator<Scenario> change) {
        Outlook outlook = ensemble.outlook(change, SyntheticHouses.COARSE, Progress.NONE);
        Result.Solved true_ = SyntheticHouses.solved(change.apply(truth));
        count(name + ": weakest vacuum").add(outlook.weakest().interval(0.9), weakest(true_, outlook));
        count(name + ": exhaust flow")
                .add(outlook.exhaust().interval(0.9), true_.flows().exhaust());
        double right = truth.slabs().get(0).outline().get(2).x(),
                top = truth.slabs().get(0).outline().get(2).y();
        for (Point p : List.of(new Point(0.3 * right, 0.8 * top), new Point(0.9 * right, 0.9 * top)))
            count(name + ": unread places")
                    .add(
                            outlook.pressureAt(p).interval(0.9),
                            true_.field().at(p.x(), p.y()).orElseThrow());
    }

    /** Least vacuum of the truth at the middles of the outlook's cells: nearer to a leak there is always less. */
    private static double weakest(Result.Solved truth, Outlook outlook) {
        Grid grid = outlook.grid();
        boolean[] counts = outlook.forecasts().get(0).solved().field().counts();
        double least = Double.POSITIVE_INFINITY;
        for (int c = 0; c < counts.length; c++)
            if (counts[c])
                least = Math.min(
                        least,
                        -truth.field()
                                .at(grid.x(c % grid.columns()), grid.y(c / grid.columns()))
                                .orElseThrow());
        return least;
    }

    private Count count(String name) {
        return counts.computeIfAbsent(name, n -> new Count());
    }

    private void write(int houses) throws IOException {
        StringBuilder page = new StringBuilder("# Do the 90 % bands hold the truth?\n\n");
        page.append(String.format(
                Locale.ROOT,
                "%d houses with fixed seeds, %d members each. The truth lies on cells of %.2f m with patches of other fill, an"
                        + " inertial part and leaks by power laws; the fit on cells of %.2f m with even fill after Darcy, a crack"
                        + " and an orifice, each with an exponent of its own. The weakest place is sought among the middles of the fit's cells."
                        + " Made by `CoverageTest` with `-Dslabfield.long=true`.%n%n",
                houses,
                MEMBERS,
                SyntheticHouses.FINE,
                SyntheticHouses.COARSE));
        page.append("| what | bands | hold the truth | median width over the truth |\n|---|---|---|---|\n");
        counts.forEach((name, c) -> page.append(String.format(
                Locale.ROOT,
                "| %s | %d | %.1f %% | %.2f |%n",
                name,
                c.of,
                100 * c.part(),
                c.widths.stream()
                        .mapToDouble(v -> v)
                        .sorted()
                        .skip(c.of / 2)
                        .findFirst()
                        .orElseThrow())));
        Files.createDirectories(PAGE.getParent());
        Files.writeString(PAGE, page);
    }
}

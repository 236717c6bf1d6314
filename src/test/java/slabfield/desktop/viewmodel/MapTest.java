package slabfield.desktop.viewmodel;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import slabfield.figure.VacuumMap;
import slabfield.figure.VacuumScale.Sense;
import slabfield.model.Point;
import slabfield.model.SealState;

/** What is pointed at, how the map looks, and what is said of it. */
class MapTest {
    private final Workbench bench = Bench.workbench(Bench.house());

    @BeforeEach
    void solve() {
        bench.solving().start();
    }

    private Solving.Picture picture() {
        return bench.solving().picture().get();
    }

    private Probe probe(double x, double y) {
        return Probe.at(picture().result(), new Point(x, y), 0.15);
    }

    @Test
    void theProbeReadsTheFieldAndNamesWhatIsThere() {
        assertThat(probe(3, 2).what()).containsExactly("test hole T1 (sand)", "fill given by numbers");
        assertThat(probe(3, 2).pressure())
                .isEqualTo(picture()
                        .solved()
                        .orElseThrow()
                        .hole("T1")
                        .orElseThrow()
                        .fanOn());
        assertThat(probe(1, 2).what()).contains("suction point S1");
        assertThat(probe(1, 2).pressure().orElseThrow()).isCloseTo(-200, org.assertj.core.data.Offset.offset(1e-6));
        assertThat(probe(5.1, 3).what()).contains("sump (open)");
        assertThat(probe(2, 3.95).what()).contains("block wall north (tops open)");
    }

    @Test
    void outsideTheSlabThereIsNoPressure() {
        assertThat(probe(-1, 2).what()).containsExactly("outside the slab");
        assertThat(probe(-1, 2).pressure()).isEmpty();
    }

    @Test
    void aLockedRangeStaysWhenTheHouseChanges() {
        var free = VacuumMap.scale(
                        picture().solved().orElseThrow(), bench.look().style().get())
                .range();
        bench.look().lock(picture());
        assertThat(bench.look().locked().get()).contains(free);
        bench.seal("sump", SealState.SEALED);
        bench.look().sense().set(Sense.VACUUM_ONLY);
        assertThat(bench.look().style().get().range()).contains(free);
        bench.look().unlock();
        assertThat(bench.look().style().get().range()).isEmpty();
    }

    @Test
    void theMapInWordsNamesTheWeakestPlaceAndThatItIsOutOfDate() {
        String words = Headline.summary(picture(), bench.units());
        assertThat(words)
                .contains("Weakest place: "
                        + bench.units()
                                .pressure(-picture()
                                        .solved()
                                        .orElseThrow()
                                        .coverage()
                                        .weakest()))
                .doesNotContain("Out of date");
        var stale = new Solving.Picture(picture().result(), Solving.State.FAILED, false, "It did not settle.");
        assertThat(Headline.summary(stale, bench.units())).endsWith("Out of date: It did not settle.");
    }

    @Test
    void airBySourceIsSortedAndSumsToTheExhaust() {
        var solved = picture().solved().orElseThrow();
        var air = AirShare.of(solved);
        assertThat(air).isSortedAccordingTo((a, b) -> Double.compare(Math.abs(b.flow()), Math.abs(a.flow())));
        assertThat(air.stream().mapToDouble(AirShare::flow).sum())
                .isCloseTo(solved.flows().exhaust(), org.assertj.core.data.Percentage.withPercentage(1e-6));
    }

    @Test
    void cautionsThatTheHouseCallsForComeFirstAndNoneIsLeftOut() {
        var cautions = Caution.of(Bench.house());
        assertThat(cautions).hasSize(17).contains(Caution.LICENCE);
        assertThat(cautions.get(0).because()).isNotEmpty();
        assertThat(cautions.get(cautions.size() - 1).because()).isEmpty();
        assertThat(cautions).extracting(Caution::title).contains("Backdrafting and carbon monoxide", "Radon test");
    }
}

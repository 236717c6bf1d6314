package slabfield.desktop.viewmodel;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import slabfield.equipment.Sizing;
import slabfield.field.Progress;
import slabfield.figure.MapStyle;
import slabfield.io.ExampleScenarios;
import slabfield.model.Equipment;
import slabfield.model.House;
import slabfield.model.Scenario;
import slabfield.model.Target;
import slabfield.quantity.Unit;

class SystemSizingTest {
    private static final Scenario FULL = example().withCellSize(0.5);
    private static final Sizing SIZED = SystemSizing.size(FULL, Progress.NONE);

    private final Units units = new Units();

    private static Scenario example() {
        return ExampleScenarios.all().stream()
                .filter(e -> e.file().equals("two-points-one-riser.json"))
                .findFirst()
                .orElseThrow()
                .scenario();
    }

    private static SystemPart part(List<SystemPart> parts, String title) {
        return parts.stream().filter(p -> p.title().equals(title)).findFirst().orElseThrow();
    }

    private SystemPart part(Sizing sizing, String title) {
        return part(new SystemPages(sizing, units).parts(), title);
    }

    private static String words(SystemPart part) {
        return String.join(" ", part.before()) + " " + String.join(" ", part.after());
    }

    private Sizing without(House house) {
        return SystemSizing.size(Bench.house().withHouse(house), Progress.NONE);
    }

    @Test
    void pipesStandSideBySideWithWhatTheyLeaveAtTheSlab() {
        SystemPart pipes = part(SIZED, "Pipes");
        assertThat(pipes.rows())
                .extracting(r -> r.cells().get(0))
                .containsExactly("as drawn", "2 in", "3 in", "4 in", "6 in");
        for (int i = 0; i < pipes.rows().size(); i++) {
            var solved = SIZED.pipes().get(i);
            assertThat(pipes.rows().get(i).cells())
                    .contains(
                            units.pressureNumber(solved.solved().coverage().weakest()),
                            units.shown().get().flow(solved.solved().flows().exhaust()),
                            units.speedNumber(solved.fastest()));
        }
    }

    @Test
    void theUsersFansAreRankedWithPowerYearAndMargin() {
        SystemPart fans = part(SIZED, "Fans");
        assertThat(fans.rows()).hasSize(Sizing.offers(FULL).size());
        var best = SIZED.ranking().fans().get(0);
        List<String> cells = fans.rows().get(0).cells();
        assertThat(cells.get(0)).isEqualTo(best.fan().offer().id());
        assertThat(cells.get(cells.size() - 2))
                .isEqualTo(String.valueOf(Math.round(best.watts().orElseThrow())));
        assertThat(cells.get(cells.size() - 1))
                .isEqualTo(String.valueOf(Math.round(best.watts().orElseThrow() * 8.76)));
        assertThat(cells.get(4)).isEqualTo(units.pressureNumber(best.margin()));
        assertThat(fans.rows()).extracting(r -> r.cells().get(1)).contains("held", "as drawn only", "not held");
        assertThat(fans.rows())
                .extracting(SystemPart.Row::off)
                .containsExactlyElementsOf(
                        SIZED.ranking().fans().stream().map(f -> !f.meets()).toList());
        assertThat(words(fans)).contains("is invented");
    }

    @Test
    void theUnitSwitchChangesTheText() {
        String before = part(SIZED, "Pipes").rows().get(0).cells().get(5);
        units.length().set(Unit.FOOT);
        SystemPart pipes = part(SIZED, "Pipes");
        assertThat(pipes.columns()).extracting(SystemPart.Column::title).anyMatch(t -> t.contains("fpm"));
        assertThat(pipes.rows().get(0).cells().get(5)).isNotEqualTo(before);
        assertThat(words(part(SIZED, "Worst day"))).contains(" F,");
    }

    @Test
    void theWorstDayTellsHowColdItMayBecome() {
        assertThat(SIZED.heldDownTo()).isPresent();
        assertThat(words(part(SIZED, "Worst day")))
                .contains(SystemPages.down(SIZED.heldDownTo().orElseThrow(), units));
    }

    @Test
    void theHouseIsHeldAgainstTheUsersLimitWithItsSource() {
        SystemPart house = part(SIZED, "House pressure");
        assertThat(house.rows().get(0).cells()).contains("invented, for the water heater");
        assertThat(house.rows().get(0).off()).isEqualTo(SIZED.limits().get(0).exceeded());
        assertThat(words(house)).contains("no draft test");
    }

    @Test
    void theYearCostsInTheCurrencyGiven() {
        SystemPart year = part(SIZED, "Year");
        assertThat(year.columns()).extracting(SystemPart.Column::title).anyMatch(t -> t.contains("XYZ"));
        double expected = SIZED.cost().orElseThrow().fanCost().orElseThrow();
        assertThat(year.rows().get(0).cells()).contains(String.format(java.util.Locale.ROOT, "%.2f", expected));
    }

    @Test
    void aHouseOfWhichNothingIsSaidTellsWhatToTypeAndWhere() {
        Sizing bare = without(House.UNKNOWN);
        assertThat(words(part(bare, "Worst day"))).contains("\"designDay\"", "\"neutralLevel\"", "\"house\"");
        assertThat(words(part(bare, "Seasons"))).contains("\"climate\".\"bins\"");
        assertThat(words(part(bare, "House pressure"))).contains("\"blowerDoor\"", "\"limits\"");
        assertThat(words(part(bare, "Pipes"))).contains("\"pipe\"");
        assertThat(words(part(bare, "Fans"))).contains("invented", "\"equipment\"");
        SystemPart year = part(bare, "Year");
        assertThat(words(year)).contains("\"tariff\"", "\"heating\"", "\"degreeDays\"", "\"naturalFlow\"");
        assertThat(year.columns()).noneMatch(c -> c.title().contains("Cost"));
    }

    @Test
    void progressCountsToTheEndOnce() {
        List<Integer> seen = new ArrayList<>();
        Document document = new Document(FULL);
        SystemSizing sizing = new SystemSizing(
                document,
                units,
                (s, p) -> SystemSizing.size(s, new Progress() {
                    @Override
                    public void step(int done, int total, double residual) {
                        synchronized (seen) {
                            seen.add(done);
                        }
                        p.step(done, total, residual);
                    }
                }),
                new InLineRunner());
        sizing.start();
        assertThat(seen).hasSize(SystemSizing.solves(FULL));
        assertThat(sizing.search().progress().get()).isEqualTo(1);
        assertThat(sizing.headline())
                .startsWith("\u201cstrong\u201d holds 3 Pa on the worst day with the least power. The target ");
    }

    @Test
    void aChangeMarksTheNumbersAndAnotherHouseDropsThem() {
        Document document = new Document(FULL);
        Bench.Held held = new Bench.Held();
        SystemSizing sizing = new SystemSizing(document, units, (s, p) -> SIZED, held);
        sizing.start();
        held.finishOne();
        assertThat(sizing.parts()).hasSize(6);
        document.edit(Edit.of("target", s -> s.withTarget(new Target(9, "test"))));
        assertThat(sizing.search().outOfDate().get()).isTrue();
        document.open(Bench.house(), Optional.empty());
        assertThat(sizing.parts()).isEmpty();
        assertThat(sizing.headline()).isEmpty();
    }

    @Test
    void aCancelledSizingGivesNothingEvenIfItEndsLater() {
        Bench.Held held = new Bench.Held();
        SystemSizing sizing = new SystemSizing(new Document(FULL), units, (s, p) -> SIZED, held);
        sizing.start();
        sizing.search().cancel();
        held.finishOne();
        assertThat(sizing.parts()).isEmpty();
        assertThat(sizing.search().message().get()).isEqualTo("The sizing was cancelled.");
    }

    @Test
    void theFansCurveIsDrawnOnceItIsKnown() {
        Units shown = new Units();
        SystemSizing sizing = new SystemSizing(new Document(FULL), shown, (s, p) -> SIZED, new InLineRunner());
        MapStyle look = MapStyle.of(shown.shown().get());
        assertThat(sizing.curve(look)).isEmpty();
        sizing.start();
        var works = sizing.search().found().get().orElseThrow().curve().orElseThrow();
        assertThat(sizing.curve(look).orElseThrow().description())
                .contains(look.units().flow(works.flow()) + " " + look.units().flowSymbol());
    }

    @Test
    void aHouseWithoutSuctionPointIsNotSized() {
        Document document = new Document(FULL.withSuctionPoints(List.of()).withEquipment(Equipment.NONE));
        SystemSizing sizing = new SystemSizing(document, units, SystemSizing::size, new InLineRunner());
        sizing.start();
        assertThat(sizing.search().message().get()).contains("no suction point");
    }
}

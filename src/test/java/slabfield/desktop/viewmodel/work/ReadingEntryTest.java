package slabfield.desktop.viewmodel.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import slabfield.desktop.viewmodel.Bench;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.desktop.viewmodel.work.ReadingEntry.Slot;
import slabfield.desktop.viewmodel.work.ReadingEntry.What;
import slabfield.model.Stage;
import slabfield.model.StageKind;
import slabfield.quantity.Unit;

class ReadingEntryTest {
    private final Workbench bench = Bench.workbench(Bench.house());
    private final ReadingEntry entry = new ReadingEntry(bench, () -> LocalDateTime.of(2026, 3, 4, 9, 30, 12));

    @BeforeEach
    void start() {
        bench.solving().start();
    }

    private void type(String keys) {
        for (char c : keys.toCharArray()) entry.type(c);
    }

    private Stage stage() {
        return bench.document()
                .scenario()
                .get()
                .stage(entry.stage().get().orElseThrow())
                .orElseThrow();
    }

    @Test
    void aRoundGoesFromHoleToHoleAndWritesEachNumber() {
        entry.begin(StageKind.COMMUNICATION_TEST);
        assertThat(entry.rows())
                .extracting(ReadingEntry.Row::slot)
                .containsExactly(
                        new Slot("T1", What.OFF, true),
                        new Slot("T2", What.OFF, true),
                        new Slot("T1", What.ON, true),
                        new Slot("T2", What.ON, true),
                        new Slot("S1", What.RISER, false),
                        new Slot("S1", What.FLOW, false));
        type("0.4");
        entry.next();
        entry.next();
        assertThat(entry.slot()).contains(new Slot("T1", What.ON, true));
        assertThat(entry.shown().get())
                .as("with the suction on a minus stands there")
                .isEqualTo("\u2212");
        type("31,5");
        entry.next();
        assertThat(stage().holes()).singleElement().satisfies(r -> {
            assertThat(r.fanOff()).hasValue(0.4);
            assertThat(r.fanOn()).hasValue(-31.5);
            assertThat(r.time()).isEqualTo("2026-03-04T09:30");
        });
        assertThat(stage().time()).isEqualTo("2026-03-04T09:30");
        bench.document().undo();
        assertThat(stage().holes().get(0).fanOn()).isEmpty();
    }

    @Test
    void holeByHoleIsAnotherOrder() {
        entry.pairs().set(true);
        assertThat(entry.rows())
                .extracting(r -> r.slot().id() + r.slot().what())
                .startsWith("T1OFF", "T1ON", "T2OFF");
    }

    @Test
    void numbersAreInTheUnitShownAndSwitchingItChangesNoneOfThem() {
        bench.document()
                .edit(slabfield.desktop.viewmodel.Edit.of(
                        "stage", s -> s.withStages(List.of(Bench.stage("first", java.util.Map.of(), -30)))));
        entry.stage().set(Optional.of("first"));
        bench.units().pressure().set(Unit.INCH_OF_WATER);
        entry.go(2);
        type("0.1");
        entry.next();
        assertThat(stage().holes().get(0).fanOn().orElseThrow()).isEqualTo(-24.909, within(0.001));
        entry.otherUnit();
        assertThat(entry.unit()).isEqualTo("Pa");
        assertThat(stage().holes().get(0).fanOn().orElseThrow()).isEqualTo(-24.909, within(0.001));
        assertThat(entry.rows().get(2).number()).isEqualTo("\u221224.9");
        entry.go(5);
        type("80");
        entry.next();
        assertThat(stage().systems().get(0).flow().orElseThrow()).isEqualTo(Unit.CFM.toSi(80));
    }

    @Test
    void withoutAStageNothingIsWritten() {
        type("3");
        entry.next();
        assertThat(entry.remark().get()).contains("Choose the stage");
        assertThat(bench.document().scenario().get().stages()).isEmpty();
    }

    @Test
    void slipsAreAskedBackButNotForbidden() {
        entry.begin(StageKind.START_UP);
        entry.go(2);
        type("0.020");
        assertThat(entry.remark().get()).contains("inches of water").contains("Pa");
        entry.go(2);
        type("-5");
        assertThat(entry.remark().get()).contains("push into the room");
        entry.go(2);
        type("900");
        assertThat(entry.remark().get()).contains("stronger than any riser");
        entry.next();
        assertThat(stage().holes().get(0).fanOn()).hasValue(-900);
        entry.go(2);
        type("20");
        assertThat(entry.remark().get()).isEmpty();
    }

    @Test
    void whatCannotBeToldFromNothingIsSaid() {
        entry.begin(StageKind.COMMUNICATION_TEST);
        type("-0.5");
        entry.next();
        entry.go(2);
        type("0.5");
        assertThat(entry.remark().get()).contains("reads the same with the fan on and off");
    }

    @Test
    void erasingTheLastNumberOfAHoleTakesItOut() {
        entry.begin(StageKind.COMMUNICATION_TEST);
        type("1");
        entry.next();
        entry.previous();
        entry.erase();
        assertThat(stage().holes()).isEmpty();
    }

    @Test
    void whatIsKnownAboutTheReadingsIsTypedToo() {
        entry.begin(StageKind.COMMUNICATION_TEST);
        type("0.4");
        entry.next();
        entry.go(0);
        entry.goTo(What.SPREAD);
        assertThat(entry.details().get()).isTrue();
        assertThat(entry.slot()).contains(new Slot("T1", What.SPREAD, true));
        assertThat(entry.isPressure()).isTrue();
        type("0.25");
        entry.next();
        assertThat(entry.slot()).contains(new Slot("T1", What.COUNT, true));
        assertThat(entry.unit()).isEmpty();
        type("12");
        entry.next();
        assertThat(entry.unit()).isEqualTo("s");
        type("300");
        entry.next();
        assertThat(stage().holes()).singleElement().satisfies(r -> {
            assertThat(r.fanOff()).hasValue(0.4);
            assertThat(r.spread()).hasValue(0.25);
            assertThat(r.count()).hasValue(12);
            assertThat(r.waited()).hasValue(300);
        });
        assertThat(entry.rows())
                .filteredOn(r -> r.slot().id().equals("T1"))
                .extracting(ReadingEntry.Row::value)
                .containsExactly("0.40 Pa", "", "0.25 Pa", "12", "300 s");
        bench.document().undo();
        assertThat(stage().holes().get(0).waited()).isEmpty();
    }

    @Test
    void riserAndPitAreTwoReadings() {
        entry.begin(StageKind.COMMUNICATION_TEST);
        entry.details().set(true);
        entry.go(entry.rows().size() - 1);
        entry.goTo(What.PIT);
        type("180");
        entry.next();
        assertThat(entry.slot()).contains(new Slot("S1", What.FLOW, false));
        entry.goTo(What.RISER);
        type("220");
        entry.next();
        assertThat(stage().systems()).singleElement().satisfies(r -> {
            assertThat(r.pit()).hasValue(-180);
            assertThat(r.riser()).hasValue(-220);
        });
        int at = entry.at().get();
        entry.goTo(What.WAITED);
        assertThat(entry.at().get())
                .as("no waiting time is kept for a suction point")
                .isEqualTo(at);
    }

    @Test
    void anImpossibleNumberIsRefusedWhereItIsTyped() {
        entry.begin(StageKind.COMMUNICATION_TEST);
        entry.goTo(What.COUNT);
        type("3");
        entry.next();
        assertThat(entry.remark().get()).contains("Type first what was read at T1");
        entry.goTo(What.OFF);
        type("0.4");
        entry.next();
        entry.go(0);
        entry.goTo(What.COUNT);
        type("2.5");
        entry.next();
        assertThat(entry.remark().get()).contains("whole number");
        assertThat(entry.slot()).contains(new Slot("T1", What.COUNT, true));
        entry.goTo(What.SPREAD);
        type("-1");
        entry.next();
        assertThat(entry.remark().get()).contains("cannot be below 0");
        assertThat(stage().holes().get(0).spread()).isEmpty();
    }

    @Test
    void undoingTheStageLeavesNoneChosen() {
        entry.begin(StageKind.COMMUNICATION_TEST);
        bench.document().undo();
        assertThat(entry.stage().get()).isEmpty();
    }
}

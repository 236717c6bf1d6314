package slabfield.desktop.viewmodel.work;

import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import slabfield.desktop.viewmodel.Edit;
import slabfield.desktop.viewmodel.Units;
import slabfield.desktop.viewmodel.Workbench;
import slabfield.model.Stage;
import slabfield.model.StageKind;

/**
 * Enters the readings of one stage, number by number, in the order in which a technician goes round. Each number is
 * written into the house when it is confirmed, as a step that can be undone.
 */
public final class ReadingEntry {
    /** What is read. */
    public enum What {
        OFF("suction off"),
        ON("suction on"),
        RISER("vacuum in the riser"),
        /** In the pit or the tile, beside the riser. */
        PIT("vacuum in the pit"),
        FLOW("flow drawn"),
        /** Standard deviation of the pressures while they were read. */
        SPREAD("spread while reading"),
        /** Independent readings of which each value is the mean. */
        COUNT("number of readings"),
        /** From switching the fan on to the reading. */
        WAITED("waiting time");

        private final String words;

        What(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * One number to be read.
     *
     * @param atHole at a test hole; else at a suction point
     */
    public record Slot(String id, What what, boolean atHole) {}

    /**
     * A slot as it is listed.
     *
     * @param number what is written down, without its unit, or empty
     * @param unit symbol of the unit shown, empty for a mere number
     */
    public record Row(Slot slot, String number, String unit, boolean active) {
        /** With the unit, or empty. */
        public String value() {
            return number.isEmpty() ? "" : (number + " " + unit).strip();
        }
    }

    private final Workbench bench;
    private final Supplier<LocalDateTime> clock;
    private final ReadingCheck check;
    private final ReadingUnits units;
    private final Keypad keypad = new Keypad();
    private final ObjectProperty<Optional<String>> stage = new SimpleObjectProperty<>(Optional.empty());
    private final BooleanProperty pairs = new SimpleBooleanProperty();
    private final BooleanProperty details = new SimpleBooleanProperty();
    private final ObjectProperty<Character> mark = new SimpleObjectProperty<>('.');
    private final ObservableList<Row> rows = FXCollections.observableArrayList();
    private final ReadOnlyIntegerWrapper at = new ReadOnlyIntegerWrapper();
    private final ReadOnlyStringWrapper shown = new ReadOnlyStringWrapper("");
    private final ReadOnlyStringWrapper remark = new ReadOnlyStringWrapper("");

    /** @param clock the time now */
    public ReadingEntry(Workbench bench, Supplier<LocalDateTime> clock) {
        this.bench = bench;
        this.clock = clock;
        this.check = new ReadingCheck(bench);
        this.units = new ReadingUnits(bench.units());
        bench.document().opened().addListener((o, was, is) -> stage.set(Optional.empty()));
        bench.document().scenario().addListener((o, was, is) -> list());
        bench.units().shown().addListener((o, was, is) -> {
            list();
            restart();
        });
        stage.addListener((o, was, is) -> go(0));
        pairs.addListener((o, was, is) -> go(0));
        details.addListener((o, was, is) -> goTo(slot()));
        mark.addListener((o, was, is) -> show());
        list();
    }

    /** Id of the stage that readings go to; empty before one is chosen or begun. */
    public ObjectProperty<Optional<String>> stage() {
        return stage;
    }

    /** Whether each hole is read off and on before the next; else all off, then all on. */
    public BooleanProperty pairs() {
        return pairs;
    }

    /** Whether spread, number of readings, waiting time and the pit's vacuum are in the round too. */
    public BooleanProperty details() {
        return details;
    }

    /** The decimal mark on the key and in what is shown; both are understood. */
    public ObjectProperty<Character> mark() {
        return mark;
    }

    /** All numbers of the stage in the order of the round. */
    public ObservableList<Row> rows() {
        return rows;
    }

    /** Index of the row that is typed now. */
    public ReadOnlyIntegerProperty at() {
        return at.getReadOnlyProperty();
    }

    /** The number as it is typed, without its unit. */
    public ReadOnlyStringProperty shown() {
        return shown.getReadOnlyProperty();
    }

    /** What is odd about the number typed; empty where nothing is. */
    public ReadOnlyStringProperty remark() {
        return remark.getReadOnlyProperty();
    }

    public Units units() {
        return bench.units();
    }

    /** Begins a stage of a kind, dated now, and goes to its first number. */
    public void begin(StageKind kind) {
        String name = kind.words(), free = name;
        for (int k = 2; bench.document().scenario().get().stage(free).isPresent(); k++) free = name + " " + k;
        Stage fresh = new Stage(free, kind, java.util.Map.of(), java.util.Map.of(), List.of(), List.of(), now(), "");
        bench.document().edit(Edit.of("begin " + free, s -> s.withStages(added(s.stages(), fresh))));
        stage.set(Optional.of(free));
    }

    private static <T> List<T> added(List<T> list, T last) {
        List<T> out = new ArrayList<>(list);
        out.add(last);
        return out;
    }

    private String now() {
        return clock.get().truncatedTo(ChronoUnit.MINUTES).toString();
    }

    /** The slot that is typed now; empty where there is none. */
    public Optional<Slot> slot() {
        return at.get() < rows.size() ? Optional.of(rows.get(at.get()).slot()) : Optional.empty();
    }

    /** Symbol of the unit of the number that is typed now. */
    public String unit() {
        return slot().map(units::symbol).orElse("");
    }

    /** True where the number that is typed now is a pressure, so that its unit can be switched. */
    public boolean isPressure() {
        return slot().filter(units::isPressure).isPresent();
    }

    /** Goes to a row. */
    public void go(int row) {
        at.set(Math.max(0, Math.min(row, Math.max(0, order().size() - 1))));
        list();
        restart();
    }

    /** Goes to another number at the same hole or suction point, with the details in the round if need be; nothing where it is not read there. */
    public void goTo(What what) {
        Optional<Slot> wanted = slot().map(s -> new Slot(s.id(), what, s.atHole()));
        if (wanted.filter(Round.of(bench.document().scenario().get(), pairs.get(), true)::contains)
                .isEmpty()) return;
        if (!order().contains(wanted.get())) details.set(true);
        goTo(wanted);
    }

    private void goTo(Optional<Slot> wanted) {
        go(wanted.map(order()::indexOf).filter(k -> k >= 0).orElse(0));
    }

    private List<Slot> order() {
        return Round.of(bench.document().scenario().get(), pairs.get(), details.get());
    }

    /** A key bears a digit. */
    public void digit(int digit) {
        keypad.digit(digit);
        show();
    }

    public void decimalMark() {
        keypad.mark();
        show();
    }

    public void sign() {
        keypad.sign();
        show();
    }

    public void back() {
        keypad.back();
        show();
    }

    /** Takes a letter from a keyboard. */
    public void type(char letter) {
        keypad.type(letter);
        show();
    }

    /** Switches between the two units of pressure; no stored value changes. */
    public void otherUnit() {
        int next = (Units.PRESSURES.indexOf(bench.units().pressure().get()) + 1) % Units.PRESSURES.size();
        bench.units().pressure().set(Units.PRESSURES.get(next));
    }

    /** Writes the number typed, if any, and goes to the next. */
    public void next() {
        if (!enter()) return;
        go(at.get() + 1);
    }

    /** Goes back without writing. */
    public void previous() {
        go(at.get() - 1);
    }

    /** Takes the number that stands in the active row out of the house. */
    public void erase() {
        slot().ifPresent(s -> write(s, OptionalDouble.empty()));
        restart();
    }

    private boolean enter() {
        if (stage.get().isEmpty()) {
            remark.set("Choose the stage first, or begin one.");
            return false;
        }
        if (keypad.value().isEmpty() || slot().isEmpty()) return true;
        Optional<String> refused = check.impossible(
                slot().get(), chosen().orElseThrow(), keypad.value().getAsDouble());
        refused.ifPresent(remark::set);
        if (refused.isEmpty())
            write(
                    slot().get(),
                    OptionalDouble.of(units.toSi(slot().get(), keypad.value().getAsDouble())));
        return refused.isEmpty();
    }

    private void restart() {
        keypad.start(slot().filter(s -> ReadingCheck.VACUUMS.contains(s.what())).isPresent());
        show();
    }

    private void show() {
        shown.set(keypad.shown(mark.get()));
        remark.set(odd());
    }

    private String odd() {
        if (keypad.value().isEmpty() || slot().isEmpty() || chosen().isEmpty()) return "";
        Slot now = slot().get();
        double typed = keypad.value().getAsDouble();
        Optional<String> impossible = check.impossible(now, chosen().get(), typed);
        if (impossible.isPresent()) return impossible.get();
        Stage with = StageChange.with(chosen().get(), now, OptionalDouble.of(units.toSi(now, typed)), now());
        return check.of(now, with, typed, keypad.decimals(), units.of(now));
    }

    private Optional<Stage> chosen() {
        return stage.get().flatMap(bench.document().scenario().get()::stage);
    }

    private void list() {
        if (stage.get().isPresent() && chosen().isEmpty()) {
            stage.set(Optional.empty());
            return;
        }
        List<Slot> order = order();
        if (at.get() >= order.size()) at.set(Math.max(0, order.size() - 1));
        List<Row> out = new ArrayList<>();
        for (int k = 0; k < order.size(); k++) out.add(row(order.get(k), k == at.get()));
        if (!out.equals(rows)) rows.setAll(out);
    }

    private Row row(Slot slot, boolean active) {
        String number = chosen().map(s -> units.number(slot, StageChange.value(s, slot)))
                .orElse("");
        return new Row(slot, number, units.symbol(slot), active);
    }

    private void write(Slot slot, OptionalDouble value) {
        String id = stage.get().orElseThrow();
        bench.document()
                .edit(Edit.of(
                        "reading of " + slot.id() + ", " + slot.what().words(),
                        s -> s.withStages(s.stages().stream()
                                .map(each -> each.id().equals(id) ? StageChange.with(each, slot, value, now()) : each)
                                .toList())));
    }
}

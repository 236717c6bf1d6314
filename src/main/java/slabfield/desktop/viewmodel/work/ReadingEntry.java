package slabfield.desktop.viewmodel.work;

import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
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
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.model.StageKind;
import slabfield.model.SuctionPoint;
import slabfield.model.TestHole;
import slabfield.quantity.Unit;

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
        FLOW("flow drawn");

        private final String words;

        What(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** One number to be read: at a hole or suction point. */
    public record Slot(String id, What what) {}

    /**
     * A slot as it is listed.
     *
     * @param number what is written down, without its unit, or empty
     * @param unit symbol of the unit shown
     */
    public record Row(Slot slot, String number, String unit, boolean active) {
        /** With the unit, or empty. */
        public String value() {
            return number.isEmpty() ? "" : number + " " + unit;
        }
    }

    private final Workbench bench;
    private final Supplier<LocalDateTime> clock;
    private final ReadingCheck check;
    private final Keypad keypad = new Keypad();
    private final ObjectProperty<Optional<String>> stage = new SimpleObjectProperty<>(Optional.empty());
    private final BooleanProperty pairs = new SimpleBooleanProperty();
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
        bench.document().opened().addListener((o, was, is) -> stage.set(Optional.empty()));
        bench.document().scenario().addListener((o, was, is) -> list());
        bench.units().shown().addListener((o, was, is) -> {
            list();
            restart();
        });
        stage.addListener((o, was, is) -> go(0));
        pairs.addListener((o, was, is) -> go(0));
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
        return slot().map(s -> unitOf(s).symbol()).orElse("");
    }

    /** Goes to a row. */
    public void go(int row) {
        at.set(Math.max(0, Math.min(row, Math.max(0, rowCount() - 1))));
        list();
        restart();
    }

    private int rowCount() {
        return order(bench.document().scenario().get()).size();
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
        keypad.value().ifPresent(v -> slot().ifPresent(s -> write(s, OptionalDouble.of(unitOf(s).toSi(v)))));
        return true;
    }

    private Unit unitOf(Slot slot) {
        return slot.what() == What.FLOW ? bench.units().flow().get() : bench.units().pressure().get();
    }

    private void restart() {
        keypad.start(slot().filter(s -> s.what() == What.ON || s.what() == What.RISER).isPresent());
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
        Stage with = StageChange.with(chosen().get(), now, OptionalDouble.of(unitOf(now).toSi(typed)), now());
        return check.of(now, with, typed, keypad.decimals(), unitOf(now));
    }

    private Optional<Stage> chosen() {
        return stage.get().flatMap(bench.document().scenario().get()::stage);
    }

    private Optional<Stage.HoleReading> read(String hole) {
        return chosen().flatMap(s -> s.holes().stream().filter(h -> h.hole().equals(hole)).findFirst());
    }

    private List<Slot> order(Scenario scenario) {
        List<String> holes = scenario.testHoles().stream().map(TestHole::id).toList();
        List<Slot> out = new ArrayList<>();
        if (pairs.get()) for (String h : holes) out.addAll(List.of(new Slot(h, What.OFF), new Slot(h, What.ON)));
        else {
            holes.forEach(h -> out.add(new Slot(h, What.OFF)));
            holes.forEach(h -> out.add(new Slot(h, What.ON)));
        }
        for (SuctionPoint s : scenario.suctionPoints()) out.addAll(List.of(new Slot(s.id(), What.RISER), new Slot(s.id(), What.FLOW)));
        return out;
    }

    private void list() {
        if (stage.get().isPresent() && chosen().isEmpty()) {
            stage.set(Optional.empty());
            return;
        }
        List<Slot> order = order(bench.document().scenario().get());
        if (at.get() >= order.size()) at.set(Math.max(0, order.size() - 1));
        List<Row> out = new ArrayList<>();
        for (int k = 0; k < order.size(); k++) out.add(new Row(order.get(k), text(order.get(k)), unitOf(order.get(k)).symbol(), k == at.get()));
        if (!out.equals(rows)) rows.setAll(out);
    }

    private String text(Slot slot) {
        OptionalDouble value = value(slot);
        if (value.isEmpty()) return "";
        return slot.what() == What.FLOW ? bench.units().shown().get().flow(value.getAsDouble()) : bench.units().pressureNumber(value.getAsDouble());
    }

    private OptionalDouble value(Slot slot) {
        Function<Stage.HoleReading, OptionalDouble> ofHole = slot.what() == What.OFF ? Stage.HoleReading::fanOff : Stage.HoleReading::fanOn;
        if (slot.what() == What.OFF || slot.what() == What.ON) return read(slot.id()).map(ofHole).orElse(OptionalDouble.empty());
        return chosen().flatMap(s -> s.systems().stream().filter(r -> r.suctionPoint().equals(slot.id())).findFirst())
                .map(r -> slot.what() == What.RISER ? r.riser() : r.flow()).orElse(OptionalDouble.empty());
    }

    private void write(Slot slot, OptionalDouble value) {
        String id = stage.get().orElseThrow();
        bench.document().edit(Edit.of("reading of " + slot.id() + ", " + slot.what().words(), s -> s.withStages(s.stages().stream()
                .map(each -> each.id().equals(id) ? StageChange.with(each, slot, value, now()) : each).toList())));
    }
}

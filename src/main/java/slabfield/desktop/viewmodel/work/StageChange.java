package slabfield.desktop.viewmodel.work;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import slabfield.desktop.viewmodel.work.ReadingEntry.Slot;
import slabfield.desktop.viewmodel.work.ReadingEntry.What;
import slabfield.model.FlowReading;
import slabfield.model.Stage;

/** Gets single numbers out of a stage, and puts them in. */
final class StageChange {
    private static final OptionalDouble NONE = OptionalDouble.empty();

    private StageChange() {}

    /** A number of a stage in SI; empty where it was not read. */
    static OptionalDouble value(Stage stage, Slot slot) {
        return slot.atHole()
                ? ofHole(hole(stage, slot.id()), slot.what())
                : ofSystem(system(stage, slot.id()), slot.what());
    }

    private static OptionalDouble ofHole(Stage.HoleReading r, What what) {
        return switch (what) {
            case OFF -> r.fanOff();
            case ON -> r.fanOn();
            case SPREAD -> r.spread();
            case COUNT -> r.count().isPresent() ? OptionalDouble.of(r.count().getAsInt()) : NONE;
            case WAITED -> r.waited();
            default -> throw new IllegalArgumentException(what + " is not read at a hole");
        };
    }

    private static OptionalDouble ofSystem(Stage.SystemReading r, What what) {
        return switch (what) {
            case RISER -> r.riser();
            case PIT -> r.pit();
            case FLOW -> r.flow();
            case SPREAD -> r.spread();
            default -> throw new IllegalArgumentException(what + " is not read at a suction point");
        };
    }

    private static Stage.HoleReading hole(Stage stage, String id) {
        return stage.holes().stream()
                .filter(r -> r.hole().equals(id))
                .findFirst()
                .orElse(new Stage.HoleReading(id, NONE, NONE, NONE, NONE, ""));
    }

    private static Stage.SystemReading system(Stage stage, String id) {
        return stage.systems().stream()
                .filter(r -> r.suctionPoint().equals(id))
                .findFirst()
                .orElse(new Stage.SystemReading(id, NONE, NONE, ""));
    }

    /** True where anything was read at the place of a slot, so that its spread or waiting time has something to belong to. */
    static boolean isRead(Stage stage, Slot slot) {
        return slot.atHole() ? !isEmpty(hole(stage, slot.id())) : !isEmpty(system(stage, slot.id()));
    }

    private static boolean isEmpty(Stage.HoleReading r) {
        return r.fanOff().isEmpty() && r.fanOn().isEmpty();
    }

    private static boolean isEmpty(Stage.SystemReading r) {
        return r.flowReading().isEmpty() && r.riser().isEmpty() && r.pit().isEmpty();
    }

    /** The stage with one number exchanged; a hole or suction point at which nothing is read any more is taken out. */
    static Stage with(Stage stage, Slot slot, OptionalDouble value, String time) {
        if (slot.atHole()) {
            Stage.HoleReading was = hole(stage, slot.id()), is = exchanged(was, slot.what(), value, time);
            return stage.with(put(stage.holes(), was, is, isEmpty(is)), stage.systems());
        }
        Stage.SystemReading was = system(stage, slot.id()), is = exchanged(was, slot.what(), value, time);
        return stage.with(stage.holes(), put(stage.systems(), was, is, isEmpty(is)));
    }

    private static Stage.HoleReading exchanged(Stage.HoleReading was, What what, OptionalDouble value, String time) {
        OptionalInt count =
                value.isPresent() ? OptionalInt.of((int) Math.rint(value.getAsDouble())) : OptionalInt.empty();
        return new Stage.HoleReading(
                was.hole(),
                what == What.OFF ? value : was.fanOff(),
                what == What.ON ? value : was.fanOn(),
                what == What.SPREAD ? value : was.spread(),
                what == What.COUNT ? count : was.count(),
                was.meterStep(),
                what == What.WAITED ? value : was.waited(),
                time);
    }

    private static Stage.SystemReading exchanged(
            Stage.SystemReading was, What what, OptionalDouble value, String time) {
        Optional<FlowReading> stated =
                value.isPresent() ? Optional.of(new FlowReading.Stated(value.getAsDouble(), NONE)) : Optional.empty();
        return new Stage.SystemReading(
                was.suctionPoint(),
                what == What.FLOW ? stated : was.flowReading(),
                what == What.RISER ? value : was.riser(),
                what == What.PIT ? value : was.pit(),
                what == What.SPREAD ? value : was.spread(),
                was.meterStep(),
                time);
    }

    private static <T> List<T> put(List<T> list, T was, T is, boolean empty) {
        List<T> out = new ArrayList<>(list);
        int at = out.indexOf(was);
        if (at >= 0 && empty) out.remove(at);
        else if (at >= 0) out.set(at, is);
        else if (!empty) out.add(is);
        return out;
    }
}

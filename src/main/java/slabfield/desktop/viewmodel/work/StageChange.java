package slabfield.desktop.viewmodel.work;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import slabfield.desktop.viewmodel.work.ReadingEntry.Slot;
import slabfield.desktop.viewmodel.work.ReadingEntry.What;
import slabfield.model.FlowReading;
import slabfield.model.Stage;

/** Puts single numbers into a stage. */
final class StageChange {
    private static final OptionalDouble NONE = OptionalDouble.empty();

    private StageChange() {}

    /** The stage with one number exchanged; a hole or suction point without any number left is taken out. */
    static Stage with(Stage stage, Slot slot, OptionalDouble value, String time) {
        boolean hole = slot.what() == What.OFF || slot.what() == What.ON;
        List<Stage.HoleReading> holes = hole ? holes(stage, slot, value, time) : stage.holes();
        List<Stage.SystemReading> systems = hole ? stage.systems() : systems(stage, slot, value, time);
        return stage.with(holes, systems);
    }

    private static List<Stage.HoleReading> holes(Stage stage, Slot slot, OptionalDouble value, String time) {
        Stage.HoleReading was = stage.holes().stream().filter(r -> r.hole().equals(slot.id())).findFirst()
                .orElse(new Stage.HoleReading(slot.id(), NONE, NONE, NONE, NONE, ""));
        boolean off = slot.what() == What.OFF;
        Stage.HoleReading is = new Stage.HoleReading(
                slot.id(), off ? value : was.fanOff(), off ? was.fanOn() : value, was.spread(), was.count(), was.meterStep(), was.waited(), time);
        List<Stage.HoleReading> out = new ArrayList<>(stage.holes());
        int at = out.indexOf(was);
        boolean empty = is.fanOff().isEmpty() && is.fanOn().isEmpty();
        put(out, at, is, empty);
        return out;
    }

    private static List<Stage.SystemReading> systems(Stage stage, Slot slot, OptionalDouble value, String time) {
        Stage.SystemReading was = stage.systems().stream().filter(r -> r.suctionPoint().equals(slot.id())).findFirst()
                .orElse(new Stage.SystemReading(slot.id(), NONE, NONE, ""));
        boolean flow = slot.what() == What.FLOW;
        Optional<FlowReading> read = !flow ? was.flowReading()
                : value.isEmpty() ? Optional.empty() : Optional.of(new FlowReading.Stated(value.getAsDouble(), NONE));
        Stage.SystemReading is = new Stage.SystemReading(
                slot.id(), read, flow ? was.riser() : value, was.pit(), was.spread(), was.meterStep(), time);
        List<Stage.SystemReading> out = new ArrayList<>(stage.systems());
        put(out, out.indexOf(was), is, is.flowReading().isEmpty() && is.riser().isEmpty() && is.pit().isEmpty());
        return out;
    }

    private static <T> void put(List<T> list, int at, T item, boolean empty) {
        if (at >= 0 && empty) list.remove(at);
        else if (at >= 0) list.set(at, item);
        else if (!empty) list.add(item);
    }
}

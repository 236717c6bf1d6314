package slabfield.desktop.viewmodel.work;

import java.util.ArrayList;
import java.util.List;
import slabfield.desktop.viewmodel.work.ReadingEntry.Slot;
import slabfield.desktop.viewmodel.work.ReadingEntry.What;
import slabfield.model.Scenario;
import slabfield.model.SuctionPoint;
import slabfield.model.TestHole;

/** The order in which a technician goes round the house. */
final class Round {
    private static final List<What> ABOUT_A_HOLE = List.of(What.SPREAD, What.COUNT, What.WAITED);

    private Round() {}

    /**
     * All numbers of a round.
     *
     * @param pairs each hole off and on before the next; else all off, then all on
     * @param details what is known about the readings too: their spread, their number, the waiting time, the pit's pressure
     */
    static List<Slot> of(Scenario scenario, boolean pairs, boolean details) {
        List<String> holes = scenario.testHoles().stream().map(TestHole::id).toList();
        List<Slot> out = new ArrayList<>();
        if (!pairs) holes.forEach(h -> out.add(new Slot(h, What.OFF, true)));
        for (String h : holes) {
            if (pairs) out.add(new Slot(h, What.OFF, true));
            out.add(new Slot(h, What.ON, true));
            if (details) ABOUT_A_HOLE.forEach(what -> out.add(new Slot(h, what, true)));
        }
        List<What> atSuction =
                details ? List.of(What.RISER, What.PIT, What.FLOW, What.SPREAD) : List.of(What.RISER, What.FLOW);
        for (SuctionPoint s : scenario.suctionPoints())
            atSuction.forEach(what -> out.add(new Slot(s.id(), what, false)));
        return out;
    }
}

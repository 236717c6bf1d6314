package slabfield.io;

import java.util.List;
import java.util.Optional;
import slabfield.model.NoDrillArea;
import slabfield.model.Plan;
import slabfield.model.Point;
import slabfield.model.Underlay;
import slabfield.quantity.Dimension;

/** Reads what a drawing carries beside the house. */
final class PlanReader {
    private PlanReader() {}

    static Optional<Plan> plan(Entry e) {
        double north = e.number("north", 0);
        List<NoDrillArea> areas = e.list("noDrillAreas", FileObject.NO_DRILL_AREA, PlanReader::noDrillArea);
        Optional<Underlay> underlay =
                e.has("underlay") ? underlay(e.entry("underlay", FileObject.UNDERLAY)) : Optional.empty();
        return e.make(() -> new Plan(areas, underlay, north));
    }

    private static Optional<NoDrillArea> noDrillArea(Entry e) {
        String id = e.text("id");
        List<Point> outline = e.points("outline");
        String reason = e.text("reason");
        return e.make(() -> new NoDrillArea(id, outline, reason));
    }

    private static Optional<Underlay> underlay(Entry e) {
        String picture = e.text("picture");
        Point corner = e.point("corner");
        double pixel = e.quantity("pixel", Dimension.LENGTH);
        double turned = e.number("turned", 0);
        return e.make(() -> new Underlay(picture, corner, pixel, turned));
    }
}

package slabfield.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.valid.IsValidOp;
import org.locationtech.jts.operation.valid.TopologyValidationError;

/** Outlines that enclose nothing, cross themselves or lie over each other. */
final class OutlineCheck {
    /** Less than this is no area, and no overlap [m2]. */
    static final double NOTHING = 1e-4;

    private final List<Problem> problems = new ArrayList<>();

    private OutlineCheck() {}

    static List<Problem> problems(Scenario scenario) {
        OutlineCheck check = new OutlineCheck();
        for (int i = 0; i < scenario.slabs().size(); i++)
            check.slab(scenario.slabs().get(i), "/slabs/" + i);
        for (int i = 0; i < scenario.layer().zones().size(); i++) {
            Zone zone = scenario.layer().zones().get(i);
            check.outline("/layer/zones/" + i + "/outline", "zone \"" + zone.id() + "\": its outline", zone.outline());
        }
        for (int i = 0; i < scenario.plan().noDrillAreas().size(); i++) {
            NoDrillArea area = scenario.plan().noDrillAreas().get(i);
            String path = "/plan/noDrillAreas/" + i + "/outline";
            check.outline(path, "no-drill area \"" + area.id() + "\": its outline", area.outline());
        }
        if (check.problems.isEmpty()) check.overlaps(scenario.slabs());
        return check.problems;
    }

    private void slab(Slab slab, String path) {
        String who = title(slab);
        boolean sound = outline(path + "/outline", who + ": its outline", slab.outline());
        for (int i = 0; i < slab.holes().size(); i++) {
            String hole = path + "/holes/" + i;
            if (outline(hole, who + ": hole " + (i + 1), slab.holes().get(i))
                    && sound
                    && Shapes.without(Shapes.area(slab.holes().get(i)), Shapes.area(slab.outline()))
                                    .getArea()
                            > NOTHING)
                add(hole, who + ": hole " + (i + 1) + " lies wholly or partly outside its outline; move it inside");
        }
        if (problems.isEmpty() && Shapes.area(slab).getArea() < NOTHING)
            add(path + "/holes", who + ": its holes leave nothing of it");
    }

    private boolean outline(String path, String who, List<Point> corners) {
        if (corners.get(0).equals(corners.get(corners.size() - 1)))
            return add(path, who + " repeats its first corner at the end; leave the last one out");
        Geometry area = Shapes.area(corners);
        TopologyValidationError error = new IsValidOp(area).getValidationError();
        if (area.getArea() < NOTHING && (error == null || corners.size() == 3))
            return add(path, who + " encloses no area; check its corners");
        if (error == null) return true;
        return add(
                path,
                who
                        + String.format(
                                Locale.ROOT,
                                " crosses itself near (%.2f m, %.2f m);",
                                error.getCoordinate().x,
                                error.getCoordinate().y)
                        + " list the corners in order, once around");
    }

    private void overlaps(List<Slab> slabs) {
        List<Geometry> areas = slabs.stream().map(Shapes::area).toList();
        for (int i = 1; i < slabs.size(); i++)
            for (int j = 0; j < i; j++)
                if (Shapes.common(areas.get(i), areas.get(j)).getArea() > NOTHING)
                    add(
                            "/slabs/" + i + "/outline",
                            title(slabs.get(i)) + " lies partly over " + title(slabs.get(j))
                                    + "; slabs may touch but not overlap");
    }

    private boolean add(String path, String message) {
        problems.add(new Problem(path, message));
        return false;
    }

    static String title(Slab slab) {
        return "slab \"" + slab.id() + "\"";
    }
}

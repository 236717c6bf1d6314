package slabfield.model;

import java.util.List;

/**
 * One concrete slab.
 *
 * @param id what the user calls it
 * @param outline corners in order, at least three, not repeated at the end
 * @param holes outlines of parts inside it that have no layer below (a stair pit, a chimney base)
 * @param thickness of the concrete, which is the depth of its joints and cracks [m]
 * @param treated false where the user says that no suction is meant to reach this slab
 */
public record Slab(String id, List<Point> outline, List<List<Point>> holes, double thickness, boolean treated) {
    public static final double USUAL_THICKNESS = 0.1016;

    public Slab {
        Check.name("id", id);
        outline = Check.list("outline", outline);
        if (outline.size() < 3) throw new ImpossibleValue("outline", "needs at least three corners");
        holes = Check.list("holes", holes).stream().map(List::copyOf).toList();
        for (List<Point> hole : holes)
            if (hole.size() < 3) throw new ImpossibleValue("holes", "each need at least three corners");
        Check.positive("thickness", thickness);
    }
}

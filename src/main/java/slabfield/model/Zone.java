package slabfield.model;

import java.util.List;

/**
 * A part of the layer with another fill. Where zones overlap the later one holds.
 *
 * @param id what the user calls it
 * @param outline corners in order, not repeated at the end
 * @param fill what lies there
 */
public record Zone(String id, List<Point> outline, Fill fill) {
    public Zone {
        Check.name("id", id);
        outline = Check.list("outline", outline);
        if (outline.size() < 3) throw new ImpossibleValue("outline", "needs at least three corners");
        Check.present("fill", fill);
    }
}

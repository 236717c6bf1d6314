package slabfield.model;

import java.util.List;

/**
 * A part of the plan where nothing may be cored or drilled: a buried line, a tensioned cable, a finished floor.
 *
 * @param id what the user calls it
 * @param outline corners in order, not repeated at the end
 * @param reason why, in the user's words, or empty
 */
public record NoDrillArea(String id, List<Point> outline, String reason) {
    public NoDrillArea {
        Check.name("id", id);
        outline = Check.list("outline", outline);
        if (outline.size() < 3) throw new ImpossibleValue("outline", "needs at least three corners");
        Check.text("reason", reason);
    }
}

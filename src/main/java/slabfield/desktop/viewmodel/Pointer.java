package slabfield.desktop.viewmodel;

import slabfield.model.Point;

/**
 * Where the pointer is and what is held with it.
 *
 * @param at place on the plan
 * @param reach how near something must be to count as meant [m]
 * @param add true to add to the selection, or to draw a line's own points on an edge
 * @param free true to let nothing draw the place
 */
public record Pointer(Point at, double reach, boolean add, boolean free) {
    public static Pointer at(Point place, double reach) {
        return new Pointer(place, reach, false, false);
    }
}

package slabfield.model;

import java.util.List;
import java.util.Optional;

/**
 * What a drawing carries beside the house itself; no solve depends on it.
 *
 * @param noDrillAreas where nothing may be cored or drilled
 * @param underlay picture that the plan is traced from
 * @param north direction of north on the plan, clockwise from its y axis [degree]
 */
public record Plan(List<NoDrillArea> noDrillAreas, Optional<Underlay> underlay, double north) {
    public static final Plan EMPTY = new Plan(List.of(), Optional.empty(), 0);

    public Plan {
        noDrillAreas = Check.list("noDrillAreas", noDrillAreas);
        Check.present("underlay", underlay);
        Check.finite("north", north);
    }

    public Plan withNoDrillAreas(List<NoDrillArea> other) {
        return new Plan(other, underlay, north);
    }

    public Plan withUnderlay(Optional<Underlay> other) {
        return new Plan(noDrillAreas, other, north);
    }

    public Plan withNorth(double other) {
        return new Plan(noDrillAreas, underlay, other);
    }

    /** True where a place lies in no area that is kept from drilling. */
    public boolean mayDrill(Point at) {
        return noDrillAreas.stream()
                .noneMatch(area -> Shapes.area(area.outline()).covers(Shapes.point(at)));
    }
}

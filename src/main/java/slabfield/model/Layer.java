package slabfield.model;

import java.util.List;

/**
 * The layer under all slabs.
 *
 * @param fill what lies where no zone says otherwise
 * @param zones parts with another fill
 */
public record Layer(Fill fill, List<Zone> zones) {
    public Layer {
        Check.present("fill", fill);
        zones = Check.list("zones", zones);
    }

    /** True where one of the fills has a pressure loss that grows with the square of the flow. */
    public boolean isInertial() {
        return fill.inertial() > 0 || zones.stream().anyMatch(z -> z.fill().inertial() > 0);
    }

    /** What lies at a place: the last zone that covers it, else the layer's fill. */
    public Fill fillAt(Point place) {
        Fill found = fill;
        for (Zone zone : zones) if (Shapes.area(zone.outline()).covers(Shapes.point(place))) found = zone.fill();
        return found;
    }
}

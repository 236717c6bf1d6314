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
}

package slabfield.model;

import java.util.List;
import java.util.Optional;

/**
 * Perforated drain pipe in the layer.
 *
 * @param id what the user calls it
 * @param path its line; closed where it is a loop
 * @param diameter inside [m]
 * @param manning roughness n after Manning, 0.017 for 100 mm corrugated pipe
 * @param slotArea open area of the perforation per length of pipe [m2/m]
 * @param breaks where the pipe is interrupted
 * @param waterFilled stretches full of water, through which no air goes
 * @param sump id of the sump opening at which it ends, if any
 */
public record DrainTile(
        String id,
        Path path,
        double diameter,
        double manning,
        double slotArea,
        List<Gap> breaks,
        List<Gap> waterFilled,
        Optional<String> sump) {
    public static final double USUAL_DIAMETER = 0.1016;
    public static final double USUAL_MANNING = 0.017;
    public static final double USUAL_SLOT_AREA = 2e-3;

    public DrainTile {
        Check.name("id", id);
        Check.present("path", path);
        Check.positive("diameter", diameter);
        Check.positive("manning", manning);
        Check.positive("slots", slotArea);
        breaks = Check.list("breaks", breaks);
        waterFilled = Check.list("waterFilled", waterFilled);
        Check.present("sump", sump);
    }

    /** The same tile interrupted elsewhere. */
    public DrainTile withBreaks(List<Gap> other) {
        return new DrainTile(id, path, diameter, manning, slotArea, other, waterFilled, sump);
    }

    /** The same tile with water elsewhere. */
    public DrainTile withWaterFilled(List<Gap> other) {
        return new DrainTile(id, path, diameter, manning, slotArea, breaks, other, sump);
    }
}

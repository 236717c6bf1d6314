package slabfield.model;

import java.util.List;

/**
 * A footing, grade beam or thickened strip that air does not pass, or passes less.
 *
 * @param id what the user calls it
 * @param path its middle line
 * @param width across the line [m]
 * @param permeability of what it is made of, 0 for none [m2]
 * @param known false where it is only suspected
 * @param gaps stretches where the layer's own fill goes through
 */
public record Barrier(String id, Path path, double width, double permeability, boolean known, List<Gap> gaps) {
    public Barrier {
        Check.name("id", id);
        Check.present("path", path);
        Check.positive("width", width);
        Check.notNegative("permeability", permeability);
        gaps = Check.list("gaps", gaps);
    }

    /** The same barrier with other gaps. */
    public Barrier withGaps(List<Gap> other) {
        return new Barrier(id, path, width, permeability, known, other);
    }
}

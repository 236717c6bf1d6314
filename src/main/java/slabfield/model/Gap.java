package slabfield.model;

/**
 * A missing stretch of a line: a doorway through a footing, a break in a tile.
 *
 * @param at its middle; the nearest place on the line counts
 * @param length along the line [m]
 */
public record Gap(Point at, double length) {
    public Gap {
        Check.present("at", at);
        Check.notNegative("length", length);
    }
}

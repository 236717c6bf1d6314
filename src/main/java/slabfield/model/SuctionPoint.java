package slabfield.model;

import java.util.Optional;

/**
 * Where the system draws.
 *
 * @param id what the user calls it
 * @param at place on the plan
 * @param tile id of the drain tile that the pipe is teed into; empty where it ends in a pit of its own
 * @param pit the hollow below the slab; counts only where there is no tile
 * @param source what draws
 * @param openWhenOff true where the pipe stays open to its discharge when the fan is off; else it is shut then
 */
public record SuctionPoint(String id, Point at, Optional<String> tile, Pit pit, Source source, boolean openWhenOff) {
    public SuctionPoint {
        Check.name("id", id);
        Check.present("at", at);
        Check.present("tile", tile);
        Check.present("pit", pit);
        Check.present("source", source);
    }

    public SuctionPoint movedTo(Point place) {
        return new SuctionPoint(id, place, tile, pit, source, openWhenOff);
    }

    public SuctionPoint drawnBy(Source other) {
        return new SuctionPoint(id, at, tile, pit, other, openWhenOff);
    }

    public SuctionPoint with(Pit other) {
        return new SuctionPoint(id, at, tile, other, source, openWhenOff);
    }

    /** The same point teed into a drain tile at a place on it. */
    public SuctionPoint teedInto(String drainTile, Point place) {
        return new SuctionPoint(id, place, Optional.of(drainTile), pit, source, openWhenOff);
    }

    /**
     * The hollow dug below the core hole.
     *
     * @param radius of the disc in which the layer ends [m]
     */
    public record Pit(double radius) {
        /** A bare 100 mm core hole with nothing dug out [m]. */
        public static final double CORE_ONLY = 0.05;

        public Pit {
            Check.positive("radius", radius);
        }

        /**
         * Radius of a half ball of the same volume, used where only the volume is known: V = 2/3 pi r^3.
         *
         * @param volume [m3]
         */
        public static Pit ofVolume(double volume) {
            return new Pit(Math.cbrt(1.5 * Check.positive("volume", volume) / Math.PI));
        }
    }
}

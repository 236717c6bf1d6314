package slabfield.model;

import java.util.OptionalDouble;

/**
 * The air that moves.
 *
 * @param temperature of the soil gas; empty for standard air of 20 C [K]
 * @param altitude above the sea; empty for sea level [m]
 */
public record Air(OptionalDouble temperature, OptionalDouble altitude) {
    /** 20 C and 101325 Pa. */
    public static final Air STANDARD = new Air(OptionalDouble.empty(), OptionalDouble.empty());

    public Air {
        Check.present("temperature", temperature).ifPresent(t -> {
            Check.finite("temperature", t);
            if (t < 223.15 || t > 333.15) throw new ImpossibleValue("temperature", "must lie between -50 C and 60 C");
        });
        Check.present("altitude", altitude).ifPresent(z -> {
            Check.finite("altitude", z);
            if (z < -500 || z > 5000) throw new ImpossibleValue("altitude", "must lie between -500 m and 5000 m");
        });
    }
}

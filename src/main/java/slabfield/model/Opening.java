package slabfield.model;

/**
 * A way for room air through the slab.
 *
 * @param id what the user calls it
 * @param kind what it is
 * @param place where it is
 * @param passage what resists the flow through it when it is fully open
 * @param seal how far it is closed
 */
public record Opening(String id, OpeningKind kind, Place place, Passage passage, Seal seal) {
    public Opening {
        Check.name("id", id);
        Check.present("kind", kind);
        Check.present("place", place);
        Check.present("passage", passage);
        Check.present("state", seal);
    }

    public Opening with(Seal other) {
        return new Opening(id, kind, place, passage, other);
    }

    /** Where an opening is. */
    public sealed interface Place permits Spot, Along, Perimeter {}

    /**
     * A round spot.
     *
     * @param at its middle
     * @param radius of the disc that meets the layer [m]
     */
    public record Spot(Point at, double radius) implements Place {
        public Spot {
            Check.present("at", at);
            Check.positive("radius", radius);
        }
    }

    /** A line drawn on the plan. */
    public record Along(Path path) implements Place {
        public Along {
            Check.present("path", path);
        }
    }

    /** The whole outer edge of a slab, named by its id. */
    public record Perimeter(String slab) implements Place {
        public Perimeter {
            Check.name("perimeterOf", slab);
        }
    }

    /** What resists the flow. */
    public sealed interface Passage permits Orifice, Crack, PowerLaw {}

    /**
     * A hole with a sharp edge: flow = Cd A sqrt(2 dp / rho).
     *
     * @param area open area; for a line, of the whole line [m2]
     * @param dischargeCoefficient Cd
     */
    public record Orifice(double area, double dischargeCoefficient) implements Passage {
        public static final double USUAL_COEFFICIENT = 0.61;

        public Orifice {
            Check.positive("area", area);
            Check.positive("dischargeCoefficient", dischargeCoefficient);
        }
    }

    /**
     * A slit as deep as the slab is thick; only for lines.
     *
     * @param width of the slit [m]
     * @param bends in its depth
     */
    public record Crack(double width, int bends) implements Passage {
        public Crack {
            Check.positive("width", width);
            Check.notNegative("bends", bends);
        }
    }

    /**
     * A measured leak: flow = C dp^n.
     *
     * @param coefficient C; for a line, of the whole line [m3/(s Pa^n)]
     * @param exponent n, 0.5 to 1
     */
    public record PowerLaw(double coefficient, double exponent) implements Passage {
        public PowerLaw {
            Check.positive("coefficient", coefficient);
            Check.finite("exponent", exponent);
            if (exponent < 0.5 || exponent > 1) throw new ImpossibleValue("exponent", "must lie between 0.5 and 1");
        }
    }
}

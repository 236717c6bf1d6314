package slabfield.readings;

import java.util.List;
import java.util.Optional;
import slabfield.law.AirState;
import slabfield.law.PipeFriction;
import slabfield.law.Pitot;
import slabfield.model.NominalPipe;

/**
 * Flow of a pipe from what a meter shows, with its uncertainty.
 *
 * @param flow best value [m3/s]
 * @param least [m3/s]
 * @param most [m3/s]
 * @see "PipeFlowTest"
 */
public record PipeFlow(double flow, double least, double most) {
    /** Mean over centre-line velocity as some instruments' sheets have it, for short straight lengths; common practice. */
    public static final double INSTRUMENT_FACTOR = 0.9;

    /** Straight pipe that a reading wants before it, in diameters; common practice. */
    public static final double STRAIGHT_BEFORE = 8.5;

    /** Straight pipe that a reading wants behind it, in diameters; common practice. */
    public static final double STRAIGHT_BEHIND = 1.5;

    /** A pressure of this many steps of the display can be read: half a step in five is 10 %, so 5 % of the flow. */
    public static final double READABLE_STEPS = 5;

    private static final double LAMINAR_UP_TO = 2300;
    private static final int ROUNDS = 60;

    /**
     * Mean over centre-line velocity in a long straight smooth pipe: 1/2 in laminar flow (Poiseuille), else
     * {@code 1/(1 + 1.326 sqrt f)} from the logarithmic profile (Prandtl, with Karman's constant 0.4), f Darcy's friction
     * factor.
     *
     * @param reynolds of the mean velocity, above 0
     */
    public static double developedFactor(double reynolds) {
        if (reynolds <= LAMINAR_UP_TO) return 0.5;
        return 1 / (1 + 1.326 * Math.sqrt(PipeFriction.frictionFactor(reynolds, 0)));
    }

    /**
     * Flow from the velocity on the pipe's axis. The factor lies between that of a long straight pipe and 0.9; the best
     * value takes their middle.
     *
     * @param velocity on the axis, above 0 [m/s]
     * @param diameter inside [m]
     */
    public static PipeFlow fromCentre(double velocity, double diameter, AirState air) {
        double area = area(diameter);
        double factor = INSTRUMENT_FACTOR;
        for (int i = 0; i < ROUNDS; i++)
            factor = developedFactor(air.density() * velocity * factor * diameter / air.viscosity());
        double least = factor * velocity * area, most = INSTRUMENT_FACTOR * velocity * area;
        return new PipeFlow((least + most) / 2, least, most);
    }

    /**
     * Flow from the velocity pressure on the pipe's axis.
     *
     * @param velocityPressure above 0 [Pa]
     * @param meterStep smallest step of the display, half of which is added on both sides [Pa]
     * @param diameter inside [m]
     */
    public static PipeFlow fromCentrePressure(
            double velocityPressure, double meterStep, double diameter, AirState air) {
        PipeFlow at = fromCentre(Pitot.velocity(velocityPressure, air.density()), diameter, air);
        double low = Math.max(0, velocityPressure - meterStep / 2), high = velocityPressure + meterStep / 2;
        return new PipeFlow(
                at.flow, at.least * Math.sqrt(low / velocityPressure), at.most * Math.sqrt(high / velocityPressure));
    }

    /**
     * Flow from velocity pressures at the places of a traverse: the velocities are averaged, not the pressures.
     *
     * @param velocityPressures at least one, none below 0 [Pa]
     * @param area cross-section [m2]
     * @return [m3/s]
     */
    public static double fromTraverse(List<Double> velocityPressures, double area, AirState air) {
        return area
                * velocityPressures.stream()
                        .mapToDouble(p -> Pitot.velocity(p, air.density()))
                        .average()
                        .orElseThrow(() -> new IllegalArgumentException("a traverse needs at least one place"));
    }

    /**
     * Velocity pressure of the mean flow.
     *
     * @param flow [m3/s]
     * @param diameter inside [m]
     */
    public static double velocityPressure(double flow, double diameter, AirState air) {
        double velocity = flow / area(diameter);
        return air.density() * velocity * velocity / 2;
    }

    /** Least flow that a meter of a step can read to about 5 % in a pipe [m3/s]. */
    public static double leastReadable(double meterStep, double diameter, AirState air) {
        return area(diameter) * Pitot.velocity(READABLE_STEPS * meterStep, air.density());
    }

    /** Widest nominal pipe in which a flow can be read; empty where even the narrowest is too wide. */
    public static Optional<NominalPipe> testPipe(double flow, double meterStep, AirState air) {
        Optional<NominalPipe> widest = Optional.empty();
        for (NominalPipe size : NominalPipe.values())
            if (flow >= leastReadable(meterStep, size.insideDiameter(), air)) widest = Optional.of(size);
        return widest;
    }

    private static double area(double diameter) {
        return Math.PI / 4 * diameter * diameter;
    }
}

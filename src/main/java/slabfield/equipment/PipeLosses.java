package slabfield.equipment;

import java.util.ArrayList;
import java.util.List;
import slabfield.law.AirState;
import slabfield.law.PipeFriction;
import slabfield.model.Source.Pipe;

/**
 * What a stretch of pipe costs at a flow.
 *
 * @param pipe the stretch
 * @param flow through it [m3/s]
 * @param velocity mean [m/s]
 * @param frictionPerLength of straight pipe [Pa/m]
 * @param friction of the straight lengths [Pa]
 * @param fittings of bends, tees, coefficients and valve [Pa]
 * @see "PipeLossesTest"
 */
public record PipeLosses(
        Pipe pipe, double flow, double velocity, double frictionPerLength, double friction, double fittings) {
    /** By how much losses of fittings differ between handbooks; common practice. */
    public static final double FITTINGS_SPREAD = 0.3;

    /** Velocity above which air is often heard in the rooms that a pipe passes: 1500 ft/min; common practice [m/s]. */
    public static final double AUDIBLE = 7.62;

    /** Fall that lets condensed water run back: 1/8 in to the foot. */
    public static final double CONDENSATE_FALL = 1.0 / 96;

    /** Losses of one stretch. */
    public static PipeLosses of(Pipe pipe, double flow, AirState air) {
        double perMetre = loss(pipe, flow, 1, 0, 0, air);
        double friction = perMetre * pipe.length();
        double all = loss(pipe, flow, pipe.lengthWithTurns(), pipe.ells(), pipe.coefficients(), air);
        double area = Math.PI / 4 * pipe.diameter() * pipe.diameter();
        return new PipeLosses(pipe, flow, flow / area, perMetre, friction, all - friction);
    }

    /** Losses of all stretches of a run, in their order. */
    public static List<PipeLosses> of(List<Pipe> run, double flow, AirState air) {
        return run.stream().map(p -> of(p, flow, air)).toList();
    }

    private static double loss(Pipe pipe, double flow, double length, int ells, double fittings, AirState air) {
        return PipeFriction.pressureLoss(
                flow, pipe.diameter(), length, ells, fittings, pipe.roughness(), air.viscosity(), air.density());
    }

    /** Friction and fittings [Pa]. */
    public double total() {
        return friction + fittings;
    }

    /** Total with fittings at the low end of their spread [Pa]. */
    public double least() {
        return friction + (1 - FITTINGS_SPREAD) * fittings;
    }

    /** Total with fittings at the high end of their spread [Pa]. */
    public double most() {
        return friction + (1 + FITTINGS_SPREAD) * fittings;
    }

    /** Height by which what is not vertical must fall towards the pit, so that water runs back [m]. */
    public double condensateFall() {
        return CONDENSATE_FALL * (pipe.length() - Math.abs(pipe.rise()));
    }

    /** Plain sentences on velocity. */
    public List<String> advice() {
        List<String> out = new ArrayList<>();
        if (Math.abs(velocity) > AUDIBLE)
            out.add(
                    "The air is so fast that it is often heard (common practice: above 1500 ft/min); a wider pipe is quieter.");
        return out;
    }
}

package slabfield.model;

import java.util.List;
import java.util.OptionalDouble;

/** What was read of a suction point's flow. */
public sealed interface FlowReading permits FlowReading.Stated, FlowReading.Below, FlowReading.InPipe {
    /**
     * A flow as a meter or a person states it.
     *
     * @param flow drawn [m3/s]
     * @param uncertainty standard error of it; empty where none was stated [m3/s]
     */
    record Stated(double flow, OptionalDouble uncertainty) implements FlowReading {
        public Stated {
            Check.finite("flow", flow);
            Check.present("flowUncertainty", uncertainty).ifPresent(u -> Check.notNegative("flowUncertainty", u));
        }
    }

    /**
     * Less than the meter can tell.
     *
     * @param bound least flow that the meter would have shown [m3/s]
     */
    record Below(double bound) implements FlowReading {
        public Below {
            Check.positive("flowBelow", bound);
        }
    }

    /**
     * Velocities or velocity pressures in a pipe.
     *
     * @param shown what the meter showed, one value on the axis or one for each place of a traverse
     * @param velocity true where {@code shown} are velocities [m/s]; else velocity pressures [Pa]
     * @param diameter of the pipe, inside [m]
     * @param traverse true where {@code shown} were read at places across the pipe; false on the axis
     * @param meterStep smallest step of the display, in the kind of {@code shown}; empty where not known
     * @param density of the air in the pipe; empty for the density that belongs to the house [kg/m3]
     */
    record InPipe(
            List<Double> shown,
            boolean velocity,
            double diameter,
            boolean traverse,
            OptionalDouble meterStep,
            OptionalDouble density)
            implements FlowReading {
        public InPipe {
            String what = velocity ? "velocity" : "velocityPressure";
            shown = Check.list(what, shown);
            if (shown.isEmpty()) throw new ImpossibleValue(what, "needs at least one value");
            shown.forEach(v -> Check.notNegative(what, v));
            if (!traverse && shown.size() > 1)
                throw new ImpossibleValue(what, "has several values, which only a traverse has");
            Check.positive("diameter", diameter);
            Check.present("meterStep", meterStep).ifPresent(s -> Check.positive("meterStep", s));
            Check.present("density", density).ifPresent(d -> Check.positive("density", d));
        }
    }
}

package slabfield.model;

import java.util.List;

/** What draws at a suction point. */
public sealed interface Source permits Source.Pressure, Source.Flow, Source.Fan {
    /**
     * A pressure held in the pit, whatever flow it takes.
     *
     * @param pressure relative to the room, negative for suction [Pa]
     */
    record Pressure(double pressure) implements Source {
        public Pressure {
            Check.finite("pressure", pressure);
        }
    }

    /**
     * A flow drawn from the pit, whatever pressure it takes.
     *
     * @param flow positive out of the pit [m3/s]
     */
    record Flow(double flow) implements Source {
        public Flow {
            Check.finite("flow", flow);
        }
    }

    /**
     * A fan behind a pipe: pit pressure + fan rise - pipe loss = discharge pressure.
     *
     * @param curve pressure rise against flow
     * @param pipe between pit and discharge
     * @param discharge pressure where the air leaves, relative to the room at floor level [Pa]
     */
    record Fan(FanCurve curve, Pipe pipe, double discharge) implements Source {
        public Fan {
            Check.present("fan", curve);
            Check.present("pipe", pipe);
            Check.finite("discharge", discharge);
        }
    }

    /**
     * A fan's pressure rise against its flow: straight lines between the points, the last slope beyond them.
     *
     * @param flows rising [m3/s]
     * @param rises falling [Pa]
     */
    record FanCurve(List<Double> flows, List<Double> rises) {
        public FanCurve {
            flows = Check.list("fan", flows);
            rises = Check.list("fan", rises);
            if (flows.size() < 2 || flows.size() != rises.size())
                throw new ImpossibleValue("fan", "needs at least two points of flow and pressure rise");
            for (int i = 0; i < flows.size(); i++) {
                Check.notNegative("fan", flows.get(i));
                Check.finite("fan", rises.get(i));
                if (i == 0) continue;
                if (flows.get(i) <= flows.get(i - 1))
                    throw new ImpossibleValue(
                            "fan", "must list its points by rising flow (point " + (i + 1) + " does not)");
                if (rises.get(i) >= rises.get(i - 1))
                    throw new ImpossibleValue(
                            "fan",
                            "must lose pressure as its flow grows, but it does not from point " + i + " to point "
                                    + (i + 1) + "; leave out the part left of the peak");
            }
        }
    }

    /**
     * The suction pipe.
     *
     * @param diameter inside [m]
     * @param length straight lengths together [m]
     * @param ells number of 90 degree bends, each as 30 diameters of pipe
     * @param fittings further losses as a sum of coefficients on the velocity head, entrance and exit among them
     * @param roughness height of the wall's roughness [m]
     */
    record Pipe(double diameter, double length, int ells, double fittings, double roughness) {
        /** Sharp entrance (0.5) and free exit (1.0). */
        public static final double ENTRANCE_AND_EXIT = 1.5;
        /** Smooth plastic pipe [m]. */
        public static final double USUAL_ROUGHNESS = 1.5e-6;
        /** No pipe at all: no loss. */
        public static final Pipe NONE = new Pipe(1, 0, 0, 0, 0);

        public Pipe {
            Check.positive("diameter", diameter);
            Check.notNegative("length", length);
            Check.notNegative("ells", ells);
            Check.notNegative("fittings", fittings);
            Check.notNegative("roughness", roughness);
        }
    }
}

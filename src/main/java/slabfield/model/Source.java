package slabfield.model;

import java.util.List;

/** What draws at a suction point. */
public sealed interface Source permits Source.Pressure, Source.Flow, Source.Fan, Source.Branch {
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
     * @param run stretches of pipe from the pit to the discharge, in their order; empty for no loss
     * @param discharge pressure where the air leaves, relative to the room at floor level [Pa]
     */
    record Fan(FanCurve curve, List<Pipe> run, double discharge) implements Source {
        public Fan {
            Check.present("fan", curve);
            run = Check.list("pipes", run);
            Check.finite("discharge", discharge);
        }

        /** A fan behind a pipe of one diameter. */
        public Fan(FanCurve curve, Pipe pipe, double discharge) {
            this(curve, List.of(pipe), discharge);
        }
    }

    /**
     * A branch that joins others at the foot of a riser with a fan of its own.
     *
     * @param riser id of the riser
     * @param run stretches of pipe from the pit to the riser, at least one
     */
    record Branch(String riser, List<Pipe> run) implements Source {
        public Branch {
            Check.name("riser", riser);
            run = Check.list("pipes", run);
            if (run.isEmpty()) throw new ImpossibleValue("riser", "needs the pipe that leads to it, as \"pipe\"");
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
     * A stretch of pipe of one diameter.
     *
     * @param diameter inside [m]
     * @param length straight lengths together [m]
     * @param ells number of 90 degree bends, each as 30 diameters of pipe
     * @param fittings further losses as a sum of coefficients on the velocity head, entrance and exit among them
     * @param roughness height of the wall's roughness [m]
     * @param turns bends of 45 degrees and tees
     * @param valve loss coefficient of a balance valve on the velocity head, 0 for none
     * @param rise how much higher the end is than the beginning, at most the length, below 0 where it falls [m]
     */
    record Pipe(
            double diameter,
            double length,
            int ells,
            double fittings,
            double roughness,
            Turns turns,
            double valve,
            double rise) {
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
            if (roughness > diameter / 2) throw new ImpossibleValue("roughness", "must be at most half the diameter");
            Check.present("turns", turns);
            Check.notNegative("valve", valve);
            Check.finite("rise", rise);
            if (Math.abs(rise) > length) throw new ImpossibleValue("rise", "must not be more than the length");
        }

        /** A pipe without tees, bends of 45 degrees or valve, whose rise is not given. */
        public Pipe(double diameter, double length, int ells, double fittings, double roughness) {
            this(diameter, length, ells, fittings, roughness, Turns.NONE, 0, 0);
        }

        /** Straight length with that which stands for the turns, without the ells [m]. */
        public double lengthWithTurns() {
            return length + diameter * turns.diameters();
        }

        /** Loss coefficients of fittings and valve together. */
        public double coefficients() {
            return fittings + valve;
        }

        public Pipe withDiameter(double other) {
            return new Pipe(other, length, ells, fittings, roughness, turns, valve, rise);
        }

        public Pipe withLength(double other) {
            return new Pipe(diameter, other, ells, fittings, roughness, turns, valve, rise);
        }

        public Pipe withElls(int other) {
            return new Pipe(diameter, length, other, fittings, roughness, turns, valve, rise);
        }

        public Pipe withFittings(double other) {
            return new Pipe(diameter, length, ells, other, roughness, turns, valve, rise);
        }

        public Pipe withTurns(Turns other) {
            return new Pipe(diameter, length, ells, fittings, roughness, other, valve, rise);
        }

        public Pipe withValve(double other) {
            return new Pipe(diameter, length, ells, fittings, roughness, turns, other, rise);
        }

        public Pipe withRise(double other) {
            return new Pipe(diameter, length, ells, fittings, roughness, turns, valve, other);
        }
    }

    /**
     * Fittings that stand for lengths of pipe, handbook values that differ by some 30 % between sources: a bend of 45
     * degrees 16 diameters, a tee run straight through 20, a tee entered by its branch 60.
     *
     * @param halfElls bends of 45 degrees
     * @param teesThrough tees run straight through
     * @param teesByBranch tees entered by their branch
     */
    record Turns(int halfElls, int teesThrough, int teesByBranch) {
        public static final Turns NONE = new Turns(0, 0, 0);

        public Turns {
            Check.notNegative("halfElls", halfElls);
            Check.notNegative("teesThrough", teesThrough);
            Check.notNegative("teesByBranch", teesByBranch);
        }

        /** Length that they stand for, in diameters. */
        public double diameters() {
            return 16.0 * halfElls + 20.0 * teesThrough + 60.0 * teesByBranch;
        }
    }
}

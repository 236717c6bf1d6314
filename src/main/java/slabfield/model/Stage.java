package slabfield.model;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * One set of readings, and what was different in the house while they were taken.
 *
 * @param id what the user calls it
 * @param kind step of the job
 * @param seals states of openings, and of the tops of block walls, by id, that differ from those drawn
 * @param sources what drew at suction points, by id, where it differs from what is drawn
 * @param holes readings at test holes
 * @param systems readings at suction points
 * @param time when, as ISO 8601 text, or empty
 * @param notes free text
 */
public record Stage(
        String id,
        StageKind kind,
        Map<String, Seal> seals,
        Map<String, Source> sources,
        List<HoleReading> holes,
        List<SystemReading> systems,
        String time,
        String notes) {
    public Stage {
        Check.name("id", id);
        Check.present("kind", kind);
        seals = Map.copyOf(Check.present("openings", seals));
        sources = Map.copyOf(Check.present("sources", sources));
        holes = Check.list("readings", holes);
        systems = Check.list("system", systems);
        Check.time("time", time);
        Check.text("notes", notes);
    }

    /** The same stage with other readings. */
    public Stage with(List<HoleReading> otherHoles, List<SystemReading> otherSystems) {
        return new Stage(id, kind, seals, sources, otherHoles, otherSystems, time, notes);
    }

    /** True where the house stood as it is drawn. */
    public boolean asDrawn() {
        return seals.isEmpty() && sources.isEmpty();
    }

    /**
     * What a meter showed at a test hole, relative to the room: each value a mean over a while.
     *
     * @param hole id of the test hole
     * @param fanOff with nothing drawing [Pa]
     * @param fanOn with the suction on [Pa]
     * @param spread standard deviation seen while reading [Pa]
     * @param count independent readings that each value is the mean of, such as one for each 10 s; empty for one
     * @param meterStep smallest step of the display [Pa]
     * @param waited time from switching the fan on to the reading [s]
     * @param time when, as ISO 8601 text, or empty
     */
    public record HoleReading(
            String hole,
            OptionalDouble fanOff,
            OptionalDouble fanOn,
            OptionalDouble spread,
            OptionalInt count,
            OptionalDouble meterStep,
            OptionalDouble waited,
            String time) {
        public HoleReading {
            Check.name("hole", hole);
            Check.present("fanOff", fanOff).ifPresent(v -> Check.finite("fanOff", v));
            Check.present("fanOn", fanOn).ifPresent(v -> Check.finite("fanOn", v));
            Check.present("spread", spread).ifPresent(v -> Check.notNegative("spread", v));
            Check.present("count", count).ifPresent(n -> Check.positive("count", n));
            Check.present("meterStep", meterStep).ifPresent(v -> Check.positive("meterStep", v));
            Check.present("waited", waited).ifPresent(v -> Check.notNegative("waited", v));
            Check.time("time", time);
        }

        /** A reading of which nothing is known about count and waiting. */
        public HoleReading(
                String hole,
                OptionalDouble fanOff,
                OptionalDouble fanOn,
                OptionalDouble spread,
                OptionalDouble meterStep,
                String time) {
            this(hole, fanOff, fanOn, spread, OptionalInt.empty(), meterStep, OptionalDouble.empty(), time);
        }

        /** Fan on minus fan off; empty where one of them was not read [Pa]. */
        public OptionalDouble change() {
            return fanOn.isPresent() && fanOff.isPresent()
                    ? OptionalDouble.of(fanOn.getAsDouble() - fanOff.getAsDouble())
                    : OptionalDouble.empty();
        }
    }

    /**
     * What was measured at a suction point.
     *
     * @param suctionPoint its id
     * @param flowReading what was read of the flow
     * @param riser pressure in the riser, relative to the room [Pa]
     * @param pit pressure in the pit or the tile, relative to the room [Pa]
     * @param spread standard deviation of the pressures seen while reading [Pa]
     * @param meterStep smallest step of the pressure's display [Pa]
     * @param time when, as ISO 8601 text, or empty
     */
    public record SystemReading(
            String suctionPoint,
            Optional<FlowReading> flowReading,
            OptionalDouble riser,
            OptionalDouble pit,
            OptionalDouble spread,
            OptionalDouble meterStep,
            String time) {
        public SystemReading {
            Check.name("suctionPoint", suctionPoint);
            Check.present("flow", flowReading);
            Check.present("riser", riser).ifPresent(v -> Check.finite("riser", v));
            Check.present("pit", pit).ifPresent(v -> Check.finite("pit", v));
            Check.present("spread", spread).ifPresent(v -> Check.notNegative("spread", v));
            Check.present("meterStep", meterStep).ifPresent(v -> Check.positive("meterStep", v));
            Check.time("time", time);
        }

        /** A stated flow and the riser's pressure alone. */
        public SystemReading(String suctionPoint, OptionalDouble flow, OptionalDouble riser, String time) {
            this(
                    suctionPoint,
                    Check.present("flow", flow).isPresent()
                            ? Optional.of(new FlowReading.Stated(flow.getAsDouble(), OptionalDouble.empty()))
                            : Optional.empty(),
                    riser,
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    time);
        }

        /** The flow where it was stated; empty where it must first be worked out, is below the meter, or was not read [m3/s]. */
        public OptionalDouble flow() {
            return flowReading.isPresent() && flowReading.get() instanceof FlowReading.Stated stated
                    ? OptionalDouble.of(stated.flow())
                    : OptionalDouble.empty();
        }

        /** Pressure in the pit where it was read there, else in the riser [Pa]. */
        public OptionalDouble suction() {
            return pit.isPresent() ? pit : riser;
        }
    }
}

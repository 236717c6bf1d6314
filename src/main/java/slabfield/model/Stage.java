package slabfield.model;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

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

    /** True where the house stood as it is drawn. */
    public boolean asDrawn() {
        return seals.isEmpty() && sources.isEmpty();
    }

    /**
     * What a meter showed at a test hole, relative to the room.
     *
     * @param hole id of the test hole
     * @param fanOff with nothing drawing [Pa]
     * @param fanOn with the suction on [Pa]
     * @param spread standard deviation seen while reading [Pa]
     * @param meterStep smallest step of the display [Pa]
     * @param time when, as ISO 8601 text, or empty
     */
    public record HoleReading(
            String hole,
            OptionalDouble fanOff,
            OptionalDouble fanOn,
            OptionalDouble spread,
            OptionalDouble meterStep,
            String time) {
        public HoleReading {
            Check.name("hole", hole);
            Check.present("fanOff", fanOff).ifPresent(v -> Check.finite("fanOff", v));
            Check.present("fanOn", fanOn).ifPresent(v -> Check.finite("fanOn", v));
            Check.present("spread", spread).ifPresent(v -> Check.notNegative("spread", v));
            Check.present("meterStep", meterStep).ifPresent(v -> Check.positive("meterStep", v));
            Check.time("time", time);
        }
    }

    /**
     * What was measured at a suction point.
     *
     * @param suctionPoint its id
     * @param flow drawn [m3/s]
     * @param riser pressure in the riser or the pit, relative to the room [Pa]
     * @param time when, as ISO 8601 text, or empty
     */
    public record SystemReading(String suctionPoint, OptionalDouble flow, OptionalDouble riser, String time) {
        public SystemReading {
            Check.name("suctionPoint", suctionPoint);
            Check.present("flow", flow).ifPresent(v -> Check.finite("flow", v));
            Check.present("riser", riser).ifPresent(v -> Check.finite("riser", v));
            Check.time("time", time);
        }
    }
}

package slabfield.io;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import slabfield.model.FlowReading;
import slabfield.model.Point;
import slabfield.model.Seal;
import slabfield.model.Source;
import slabfield.model.Stage;
import slabfield.model.StageKind;
import slabfield.model.SuctionPoint;
import slabfield.model.TestHole;
import slabfield.quantity.Dimension;

/** Reads suction points, test holes and the stages of readings. */
final class SystemReader {
    private SystemReader() {}

    static Optional<SuctionPoint> suctionPoint(Entry e) {
        String id = e.text("id");
        Point at = e.point("at");
        Optional<String> tile = e.has("tile") ? Optional.of(e.text("tile")) : Optional.empty();
        Optional<SuctionPoint.Pit> pit = e.has("pit")
                ? pit(e.entry("pit", FileObject.PIT))
                : Optional.of(new SuctionPoint.Pit(SuctionPoint.Pit.CORE_ONLY));
        Optional<Source> source = e.has("source") ? source(e.entry("source", FileObject.SOURCE)) : Optional.empty();
        boolean openWhenOff = e.word("whenOff", Words.WHEN_OFF, false);
        return e.make(() -> new SuctionPoint(id, at, tile, pit.orElseThrow(), source.orElseThrow(), openWhenOff));
    }

    private static Optional<SuctionPoint.Pit> pit(Entry e) {
        String given = e.oneOf("radius", "volume").orElse("");
        double radius = e.quantity("radius", Dimension.LENGTH), volume = e.quantity("volume", Dimension.VOLUME);
        return e.make(() -> given.equals("radius") ? new SuctionPoint.Pit(radius) : SuctionPoint.Pit.ofVolume(volume));
    }

    static Optional<Source> source(Entry e) {
        String given = e.oneOf("pressure", "flow", "fan", "riser").orElse("");
        boolean piped = e.has("fan") || e.has("riser");
        e.onlyIf(piped, "pipe", "with \"fan\" or \"riser\"");
        e.onlyIf(piped, "pipes", "with \"fan\" or \"riser\"");
        e.onlyIf(e.has("fan"), "discharge", "with \"fan\"");
        if (e.has("fan")) return EquipmentReader.fanSource(e);
        if (e.has("riser")) return EquipmentReader.branch(e);
        double pressure = e.quantity("pressure", Dimension.PRESSURE), flow = e.quantity("flow", Dimension.FLOW);
        if (pressure > 0)
            e.problem(
                    "pressure",
                    Entry.shown(e.get("pressure"))
                            + " is above the room's pressure; a suction is negative, so write \"-"
                            + e.get("pressure").asText().strip().replace("+", "") + "\"");
        return e.make(() -> given.equals("pressure") ? new Source.Pressure(pressure) : new Source.Flow(flow));
    }

    static Optional<TestHole> testHole(Entry e) {
        String id = e.text("id"), found = e.text("found");
        Point at = e.point("at");
        return e.make(() -> new TestHole(id, at, found));
    }

    static Optional<Stage> stage(Entry e) {
        String id = e.text("id"), time = e.text("time"), notes = e.text("notes");
        StageKind kind = e.word("kind", Words.STAGES, StageKind.BASELINE);
        Map<String, Seal> seals = seals(e);
        Map<String, Source> sources = sources(e);
        List<Stage.HoleReading> holes = e.list("readings", FileObject.HOLE_READING, SystemReader::holeReading);
        List<Stage.SystemReading> systems = e.list("system", FileObject.SYSTEM_READING, SystemReader::systemReading);
        return e.make(() -> new Stage(id, kind, seals, sources, holes, systems, time, notes));
    }

    /** States by the name of the opening or wall, each a word or an object with a fraction. */
    private static Map<String, Seal> seals(Entry e) {
        Map<String, Seal> seals = new HashMap<>();
        e.members("openings", "a state such as { \"sump\": \"sealed\" }").forEach((id, state) -> {
            JsonNode object =
                    state.isTextual() ? JsonNodeFactory.instance.objectNode().set("state", state) : state;
            DeviceReader.seal(e.member("openings", id, object, FileObject.SEAL)).ifPresent(s -> seals.put(id, s));
        });
        return seals;
    }

    private static Map<String, Source> sources(Entry e) {
        Map<String, Source> sources = new HashMap<>();
        e.members("sources", "a source such as { \"S1\": { \"pressure\": \"-250 Pa\" } }")
                .forEach((id, source) -> source(e.member("sources", id, source, FileObject.SOURCE))
                        .ifPresent(s -> sources.put(id, s)));
        return sources;
    }

    private static Optional<Stage.HoleReading> holeReading(Entry e) {
        String hole = e.text("hole"), time = e.text("time");
        OptionalDouble off = e.optional("fanOff", Dimension.PRESSURE), on = e.optional("fanOn", Dimension.PRESSURE);
        OptionalDouble spread = e.optional("spread", Dimension.PRESSURE);
        OptionalDouble step = e.optional("meterStep", Dimension.PRESSURE);
        OptionalDouble waited = e.optional("waited", Dimension.DURATION);
        OptionalInt count = e.has("count") ? OptionalInt.of(e.whole("count", 1)) : OptionalInt.empty();
        return e.make(() -> new Stage.HoleReading(hole, off, on, spread, count, step, waited, time));
    }

    private static Optional<Stage.SystemReading> systemReading(Entry e) {
        String point = e.text("suctionPoint"), time = e.text("time");
        OptionalDouble riser = e.optional("riser", Dimension.PRESSURE), pit = e.optional("pit", Dimension.PRESSURE);
        OptionalDouble spread = e.optional("spread", Dimension.PRESSURE);
        OptionalDouble step = e.optional("meterStep", Dimension.PRESSURE);
        Optional<FlowReading> flow = flowReading(e);
        return e.make(() -> new Stage.SystemReading(point, flow, riser, pit, spread, step, time));
    }

    private static Optional<FlowReading> flowReading(Entry e) {
        OptionalDouble uncertainty = e.optional("flowUncertainty", Dimension.FLOW);
        e.onlyIf(e.has("flow"), "flowUncertainty", "with \"flow\"");
        if (!e.has("flow") && !e.has("flowBelow") && !e.has("inPipe")) return Optional.empty();
        e.oneOf("flow", "flowBelow", "inPipe");
        double flow = e.quantity("flow", Dimension.FLOW), below = e.quantity("flowBelow", Dimension.FLOW);
        if (e.has("inPipe")) return inPipe(e.entry("inPipe", FileObject.IN_PIPE));
        return e.make(() -> e.has("flow") ? new FlowReading.Stated(flow, uncertainty) : new FlowReading.Below(below));
    }

    private static Optional<FlowReading> inPipe(Entry e) {
        boolean velocity = e.oneOf("velocityPressure", "velocity").orElse("").equals("velocity");
        e.onlyIf(velocity, "velocityStep", "with \"velocity\"");
        e.onlyIf(!velocity, "pressureStep", "with \"velocityPressure\"");
        List<Double> pressures = e.quantities("velocityPressure", Dimension.PRESSURE);
        List<Double> speeds = e.quantities("velocity", Dimension.SPEED);
        OptionalDouble pressureStep = e.optional("pressureStep", Dimension.PRESSURE);
        OptionalDouble velocityStep = e.optional("velocityStep", Dimension.SPEED);
        boolean traverse = e.word("position", Words.POSITIONS, false);
        double diameter = e.quantity("diameter", Dimension.LENGTH);
        OptionalDouble density = e.optional("density", Dimension.DENSITY);
        return e.make(() -> new FlowReading.InPipe(
                velocity ? speeds : pressures,
                velocity,
                diameter,
                traverse,
                velocity ? velocityStep : pressureStep,
                density));
    }
}

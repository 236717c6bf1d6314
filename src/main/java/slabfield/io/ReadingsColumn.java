package slabfield.io;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import slabfield.quantity.Dimension;
import slabfield.quantity.Unit;

/** What a column of a table of readings can hold. */
enum ReadingsColumn {
    STAGE("stage"),
    KIND("kind"),
    HOLE("hole"),
    SUCTION_POINT("suction point"),
    FAN_OFF("fan off", Unit.PASCAL),
    FAN_ON("fan on", Unit.PASCAL),
    SPREAD("spread", Unit.PASCAL),
    COUNT("count"),
    METER_STEP("meter step", Unit.PASCAL),
    WAITED("waited", Unit.SECOND),
    FLOW("flow", Unit.CUBIC_METRE_PER_SECOND),
    FLOW_UNCERTAINTY("flow uncertainty", Unit.CUBIC_METRE_PER_SECOND),
    VELOCITY_PRESSURE("velocity pressure", Unit.PASCAL),
    VELOCITY_PRESSURE_STEP("velocity pressure step", Unit.PASCAL),
    VELOCITY("velocity", Unit.METRE_PER_SECOND),
    VELOCITY_STEP("velocity step", Unit.METRE_PER_SECOND),
    PIPE_DIAMETER("pipe diameter", Unit.METRE),
    POSITION("position"),
    AIR_DENSITY("air density", Unit.KILOGRAM_PER_CUBIC_METRE),
    RISER("riser", Unit.PASCAL),
    PIT("pit", Unit.PASCAL),
    TIME("time");

    static final List<ReadingsColumn> OF_HOLES = List.of(FAN_OFF, FAN_ON, COUNT, WAITED);
    static final List<ReadingsColumn> OF_SYSTEMS = List.of(
            FLOW,
            FLOW_UNCERTAINTY,
            VELOCITY_PRESSURE,
            VELOCITY_PRESSURE_STEP,
            VELOCITY,
            VELOCITY_STEP,
            PIPE_DIAMETER,
            POSITION,
            AIR_DENSITY,
            RISER,
            PIT);

    private final String words;
    private final Optional<Unit> unit;

    ReadingsColumn(String words) {
        this.words = words;
        this.unit = Optional.empty();
    }

    ReadingsColumn(String words, Unit unit) {
        this.words = words;
        this.unit = Optional.of(unit);
    }

    String words() {
        return words;
    }

    /** The SI unit in which it is written; empty where it holds words or a count. */
    Optional<Unit> unit() {
        return unit;
    }

    Optional<Dimension> dimension() {
        return unit.map(Unit::dimension);
    }

    /** Heading with the SI unit, such as "fan on [Pa]". */
    String heading() {
        return words + unit.map(u -> " [" + u.symbol() + "]").orElse("");
    }

    /** The column with the longest name that a heading begins with. */
    static Optional<ReadingsColumn> of(String heading) {
        String plain = plain(heading);
        return Arrays.stream(values())
                .filter(c -> plain.startsWith(c.words))
                .max(Comparator.comparingInt(c -> c.words.length()));
    }

    /** What stands in a heading behind the column's name, without brackets. */
    String behind(String heading) {
        return heading.strip().substring(words.length()).replaceAll("^[\\s_\\[(]+|[\\s\\])]+$", "");
    }

    private static String plain(String heading) {
        return heading.strip().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}

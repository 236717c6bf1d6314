package slabfield.io;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The kinds of object in a scenario file and the keys that each may have. The schema describes the same keys. */
enum FileObject implements ObjectKind {
    SCENARIO(
            "the scenario",
            List.of("slabfield", "name", "lengthUnit", "slabs", "layer"),
            List.of(
                    "teaches",
                    "notes",
                    "display",
                    "cell",
                    "barriers",
                    "drainTile",
                    "blockWalls",
                    "openings",
                    "soil",
                    "house",
                    "air",
                    "suctionPoints",
                    "testHoles",
                    "stages",
                    "target",
                    "equipment",
                    "plan")),
    DISPLAY("display", List.of(), List.of("pressure", "flow", "length")),
    SLAB("slab", List.of("id", "outline"), List.of("holes", "thickness", "treated")),
    LAYER("the layer", List.of(), List.of("fill", "permeability", "inertial", "thickness", "zones")),
    ZONE("zone", List.of("id", "outline"), List.of("fill", "permeability", "inertial", "thickness")),
    BARRIER("barrier", List.of("id", "path", "width"), List.of("permeability", "certainty", "gaps")),
    GAP("gap", List.of("at", "length"), List.of()),
    BREAK("break", List.of("at"), List.of("length")),
    DRAIN_TILE(
            "drain tile",
            List.of("id", "path"),
            List.of("diameter", "manning", "slots", "breaks", "waterFilled", "sump")),
    BLOCK_WALL(
            "block wall",
            List.of("id", "path"),
            List.of("height", "tops", "joint", "faceToRoom", "faceToOutdoors", "along", "joinsAtCorners", "tile")),
    TOPS("block tops", List.of(), List.of("state", "sealedFraction", "area")),
    TILE_JOINT("tile joint", List.of("id", "conductance"), List.of()),
    OPENING(
            "opening",
            List.of("id"),
            List.of(
                    "kind",
                    "at",
                    "path",
                    "perimeterOf",
                    "radius",
                    "area",
                    "dischargeCoefficient",
                    "width",
                    "bends",
                    "leak",
                    "state",
                    "sealedFraction")),
    LEAK("leak", List.of("coefficient", "exponent"), List.of()),
    SOIL("soil", List.of(), List.of("leakance")),
    HOUSE(
            "house",
            List.of(),
            List.of(
                    "pressureOutdoorsAtFloor",
                    "indoorTemperature",
                    "neutralLevel",
                    "blowerDoor",
                    "naturalFlow",
                    "exhausts",
                    "designDay",
                    "climate",
                    "limits",
                    "heating",
                    "tariff")),
    BLOWER_DOOR("blower door", List.of("flow"), List.of("pressure", "exponent")),
    EXHAUST("exhaust", List.of("id", "flow"), List.of()),
    DESIGN_DAY("design day", List.of("outdoorTemperature"), List.of("windSpeed", "windCoefficient")),
    CLIMATE("climate", List.of(), List.of("bins", "degreeDays", "balance")),
    LIMIT("limit", List.of("pressure", "source"), List.of()),
    HEATING("heating", List.of("fuel", "efficiency", "price", "fuelUnit", "energyPerUnit"), List.of()),
    TARIFF("tariff", List.of("currency", "electricityPerKwh"), List.of()),
    AIR("air", List.of(), List.of("temperature", "altitude")),
    SUCTION_POINT("suction point", List.of("id", "at", "source"), List.of("tile", "pit", "whenOff")),
    PIT("pit", List.of(), List.of("radius", "volume")),
    SOURCE("source", List.of(), List.of("pressure", "flow", "fan", "riser", "pipe", "pipes", "discharge")),
    PIPE(
            "pipe",
            List.of("length"),
            List.of(
                    "diameter",
                    "nominal",
                    "ells",
                    "halfElls",
                    "teesThrough",
                    "teesByBranch",
                    "fittings",
                    "valve",
                    "roughness",
                    "rise")),
    EQUIPMENT("equipment", List.of(), List.of("risers", "fans", "plannedPipes")),
    RISER("riser", List.of("id", "fan"), List.of("pipe", "pipes", "discharge")),
    FAN("fan", List.of("id", "curve"), List.of("power", "density", "steadyFrom", "arrangement", "invented")),
    PLAN("plan", List.of(), List.of("north", "noDrillAreas", "underlay")),
    NO_DRILL_AREA("no-drill area", List.of("id", "outline"), List.of("reason")),
    UNDERLAY("underlay", List.of("picture", "corner", "pixel"), List.of("turned")),
    TEST_HOLE("test hole", List.of("id", "at"), List.of("found")),
    STAGE("stage", List.of("id", "kind"), List.of("openings", "sources", "readings", "system", "time", "notes")),
    SEAL("state", List.of("state"), List.of("sealedFraction")),
    HOLE_READING(
            "reading", List.of("hole"), List.of("fanOff", "fanOn", "spread", "count", "meterStep", "waited", "time")),
    SYSTEM_READING(
            "system reading",
            List.of("suctionPoint"),
            List.of("flow", "flowUncertainty", "flowBelow", "inPipe", "riser", "pit", "spread", "meterStep", "time")),
    IN_PIPE(
            "reading in a pipe",
            List.of("diameter"),
            List.of("velocityPressure", "velocity", "position", "pressureStep", "velocityStep", "density")),
    TARGET("target", List.of("vacuum", "choice"), List.of());

    private final String noun;
    private final List<String> required;
    private final List<String> optional;

    FileObject(String noun, List<String> required, List<String> optional) {
        this.noun = noun;
        this.required = required;
        this.optional = optional;
    }

    @Override
    public String noun() {
        return noun;
    }

    /** Its name in the schema's definitions, such as "drainTile". */
    String schemaName() {
        StringBuilder name = new StringBuilder();
        for (String word : name().toLowerCase(Locale.ROOT).split("_"))
            name.append(name.isEmpty() ? word : Character.toUpperCase(word.charAt(0)) + word.substring(1));
        return name.toString();
    }

    @Override
    public List<String> required() {
        return required;
    }

    @Override
    public List<String> keys() {
        List<String> all = new ArrayList<>(required);
        all.addAll(optional);
        return List.copyOf(all);
    }
}

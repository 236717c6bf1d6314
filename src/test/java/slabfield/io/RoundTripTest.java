package slabfield.io;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import slabfield.model.Air;
import slabfield.model.BlockWall;
import slabfield.model.Display;
import slabfield.model.Equipment;
import slabfield.model.FanOffer;
import slabfield.model.Fill;
import slabfield.model.FillWord;
import slabfield.model.FlowReading;
import slabfield.model.House;
import slabfield.model.Opening;
import slabfield.model.Point;
import slabfield.model.Riser;
import slabfield.model.Scenario;
import slabfield.model.Seal;
import slabfield.model.SealState;
import slabfield.model.Slab;
import slabfield.model.Source;
import slabfield.model.Stage;
import slabfield.model.SuctionPoint;
import slabfield.model.Target;
import slabfield.quantity.Unit;

/** What is read means what was written, and what is written is read back the same. */
class RoundTripTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    @Test
    void theFullSampleKeepsToTheSchemaAndUsesEveryKey() throws Exception {
        JsonNode tree = MAPPER.readTree(SampleFile.FULL);
        assertThat(ScenarioFilesTest.schemaErrors(tree)).isEmpty();
        Set<String> used = new HashSet<>();
        collect(tree, used);
        for (FileObject each : FileObject.values())
            assertThat(used).as(each.schemaName()).containsAll(each.keys());
    }

    private static void collect(JsonNode node, Set<String> used) {
        node.properties().forEach(p -> {
            used.add(p.getKey());
            collect(p.getValue(), used);
        });
        if (node.isArray()) node.forEach(n -> collect(n, used));
    }

    @Test
    void readsEachQuantityToTheLastDigit() throws ScenarioProblems {
        Scenario s = ScenarioReader.read(SampleFile.FULL, "full");
        assertThat(s.display()).isEqualTo(new Display("inH2O", "L/min", "ft"));
        assertThat(s.cellSize()).isEqualTo(0.1524);
        assertThat(s.slabs().get(0).outline().get(2)).isEqualTo(new Point(12.3444, 8.5344));
        assertThat(s.slabs().get(0).holes().get(0).get(2)).isEqualTo(new Point(0.9144, 1.2192));
        assertThat(s.slabs().get(0).thickness()).isEqualTo(0.0889);
        assertThat(s.slabs()).extracting(Slab::treated).containsExactly(true, false);
        assertThat(s.layer().fill()).isEqualTo(new Fill(FillWord.MIXED, 0.127, 3e-9, 12, false));
        assertThat(s.layer().zones().get(0).fill()).isEqualTo(Fill.of(FillWord.CLEAN_STONE, 0.127));
        assertThat(s.layer().zones().get(1).fill()).isEqualTo(Fill.of(0.0508, 1e-9, 3));
        assertThat(s.layer().zones().get(2).fill()).isEqualTo(Fill.of(FillWord.VOID, 0.0127));
        assertThat(s.barriers().get(0).known()).isFalse();
        assertThat(s.barriers().get(0).gaps().get(0).length()).isEqualTo(0.9144);
        assertThat(s.barriers().get(1).permeability()).isEqualTo(1e-12);
        assertThat(s.drainTiles().get(0).slotArea()).isEqualTo(Unit.SQUARE_INCH_PER_FOOT.toSi(1));
        assertThat(s.drainTiles().get(0).breaks()).extracting(g -> g.length()).containsExactly(0.0, 0.6096);
        assertThat(s.drainTiles().get(0).sump()).contains("sump");
        assertThat(s.soilLeakance()).isEqualTo(1e-8);
        assertThat(s.outdoorPressure()).isEqualTo(-1.5);
        assertThat(s.air().temperature().getAsDouble()).isCloseTo(285.3722222, within(1e-7));
        assertThat(s.target()).isEqualTo(new Target(4.9817782, "the owner's"));
    }

    @Test
    void readsWallsAndOpenings() throws ScenarioProblems {
        Scenario s = ScenarioReader.read(SampleFile.FULL, "full");
        BlockWall north = s.blockWalls().get(0);
        assertThat(north.tops()).isEqualTo(new Seal(SealState.COVERED, 0.85, false));
        assertThat(north.tile()).contains(new BlockWall.TileJoint("loop", 1e-5));
        assertThat(List.of(
                        north.height(),
                        north.topArea(),
                        north.joint(),
                        north.faceToRoom(),
                        north.faceToOutdoors(),
                        north.along()))
                .containsExactly(2.4384, 0.08, 2e-4, 3e-5, 1e-6, 2e-3);
        assertThat(north.joinsAtCorners()).isFalse();
        assertThat(s.opening("sump").orElseThrow().passage()).isEqualTo(new Opening.Orifice(0.0258064, 0.6));
        assertThat(s.opening("sump").orElseThrow().seal()).isEqualTo(new Seal(SealState.SEALED, 0.95, false));
        assertThat(s.opening("joint").orElseThrow().place()).isEqualTo(new Opening.Perimeter("main"));
        assertThat(s.opening("joint").orElseThrow().passage()).isEqualTo(new Opening.Crack(0.001, 1));
        assertThat(s.opening("joint").orElseThrow().seal()).isEqualTo(Seal.of(SealState.LOOSE));
        assertThat(s.opening("slot").orElseThrow().passage()).isEqualTo(new Opening.Orifice(0.00129032, 0.61));
        assertThat(s.opening("chase").orElseThrow().passage())
                .isEqualTo(new Opening.PowerLaw(Unit.CFM.toSi(0.5), 0.65));
        Opening.Spot pipe = (Opening.Spot) s.opening("pipe").orElseThrow().place();
        assertThat(Math.PI * pipe.radius() * pipe.radius())
                .as("circle of the area")
                .isCloseTo(0.00193548, within(1e-15));
    }

    @Test
    void readsSuctionPointsAndStages() throws ScenarioProblems {
        Scenario s = ScenarioReader.read(SampleFile.FULL, "full");
        assertThat(s.suctionPoint("S1").orElseThrow().source()).isEqualTo(new Source.Pressure(-249.08891));
        assertThat(s.suctionPoint("S1").orElseThrow().pit()).isEqualTo(new SuctionPoint.Pit(0.2286));
        SuctionPoint s2 = s.suctionPoint("S2").orElseThrow();
        assertThat(2.0 / 3 * Math.PI * Math.pow(s2.pit().radius(), 3))
                .as("half ball")
                .isCloseTo(0.028316846592, within(1e-14));
        assertThat(s2.openWhenOff()).isTrue();
        assertThat(s.suctionPoint("S3").orElseThrow().tile()).isEqualTo(Optional.of("loop"));
        Source.Fan fan = (Source.Fan) s.suctionPoint("S3").orElseThrow().source();
        assertThat(fan.curve().rises()).containsExactly(373.633365, 273.997801, 0.0);
        assertThat(fan.run()).containsExactly(new Source.Pipe(0.1016, 9.144, 4, 2, 1e-5));
        assertThat(fan.discharge()).isEqualTo(-2);
        assertThat(((Source.Fan) s.suctionPoint("S4").orElseThrow().source()).run())
                .isEmpty();
        Stage first = s.stages().get(0);
        assertThat(first.seals())
                .isEqualTo(Map.of("sump", Seal.of(SealState.OPEN), "north", new Seal(SealState.SEALED, 0.99, false)));
        assertThat(first.sources()).isEqualTo(Map.of("S1", new Source.Pressure(-8000), "S2", new Source.Flow(0)));
        assertThat(first.holes().get(0).fanOn()).hasValue(-0.4);
        assertThat(first.holes().get(0).count()).hasValue(6);
        assertThat(first.holes().get(0).waited()).hasValue(90);
        assertThat(first.holes().get(0).change().orElseThrow()).isCloseTo(-1.6, within(1e-12));
        assertThat(first.systems().get(0).flow()).hasValue(Unit.CFM.toSi(22));
        assertThat(first.systems().stream().map(r -> r.flowReading().orElseThrow()))
                .containsExactly(
                        new FlowReading.Stated(Unit.CFM.toSi(22), OptionalDouble.of(Unit.CFM.toSi(2))),
                        new FlowReading.Below(Unit.CFM.toSi(5)),
                        new FlowReading.InPipe(
                                List.of(9.0, 11.5, 11.0, 8.5),
                                false,
                                0.1016,
                                true,
                                OptionalDouble.of(0.5),
                                OptionalDouble.of(1.1)),
                        new FlowReading.InPipe(
                                List.of(Unit.FOOT_PER_MINUTE.toSi(900)),
                                true,
                                0.0762,
                                false,
                                OptionalDouble.of(Unit.FOOT_PER_MINUTE.toSi(10)),
                                OptionalDouble.empty()));
        assertThat(first.systems().get(1).suction()).hasValue(-120);
        assertThat(s.stages().get(1).asDrawn()).isTrue();
    }

    @Test
    void readsRisersPipesAndFans() throws ScenarioProblems {
        Scenario s = ScenarioReader.read(SampleFile.FULL, "full");
        Source.Branch branch =
                (Source.Branch) s.suctionPoint("S5").orElseThrow().source();
        assertThat(branch.riser()).isEqualTo("R");
        assertThat(branch.run())
                .containsExactly(
                        new Source.Pipe(2.067 * 0.0254, 0.9144, 0, 0.5, 1.5e-6, new Source.Turns(2, 0, 0), 1.5, 0.6096),
                        new Source.Pipe(3.068 * 0.0254, 3.048, 0, 0, 1.5e-6, new Source.Turns(0, 1, 1), 0, 0));
        Riser riser = s.equipment().riser("R").orElseThrow();
        assertThat(riser.discharge()).isEqualTo(-1);
        assertThat(riser.run()).singleElement().extracting(Source.Pipe::rise).isEqualTo(5.4864);
        FanOffer fan = s.equipment().fans().get(0);
        assertThat(fan.watts()).containsExactly(40.0, 44.0, 42.0);
        assertThat(fan.density()).isCloseTo(1.2014, within(1e-4));
        assertThat(fan.steadyFrom()).hasValue(Unit.CFM.toSi(10));
        assertThat(fan.arrangement()).isEqualTo(FanOffer.Arrangement.TWO_IN_SERIES);
        assertThat(fan.invented()).isTrue();
        assertThat(s.equipment().plannedRun()).containsExactly(new Source.Pipe(3.068 * 0.0254, 7.62, 3, 1.5, 1.5e-6));
    }

    @Test
    void readsTheHouseAbove() throws ScenarioProblems {
        House house = ScenarioReader.read(SampleFile.FULL, "full").house();
        assertThat(house.indoorTemperature()).isEqualTo(294.15);
        assertThat(house.neutralLevel()).hasValue(3.6576);
        assertThat(house.blowerDoor()).contains(new House.BlowerDoor(Unit.CFM.toSi(1500), 49, 0.62));
        assertThat(house.naturalFlow()).hasValue(Unit.CFM.toSi(60));
        assertThat(house.exhausts()).extracting(House.Exhaust::id).containsExactly("dryer", "bath");
        assertThat(house.designDay()).contains(new House.DesignDay(253.15, 4, 0.3));
        assertThat(house.climate().bins())
                .containsExactly(new House.Bin(263.15, 864000), new House.Bin(273.15, 2592000));
        assertThat(house.climate().degreeDays()).hasValue(3000 * 86400.0);
        assertThat(house.climate().balance()).isCloseTo(288.7055556, within(1e-7));
        assertThat(house.limits()).containsExactly(new House.Limit(2, "the inspector's, for the water heater"));
        assertThat(house.heating().orElseThrow())
                .isEqualTo(new House.Heating("oil", 0.8, 3.5, "gal", Unit.BRITISH_THERMAL_UNIT.toSi(106000)));
        assertThat(house.tariff()).contains(new House.Tariff("XYZ", 0.114));
    }

    @Test
    void theShortFileTakesTheUsualValues() throws ScenarioProblems {
        Scenario s = ScenarioReader.read(SampleFile.SHORT, "short");
        assertThat(s.display()).isEqualTo(new Display("Pa", "L/s", "m"));
        assertThat(s.cellSize()).isEqualTo(Scenario.USUAL_CELL);
        assertThat(s.layer().fill()).isEqualTo(Fill.of(FillWord.SAND, Fill.USUAL_THICKNESS));
        assertThat(s.target()).isEqualTo(Target.COMMON_PRACTICE);
        assertThat(s.air()).isEqualTo(Air.STANDARD);
        assertThat(s.equipment()).isEqualTo(Equipment.NONE);
        assertThat(s.house()).isEqualTo(House.UNKNOWN);
        Scenario feet = ScenarioReader.read(SampleFile.SHORT.replace("\"m\"", "\"ft\""), "short");
        assertThat(feet.display()).isEqualTo(new Display("Pa", "cfm", "ft"));
    }

    @Test
    void theFullSampleIsWrittenAndReadBackEqual() throws Exception {
        Scenario scenario = ScenarioReader.read(SampleFile.FULL, "full");
        String text = ScenarioWriter.toJson(scenario);
        assertThat(ScenarioReader.read(text, "again")).isEqualTo(scenario);
        assertThat(ScenarioWriter.toJson(scenario)).isEqualTo(text);
        assertThat(text)
                .contains("\"lengthUnit\": \"ft\"")
                .contains("[ 40.5, 28 ]")
                .contains("\"thickness\": \"0.0889 m\"");
        assertThat(ScenarioFilesTest.schemaErrors(MAPPER.readTree(text))).isEmpty();
    }

    /** Any place goes through any unit of length and comes back to the nanometre, exactly. */
    @ParameterizedTest
    @EnumSource(names = {"METRE", "CENTIMETRE", "MILLIMETRE", "INCH", "FOOT"})
    void coordinatesKeepTheirNanometres(Unit unit) {
        Random random = new Random(42);
        for (int i = 0; i < 2000; i++) {
            double metres = Math.rint((random.nextDouble() - 0.5) * 200 * 1e9) / 1e9;
            assertThat(Coordinates.metres(Coordinates.number(metres, unit).doubleValue(), unit))
                    .isEqualTo(metres);
        }
    }

    /** The schema's defaults, written out, change nothing. */
    @Test
    void theSchemasDefaultsAreTheReaders() throws Exception {
        JsonNode schema = ScenarioFilesTest.schemaTree();
        Scenario plain = ScenarioReader.read(SampleFile.FULL, "full");
        ObjectNode filled = (ObjectNode) MAPPER.readTree(SampleFile.FULL);
        Set<String> tried = new HashSet<>();
        fill(filled, schema, schema, tried);
        assertThat(ScenarioReader.read(MAPPER.writeValueAsString(filled), "filled"))
                .isEqualTo(plain);
        ObjectNode small = (ObjectNode) MAPPER.readTree(SampleFile.SHORT);
        fill(small, schema, schema, tried);
        assertThat(ScenarioReader.read(MAPPER.writeValueAsString(small), "filled"))
                .isEqualTo(ScenarioReader.read(SampleFile.SHORT, "short"));
        assertThat(tried)
                .contains("4 in", "20 cm2/m", "1e-4 m3/s/Pa/m", "2e-5 m/s/Pa", "1e-3 m4/s/Pa", "7 ft", "10 cm", "0 m");
    }

    /** Puts every default of the schema into a tree where its key is missing and has a meaning. */
    private static void fill(JsonNode node, JsonNode schema, JsonNode root, Set<String> tried) {
        JsonNode what = schema.has("$ref") ? root.at(schema.get("$ref").asText().substring(1)) : schema;
        if (node.isArray()) node.forEach(n -> fill(n, what.path("items"), root, tried));
        if (!node.isObject()) return;
        what.path("properties").properties().forEach(p -> {
            boolean idle = p.getKey().equals("dischargeCoefficient") && !node.has("area")
                    || p.getKey().equals("bends") && !node.has("width")
                    || p.getKey().equals("discharge") && !node.has("fan");
            if (p.getValue().has("default") && !node.has(p.getKey()) && !idle) {
                ((ObjectNode) node).set(p.getKey(), p.getValue().get("default").deepCopy());
                tried.add(p.getValue().get("default").asText());
            }
            if (node.has(p.getKey())) fill(node.get(p.getKey()), p.getValue(), root, tried);
        });
    }
}

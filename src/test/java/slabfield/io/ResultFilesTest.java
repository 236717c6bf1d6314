package slabfield.io;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import slabfield.field.CellKind;
import slabfield.field.Convergence;
import slabfield.field.Grid;
import slabfield.field.PressureField;
import slabfield.field.Result;
import slabfield.model.Point;
import slabfield.model.Scenario;

/** Files of results, from a result made by hand. */
class ResultFilesTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final PressureField FIELD = new PressureField(
            new Grid(0, 0, 0.5, 0.25, 2, 2),
            new CellKind[] {CellKind.LAYER, CellKind.DISC, CellKind.BARRIER, CellKind.UNREACHED},
            new double[] {-1.25, -1e-7, Double.NaN, Double.NaN},
            new boolean[4],
            new double[4]);

    private static final String STAGES = """
            "layer": { "fill": "sand" },
              "openings": [{ "id": "sump", "at": [1, 1], "area": "10 cm2" }],
              "testHoles": [{ "id": "T1", "at": [2, 2] }, { "id": "T2", "at": [3, 3] }],
              "stages": [
                { "id": "a", "kind": "baseline", "readings": [{ "hole": "T1", "fanOn": "-1 Pa" }, { "hole": "T2", "fanOn": "-9 Pa" }] },
                { "id": "b", "kind": "start-up", "readings": [{ "hole": "T1", "fanOn": "-2 Pa" }, { "hole": "T1", "fanOn": "-2.5 Pa" }] },
                { "id": "c", "kind": "later visit", "openings": { "sump": "sealed" }, "readings": [{ "hole": "T1", "fanOn": "-3 Pa" }] }
              ]""";

    private static Scenario scenario() throws ScenarioProblems {
        return ScenarioReader.read(SampleFile.SHORT.replace("\"layer\": { \"fill\": \"sand\" }", STAGES), "s");
    }

    private static Result.Solved solved(Result.Coverage coverage) throws ScenarioProblems {
        Map<String, Double> sources = new LinkedHashMap<>();
        sources.put("sump", 0.004);
        sources.put("soil", -0.001);
        return new Result.Solved(
                scenario(),
                new Convergence(Convergence.Ending.CONVERGED, 5, 1e-12, 2e-13),
                FIELD,
                Optional.empty(),
                new Result.Flows(0.003, 0.004, -0.001, 0, sources),
                List.of(
                        new Result.Hole("T1", new Point(2, 2), OptionalDouble.of(-2.4), OptionalDouble.of(0.3)),
                        new Result.Hole("T2", new Point(3, 3), OptionalDouble.empty(), OptionalDouble.empty())),
                List.of(new Result.Suction("S1", new Point(1, 1), -100, 0.003)),
                coverage,
                List.of(new Result.Unreached(new Point(4, 4), 2.5)),
                List.of("A doubt."),
                new double[4]);
    }

    @Test
    void writesASolvedHouse() throws Exception {
        JsonNode json =
                MAPPER.readTree(ResultWriter.json(solved(new Result.Coverage(5, 0.75, 1.5, new Point(9, 7), 0.1))));
        assertThat(json).isEqualTo(MAPPER.readTree("""
                { "writtenBy": "Slabfield", "scenario": "House",
                  "outcome": { "converged": true, "ending": "converged", "iterations": 5, "residual": 1e-12 },
                  "massBalance_relative": 2e-13,
                  "testHoles": [
                    { "id": "T1", "predicted_Pa": -2.4, "predictedFanOff_Pa": 0.3, "measured_Pa": -2.5 },
                    { "id": "T2", "predicted_Pa": null, "predictedFanOff_Pa": null, "measured_Pa": null } ],
                  "suctionPoints": [ { "id": "S1", "pressure_Pa": -100.0, "flow_m3_per_s": 0.003 } ],
                  "flows_m3_per_s": { "exhaust": 0.003, "fromRoom": 0.004, "fromSoil": -0.001, "fromOutdoors": 0.0,
                    "bySource": { "sump": 0.004, "soil": -0.001 } },
                  "coverage": { "target_Pa": 5.0, "areaMeeting_fraction": 0.75, "weakest_Pa": 1.5, "weakestAt_m": [9.0, 7.0], "cell_m": 0.1 },
                  "unreached": [ { "around_m": [4.0, 4.0], "area_m2": 2.5 } ],
                  "doubts": ["A doubt."] }
                """));
    }

    @Test
    void whatHasNoValueIsNull() throws Exception {
        JsonNode json = MAPPER.readTree(
                ResultWriter.json(solved(new Result.Coverage(5, Double.NaN, Double.NaN, new Point(0, 0), 0.1))));
        assertThat(json.at("/coverage/weakest_Pa").isNull()).isTrue();
        assertThat(json.at("/coverage/weakestAt_m").isNull()).isTrue();
        assertThat(json.at("/coverage/areaMeeting_fraction").isNull()).isTrue();
    }

    @Test
    void anUnsolvedHouseHasAReasonAndNoField() throws Exception {
        Convergence stalled = new Convergence(Convergence.Ending.ITERATION_LIMIT, 50, 0.1, Double.NaN);
        JsonNode json = MAPPER.readTree(ResultWriter.json(new Result.Unsolved(scenario(), stalled, "It did not end.")));
        assertThat(json).isEqualTo(MAPPER.readTree("""
                { "writtenBy": "Slabfield", "scenario": "House", "massBalance_relative": null,
                  "outcome": { "converged": false, "ending": "iteration limit", "iterations": 50, "residual": 0.1, "reason": "It did not end." } }
                """));
    }

    @Test
    void aFieldIsATableOfCells() {
        assertThat(FieldCsv.text(FIELD))
                .isEqualTo(String.join(
                        "\r\n",
                        "x_m,y_m,pressure_Pa,kind",
                        "0.25,0.125,-1.25,layer",
                        "0.75,0.125,-1.0E-7,disc",
                        "0.25,0.375,,barrier",
                        "0.75,0.375,,unreached",
                        ""));
    }
}

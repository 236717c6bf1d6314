package slabfield.io;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import slabfield.field.CellKind;
import slabfield.field.Convergence;
import slabfield.field.Grid;
import slabfield.field.PressureField;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.model.Scenario;
import slabfield.network.SlabSolver;
import slabfield.safety.JobField;
import slabfield.safety.JobRecord;

class ExportsTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private static Result.Solved solved() throws Exception {
        Scenario house =
                ScenarioReader.read(Path.of("scenarios", "stone-footing.json")).withCellSize(0.3);
        return (Result.Solved) SlabSolver.solve(house, Progress.NONE);
    }

    private static List<String> errors(JsonNode tree) throws Exception {
        try (InputStream in = ResultWriter.class.getResourceAsStream("/slabfield/result.schema.json")) {
            Schema schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(MAPPER.readTree(in));
            return schema.validate(tree).stream().map(Error::toString).toList();
        }
    }

    @Test
    void resultsKeepToTheirSchema() throws Exception {
        Result.Solved solved = solved();
        JsonNode tree = MAPPER.readTree(ResultWriter.json(solved));
        assertThat(errors(tree)).isEmpty();
        Convergence stalled = new Convergence(Convergence.Ending.STALLED, 50, 0.1, Double.NaN);
        assertThat(errors(MAPPER.readTree(
                        ResultWriter.json(new Result.Unsolved(solved.scenario(), stalled, "It did not end.")))))
                .isEmpty();
        ((ObjectNode) tree.get("coverage")).remove("target_Pa");
        assertThat(errors(tree)).isNotEmpty();
        ((ObjectNode) tree).remove("coverage");
        assertThat(errors(tree)).isNotEmpty();
    }

    @Test
    void anAsciiGridHasSquareCellsFromTheTopDown() {
        PressureField field = new PressureField(
                new Grid(1, 2, 0.5, 0.25, 2, 2),
                new CellKind[] {CellKind.LAYER, CellKind.LAYER, CellKind.BARRIER, CellKind.LAYER},
                new double[] {-1.25, -2, Double.NaN, -3},
                new boolean[4],
                new double[4]);
        assertThat(AsciiGrid.text(field)).isEqualTo("""
                ncols 4
                nrows 2
                xllcorner 1.0
                yllcorner 2.0
                cellsize 0.25
                NODATA_value -9999
                -9999 -9999 -3.0 -3.0
                -1.25 -1.25 -2.0 -2.0
                """);
    }

    @Test
    void holesAreATableWithUnitsInItsHead() throws Exception {
        String text = HolesCsv.predicted(solved());
        assertThat(text.lines().findFirst()).contains("hole,x_m,y_m,predictedFanOff_Pa,predictedFanOn_Pa");
        assertThat(text.lines().skip(1))
                .hasSize(5)
                .allSatisfy(row -> assertThat(row.split(",")).hasSize(5));
        assertThat(CsvCell.of("=1+1")).isEqualTo("'=1+1");
        assertThat(CsvCell.of("a, \"b\"")).isEqualTo("\"a, \"\"b\"\"\"");
    }

    @Test
    void theHashFollowsMeaningAndNotSpaces() throws Exception {
        Scenario scenario = ScenarioReader.read(SampleFile.SHORT, "a"),
                same = ScenarioReader.read(SampleFile.SHORT.replace(": ", " :  "), "b");
        JobRecord record = JobRecord.empty("House");
        String hash = InputHash.of(scenario, record);
        assertThat(hash).matches("[0-9a-f]{64}").isEqualTo(InputHash.of(same, record));
        assertThat(InputHash.of(scenario.withCellSize(0.2), record)).isNotEqualTo(hash);
        assertThat(InputHash.of(scenario, record.with(JobField.WEATHER, "calm")))
                .isNotEqualTo(hash);
        assertThat(InputHash.of("abc"))
                .as("FIPS 180-2, example B.1")
                .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }
}

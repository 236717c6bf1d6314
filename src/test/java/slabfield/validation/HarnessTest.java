package slabfield.validation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The harness must be able to say no: each of its verdicts, on a case made for it. */
class HarnessTest {
    private static final String WHOLE = """
            {
              "title": "Hole", "kind": "analytic", "question": "?", "source": "nobody", "doesNotShow": "much",
              "covers": ["orifice law"],
              "claims": [{
                "rows": "all", "name": "at $dp Pa", "unit": "L/s", "reference": "$row/flow", "tolerance": "1 %",
                "why": "because",
                "value": { "law": "orifice flow", "of": { "difference": "$dp", "area": "10 cm2", "dischargeCoefficient": 0.61 } }
              }],
              "control": { "name": "larger hole", "edits": [{ "at": "/claims/0/value/of/area", "times": 1.1 }] }
            }
            """;
    /** 0.61 * 0.001 * sqrt(2 * dp / 1.204) in litres per second. */
    private static final String TABLE = "row,dp,flow\na,10,2.48617\nb,40,4.97234\n";

    @TempDir
    private Path folder;

    private Outcome run(String json, String table) throws IOException, CaseProblem {
        Path place = Files.createDirectories(folder.resolve("0001-hole"));
        Files.writeString(place.resolve("case.json"), json);
        Files.writeString(place.resolve("reference.csv"), table);
        Files.writeString(place.resolve("SOURCE.md"), "nobody");
        return CaseRunner.run(ValidationCase.read(place), false);
    }

    @Test
    void acceptedCaseIsGreen() throws Exception {
        Outcome first = run(WHOLE, TABLE);
        assertThat(first.checks()).hasSize(2);
        assertThat(first.verdict()).isEqualTo(Outcome.Verdict.MOVED);
        Validation.accept(first);
        Outcome second = run(WHOLE, TABLE);
        assertThat(second.verdict()).isEqualTo(Outcome.Verdict.GREEN);
        assertThat(second.control().red()).isEqualTo(2);
    }

    @Test
    void numberOutsideItsToleranceIsRed() throws Exception {
        assertThat(run(WHOLE, TABLE.replace("4.97234", "5.1")).verdict()).isEqualTo(Outcome.Verdict.RED);
    }

    @Test
    void caseThatItsControlCannotTurnRedIsTooLoose() throws Exception {
        assertThat(run(WHOLE.replace("1 %", "50 %"), TABLE).verdict()).isEqualTo(Outcome.Verdict.LOOSE);
    }

    /** A control that breaks the case proves nothing. */
    @Test
    void controlThatBreaksTheCaseIsNoControl() throws Exception {
        Outcome o = run(WHOLE.replace("\"times\": 1.1", "\"set\": -1"), TABLE);
        assertThat(o.control().broke())
                .hasValueSatisfying(why -> assertThat(why).contains("area"));
        assertThat(o.verdict()).isEqualTo(Outcome.Verdict.LOOSE);
    }

    @Test
    void numberThatMovedByMoreThanABillionthIsSeen() throws Exception {
        Outcome first = run(WHOLE, TABLE);
        double accepted = first.checks().get(0).ours();
        Files.writeString(
                folder.resolve("0001-hole/baseline.csv"),
                "claim,accepted\nat 10 Pa," + accepted * (1 + 2e-9) + "\nat 40 Pa,"
                        + first.checks().get(1).ours() + "\n");
        Outcome moved = run(WHOLE, TABLE);
        assertThat(moved.verdict()).isEqualTo(Outcome.Verdict.MOVED);
        assertThat(moved.checks().get(0).stands()).isFalse();
        assertThat(moved.checks().get(1).stands()).isTrue();
    }

    @Test
    void sourceGivesARange() throws Exception {
        String range = WHOLE.replace(
                "\"reference\": \"$row/flow\", \"tolerance\": \"1 %\"", "\"between\": [\"$row/flow\", \"inf\"]");
        assertThat(run(range, TABLE.replace("2.48617", "2.4").replace("4.97234", "4.9"))
                        .checks())
                .allMatch(Outcome.Check::agrees);
        assertThat(run(range, TABLE.replace("2.48617", "2.6")).verdict()).isEqualTo(Outcome.Verdict.RED);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "orifice flow       | orfice flow     | there is no law",
                "\"area\": \"10 cm2\" | \"area\": \"ten\"   | is no quantity",
                "\"$dp\"            | \"$pd\"         | has no column \"pd\"",
                "$row/flow          | $row/flo        | is no number of reference.csv",
                "\"1 %\"            | \"one\"         | neither like",
                "\"why\": \"because\" | \"why\": \"\"     | why its tolerance",
                "\"L/s\"            | \"furlong\"     | is not known",
                "analytic           | guess           | its kind",
                "0.61               | 0.61, \"colour\": 3 | does not use colour"
            })
    void faultsOfACaseAreNamed(String from, String to, String said) throws Exception {
        try {
            assertThat(run(WHOLE.replace(from, to), TABLE).problem())
                    .hasValueSatisfying(p -> assertThat(p).contains(said));
        } catch (CaseProblem e) {
            assertThat(e).hasMessageContaining(said);
        }
    }

    @Test
    void allFaultsOfACaseAreSaidAtOnce() {
        assertThatThrownBy(() -> run("{}", TABLE))
                .isInstanceOf(CaseProblem.class)
                .hasMessageContaining("\"title\"")
                .hasMessageContaining("claims nothing")
                .hasMessageContaining("no control");
    }

    @Test
    void editsReachEveryEntryThatHasThePlace() throws Exception {
        JsonNode tree = json("{'a': {'x': {'k': '2e-8 m2'}, 'y': {'k': 3}, 'z': {}}}");
        JsonNode done = Edits.apply(tree, json("[{'at': '/a/*/k', 'times': 2}]"));
        assertThat(done.at("/a/x/k").asText()).isEqualTo("4.0E-8 m2");
        assertThat(done.at("/a/y/k").asDouble()).isEqualTo(6);
        assertThat(done.at("/a/z").size()).isZero();
        assertThat(tree.at("/a/y/k").asDouble()).isEqualTo(3);
        assertThatThrownBy(() -> Edits.apply(tree, json("[{'at': '/a/*/nothing', 'set': 1}]")))
                .hasMessageContaining("nothing stands at");
    }

    @Test
    void valuesAreWorkedOutInSi() throws Exception {
        JsonNode value = json("{'ratio': [{'sum': ['1 inH2O', '-49.08891 Pa']}, {'difference': ['1 m', '50 cm']}]}");
        assertThat(new Values(value, 1).of(value)).isCloseTo(400, within(1e-9));
        assertThat(Amounts.unit("cfm")).isCloseTo(4.719474432e-4, within(1e-16));
    }

    /** Every law that can be called is held against something by some case. */
    @Test
    void everyLawIsCalledBySomeCase() throws Exception {
        StringBuilder all = new StringBuilder();
        for (ValidationCase c : Validation.cases(Path.of("validation"))) all.append(c.tree());
        List<String> idle = NamedLaws.names().stream()
                .filter(n -> all.indexOf("\"" + n + "\"") < 0)
                .toList();
        assertThat(idle).isEmpty();
    }

    private static JsonNode json(String text) throws IOException {
        return new ObjectMapper().readTree(text.replace('\'', '"'));
    }
}

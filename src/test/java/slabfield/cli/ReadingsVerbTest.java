package slabfield.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReadingsVerbTest {
    @TempDir
    Path folder;

    @Test
    void aTableGoesInAndComesOut() throws IOException {
        String house = SmallHouse.in(folder), out = folder.resolve("read.json").toString();
        String table = SmallHouse.put(folder, "table.csv", "hole;fan off [Pa];fan on [Pa]\nT1;0,4;0,4\nT2;0,2;-8,5\n");
        Ran in = Ran.of("readings", "import", house, table, "--stage", "later", "--out", out);
        assertThat(in.code()).as(in.err()).isZero();
        assertThat(in.out())
                .contains(
                        "Stage \"later\": 2 holes, 0 suction points", "\"T1\" reads the same", "No flow was measured");
        Ran exported = Ran.of("readings", "export", out, "--stage", "later");
        assertThat(exported.out()).contains("fan on [Pa]", "later,later visit,T2,,0.2,-8.5");
        Ran comma = Ran.of("readings", "export", out, "--decimal-comma");
        assertThat(comma.out())
                .contains("later;later visit;T2;;0,2;-8,5")
                .contains("first look;communication test;T1;;0,4;-7");
    }

    @Test
    void mistakesAreNamedAndNothingIsWritten() throws IOException {
        String house = SmallHouse.in(folder), out = folder.resolve("read.json").toString();
        String table = SmallHouse.put(folder, "table.csv", "hole,fan on [Pa]\nT1,x\nT7,-3\n");
        Ran ran = Ran.of("readings", "import", house, table, "--stage", "later", "--out", out);
        assertThat(ran.code()).isEqualTo(2);
        assertThat(ran.err()).contains("2 problems", "line 2", "column 2, fan on", "line 3", "no test hole \"T7\"");
        assertThat(Path.of(out)).doesNotExist();
    }

    @Test
    void theScenarioItselfIsNotOverwritten() throws IOException {
        String house = SmallHouse.in(folder);
        String table = SmallHouse.put(folder, "table.csv", "hole,fan on [Pa]\nT1,-3\n");
        assertThat(Ran.of("readings", "import", house, table, "--stage", "later", "--out", house, "--force")
                        .code())
                .isEqualTo(5);
        assertThat(Files.readString(Path.of(house))).isEqualTo(SmallHouse.TEXT);
        assertThat(Ran.of("readings").code()).isEqualTo(2);
    }
}

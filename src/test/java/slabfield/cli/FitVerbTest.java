package slabfield.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FitVerbTest {
    @TempDir
    private Path folder;

    @Test
    void saysWhatWasFoundAndWhatToMeasure() throws IOException {
        Ran ran = Ran.of("fit", SmallHouse.in(folder), "--houses", "10", "--units", "Pa,L/s,m");
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.out())
                .contains("What the readings say", "the permeability of", "the leak of \"joint\"", "as drawn")
                .contains("Readings and the fitted house", "fan off", "4.00 L/s")
                // 40 Pa above the room at T2 is beyond all values of the unknowns
                .contains(" !", "look at these holes again")
                .contains("in 10 houses that explain the readings", "Meets everywhere", Page.CAUTION.substring(0, 40));
    }

    @Test
    void aNumberThatTheReadingsDoNotFixIsNullInJson() throws IOException {
        Ran ran = Ran.of("fit", SmallHouse.in(folder), "--houses", "0", "--json", "-");
        assertThat(ran.code()).as(ran.err()).isZero();
        JsonNode root = new ObjectMapper().readTree(ran.out());
        assertThat(root.get("unknowns")).isNotEmpty().allSatisfy(u -> {
            assertThat(u.get("value").isNull())
                    .isEqualTo(!u.get("standing").asText().equals("found"));
            assertThat(u.get("low90").asDouble()).isLessThan(u.get("high90").asDouble());
        });
        assertThat(root.get("readings")).hasSize(5);
        assertThat(root.has("asDrawn")).isFalse();
    }

    @Test
    void movesEachUnknownAloneWhenAsked() throws IOException {
        String house = SmallHouse.in(folder);
        String part = "Each unknown moved alone";
        assertThat(Ran.of("fit", house, "--houses", "0").out()).doesNotContain(part);
        Ran ran = Ran.of("fit", house, "--houses", "0", "--profile");
        assertThat(ran.code()).as(ran.err()).isZero();
        assertThat(ran.out().split(part)[1].split("Readings and")[0]).contains("the leak of \"joint\"", " to ");
        JsonNode root = new ObjectMapper()
                .readTree(Ran.of("fit", house, "--houses", "0", "--profile", "--json", "-")
                        .out());
        JsonNode fill = root.get("unknowns").get(0), exponent = null;
        for (JsonNode u : root.get("unknowns")) if (u.get("id").asText().startsWith("exponent")) exponent = u;
        assertThat(fill.get("profile").get("low90").asDouble())
                .isPositive()
                .isLessThan(fill.get("profile").get("high90").asDouble());
        assertThat(exponent.has("profile")).as("not sought for itself").isFalse();
    }

    @Test
    void refusesKindlyWithoutReadings() throws IOException {
        String none = SmallHouse.TEXT.replaceAll("(?s),\\s*\"stages\": \\[.*\\] }", " }");
        Ran ran = Ran.of("fit", SmallHouse.put(folder, "none.json", none));
        assertThat(ran.code()).isEqualTo(Exit.WRONG_INPUT.code());
        assertThat(ran.err()).contains("too little to fit", "measure the flow");
        assertThat(ran.out()).isEmpty();
    }

    @Test
    void asksForASensibleNumberOfHouses() throws IOException {
        Ran ran = Ran.of("fit", SmallHouse.in(folder), "--houses", "3");
        assertThat(ran.code()).isEqualTo(Exit.WRONG_INPUT.code());
        assertThat(ran.err()).contains("0 or a number from 10");
    }
}

package slabfield.io;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class ExampleScenariosTest {
    @Test
    void theListNamesEveryFileThatIsShipped() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("scenarios"))) {
            assertThat(ExampleScenarios.all().stream().map(ExampleScenarios.Example::file))
                    .as("src/main/resources/slabfield/examples.txt lists the files of scenarios/")
                    .containsExactlyInAnyOrderElementsOf(
                            files.map(f -> f.getFileName().toString()).toList());
        }
    }

    @Test
    void eachTeachesSomething() {
        assertThat(ExampleScenarios.all())
                .allSatisfy(e -> assertThat(e.scenario().teaches()).isNotBlank());
    }
}

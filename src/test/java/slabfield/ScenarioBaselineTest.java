package slabfield;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.io.ScenarioReader;
import slabfield.model.Scenario;
import slabfield.model.Stage;
import slabfield.network.SlabSolver;

/**
 * Every shipped scenario is solved, also for each of its stages, and keeps the numbers of the last accepted run. A red
 * test is a question: what moved, and why? Run with {@code -Dslabfield.accept=true} to accept, and say so under "Changed
 * numbers" in the changelog.
 */
class ScenarioBaselineTest {
    private static final Path BASELINE = Path.of("src/test/resources/slabfield/scenario-baseline.csv");
    private static final Percentage SAME = Percentage.withPercentage(1e-4);

    static List<Path> scenarios() throws IOException {
        try (Stream<Path> files = Files.list(Path.of("scenarios"))) {
            return files.filter(f -> f.toString().endsWith(".json")).sorted().toList();
        }
    }

    @ParameterizedTest
    @MethodSource("scenarios")
    void keepsItsNumbers(Path file) throws Exception {
        Scenario drawn = ScenarioReader.read(file);
        String name = file.getFileName().toString().replace(".json", "");
        Map<String, Double> now = new LinkedHashMap<>(numbers(name, drawn));
        for (Stage stage : drawn.stages()) now.putAll(numbers(name + " / " + stage.id(), drawn.during(stage)));
        if (Boolean.getBoolean("slabfield.accept")) {
            accept(name, now);
            return;
        }
        Map<String, Double> before = baseline(name);
        assertThat(now.keySet()).isEqualTo(before.keySet());
        now.forEach((key, value) -> assertThat(value).as(key).isCloseTo(before.get(key), SAME));
    }

    private static Map<String, Double> numbers(String name, Scenario scenario) {
        Result result = SlabSolver.solve(scenario, Progress.NONE);
        assertThat(result).as("%s: %s", name, result.convergence()).isInstanceOf(Result.Solved.class);
        Result.Solved s = (Result.Solved) result;
        assertThat(Math.abs(s.convergence().massBalance())).isLessThan(SlabSolver.BALANCE);
        Map<String, Double> out = new LinkedHashMap<>();
        out.put(name + ": exhaust m3/s", s.flows().exhaust());
        out.put(name + ": from room m3/s", s.flows().fromRoom());
        out.put(name + ": weakest vacuum Pa", s.coverage().weakest());
        out.put(name + ": part meeting target", s.coverage().meeting());
        for (Result.Hole h : s.holes()) {
            out.put(name + ": " + h.id() + " fan on Pa", h.fanOn().orElseThrow());
            out.put(name + ": " + h.id() + " fan off Pa", h.fanOff().orElseThrow());
        }
        return out;
    }

    private static Map<String, Double> baseline(String name) throws IOException {
        Map<String, Double> out = new LinkedHashMap<>();
        for (String line : Files.readAllLines(BASELINE)) {
            int comma = line.lastIndexOf(',');
            String key = line.substring(0, comma);
            if (key.startsWith(name + ":") || key.startsWith(name + " /"))
                out.put(key, Double.valueOf(line.substring(comma + 1)));
        }
        return out;
    }

    private static void accept(String name, Map<String, Double> now) throws IOException {
        List<String> lines = Files.exists(BASELINE)
                ? new java.util.ArrayList<>(Files.readAllLines(BASELINE))
                : new java.util.ArrayList<>();
        lines.removeIf(l -> l.startsWith(name + ":") || l.startsWith(name + " /"));
        now.forEach((key, value) -> lines.add(String.format(Locale.ROOT, "%s,%.10g", key, value)));
        lines.sort(null);
        Files.write(BASELINE, lines);
    }
}

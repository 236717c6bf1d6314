package slabfield.validation;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import slabfield.io.SafeFile;

/** The last accepted value of each claim of a case, in its baseline.csv. */
final class Baseline {
    private static final String FILE = "baseline.csv";

    private Baseline() {}

    /** Accepted values by claim, each in the claim's unit; empty where none was ever accepted. */
    static Map<String, Double> read(Path folder) throws CaseProblem {
        Path file = folder.resolve(FILE);
        Map<String, Double> values = new LinkedHashMap<>();
        if (!Files.exists(file)) return values;
        try {
            for (String line : Files.readAllLines(file).stream().skip(1).toList()) {
                int comma = line.lastIndexOf(',');
                values.put(line.substring(0, comma), Double.valueOf(line.substring(comma + 1)));
            }
            return values;
        } catch (IOException | IndexOutOfBoundsException | NumberFormatException e) {
            throw new CaseProblem(FILE + " cannot be read; accept the case anew");
        }
    }

    /** Makes the values of a run the accepted ones, save those that stand, which differ by rounding alone. */
    static void accept(Outcome outcome) throws IOException {
        StringBuilder text = new StringBuilder("claim,accepted\n");
        for (Outcome.Check c : outcome.checks()) {
            double value = c.stands() ? c.baseline().orElseThrow() : c.ours();
            text.append(c.claim().name()).append(',').append(value).append('\n');
        }
        SafeFile.write(outcome.of().folder().resolve(FILE), text.toString().getBytes(StandardCharsets.UTF_8));
    }
}

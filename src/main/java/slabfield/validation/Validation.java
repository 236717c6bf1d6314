package slabfield.validation;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import slabfield.io.SafeFile;

/** The folder of validation cases: lists them, and writes what runs of them found. */
public final class Validation {
    private static final String NUMBERED = "\\d{4}-.+";

    private Validation() {}

    /**
     * Folders of all cases, by number.
     *
     * @param folder that holds them
     */
    public static List<Path> folders(Path folder) throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.filter(f -> f.getFileName().toString().matches(NUMBERED) && Files.isDirectory(f))
                    .sorted()
                    .toList();
        }
    }

    /**
     * All cases.
     *
     * @throws CaseProblem where one or more cannot be read, naming each
     */
    public static List<ValidationCase> cases(Path folder) throws IOException, CaseProblem {
        List<ValidationCase> cases = new ArrayList<>();
        List<String> problems = new ArrayList<>();
        for (Path each : folders(folder)) {
            try {
                cases.add(ValidationCase.read(each));
            } catch (CaseProblem e) {
                problems.add(e.getMessage());
            }
        }
        if (!problems.isEmpty()) throw new CaseProblem(String.join("\n", problems));
        return cases;
    }

    /** Writes a run's report and figure into its case's folder. */
    public static void report(Outcome outcome, String version) throws IOException {
        write(outcome.of().folder().resolve("report.md"), CaseReport.text(outcome, version));
        if (outcome.problem().isEmpty()) write(outcome.of().folder().resolve("figure.svg"), CaseFigure.svg(outcome));
    }

    /** Makes a run's values the accepted ones of its case. */
    public static void accept(Outcome outcome) throws IOException {
        Baseline.accept(outcome);
    }

    /** Writes the index over runs of all cases. */
    public static void index(Path folder, List<Outcome> outcomes, String version) throws IOException {
        write(folder.resolve("README.md"), ValidationIndex.text(outcomes, version));
    }

    private static void write(Path file, String text) throws IOException {
        SafeFile.write(file, text.getBytes(StandardCharsets.UTF_8));
    }
}

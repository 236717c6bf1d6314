package slabfield.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import slabfield.validation.CaseProblem;
import slabfield.validation.CaseRunner;
import slabfield.validation.Outcome;
import slabfield.validation.Validation;
import slabfield.validation.ValidationCase;
import slabfield.validation.ValidationIndex;

/** Runs the validation cases and writes their reports. */
@Command(
        name = "validate",
        mixinStandardHelpOptions = true,
        header = "Holds the program against published, measured and exact numbers, and writes the reports.",
        description =
                "%nRuns the cases of a folder, each with a control that must fail and on three sizes of cells; writes"
                        + " report.md and figure.svg of each case, and the index when all were run.%n",
        footerHeading = "%nExample: all cases of this copy of the program's source:%n",
        footer = "  slabfield validate --folder validation")
final class ValidateVerb implements Callable<Integer> {
    @ParentCommand
    private CommandLineFace face;

    @Parameters(
            paramLabel = "ID",
            arity = "0..*",
            description = "Numbers of cases, such as 0003; all where none is given.")
    private List<String> ids = List.of();

    @Option(
            names = "--folder",
            paramLabel = "FOLDER",
            defaultValue = "validation",
            description = "Where the cases are (${DEFAULT-VALUE}).")
    private Path folder;

    @Option(
            names = "--accept",
            paramLabel = "ID",
            description =
                    "Make this case's numbers the accepted ones, where they agree with its source. Repeat for more.")
    private List<String> accepted = List.of();

    @Option(names = "--dry-run", description = "Write nothing, and leave out the finer and coarser cells.")
    private boolean dry;

    @Override
    public Integer call() throws Refusal {
        List<ValidationCase> cases = cases();
        String version = "Slabfield " + CommandLineFace.Version.number();
        List<Outcome> outcomes = new ArrayList<>();
        for (ValidationCase each : chosen(cases)) outcomes.add(run(each, version));
        try {
            if (!dry && outcomes.size() == cases.size()) Validation.index(folder, outcomes, version);
        } catch (IOException e) {
            throw new Refusal(Exit.CANNOT_WRITE, e.getMessage());
        }
        show(ValidationIndex.ordered(outcomes));
        boolean fine = outcomes.stream()
                .allMatch(o ->
                        o.verdict() == Outcome.Verdict.GREEN || o.of().missed().isPresent());
        return (fine ? Exit.FINE : Exit.CASE_FAILED).code();
    }

    private List<ValidationCase> cases() throws Refusal {
        if (!Files.isDirectory(folder))
            throw new Refusal(
                    Exit.WRONG_INPUT,
                    "There is no folder " + folder + "; name the one with --folder that holds the cases.");
        try {
            return Validation.cases(folder);
        } catch (CaseProblem | IOException e) {
            throw new Refusal(Exit.WRONG_INPUT, e.getMessage());
        }
    }

    private List<ValidationCase> chosen(List<ValidationCase> cases) throws Refusal {
        List<String> wanted = new ArrayList<>(ids);
        if (ids.isEmpty() && !accepted.isEmpty()) wanted.addAll(accepted);
        List<String> unknown = wanted.stream()
                .filter(id -> cases.stream().noneMatch(c -> c.id().startsWith(id)))
                .map(id -> folder + " has no case " + id + ".")
                .toList();
        if (!unknown.isEmpty()) throw new Refusal(Exit.WRONG_INPUT, unknown);
        return wanted.isEmpty()
                ? cases
                : cases.stream()
                        .filter(c -> wanted.stream().anyMatch(c.id()::startsWith))
                        .toList();
    }

    private Outcome run(ValidationCase of, String version) throws Refusal {
        Outcome outcome = CaseRunner.run(of, !dry);
        try {
            if (!dry && accepted.stream().anyMatch(of.id()::startsWith) && accepts(outcome)) {
                Validation.accept(outcome);
                outcome = CaseRunner.run(of, true);
            }
            if (!dry) Validation.report(outcome, version);
        } catch (IOException e) {
            throw new Refusal(Exit.CANNOT_WRITE, e.getMessage());
        }
        return outcome;
    }

    /** Numbers outside their tolerance are never accepted, unless the case says why it misses. */
    private static boolean accepts(Outcome outcome) {
        return switch (outcome.verdict()) {
            case MOVED, GREEN, LOOSE -> true;
            case RED -> outcome.of().missed().isPresent();
            case BROKEN -> false;
        };
    }

    private void show(List<Outcome> outcomes) {
        Table table =
                new Table(Table.words("case"), Table.words("verdict"), Table.number("worst"), Table.words("control"));
        for (Outcome o : outcomes)
            table.row(
                    o.of().id(),
                    o.problem().orElse(o.verdict().word()),
                    String.format(Locale.ROOT, "%.2f", o.worst()),
                    o.control().red() + " of " + o.control().of() + " red");
        table.lines().forEach(face.out()::println);
        long green = outcomes.stream()
                .filter(o -> o.verdict() == Outcome.Verdict.GREEN)
                .count();
        face.out().println();
        face.out()
                .println(green + " of " + outcomes.size()
                        + " cases are green. Worst: largest error in parts of its tolerance.");
    }
}

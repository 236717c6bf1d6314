package slabfield.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.figure.Paper;
import slabfield.io.InputHash;
import slabfield.model.Scenario;
import slabfield.network.SlabSolver;
import slabfield.report.Job;
import slabfield.report.Jobs;
import slabfield.report.Numbers;
import slabfield.report.Provenance;
import slabfield.report.ReportKind;
import slabfield.report.ReportPdf;
import slabfield.safety.JobRecord;

/** Writes the record that is handed over. */
@Command(
        name = "report",
        mixinStandardHelpOptions = true,
        header = "Writes the record of a job as a PDF: design, test, start-up, and a page for the householder.",
        description =
                "%nPredicted and measured stand apart; what was not answered is shown as unanswered; radon is only what was"
                        + " typed in. Names, instruments and marks come from the job record, which the verb checklist fills. The same"
                        + " files give the same bytes; no clock is read.%n",
        footerHeading = "%nExample: the page for the householder:%n",
        footer = "  slabfield report house.json --kind householder --out your-radon-system.pdf")
final class ReportVerb implements Callable<Integer> {
    @ParentCommand
    private CommandLineFace face;

    @Parameters(paramLabel = "FILE", description = "Scenario file; its job record is looked for beside it.")
    private Path file;

    @Option(names = "--out", required = true, paramLabel = "OUT", description = "PDF to write.")
    private Path out;

    @Option(
            names = "--kind",
            paramLabel = "KIND",
            description = "design, test, start-up or householder; may be given again (all four).")
    private List<String> kinds = List.of();

    @Option(
            names = "--paper",
            paramLabel = "SIZE",
            description = "A4 or letter (A4, or letter where lengths are in feet).")
    private Optional<String> paper = Optional.empty();

    @Option(names = "--date", paramLabel = "DATE", description = "Date to print on it, such as 2026-01-20.")
    private Optional<String> date = Optional.empty();

    @Option(
            names = "--locale",
            paramLabel = "PLACE",
            defaultValue = "en",
            description = "Whose decimal mark numbers have, such as de (${DEFAULT-VALUE}).")
    private String locale;

    @Option(names = "--no-sizing", description = "Leave out fans, worst day and cost, which take many solves.")
    private boolean unsized;

    @Option(names = "--force", description = "Replace a file even if this program did not write it.")
    private boolean force;

    @Override
    public Integer call() throws Refusal {
        new Outputs().add("--out", Optional.of(out)).check(file, force);
        Scenario scenario = ScenarioFile.read(file, face.standardInput());
        JobRecord record = ScenarioFile.record(file, scenario);
        Provenance from = new Provenance(CommandLineFace.Version.number(), InputHash.of(scenario, record), date());
        Result result = SlabSolver.solve(scenario, Progress.NONE);
        if (result instanceof Result.Unsolved unsolved) throw new Refusal(Exit.NOT_CONVERGED, unsolved.reason());
        Job job = Jobs.of((Result.Solved) result, record, from, !unsized, Progress.NONE);
        Shown shown = face.units().over(scenario.display());
        Numbers numbers = new Numbers(
                shown.pressureUnit(),
                shown.flowUnit(),
                shown.lengthUnit(),
                Locale.forLanguageTag(locale.replace('_', '-')));
        Outputs.write(out, ReportPdf.bytes(job, wanted(), numbers, paper(shown)));
        return Exit.FINE.code();
    }

    private List<ReportKind> wanted() throws Refusal {
        if (kinds.isEmpty()) return List.of(ReportKind.values());
        List<ReportKind> out = new ArrayList<>();
        for (String kind : kinds) out.add(Words.of("--kind", kind, ReportKind.values()));
        return out;
    }

    private Paper paper(Shown shown) throws Refusal {
        if (paper.isEmpty()) return shown.imperial() ? Paper.LETTER : Paper.A4;
        return Words.of("--paper", paper.get(), new Paper[] {Paper.A4, Paper.LETTER});
    }

    private Optional<LocalDate> date() throws Refusal {
        try {
            return date.map(LocalDate::parse);
        } catch (DateTimeParseException e) {
            throw new Refusal(Exit.WRONG_INPUT, "--date \"" + date.orElse("") + "\": write a date such as 2026-01-20.");
        }
    }
}

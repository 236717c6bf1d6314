package slabfield.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import slabfield.field.Progress;
import slabfield.field.Result;
import slabfield.figure.Paper;
import slabfield.fit.Fitted;
import slabfield.fit.HouseFit;
import slabfield.fit.NotFitted;
import slabfield.io.BatchFile;
import slabfield.io.BatchFile.Row;
import slabfield.io.BatchFile.Status;
import slabfield.io.InputHash;
import slabfield.io.ResultWriter;
import slabfield.io.SafeFile;
import slabfield.model.Scenario;
import slabfield.network.SlabSolver;
import slabfield.report.Jobs;
import slabfield.report.Numbers;
import slabfield.report.Provenance;
import slabfield.report.ReportKind;
import slabfield.report.ReportPdf;
import slabfield.safety.JobRecord;

/**
 * One house of a batch.
 *
 * @param out folder for its results
 * @param report whether its report is written
 * @param fit whether it is fitted to its readings first
 */
record BatchHouse(Path out, boolean report, boolean fit) {
    /** @param kept true where nothing was done because it was finished before */
    record Done(Row row, boolean kept) {}

    /** A house to go on with, and what fitting gave, in words. */
    private record Prepared(Scenario scenario, String words) {}

    Done run(String name, Path file, InputStream standardInput) throws Refusal {
        Scenario scenario;
        JobRecord record;
        try {
            scenario = ScenarioFile.read(file, standardInput);
            record = ScenarioFile.record(file, scenario);
        } catch (Refusal e) {
            return new Done(Row.without(name, "", Status.UNREADABLE, e.getMessage()), false);
        }
        String input = InputHash.of(scenario, record);
        String key = InputHash.of(input + ' ' + CommandLineFace.Version.number() + " report " + report + " fit " + fit);
        Optional<Row> before = BatchFile.finished(out, name, key);
        if (before.isPresent() && complete(name)) return new Done(before.get(), true);
        try {
            Row row = solved(name, key, prepared(scenario), record, input);
            BatchFile.write(out, row);
            return new Done(row, false);
        } catch (IOException e) {
            throw new Refusal(Exit.CANNOT_WRITE, e.getMessage());
        }
    }

    private Path results(String name) {
        return out.resolve(name + ".result.json");
    }

    private Path reports(String name) {
        return out.resolve(name + ".report.pdf");
    }

    private boolean complete(String name) {
        return Files.exists(results(name)) && (!report || Files.exists(reports(name)) || unsolved(name));
    }

    /** True where the result says that there is no field, for which there is no report. */
    private boolean unsolved(String name) {
        try {
            return Files.readString(results(name)).contains("\"converged\": false");
        } catch (IOException e) {
            return false;
        }
    }

    private Prepared prepared(Scenario scenario) {
        if (!fit) return new Prepared(scenario, "");
        try {
            Fitted fitted = HouseFit.fit(scenario, Progress.NONE);
            return new Prepared(
                    fitted.house(),
                    String.format(
                            Locale.ROOT,
                            "fitted to %d readings, chi-square %.3g",
                            fitted.observations().size(),
                            fitted.chiSquare()));
        } catch (NotFitted e) {
            return new Prepared(scenario, "not fitted: " + e.getMessage());
        }
    }

    private Row solved(String name, String key, Prepared prepared, JobRecord record, String input) throws IOException {
        Result result = SlabSolver.solve(prepared.scenario(), Progress.NONE);
        SafeFile.write(results(name), ResultWriter.json(result).getBytes(StandardCharsets.UTF_8));
        if (result instanceof Result.Unsolved unsolved)
            return Row.without(name, key, Status.NOT_SOLVED, unsolved.reason());
        Result.Solved solved = (Result.Solved) result;
        if (report) SafeFile.write(reports(name), pdf(solved, record, input));
        double target = solved.coverage().target();
        int meeting = (int) solved.holes().stream()
                .filter(h -> h.fanOn().isPresent() && -h.fanOn().getAsDouble() >= target)
                .count();
        return new Row(
                name,
                key,
                Status.SOLVED,
                solved.coverage().weakest(),
                solved.coverage().meeting(),
                solved.flows().exhaust(),
                solved.flows().fromRoom(),
                meeting,
                solved.holes().size(),
                prepared.words(),
                "");
    }

    private static byte[] pdf(Result.Solved solved, JobRecord record, String input) {
        Provenance from = new Provenance(CommandLineFace.Version.number(), input, Optional.empty());
        Numbers numbers = Numbers.of(solved.scenario().display(), Locale.ENGLISH);
        return ReportPdf.bytes(
                Jobs.of(solved, record, from, true, Progress.NONE),
                List.of(ReportKind.values()),
                numbers,
                numbers.imperial() ? Paper.LETTER : Paper.A4);
    }
}

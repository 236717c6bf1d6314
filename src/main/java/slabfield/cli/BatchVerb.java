package slabfield.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import slabfield.io.BatchFile;
import slabfield.io.BatchFile.Row;
import slabfield.io.BatchFile.Status;

/** Solves many houses side by side. */
@Command(
        name = "batch",
        mixinStandardHelpOptions = true,
        header = "Solves many houses side by side, with results, reports and a summary in one folder.",
        description =
                "%nEach house is written whole or not at all. A run that was stopped goes on where it was: a house whose input,"
                        + " program and options have not changed is not done again. The same files give the same bytes.%n",
        footerHeading = "%nExample: a folder of houses, each with a report:%n",
        footer = "  slabfield batch my-houses --out results --report")
final class BatchVerb implements Callable<Integer> {
    @ParentCommand
    private CommandLineFace face;

    @Parameters(paramLabel = "FILES", arity = "1..*", description = "Scenario files, or folders of them.")
    private List<Path> places;

    @Option(
            names = "--out",
            required = true,
            paramLabel = "DIR",
            description = "Folder for the results; made if it is not there.")
    private Path out;

    @Option(names = "--report", description = "Write each house's report too.")
    private boolean report;

    @Option(
            names = "--fit",
            description = "Fit each house to its readings first, where it has some, and go on with the fitted house.")
    private boolean fit;

    @Option(names = "--jobs", paramLabel = "N", description = "Houses at a time (as many as there are processors).")
    private int jobs = Runtime.getRuntime().availableProcessors();

    @Option(names = "--progress", description = "Show how far it is, also where no terminal seems to watch.")
    private boolean progress;

    @Override
    public Integer call() throws Refusal {
        if (jobs < 1) throw new Refusal(Exit.WRONG_INPUT, "--jobs " + jobs + ": give a number from 1.");
        Map<String, Path> houses = houses();
        folder();
        BatchHouse each = new BatchHouse(out, report, fit);
        ProgressBar bar = new ProgressBar(face.err(), houses.size(), progress || face.onTerminal());
        List<BatchHouse.Done> done = run(houses, each, bar);
        List<Row> rows = done.stream().map(BatchHouse.Done::row).toList();
        Outputs.write(out.resolve("summary.csv"), BatchFile.summary(rows).getBytes(StandardCharsets.UTF_8));
        long kept = done.stream().filter(BatchHouse.Done::kept).count();
        face.out().print(new BatchPage(rows, kept).text());
        if (rows.stream().anyMatch(r -> r.status() == Status.UNREADABLE)) return Exit.WRONG_INPUT.code();
        return rows.stream().anyMatch(r -> r.status() == Status.NOT_SOLVED)
                ? Exit.NOT_CONVERGED.code()
                : Exit.FINE.code();
    }

    /** Files by the name of their results. */
    private Map<String, Path> houses() throws Refusal {
        Map<String, Path> houses = new LinkedHashMap<>();
        List<String> problems = new ArrayList<>();
        for (Path place : places)
            for (Path file : files(place)) {
                String name = file.getFileName().toString().replaceAll("(?i)\\.json$", "");
                Path other = houses.putIfAbsent(name, file);
                if (other != null)
                    problems.add(file + ": its results would be named as those of " + other + "; rename one of them.");
            }
        if (houses.isEmpty()) problems.add("There is no scenario file in " + places + ".");
        if (!problems.isEmpty()) throw new Refusal(Exit.WRONG_INPUT, problems);
        return houses;
    }

    private static List<Path> files(Path place) throws Refusal {
        if (!Files.isDirectory(place)) return List.of(place);
        try (Stream<Path> inside = Files.list(place)) {
            return inside.filter(Files::isRegularFile)
                    .filter(f ->
                            f.getFileName().toString().toLowerCase(Locale.ROOT).endsWith(".json"))
                    .filter(f -> !f.getFileName().toString().endsWith(".record.json"))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new Refusal(Exit.WRONG_INPUT, place + ": the folder cannot be read; check that you may open it.");
        }
    }

    /** Makes the folder and clears what a run that was killed left half written. */
    private void folder() throws Refusal {
        try {
            Files.createDirectories(out);
            try (DirectoryStream<Path> parts = Files.newDirectoryStream(out, ".*.part")) {
                for (Path part : parts) Files.deleteIfExists(part);
            }
        } catch (IOException e) {
            throw new Refusal(
                    Exit.CANNOT_WRITE, "--out " + out + ": the folder cannot be made or written to; choose another.");
        }
    }

    private List<BatchHouse.Done> run(Map<String, Path> houses, BatchHouse each, ProgressBar bar) throws Refusal {
        ExecutorService workers = Executors.newFixedThreadPool(jobs);
        try {
            List<Future<BatchHouse.Done>> futures = new ArrayList<>();
            houses.forEach((name, file) -> futures.add(workers.submit(() -> {
                BatchHouse.Done done = each.run(name, file, InputStream.nullInputStream());
                bar.step(done.row().status() == Status.SOLVED);
                return done;
            })));
            List<BatchHouse.Done> all = new ArrayList<>();
            for (Future<BatchHouse.Done> future : futures) all.add(future.get());
            return all;
        } catch (ExecutionException e) {
            if (e.getCause() instanceof Refusal refusal) throw refusal;
            throw new IllegalStateException(e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new Refusal(Exit.CANNOT_WRITE, "The batch was stopped; run it again to go on.");
        } finally {
            workers.shutdownNow();
        }
    }
}

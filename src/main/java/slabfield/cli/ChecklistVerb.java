package slabfield.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import java.util.function.Function;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import slabfield.io.RecordFile;
import slabfield.model.ImpossibleValue;
import slabfield.model.Scenario;
import slabfield.safety.Answer;
import slabfield.safety.Blocked;
import slabfield.safety.DraftStep;
import slabfield.safety.DraftTest;
import slabfield.safety.Gate;
import slabfield.safety.GateAnswer;
import slabfield.safety.JobField;
import slabfield.safety.JobRecord;
import slabfield.safety.RadonTest;
import slabfield.wording.Nearest;

/** Shows and fills the record of a job's dangers. */
@Command(
        name = "checklist",
        mixinStandardHelpOptions = true,
        header = "Shows what must be asked before coring, start-up and hand-over, and records the answers.",
        description =
                "%nThe record stands beside the scenario: house.json has house.record.json. Without options it is shown."
                        + " What was not answered is shown as unanswered. A failed draft test blocks the start of the fan, an open gate"
                        + " the completion.%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  slabfield checklist house.json --answer \"utilities=yes\" --by \"A. B.\" --note \"marked in red\"",
            "  slabfield checklist house.json --draft-test \"water heater\" --outcome failed --radon-fan off",
            "  slabfield checklist house.json --start"
        })
final class ChecklistVerb implements Callable<Integer> {
    @ParentCommand
    private CommandLineFace face;

    @Parameters(paramLabel = "FILE", description = "Scenario file.")
    private Path file;

    @Option(
            names = "--answer",
            paramLabel = "GATE=ANSWER",
            description = "yes, no or \"not present\". May be given again.")
    private Map<String, String> answers = new LinkedHashMap<>();

    @ArgGroup(exclusive = false)
    private Draft draft;

    @Option(names = "--start", description = "Record that the fan is started.")
    private boolean start;

    @Option(
            names = "--radon-test",
            paramLabel = "RESULT",
            description = "Record a radon test set out at --time; \"\" while it runs.")
    private Optional<String> radonTest = Optional.empty();

    @Option(names = "--complete", description = "Mark the record complete.")
    private boolean complete;

    @Option(
            names = "--job",
            paramLabel = "FIELD=TEXT",
            description =
                    "What the report is to say, such as \"monitor mark=0.8 in of water\"; an empty text takes it back."
                            + " A wrong field lists those that are near. May be given again.")
    private Map<String, String> job = new LinkedHashMap<>();

    @Option(names = "--by", paramLabel = "NAME", description = "Who says so.")
    private String by = "";

    @Option(names = "--time", paramLabel = "TIME", description = "When, such as 2026-01-20T14:05; now unless given.")
    private Optional<String> time = Optional.empty();

    @Option(names = "--note", paramLabel = "TEXT", description = "Free text.")
    private String note = "";

    /** A draft test. */
    static final class Draft {
        @Option(
                names = "--draft-test",
                required = true,
                paramLabel = "APPLIANCE",
                description = "Record a draft test of this appliance.")
        private String appliance;

        @Option(
                names = "--outcome",
                required = true,
                paramLabel = "WORD",
                description = "passed or failed, as the person judged it.")
        private String outcome;

        @Option(names = "--radon-fan", required = true, paramLabel = "WORD", description = "running or off.")
        private String fan;

        @Option(
                names = "--step",
                paramLabel = "STEP=ANSWER",
                description = "Answer to a step of the test. May be given again.")
        private Map<String, String> steps = new LinkedHashMap<>();

        @Option(
                names = "--house-pressure",
                paramLabel = "P",
                converter = QuantityOption.OfPressure.class,
                description = "Room against outdoors.")
        private Optional<Double> house = Optional.empty();

        @Option(
                names = "--draft",
                paramLabel = "P",
                converter = QuantityOption.OfPressure.class,
                description = "Flue against room.")
        private Optional<Double> draft = Optional.empty();

        @Option(
                names = "--spillage",
                paramLabel = "T",
                converter = QuantityOption.OfDuration.class,
                description = "How long it spilled.")
        private Optional<Double> spillage = Optional.empty();

        @Option(names = "--co-ppm", paramLabel = "N", description = "Carbon monoxide in the flue.")
        private Optional<Double> carbonMonoxide = Optional.empty();
    }

    @Override
    public Integer call() throws Refusal {
        if (file.equals(Outputs.STANDARD))
            throw new Refusal(Exit.WRONG_INPUT, "A record needs a scenario file to stand beside.");
        Scenario scenario = ScenarioFile.read(file, face.standardInput());
        Path place = RecordFile.beside(file);
        JobRecord before = ScenarioFile.record(file, scenario);
        JobRecord after;
        try {
            after = changed(before);
        } catch (Blocked e) {
            throw new Refusal(Exit.BLOCKED, e.getMessage());
        } catch (ImpossibleValue e) {
            throw new Refusal(Exit.WRONG_INPUT, "\"" + e.part() + "\" " + e.reason() + ".");
        }
        if (!after.equals(before)) write(place, after);
        face.out().print(new ChecklistPage(after, face.units().over(scenario.display())).text());
        return Exit.FINE.code();
    }

    private static void write(Path place, JobRecord record) throws Refusal {
        try {
            RecordFile.write(place, record);
        } catch (IOException e) {
            throw new Refusal(Exit.CANNOT_WRITE, e.getMessage());
        }
    }

    private JobRecord changed(JobRecord before) throws Refusal, Blocked {
        LocalDateTime moment = moment();
        JobRecord record = before;
        for (Map.Entry<String, String> given : answers.entrySet())
            record = record.with(
                    word("--answer", given.getKey(), Gate.values(), Gate::word),
                    new GateAnswer(
                            word("--answer", given.getValue(), Answer.values(), Answer::word), by, moment, note));
        for (Map.Entry<String, String> given : job.entrySet())
            record = record.with(word("--job", given.getKey(), JobField.values(), JobField::word), given.getValue());
        if (draft != null) record = record.with(test(moment));
        if (start) record = record.started(moment);
        if (radonTest.isPresent()) record = record.with(new RadonTest(moment, radonTest.get()));
        return complete ? record.complete(moment) : record;
    }

    private DraftTest test(LocalDateTime moment) throws Refusal {
        Map<DraftStep, Answer> steps = new EnumMap<>(DraftStep.class);
        for (Map.Entry<String, String> given : draft.steps.entrySet())
            steps.put(
                    word("--step", given.getKey(), DraftStep.values(), DraftStep::word),
                    word("--step", given.getValue(), Answer.values(), Answer::word));
        boolean running = word("--radon-fan", draft.fan, new String[] {"running", "off"}, Function.identity())
                .equals("running");
        return new DraftTest(
                draft.appliance,
                running,
                word("--outcome", draft.outcome, DraftTest.Outcome.values(), DraftTest.Outcome::word),
                steps,
                optional(draft.house),
                optional(draft.draft),
                optional(draft.spillage),
                optional(draft.carbonMonoxide),
                by,
                moment,
                note);
    }

    private static OptionalDouble optional(Optional<Double> value) {
        return value.map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }

    private LocalDateTime moment() throws Refusal {
        try {
            return time.map(LocalDateTime::parse)
                    .orElseGet(() -> LocalDateTime.now().truncatedTo(ChronoUnit.MINUTES));
        } catch (DateTimeParseException e) {
            throw new Refusal(
                    Exit.WRONG_INPUT,
                    "--time \"" + time.orElse("") + "\": write a local time such as 2026-01-20T14:05.");
        }
    }

    private static <T> T word(String option, String given, T[] values, Function<T, String> word) throws Refusal {
        List<String> words = Arrays.stream(values).map(word).toList();
        int at = words.indexOf(given.strip());
        if (at < 0)
            throw new Refusal(
                    Exit.WRONG_INPUT, option + ": there is no \"" + given + "\"; " + Nearest.hint(given, words));
        return values[at];
    }
}

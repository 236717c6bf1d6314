package slabfield.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import slabfield.io.PhotoPrivacy;
import slabfield.io.RecordFile;
import slabfield.io.Redaction;
import slabfield.io.ScenarioWriter;
import slabfield.model.Scenario;

/** Takes names and addresses out of a job, or the place out of a photo. */
@Command(
        name = "redact",
        mixinStandardHelpOptions = true,
        header = "Writes a copy of a job without names and addresses, or of a photo without its place.",
        description =
                "%nOf a scenario and its record: the name of the house, notes, the picture traced from, who answered or tested,"
                        + " client and address. Of a JPEG or PNG: place, time, owner and camera. The source is not changed. What you named"
                        + " yourself, such as a hole, stays; where it holds a word that was taken out, it is reported.%n",
        footerHeading = "%nExample:%n",
        footer = "  slabfield redact house.json --out case-7.json")
final class RedactVerb implements Callable<Integer> {
    @ParentCommand
    private CommandLineFace face;

    @Parameters(paramLabel = "FILE", description = "Scenario file, or a photo (.jpg, .jpeg, .png).")
    private Path file;

    @Option(
            names = "--out",
            required = true,
            paramLabel = "OUT",
            description = "File to write; its record goes beside it.")
    private Path out;

    @Option(names = "--force", description = "Replace files even if this program did not write them.")
    private boolean force;

    @Override
    public Integer call() throws Refusal {
        new Outputs().add("--out", Optional.of(out)).check(file, force);
        if (file.toString().matches("(?i).*\\.(jpe?g|png)")) return photo();
        Scenario scenario = ScenarioFile.read(file, face.standardInput());
        Redaction clean = Redaction.of(scenario, ScenarioFile.record(file, scenario));
        Path record = RecordFile.beside(out);
        new Outputs().add("record", Optional.of(record)).check(RecordFile.beside(file), force);
        Outputs.write(out, ScenarioWriter.toJson(clean.scenario()).getBytes(StandardCharsets.UTF_8));
        Outputs.write(record, RecordFile.toJson(clean.record()).getBytes(StandardCharsets.UTF_8));
        if (clean.left().isEmpty()) return Exit.FINE.code();
        throw new Refusal(
                Exit.WRONG_INPUT,
                "Written, but these texts still hold a word of a name or an address that was taken out; change them"
                        + " and redact again: \"" + String.join("\", \"", clean.left()) + "\".");
    }

    private Integer photo() throws Refusal {
        try {
            Outputs.write(out, PhotoPrivacy.stripped(Files.readAllBytes(file)));
            return Exit.FINE.code();
        } catch (IOException e) {
            throw new Refusal(
                    Exit.WRONG_INPUT,
                    file + ": the photo cannot be read; check that it is there and that you may open it.");
        } catch (PhotoPrivacy.Unclean e) {
            throw new Refusal(Exit.WRONG_INPUT, file + ": " + e.getMessage() + ".");
        }
    }
}

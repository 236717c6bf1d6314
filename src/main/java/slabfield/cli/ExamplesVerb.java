package slabfield.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import slabfield.io.ExampleScenarios;

/** Lists the houses that come with the program, and writes them to a folder. */
@Command(
        name = "examples",
        mixinStandardHelpOptions = true,
        header = "Lists the example houses and what each teaches, or writes their files.",
        footerHeading = "%nExample: all of them in a new folder, to be changed at will:%n",
        footer = "  slabfield examples --write my-houses")
final class ExamplesVerb implements Callable<Integer> {
    @ParentCommand
    private CommandLineFace face;

    @Option(
            names = "--write",
            paramLabel = "FOLDER",
            description = "Write the files to this folder, which is made where there is none. A file that is there"
                    + " already is never replaced.")
    private Optional<Path> folder = Optional.empty();

    @Override
    public Integer call() throws Refusal {
        if (folder.isPresent()) write(folder.get());
        else for (ExampleScenarios.Example example : ExampleScenarios.all()) list(example);
        return Exit.FINE.code();
    }

    private void list(ExampleScenarios.Example example) {
        PrintWriter out = face.out();
        out.println(example.file() + " - " + example.scenario().name());
        for (String line : Table.wrap(example.scenario().teaches(), Table.WIDTH - 4)) out.println("    " + line);
    }

    private void write(Path folder) throws Refusal {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new Refusal(Exit.CANNOT_WRITE, "Cannot make the folder " + folder + "; choose another.");
        }
        List<String> left = new ArrayList<>();
        for (ExampleScenarios.Example example : ExampleScenarios.all()) {
            Path file = folder.resolve(example.file());
            if (!Files.exists(file)) {
                Outputs.write(file, example.bytes());
                face.out().println("wrote " + file);
            } else if (!holds(file, example.bytes()))
                left.add(file + " is there already and differs; it is left as it is.");
        }
        if (!left.isEmpty()) throw new Refusal(Exit.CANNOT_WRITE, left);
    }

    private static boolean holds(Path file, byte[] bytes) {
        try {
            return Arrays.equals(Files.readAllBytes(file), bytes);
        } catch (IOException e) {
            return false;
        }
    }
}

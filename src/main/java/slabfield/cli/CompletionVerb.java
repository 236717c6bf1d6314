package slabfield.cli;

import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Prints the completion script. */
@Command(
        name = "completion",
        mixinStandardHelpOptions = true,
        header = "Prints a script that completes verbs and options in bash and zsh.",
        footerHeading = "%nExample: for this shell:%n",
        footer = "  source <(slabfield completion)")
final class CompletionVerb implements Callable<Integer> {
    @ParentCommand
    private CommandLineFace face;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        face.out().print(AutoComplete.bash("slabfield", spec.root().commandLine()));
        return Exit.FINE.code();
    }
}

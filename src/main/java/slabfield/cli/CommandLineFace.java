package slabfield.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.concurrent.Callable;
import java.util.jar.Manifest;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;
import picocli.CommandLine.UnmatchedArgumentException;
import slabfield.wording.Nearest;

/** The command line: what is said before a verb, and how a run ends. */
@Command(
        name = "slabfield",
        mixinStandardHelpOptions = true,
        versionProvider = CommandLineFace.Version.class,
        header = "Predicts how far the vacuum of a radon-mitigation suction point reaches under a slab.",
        description = {
            "",
            "A scenario file draws one house: slab, fill, footings, drain tile, block walls, openings,"
                    + " suction points and test holes. Without any argument the window opens.",
            ""
        },
        synopsisSubcommandLabel = "VERB",
        commandListHeading = "%nVerbs:%n",
        optionListHeading = "Options, before or after the verb:%n",
        footerHeading = "%nTo start:%n",
        footer = {
            "  slabfield examples --write my-houses",
            "  slabfield solve my-houses/tight-sand-loop.json",
            "  slabfield suggest my-houses/tight-sand-loop.json --top 5",
            "",
            "slabfield VERB --help shows a verb's options and an example."
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:fine",
            "2:wrong option, or a scenario file that cannot be used",
            "3:no display for the window",
            "4:a solve did not converge",
            "5:a file cannot be written, or is there already",
            "6:an open gate or a failed draft test blocks what was asked",
            "7:a validation case is not green",
            "70:a fault of the program"
        },
        subcommands = {
            SolveVerb.class,
            ReadingsVerb.class,
            CompareVerb.class,
            FitVerb.class,
            DiagnoseVerb.class,
            SuggestVerb.class,
            NextHoleVerb.class,
            LeakMapVerb.class,
            SizeVerb.class,
            FlowVerb.class,
            ChecklistVerb.class,
            FigureVerb.class,
            PlanVerb.class,
            ReportVerb.class,
            BatchVerb.class,
            RedactVerb.class,
            CheckVerb.class,
            ExamplesVerb.class,
            ValidateVerb.class,
            CompletionVerb.class
        })
public final class CommandLineFace implements Callable<Integer> {
    private final InputStream standardInput;

    @Spec
    private CommandSpec spec;

    @Option(
            names = "--units",
            scope = ScopeType.INHERIT,
            paramLabel = "LIST",
            converter = UnitsAsked.Reader.class,
            description = "Units of tables and figures, such as \"inH2O,cfm,ft\"; those left out are the scenario's."
                    + " JSON and CSV are always SI, with the unit in the name.")
    private UnitsAsked units = UnitsAsked.NONE;

    @SuppressWarnings("UnusedVariable") // the arguments are asked for it, before they are parsed
    @Option(names = "--no-color", scope = ScopeType.INHERIT, description = "Help and messages without colour.")
    private boolean plain;

    @Option(names = "--debug", scope = ScopeType.INHERIT, description = "Show where a fault of the program happened.")
    private boolean debug;

    private CommandLineFace(InputStream standardInput) {
        this.standardInput = standardInput;
    }

    /** Runs the command line on the process's own streams, which are written in UTF-8. */
    public static int run(String... args) {
        PrintWriter out = new PrintWriter(System.out, false, StandardCharsets.UTF_8);
        PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
        return run(System.in, out, err, args);
    }

    /**
     * Runs the command line.
     *
     * @return the code of an {@link Exit}
     */
    static int run(InputStream in, PrintWriter out, PrintWriter err, String... args) {
        CommandLineFace face = new CommandLineFace(in);
        try {
            return face.commandLine(out, err, args).execute(args);
        } catch (OutOfMemoryError e) {
            err.println("The computer's memory is not enough for this: give a larger --cell or a smaller --width.");
            return Exit.WRONG_INPUT.code();
        } catch (UnsatisfiedLinkError e) {
            err.println(
                    "A library of the system that Java's fonts need is missing, so no picture can be drawn. On Debian: "
                            + "apt install fontconfig libfreetype6 libharfbuzz0b fonts-dejavu-core. ("
                            + printable(e.getMessage()) + ")");
            return Exit.CANNOT_WRITE.code();
        } catch (StackOverflowError e) {
            return face.fault(e, err);
        } finally {
            out.flush();
            err.flush();
        }
    }

    private CommandLine commandLine(PrintWriter out, PrintWriter err, String... args) {
        boolean colourless = Arrays.asList(args).contains("--no-color");
        return new CommandLine(this)
                .setOut(out)
                .setErr(err)
                .setUsageHelpWidth(Table.WIDTH)
                .setUsageHelpAutoWidth(false)
                .setColorScheme(CommandLine.Help.defaultColorScheme(colourless ? Ansi.OFF : Ansi.AUTO))
                .setParameterExceptionHandler(CommandLineFace::wrongUse)
                .setExecutionExceptionHandler(this::stopped);
    }

    private static int wrongUse(ParameterException e, String[] args) {
        CommandLine verb = e.getCommandLine();
        PrintWriter err = verb.getErr();
        boolean noVerb = e instanceof UnmatchedArgumentException && verb.getParent() == null;
        String message = noVerb ? noSuchVerb(verb, (UnmatchedArgumentException) e) : e.getMessage();
        err.println(verb.getColorScheme().errorText(printable(message)));
        if (!noVerb) UnmatchedArgumentException.printSuggestions(e, err);
        err.println("Try \"" + verb.getCommandSpec().qualifiedName() + " --help\".");
        return Exit.WRONG_INPUT.code();
    }

    private static String noSuchVerb(CommandLine root, UnmatchedArgumentException e) {
        String word = e.getUnmatched().get(0);
        if (word.startsWith("-")) return "There is no option \"" + word + "\" before a verb.";
        return "There is no verb \"" + word + "\"; "
                + Nearest.hint(word, root.getSubcommands().keySet());
    }

    private int stopped(Exception e, CommandLine verb, ParseResult parsed) {
        PrintWriter err = verb.getErr();
        if (e instanceof Refusal refusal) {
            err.println(printable(refusal.getMessage()));
            return refusal.exit().code();
        }
        return fault(e, err);
    }

    private int fault(Throwable e, PrintWriter err) {
        err.println(
                "This is a fault of Slabfield, not yours: please report it as a bug with the command and the file. ("
                        + printable(e.toString()) + (debug ? ")" : "; --debug shows where)"));
        if (debug) e.printStackTrace(err);
        return Exit.OUR_FAULT.code();
    }

    /** Text on several lines without characters that would steer a terminal. */
    static String printable(String text) {
        return text.replaceAll("[\\p{Cc}&&[^\\n]]", "?");
    }

    @Override
    public Integer call() {
        throw new ParameterException(spec.commandLine(), "Say what to do: a verb is missing.");
    }

    UnitsAsked units() {
        return units;
    }

    InputStream standardInput() {
        return standardInput;
    }

    PrintWriter out() {
        return spec.commandLine().getOut();
    }

    PrintWriter err() {
        return spec.commandLine().getErr();
    }

    /** True where a person seems to watch. */
    boolean onTerminal() {
        return Ansi.AUTO.enabled();
    }

    /** The version that the build wrote into the jar. */
    static final class Version implements IVersionProvider {
        @Override
        public String[] getVersion() {
            return new String[] {
                "Slabfield " + number() + build(), "Java " + Runtime.version() + ", " + System.getProperty("os.name")
            };
        }

        /** The commit that the jar was built from, where the build was told. */
        private static String build() {
            try (InputStream in = CommandLineFace.class.getResourceAsStream("/META-INF/MANIFEST.MF")) {
                String build =
                        in == null ? null : new Manifest(in).getMainAttributes().getValue("Slabfield-Build");
                return build == null ? "" : " (build " + build + ")";
            } catch (IOException unreadable) {
                return "";
            }
        }

        static String number() {
            String version = CommandLineFace.class.getPackage().getImplementationVersion();
            return version == null ? "(unpackaged build)" : version;
        }
    }
}

package deferent.app;

import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.PhraseError;
import deferent.motion.shared.Refused;
import deferent.record.DocumentError;
import deferent.record.Nearest;
import deferent.record.ShelfError;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;

/** The command line's front door. */
@Command(
        name = "deferent",
        version = "deferent 0.1.0",
        mixinStandardHelpOptions = true,
        description = {
            "Say a pairing of two poi, see it move, and know whether it links.",
            "",
            "  deferent read isolation vs four-petal antispin",
            "  deferent studio"
        },
        descriptionHeading = "%n",
        optionListHeading = "%nOptions:%n",
        commandListHeading = "%nCommands:%n",
        subcommands = {
            ReadCommand.class,
            FitCommand.class,
            ClearCommand.class,
            SeekCommand.class,
            TransitionsCommand.class,
            RouteCommand.class,
            SetCommand.class,
            LearnCommand.class,
            WordsCommand.class,
            DrawCommand.class,
            LessonCommand.class,
            PhotoCommand.class,
            FilmCommand.class,
            PracticeCommand.class,
            SongCommand.class,
            LetGoCommand.class,
            ShelfCommand.class,
            StudioCommand.class
        })
public final class Deferent implements Runnable {
    /** Bad input: a phrase, document, option or name that cannot be. */
    static final int BAD_INPUT = 2;

    /** What was asked for could not be made. */
    static final int NOT_MADE = 1;

    @Spec private CommandSpec spec;

    @Option(
            names = "--trace",
            scope = ScopeType.INHERIT,
            description = "Show where in the program an unforeseen error came from.")
    private boolean trace;

    private Deferent() {}

    public static void main(String[] args) {
        PrintWriter out = new PrintWriter(System.out, false, StandardCharsets.UTF_8);
        PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
        int code = execute(out, err, args);
        out.flush();
        err.flush();
        System.exit(code);
    }

    /** Runs one command line; its exit code. */
    static int execute(PrintWriter out, PrintWriter err, String... args) {
        CommandLine line = line();
        Deferent front = line.getCommand();
        line.setOut(out);
        line.setErr(err);
        line.setUsageHelpWidth(Paragraphs.width());
        line.setCaseInsensitiveEnumValuesAllowed(true);
        line.setUnmatchedOptionsArePositionalParams(false);
        line.setAbbreviatedOptionsAllowed(false);
        line.setParameterExceptionHandler((wrong, given) -> misused(wrong));
        line.setExecutionExceptionHandler(
                (thrown, where, parsed) -> {
                    // Answers so far come before the error.
                    where.getOut().flush();
                    Throwable told =
                            thrown instanceof Refusal refusal ? typed(refusal, parsed) : thrown;
                    return failed(told, where.getErr(), front.trace);
                });
        try {
            return line.execute(args);
        } catch (StackOverflowError | OutOfMemoryError beyond) {
            return failed(beyond, err, front.trace);
        }
    }

    /** The command line with all its commands and their options, not yet asked anything. */
    public static CommandLine line() {
        CommandLine line = new CommandLine(new Deferent());
        Optional.ofNullable(line.getSubcommands().get("draw"))
                .map(CommandLine::getCommandSpec)
                .ifPresent(DrawCommand::offer);
        Optional.ofNullable(line.getSubcommands().get("film"))
                .map(CommandLine::getCommandSpec)
                .ifPresent(FilmCommand::offer);
        Optional.ofNullable(line.getSubcommands().get("set"))
                .map(CommandLine::getCommandSpec)
                .ifPresent(SetCommand::offer);
        Optional.ofNullable(line.getSubcommands().get("transitions"))
                .map(CommandLine::getCommandSpec)
                .ifPresent(TransitionsCommand::offer);
        return line;
    }

    /** A refusal of an option's number in the unit that was typed there. */
    private static Refusal typed(Refusal refusal, ParseResult front) {
        for (ParseResult at = front; at != null; at = at.subcommand()) {
            for (OptionSpec option : at.matchedOptions()) {
                if (option.getValue() instanceof Double number
                        && refusal.range().filter(r -> r.value() == number).isPresent()) {
                    return Quantity.typed(refusal, option.originalStringValues().get(0));
                }
            }
        }
        return refusal;
    }

    @Override
    public void run() {
        spec.commandLine().usage(spec.commandLine().getOut());
    }

    private static int misused(ParameterException wrong) {
        PrintWriter err = wrong.getCommandLine().getErr();
        err.println("deferent: " + wrong.getMessage());
        List<String> near = commandsLike(wrong);
        if (!near.isEmpty()) {
            err.println("Did you mean: deferent " + String.join(" or ", near) + "?");
        } else if (!CommandLine.UnmatchedArgumentException.printSuggestions(wrong, err)) {
            err.println(
                    "See: " + wrong.getCommandLine().getCommandSpec().qualifiedName() + " --help");
        }
        return BAD_INPUT;
    }

    /** Commands spelt nearly as what was given in a command's place. */
    private static List<String> commandsLike(ParameterException wrong) {
        boolean command =
                wrong instanceof CommandLine.UnmatchedArgumentException unmatched
                        && !unmatched.isUnknownOption();
        CommandLine front = wrong.getCommandLine();
        return command && front.getParent() == null
                ? Nearest.to(
                        ((CommandLine.UnmatchedArgumentException) wrong).getUnmatched().get(0),
                        List.copyOf(front.getSubcommands().keySet()))
                : List.of();
    }

    static int failed(Throwable thrown, PrintWriter err, boolean trace) {
        if (trace) {
            thrown.printStackTrace(err);
        }
        if (thrown instanceof PhraseError wrong) {
            err.println(wrong.underlined());
            err.println("deferent: " + wrong.what());
            if (wrong.offers().stream().noneMatch(wrong.expected()::contains)) {
                err.println("Expected: " + wrong.expected() + ".");
            }
            if (!wrong.nearest().isEmpty()) {
                err.println("Nearest: " + String.join(", ", wrong.nearest()) + ".");
            }
            wrong.offers().forEach(phrase -> err.println("Try: " + phrase));
            return BAD_INPUT;
        }
        if (thrown instanceof Refused wrong) {
            if (wrong instanceof DocumentError document && !document.underlined().isEmpty()) {
                err.println(document.underlined());
            }
            err.println("deferent: " + wrong.getMessage());
            boolean machine =
                    wrong.getCause() instanceof IOException
                            || wrong instanceof ShelfError shelf
                                    && switch (shelf.kind()) {
                                        case MISSING, NAME, SIZE -> false;
                                        case CHANGED, FOLDER -> true;
                                    };
            return machine ? NOT_MADE : BAD_INPUT;
        }
        if (thrown instanceof NotMade cannot) {
            err.println("deferent: " + cannot.getMessage());
            return NOT_MADE;
        }
        String what = String.valueOf(thrown.getMessage()).lines().findFirst().orElse("no message");
        err.println(
                "deferent: this went wrong inside ("
                        + thrown.getClass().getSimpleName()
                        + ": "
                        + what
                        + "); --trace shows where");
        return NOT_MADE;
    }
}

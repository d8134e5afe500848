package deferent.app;

import deferent.motion.pairing.Refusal;
import deferent.record.Nearest;
import deferent.record.landing.Outlet;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
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
        mixinStandardHelpOptions = true,
        description = {
            "Say a pairing of two poi, see it move, and know whether it links.",
            "",
            "  deferent read isolation vs four-petal antispin",
            "  deferent studio"
        },
        descriptionHeading = "%n",
        optionListHeading = "%nOptions:%n",
        commandListHeading = "%nCommands:%n")
public final class Deferent implements Runnable {
    private static final String VERSION = "deferent 0.1.0";

    private static final List<Class<?>> COMMANDS =
            List.of(
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
                    StudioCommand.class,
                    SchemaCommand.class,
                    HelpCommand.class);

    @Spec private CommandSpec spec;

    @Option(
            names = "--quiet",
            scope = ScopeType.INHERIT,
            description =
                    "Leave out progress and remarks, never the answer, an error or a caution.")
    private boolean quiet;

    @Option(
            names = "--json",
            scope = ScopeType.INHERIT,
            description = "Answer in JSON, for other programs.")
    private boolean json;

    @Option(
            names = "--trace",
            scope = ScopeType.INHERIT,
            description = "Show where in the program an unforeseen error came from.")
    private boolean trace;

    private final InputStream in;
    private final Outlet bytes;

    private Deferent(InputStream in, Outlet bytes) {
        this.in = in;
        this.bytes = bytes;
    }

    public static void main(String[] args) {
        System.exit(execute(System.in, Outlet.standard(), System.err, args));
    }

    /**
     * Runs one command line; its exit code.
     *
     * @param in standard input
     * @param out standard output
     * @param err standard error
     */
    static int execute(InputStream in, OutputStream out, OutputStream err, String... args) {
        Outlet outlet = out instanceof Outlet already ? already : new Outlet(out);
        PrintWriter text = new PrintWriter(outlet, false, StandardCharsets.UTF_8);
        PrintWriter beside = new PrintWriter(err, true, StandardCharsets.UTF_8);
        Deferent front = new Deferent(in, outlet);
        int code = front.execute(text, beside, args);
        text.flush();
        if (outlet.closed()) {
            return Exit.CLOSED.code();
        }
        if (outlet.failure().isPresent() && code != Exit.FAILED.code()) {
            code =
                    front.told(
                            new NotMade(
                                    "the answer cannot be written: "
                                            + outlet.failure().get().getMessage(),
                                    "make room, or send it elsewhere"),
                            beside,
                            front.json(args));
        }
        beside.flush();
        return code;
    }

    private int execute(PrintWriter out, PrintWriter err, String... args) {
        CommandLine line = line(this, asked(args));
        line.setOut(out);
        line.setErr(err);
        line.setUsageHelpWidth(Paragraphs.width());
        line.registerConverter(Integer.class, new Quantity.Whole());
        line.registerConverter(int.class, new Quantity.Whole());
        line.setCaseInsensitiveEnumValuesAllowed(true);
        line.setUnmatchedOptionsArePositionalParams(false);
        line.setAbbreviatedOptionsAllowed(false);
        line.setParameterExceptionHandler(
                (wrong, given) -> {
                    Complaint trouble = Complaint.of(wrong, commandsLike(wrong));
                    trouble.tell(err, json(args));
                    return trouble.exit().code();
                });
        line.setExecutionExceptionHandler(
                (thrown, where, parsed) -> {
                    // Answers so far come before the error.
                    out.flush();
                    return told(
                            thrown instanceof Refusal refusal ? typed(refusal, parsed) : thrown,
                            err,
                            json);
                });
        try {
            return line.execute(args);
        } catch (StackOverflowError | OutOfMemoryError beyond) {
            return told(beyond, err, json);
        }
    }

    /** Whether JSON was asked for, though the command line could not be read. */
    private boolean json(String... args) {
        return json || List.of(args).contains("--json");
    }

    private int told(Throwable thrown, PrintWriter err, boolean asJson) {
        return failed(thrown, err, trace, asJson);
    }

    static int failed(Throwable thrown, PrintWriter err, boolean trace, boolean json) {
        if (trace) {
            thrown.printStackTrace(err);
        }
        Complaint trouble = Complaint.of(thrown);
        trouble.tell(err, json);
        return trouble.exit().code();
    }

    Manners manner(CommandSpec command) {
        return new Manners(json, quiet, in, bytes, command);
    }

    /** The command line with all its commands and their options, not yet asked anything. */
    public static CommandLine line() {
        return line(
                new Deferent(
                        InputStream.nullInputStream(), new Outlet(OutputStream.nullOutputStream())),
                COMMANDS);
    }

    /**
     * The command that a command line is for, alone, since looking through the options of all takes
     * longer than many an answer; all where that is none of them, or tells of the others.
     */
    private static List<Class<?>> asked(String... args) {
        String first = Stream.of(args).filter(word -> !word.startsWith("-")).findFirst().orElse("");
        return COMMANDS.stream()
                .filter(command -> command != HelpCommand.class)
                .filter(command -> named(command).equals(first))
                .findFirst()
                .<List<Class<?>>>map(List::of)
                .orElse(COMMANDS);
    }

    private static String named(Class<?> command) {
        return command.getAnnotation(Command.class).name();
    }

    private static CommandLine line(Deferent front, List<Class<?>> commands) {
        CommandLine line = new CommandLine(front);
        commands.forEach(line::addSubcommand);
        Map<String, Consumer<CommandSpec>> offers =
                Map.of(
                        "draw", DrawCommand::offer,
                        "film", FilmCommand::offer,
                        "set", SetCommand::offer,
                        "transitions", TransitionsCommand::offer);
        offers.forEach(
                (name, offer) ->
                        Optional.ofNullable(line.getSubcommands().get(name))
                                .map(CommandLine::getCommandSpec)
                                .ifPresent(offer));
        mannered(line);
        return line;
    }

    /** What every command says of itself: its version, its exit codes, its schema. */
    private static void mannered(CommandLine line) {
        CommandSpec spec = line.getCommandSpec();
        spec.version(VERSION);
        Map<String, String> codes = Exit.list();
        Optional<CommandAnswer> answering = CommandAnswer.of(spec);
        answering
                .map(CommandAnswer::none)
                .filter(none -> !none.isEmpty())
                .ifPresent(
                        none ->
                                codes.put(
                                        Exit.NOT_FOUND.listed(),
                                        Exit.NOT_FOUND.words()
                                                + ": "
                                                + none
                                                + "; or nothing is there under a name."));
        spec.usageMessage().exitCodeListHeading("%nExit codes:%n").exitCodeList(codes);
        answering
                .map(CommandAnswer::schema)
                .ifPresent(
                        schema ->
                                spec.usageMessage()
                                        .footerHeading("%n")
                                        .footer(
                                                "The schema of its JSON: deferent schema "
                                                        + schema.key()));
        OptionGroup.head(spec);
        line.getSubcommands().values().forEach(Deferent::mannered);
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
        front(spec);
    }

    /** What a command answers that has only commands within it: its help. */
    static void front(CommandSpec spec) {
        Manners manner = Manners.of(spec);
        if (manner.json()) {
            manner.out().print(HelpJson.write(spec));
        } else {
            spec.commandLine().usage(manner.out());
        }
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
}

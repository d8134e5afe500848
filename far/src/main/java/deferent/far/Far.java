package deferent.far;

import deferent.motion.pairing.Refusal;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The {@code deferent-far} command: a seek over more than one machine. */
@Command(
        name = "deferent-far",
        description = "Seeks links among more motions than one machine can hold, on Apache Spark.",
        mixinStandardHelpOptions = true,
        version = "deferent-far 0.1.0",
        subcommands = {SeekFar.class, SameFar.class})
public final class Far implements Runnable {
    @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

    public static void main(String[] args) {
        System.exit(command().execute(args));
    }

    static CommandLine command() {
        CommandLine command = new CommandLine(new Far());
        command.setExecutionExceptionHandler(
                (wrong, line, parsed) -> {
                    Throwable cause = wrong;
                    while (cause.getCause() != null && !(cause instanceof Refusal)) {
                        cause = cause.getCause();
                    }
                    line.getErr().println("deferent-far: " + cause.getMessage());
                    line.getErr().flush();
                    return cause instanceof Refusal ? 2 : 1;
                });
        return command;
    }

    @Override
    public void run() {
        spec.commandLine().usage(spec.commandLine().getOut());
    }
}

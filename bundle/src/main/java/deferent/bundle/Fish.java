package deferent.bundle;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/**
 * Completions for fish, a line for each command and option. Our own because the command line's
 * library writes those of bash and zsh alone.
 */
final class Fish {
    private Fish() {}

    static String completions(CommandLine line) {
        List<String> lines = new ArrayList<>();
        lines.add("complete -c deferent -f -n __fish_use_subcommand");
        commands(line, "__fish_use_subcommand", lines);
        line.getSubcommands()
                .forEach(
                        (name, command) -> {
                            if (!command.getCommandSpec().usageMessage().hidden()) {
                                under(name, command, lines);
                            }
                        });
        return String.join("\n", lines) + "\n";
    }

    private static void commands(CommandLine line, String when, List<String> lines) {
        Set<CommandSpec> told = new LinkedHashSet<>();
        line.getSubcommands()
                .forEach(
                        (name, command) -> {
                            CommandSpec spec = command.getCommandSpec();
                            if (!spec.usageMessage().hidden() && told.add(spec)) {
                                lines.add(
                                        "complete -c deferent -n "
                                                + quoted(when)
                                                + " -f -a "
                                                + name
                                                + " -d "
                                                + first(spec.usageMessage().description()));
                            }
                        });
    }

    private static void under(String name, CommandLine command, List<String> lines) {
        String when = "__fish_seen_subcommand_from " + name;
        commands(command, when, lines);
        options(command, when, lines);
        command.getSubcommands()
                .forEach(
                        (inner, below) ->
                                options(
                                        below,
                                        when + "; and __fish_seen_subcommand_from " + inner,
                                        lines));
    }

    private static void options(CommandLine command, String when, List<String> lines) {
        for (OptionSpec option : command.getCommandSpec().options()) {
            if (option.hidden()) {
                continue;
            }
            StringBuilder said = new StringBuilder("complete -c deferent -n " + quoted(when));
            for (String spelt : option.names()) {
                said.append(
                        spelt.startsWith("--")
                                ? " -l " + spelt.substring(2)
                                : " -s " + spelt.substring(1));
            }
            if (option.arity().max() > 0) {
                said.append(" -r");
            }
            if (option.completionCandidates() != null) {
                List<String> words = new ArrayList<>();
                option.completionCandidates().forEach(words::add);
                said.append(" -f -a ").append(quoted(String.join(" ", words)));
            }
            lines.add(said + " -d " + first(option.description()));
        }
    }

    private static String first(String[] description) {
        String text = description.length == 0 ? "" : description[0];
        return quoted(CommandLine.Help.Ansi.OFF.string(text).replaceAll("\\s+", " ").strip());
    }

    private static String quoted(String text) {
        return "'" + text.replace("\\", "\\\\").replace("'", "\\'") + "'";
    }
}

package deferent.app;

import deferent.motion.pairing.Refusal;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
        name = "help",
        mixinStandardHelpOptions = true,
        description = {
            "Prints the help of a command, or of all of them.",
            "  deferent help fit",
            "  deferent help shelf list"
        })
final class HelpCommand implements Callable<Integer> {
    @Spec private CommandSpec spec;

    @Parameters(
            arity = "0..*",
            paramLabel = "COMMAND",
            description = "Which, in its words; unsaid, the front page.")
    private List<String> words = List.of();

    @Override
    public Integer call() {
        CommandLine at = spec.root().commandLine();
        for (String word : words) {
            CommandLine next = at.getSubcommands().get(word);
            if (next == null) {
                List<String> near = NotFound.near(word, at.getSubcommands().keySet());
                throw new Refusal(
                        "is no command of " + at.getCommandSpec().qualifiedName(),
                        "\"" + word + "\"",
                        near.isEmpty()
                                ? "deferent help lists them"
                                : "did you mean " + String.join(" or ", near) + "?");
            }
            at = next;
        }
        Manners manner = Manners.of(spec);
        if (manner.json()) {
            manner.out().print(HelpJson.write(at.getCommandSpec()));
        } else {
            at.usage(manner.out());
        }
        return Exit.FOUND.code();
    }
}

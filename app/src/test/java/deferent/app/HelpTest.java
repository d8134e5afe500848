package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;

class HelpTest {
    /** Every command and every command within one, by the words that call it. */
    static Stream<String> commands() {
        return lines().map(line -> line.getCommandSpec().qualifiedName());
    }

    static Stream<CommandLine> lines() {
        return within(Deferent.line());
    }

    private static Stream<CommandLine> within(CommandLine line) {
        return Stream.concat(
                Stream.of(line), line.getSubcommands().values().stream().flatMap(HelpTest::within));
    }

    @ParameterizedTest
    @MethodSource("commands")
    void theHelpOfEveryCommandIsAnAnswerWithoutAWarning(String words) {
        String[] asked = (words + " --help").replaceFirst("deferent ", "").split(" ");
        PrintStream before = System.err;
        ByteArrayOutputStream warned = new ByteArrayOutputStream();
        Desk.Answer answer;
        // What the command line's library has to warn of goes to the process's own error stream.
        System.setErr(new PrintStream(warned, true, StandardCharsets.UTF_8));
        try {
            answer = Desk.asked(asked);
        } finally {
            System.setErr(before);
        }
        assertThat(answer.code()).isZero();
        assertThat(answer.out()).contains("Usage: " + words).doesNotContain("%%");
        assertThat(answer.err()).isEmpty();
        assertThat(warned.toString(StandardCharsets.UTF_8)).isEmpty();
    }
}

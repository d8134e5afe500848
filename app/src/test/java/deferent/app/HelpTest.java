package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;

class HelpTest {
    /** Every command and every command within one, by the words that call it. */
    static Stream<String> commands() {
        return within(Deferent.line());
    }

    private static Stream<String> within(CommandLine line) {
        return Stream.concat(
                Stream.of(line.getCommandSpec().qualifiedName()),
                line.getSubcommands().values().stream().flatMap(HelpTest::within));
    }

    @ParameterizedTest
    @MethodSource("commands")
    void theHelpOfEveryCommandIsAnAnswerWithoutAWarning(String words) {
        String[] asked = (words + " --help").replaceFirst("deferent ", "").split(" ");
        PrintStream before = System.err;
        ByteArrayOutputStream warned = new ByteArrayOutputStream();
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code;
        // What the command line's library has to warn of goes to the process's own error stream.
        System.setErr(new PrintStream(warned, true, StandardCharsets.UTF_8));
        try {
            code = Deferent.execute(new PrintWriter(out, true), new PrintWriter(err, true), asked);
        } finally {
            System.setErr(before);
        }
        assertThat(code).isZero();
        assertThat(out.toString()).contains("Usage: " + words).doesNotContain("%%");
        assertThat(err.toString()).isEmpty();
        assertThat(warned.toString(StandardCharsets.UTF_8)).isEmpty();
    }
}

package deferent.app;

import deferent.motion.pairing.Refusal;
import deferent.record.landing.Scratch;
import java.io.FileInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/**
 * Files onto standard output, where no ending of a name says what they are: each is written whole
 * where nobody keeps it, then sent.
 */
final class AsOption implements AutoCloseable {
    @Option(
            names = "--as",
            paramLabel = "KIND",
            description =
                    "With - for a file's name, that is standard output: what kind of file, as an ending"
                            + " says it, such as svg.")
    private @Nullable String kind;

    @Spec(Spec.Target.MIXEE)
    private @Nullable CommandSpec command;

    private @Nullable Scratch scratch;

    private Manners manner() {
        return Manners.of(Objects.requireNonNull(command, "picocli sets it"));
    }

    /** Where a file is written that was said; standard output, a file that nobody keeps. */
    Path place(Path said, String option) {
        if (!said.toString().equals(Incoming.STANDARD)) {
            if (kind != null) {
                throw new Refusal(
                        "is said of a file that has a name",
                        "--as " + kind,
                        "let the name end in ." + kind + ", or give " + option + " -");
            }
            return said;
        }
        if (manner().json()) {
            throw new Refusal(
                    "are said together",
                    "--json and " + option + " -",
                    "give one of them: both would be standard output");
        }
        if (scratch != null) {
            throw new Refusal("is said twice", option + " -", "send one file at a time");
        }
        if (kind == null) {
            throw new Refusal(
                    "has no ending that says what it is",
                    option + " -",
                    "say it with --as, such as --as svg");
        }
        scratch = Scratch.open();
        manner().giveWayToAFile();
        return scratch.folder()
                .resolve("answer." + kind.toLowerCase(Locale.ROOT).replaceFirst("^[.]", ""));
    }

    List<Path> places(List<Path> said, String option) {
        return said.stream().map(file -> place(file, option)).toList();
    }

    /** Whether that is standard output. */
    boolean sends(Path file) {
        return scratch != null && file.startsWith(scratch.folder());
    }

    /** Sends a written file, where it was for standard output. */
    void send(Path file) {
        if (!sends(file)) {
            return;
        }
        try (InputStream written = new FileInputStream(file.toFile())) {
            written.transferTo(manner().bytes());
            manner().bytes().flush();
        } catch (IOException cannot) {
            // What comes of it is told once the program ends, as of every answer.
            if (manner().bytes().failure().isEmpty()) {
                throw new NotMade(
                        "what was written cannot be read again: " + cannot.getMessage(),
                        "ask once more");
            }
        }
    }

    @Override
    public void close() {
        if (scratch != null) {
            scratch.close();
        }
    }
}

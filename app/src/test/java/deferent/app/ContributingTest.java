package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What is told to who adds to the house is so. */
class ContributingTest {
    private static final Path HOUSE = Path.of("..");
    private static final Pattern CODE = Pattern.compile("```java\n(.*?)```", Pattern.DOTALL);
    private static final Pattern FILE = Pattern.compile("`([a-z]+/src/[\\w/.]+)`");

    private static String told() throws IOException {
        return Files.readString(HOUSE.resolve("CONTRIBUTING.md"));
    }

    private static String plain(String code) {
        return code.replaceAll("\\s+", " ").strip();
    }

    @Test
    void everyFileIsThere() throws IOException {
        List<String> files = FILE.matcher(told()).results().map(m -> m.group(1)).toList();
        assertThat(files).hasSizeGreaterThan(3);
        for (String file : files) {
            assertThat(HOUSE.resolve(file)).exists();
        }
    }

    /** In the file that was named last before it, or next after it. */
    @Test
    void everyPieceOfCodeStandsWhereItIsSaidTo() throws IOException {
        String told = told();
        List<MatchResult> pieces = CODE.matcher(told).results().toList();
        assertThat(pieces).hasSizeGreaterThan(3);
        for (MatchResult piece : pieces) {
            List<String> before = files(told.substring(0, piece.start()));
            List<String> after = files(told.substring(piece.end()));
            assertThat(
                            List.of(
                                            before.get(before.size() - 1),
                                            after.isEmpty() ? "" : after.get(0))
                                    .stream()
                                    .anyMatch(file -> holds(file, piece.group(1))))
                    .as(piece.group(1))
                    .isTrue();
        }
    }

    private static List<String> files(String text) {
        return FILE.matcher(text).results().map(m -> m.group(1)).toList();
    }

    private static boolean holds(String file, String code) {
        Path path = HOUSE.resolve(file);
        try {
            return Files.isRegularFile(path) && plain(Files.readString(path)).contains(plain(code));
        } catch (IOException gone) {
            return false;
        }
    }
}

package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Whoever is given the program learns whose work is in it, and under which licence. */
class NoticeTest {
    /** A row of the list: a group, what it holds, a licence. */
    private static final Pattern ROW =
            Pattern.compile("^  ([a-z][\\w.-]*): .+, .+$", Pattern.MULTILINE);

    /** Groups whose jars are here for tests alone. */
    private static final Set<String> TESTS =
            Set.of(
                    "io.github.deferent",
                    "com.ethlo.time",
                    "com.fasterxml.jackson.core",
                    "com.networknt",
                    "com.tngtech.archunit",
                    "net.bytebuddy",
                    "org.apiguardian",
                    "org.assertj",
                    "org.junit",
                    "org.opentest4j",
                    "org.snakeyaml",
                    "tools.jackson.dataformat");

    private static final String KNOWN = "/org/jspecify/jspecify/";

    private static Set<String> told() throws IOException {
        return ROW.matcher(Files.readString(Path.of("../NOTICE")))
                .results()
                .map(row -> row.group(1))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** Groups of the jars that the tests run with: in a repository a group is a folder. */
    private static Set<String> groups() {
        String paths =
                System.getProperty(
                        "surefire.test.class.path", System.getProperty("java.class.path"));
        List<String> jars =
                Stream.of(paths.split(File.pathSeparator))
                        .map(path -> path.replace(File.separatorChar, '/'))
                        .filter(path -> path.endsWith(".jar"))
                        .toList();
        String repository =
                jars.stream()
                        .filter(path -> path.contains(KNOWN))
                        .map(path -> path.substring(0, path.indexOf(KNOWN) + 1))
                        .findFirst()
                        .orElseThrow();
        return jars.stream()
                .filter(path -> path.startsWith(repository))
                .map(path -> group(path.substring(repository.length())))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    // group/of/it/artifact/version/jar
    private static String group(String path) {
        List<String> folders = List.of(path.split("/"));
        return String.join(".", folders.subList(0, folders.size() - 3));
    }

    private static boolean within(String group, Set<String> groups) {
        return groups.stream().anyMatch(g -> group.equals(g) || group.startsWith(g + "."));
    }

    @Test
    void everyLibraryThatRunsIsNamed() throws IOException {
        Set<String> told = told();
        assertThat(groups())
                .hasSizeGreaterThan(20)
                .allSatisfy(
                        group ->
                                assertThat(within(group, told) || within(group, TESTS))
                                        .as(group)
                                        .isTrue());
    }

    @Test
    void andNoneThatDoesNot() throws IOException {
        Set<String> groups = groups();
        assertThat(told())
                .allSatisfy(
                        told ->
                                assertThat(groups.stream().anyMatch(g -> within(g, Set.of(told))))
                                        .as(told)
                                        .isTrue());
    }
}

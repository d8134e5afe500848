package deferent.bundle;

import deferent.app.Deferent;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.asciidoctor.Asciidoctor;
import org.asciidoctor.Options;
import org.asciidoctor.SafeMode;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.codegen.docgen.manpage.ManPageGenerator;

/**
 * A page of the manual for each command, and completions for three shells, all from the command
 * line's own description of itself.
 */
final class Manual {
    private Manual() {}

    /**
     * @param share as the folder of that name under a prefix: man/man1, and each shell's own
     */
    static void written(Path share, Path work) throws IOException {
        CommandLine line = Deferent.line();
        pages(line, Packed.anew(work.resolve("manual")), share.resolve("man/man1"));
        String bash = AutoComplete.bash("deferent", line);
        put(share.resolve("bash-completion/completions/deferent"), bash);
        // The same reads in zsh, which then has to be told that it speaks like bash.
        put(
                share.resolve("zsh/site-functions/_deferent"),
                "#compdef deferent\nautoload -U +X bashcompinit && bashcompinit\n" + bash);
        put(share.resolve("fish/vendor_completions.d/deferent.fish"), Fish.completions(line));
    }

    private static void pages(CommandLine line, Path sources, Path to) throws IOException {
        int ended =
                ManPageGenerator.generateManPage(
                        sources.toFile(), null, new boolean[0], true, line.getCommandSpec());
        if (ended != 0) {
            throw new IllegalStateException("man pages: " + ended);
        }
        Files.createDirectories(to);
        List<Path> pages;
        try (Stream<Path> all = Files.list(sources)) {
            pages = all.filter(page -> Jars.name(page).endsWith(".adoc")).sorted().toList();
        }
        try (Asciidoctor asciidoctor = Asciidoctor.Factory.create()) {
            for (Path page : pages) {
                asciidoctor.convertFile(
                        page.toFile(),
                        Options.builder()
                                .backend("manpage")
                                .safe(SafeMode.UNSAFE)
                                .mkDirs(true)
                                .toDir(to.toFile())
                                .build());
            }
        }
    }

    private static void put(Path file, String text) throws IOException {
        Files.createDirectories(file.resolveSibling(""));
        Files.writeString(file, text);
    }
}

package deferent.app;

import deferent.motion.pairing.Refusal;
import deferent.record.landing.Scratch;
import deferent.studio.Opening;
import deferent.studio.Studio;
import deferent.studio.StudioOptions;
import java.io.IOException;
import java.io.PrintWriter;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.logging.Logger;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

@Command(
        name = "studio",
        mixinStandardHelpOptions = true,
        description = "Opens the studio: a page on this computer alone, until you press Ctrl-C.")
final class StudioCommand implements Callable<Integer> {
    /** Seconds. */
    private static final long LONGEST_CLOSING = 15;

    /** How often the terminal is looked at. */
    private static final long EVERY_MILLIS = 200;

    @Spec private CommandSpec spec;

    @Mixin private ShelfOption shelf;

    @Option(
            names = "--port",
            paramLabel = "PORT",
            defaultValue = "0",
            description = "On the loopback address; unsaid or 0, any that is free.")
    private int port;

    @Option(
            names = "--answers",
            paramLabel = "FOLDER",
            description = "Answers that deferent-far found, to leaf through in the seek's drawer.")
    private @Nullable Path answers;

    @Option(
            names = "--no-open",
            description = "Open no browser; print the address and the file that opens it.")
    private boolean noOpen;

    @Override
    public Integer call() throws InterruptedException {
        PrintWriter out = spec.commandLine().getOut();
        shelf.shelf();
        Scratch.sweep().ifPresent(shelf::tell);
        StudioOptions plain = StudioOptions.of(shelf.path()).withPort(port);
        StudioOptions options = answers == null ? plain : plain.withAnswers(answers);
        CountDownLatch closing = new CountDownLatch(1);
        CountDownLatch closed = new CountDownLatch(1);
        try (Studio studio = started(options)) {
            Runtime.getRuntime().addShutdownHook(new Thread(() -> close(closing, closed)));
            if (Manners.of(spec).json()) {
                out.println(tree(studio.address(), shelf.path(), studio.opening().file()));
                out.flush();
            } else {
                out.println("The studio runs at " + studio.address());
                out.flush();
                out.println(
                        "Shelf: "
                                + shelf.path()
                                + ". Press Enter to open another page, Ctrl-C to close.");
                open(studio, out);
            }
            while (!closing.await(EVERY_MILLIS, TimeUnit.MILLISECONDS)) {
                if (enterPressed()) {
                    open(studio, out);
                }
            }
        } finally {
            closed.countDown();
        }
        return Exit.FOUND.code();
    }

    // The program ends with its last hook, so this one waits until all is put away.
    private static void close(CountDownLatch closing, CountDownLatch closed) {
        closing.countDown();
        try {
            if (!closed.await(LONGEST_CLOSING, TimeUnit.SECONDS)) {
                Logger.getLogger(StudioCommand.class.getName())
                        .warning("the studio did not close in time");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private Studio started(StudioOptions options) {
        try {
            return Studio.start(options);
        } catch (Refusal refused) {
            throw refused;
        } catch (RuntimeException cannot) {
            if (options.port() == 0) {
                throw cannot;
            }
            throw new NotMade(
                    "the studio cannot be opened on port "
                            + options.port()
                            + ", which may be in use",
                    "give another --port, or none for any that is free");
        }
    }

    /** On one line, since the answer goes on for as long as the studio is open. */
    static ObjectNode tree(URI address, Path shelf, Path opening) {
        return JsonNodeFactory.instance
                .objectNode()
                .put("address", address.toString())
                .put("shelf", shelf.toString())
                .put("file", opening.toString());
    }

    /** Opens a page, or says how to. */
    private void open(Studio studio, PrintWriter out) {
        Opening opening = studio.opening();
        if (noOpen || !opened(opening.file())) {
            out.println(
                    "To open it, open this file in a browser of yours on this computer, within a"
                            + " minute: "
                            + opening.file());
        }
        out.flush();
    }

    // Looked for rather than waited for: a program in the background that reads from its terminal
    // is halted by the system.
    private static boolean enterPressed() {
        try {
            boolean pressed = false;
            while (System.in.available() > 0 && ours()) {
                pressed |= System.in.read() == '\n';
            }
            return pressed;
        } catch (IOException none) {
            return false;
        }
    }

    /**
     * Whether what is typed is for this program, as far as the system tells (see proc(5), stat).
     */
    private static boolean ours() throws IOException {
        Path stat = Path.of("/proc/self/stat");
        if (!Files.isReadable(stat)) {
            return true;
        }
        String told = Files.readString(stat);
        String[] fields = told.substring(told.lastIndexOf(')') + 2).split(" ");
        String group = fields[2];
        String terminals = fields[5];
        return terminals.equals(group) || terminals.equals("-1");
    }

    /**
     * Whether the system's own opener took the file. It gets the file rather than the address: the
     * key in that would stand on a command line, which every user of the machine can read.
     */
    private static boolean opened(Path file) {
        String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
        List<String> opener =
                system.contains("mac")
                        ? List.of("open", file.toString())
                        : system.contains("win")
                                ? List.of(
                                        "rundll32", "url.dll,FileProtocolHandler", file.toString())
                                : List.of("xdg-open", file.toString());
        boolean screen =
                system.contains("mac")
                        || system.contains("win")
                        || System.getenv("DISPLAY") != null
                        || System.getenv("WAYLAND_DISPLAY") != null;
        if (!screen) {
            return false;
        }
        try {
            new ProcessBuilder(opener)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return true;
        } catch (IOException none) {
            return false;
        }
    }
}

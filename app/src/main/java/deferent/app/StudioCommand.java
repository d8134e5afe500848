package deferent.app;

import deferent.record.landing.Scratch;
import deferent.studio.Studio;
import deferent.studio.StudioOptions;
import java.io.IOException;
import java.io.PrintWriter;
import java.net.URI;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.logging.Logger;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

@Command(
        name = "studio",
        mixinStandardHelpOptions = true,
        description = "Opens the studio: a page on this computer alone, until you press Ctrl-C.")
final class StudioCommand implements Callable<Integer> {
    /** Seconds. */
    private static final long LONGEST_CLOSING = 15;

    @Spec private CommandSpec spec;

    @Mixin private ShelfOption shelf;

    @Option(
            names = "--port",
            paramLabel = "PORT",
            defaultValue = "0",
            description = "On the loopback address; unsaid or 0, any that is free.")
    private int port;

    @Option(names = "--no-open", description = "Print the address only, open no browser.")
    private boolean noOpen;

    @Override
    public Integer call() throws InterruptedException {
        PrintWriter out = spec.commandLine().getOut();
        shelf.shelf();
        Scratch.sweep().ifPresent(shelf::tell);
        StudioOptions options = StudioOptions.of(shelf.path()).withPort(port);
        CountDownLatch closing = new CountDownLatch(1);
        CountDownLatch closed = new CountDownLatch(1);
        try (Studio studio = started(options)) {
            out.println("The studio is open at " + studio.address());
            out.println("Shelf: " + shelf.path() + ". Press Ctrl-C to close.");
            out.flush();
            if (!noOpen && !opened(studio.address())) {
                out.println("Open that address in a browser on this computer.");
                out.flush();
            }
            Runtime.getRuntime().addShutdownHook(new Thread(() -> close(closing, closed)));
            closing.await();
        } finally {
            closed.countDown();
        }
        return 0;
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

    /** Whether the system's own opener took the address. */
    private static boolean opened(URI address) {
        String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
        List<String> opener =
                system.contains("mac")
                        ? List.of("open", address.toString())
                        : system.contains("win")
                                ? List.of(
                                        "rundll32",
                                        "url.dll,FileProtocolHandler",
                                        address.toString())
                                : List.of("xdg-open", address.toString());
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

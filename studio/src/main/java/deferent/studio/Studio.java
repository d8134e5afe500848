package deferent.studio;

import deferent.motion.pairing.Refusal;
import deferent.page.Palette;
import deferent.record.Shelf;
import io.javalin.Javalin;
import io.javalin.compression.CompressionStrategy;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import jakarta.servlet.DispatcherType;
import java.net.BindException;
import java.net.URI;
import java.time.Duration;
import java.util.EnumSet;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.eclipse.jetty.ee10.servlet.FilterHolder;
import org.eclipse.jetty.ee10.servlet.ServletContextHandler;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.eclipse.jetty.websocket.core.server.WebSocketServerComponents;

/**
 * The studio, open: a web server on the loopback address and nowhere else. Close it to stop
 * serving; nothing is left running.
 */
public final class Studio implements AutoCloseable {
    private static final String LOOPBACK = "127.0.0.1";
    // Held, since the logging system forgets levels set on loggers nobody holds.
    private static final Logger JETTY = Logger.getLogger("org.eclipse.jetty");
    private static final Logger JAVALIN = Logger.getLogger("io.javalin");

    private final Javalin server;
    private final ExecutorService workers;
    private final Errands errands;
    private final TakeDesk takes;

    private Studio(Javalin server, ExecutorService workers, Errands errands, TakeDesk takes) {
        this.server = server;
        this.workers = workers;
        this.errands = errands;
        this.takes = takes;
    }

    /** Opens a studio and returns once it answers; refuses a port that is taken. */
    public static Studio start(StudioOptions options) {
        // Its warnings repeat what strangers sent; what fails in here is logged here.
        JETTY.setLevel(Level.SEVERE);
        JAVALIN.setLevel(Level.OFF);
        Shelf shelf = Shelf.at(options.shelf());
        Wordbook words = new Wordbook(shelf);
        TakeDesk takes = new TakeDesk(words, shelf);
        Desk desk = new Desk(words, shelf, takes);
        ExecutorService workers =
                Executors.newFixedThreadPool(
                        2,
                        work -> {
                            Thread thread = new Thread(work, "studio-worker");
                            thread.setDaemon(true);
                            return thread;
                        });
        Errands errands = new Errands();
        Live live = new Live(desk, workers, errands);
        ShelfDesk shelfDesk = new ShelfDesk(shelf, words);
        Assets assets = new Assets(options.page());
        Javalin server =
                Javalin.create(
                        config -> {
                            plain(config);
                            // The shelf first: routes also answers for any other file.
                            shelfDesk.configure(config.routes);
                            takes.configure(config.routes);
                            routes(config, desk, assets);
                            config.routes.ws("/api/live", live::configure);
                        });
        try {
            server.start(LOOPBACK, options.port());
        } catch (RuntimeException e) {
            workers.shutdownNow();
            takes.close();
            throw taken(e)
                    ? new Refusal(
                            "is taken by another program",
                            "port " + options.port(),
                            "close that one, or give another port, or 0 for any that is free")
                    : e;
        }
        return new Studio(server, workers, errands, takes);
    }

    private static boolean taken(Throwable e) {
        for (Throwable cause = e; cause != null; cause = cause.getCause()) {
            if (cause instanceof BindException) {
                return true;
            }
        }
        return false;
    }

    private static void plain(JavalinConfig config) {
        config.startup.showJavalinBanner = false;
        config.startup.showOldJavalinVersionWarning = false;
        config.startup.startupWatcherEnabled = false;
        config.http.compressionStrategy = CompressionStrategy.NONE;
        config.http.maxRequestSize = Bodies.MOST;
        QueuedThreadPool threads = new QueuedThreadPool(24, 4);
        threads.setName("studio");
        threads.setDaemon(true);
        config.jetty.threadPool = threads;
        config.jetty.modifyHttpConfiguration(
                http -> {
                    http.setSendServerVersion(false);
                    http.setRequestHeaderSize(8 * 1024);
                });
        config.jetty.modifyServletContextHandler(Studio::guarded);
        config.jetty.modifyWebSocketServletFactory(
                sockets -> {
                    sockets.setMaxTextMessageSize(Bodies.MOST);
                    sockets.setMaxBinaryMessageSize(1024);
                    sockets.setIdleTimeout(Duration.ofHours(12));
                });
    }

    private static void guarded(ServletContextHandler handler) {
        handler.addFilter(new FilterHolder(new Gate()), "/*", EnumSet.of(DispatcherType.REQUEST));
        // Packing what never leaves the machine only costs time.
        handler.addEventListener(
                new jakarta.servlet.ServletContextListener() {
                    @Override
                    public void contextInitialized(jakarta.servlet.ServletContextEvent event) {
                        WebSocketServerComponents.ensureWebSocketComponents(
                                        handler.getServer(), handler)
                                .getExtensionRegistry()
                                .unregister("permessage-deflate");
                    }
                });
    }

    private static void routes(JavalinConfig config, Desk desk, Assets assets) {
        config.routes.get("/", context -> file(context, assets.page("index.html")));
        config.routes.get(
                "/palette.css",
                context -> {
                    context.contentType("text/css;charset=utf-8");
                    context.result(Palette.css());
                });
        config.routes.get(
                "/api/palette",
                context -> ShelfDesk.json(context, Desk.JSON.valueToTree(Palette.plain())));
        config.routes.post(
                "/api/ask",
                context ->
                        ShelfDesk.json(context, desk.answer(Desk.question(Bodies.text(context)))));
        config.routes.get(
                "/vendor/{name}/<path>",
                context ->
                        file(
                                context,
                                assets.vendor(
                                        context.pathParam("name"), context.pathParam("path"))));
        config.routes.get(
                "/<path>", context -> file(context, assets.page(context.pathParam("path"))));
        config.routes.exception(
                Exception.class,
                (e, context) -> {
                    Trouble trouble = Trouble.of(e);
                    context.status(trouble.status());
                    ShelfDesk.json(context, trouble.body());
                });
        config.routes.error(
                404,
                context -> {
                    if (context.result() == null
                            || context.result().isEmpty()
                            || !String.valueOf(context.res().getContentType())
                                    .startsWith("application/json")) {
                        ShelfDesk.json(
                                context,
                                Trouble.body(
                                        "is nothing the studio has",
                                        context.path(),
                                        "start from the studio's page"));
                    }
                });
    }

    private static void file(Context context, Optional<Assets.Asset> found) {
        if (found.isEmpty()) {
            throw new BadRequest(
                    404,
                    "is nothing the studio has",
                    context.path(),
                    "start from the studio's page at /");
        }
        Assets.Asset asset = found.get();
        context.header("ETag", asset.tag());
        context.header("Cache-Control", "no-cache");
        if (!asset.hashes().isEmpty()) {
            context.header(
                    "Content-Security-Policy",
                    Gate.policy(asset.hashes(), context.req().getLocalPort()));
        }
        if (asset.tag().equals(context.header("If-None-Match"))) {
            context.status(304);
            return;
        }
        context.contentType(asset.kind());
        context.result(asset.bytes());
    }

    /** Where patterns are taken away. */
    TakeDesk takes() {
        return takes;
    }

    public int port() {
        return server.port();
    }

    /** Where a browser finds it. */
    public URI address() {
        return URI.create("http://" + LOOPBACK + ":" + port() + "/");
    }

    /** Waits until the studio is closed. */
    public void join() throws InterruptedException {
        server.jettyServer().server().join();
    }

    /** Stops serving; answers under way are given up. */
    @Override
    public void close() {
        workers.shutdownNow();
        errands.close();
        server.stop();
        takes.close();
    }
}

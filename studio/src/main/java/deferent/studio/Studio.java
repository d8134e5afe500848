package deferent.studio;

import deferent.motion.pairing.Refusal;
import deferent.page.Palette;
import deferent.record.AnswerPages;
import deferent.record.Shelf;
import io.javalin.Javalin;
import io.javalin.compression.CompressionStrategy;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.MethodNotAllowedResponse;
import java.net.BindException;
import java.net.URI;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.eclipse.jetty.ee10.servlet.ServletContextHandler;
import org.eclipse.jetty.http.UriCompliance;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.LowResourceMonitor;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.handler.EagerContentHandler;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.eclipse.jetty.websocket.core.server.WebSocketServerComponents;
import tools.jackson.databind.node.ObjectNode;

/**
 * The studio, open: a web server on the loopback address and nowhere else. Close it to stop
 * serving; nothing is left running.
 */
public final class Studio implements AutoCloseable {
    private static final AskKey<String> OPENING = AskKey.text("key", "an opening key");
    private static final String LOOPBACK = "127.0.0.1";
    private static final String RETRY_SECONDS = "5";
    // Held, since the logging system forgets levels set on loggers nobody holds.
    private static final Logger JETTY = Logger.getLogger("org.eclipse.jetty");
    private static final Logger JAVALIN = Logger.getLogger("io.javalin");

    private final Javalin server;
    private final Lanes lanes;
    private final Errands errands;
    private final TakeDesk takes;
    private final FilmDesk films;
    private final SongDesk songs;
    private final KeyRing keys;
    private final OpeningFolder openings;
    private final ScheduledExecutorService clock;

    private Studio(
            Javalin server,
            Lanes lanes,
            Errands errands,
            TakeDesk takes,
            FilmDesk films,
            SongDesk songs,
            KeyRing keys,
            ScheduledExecutorService clock) {
        this.server = server;
        this.lanes = lanes;
        this.errands = errands;
        this.takes = takes;
        this.films = films;
        this.songs = songs;
        this.keys = keys;
        this.openings = new OpeningFolder();
        this.clock = clock;
    }

    /** All questions that a studio answers, as JSON Schema. */
    public static String protocol() {
        return Desk.JSON.writerWithDefaultPrettyPrinter().writeValueAsString(Ask.schema());
    }

    /** Opens a studio and returns once it answers; refuses a port that is taken. */
    public static Studio start(StudioOptions options) {
        // Its warnings repeat what strangers sent; what fails in here is logged here.
        JETTY.setLevel(Level.SEVERE);
        JAVALIN.setLevel(Level.OFF);
        Shelf shelf = Shelf.at(options.shelf());
        Wordbook words = new Wordbook(shelf);
        Lanes lanes = new Lanes();
        TakeDesk takes = new TakeDesk(words, shelf, lanes);
        FilmDesk films = new FilmDesk(words);
        SongDesk songs = new SongDesk(shelf);
        PracticeDesk practised = new PracticeDesk(shelf, films, words);
        LogDesk log = new LogDesk(shelf, words);
        Desk desk =
                new Desk(words, shelf, takes, films, songs, options.answers().map(AnswerPages::of));
        Errands errands = new Errands(lanes);
        Live live = new Live(desk, lanes, errands);
        ShelfDesk shelfDesk = new ShelfDesk(shelf, words);
        Assets assets = new Assets(options.page());
        KeyRing keys = new KeyRing(System::nanoTime);
        Crowd crowd = new Crowd(System::nanoTime);
        ScheduledExecutorService clock =
                Executors.newSingleThreadScheduledExecutor(
                        work -> {
                            Thread thread = new Thread(work, "studio-clock");
                            thread.setDaemon(true);
                            return thread;
                        });
        clock.scheduleWithFixedDelay(keys::sweep, 1, 1, TimeUnit.SECONDS);
        clock.scheduleWithFixedDelay(crowd::sweep, 1, 1, TimeUnit.SECONDS);
        Javalin server =
                Javalin.create(
                        config -> {
                            plain(config);
                            config.jetty.addConnector(
                                    (jetty, http) -> loopback(jetty, http, options.port(), crowd));
                            config.jetty.modifyServer(
                                    jetty -> guarded(jetty, new Gate(keys, crowd), clock));
                            // The shelf first: routes also answers for any other file.
                            shelfDesk.configure(config.routes);
                            takes.configure(config.routes);
                            films.configure(config.routes);
                            songs.configure(config.routes);
                            practised.configure(config.routes);
                            log.configure(config.routes);
                            doors(config, keys, assets);
                            routes(config, desk, lanes, assets);
                            config.routes.ws("/api/live", live::configure);
                        });
        try {
            server.start();
        } catch (RuntimeException e) {
            clock.shutdownNow();
            lanes.close();
            takes.close();
            films.close();
            songs.close();
            throw taken(e)
                    ? new Refusal(
                            "is taken by another program",
                            "port " + options.port(),
                            "close that one, or give another port, or 0 for any that is free")
                    : e;
        }
        return new Studio(server, lanes, errands, takes, films, songs, keys, clock);
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
        config.http.prefer405over404 = true;
        config.router.javaLangErrorHandler(
                (answer, error) -> {
                    Trouble trouble = Trouble.of(error);
                    answer.setStatus(trouble.status());
                });
        QueuedThreadPool threads = new QueuedThreadPool(24, 4);
        threads.setName("studio");
        threads.setDaemon(true);
        config.jetty.threadPool = threads;
        config.jetty.modifyHttpConfiguration(
                http -> {
                    http.setSendServerVersion(false);
                    http.setRequestHeaderSize(8 * 1024);
                    http.setUriCompliance(UriCompliance.DEFAULT);
                });
        config.jetty.modifyServletContextHandler(Studio::unpacked);
        config.jetty.modifyWebSocketServletFactory(
                sockets -> {
                    sockets.setMaxTextMessageSize(Bodies.MOST);
                    sockets.setMaxBinaryMessageSize(1024);
                    sockets.setIdleTimeout(Duration.ofHours(12));
                });
    }

    private static ServerConnector loopback(
            Server jetty, HttpConfiguration http, int port, Crowd crowd) {
        ServerConnector connector = new ServerConnector(jetty, new HttpConnectionFactory(http));
        connector.setHost(LOOPBACK);
        connector.setPort(port);
        connector.addEventListener(crowd);
        return connector;
    }

    /** The gate first, then whole bodies, then everything else. */
    private static void guarded(Server jetty, Gate gate, ScheduledExecutorService clock) {
        // It would cut the page's own socket once others keep the threads busy.
        jetty.removeBean(jetty.getBean(LowResourceMonitor.class));
        jetty.setErrorHandler(new Apology());
        jetty.insertHandler(new EagerContentHandler(new Bodies(clock)));
        jetty.insertHandler(gate);
    }

    private static void unpacked(ServletContextHandler handler) {
        handler.setErrorHandler(new Apology());
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

    /** The shell, which everybody may see, and the way from it to the page. */
    private static void doors(JavalinConfig config, KeyRing keys, Assets assets) {
        config.routes.get(Gate.SHELL, context -> file(context, assets.shell()));
        config.routes.get(
                Gate.PAGE,
                context ->
                        file(
                                context,
                                assets.page("index.html")
                                        .map(page -> page.under(session(context)))));
        config.routes.post(
                Gate.OPEN,
                context -> {
                    String opening =
                            Question.of(Desk.tree(Bodies.text(context)), List.of(OPENING))
                                    .get(OPENING);
                    String session =
                            keys.session(opening)
                                    .orElseThrow(
                                            () ->
                                                    new BadRequest(
                                                            403,
                                                            "has been used, or its minute is over",
                                                            "the key",
                                                            "press Enter where the studio runs"));
                    ObjectNode answer = Desk.JSON.createObjectNode();
                    ShelfDesk.json(context, answer.put("session", session));
                });
        config.routes.post(
                "/api/page",
                context -> {
                    ObjectNode answer = Desk.JSON.createObjectNode();
                    ShelfDesk.json(context, answer.put("page", keys.page(session(context))));
                });
    }

    private static String session(Context context) {
        return String.valueOf(context.req().getAttribute(Gate.SESSION));
    }

    private static void routes(JavalinConfig config, Desk desk, Lanes lanes, Assets assets) {
        config.routes.get(
                "/palette.css",
                context -> {
                    context.contentType("text/css;charset=utf-8");
                    context.result(Palette.css());
                });
        config.routes.get(
                "/api/palette",
                context -> ShelfDesk.json(context, Desk.JSON.valueToTree(Palette.plain())));
        config.routes.get("/api/protocol", context -> ShelfDesk.json(context, Ask.schema()));
        config.routes.post(
                "/api/ask",
                context -> {
                    Ask.Asked asked = Ask.Asked.of(Bodies.text(context));
                    Optional<Lanes.Work> work = asked.lane(desk);
                    if (work.isPresent()) {
                        Caller.answer(
                                context, lanes.of(work.get()), stop -> desk.answer(asked, stop));
                    } else {
                        ShelfDesk.json(context, desk.answer(asked, () -> false));
                    }
                });
        config.routes.get(
                "/vendor/{name}/<path>",
                context ->
                        file(
                                context,
                                assets.vendor(
                                        context.pathParam("name"), context.pathParam("path"))));
        config.routes.get(
                "/docs/<path>", context -> file(context, assets.docs(context.pathParam("path"))));
        config.routes.get(
                "/<path>", context -> file(context, assets.page(context.pathParam("path"))));
        config.routes.exception(
                MethodNotAllowedResponse.class,
                (e, context) -> {
                    context.status(405);
                    context.header("Allow", String.join(", ", e.getDetails().values()));
                    ShelfDesk.json(
                            context,
                            Trouble.body(
                                    "is not answered", "this method here", "send another one"));
                });
        config.routes.exception(
                Exception.class,
                (e, context) -> {
                    Trouble trouble = Trouble.of(e);
                    context.status(trouble.status());
                    if (trouble.status() == 503) {
                        context.header("Retry-After", RETRY_SECONDS);
                    }
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
                                        "address",
                                        "start from the studio's page"));
                    }
                });
    }

    private static void file(Context context, Optional<Assets.Asset> found) {
        if (found.isEmpty()) {
            throw new BadRequest(
                    404, "is nothing the studio has", "address", "start from the studio's page");
        }
        Assets.Asset asset = found.get();
        if (!asset.inline().equals(Assets.Inline.NONE)) {
            context.header(
                    "Content-Security-Policy",
                    Gate.policy(asset.inline(), context.req().getLocalPort()));
            context.contentType(asset.kind());
            context.result(asset.bytes());
            return;
        }
        context.header("ETag", asset.tag());
        context.header("Cache-Control", "no-cache");
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

    /** A new way in, for the browser of whoever runs the studio. */
    public Opening opening() {
        CompletableFuture<Path> written = new CompletableFuture<>();
        String key = keys.opening(() -> written.thenAccept(openings::remove));
        URI address = URI.create(address() + "#open=" + key);
        Path file = openings.write(address);
        written.complete(file);
        return new Opening(file, address);
    }

    /** Where heavy work is done; for tests. */
    Lanes lanes() {
        return lanes;
    }

    /** Where it is; a browser needs an {@linkplain #opening opening} too. */
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
        errands.close();
        lanes.close();
        server.stop();
        takes.close();
        films.close();
        songs.close();
        clock.shutdownNow();
        keys.close();
        openings.close();
    }
}

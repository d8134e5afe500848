package deferent.studio;

import io.javalin.websocket.WsContext;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.TimeUnit;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Errands over sockets: one of a kind at a time on a socket, and one of a kind at a time in all, so
 * that what they hold in memory is bounded. A newer one of its kind, or a socket that closes, drops
 * it; a stop ends it with what it has found. Changes of the pattern don't disturb it.
 */
final class Errands implements AutoCloseable {
    private final Map<String, ExecutorService> runners = new ConcurrentHashMap<>();
    private final Map<String, Run> running = new ConcurrentHashMap<>();

    /** Starts an errand of a kind for a question's id, and drops an older one. */
    void start(WsContext context, String kind, JsonNode id, Errand errand) {
        Run run = new Run(context, id, errand);
        Run older = running.put(place(context, kind), run);
        if (older != null) {
            older.drop();
        }
        run.finished = () -> running.remove(place(context, kind), run);
        try {
            runners.computeIfAbsent(kind, Errands::runner).execute(run);
        } catch (RejectedExecutionException closing) {
            run.drop();
        }
    }

    private static ExecutorService runner(String kind) {
        return Executors.newSingleThreadExecutor(
                work -> {
                    Thread thread = new Thread(work, "studio-" + kind);
                    thread.setDaemon(true);
                    return thread;
                });
    }

    /** Ends an errand with what it has found. */
    void stop(WsContext context, String kind) {
        Run run = running.get(place(context, kind));
        if (run != null) {
            run.stopped = true;
        }
    }

    /** Drops all of a socket. */
    void leave(WsContext context) {
        running.entrySet()
                .removeIf(
                        entry -> {
                            boolean own = entry.getKey().startsWith(context.sessionId() + " ");
                            if (own) {
                                entry.getValue().drop();
                            }
                            return own;
                        });
    }

    private static String place(WsContext context, String kind) {
        return context.sessionId() + " " + kind;
    }

    @Override
    public void close() {
        running.values().forEach(Run::drop);
        runners.values().forEach(ExecutorService::shutdownNow);
        runners.values().forEach(Errands::rest);
    }

    // What an errand has begun on disk it takes away itself.
    private static void rest(ExecutorService runner) {
        try {
            runner.awaitTermination(5, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static final class Run implements Runnable {
        private final WsContext context;
        private final JsonNode id;
        private final Errand errand;
        private volatile boolean stopped;
        private volatile Runnable finished = () -> {};
        private boolean done;

        Run(WsContext context, JsonNode id, Errand errand) {
            this.context = context;
            this.id = id;
            this.errand = errand;
        }

        @Override
        public void run() {
            if (isDone()) {
                return;
            }
            ObjectNode last;
            try {
                last = errand.run(this::send, () -> stopped || isDone());
            } catch (RuntimeException e) {
                last = Trouble.of(e).body();
            }
            last.put("done", true);
            end(last);
            finished.run();
        }

        private synchronized boolean isDone() {
            return done || !context.session.isOpen();
        }

        private synchronized void send(ObjectNode part) {
            if (!isDone()) {
                part.set("id", id);
                context.send(Desk.JSON.writeValueAsString(part));
            }
        }

        private synchronized void end(ObjectNode last) {
            send(last);
            done = true;
        }

        synchronized void drop() {
            if (!done) {
                ObjectNode dropped = Desk.JSON.createObjectNode();
                dropped.put("dropped", true);
                end(dropped);
            }
        }
    }
}

package deferent.studio;

import io.javalin.websocket.WsContext;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Errands over sockets, each in its lane: one of a kind at a time on a socket. A newer one of its
 * kind, or a socket that closes, drops it; a stop ends it with what it has found. Changes of the
 * pattern don't disturb it.
 */
final class Errands implements AutoCloseable {
    private final Lanes lanes;
    private final Map<String, Run> running = new ConcurrentHashMap<>();

    Errands(Lanes lanes) {
        this.lanes = lanes;
    }

    /** Starts an errand of a kind for a question's id, and drops an older one. */
    void start(WsContext context, String kind, JsonNode id, Errand errand) {
        Run run = new Run(context, id, errand);
        Run older = running.put(place(context, kind), run);
        if (older != null) {
            older.drop();
        }
        run.finished = () -> running.remove(place(context, kind), run);
        try {
            run.begin(lanes.of(errand.work()));
        } catch (BadRequest full) {
            run.finished.run();
            throw full;
        }
    }

    /** Ends an errand with what it has found. */
    void stop(WsContext context, String kind) {
        Run run = running.get(place(context, kind));
        if (run != null) {
            run.stop();
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
    }

    private static final class Run implements Runnable {
        private final WsContext context;
        private final JsonNode id;
        private final Errand errand;
        private volatile Optional<Lane.Turn> turn = Optional.empty();
        private volatile boolean stopped;
        private volatile Runnable finished = () -> {};
        private boolean done;

        Run(WsContext context, JsonNode id, Errand errand) {
            this.context = context;
            this.id = id;
            this.errand = errand;
        }

        void begin(Lane lane) {
            turn = Optional.of(lane.take(this, this::waits));
        }

        private void waits(int before) {
            ObjectNode part = Desk.JSON.createObjectNode();
            part.put("waiting", before);
            part.put("told", before + " before you");
            send(part);
        }

        /** What has not begun has found nothing, and is not waited for. */
        void stop() {
            stopped = true;
            if (turn.filter(Lane.Turn::leave).isPresent()) {
                ObjectNode last = Desk.JSON.createObjectNode();
                end(last.put("done", true).put("complete", false).put("stopped", true));
                finished.run();
            }
        }

        @Override
        public void run() {
            if (isDone()) {
                finished.run();
                return;
            }
            ObjectNode last;
            try {
                last = errand.run().run(this::send, () -> stopped || isDone());
            } catch (RuntimeException | Error e) {
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

        // The lane is left first: it tells others that they come sooner, each under its own lock.
        void drop() {
            turn.ifPresent(Lane.Turn::leave);
            synchronized (this) {
                if (!done) {
                    end(Desk.JSON.createObjectNode().put("dropped", true));
                }
            }
        }
    }
}

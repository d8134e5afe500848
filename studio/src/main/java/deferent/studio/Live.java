package deferent.studio;

import io.javalin.websocket.WsConfig;
import io.javalin.websocket.WsContext;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicBoolean;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Questions and answers over sockets. What is quick is answered at once and in order, so that no
 * move of a drag is lost; what is slow goes to a worker, and gives way when a newer question about
 * a pairing comes in on the same socket. What takes longest is an {@link Errand} of its own.
 */
final class Live {
    private final Desk desk;
    private final Lanes lanes;
    private final Errands errands;
    private final Map<String, Slow> slow = new ConcurrentHashMap<>();

    Live(Desk desk, Lanes lanes, Errands errands) {
        this.desk = desk;
        this.lanes = lanes;
        this.errands = errands;
    }

    void configure(WsConfig socket) {
        socket.onMessage(context -> hear(context, context.message()));
        socket.onClose(this::leave);
        socket.onError(this::leave);
    }

    private void leave(WsContext context) {
        giveUp(context.sessionId());
        errands.leave(context);
    }

    private void hear(WsContext context, String message) {
        ObjectNode answer;
        try {
            Ask.Asked asked = Ask.Asked.of(message);
            if (asked.ask().inParts()) {
                errands.start(context, asked.ask().word(), asked.id(), asked.errand(desk));
                return;
            }
            if (asked.ask() == Ask.STOP) {
                String of = asked.question().or(Desk.OF, Ask.SEEK.word());
                if (!asked.id().isNull()) {
                    answer = JsonNodeFactory.instance.objectNode();
                    context.send(say(withId(answer.put("stopping", of), message)));
                }
                errands.stop(context, of);
                return;
            }
            if (asked.ask() != Ask.WORDS) {
                giveUp(context.sessionId());
            }
            Optional<Lanes.Work> work = asked.lane(desk);
            if (work.isPresent()) {
                Slow question = new Slow(context, message);
                slow.put(context.sessionId(), question);
                question.start(lanes.of(work.get()));
                return;
            }
            answer = desk.answer(asked, () -> false);
        } catch (RuntimeException e) {
            answer = withId(Trouble.of(e).body(), message);
        }
        context.send(say(answer));
    }

    private static String say(ObjectNode answer) {
        return Desk.JSON.writeValueAsString(answer);
    }

    private void giveUp(String session) {
        Slow older = slow.remove(session);
        if (older != null) {
            older.drop();
        }
    }

    /** The id of the question, where that much of it can be read. */
    private static ObjectNode withId(ObjectNode answer, String message) {
        try {
            JsonNode id = Desk.tree(message).get("id");
            if (id != null && (id.isNumber() || id.isString())) {
                answer.set("id", id);
            }
        } catch (RuntimeException unreadable) {
            // Then the answer has no id; there was none to give back.
        }
        return answer;
    }

    /** One slow question: answered once, or dropped once, never both. */
    private final class Slow {
        private final WsContext context;
        private final String message;
        private final AtomicBoolean done = new AtomicBoolean();
        private volatile Optional<Lane.Turn> turn = Optional.empty();

        Slow(WsContext context, String message) {
            this.context = context;
            this.message = message;
        }

        void start(Lane lane) {
            try {
                turn = Optional.of(lane.take(this::work, this::waits));
            } catch (BadRequest full) {
                done.set(true);
                slow.remove(context.sessionId(), this);
                throw full;
            }
        }

        private void waits(int before) {
            ObjectNode part = JsonNodeFactory.instance.objectNode();
            part.put("waiting", before).put("told", before + " before you");
            if (!done.get()) {
                send(withId(part, message));
            }
        }

        private void work() {
            if (done.get()) {
                return;
            }
            ObjectNode answer;
            try {
                answer = desk.answer(Ask.Asked.of(message), done::get);
            } catch (CancellationException newer) {
                // A newer question has dropped this one and said so.
                return;
            } catch (RuntimeException | Error e) {
                answer = withId(Trouble.of(e).body(), message);
            }
            if (done.compareAndSet(false, true)) {
                send(answer);
                slow.remove(context.sessionId(), this);
            }
        }

        void drop() {
            if (done.compareAndSet(false, true)) {
                turn.ifPresent(Lane.Turn::leave);
                ObjectNode answer = JsonNodeFactory.instance.objectNode();
                answer.put("dropped", true);
                send(withId(answer, message));
            }
        }

        private void send(ObjectNode answer) {
            if (context.session.isOpen()) {
                context.send(say(answer));
            }
        }
    }
}

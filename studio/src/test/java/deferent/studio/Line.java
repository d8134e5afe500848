package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.WebSocket;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import tools.jackson.databind.JsonNode;

/** A socket of the page, with what it has heard. */
final class Line implements WebSocket.Listener {
    static final int BROKEN = -1;

    final BlockingQueue<String> heard = new LinkedBlockingQueue<>();
    final BlockingQueue<Integer> closed = new LinkedBlockingQueue<>();
    private final StringBuilder part = new StringBuilder();
    private final WebSocket socket;

    Line(Visitor visitor) {
        socket =
                visitor.client
                        .newWebSocketBuilder()
                        .header("Origin", visitor.origin())
                        .buildAsync(visitor.live(), this)
                        .join();
    }

    void say(String text) {
        socket.sendText(text, true).join();
    }

    void abort() {
        socket.abort();
    }

    /** What comes next, word of one's place in the queue included. */
    JsonNode next() throws InterruptedException {
        String text = heard.poll(2, TimeUnit.MINUTES);
        assertThat(text).as("an answer within two minutes").isNotNull();
        return Desk.JSON.readTree(text);
    }

    /** The next answer; on a busy machine words about the queue may come before it. */
    JsonNode answer() throws InterruptedException {
        JsonNode part = next();
        while (part.has("waiting")) {
            part = next();
        }
        return part;
    }

    /** Hears parts until the last one. */
    JsonNode last() throws InterruptedException {
        JsonNode part = answer();
        while (!part.path("done").asBoolean(false)) {
            part = answer();
        }
        return part;
    }

    /** Nothing more was on its way: what comes next is the answer to a word asked for now. */
    boolean silent() throws InterruptedException {
        say("{\"id\":4711,\"ask\":\"words\",\"word\":\"CAP\"}");
        return next().path("id").asInt() == 4711 && heard.isEmpty();
    }

    @Override
    public CompletionStage<?> onText(WebSocket from, CharSequence data, boolean last) {
        part.append(data);
        if (last) {
            heard.add(part.toString());
            part.setLength(0);
        }
        from.request(1);
        return null;
    }

    @Override
    public CompletionStage<?> onClose(WebSocket from, int status, String reason) {
        closed.add(status);
        return null;
    }

    @Override
    public void onError(WebSocket from, Throwable error) {
        closed.add(BROKEN);
    }
}

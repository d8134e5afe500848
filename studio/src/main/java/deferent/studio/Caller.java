package deferent.studio;

import io.javalin.http.Context;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.eclipse.jetty.ee10.servlet.ServletContextRequest;
import org.eclipse.jetty.io.EndPoint;
import org.eclipse.jetty.util.BufferUtil;
import org.eclipse.jetty.util.Callback;
import tools.jackson.databind.node.ObjectNode;

/**
 * Whoever asked for heavy work by HTTP and waits on the connection. Who hangs up is not worked for
 * any longer.
 *
 * <p>The web server does not look at a connection while it answers on it, so this does: the answer
 * is the last one there, and whatever can be read meanwhile is either the end or of no interest.
 */
final class Caller implements Callback {
    /** How many were before it when it came, where any were. */
    private static final String WAITED = "Deferent-Waited";

    private final EndPoint end;
    private final AtomicInteger before = new AtomicInteger();
    private final AtomicBoolean gone = new AtomicBoolean();
    private final CompletableFuture<ObjectNode> answer = new CompletableFuture<>();

    private Caller(EndPoint end) {
        this.end = end;
    }

    /**
     * Answers a request from a lane.
     *
     * @param work takes what says whether to stop
     */
    static void answer(Context context, Lane lane, Function<BooleanSupplier, ObjectNode> work) {
        Caller caller =
                new Caller(
                        ServletContextRequest.getServletContextRequest(context.req())
                                .getConnectionMetaData()
                                .getConnection()
                                .getEndPoint());
        Lane.Turn turn = lane.take(() -> caller.work(work), caller::waits);
        caller.answer.whenComplete((node, trouble) -> turn.leave());
        context.header("Connection", "close");
        context.future(
                () ->
                        caller.answer.thenAccept(
                                node -> {
                                    caller.said(context);
                                    ShelfDesk.json(context, node);
                                }));
        caller.listen();
    }

    private void waits(int now) {
        before.accumulateAndGet(now, Math::max);
    }

    private void said(Context context) {
        if (before.get() > 0) {
            context.header(WAITED, String.valueOf(before.get()));
        }
    }

    private void work(Function<BooleanSupplier, ObjectNode> work) {
        try {
            answer.complete(work.apply(gone::get));
        } catch (RuntimeException e) {
            answer.completeExceptionally(e);
        } catch (Error e) {
            // Memory may run out on the largest; who waits shall hear of it.
            answer.completeExceptionally(new IllegalStateException(e));
        }
    }

    private void listen() {
        if (!answer.isDone()) {
            end.tryFillInterested(this);
        }
    }

    @Override
    public void succeeded() {
        try {
            if (end.fill(BufferUtil.allocate(256)) >= 0) {
                listen();
                return;
            }
        } catch (java.io.IOException broken) {
            // Gone all the same.
        }
        hungUp();
    }

    @Override
    public void failed(Throwable why) {
        hungUp();
    }

    private void hungUp() {
        gone.set(true);
        answer.completeExceptionally(new BadRequest(400, "hung up", "the caller", "ask again"));
    }
}

package deferent.studio;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.util.Callback;

/**
 * What is still on its way of a request that has been answered: read and thrown away before the
 * connection closes, since closing on bytes unread resets it, and the answer may be lost with them
 * (RFC 9112, section 9.6). At most {@link #MOST} bytes, for at most {@link #LONGEST} seconds.
 */
final class Remainder implements Callback, Runnable {
    private static final long MOST = 4L * Bodies.MOST;
    private static final long LONGEST = 2;

    private final Request request;
    private final Callback answered;
    private final AtomicBoolean over = new AtomicBoolean();
    private long read;

    /**
     * @param answered told when nothing more is read
     */
    Remainder(Request request, Callback answered) {
        this.request = request;
        this.answered = answered;
    }

    /** The answer is written. */
    @Override
    public void succeeded() {
        CompletableFuture.delayedExecutor(LONGEST, TimeUnit.SECONDS).execute(this::end);
        run();
    }

    @Override
    public void failed(Throwable why) {
        if (over.compareAndSet(false, true)) {
            answered.failed(why);
        }
    }

    @Override
    public void run() {
        while (!over.get()) {
            Content.Chunk chunk = request.read();
            if (chunk == null) {
                request.demand(this);
                return;
            }
            boolean last = chunk.isLast() || Content.Chunk.isFailure(chunk);
            read += chunk.remaining();
            chunk.release();
            if (last || read > MOST) {
                end();
            }
        }
    }

    private void end() {
        if (over.compareAndSet(false, true)) {
            answered.succeeded();
        }
    }
}

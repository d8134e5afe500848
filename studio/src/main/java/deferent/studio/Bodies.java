package deferent.studio;

import deferent.record.LogJson;
import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.EagerContentHandler;
import org.eclipse.jetty.util.BufferUtil;
import org.eclipse.jetty.util.Callback;
import org.jspecify.annotations.Nullable;

/**
 * What requests carry: read whole before anybody answers, so that a body that trickles in holds no
 * thread; at most {@link #most} bytes of it, and within {@link #LONGEST}.
 */
final class Bodies implements EagerContentHandler.ContentLoaderFactory {
    /** 256 KiB. */
    static final int MOST = 256 * 1024;

    /** Of a file that comes as it is: a log of practice. */
    static int most(Request request) {
        return Request.getPathInContext(request).endsWith(LogDesk.FILE) ? LogJson.MOST_BYTES : MOST;
    }

    static final Duration LONGEST = Duration.ofSeconds(10);

    private final ScheduledExecutorService clock;

    Bodies(ScheduledExecutorService clock) {
        this.clock = clock;
    }

    @Override
    public @Nullable String getApplicableMimeType() {
        return null; // all kinds
    }

    @Override
    public EagerContentHandler.ContentLoader newContentLoader(
            String contentType,
            String mimeType,
            Handler next,
            Request request,
            Response response,
            Callback callback) {
        return new Reading(next, request, response, callback);
    }

    /** The body as text. */
    static String text(Context context) {
        try {
            byte[] bytes = context.req().getInputStream().readAllBytes();
            return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
        } catch (CharacterCodingException e) {
            throw new BadRequest(400, "is no UTF-8 text", "body", "send JSON in UTF-8");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static BadRequest tooLarge(Request request) {
        return new BadRequest(
                413, "is too large", "body", "send at most " + most(request) / 1024 + " KiB");
    }

    /** One body on its way in. */
    private final class Reading extends EagerContentHandler.ContentLoader implements Runnable {
        private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        private final AtomicBoolean over = new AtomicBoolean();
        private final Future<?> deadline;

        Reading(Handler next, Request request, Response response, Callback callback) {
            super(next, request, response, callback);
            deadline = clock.schedule(this::late, LONGEST.toMillis(), TimeUnit.MILLISECONDS);
        }

        @Override
        protected void load() {
            run();
        }

        @Override
        public void run() {
            while (!over.get()) {
                Content.Chunk chunk = getRequest().read();
                if (chunk == null) {
                    getRequest().demand(this);
                    return;
                }
                if (Content.Chunk.isFailure(chunk)) {
                    broken(chunk.getFailure());
                    return;
                }
                byte[] part = BufferUtil.toArray(chunk.getByteBuffer());
                chunk.release();
                if (bytes.size() + part.length > most(getRequest())) {
                    refuse(tooLarge(getRequest()));
                    return;
                }
                bytes.writeBytes(part);
                if (chunk.isLast()) {
                    whole();
                    return;
                }
            }
        }

        private void whole() {
            if (first()) {
                handle(new Whole(getRequest(), bytes.toByteArray()), getResponse(), getCallback());
            }
        }

        private void late() {
            refuse(
                    new BadRequest(
                            408,
                            "was not there after " + LONGEST.toSeconds() + " seconds",
                            "body",
                            "send all of it at once"));
        }

        // The server's own apology still gets through where a write of ours would not.
        private void broken(Throwable why) {
            if (first()) {
                getCallback().failed(why);
            }
        }

        private void refuse(BadRequest refused) {
            if (first()) {
                getResponse().getHeaders().put(HttpHeader.CONNECTION, "close");
                Gate.refuse(getRequest(), getResponse(), getCallback(), refused);
            }
        }

        private boolean first() {
            deadline.cancel(false);
            return over.compareAndSet(false, true);
        }
    }

    /** A request whose body is there. */
    private static final class Whole extends Request.Wrapper {
        private final byte[] bytes;
        private boolean read;

        Whole(Request request, byte[] bytes) {
            super(request);
            this.bytes = bytes;
        }

        @Override
        public long getLength() {
            return bytes.length;
        }

        @Override
        public Content.Chunk read() {
            if (read) {
                return Content.Chunk.EOF;
            }
            read = true;
            return Content.Chunk.from(ByteBuffer.wrap(bytes), true);
        }

        @Override
        public void demand(Runnable ready) {
            ready.run();
        }

        @Override
        public boolean consumeAvailable() {
            read = true;
            return true;
        }
    }
}

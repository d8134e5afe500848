package deferent.studio;

import io.javalin.http.Context;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;

/** What a request carries, never more than {@link #MOST} bytes of it. */
final class Bodies {
    /** 256 KiB. */
    static final int MOST = 256 * 1024;

    private Bodies() {}

    /** The body as text, whether its length was said or not. */
    static String text(Context context) {
        if (context.req().getContentLengthLong() > MOST) {
            throw tooLarge();
        }
        try {
            byte[] bytes = context.req().getInputStream().readNBytes(MOST + 1);
            if (bytes.length > MOST) {
                throw tooLarge();
            }
            return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
        } catch (CharacterCodingException e) {
            throw new BadRequest(400, "is no UTF-8 text", "body", "send JSON in UTF-8");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static BadRequest tooLarge() {
        return new BadRequest(413, "is too large", "body", "send at most " + MOST / 1024 + " KiB");
    }
}

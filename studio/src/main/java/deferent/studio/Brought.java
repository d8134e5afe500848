package deferent.studio;

import static deferent.studio.AskKey.keys;

import deferent.record.landing.Arriving;
import io.javalin.http.Context;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import tools.jackson.databind.node.JsonNodeFactory;

/**
 * Files that the page brings in pieces, each no larger than any other question, into a folder of
 * this studio alone. The last few stay until the studio closes, and nowhere longer.
 */
final class Brought implements AutoCloseable {
    /** How many are kept. */
    static final int KEPT = 2;

    /** 4 GiB. */
    private static final long MOST = 4L << 30;

    private static final AskKey<Double> AT =
            AskKey.number("at", "how many bytes of it are there already", 0, MOST, "bytes");
    private static final AskKey<String> BYTES =
            new AskKey<>(
                    "bytes",
                    "the next of them, in base 64",
                    AskKey.schema("string").put("maxLength", Bodies.MOST),
                    (keys, key) -> keys.plainText(key, Bodies.MOST),
                    AskKey.Need.MAY);
    private static final List<AskKey<?>> PIECE = keys(AT.must(), BYTES.must());

    private final String what;
    private final TakenFolder files = new TakenFolder(KEPT);

    /**
     * @param what they are, "film"
     */
    Brought(String what) {
        this.what = what;
    }

    /** Makes room for one that is called so; its key. */
    String begin(String name) throws IOException {
        TakenFolder.Place place = files.open();
        Arriving.begin(place.folder().resolve(name));
        files.keep(place);
        return place.key();
    }

    /** Takes the next piece of the one whose key stands in the path. */
    void bring(Context context) throws IOException {
        Path file = file(context.pathParam("key"));
        Question piece = Question.of(Desk.tree(Bodies.text(context)), PIECE);
        long at = piece.get(AT).longValue();
        byte[] bytes = decoded(piece.get(BYTES));
        long there = Files.size(file);
        if (at != there) {
            throw new BadRequest(
                    409, "is " + at + " where " + there + " are there", "at", "go on from there");
        }
        if (there + bytes.length > MOST) {
            throw new BadRequest(413, "is larger than 4 GiB", "the " + what, "cut it shorter");
        }
        ShelfDesk.json(
                context,
                JsonNodeFactory.instance.objectNode().put("bytes", Arriving.append(file, bytes)));
    }

    private byte[] decoded(String text) {
        try {
            return Base64.getDecoder().decode(text);
        } catch (IllegalArgumentException e) {
            throw new BadRequest(400, "is not base 64", "bytes", "send the " + what + "'s so");
        }
    }

    Path file(String key) {
        return files.find(key)
                .orElseThrow(
                        () ->
                                new BadRequest(
                                        404,
                                        "is not there any more",
                                        "the " + what,
                                        "choose its file once more"));
    }

    @Override
    public void close() {
        files.close();
    }
}

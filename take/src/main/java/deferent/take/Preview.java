package deferent.take;

import deferent.page.Still;

/**
 * What a file will be, before it is written: by the same writers, small or in part.
 *
 * @param mediaType of the bytes: a picture, a page of HTML, or the first lines of a table
 * @param told size and length of the file itself, in words
 * @param moves whether the file moves
 * @param note what stands in the way of a better preview, or of the file itself; empty for nothing
 * @param writable whether this machine can write the file
 * @param caution what to say to whom it is shown; empty for nothing
 */
public record Preview(
        byte[] bytes,
        String mediaType,
        String told,
        boolean moves,
        String note,
        boolean writable,
        String caution) {
    /** The longer edge of a picture, pixels. */
    static final int EDGE = 640;

    /** No still is smaller, pixels. */
    private static final int LEAST = 48;

    /** When one picture does for what moves. */
    public enum Calm {
        NEVER,
        /** Where its lights move so fast that it asks for a caution. */
        FAST,
        ALWAYS
    }

    /** Of a file that stands still. */
    static Preview of(byte[] bytes, String mediaType, String told) {
        return new Preview(bytes, mediaType, told, false, "", true, "");
    }

    Preview moving() {
        return new Preview(bytes, mediaType, told, true, note, writable, caution);
    }

    /** Less than it could be, for a reason. */
    Preview noted(String reason) {
        return new Preview(bytes, mediaType, told, moves, reason, writable, caution);
    }

    /** Of a file that this machine cannot write. */
    Preview barred(String reason) {
        return new Preview(bytes, mediaType, told, moves, reason, false, caution);
    }

    Preview cautioned(String warning) {
        return new Preview(bytes, mediaType, told, moves, note, writable, warning);
    }

    /** A still of the same shape with no edge longer than that, pixels. */
    static Still small(Still still, int edge) {
        double scale = Math.min(1, (double) edge / Math.max(still.width(), still.height()));
        return still.sized(
                Math.max(LEAST, (int) Math.rint(scale * still.width())),
                Math.max(LEAST, (int) Math.rint(scale * still.height())));
    }
}

package deferent.record;

import deferent.motion.shared.Refused;

/** What the shelf will not or cannot do: which kind of trouble, where, and what would help. */
public final class ShelfError extends Refused {
    private static final long serialVersionUID = 1L;

    /** What kind of trouble it is. */
    public enum Kind {
        /** Nothing stands under that id. */
        MISSING,
        /** What stands there is not what the caller last saw. */
        CHANGED,
        /** That is no name of a place on the shelf. */
        NAME,
        /** The shelf or the document is too large. */
        SIZE,
        /** The folder cannot be read or written. */
        FOLDER
    }

    private final Kind kind;

    ShelfError(Kind kind, String what, String where, String right) {
        super(what, where, right);
        this.kind = kind;
    }

    /** The same, met on the way through many documents. */
    ShelfError after(int done, int all) {
        ShelfError told =
                new ShelfError(
                        kind,
                        what(),
                        where(),
                        right()
                                + ("; " + done + " of " + all + " documents are on the shelf, and")
                                + " importing them again adds only the rest");
        told.initCause(this);
        return told;
    }

    public Kind kind() {
        return kind;
    }
}

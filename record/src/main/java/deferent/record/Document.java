package deferent.record;

import java.util.List;
import java.util.Optional;

/**
 * What can stand on a shelf: a pattern, a motion under a name of the user's own, a set, or a song.
 */
public sealed interface Document
        permits PatternDocument, MotionDocument, SetDocument, SongDocument {
    /** The version of the format that this room writes, and the newest it reads. */
    int FORMAT = 1;

    /** What it is, as its JSON says it: "pattern". */
    String kind();

    /** How the user calls it, 1 to 120 characters on one line. */
    String name();

    /** Free text, up to 4000 characters; may be empty. */
    String note();

    /** Whose it is or where it comes from, such as "invented demo data". */
    Optional<String> author();

    /** Words to find it by. */
    List<String> tags();

    /** What other programs keep in it. */
    Extras extras();

    /** As others get it: without what only this machine knows. */
    default Document shared() {
        return this;
    }
}

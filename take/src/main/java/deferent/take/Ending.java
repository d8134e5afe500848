package deferent.take;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * How the name of a file ends that patterns can be taken away in, and everything about such files:
 * what they are, what may be wished, how they are written and previewed. {@link Endings} lists what
 * there is; every face asks there.
 */
public interface Ending {
    /**
     * Endings that stand together where one is chosen.
     *
     * @param key for programs: "picture"
     * @param title in a word or two: "Picture"
     * @param words what they are for: "for posts, slides and drawing programs"
     */
    record Family(String key, String title, String words) {}

    /** Without the dot: "svg". */
    String key();

    String mediaType();

    /** For people: "picture in pixels". */
    String words();

    Family family();

    /** All that may be wished, in the order of {@link Wish}. */
    List<Offer> offers();

    /** What may be wished of a form. */
    default List<Offer> offers(String form) {
        return offers();
    }

    default boolean takes(Wish wish) {
        return offers().stream().anyMatch(offer -> offer.wish() == wish);
    }

    /** Whether a file holds many patterns, and tells what leads from one to another. */
    default boolean many() {
        return false;
    }

    /** Whether it is made frame by frame, which takes long. */
    default boolean filmed() {
        return false;
    }

    /** How fast a file moves by itself, times as spun; empty for one that doesn't. */
    default OptionalDouble speed(Wishes wishes) {
        return OptionalDouble.empty();
    }

    /**
     * Writes a file whole or not at all: stopped, or where it cannot be written, what stood there
     * before is untouched.
     *
     * @param listener hears how far it is, on this thread
     * @param stop asked every little while
     * @return what was written; empty where it was stopped
     */
    Optional<Taken> write(
            Take take, Path target, Consumer<TakeProgress> listener, BooleanSupplier stop);

    /**
     * What a file will be. Refuses whatever the file itself would be refused for.
     *
     * @param calm whether one picture does for what moves
     * @param stop asked every little while
     * @return empty where it was stopped
     */
    Optional<Preview> preview(Take take, boolean calm, BooleanSupplier stop) throws IOException;
}

package deferent.page;

import java.awt.Graphics2D;
import java.util.Optional;
import java.util.function.Consumer;

/** What a picture is painted on, item by item. */
interface Paper {
    /**
     * Paints what belongs together.
     *
     * @param id unlike any other on this paper, fit for a file
     * @param name for people
     * @param strokes draws on pixels from the upper left
     */
    void group(String id, String name, Consumer<Graphics2D> strokes);

    /** Puts the groups that {@code inner} paints into one of their own. */
    default void within(String id, String name, Runnable inner) {
        inner.run();
    }

    /** As {@link #group}, of light, which adds to what lies below where the paper can do that. */
    default void light(String id, String name, Consumer<Graphics2D> strokes) {
        group(id, name, strokes);
    }

    /** Whether what is painted is going to be moved afterwards, so that cords stay in one piece. */
    default boolean moves() {
        return false;
    }

    /** The paper's pixels, where it has any and what is painted may go straight into them. */
    default Optional<Pixels> pixels() {
        return Optional.empty();
    }
}

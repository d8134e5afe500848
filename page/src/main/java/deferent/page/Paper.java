package deferent.page;

import java.awt.Graphics2D;
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
}

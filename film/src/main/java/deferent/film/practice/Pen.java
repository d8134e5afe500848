package deferent.film.practice;

import deferent.motion.shared.Side;
import deferent.page.Palette.Ink;
import java.util.Optional;

/** What a picture of practice is drawn with: on SVG, or on pixels. Places are pixels, y down. */
interface Pen {
    /** A line through points, each x and y. */
    void line(double[][] points, Ink ink, double width, boolean dashed, boolean closed);

    /** A mark: round for the left, square for the right, a diamond for both; full or hollow. */
    void mark(double x, double y, Optional<Side> side, Ink ink, boolean full);

    /**
     * A line of words.
     *
     * @param along where x lies on it: 0 its beginning, 0.5 its middle, 1 its end
     */
    void words(double x, double y, double size, Ink ink, double along, String words);
}

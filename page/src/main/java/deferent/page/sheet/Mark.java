package deferent.page.sheet;

import deferent.motion.shared.Side;
import deferent.page.Face;
import deferent.page.Palette;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.View;
import java.util.Optional;

/** One thing printed on a page. */
public sealed interface Mark {
    /** What it takes up. */
    Box box();

    /** What it is to who has the page read aloud; nothing of decoration. */
    Optional<Tag> tag();

    /**
     * Words on one line.
     *
     * @param words as they are printed: every sign has a glyph
     * @param face of the letters
     * @param size of the letters, points
     * @param ink their colour
     * @param x where they begin
     * @param baseline where they stand
     */
    record Text(
            String words,
            Face face,
            double size,
            Palette.Ink ink,
            double x,
            double baseline,
            Optional<Tag> tag)
            implements Mark {
        @Override
        public Box box() {
            return new Box(
                    x,
                    baseline - face.ascent() * size,
                    face.width(words, size),
                    (face.ascent() + face.descent()) * size);
        }
    }

    /**
     * A straight line.
     *
     * @param box from its upper left to its lower right corner; of no width or no height
     * @param width of the line, points
     */
    record Rule(Box box, double width, Palette.Ink ink) implements Mark {
        @Override
        public Optional<Tag> tag() {
            return Optional.empty();
        }
    }

    /**
     * A square or a bar.
     *
     * @param full whether it is filled; else a box to tick
     */
    record Patch(Box box, Palette.Ink ink, boolean full) implements Mark {
        /** Width of an open one's outline, points. */
        static final double OUTLINE = 0.8;

        @Override
        public Optional<Tag> tag() {
            return Optional.empty();
        }
    }

    /**
     * A still, as large as its box, which has the still's shape.
     *
     * @param scene what is seen
     * @param still how; a pixel of it is as many points as fills the box
     */
    record Plate(Box box, Scene scene, Still still, Optional<Tag> tag) implements Mark {
        /** Points a pixel of the still takes. */
        public double scale() {
            return box.width() / still.width();
        }
    }

    /** A sample of a side's hand, tether, head and trail, to tell the lines in pictures by. */
    record Sample(Box box, Side side, Optional<Tag> tag) implements Mark {}

    /** A transition's passage, as large as its box. */
    record Drawn(Box box, Passage passage, View view, Optional<Tag> tag) implements Mark {}

    /** A place that leads to another page when it is clicked; prints nothing. */
    record Link(Box box, int leaf, Optional<Tag> tag) implements Mark {}
}

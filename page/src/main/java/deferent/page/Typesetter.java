package deferent.page;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.text.AttributedCharacterIterator;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Sets words on a paper that holds words as words, to be searched and copied; given to its graphics
 * as the rendering hint {@link #KEY}. On graphics without one, words are filled outlines.
 */
public interface Typesetter {
    RenderingHints.Key KEY = new Key();

    /**
     * Sets one line of text.
     *
     * @param line as it was meant, signs without a glyph among it
     * @param x where the line begins
     * @param y where it stands
     */
    void set(Graphics2D g, Face face, double size, String line, double x, double y);

    /** Draws text as AWT would, with a font of which nothing but name, weight and size is known. */
    static void draw(Graphics2D g, Face face, double size, String line, double x, double y) {
        g.setFont(font(face.family(), face, size));
        g.drawString(line, (float) x, (float) y);
    }

    /** A font of which nothing but family, weight and size is known; no machine is asked for it. */
    static Font font(String family, Face face, double size) {
        return new Named(family, face == Face.BOLD ? Font.BOLD : Font.PLAIN, (float) size);
    }

    final class Key extends RenderingHints.Key {
        private Key() {
            super(0);
        }

        @Override
        public boolean isCompatibleValue(@Nullable Object value) {
            return value instanceof Typesetter;
        }
    }

    /** A font that asks the machine for nothing, not even for its family's name. */
    final class Named extends Font {
        private static final long serialVersionUID = 1;

        private Named(String family, int style, float size) {
            super(family, style, 1);
            this.pointSize = size;
            this.size = Math.round(size);
        }

        @Override
        public String getFamily() {
            return name;
        }

        @Override
        public Font deriveFont(Map<? extends AttributedCharacterIterator.Attribute, ?> attributes) {
            return this;
        }
    }
}

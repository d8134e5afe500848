package deferent.page;

import java.awt.geom.Path2D;
import java.util.Base64;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * The letters of everything that is drawn, printed or shown, as they come with the program: Roboto,
 * an open typeface (Apache-2.0), and beside it for phrases and headings on pages Literata
 * (OFL-1.1). No typeface of the machine is asked for, so that the same words have the same shape
 * and length on every machine, on one that has none too.
 *
 * <p>Words are set sign by sign by the file's own advance widths, without kerning or ligatures, on
 * paper as on pixels.
 */
public enum Face {
    REGULAR("Roboto", "400", "/com/formdev/flatlaf/fonts/roboto/Roboto-Regular.ttf"),
    MEDIUM("Roboto", "500 600", "/com/formdev/flatlaf/fonts/roboto/Roboto-Medium.ttf"),
    BOLD("Roboto", "700", "/com/formdev/flatlaf/fonts/roboto/Roboto-Bold.ttf"),
    SERIF("Literata", "400", "/deferent/page/web/type/literata-regular.ttf");

    /** Stands for a sign that the typeface has no glyph for. */
    private static final int UNKNOWN = 0xFFFD;

    private final String family;
    private final String weight;
    private final String place;
    private volatile @Nullable Glyphs read;

    Face(String family, String weight, String place) {
        this.family = family;
        this.weight = weight;
        this.place = place;
    }

    private Glyphs glyphs() {
        Glyphs glyphs = read;
        if (glyphs == null) {
            synchronized (this) {
                glyphs = read;
                if (glyphs == null) {
                    glyphs = Glyphs.of(place);
                    read = glyphs;
                }
            }
        }
        return glyphs;
    }

    /** What style sheets call the family. */
    public String family() {
        return family;
    }

    /** The typeface's file (TrueType), to be embedded. */
    public byte[] file() {
        return glyphs().file();
    }

    /**
     * The style sheet's rule that brings this face along, with no more than some signs of it, so
     * that a file in which it stands asks nobody for letters, and a page into which that file is
     * put keeps its own for all others.
     */
    public String embedded(IntStream signs) {
        int[] known = signs.filter(this::has).distinct().sorted().toArray();
        StringBuilder range = new StringBuilder();
        for (int i = 0; i < known.length; i++) {
            int from = known[i];
            while (i + 1 < known.length && known[i + 1] == known[i] + 1) {
                i++;
            }
            range.append(range.isEmpty() ? "U+" : ",U+").append(Integer.toHexString(from));
            range.append(from < known[i] ? "-" + Integer.toHexString(known[i]) : "");
        }
        return "@font-face{font-family:"
                + family
                + ";font-weight:"
                + weight
                + ";src:url(data:font/ttf;base64,"
                + Base64.getEncoder().encodeToString(glyphs().file(known))
                + ");unicode-range:"
                + range
                + "}";
    }

    /** How far letters rise over the line, as a share of their size. */
    public double ascent() {
        return glyphs().ascent();
    }

    /** How far they reach below it, as a share of their size. */
    public double descent() {
        return glyphs().descent();
    }

    /**
     * How long words are, points or pixels as the size is; of a sign without a glyph, its stand-in.
     */
    public double width(String words, double size) {
        Glyphs glyphs = glyphs();
        long sum = 0;
        for (int i = 0; i < words.length(); i++) {
            sum += Math.max(0, glyphs.advance(words.charAt(i)));
        }
        return sum * size / 1000;
    }

    /** Whether there is a glyph for a sign. */
    public boolean has(int sign) {
        return glyphs().advance(sign) >= 0;
    }

    /**
     * The words as they can be set: signs without a glyph, of scripts that the typeface does not
     * have, give way to a replacement sign each, and control characters to spaces.
     */
    public String known(String words) {
        StringBuilder known = new StringBuilder(words.length());
        words.codePoints()
                .forEach(
                        sign -> {
                            if (Character.isISOControl(sign) || Character.isSpaceChar(sign)) {
                                known.append(' ');
                            } else if (has(sign)) {
                                known.append((char) sign);
                            } else if (Character.getType(sign) != Character.FORMAT) {
                                known.append(has(UNKNOWN) ? (char) UNKNOWN : '?');
                            }
                        });
        return known.toString();
    }

    /** Known words where they fit, else as much of them as does, and an ellipsis. */
    public String fitted(String words, double size, double room) {
        return width(words, size) <= room ? words : cut(words, size, room);
    }

    /** As much of known words as fits with an ellipsis behind it. */
    public String cut(String words, double size, double room) {
        int end = words.length();
        while (end > 0 && width(words.substring(0, end).stripTrailing() + "…", size) > room) {
            end--;
        }
        return words.substring(0, end).stripTrailing() + "…";
    }

    /** The outline of known words of size one, their line beginning at the origin, y downward. */
    public Path2D outline(String words) {
        return glyphs().outline(words);
    }
}

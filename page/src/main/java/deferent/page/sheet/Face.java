package deferent.page.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Objects;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/**
 * The letters of printed pages: Roboto, an open typeface (Apache-2.0), regular and bold, measured
 * here as it is embedded by the {@link Press}, so that what was laid out is what is printed.
 */
public enum Face {
    REGULAR("Roboto-Regular.ttf"),
    BOLD("Roboto-Bold.ttf");

    /** Stands for a sign that the typeface has no glyph for. */
    private static final int UNKNOWN = 0xFFFD;

    private static final int SIGNS = 0x10000;
    private static final String FOLDER = "/com/formdev/flatlaf/fonts/roboto/";

    private final byte[] file;
    // In thousandths of the size, whole as they are embedded; −1 where there is no glyph.
    private final int[] advances = new int[SIGNS];
    private final double ascent;
    private final double descent;

    Face(String name) {
        try (InputStream in = Face.class.getResourceAsStream(FOLDER + name)) {
            file = Objects.requireNonNull(in, name + " comes with the build").readAllBytes();
            try (TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(file))) {
                double unit = font.getUnitsPerEm();
                ascent = font.getHorizontalHeader().getAscender() / unit;
                descent = -font.getHorizontalHeader().getDescender() / unit;
                CmapLookup glyphs = font.getUnicodeCmapLookup();
                for (int sign = 0; sign < SIGNS; sign++) {
                    int glyph = sign < ' ' ? 0 : glyphs.getGlyphId(sign);
                    advances[sign] =
                            glyph == 0
                                    ? -1
                                    : (int) Math.round(font.getAdvanceWidth(glyph) * 1000 / unit);
                }
            }
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** The typeface's file, to be embedded. */
    byte[] file() {
        return file.clone();
    }

    /** How far letters rise over the line, as a share of their size. */
    double ascent() {
        return ascent;
    }

    /** How far they reach below it, as a share of their size. */
    double descent() {
        return descent;
    }

    /** How long known words are, points. */
    double width(String words, double size) {
        long sum = 0;
        for (int i = 0; i < words.length(); i++) {
            sum += Math.max(0, advances[words.charAt(i)]);
        }
        return sum * size / 1000;
    }

    /**
     * The words as they can be printed: signs without a glyph, of scripts that the typeface does
     * not have, give way to a replacement sign each, and control characters to spaces.
     */
    String known(String words) {
        StringBuilder known = new StringBuilder(words.length());
        words.codePoints()
                .forEach(
                        sign -> {
                            if (Character.isISOControl(sign) || Character.isSpaceChar(sign)) {
                                known.append(' ');
                            } else if (sign < SIGNS && advances[sign] >= 0) {
                                known.append((char) sign);
                            } else if (Character.getType(sign) != Character.FORMAT) {
                                known.append(advances[UNKNOWN] >= 0 ? (char) UNKNOWN : '?');
                            }
                        });
        return known.toString();
    }

    /** Known words where they fit, else as much of them as does, and an ellipsis. */
    String fitted(String words, double size, double room) {
        return width(words, size) <= room ? words : cut(words, size, room);
    }

    /** As much of known words as fits with an ellipsis behind it. */
    String cut(String words, double size, double room) {
        int end = words.length();
        while (end > 0 && width(words.substring(0, end).stripTrailing() + "…", size) > room) {
            end--;
        }
        return words.substring(0, end).stripTrailing() + "…";
    }
}

package deferent.page;

import java.awt.geom.AffineTransform;
import java.awt.geom.GeneralPath;
import java.awt.geom.Path2D;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.GlyphData;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TTFSubsetter;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.jspecify.annotations.Nullable;

/**
 * A typeface's file, read by fontbox: how far each sign advances, its outline, and smaller files
 * with some of its signs. AWT's own fonts are left alone: where a machine has no typeface at all
 * they fail even for a file that a program brings along, and elsewhere letters come out as its
 * FreeType and settings will have them. Outlines are filled like every other shape.
 */
final class Glyphs {
    private static final int SIGNS = 0x10000;

    /** What a browser asks of a file, and the hints that the outlines refer to. */
    private static final List<String> TABLES =
            List.of(
                    "OS/2", "cmap", "cvt ", "fpgm", "gasp", "glyf", "head", "hhea", "hmtx", "loca",
                    "maxp", "name", "post", "prep");

    private final byte[] file;
    private final TrueTypeFont font;
    // In thousandths of the size, whole as they are embedded; −1 where there is no glyph.
    private final int[] advances = new int[SIGNS];
    private final double ascent;
    private final double descent;
    private final Map<Integer, Path2D> outlines = new ConcurrentHashMap<>();

    private Glyphs(byte[] file, TrueTypeFont font) throws IOException {
        this.file = file;
        this.font = font;
        double unit = font.getUnitsPerEm();
        ascent = font.getHorizontalHeader().getAscender() / unit;
        descent = -font.getHorizontalHeader().getDescender() / unit;
        CmapLookup glyphs = font.getUnicodeCmapLookup();
        for (int sign = 0; sign < SIGNS; sign++) {
            int glyph = sign < ' ' ? 0 : glyphs.getGlyphId(sign);
            advances[sign] =
                    glyph == 0 ? -1 : (int) Math.round(font.getAdvanceWidth(glyph) * 1000 / unit);
        }
    }

    /** Of a file among the resources. */
    static Glyphs of(String place) {
        try (InputStream in = found(place)) {
            byte[] file = Objects.requireNonNull(in, place + " comes along").readAllBytes();
            // It holds no more than the bytes just read, so nothing is lost by not closing it.
            return new Glyphs(file, new TTFParser().parse(new RandomAccessReadBuffer(file)));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    // On a module path a class finds its own module's files alone, and the loader the others'.
    private static @Nullable InputStream found(String place) {
        InputStream own = Glyphs.class.getResourceAsStream(place);
        return own != null
                ? own
                : Glyphs.class.getClassLoader().getResourceAsStream(place.substring(1));
    }

    byte[] file() {
        return file.clone();
    }

    /** A file of the same face with no more than some signs that it has. */
    byte[] file(int[] signs) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        // Glyphs are read from one place in one file.
        synchronized (font) {
            try {
                TTFSubsetter some = new TTFSubsetter(font, TABLES);
                IntStream.of(signs).forEach(some::add);
                some.writeToStream(out);
            } catch (IOException unreadable) {
                throw new UncheckedIOException(unreadable);
            }
        }
        return out.toByteArray();
    }

    double ascent() {
        return ascent;
    }

    double descent() {
        return descent;
    }

    /** How far a sign advances, thousandths of the size; −1 where there is no glyph. */
    int advance(int sign) {
        return sign < SIGNS ? advances[sign] : -1;
    }

    /** Known words of size one, their line beginning at the origin, y downward. */
    Path2D outline(String words) {
        Path2D.Double line = new Path2D.Double(Path2D.WIND_NON_ZERO);
        long come = 0;
        for (int i = 0; i < words.length(); i++) {
            char sign = words.charAt(i);
            line.append(
                    outlines.computeIfAbsent((int) sign, this::read)
                            .getPathIterator(
                                    AffineTransform.getTranslateInstance(come / 1000.0, 0)),
                    false);
            come += Math.max(0, advance(sign));
        }
        return line;
    }

    private Path2D read(int sign) {
        synchronized (font) {
            try {
                int glyph = font.getUnicodeCmapLookup().getGlyphId(sign);
                GlyphData drawn = font.getGlyph().getGlyph(glyph);
                double unit = 1.0 / font.getUnitsPerEm();
                return new Path2D.Double(
                        drawn == null ? new GeneralPath() : drawn.getPath(),
                        AffineTransform.getScaleInstance(unit, -unit));
            } catch (IOException unreadable) {
                throw new UncheckedIOException(unreadable);
            }
        }
    }
}

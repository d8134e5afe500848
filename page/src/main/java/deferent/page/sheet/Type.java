package deferent.page.sheet;

import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2DFontTextDrawer;
import deferent.page.Face;
import java.awt.Font;
import java.io.IOException;
import java.text.AttributedCharacterIterator;
import java.util.EnumMap;
import java.util.Map;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/**
 * The {@link Face faces} of one document, embedded as far as they are used. Letters are set one by
 * one, without ligatures, so that every word can be searched for.
 */
final class Type implements AutoCloseable {
    private final PDDocument document;
    private final Map<Face, TrueTypeFont> files = new EnumMap<>(Face.class);
    private final Map<Face, PDFont> fonts = new EnumMap<>(Face.class);

    Type(PDDocument document) {
        this.document = document;
    }

    PDFont font(Face face) throws IOException {
        PDFont known = fonts.get(face);
        if (known != null) {
            return known;
        }
        TrueTypeFont file = new TTFParser().parse(new RandomAccessReadBuffer(face.file()));
        file.setEnableGsub(false);
        files.put(face, file);
        PDFont font = PDType0Font.load(document, file, true);
        fonts.put(face, font);
        return font;
    }

    /** Sets the text in pictures in the same faces. */
    PdfBoxGraphics2DFontTextDrawer inPictures() {
        return new PdfBoxGraphics2DFontTextDrawer() {
            @Override
            protected PDFont mapFont(Font font, IFontTextDrawerEnv env) throws IOException {
                return Type.this.font(font.isBold() ? Face.BOLD : Face.REGULAR);
            }

            @Override
            public boolean canDrawText(AttributedCharacterIterator text, IFontTextDrawerEnv env) {
                // Only known words come here; asking the font would ask the machine for its own.
                return true;
            }
        };
    }

    @Override
    public void close() throws IOException {
        for (TrueTypeFont file : files.values()) {
            file.close();
        }
    }
}

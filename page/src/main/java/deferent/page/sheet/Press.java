package deferent.page.sheet;

import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2D;
import deferent.page.Palette;
import deferent.page.Picture;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.Typesetter;
import java.awt.Color;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.IntConsumer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDBorderStyleDictionary;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageFitDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import org.apache.pdfbox.util.Matrix;

/**
 * Prints pages as PDF: letters as text in embedded faces, pictures as lines and curves. Nothing is
 * written before every page is printed, so whoever stops it finds nothing half done. The same pages
 * give the same bytes.
 */
final class Press {
    private final PDDocument document;
    private final Type type;
    private final Tagging tagging = new Tagging();
    private final Map<Drawn, PDFormXObject> pictures = new HashMap<>();

    private Press(PDDocument document, Type type) {
        this.document = document;
        this.type = type;
    }

    // Scenes are told apart as objects, so that one picture on many pages is drawn once.
    private record Drawn(Object what, Object how) {}

    /**
     * Prints leaves as one PDF.
     *
     * @param title of the document
     * @param printed told after each page how many are done
     * @param stop asked before each page
     * @return whether it was written to {@code out}; if not, nothing was
     */
    static boolean print(
            List<Leaf> leaves,
            String title,
            OutputStream out,
            IntConsumer printed,
            BooleanSupplier stop)
            throws IOException {
        try (PDDocument document = new PDDocument();
                Type type = new Type(document)) {
            Press press = new Press(document, type);
            List<PDPage> pages = new ArrayList<>();
            for (Leaf leaf : leaves) {
                PDPage page =
                        new PDPage(
                                new PDRectangle(
                                        (float) leaf.size().width(), (float) leaf.size().height()));
                document.addPage(page);
                pages.add(page);
            }
            for (int i = 0; i < leaves.size(); i++) {
                if (stop.getAsBoolean()) {
                    return false;
                }
                press.print(leaves.get(i), pages.get(i), pages);
                printed.accept(i + 1);
            }
            press.bookmarks(leaves, pages);
            press.about(title);
            if (stop.getAsBoolean()) {
                return false;
            }
            document.save(out);
            return true;
        }
    }

    /** A page of a still's own size, with nothing else on it. */
    static void print(Scene scene, Still still, OutputStream out) throws IOException {
        try (PDDocument document = new PDDocument();
                Type type = new Type(document)) {
            Press press = new Press(document, type);
            PDPage page = new PDPage(new PDRectangle(still.width(), still.height()));
            document.addPage(page);
            try (PDPageContentStream on = new PDPageContentStream(document, page)) {
                Tagging.Sheaf sheaf = press.tagging.sheaf(page, on);
                sheaf.open(Optional.of(Tag.figure(PictureWords.still(scene, still))));
                on.drawForm(press.picture(scene, still));
                sheaf.close();
            }
            press.about(PictureWords.title(scene, still));
            document.save(out);
        }
    }

    private void about(String title) throws IOException {
        PDDocumentInformation about = new PDDocumentInformation();
        about.setTitle(title);
        PDViewerPreferences view =
                new PDViewerPreferences(new org.apache.pdfbox.cos.COSDictionary());
        view.setDisplayDocTitle(true);
        document.getDocumentCatalog().setViewerPreferences(view);
        about.setCreator("Deferent");
        document.setDocumentInformation(about);
        document.getDocumentCatalog().setLanguage("en-GB");
        // Not the time: the same pages give the same file.
        document.setDocumentId((long) title.hashCode());
        tagging.end(document, title);
    }

    private void print(Leaf leaf, PDPage page, List<PDPage> pages) throws IOException {
        double height = leaf.size().height();
        try (PDPageContentStream on =
                new PDPageContentStream(document, page, AppendMode.OVERWRITE, true)) {
            Tagging.Sheaf sheaf = tagging.sheaf(page, on);
            for (Mark mark : leaf.marks()) {
                if (mark instanceof Mark.Link link) {
                    PDAnnotationLink there = link(link, height, pages.get(link.leaf()));
                    page.getAnnotations().add(there);
                    link.tag().ifPresent(tag -> sheaf.link(there, tag));
                } else {
                    sheaf.open(mark.tag());
                    print(mark, height, on);
                }
            }
            sheaf.close();
        }
    }

    private void print(Mark mark, double height, PDPageContentStream on) throws IOException {
        if (mark instanceof Mark.Text text) {
            print(text, height, on);
        } else if (mark instanceof Mark.Rule rule) {
            print(rule, height, on);
        } else if (mark instanceof Mark.Patch patch) {
            print(patch, height, on);
        } else if (mark instanceof Mark.Plate plate) {
            place(picture(plate.scene(), plate.still()), plate.box(), height, on);
        } else if (mark instanceof Mark.Sample sample) {
            place(sample(sample), sample.box(), height, on);
        } else if (mark instanceof Mark.Drawn drawn) {
            place(passage(drawn), drawn.box(), height, on);
        }
    }

    private void print(Mark.Text text, double height, PDPageContentStream on) throws IOException {
        on.beginText();
        on.setFont(type.font(text.face()), (float) text.size());
        on.setNonStrokingColor(colour(text.ink()));
        on.newLineAtOffset((float) text.x(), (float) (height - text.baseline()));
        on.showText(text.words());
        on.endText();
    }

    private static void print(Mark.Rule rule, double height, PDPageContentStream on)
            throws IOException {
        Box box = rule.box();
        on.setStrokingColor(colour(rule.ink()));
        on.setLineWidth((float) rule.width());
        on.moveTo((float) box.x(), (float) (height - box.y()));
        on.lineTo((float) box.right(), (float) (height - box.bottom()));
        on.stroke();
    }

    private static void print(Mark.Patch patch, double height, PDPageContentStream on)
            throws IOException {
        Box box = patch.box();
        on.addRect(
                (float) box.x(),
                (float) (height - box.bottom()),
                (float) box.width(),
                (float) box.height());
        if (patch.full()) {
            on.setNonStrokingColor(colour(patch.ink()));
            on.fill();
        } else {
            on.setStrokingColor(colour(patch.ink()));
            on.setLineWidth((float) Mark.Patch.OUTLINE);
            on.stroke();
        }
    }

    private static Color colour(Palette.Ink ink) {
        return ink.on(Palette.Theme.LIGHT);
    }

    private PDFormXObject picture(Scene scene, Still still) throws IOException {
        Drawn key = new Drawn(scene, still);
        PDFormXObject known = pictures.get(key);
        if (known != null) {
            return known;
        }
        PdfBoxGraphics2D graphics = new PdfBoxGraphics2D(document, still.width(), still.height());
        graphics.setFontTextDrawer(type.inPictures());
        graphics.setRenderingHint(
                Typesetter.KEY,
                (Typesetter)
                        (g, face, size, line, x, y) ->
                                Typesetter.draw(g, face, size, face.known(line), x, y));
        Picture.paint(scene, still, graphics);
        graphics.dispose();
        PDFormXObject form = graphics.getXFormObject();
        pictures.put(key, form);
        return form;
    }

    private PDFormXObject passage(Mark.Drawn drawn) throws IOException {
        PdfBoxGraphics2D graphics =
                new PdfBoxGraphics2D(
                        document, (float) drawn.box().width(), (float) drawn.box().height());
        PassageDrawing.paint(drawn, graphics);
        graphics.dispose();
        return graphics.getXFormObject();
    }

    private PDFormXObject sample(Mark.Sample sample) throws IOException {
        Drawn key = new Drawn(sample.side(), sample.box().width() / sample.box().height());
        PDFormXObject known = pictures.get(key);
        if (known != null) {
            return known;
        }
        PdfBoxGraphics2D graphics =
                new PdfBoxGraphics2D(
                        document, (float) sample.box().width(), (float) sample.box().height());
        LookSamples.paint(sample, graphics);
        graphics.dispose();
        PDFormXObject form = graphics.getXFormObject();
        pictures.put(key, form);
        return form;
    }

    private static void place(PDFormXObject form, Box box, double height, PDPageContentStream on)
            throws IOException {
        double scale = box.width() / form.getBBox().getWidth();
        on.saveGraphicsState();
        on.transform(
                new Matrix(
                        (float) scale,
                        0,
                        0,
                        (float) scale,
                        (float) box.x(),
                        (float) (height - box.bottom())));
        on.drawForm(form);
        on.restoreGraphicsState();
    }

    private static PDAnnotationLink link(Mark.Link mark, double height, PDPage to) {
        Box box = mark.box();
        PDAnnotationLink link = new PDAnnotationLink();
        link.setRectangle(
                new PDRectangle(
                        (float) box.x(),
                        (float) (height - box.bottom()),
                        (float) box.width(),
                        (float) box.height()));
        PDBorderStyleDictionary none = new PDBorderStyleDictionary();
        none.setWidth(0);
        link.setBorderStyle(none);
        link.setDestination(whole(to));
        return link;
    }

    private static PDPageFitDestination whole(PDPage page) {
        PDPageFitDestination there = new PDPageFitDestination();
        there.setPage(page);
        return there;
    }

    private void bookmarks(List<Leaf> leaves, List<PDPage> pages) {
        PDDocumentOutline outline = new PDDocumentOutline();
        for (int i = 0; i < leaves.size(); i++) {
            if (leaves.get(i).bookmark().isPresent()) {
                PDOutlineItem item = new PDOutlineItem();
                item.setTitle(leaves.get(i).bookmark().get());
                item.setDestination(whole(pages.get(i)));
                outline.addLast(item);
            }
        }
        if (outline.hasChildren()) {
            document.getDocumentCatalog().setDocumentOutline(outline);
        }
    }
}

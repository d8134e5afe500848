package deferent.page.sheet;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.PDXObject;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;

/** A PDF read back. */
final class Printed {
    /** Something that writes a PDF. */
    interface Writer {
        void write(OutputStream out) throws IOException;
    }

    /** A page as it is found in the file. */
    record Page(String text, double width, double height) {}

    private final byte[] bytes;

    private Printed(byte[] bytes) {
        this.bytes = bytes;
    }

    static Printed of(byte[] bytes) {
        return new Printed(bytes);
    }

    static Printed of(Writer writer) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            writer.write(out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new Printed(out.toByteArray());
    }

    byte[] bytes() {
        return bytes;
    }

    private interface Question<T> {
        T of(PDDocument document) throws IOException;
    }

    private <T> T asked(Question<T> question) {
        try (PDDocument document = Loader.loadPDF(bytes)) {
            return question.of(document);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    List<Page> pages() {
        return asked(
                document -> {
                    List<Page> pages = new ArrayList<>();
                    for (int i = 1; i <= document.getNumberOfPages(); i++) {
                        PDFTextStripper stripper = new PDFTextStripper();
                        stripper.setStartPage(i);
                        stripper.setEndPage(i);
                        PDPage page = document.getPage(i - 1);
                        pages.add(
                                new Page(
                                        stripper.getText(document).replaceAll("\\s+", " ").strip(),
                                        page.getMediaBox().getWidth(),
                                        page.getMediaBox().getHeight()));
                    }
                    return pages;
                });
    }

    /** All text, runs of spaces and line ends as one space. */
    String text() {
        return String.join(" ", pages().stream().map(Page::text).toList());
    }

    BufferedImage rendered(int page, double dpi) {
        return asked(document -> new PDFRenderer(document).renderImageWithDPI(page, (float) dpi));
    }

    List<String> bookmarks() {
        return asked(
                document -> {
                    List<String> titles = new ArrayList<>();
                    if (document.getDocumentCatalog().getDocumentOutline() != null) {
                        for (PDOutlineItem item :
                                document.getDocumentCatalog().getDocumentOutline().children()) {
                            titles.add(item.getTitle());
                        }
                    }
                    return titles;
                });
    }

    /** To which pages, counted from one, the links of a page lead, from its top down. */
    List<Integer> links(int page) {
        return asked(
                document -> {
                    List<Integer> pages = new ArrayList<>();
                    for (var annotation : document.getPage(page).getAnnotations()) {
                        if (annotation
                                instanceof
                                org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink
                                        link) {
                            var there =
                                    (org.apache.pdfbox.pdmodel.interactive.documentnavigation
                                                    .destination.PDPageDestination)
                                            link.getDestination();
                            pages.add(there.retrievePageNumber() + 1);
                        }
                    }
                    return pages;
                });
    }

    /** The names of fonts that are not embedded, anywhere in the file. */
    Set<String> foreignFonts() {
        return fonts(false);
    }

    /** The names of fonts that are. */
    Set<String> embeddedFonts() {
        return fonts(true);
    }

    private Set<String> fonts(boolean embedded) {
        return asked(
                document -> {
                    Set<String> names = new TreeSet<>();
                    for (PDPage page : document.getPages()) {
                        walk(page.getResources(), embedded, names);
                    }
                    return names;
                });
    }

    private static void walk(PDResources resources, boolean embedded, Set<String> names)
            throws IOException {
        if (resources == null) {
            return;
        }
        for (COSName name : resources.getFontNames()) {
            PDFont font = resources.getFont(name);
            if (font.isEmbedded() == embedded) {
                names.add(font.getName());
            }
        }
        for (COSName name : resources.getXObjectNames()) {
            PDXObject object = resources.getXObject(name);
            if (object instanceof PDFormXObject form) {
                walk(form.getResources(), embedded, names);
            }
        }
    }
}

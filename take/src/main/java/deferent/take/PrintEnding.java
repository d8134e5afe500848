package deferent.take;

import static deferent.take.Wish.*;

import deferent.motion.pairing.Refusal;
import deferent.page.Still;
import deferent.page.sheet.Booklet;
import deferent.page.sheet.Cards;
import deferent.page.sheet.ClassSheet;
import deferent.page.sheet.Edition;
import deferent.page.sheet.PageSize;
import deferent.page.sheet.Pdf;
import deferent.page.sheet.Print;
import deferent.page.sheet.Sheet;
import deferent.record.PatternDocument;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;

/** What is printed: a sheet, a booklet, cards to cut, or a picture. */
record PrintEnding(String key, String mediaType, String words) implements Streamed {
    private static final Family FAMILY = new Family("print", "Paper", "for students to hold");

    private static final List<String> PICTURES = FORM.usual().values();

    private static final List<Offer> PRINTED =
            Offer.all(
                    List.of(VIEW, PAPER, LEFT_HANDED, TRANSITIONS),
                    new Offer(
                            FORM,
                            Stream.concat(
                                            Offer.Choice.table(
                                                    """
                                                    sheet    a sheet
                                                    booklet  a booklet
                                                    cards    cards to cut
                                                    student  a class's sheet, for students
                                                    teacher  a class's sheet, for the teacher
                                                    """)
                                                    .stream(),
                                            FORM.usual().choices().stream())
                                    .toList(),
                            "sheet",
                            List.of(),
                            List.of("booklet", "cards", "student", "teacher")));

    /** A picture, on paper. */
    private static final List<Offer> PAPERED =
            Stream.concat(PictureEnding.USUAL.stream(), Stream.of(PAPER.usual()))
                    .sorted(Comparator.comparing(Offer::wish))
                    .toList();

    /** Of a page in a preview. */
    private static final float DOTS_PER_INCH = 96;

    /** The longer edge of such a page at most, pixels. */
    private static final float LONGEST = 1200;

    @Override
    public Family family() {
        return FAMILY;
    }

    private static boolean picture(String form) {
        return PICTURES.contains(form);
    }

    @Override
    public List<Offer> offers(String form) {
        return picture(form) ? PAPERED : PRINTED;
    }

    @Override
    public List<Offer> offers() {
        return Offer.all(
                List.of(),
                Stream.concat(
                                PRINTED.stream(),
                                PictureEnding.USUAL.stream()
                                        .filter(
                                                o ->
                                                        PRINTED.stream()
                                                                .noneMatch(
                                                                        p -> p.wish() == o.wish()))
                                        .map(o -> o.forms().isEmpty() ? o.only(PICTURES) : o))
                        .toArray(Offer[]::new));
    }

    @Override
    public boolean many() {
        return true;
    }

    @Override
    public Writing writing(Take take) {
        Wishes wishes = take.wishes();
        List<PatternDocument> patterns = take.patterns();
        boolean many = patterns.size() > 1;
        String form = wishes.word(FORM);
        if (picture(form)) {
            if (many) {
                throw new Refusal(
                        "shows one pattern",
                        "form " + form,
                        "leave it out for a booklet, or say cards");
            }
            Subject subject = take.subject();
            Still still = subject.still(wishes);
            return Writing.whole(
                    "picture", Pdf.still(subject.scene(still.layers()), still, paper(wishes)));
        }
        Edition edition = edition(take);
        Print print;
        String told;
        if (form.equals("student") || form.equals("teacher")) {
            ClassSheet.Reader reader = ClassSheet.Reader.valueOf(form.toUpperCase(Locale.ROOT));
            print = new ClassSheet(take.title(), patterns, edition, reader);
            told = form + "'s sheet";
        } else if (form.equals("cards")) {
            print = new Cards(take.title(), patterns, edition);
            told = many ? patterns.size() + " cards" : "one card";
        } else if (form.equals("booklet") || many) {
            Booklet plain = Booklet.of(take.title(), patterns, edition);
            Booklet booklet = take.route() ? plain.asRoute() : plain.amongThemselves();
            boolean compared = wishes.yes(TRANSITIONS) && (many || wishes.has(TRANSITIONS));
            print = compared ? booklet : plain;
            told = "booklet of " + (many ? patterns.size() : "one");
        } else {
            Sheet sheet = Sheet.of(patterns.get(0), edition);
            print = wishes.yes(TRANSITIONS) ? sheet.among(take.others()) : sheet;
            told = "sheet";
        }
        return (out, listener, stop) ->
                print.write(out, p -> listener.accept(TakeProgress.of(p)), stop)
                        ? Optional.of(told)
                        : Optional.empty();
    }

    static PageSize paper(Wishes wishes) {
        return wishes.word(PAPER).equals("letter") ? PageSize.LETTER : PageSize.A4;
    }

    private static Edition edition(Take take) {
        Wishes wishes = take.wishes();
        return Edition.USUAL
                .with(paper(wishes))
                .with(wishes.view().stand())
                .with(take.lexicon())
                .mirrored(wishes.yes(LEFT_HANDED));
    }

    @Override
    public Optional<Preview> preview(Take take, boolean calm, BooleanSupplier stop)
            throws IOException {
        Wishes wishes = take.wishes();
        String form = wishes.word(FORM);
        boolean compared =
                !picture(form)
                        && List.of("sheet", "booklet").contains(form)
                        && wishes.yes(TRANSITIONS)
                        && take.patterns().size() + take.others().size() > 1;
        // Comparing patterns takes far longer than printing them.
        Take quick = picture(form) ? take : take.with(wishes.with(TRANSITIONS, "no"));
        Optional<byte[]> pdf = writing(quick).bytes(stop);
        if (pdf.isEmpty()) {
            return Optional.empty();
        }
        try (PDDocument document = Loader.loadPDF(pdf.get())) {
            int pages = document.getNumberOfPages();
            Preview first =
                    Preview.of(
                            firstPage(document),
                            "image/png",
                            (pages == 1 ? "1 page" : "first of " + pages + " pages")
                                    + ", about "
                                    + Taken.size(pdf.get().length));
            return Optional.of(
                    compared
                            ? first.noted("What leads where is worked out when it is written.")
                            : first);
        }
    }

    private static byte[] firstPage(PDDocument document) throws IOException {
        float longer =
                Math.max(
                        document.getPage(0).getMediaBox().getWidth(),
                        document.getPage(0).getMediaBox().getHeight());
        BufferedImage first =
                new PDFRenderer(document)
                        .renderImageWithDPI(0, Math.min(DOTS_PER_INCH, 72 * LONGEST / longer));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        // In memory: a cache on disk would outlive a process that is killed.
        try (MemoryCacheImageOutputStream into = new MemoryCacheImageOutputStream(out)) {
            ImageIO.write(first, "png", into);
        }
        return out.toByteArray();
    }
}

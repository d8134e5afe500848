package deferent.take;

import deferent.motion.trace.Rate;
import deferent.page.Layer;
import deferent.page.Png;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.Svg;
import deferent.record.landing.Scratch;
import deferent.reel.Clip;
import deferent.reel.ClipReport;
import deferent.reel.Clips;
import deferent.reel.Kind;
import deferent.reel.Natives;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import javax.imageio.ImageIO;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;

/**
 * What a file will be, before it is written: by the same writers, small or in part.
 *
 * @param mediaType of the bytes: a picture, a page of HTML, or the first lines of a table
 * @param told size and length of the file itself, in words
 * @param moves whether the file moves
 * @param note what stands in the way of a better preview, or of the file itself; empty for nothing
 * @param writable whether this machine can write the file
 * @param caution what to say to whom it is shown; empty for nothing
 */
public record Preview(
        byte[] bytes,
        String mediaType,
        String told,
        boolean moves,
        String note,
        boolean writable,
        String caution) {
    /** The longer edge of a picture, pixels. */
    private static final int EDGE = 640;

    /** The longer edge of a clip, pixels. */
    private static final int CLIP_EDGE = 320;

    private static final int CLIP_RATE = 20;

    /** So many frames are made while somebody waits. */
    private static final int CLIP_FRAMES = 60;

    private static final int LEAST_RATE = 2;

    /** Of a printed page. */
    private static final float DOTS_PER_INCH = 96;

    private static final int LINES = 14;

    /** When one picture does for what moves. */
    public enum Calm {
        NEVER,
        /** Where its lights move so fast that it asks for a caution. */
        FAST,
        ALWAYS
    }

    /** Arrays don't compare by what they hold. */
    @Override
    public boolean equals(Object other) {
        return other instanceof Preview p
                && Arrays.equals(bytes, p.bytes)
                && mediaType.equals(p.mediaType)
                && told.equals(p.told)
                && moves == p.moves
                && note.equals(p.note)
                && writable == p.writable
                && caution.equals(p.caution);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(bytes) + told.hashCode();
    }

    /**
     * Refuses whatever the file itself would be refused for.
     *
     * @param calm when one picture does for what moves
     * @param stop asked every little while
     * @return empty where it was stopped
     */
    public static Optional<Preview> of(Take take, Calm calm, BooleanSupplier stop) {
        String caution = Moving.caution(take).orElse("");
        boolean still = calm == Calm.ALWAYS || (calm == Calm.FAST && !caution.isEmpty());
        try {
            return switch (take.wishes().ending().family()) {
                case PICTURE -> Optional.of(picture(take, still, caution));
                case PRINT -> print(take, stop);
                case CLIP -> clip(take, still, caution, stop);
                case PAGE -> page(take, stop);
                case SPACE -> Optional.of(model(take));
                case TIMING -> Optional.of(table(take, stop));
            };
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Preview still(byte[] bytes, String mediaType, String told) {
        return new Preview(bytes, mediaType, told, false, "", true, "");
    }

    private static Preview png(Scene scene, Still still, int edge, String told) {
        return still(Png.of(scene, small(still, edge)), Ending.PNG.mediaType(), told);
    }

    private static Still small(Still still, int edge) {
        double scale = Math.min(1, (double) edge / Math.max(still.width(), still.height()));
        return still.sized(
                Math.max(48, (int) Math.rint(scale * still.width())),
                Math.max(48, (int) Math.rint(scale * still.height())));
    }

    private static Preview picture(Take take, boolean calm, String caution) throws IOException {
        Wishes wishes = take.wishes();
        Writing writing = Writing.of(take);
        Subject subject = take.subject();
        Still still = Pictures.still(subject, wishes);
        Scene scene = subject.scene(still.layers());
        String told = still.width() + " by " + still.height() + " pixels";
        if (wishes.ending() == Ending.PNG) {
            return png(scene, still, EDGE, told);
        }
        boolean moving = wishes.yes(Wish.MOVING, false);
        byte[] whole = written(writing, () -> false).orElseThrow();
        byte[] shown =
                moving && calm ? Svg.of(scene, still).getBytes(StandardCharsets.UTF_8) : whole;
        return new Preview(
                shown,
                Ending.SVG.mediaType(),
                told + ", " + TakeAway.size(whole.length),
                moving,
                "",
                true,
                caution);
    }

    private static Optional<Preview> print(Take take, BooleanSupplier stop) throws IOException {
        Wishes wishes = take.wishes();
        boolean picture = Pictures.FORMS.contains(wishes.word(Wish.FORM, Pictures.PRINTS));
        boolean crossed =
                !picture
                        && wishes.yes(Wish.CROSSINGS, true)
                        && take.patterns().size() + take.others().size() > 1
                        && !wishes.text(Wish.FORM).orElse("").equals("cards");
        // Comparing patterns takes far longer than printing them.
        Take quick = picture ? take : take.with(wishes.with(Wish.CROSSINGS, "no"));
        Optional<byte[]> pdf = written(Writing.of(quick), stop);
        if (pdf.isEmpty()) {
            return Optional.empty();
        }
        try (PDDocument document = Loader.loadPDF(pdf.get())) {
            float longer =
                    Math.max(
                            document.getPage(0).getMediaBox().getWidth(),
                            document.getPage(0).getMediaBox().getHeight());
            BufferedImage first =
                    new PDFRenderer(document)
                            .renderImageWithDPI(0, Math.min(DOTS_PER_INCH, 72 * 1200 / longer));
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            // In memory: a cache on disk would outlive a process that is killed.
            try (MemoryCacheImageOutputStream into = new MemoryCacheImageOutputStream(out)) {
                ImageIO.write(first, "png", into);
            }
            int pages = document.getNumberOfPages();
            return Optional.of(
                    new Preview(
                            out.toByteArray(),
                            Ending.PNG.mediaType(),
                            (pages == 1 ? "1 page" : "first of " + pages + " pages")
                                    + ", about "
                                    + TakeAway.size(pdf.get().length),
                            false,
                            crossed ? "What leads where is worked out when it is written." : "",
                            true,
                            ""));
        }
    }

    private static Optional<Preview> clip(
            Take take, boolean calm, String caution, BooleanSupplier stop) throws IOException {
        Clip clip = Moving.clip(take);
        int frames = clip.frames();
        String told =
                String.format(
                        Locale.ROOT,
                        "%d frames, %.2f s, %d by %d pixels",
                        frames,
                        clip.seconds(),
                        clip.still().width(),
                        clip.still().height());
        Optional<String> whyNot = Natives.available();
        if (calm || whyNot.isPresent()) {
            boolean writable = whyNot.isEmpty() || !clip.kind().needsNatives();
            return Optional.of(
                    new Preview(
                            Png.of(clip.scene(), small(clip.still(), EDGE)),
                            Ending.PNG.mediaType(),
                            told,
                            true,
                            whyNot.map(
                                            why ->
                                                    "One frame: "
                                                            + why
                                                            + (writable
                                                                    ? "."
                                                                    : "; take numbered PNG files in"
                                                                            + " a .zip instead."))
                                    .orElse(""),
                            writable,
                            caution));
        }
        double seconds = clip.cycles(1).seconds();
        int rate =
                (int)
                        Math.max(
                                LEAST_RATE,
                                Math.min(
                                        Math.min(CLIP_RATE, clip.rate().perSecond()),
                                        CLIP_FRAMES / seconds));
        Clip small =
                new Clip(
                        clip.scene(),
                        small(clip.still(), CLIP_EDGE),
                        Kind.WEBP,
                        Rate.of((long) rate),
                        1,
                        clip.slow());
        try (Scratch scratch = Scratch.open()) {
            Path file = scratch.folder().resolve("preview.webp");
            Optional<ClipReport> report = Clips.write(small, file, p -> {}, stop);
            if (report.isEmpty()) {
                return Optional.empty();
            }
            return Optional.of(
                    new Preview(
                            Files.readAllBytes(file),
                            Ending.WEBP.mediaType(),
                            told,
                            true,
                            "",
                            true,
                            caution));
        }
    }

    private static Optional<Preview> page(Take take, BooleanSupplier stop) throws IOException {
        return written(Writing.of(take), stop)
                .map(
                        html ->
                                new Preview(
                                        html,
                                        Ending.HTML.mediaType(),
                                        "one file, " + TakeAway.size(html.length),
                                        true,
                                        "",
                                        true,
                                        ""));
    }

    private static Preview model(Take take) {
        Subject subject = take.subject();
        return png(
                subject.scene(Layer.usual()),
                Still.square(EDGE).without(Layer.BODY),
                EDGE,
                String.format(
                        Locale.ROOT, "model that moves for %.2f s", subject.trace().period()));
    }

    private static Preview table(Take take, BooleanSupplier stop) throws IOException {
        Writing writing = Writing.of(take);
        Lines lines = new Lines(LINES);
        // Of a long table only as much is worked out as is shown.
        writing.write(lines, p -> {}, () -> lines.full() || stop.getAsBoolean());
        return still(
                lines.text().getBytes(StandardCharsets.UTF_8),
                "text/plain",
                Writing.rows(take) + " rows");
    }

    private static Optional<byte[]> written(Writing writing, BooleanSupplier stop)
            throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        return writing.write(out, p -> {}, stop).map(told -> out.toByteArray());
    }

    /** Keeps the first lines of what is written, each cut where nobody reads on. */
    private static final class Lines extends OutputStream {
        private static final int LONGEST = 160;

        private final int most;
        private final StringBuilder text = new StringBuilder();
        private int count;
        private int width;

        Lines(int most) {
            this.most = most;
        }

        boolean full() {
            return count >= most;
        }

        @Override
        public void write(int b) {
            if (full()) {
                return;
            }
            if (b == '\n') {
                count++;
                width = 0;
            } else if (++width > LONGEST) {
                if (width == LONGEST + 1) {
                    text.append('…');
                }
                return;
            }
            text.append((char) (b & 0xff));
        }

        String text() {
            return text.toString();
        }
    }
}

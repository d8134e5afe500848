package deferent.take;

import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Rate;
import deferent.page.Layer;
import deferent.page.MovingSvg;
import deferent.page.Png;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.Svg;
import deferent.page.View;
import deferent.page.sheet.Booklet;
import deferent.page.sheet.Cards;
import deferent.page.sheet.Edition;
import deferent.page.sheet.PageSize;
import deferent.page.sheet.Pdf;
import deferent.page.sheet.Print;
import deferent.page.sheet.Sheet;
import deferent.page.web.Gltf;
import deferent.page.web.LessonPage;
import deferent.reading.worked.Detail;
import deferent.record.PatternDocument;
import deferent.record.TimingTable;
import deferent.search.whole.Readings;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;

/** How a file that is no clip is written. */
interface Writing {
    /**
     * Writes it.
     *
     * @return what was written, in words; empty where it was stopped
     */
    Optional<String> write(OutputStream out, Consumer<TakeProgress> listener, BooleanSupplier stop)
            throws IOException;

    /** All of a take is checked here, before any file is touched. */
    static Writing of(Take take) {
        return switch (take.wishes().ending()) {
            case SVG, PNG -> picture(take);
            case PDF -> print(take);
            case HTML -> page(take);
            case GLTF, GLB -> model(take);
            case CSV, JSON -> timing(take);
            case MP4, WEBM, MOV, WEBP, GIF, ZIP ->
                    throw new IllegalArgumentException("clips are written by Moving");
        };
    }

    private static Writing whole(String told, byte[] bytes) {
        return (out, listener, stop) -> {
            out.write(bytes);
            return Optional.of(told);
        };
    }

    private static Writing whole(String told, String text) {
        return whole(told, text.getBytes(StandardCharsets.UTF_8));
    }

    private static Writing picture(Take take) {
        Wishes wishes = take.wishes();
        Subject subject = take.subject();
        Still still = Pictures.still(subject, wishes);
        Scene scene = subject.scene(still.layers());
        String told = still.width() + " by " + still.height() + " pixels";
        if (wishes.ending() == Ending.PNG) {
            if (wishes.yes(Wish.MOVING, false)) {
                throw new Refusal(
                        "moves as an .svg only", "moving", "end the file in .svg or .webp");
            }
            return (out, listener, stop) -> {
                Png.write(scene, still, out);
                return Optional.of(told);
            };
        }
        boolean moving = wishes.yes(Wish.MOVING, false);
        if (moving && (still.shows(Layer.LABELS) || still.shows(Layer.COUNTS))) {
            throw new Refusal(
                    "are not drawn in an SVG that moves",
                    "labels and counts",
                    "leave them out, or end the file in .html or .webp");
        }
        return moving
                ? whole("moving picture, " + told, MovingSvg.of(scene, still))
                : whole(told, Svg.of(scene, still));
    }

    private static Writing print(Take take) {
        Wishes wishes = take.wishes();
        boolean many = take.patterns().size() > 1;
        String form = wishes.word(Wish.FORM, Pictures.PRINTS);
        if (Pictures.FORMS.contains(form)) {
            if (many) {
                throw new Refusal(
                        "shows one pattern",
                        "form " + form,
                        "leave it out for a booklet, or say cards");
            }
            Subject subject = take.subject();
            Still still = Pictures.still(subject, wishes);
            return whole("picture", Pdf.still(subject.scene(still.layers()), still));
        }
        Edition edition = edition(take);
        List<PatternDocument> patterns = take.patterns();
        Print print;
        String told;
        if (form.equals("cards")) {
            print = new Cards(take.title(), patterns, edition);
            told = patterns.size() == 1 ? "one card" : patterns.size() + " cards";
        } else if (form.equals("booklet") || many) {
            Booklet plain = Booklet.of(take.title(), patterns, edition);
            Booklet booklet = take.route() ? plain.asRoute() : plain.crossed();
            print = wishes.yes(Wish.CROSSINGS, many) ? booklet : plain;
            told = "booklet of " + (patterns.size() == 1 ? "one" : patterns.size());
        } else {
            Sheet sheet = Sheet.of(patterns.get(0), edition);
            print = wishes.yes(Wish.CROSSINGS, true) ? sheet.among(take.others()) : sheet;
            told = "sheet";
        }
        return (out, listener, stop) ->
                print.write(
                                out,
                                p ->
                                        listener.accept(
                                                new TakeProgress(
                                                        (double) p.done() / Math.max(1, p.all()),
                                                        p.told())),
                                stop)
                        ? Optional.of(told)
                        : Optional.empty();
    }

    private static Edition edition(Take take) {
        Wishes wishes = take.wishes();
        View.Stand stand = wishes.view().stand();
        return Edition.USUAL
                .with(
                        wishes.word(Wish.PAPER, List.of("a4", "letter")).equals("letter")
                                ? PageSize.LETTER
                                : PageSize.A4)
                .with(stand)
                .with(take.lexicon())
                .mirrored(wishes.yes(Wish.MIRRORED, false));
    }

    private static Writing page(Take take) {
        Subject subject = take.subject();
        PatternDocument document = subject.document();
        Set<Layer> layers = take.wishes().layers();
        Readings readings =
                Readings.of(
                        document.pairing(),
                        document.performer(),
                        document.kit(),
                        Detail.SETTLED,
                        take.lexicon());
        return whole(
                "page",
                LessonPage.of(
                        subject.scene(layers),
                        readings,
                        document.name(),
                        document.note(),
                        take.wishes().view().stand()));
    }

    private static Writing model(Take take) {
        Subject subject = take.subject();
        Scene scene = subject.scene(Layer.usual());
        PatternDocument document = subject.document();
        double head = document.kit().headDiameter();
        return whole(
                "model of one cycle",
                take.wishes().ending() == Ending.GLB
                        ? Gltf.binary(scene, document.name(), head)
                        : Gltf.embedded(scene, document.name(), head));
    }

    /** How long a table will be. */
    static long rows(Take take) {
        return TimingTable.rows(take.subject().trace(), rate(take), cycles(take));
    }

    private static Rate rate(Take take) {
        return Rate.of(take.wishes().text(Wish.RATE).orElse("100"));
    }

    private static int cycles(Take take) {
        return take.wishes().whole(Wish.CYCLES, 1);
    }

    private static Writing timing(Take take) {
        Rate rate = rate(take);
        int cycles = cycles(take);
        Subject subject = take.subject();
        boolean csv = take.wishes().ending() == Ending.CSV;
        long rows = TimingTable.rows(subject.trace(), rate, cycles);
        return (out, listener, stop) -> {
            Writer text = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
            DoubleConsumer progress =
                    share -> listener.accept(new TakeProgress(share, "of " + rows + " rows"));
            boolean done =
                    csv
                            ? TimingTable.csv(
                                    subject.trace(),
                                    subject.document().kit(),
                                    rate,
                                    cycles,
                                    text,
                                    progress,
                                    stop)
                            : TimingTable.json(
                                    subject.trace(),
                                    subject.document().kit(),
                                    rate,
                                    cycles,
                                    text,
                                    progress,
                                    stop);
            text.flush();
            return done ? Optional.of(rows + " rows") : Optional.empty();
        };
    }
}

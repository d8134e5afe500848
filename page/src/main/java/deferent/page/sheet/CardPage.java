package deferent.page.sheet;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.MotionWords;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Counts;
import deferent.motion.trace.Trace;
import deferent.page.Face;
import deferent.page.Palette.Ink;
import deferent.page.Scene;
import deferent.page.sheet.Galley.Piece;
import deferent.page.sheet.Galley.Row;
import deferent.page.sheet.Galley.Run;
import deferent.record.PatternDocument;
import deferent.tell.TellSizes;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Lays out a page of cards. What is too long for a card is set smaller, then cut. */
final class CardPage {
    static final int CARDS = 8;

    private static final int ACROSS = 2;
    private static final int DOWN = 4;
    private static final double WIDTH = 252;
    private static final double HEIGHT = 180;
    private static final double INSET = 12;
    private static final double MARK = 12;
    private static final double PICTURE = 122;

    private final Edition edition;
    private final double x;
    private final double y;

    CardPage(Edition edition) {
        this.edition = edition;
        this.x = (edition.size().width() - ACROSS * WIDTH) / 2;
        this.y = (edition.size().height() - DOWN * HEIGHT) / 2;
    }

    Leaf leaf(List<PatternDocument> patterns) {
        List<Block> blocks = new ArrayList<>();
        for (int i = 0; i < patterns.size(); i++) {
            Box card =
                    new Box(
                            x + i % ACROSS * WIDTH,
                            y + Math.floorDiv(i, ACROSS) * HEIGHT,
                            WIDTH,
                            HEIGHT);
            blocks.add(card(patterns.get(i), card, i + 1));
        }
        marks(blocks);
        Box paper = new Box(0, 0, edition.size().width(), edition.size().height());
        return new Leaf(edition.size(), paper.inset(12), blocks, Optional.empty());
    }

    /** Short lines outside the cards, at every edge that is to be cut. */
    private void marks(List<Block> blocks) {
        double right = x + ACROSS * WIDTH;
        double bottom = y + DOWN * HEIGHT;
        List<Mark> above = new ArrayList<>();
        List<Mark> below = new ArrayList<>();
        for (int i = 0; i <= ACROSS; i++) {
            above.add(mark(x + i * WIDTH, y - 4 - MARK, 0, MARK));
            below.add(mark(x + i * WIDTH, bottom + 4, 0, MARK));
        }
        List<Mark> before = new ArrayList<>();
        List<Mark> after = new ArrayList<>();
        for (int i = 0; i <= DOWN; i++) {
            before.add(mark(x - 4 - MARK, y + i * HEIGHT, MARK, 0));
            after.add(mark(right + 4, y + i * HEIGHT, MARK, 0));
        }
        blocks.add(new Block("cut above", new Box(x, y - 4 - MARK, right - x, MARK), above));
        blocks.add(new Block("cut below", new Box(x, bottom + 4, right - x, MARK), below));
        blocks.add(new Block("cut before", new Box(x - 4 - MARK, y, MARK, bottom - y), before));
        blocks.add(new Block("cut after", new Box(right + 4, y, MARK, bottom - y), after));
    }

    private static Mark mark(double x, double y, double width, double height) {
        return new Mark.Rule(new Box(x, y, width, height), 0.5, Ink.TEXT);
    }

    private Block card(PatternDocument given, Box card, int number) {
        PatternDocument pattern = Lesson.printed(given, edition);
        Pairing pairing = pattern.pairing();
        Box inner = card.inset(INSET);
        List<Mark> marks = new ArrayList<>();
        double top = inner.y();
        List<Row> name =
                fitted(Tag.Kind.TITLE, Run.bold(pattern.name()), inner.width(), 2, 13, 11, 9.5, 8);
        marks.addAll(Galley.placed(name, inner.x(), top));
        top += Galley.height(name);
        Optional<String> phrase =
                Phrase.write(pairing, edition.lexicon()).filter(p -> !p.equals(pattern.name()));
        if (phrase.isPresent()) {
            List<Row> rows =
                    fitted(
                            Tag.Kind.PARAGRAPH,
                            Run.quiet(phrase.get()),
                            inner.width(),
                            2,
                            8,
                            7.2,
                            6.6);
            marks.addAll(Galley.placed(rows, inner.x(), top));
            top += Galley.height(rows);
        }
        top += 6;
        double foot = 9;
        double bottom = inner.bottom() - foot - 3;
        Scene scene = Scene.of(Trace.of(pairing));
        Outlook outlook = Outlook.of(pairing, edition.stand());
        marks.addAll(
                Plates.card(
                        new Box(inner.x(), top, PICTURE, bottom - top),
                        scene,
                        outlook.view(),
                        Counts.of(scene.trace()).get(0),
                        pattern.name()));
        double left = inner.x() + PICTURE + 8;
        List<Row> sizes = sizes(pairing, inner.right() - left, bottom - top);
        marks.addAll(Galley.placed(sizes, left, top + 2));
        String author = pattern.author().map(a -> " · " + a).orElse("");
        String said = outlook.said() + (edition.mirrored() ? ", left-handed" : "") + author;
        marks.add(
                HandSetLines.at(
                        Face.REGULAR.fitted(Face.REGULAR.known(said), 6.2, inner.width()),
                        Face.REGULAR,
                        6.2,
                        Ink.QUIET,
                        inner.x(),
                        inner.bottom() - foot,
                        foot,
                        Optional.of(Tag.of(Tag.Kind.PARAGRAPH))));
        return new Block("card " + number, card, marks);
    }

    private List<Row> sizes(Pairing pairing, double width, double height) {
        List<Row> rows = List.of();
        for (double size : new double[] {8, 7.4, 6.8, 6.2}) {
            Galley galley = new Galley(width);
            for (Side side : Side.values()) {
                galley.paragraph(
                        List.of(
                                Run.bold(side == Side.LEFT ? "Left: " : "Right: "),
                                Run.of(MotionWords.of(pairing, side, edition.lexicon()))),
                        size,
                        side == Side.LEFT ? 0 : 2);
            }
            double before = 5;
            for (String line : TellSizes.brief(pairing)) {
                galley.paragraph(List.of(Run.quiet(line)), size, before);
                before = 2;
            }
            rows = galley.rows();
            if (Galley.height(rows) <= height - 2) {
                return rows;
            }
        }
        return cut(rows, Galley.fill(rows, 0, height - 2), width);
    }

    /** The largest size at which words take no more than so many rows; else cut to that many. */
    private static List<Row> fitted(
            Tag.Kind kind, Run words, double width, int most, double... sizes) {
        List<Row> rows = List.of();
        for (double size : sizes) {
            rows = Galley.under(Tag.of(kind), width).paragraph(List.of(words), size, 0).rows();
            if (rows.size() <= most) {
                return rows;
            }
        }
        return cut(rows, most, width);
    }

    private static List<Row> cut(List<Row> rows, int most, double width) {
        List<Row> kept = new ArrayList<>(rows.subList(0, Math.max(1, most)));
        Row last = kept.get(kept.size() - 1);
        List<Piece> pieces = new ArrayList<>(last.pieces());
        Piece end = pieces.get(pieces.size() - 1);
        String words = end.face().cut(end.words(), last.size(), width - end.x());
        pieces.set(pieces.size() - 1, new Piece(words, end.face(), end.ink(), end.x(), end.tag()));
        kept.set(
                kept.size() - 1,
                new Row(last.before(), last.leading(), last.size(), false, pieces));
        return kept;
    }
}

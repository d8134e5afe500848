package deferent.page.sheet;

import deferent.page.Face;
import deferent.page.Palette;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Text set in one long column, before it is put on pages: paragraphs wrapped to a width, row by
 * row. A word too long for a row is broken where it must; a number stays with its unit.
 */
final class Galley {
    /**
     * Words in one face.
     *
     * @param words any text; line breaks count as spaces
     */
    record Run(String words, Face face, Palette.Ink ink) {
        static Run of(String words) {
            return new Run(words, Face.REGULAR, Palette.Ink.TEXT);
        }

        static Run bold(String words) {
            return new Run(words, Face.BOLD, Palette.Ink.TEXT);
        }

        static Run quiet(String words) {
            return new Run(words, Face.REGULAR, Palette.Ink.QUIET);
        }

        Run in(Palette.Ink other) {
            return new Run(words, face, other);
        }
    }

    /** Words at a place in their row. */
    record Piece(String words, Face face, Palette.Ink ink, double x, Optional<Tag> tag) {}

    /**
     * One row.
     *
     * @param before left free above it, unless it stands on top of a column
     * @param leading its own height, points
     * @param size of its letters
     * @param binds whether it may not stand last in a column
     * @param inset a picture at its left, hanging down beside the rows that follow
     */
    record Row(
            double before,
            double leading,
            double size,
            boolean binds,
            List<Piece> pieces,
            Optional<Inset> inset) {
        Row {
            pieces = List.copyOf(pieces);
        }

        Row(double before, double leading, double size, boolean binds, List<Piece> pieces) {
            this(before, leading, size, binds, pieces, Optional.empty());
        }
    }

    /** A small picture that text stands beside. */
    record Inset(double width, double height, Function<Box, Mark> drawn) {}

    private static final double LEADING = 1.34;
    private static final int SHORT = 3;
    private static final String UNITS = "(cm|mm|m|s|ms|kg|g|N|J|m/s|a|degrees|°)[.,;:)]*";

    private final double width;
    private final List<Row> rows = new ArrayList<>();
    private final Optional<Tag> all;
    private Optional<Tag> list = Optional.empty();

    Galley(double width) {
        this(width, Optional.empty());
    }

    /** All of whose words belong to one tag. */
    static Galley under(Tag tag, double width) {
        return new Galley(width, Optional.of(tag));
    }

    private Galley(double width, Optional<Tag> all) {
        this.width = width;
        this.all = all;
    }

    List<Row> rows() {
        return List.copyOf(rows);
    }

    /** What the whole page is about, in bold. */
    Galley title(String words, double size, double before) {
        return set(List.of(Run.bold(words)), size, before, 0, true, alone(Tag.Kind.TITLE));
    }

    /** A line or more in bold that stays with what follows. */
    Galley heading(String words, double size, double before) {
        return heading(List.of(Run.bold(words)), size, before);
    }

    Galley heading(List<Run> runs, double size, double before) {
        return set(runs, size, before, 0, true, alone(Tag.Kind.HEADING));
    }

    Galley paragraph(List<Run> runs, double size, double before) {
        return set(runs, size, before, 0, false, alone(Tag.Kind.PARAGRAPH));
    }

    /** Cells in columns of equal width, the first row in bold; all rows have as many. */
    Galley table(List<List<String>> lines, double size) {
        Tag table = Tag.of(Tag.Kind.TABLE);
        double step = width / lines.get(0).size();
        for (List<String> line : lines) {
            Tag of = Tag.of(Tag.Kind.ROW, table);
            boolean head = line == lines.get(0);
            List<Piece> pieces = new ArrayList<>();
            for (int i = 0; i < line.size(); i++) {
                Face face = head ? Face.BOLD : Face.REGULAR;
                pieces.add(
                        new Piece(
                                face.known(line.get(i)),
                                face,
                                Palette.Ink.TEXT,
                                i * step,
                                Optional.of(Tag.of(head ? Tag.Kind.HEAD : Tag.Kind.CELL, of))));
            }
            boolean last = line == lines.get(lines.size() - 1);
            rows.add(new Row(head ? 5 : 2, LEADING * size, size, !last, pieces));
        }
        list = Optional.empty();
        return this;
    }

    /** A space where no word was set. */
    Galley orSpace(double size) {
        if (rows.isEmpty()) {
            Word space = new Word(" ", Face.REGULAR, Palette.Ink.TEXT);
            rows.add(row(List.of(space), size, 0, 0, false, alone(Tag.Kind.PARAGRAPH)));
        }
        return this;
    }

    /** A tag for what ends a list. */
    private Tag alone(Tag.Kind kind) {
        list = Optional.empty();
        return all.orElseGet(() -> Tag.of(kind));
    }

    Galley paragraph(String words, double size, double before) {
        return paragraph(List.of(Run.of(words)), size, before);
    }

    /**
     * A paragraph that hangs on a sign, such as "!" or "·". A short one is not torn apart between
     * columns, and of a long one no row is left alone.
     */
    Galley item(Run sign, List<Run> runs, double size, double before, double indent) {
        int first = rows.size();
        Tag of = list.orElseGet(() -> Tag.of(Tag.Kind.LIST));
        list = Optional.of(of);
        Tag item = Tag.of(Tag.Kind.ITEM, of);
        Tag mark = all.orElseGet(() -> Tag.of(Tag.Kind.SIGN, item));
        set(runs, size, before, indent, false, all.orElseGet(() -> Tag.of(Tag.Kind.SAID, item)));
        int count = rows.size() - first;
        for (int i = 0; i < count; i++) {
            Row row = rows.get(first + i);
            List<Piece> pieces = new ArrayList<>(row.pieces());
            if (i == 0) {
                pieces.add(
                        0,
                        new Piece(
                                sign.face().known(sign.words()),
                                sign.face(),
                                sign.ink(),
                                0,
                                Optional.of(mark)));
            }
            boolean binds = i < count - 1 && (count <= SHORT || i == 0 || i == count - 2);
            rows.set(first + i, new Row(row.before(), row.leading(), size, binds, pieces));
        }
        return this;
    }

    /** A paragraph beside a picture, the two kept together in one column. */
    Galley beside(Inset inset, List<Run> runs, double size, double before, double gap) {
        int first = rows.size();
        set(runs, size, before, inset.width() + gap, false, alone(Tag.Kind.PARAGRAPH));
        for (int i = first; i < rows.size(); i++) {
            Row row = rows.get(i);
            rows.set(
                    i,
                    new Row(
                            row.before(),
                            row.leading(),
                            size,
                            true,
                            row.pieces(),
                            i == first ? Optional.of(inset) : Optional.empty()));
        }
        double below = inset.height() - height(rows, first, rows.size());
        rows.add(new Row(0, Math.max(0, below), size, false, List.of()));
        return this;
    }

    private Galley set(
            List<Run> runs, double size, double before, double indent, boolean binds, Tag tag) {
        double room = width - indent;
        List<Word> line = new ArrayList<>();
        double length = 0;
        double above = before;
        for (Word word : words(runs, size, room)) {
            double space = line.isEmpty() ? 0 : last(line).face().width(" ", size);
            if (!line.isEmpty() && length + space + word.width(size) > room) {
                rows.add(row(line, size, above, indent, binds, tag));
                above = 0;
                line.clear();
                length = 0;
                space = 0;
            }
            line.add(word);
            length += space + word.width(size);
        }
        if (!line.isEmpty()) {
            rows.add(row(line, size, above, indent, binds, tag));
        }
        return this;
    }

    private record Word(String letters, Face face, Palette.Ink ink) {
        double width(double size) {
            return face.width(letters, size);
        }
    }

    private static Word last(List<Word> line) {
        return line.get(line.size() - 1);
    }

    private static List<Word> words(List<Run> runs, double size, double room) {
        List<Word> words = new ArrayList<>();
        for (Run run : runs) {
            boolean first = true;
            for (String letters : run.face().known(run.words()).strip().split(" +")) {
                if (letters.isEmpty()) {
                    continue;
                }
                if (!first && letters.matches(UNITS) && endsInDigit(last(words).letters())) {
                    Word number = words.remove(words.size() - 1);
                    letters = number.letters() + " " + letters;
                }
                first = false;
                broken(letters, run, size, room, words);
            }
        }
        return words;
    }

    private static boolean endsInDigit(String letters) {
        return Character.isDigit(letters.charAt(letters.length() - 1));
    }

    private static void broken(
            String letters, Run run, double size, double room, List<Word> words) {
        int from = 0;
        for (int to = 1; to <= letters.length(); to++) {
            if (to - from > 1 && run.face().width(letters.substring(from, to), size) > room) {
                words.add(new Word(letters.substring(from, to - 1), run.face(), run.ink()));
                from = to - 1;
            }
        }
        words.add(new Word(letters.substring(from), run.face(), run.ink()));
    }

    private static Row row(
            List<Word> line, double size, double before, double indent, boolean binds, Tag tag) {
        List<Piece> pieces = new ArrayList<>();
        double x = indent;
        StringBuilder letters = new StringBuilder();
        for (int i = 0; i < line.size(); i++) {
            Word word = line.get(i);
            boolean more =
                    i + 1 < line.size()
                            && line.get(i + 1).face() == word.face()
                            && line.get(i + 1).ink() == word.ink();
            letters.append(word.letters());
            if (more) {
                letters.append(' ');
            } else {
                pieces.add(
                        new Piece(
                                letters.toString(), word.face(), word.ink(), x, Optional.of(tag)));
                letters.append(' ');
                x += word.face().width(letters.toString(), size);
                letters.setLength(0);
            }
        }
        return new Row(before, LEADING * size, size, binds, pieces);
    }

    /** How high rows from one to before another are in a column. */
    static double height(List<Row> rows, int from, int to) {
        double height = 0;
        for (int i = from; i < to; i++) {
            height += (i == from ? 0 : rows.get(i).before()) + rows.get(i).leading();
        }
        return height;
    }

    static double height(List<Row> rows) {
        return height(rows, 0, rows.size());
    }

    /** The row that no longer fits in a column begun with {@code from}. */
    static int fill(List<Row> rows, int from, double height) {
        int to = from;
        double used = 0;
        while (to < rows.size()) {
            used += (to == from ? 0 : rows.get(to).before()) + rows.get(to).leading();
            if (used > height + 1e-6) {
                break;
            }
            to++;
        }
        if (to < rows.size()) {
            while (to > from && rows.get(to - 1).binds()) {
                to--;
            }
        }
        return to;
    }

    /** The least height of so many columns that hold all rows. */
    static double balanced(List<Row> rows, int columns) {
        double low = 0;
        double high = height(rows) + 1;
        while (high - low > 0.5) {
            double middle = (low + high) / 2;
            int at = 0;
            for (int i = 0; i < columns; i++) {
                at = fill(rows, at, middle);
            }
            if (at == rows.size()) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return high;
    }

    /** Rows on a page, the first one's top at y. */
    static List<Mark> placed(List<Row> rows, int from, int to, double x, double y) {
        List<Mark> marks = new ArrayList<>();
        double top = y;
        for (int i = from; i < to; i++) {
            Row row = rows.get(i);
            top += i == from ? 0 : row.before();
            if (row.inset().isPresent()) {
                Inset inset = row.inset().get();
                marks.add(inset.drawn().apply(new Box(x, top, inset.width(), inset.height())));
            }
            for (Piece piece : row.pieces()) {
                double rise = piece.face().ascent() + piece.face().descent();
                double baseline =
                        top
                                + (row.leading() - rise * row.size()) / 2
                                + piece.face().ascent() * row.size();
                marks.add(
                        new Mark.Text(
                                piece.words(),
                                piece.face(),
                                row.size(),
                                piece.ink(),
                                x + piece.x(),
                                baseline,
                                piece.tag()));
            }
            top += row.leading();
        }
        return marks;
    }

    static List<Mark> placed(List<Row> rows, double x, double y) {
        return placed(rows, 0, rows.size(), x, y);
    }
}

package deferent.page.sheet;

import deferent.motion.shared.Side;
import deferent.motion.trace.Count;
import deferent.page.Face;
import deferent.page.Palette.Ink;
import deferent.page.View;
import deferent.page.sheet.Galley.Row;
import deferent.page.sheet.Galley.Run;
import deferent.tell.TellSizes;
import deferent.tell.TellTransition;
import deferent.tell.Told;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Lays out one pattern's sheet. From the top: its name, phrase and note; the figure beside what
 * each hand does and the sizes; the row of small pictures; two columns of what to watch for; the
 * cautions. The figure takes what the words leave. Where even small letters beside a narrow figure
 * and half the small pictures don't fit, the columns go on overleaf, and below a very long head the
 * small pictures and the figure too; nothing is cut.
 */
final class SheetPage {
    private static final double[] SIZES = {8.8, 8.5, 8.2, 7.9, 7.6, 7.6, 7.6};
    private static final double[] PICTURES = {82, 82, 78, 74, 72, 72, 72};
    private static final double LEAST_FIGURE = 190;
    private static final double MOST_FIGURE = 330;
    private static final double[] FIGURE_SHARES = {0.54, 0.54, 0.54, 0.54, 0.5, 0.42, 0.5};
    private static final int LEAD_ROWS = 4;
    private static final int PICTURES_A_ROW = 6;
    private static final double KEY_SIZE = 7.6;
    private static final double KEY_LINE = 1.34 * KEY_SIZE;
    private static final double COUNT_BELOW = 14;
    private static final double COUNT_BESIDE = 20;
    private static final double CAUTIONS = 7.6;
    private static final double GAP = 9;
    private static final double APART = 6;
    private static final double PASSAGE = Plates.LEAST;
    private static final String BOTH_WAYS = "Grows from and leads to";
    private static final String KEY =
            "In these pictures both figures are faint and the way between them strong: from the"
                    + " open head, where it leaves, to the full one, where it joins.";

    private final Lesson lesson;
    private final Grid grid;
    private final Around around;
    private final IntFunction<Foot> foot;

    private final List<Leaf> leaves = new ArrayList<>();
    private final List<Block> blocks = new ArrayList<>();
    private List<Block> cautions = List.of();
    private double y;
    private double bottom;
    private double greatestPicture;
    private double figureShare;
    private List<Count> moments = List.of();

    private SheetPage(Lesson lesson, Edition edition, Around around, IntFunction<Foot> foot) {
        this.lesson = lesson;
        this.grid = new Grid(edition.size());
        this.around = around;
        this.foot = foot;
    }

    /**
     * @param foot by the number of leaves of this sheet before
     */
    static List<Leaf> leaves(
            Lesson lesson, Edition edition, Around around, IntFunction<Foot> foot) {
        return new SheetPage(lesson, edition, around, foot).laid();
    }

    private List<Leaf> laid() {
        Box body = grid.body();
        y = body.y();
        boolean leads = head();
        cautions = cautions(body.bottom());
        bottom = cautions.isEmpty() ? body.bottom() : cautions.get(0).box().y() - GAP;
        double strip = 0;
        double figure = 0;
        List<Row> words = List.of();
        List<Row> rows = List.of();
        for (int i = 0; i < SIZES.length; i++) {
            figureShare = FIGURE_SHARES[i];
            words = words(SIZES[i]);
            rows = rows(SIZES[i], leads);
            greatestPicture = PICTURES[i];
            moments = i + 1 < SIZES.length ? lesson.moments() : fewer(lesson.moments());
            strip = stripHeight();
            double least = Math.max(LEAST_FIGURE, Galley.height(words));
            figure = bottom - y - strip - Galley.balanced(rows, 2) - 2 * GAP;
            if (figure >= least) {
                figure = Math.min(figure, Math.max(MOST_FIGURE, Galley.height(words)));
                break;
            }
            figure = least;
        }
        makeRoom(figure);
        middle(words, figure);
        y += figure + GAP;
        makeRoom(strip);
        strip();
        y += strip + GAP;
        int at = columns(rows, 0);
        while (at < rows.size()) {
            turn();
            int next = columns(rows, at);
            if (next == at) {
                throw new IllegalStateException("a row is higher than a page");
            }
            at = next;
        }
        end();
        return leaves;
    }

    /** Goes overleaf where so much does not fit below. */
    private void makeRoom(double height) {
        if (y + height > bottom) {
            turn();
        }
    }

    /** Ends this leaf and begins the next under the sheet's name. */
    private void turn() {
        end();
        Box body = grid.body();
        y = body.y();
        bottom = body.bottom();
        Galley title = new Galley(body.width());
        title.heading(lesson.pattern().name() + ", continued", 13, 0);
        place("title", title.rows());
        y += GAP;
    }

    private void end() {
        boolean first = leaves.isEmpty();
        if (first) {
            blocks.addAll(cautions);
        }
        blocks.add(foot.apply(leaves.size()).block(grid));
        leaves.add(leaf(first ? Optional.of(lesson.pattern().name()) : Optional.empty()));
        blocks.clear();
    }

    private Leaf leaf(Optional<String> bookmark) {
        return new Leaf(grid.size(), grid.margins(), blocks, bookmark);
    }

    private void place(String name, List<Row> rows) {
        Box body = grid.body();
        Box box = new Box(body.x(), y, body.width(), Galley.height(rows));
        blocks.add(new Block(name, box, Galley.placed(rows, box.x(), y)));
        y = box.bottom();
    }

    /** Name, phrase and a short note; whether the note was short enough. */
    private boolean head() {
        Box body = grid.body();
        String name = lesson.pattern().name();
        Galley title = new Galley(body.width());
        title.title(
                name + (lesson.mirrored() ? " (left-handed)" : ""),
                name.length() > 60 ? 16 : 22,
                0);
        place("title", title.rows());
        Optional<String> phrase = lesson.phrase().filter(said -> !said.equals(name));
        if (phrase.isPresent()) {
            Galley under = new Galley(body.width());
            under.paragraph(List.of(Run.quiet(phrase.get())), 11, 0);
            place("phrase", under.rows());
        }
        Galley note = new Galley(body.width());
        note(note, 9.2, 0);
        boolean leads = note.rows().size() <= LEAD_ROWS;
        if (leads && !note.rows().isEmpty()) {
            y += 5;
            place("note", note.rows());
        }
        if (!lesson.dangers().isEmpty()) {
            Galley dangers = new Galley(body.width());
            for (Told danger : lesson.dangers()) {
                dangers.item(
                        Run.bold("!!").in(Ink.DANGER),
                        List.of(Run.bold(danger.text()).in(Ink.DANGER)),
                        9.2,
                        2,
                        12);
            }
            y += 5;
            place("dangers", dangers.rows());
        }
        y += 9;
        Box rule = new Box(body.x(), y, body.width(), 0);
        blocks.add(new Block("rule", rule, List.of(new Mark.Rule(rule, 0.8, Ink.TEXT))));
        y += GAP;
        return leads;
    }

    private void note(Galley galley, double size, double before) {
        String opening =
                lesson.mirrored() && !lesson.pattern().note().isBlank()
                        ? "Written of the pattern before it was mirrored: "
                        : "";
        boolean first = true;
        for (String line : (opening + lesson.pattern().note()).lines().toList()) {
            if (!line.isBlank()) {
                galley.paragraph(line, size, first ? before : 2);
                first = false;
            }
        }
    }

    /** What stands beside the figure. */
    private List<Row> words(double size) {
        double width = grid.margins().width() * (1 - figureShare) - Grid.GUTTER;
        Galley galley = new Galley(width);
        galley.heading("What each hand does", size + 1.4, 0);
        for (Side side : Side.values()) {
            Told told = lesson.does().get(side.ordinal());
            int stop = told.text().indexOf(". ");
            galley.paragraph(
                    List.of(
                            Run.bold(
                                    (side == Side.LEFT ? "Left: " : "Right: ")
                                            + told.text().substring(0, stop + 1)),
                            Run.of(told.text().substring(stop + 2))),
                    size,
                    4);
        }
        galley.paragraph(
                List.of(
                        Run.of(lesson.does().get(2).text()),
                        Run.quiet(lesson.outlook().whoseLeft())),
                size,
                4);
        galley.heading("Sizes", size + 1.4, 10);
        galley.paragraph(lesson.performer().get(0).text(), size, 2);
        List<Row> rows = new ArrayList<>(galley.rows());
        rows.addAll(table(width, size));
        return rows;
    }

    private List<Row> table(double width, double size) {
        List<Run[]> lines = new ArrayList<>();
        lines.add(new Run[] {Run.quiet(""), Run.bold("Left"), Run.bold("Right")});
        for (TellSizes.Row row : lesson.sizes()) {
            Run name = Run.quiet(Foot.capital(row.name()));
            lines.add(new Run[] {name, Run.of(row.left()), Run.of(row.right())});
        }
        double[] starts = starts(lines, width, size);
        List<Row> rows = new ArrayList<>();
        Tag table = Tag.of(Tag.Kind.TABLE);
        for (Run[] line : lines) {
            Tag row = Tag.of(Tag.Kind.ROW, table);
            Tag.Kind kind = rows.isEmpty() ? Tag.Kind.HEAD : Tag.Kind.CELL;
            rows.addAll(cells(width, size, rows.isEmpty() ? 4 : 1, starts, row, kind, line));
        }
        return rows;
    }

    /** Where columns begin: as wide as they need be where there is room, else in fixed shares. */
    private static double[] starts(List<Run[]> lines, double width, double size) {
        double[] needed = new double[3];
        for (Run[] line : lines) {
            for (int i = 0; i < needed.length; i++) {
                needed[i] =
                        Math.max(
                                needed[i],
                                line[i].face().width(line[i].face().known(line[i].words()), size));
            }
        }
        double spare = (width - needed[0] - needed[1] - needed[2]) / 2;
        return spare >= APART
                ? new double[] {0, needed[0] + spare, needed[0] + needed[1] + 2 * spare}
                : new double[] {0, 0.36 * width, 0.68 * width};
    }

    private static List<Row> cells(
            double width,
            double size,
            double before,
            double[] starts,
            Tag line,
            Tag.Kind kind,
            Run... cells) {
        List<List<Row>> columns = new ArrayList<>();
        int most = 0;
        for (int i = 0; i < cells.length; i++) {
            double end = i + 1 < cells.length ? starts[i + 1] - APART + 0.1 : width + 0.1;
            Galley cell = Galley.under(Tag.of(kind, line), end - starts[i]);
            // A cell that says nothing is a cell all the same.
            cell.paragraph(List.of(cells[i]), size, 0).orSpace(size);
            columns.add(cell.rows());
            most = Math.max(most, cell.rows().size());
        }
        List<Row> rows = new ArrayList<>();
        for (int down = 0; down < most; down++) {
            List<Galley.Piece> pieces = new ArrayList<>();
            double leading = 0;
            for (int i = 0; i < columns.size(); i++) {
                if (down < columns.get(i).size()) {
                    Row row = columns.get(i).get(down);
                    leading = row.leading();
                    for (Galley.Piece piece : row.pieces()) {
                        pieces.add(
                                new Galley.Piece(
                                        piece.words(),
                                        piece.face(),
                                        piece.ink(),
                                        starts[i] + piece.x(),
                                        piece.tag()));
                    }
                }
            }
            rows.add(new Row(down == 0 ? before : 0, leading, size, false, pieces));
        }
        return rows;
    }

    /** The figure with its key below, the words beside it. */
    private void middle(List<Row> words, double height) {
        Box body = grid.body();
        double width = body.width() * figureShare;
        List<Row> standing =
                new Galley(width)
                        .paragraph(List.of(Run.quiet(lesson.standing())), KEY_SIZE, 0)
                        .rows();
        double key = 6 + 2 * KEY_LINE + Galley.height(standing);
        Box picture = new Box(body.x(), y, width, height - key);
        blocks.add(
                new Block(
                        "figure",
                        picture,
                        Plates.figure(
                                picture,
                                lesson.scene(),
                                lesson.outlook().view(),
                                lesson.moments().get(0),
                                lesson.pattern().name())));
        key(new Box(body.x(), y + height - key, width, key), standing);
        double x = body.x() + width + Grid.GUTTER;
        Box column = new Box(x, y, body.right() - x, Galley.height(words));
        blocks.add(new Block("words", column, Galley.placed(words, x, y)));
    }

    private void key(Box box, List<Row> standing) {
        List<Mark> marks = new ArrayList<>();
        double below = box.bottom() - Galley.height(standing);
        for (Side side : Side.values()) {
            double top = below - (2 - side.ordinal()) * KEY_LINE;
            Plates.key(side, box.x(), top, KEY_SIZE, marks);
        }
        marks.addAll(Galley.placed(standing, box.x(), below));
        blocks.add(new Block("key", box, marks));
    }

    /** Every second where all take more than one row. */
    private static List<Count> fewer(List<Count> all) {
        return all.size() <= PICTURES_A_ROW
                ? all
                : IntStream.range(0, all.size())
                        .filter(i -> i % 2 == 0)
                        .mapToObj(all::get)
                        .toList();
    }

    private int pictures() {
        return moments.size();
    }

    private int pictureRows() {
        return (pictures() + PICTURES_A_ROW - 1) / PICTURES_A_ROW;
    }

    private int picturesARow() {
        return (pictures() + pictureRows() - 1) / pictureRows();
    }

    /** Where pictures have room enough, their counts stand before them and not below. */
    private boolean beside() {
        return picturesARow() <= 4;
    }

    private double pictureWidth() {
        int n = Math.max(4, picturesARow());
        return (grid.body().width() - (n - 1) * 6) / n - (beside() ? COUNT_BESIDE : 0);
    }

    /** From the top of one row of pictures to the next. */
    private double pictureStep() {
        return pictureHeight() + (beside() ? 3 : COUNT_BELOW);
    }

    private double pictureHeight() {
        double width = pictureWidth();
        double height = SeenSize.of(lesson.scene(), lesson.outlook().view()).heightFor(width);
        return Math.min(greatestPicture, Math.max(Plates.LEAST, Math.min(width, height * 1.1)));
    }

    private double stripHeight() {
        return 18 + pictureRows() * pictureStep();
    }

    /** The small pictures with their counts. */
    private void strip() {
        Box body = grid.body();
        Box box = new Box(body.x(), y, body.width(), stripHeight());
        List<Mark> marks = new ArrayList<>();
        marks.add(
                HandSetLines.at(
                        "Beat by beat",
                        Face.BOLD,
                        10,
                        Ink.TEXT,
                        box.x(),
                        y,
                        14,
                        Optional.of(Tag.of(Tag.Kind.HEADING))));
        double width = pictureWidth();
        double height = pictureHeight();
        int a = Math.max(4, picturesARow());
        double before = beside() ? COUNT_BESIDE : 0;
        double step = (body.width() - width - before) / (a - 1);
        for (int i = 0; i < pictures(); i++) {
            Count count = moments.get(i);
            double x = box.x() + before + i % picturesARow() * step;
            double top = y + 18 + Math.floorDiv(i, picturesARow()) * pictureStep();
            Box picture = new Box(x, top, width, height);
            View view = lesson.outlook().view();
            Tag tag =
                    Tag.figure(
                            PictureWords.pose(
                                    "On " + count.said() + ":",
                                    lesson.scene(),
                                    view,
                                    count.time()));
            marks.add(Plates.pose(picture, lesson.scene(), view, count.time(), tag));
            boolean beat = Character.isDigit(count.said().charAt(0));
            Face face = beat ? Face.BOLD : Face.REGULAR;
            double length = face.width(count.said(), 8.6);
            marks.add(
                    HandSetLines.at(
                            count.said(),
                            face,
                            8.6,
                            beat ? Ink.TEXT : Ink.QUIET,
                            beside() ? x - 3 - length : x + (width - length) / 2,
                            beside() ? top + (height - 13) / 2 : top + height,
                            13,
                            Optional.of(tag)));
        }
        blocks.add(new Block("beats", box, marks));
    }

    /** All that is set in the two columns. */
    private List<Row> rows(double size, boolean leads) {
        Galley galley = new Galley(grid.columnWidth(2));
        section(galley, "How they link", lesson.links(), size);
        section(galley, "What to watch for", lesson.toWatch(), size);
        if (around.asked()) {
            around(galley, size);
        }
        return note(galley, leads, size);
    }

    private void around(Galley galley, double size) {
        boolean none = around.from().isEmpty() && around.to().isEmpty();
        if (none) {
            section(galley, BOTH_WAYS, List.of(TellTransition.noNeighbour()), size);
            return;
        }
        onward(galley, "Grows from", around.from(), true, size);
        onward(galley, "Leads to", around.to(), false, size);
        if (Stream.concat(around.from().stream(), around.to().stream())
                .anyMatch(one -> one.way().isPresent())) {
            galley.paragraph(List.of(Run.quiet(KEY)), size - 1, 4);
        }
    }

    private List<Row> note(Galley galley, boolean leads, double size) {
        if (!leads) {
            galley.heading("Note", size + 1.4, galley.rows().isEmpty() ? 0 : 9);
            note(galley, size, 2);
        }
        return galley.rows();
    }

    private static void section(Galley galley, String heading, List<Told> told, double size) {
        if (told.isEmpty()) {
            return;
        }
        galley.heading(heading, size + 1.4, galley.rows().isEmpty() ? 0 : 9);
        for (Told one : told) {
            boolean warns = one.tone() == Told.Tone.WARN || one.tone() == Told.Tone.DANGER;
            galley.item(
                    warns ? Run.bold("!") : Run.quiet("–"),
                    List.of(Run.of(one.text())),
                    size,
                    2,
                    9);
        }
    }

    private void onward(
            Galley galley, String heading, List<Onward> onwards, boolean back, double size) {
        if (onwards.isEmpty() && around.route()) {
            return;
        }
        if (onwards.isEmpty()) {
            section(galley, heading, List.of(TellTransition.noNeighbour()), size);
            return;
        }
        galley.heading(heading, size + 1.4, galley.rows().isEmpty() ? 0 : 9);
        for (Onward one : onwards) {
            Run name = Run.bold((back ? one.from() : one.to()) + ": ");
            if (one.way().isEmpty()) {
                galley.item(
                        Run.quiet("–"),
                        List.of(name, Run.of(TellTransition.none(one.why()).text())),
                        size,
                        2,
                        9);
                continue;
            }
            Onward.Way way = one.way().get();
            Tag seen =
                    Tag.figure(
                            "The figures of "
                                    + one.from()
                                    + " and of "
                                    + one.to()
                                    + ", and over them the way of each hand and head from the one to"
                                    + " the other.");
            List<Run> runs = new ArrayList<>(List.of(name));
            runs.add(Run.of(TellTransition.of(way.transition()).text()));
            if (!way.outlook().equals(lesson.outlook())) {
                runs.add(Run.quiet(" " + way.outlook().said() + "."));
            }
            galley.beside(
                    new Galley.Inset(
                            PASSAGE,
                            PASSAGE,
                            box ->
                                    new Mark.Drawn(
                                            box,
                                            way.passage(),
                                            way.outlook().view(),
                                            Optional.of(seen))),
                    runs,
                    size,
                    4,
                    8);
        }
    }

    /** Sets rows in two columns from y down; the first row that is left over. */
    private int columns(List<Row> rows, int from) {
        double height = Math.min(bottom - y, Galley.balanced(rows.subList(from, rows.size()), 2));
        int at = from;
        for (int i = 0; i < 2 && at < rows.size(); i++) {
            int end = Galley.fill(rows, at, height);
            Box box = grid.column(i, 2, y, Galley.height(rows, at, end));
            if (end > at) {
                blocks.add(
                        new Block(
                                "column " + (i + 1),
                                box,
                                Galley.placed(rows, at, end, box.x(), y)));
            }
            at = end;
        }
        return at;
    }

    private List<Block> cautions(double bottom) {
        if (lesson.cautions().isEmpty()) {
            return List.of();
        }
        Box body = grid.body();
        Galley galley = new Galley(body.width());
        galley.paragraph(
                List.of(Run.bold("Take care. "), Run.of(String.join(" ", lesson.cautions()))),
                CAUTIONS,
                0);
        double height = Galley.height(galley.rows());
        Box box = new Box(body.x(), bottom - height - 7, body.width(), height + 7);
        List<Mark> marks = new ArrayList<>();
        marks.add(new Mark.Rule(new Box(box.x(), box.y(), box.width(), 0), 0.5, Ink.QUIET));
        marks.addAll(Galley.placed(galley.rows(), box.x(), box.y() + 7));
        return List.of(new Block("cautions", box, marks));
    }
}

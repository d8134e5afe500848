package deferent.page.sheet;

import deferent.page.Face;
import deferent.page.Palette.Ink;
import deferent.page.sheet.Galley.Row;
import deferent.page.sheet.Galley.Run;
import deferent.record.log.LogWeeks;
import deferent.tell.LoggedPattern;
import deferent.tell.TellLog;
import deferent.tell.Told;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * The log of practice as a calendar: weeks by days, each day a square whose area goes with its
 * minutes and the number below it, then a line for each pattern. What is to be said of rest stands
 * first.
 *
 * @param weeks the calendar
 * @param rest whether to rest, where there is something to say
 * @param patterns each with what the log and the films of it say
 * @param edition for which paper
 */
public record CalendarSheet(
        LogWeeks weeks, Optional<Told> rest, List<Practised> patterns, Edition edition)
        implements Print {
    private static final String TITLE = "Practice";
    private static final double HEAD = 19;
    private static final double WORDS = 8.6;
    private static final double NAMES = 9.6;
    private static final double WEEK = 64;
    private static final double HIGH = 38;
    private static final double MOST = 22; // edge of the largest square, points
    private static final double LONGEST = 60; // minutes from which on a square grows no further
    private static final double GAP = 14;

    private static final DateTimeFormatter MONDAY =
            DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);

    /**
     * What is told of one pattern.
     *
     * @param onFilm how much closer it came, where films of it are kept
     */
    public record Practised(LoggedPattern logged, Optional<Told> onFilm) {}

    public CalendarSheet {
        patterns = List.copyOf(patterns);
    }

    @Override
    public String title() {
        return TITLE;
    }

    @Override
    public Optional<List<Leaf>> leaves(Consumer<PrintProgress> listener, BooleanSupplier stop) {
        return stop.getAsBoolean() ? Optional.empty() : Optional.of(pages());
    }

    /** As pages: the calendar on the first, patterns on as many as it takes. */
    public List<Leaf> pages() {
        Grid grid = new Grid(edition.size());
        Box body = grid.body();
        List<Block> blocks = new ArrayList<>();
        blocks.add(block("title", head(body.width()), body.x(), body.y()));
        double y = blocks.get(0).box().bottom() + GAP;
        blocks.add(days(body, y));
        y = blocks.get(1).box().bottom() + GAP;
        List<Leaf> leaves = new ArrayList<>();
        for (Practised pattern : patterns) {
            List<Row> rows = told(pattern, body.width());
            if (y + Galley.height(rows) > body.bottom()) {
                leaves.add(leaf(grid, blocks, leaves.isEmpty()));
                blocks = new ArrayList<>();
                y = body.y();
            }
            blocks.add(block(pattern.logged().pattern(), rows, body.x(), y));
            y += Galley.height(rows) + GAP / 2;
        }
        leaves.add(leaf(grid, blocks, leaves.isEmpty()));
        return leaves;
    }

    private static Leaf leaf(Grid grid, List<Block> blocks, boolean first) {
        return new Leaf(
                grid.size(), grid.margins(), blocks, first ? Optional.of(TITLE) : Optional.empty());
    }

    private static Block block(String name, List<Row> rows, double x, double y) {
        Box box = new Box(x, y, 0, Galley.height(rows));
        List<Mark> marks = Galley.placed(rows, x, y);
        double right = marks.stream().mapToDouble(mark -> mark.box().right()).max().orElse(x);
        return new Block(name, new Box(x, y, right - x, box.height()), marks);
    }

    private List<Row> head(double width) {
        Galley galley = new Galley(width);
        galley.title(TITLE, HEAD, 0);
        rest.ifPresent(
                told ->
                        galley.item(
                                Run.bold("!"),
                                List.of(Run.of(told.text()).in(Ink.WARN)),
                                WORDS + 1,
                                4,
                                10));
        return galley.rows();
    }

    private static List<Row> told(Practised pattern, double width) {
        Galley galley = new Galley(width);
        galley.heading(pattern.logged().pattern(), NAMES, 0);
        galley.paragraph(TellLog.pattern(pattern.logged()).text(), WORDS, 1);
        pattern.onFilm().ifPresent(told -> galley.paragraph(told.text(), WORDS, 1));
        return galley.rows();
    }

    /** The weeks, one below the other. */
    private Block days(Box body, double top) {
        List<Mark> marks = new ArrayList<>();
        double wide = (body.width() - 2 * WEEK) / LogWeeks.DAYS;
        double x = body.x() + WEEK;
        for (DayOfWeek day : DayOfWeek.values()) {
            String name = day.getDisplayName(TextStyle.SHORT, Locale.ENGLISH);
            marks.add(centred(name, WORDS, Ink.QUIET, x + wide / 2, top + WORDS));
            x += wide;
        }
        double y = top + 2 * WORDS;
        for (LogWeeks.Week week : weeks.weeks()) {
            week(week, body, wide, y, marks);
            y += HIGH;
        }
        return new Block("calendar", new Box(body.x(), top, body.width(), y - top), marks);
    }

    private void week(LogWeeks.Week week, Box body, double wide, double y, List<Mark> marks) {
        double foot = y + HIGH - 6;
        marks.add(text(week.monday().format(MONDAY), WORDS, Ink.QUIET, body.x(), foot));
        for (int i = 0; i < LogWeeks.DAYS; i++) {
            LocalDate day = week.monday().plusDays(i);
            double minutes = week.minutes().get(i);
            double middle = body.x() + WEEK + (i + 0.5) * wide;
            if (day.isAfter(weeks.today())) {
                continue;
            }
            marks.add(
                    centred(
                            minutes == 0 ? "·" : TellLog.cell(minutes),
                            WORDS,
                            minutes == 0 ? Ink.QUIET : Ink.TEXT,
                            middle,
                            foot));
            if (minutes > 0) {
                double edge = edge(minutes);
                double above = foot - WORDS - 2 - edge;
                marks.add(
                        new Mark.Patch(
                                new Box(middle - edge / 2, above, edge, edge), Ink.LEFT, true));
            }
        }
        String total = TellLog.minutes(week.total());
        marks.add(
                text(
                        total,
                        WORDS,
                        Ink.TEXT,
                        body.right() - Face.REGULAR.width(total, WORDS),
                        foot));
    }

    /** Of a day's square, whose area goes with its minutes. */
    private static double edge(double minutes) {
        return MOST * Math.sqrt(Math.min(1, minutes / LONGEST));
    }

    private static Mark.Text centred(String words, double size, Ink ink, double x, double y) {
        return text(words, size, ink, x - Face.REGULAR.width(words, size) / 2, y);
    }

    private static Mark.Text text(String words, double size, Ink ink, double x, double y) {
        return new Mark.Text(
                Face.REGULAR.known(words),
                Face.REGULAR,
                size,
                ink,
                x,
                y,
                Optional.of(Tag.of(Tag.Kind.PARAGRAPH)));
    }
}

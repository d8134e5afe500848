package deferent.page.sheet;

import deferent.motion.trace.Counts;
import deferent.motion.trace.Trace;
import deferent.page.Face;
import deferent.page.Palette.Ink;
import deferent.page.Scene;
import deferent.page.sheet.Galley.Row;
import deferent.page.sheet.Galley.Run;
import deferent.record.PatternDocument;
import deferent.search.path.Drill;
import deferent.search.path.Plan;
import deferent.search.path.PlannedDay;
import deferent.search.path.Sitting;
import deferent.tell.TellPath;
import deferent.tell.Told;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * An order to learn in on one page: what can hurt first, then each drill with its figure, its
 * words, its tempo and what often goes wrong, and beside them the days, each time of practice with
 * a box to tick. Figures and letters are as large as lets all drills stand on the page, figures
 * never less than an inch.
 *
 * @param pattern what is learnt
 * @param plan its drills and days
 * @param words what is said of them
 * @param told what the plan comes to
 * @param edition for which paper and onlooker; never mirrored
 */
public record PlanSheet(
        PatternDocument pattern, Plan plan, TellPath words, Told told, Edition edition)
        implements Print {
    /** The least edge of a drill's figure, points: 25.4 mm. */
    public static final double FIGURE = 72;

    private static final double LARGER_FIGURE = 104;
    private static final double TITLE = 19;
    private static final double LARGEST = 9.8;
    private static final double SMALLEST = 6.2;
    private static final int STEPS = 20; // between the largest and the smallest
    private static final double GAP = 8;
    private static final double BESIDE = 10;
    private static final double DAYS = 204; // width of the days' column
    private static final double DATE = 46;
    private static final double DAY_SIZE = 7.6;
    private static final double DAY_SMALLEST = 6.4;
    private static final double MINUTES = 27; // room of a day's minutes
    private static final double DAY_ROW = 11.5;
    private static final double TICK = 6.5;

    private static final DateTimeFormatter DAY =
            DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);

    @Override
    public String title() {
        return "Learning: " + pattern.name();
    }

    @Override
    public Optional<List<Leaf>> leaves(Consumer<PrintProgress> listener, BooleanSupplier stop) {
        return stop.getAsBoolean() ? Optional.empty() : Optional.of(List.of(page()));
    }

    /** The page. */
    public Leaf page() {
        Grid grid = new Grid(edition.size());
        Box body = grid.body();
        List<TellPath.Said> said =
                IntStream.range(0, plan.path().drills().size()).mapToObj(words::said).toList();
        List<Row> head = head(body.width(), said);
        List<Block> blocks = new ArrayList<>();
        double top = body.y() + Galley.height(head) + 2 * GAP;
        blocks.add(
                new Block(
                        "title",
                        new Box(body.x(), body.y(), body.width(), Galley.height(head)),
                        Galley.placed(head, body.x(), body.y())));
        double left = body.width() - DAYS - Grid.GUTTER;
        blocks.addAll(drills(new Box(body.x(), top, left, body.bottom() - top), said));
        blocks.add(days(new Box(body.right() - DAYS, top, DAYS, body.bottom() - top)));
        blocks.add(
                Foot.of(
                                "The order and the minutes are a model of ours, and no number here is a permission."
                                        + " Keep a clear space; stop where it aches.")
                        .block(grid));
        return new Leaf(grid.size(), grid.margins(), blocks, Optional.of(title()));
    }

    private List<Row> head(double width, List<TellPath.Said> said) {
        Galley galley = new Galley(width);
        galley.title(title(), TITLE, 0);
        dangers(said)
                .forEach(
                        (danger, drills) ->
                                galley.item(
                                        Run.bold("!"),
                                        List.of(Run.of(danger + " " + drills).in(Ink.WARN)),
                                        LARGEST,
                                        3,
                                        10));
        galley.paragraph(told.text(), LARGEST, 4);
        return galley.rows();
    }

    /** Each danger once, with the drills that have it. */
    private static Map<String, String> dangers(List<TellPath.Said> said) {
        Map<String, List<Integer>> numbers = new LinkedHashMap<>();
        for (int i = 0; i < said.size(); i++) {
            int number = i + 1;
            said.get(i)
                    .danger()
                    .ifPresent(
                            danger ->
                                    numbers.computeIfAbsent(danger, d -> new ArrayList<>())
                                            .add(number));
        }
        Map<String, String> all = new LinkedHashMap<>();
        numbers.forEach(
                (danger, drills) ->
                        all.put(
                                danger,
                                drills.stream()
                                        .map(String::valueOf)
                                        .collect(Collectors.joining(", ", "(", ")"))));
        return all;
    }

    /** How large a drill's figure and letters are, points. */
    private record Large(double figure, double letters) {
        /**
         * @param share from 0, the smallest, to 1
         */
        static Large of(double share) {
            return new Large(
                    FIGURE + share * (LARGER_FIGURE - FIGURE),
                    SMALLEST + share * (LARGEST - SMALLEST));
        }

        double high(List<Row> rows) {
            return Math.max(figure, Galley.height(rows));
        }

        double together(List<List<Row>> texts) {
            return texts.stream().mapToDouble(rows -> high(rows) + GAP).sum() - GAP;
        }
    }

    private List<Block> drills(Box room, List<TellPath.Said> said) {
        Large large = Large.of(1);
        List<List<Row>> texts = texts(room, said, large);
        for (int i = STEPS - 1; i >= 0 && large.together(texts) > room.height(); i--) {
            large = Large.of((double) i / STEPS);
            texts = texts(room, said, large);
        }
        List<Block> blocks = new ArrayList<>();
        double y = room.y();
        for (int i = 0; i < texts.size(); i++) {
            double height = large.high(texts.get(i));
            Box box = new Box(room.x(), y, room.width(), height);
            List<Mark> marks =
                    new ArrayList<>(
                            figure(
                                    plan.path().drills().get(i),
                                    new Box(box.x(), y, large.figure(), large.figure())));
            marks.addAll(Galley.placed(texts.get(i), box.x() + large.figure() + BESIDE, y));
            blocks.add(new Block("drill " + (i + 1), box, marks));
            y += height + GAP;
        }
        return blocks;
    }

    private List<List<Row>> texts(Box room, List<TellPath.Said> said, Large large) {
        double size = large.letters();
        List<List<Row>> all = new ArrayList<>();
        for (int i = 0; i < said.size(); i++) {
            Drill drill = plan.path().drills().get(i);
            Galley galley = new Galley(room.width() - large.figure() - BESIDE);
            galley.paragraph(
                    List.of(
                            Run.bold(i + 1 + " " + TellPath.name(drill) + ","),
                            Run.of(drill.minutes() + " minutes")),
                    size + 0.8,
                    0);
            said.get(i)
                    .danger()
                    .ifPresent(
                            danger ->
                                    galley.paragraph(
                                            List.of(Run.bold("!"), Run.of(danger).in(Ink.WARN)),
                                            size,
                                            1));
            galley.paragraph(said.get(i).todo() + " " + said.get(i).meets(), size, 1);
            galley.paragraph(List.of(Run.bold("Often:"), Run.of(said.get(i).often())), size, 1);
            all.add(galley.rows());
        }
        return all;
    }

    private List<Mark> figure(Drill drill, Box box) {
        Scene scene = Scene.of(Trace.of(drill.pairing()));
        return Plates.card(
                box,
                scene,
                Outlook.of(drill.pairing(), edition.stand()).view(),
                Counts.of(scene.trace()).get(0),
                TellPath.name(drill));
    }

    /**
     * One row of the days.
     *
     * @param date empty below the day's first
     * @param minutes of a time of practice, which has a box; empty for rest
     */
    private record Line(String date, String words, String minutes) {}

    private Block days(Box room) {
        List<Line> lines = lines();
        int most = (int) (room.height() / DAY_ROW);
        List<Mark> marks = new ArrayList<>();
        int shown = lines.size() <= most ? lines.size() : most - 1;
        for (int i = 0; i < shown; i++) {
            line(lines.get(i), room, room.y() + (i + 1) * DAY_ROW - 3, marks);
        }
        if (shown < lines.size()) {
            double y = room.y() + (shown + 1) * DAY_ROW - 3;
            line(new Line("", "and on: deferent learn --days", ""), room, y, marks);
        }
        int rows = Math.min(lines.size(), most);
        return new Block("days", new Box(room.x(), room.y(), room.width(), rows * DAY_ROW), marks);
    }

    private List<Line> lines() {
        List<Line> lines = new ArrayList<>();
        OptionalInt resting = OptionalInt.empty();
        List<PlannedDay> days = plan.days();
        for (int i = 0; i <= days.size(); i++) {
            boolean rest = i < days.size() && days.get(i).sittings().isEmpty();
            if (rest && resting.isEmpty()) {
                resting = OptionalInt.of(i);
            }
            if (!rest && resting.isPresent()) {
                lines.add(rest(days.subList(resting.getAsInt(), i)));
                resting = OptionalInt.empty();
            }
            if (!rest && i < days.size()) {
                lines.addAll(sittings(days.get(i)));
            }
        }
        return lines;
    }

    private static Line rest(List<PlannedDay> days) {
        String many = days.size() == 1 ? "rest" : "rest, " + days.size() + " days";
        return new Line(date(days.get(0)), many, "");
    }

    private List<Line> sittings(PlannedDay day) {
        List<Line> lines = new ArrayList<>();
        for (Sitting sitting : day.sittings()) {
            Drill drill = plan.path().drills().get(sitting.number());
            String what = sitting.number() + 1 + " " + TellPath.name(drill);
            lines.add(
                    new Line(
                            lines.isEmpty() ? date(day) : "",
                            sitting.review() ? "again " + what : what,
                            sitting.minutes() + " min"));
        }
        return lines;
    }

    private static String date(PlannedDay day) {
        return LocalDate.ofEpochDay(day.day()).format(DAY);
    }

    private static void line(Line line, Box room, double y, List<Mark> marks) {
        if (!line.date().isEmpty()) {
            marks.add(
                    new Mark.Text(
                            line.date(),
                            Face.BOLD,
                            DAY_SIZE,
                            Ink.TEXT,
                            room.x(),
                            y,
                            Optional.of(Tag.of(Tag.Kind.PARAGRAPH))));
        }
        double x = room.x() + DATE;
        boolean practice = !line.minutes().isEmpty();
        if (practice) {
            marks.add(new Mark.Patch(new Box(x, y - TICK + 0.5, TICK, TICK), Ink.TEXT, false));
            double wide = Face.REGULAR.width(line.minutes(), DAY_SIZE);
            marks.add(text(line.minutes(), DAY_SIZE, Ink.TEXT, room.right() - wide, y));
        }
        double at = x + TICK + 4;
        double left = room.right() - MINUTES - at;
        double size =
                Math.max(
                        DAY_SMALLEST,
                        DAY_SIZE * Math.min(1, left / Face.REGULAR.width(line.words(), DAY_SIZE)));
        marks.add(
                text(
                        Face.REGULAR.fitted(line.words(), size, left),
                        size,
                        practice ? Ink.TEXT : Ink.QUIET,
                        at,
                        y));
    }

    private static Mark.Text text(String words, double size, Ink ink, double x, double y) {
        return new Mark.Text(
                words, Face.REGULAR, size, ink, x, y, Optional.of(Tag.of(Tag.Kind.PARAGRAPH)));
    }
}

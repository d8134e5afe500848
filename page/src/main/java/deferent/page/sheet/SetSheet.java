package deferent.page.sheet;

import deferent.motion.trace.Counts;
import deferent.motion.trace.Trace;
import deferent.page.Palette.Ink;
import deferent.page.Scene;
import deferent.page.sheet.Galley.Row;
import deferent.page.sheet.Galley.Run;
import deferent.reading.danger.Level;
import deferent.record.PatternDocument;
import deferent.record.SetPlaces;
import deferent.record.SetReading;
import deferent.search.set.Stay;
import deferent.tell.TellSet;
import deferent.tell.Told;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * A set on paper, to be pinned to a wall: its patterns in order, each with its small picture, its
 * counts and when it begins, and between them a line that says what leads on. Two columns where one
 * is too short, and as many pages as it takes.
 *
 * @param reading the set worked out
 * @param edition for which paper, onlooker and hand
 */
public record SetSheet(SetReading reading, Edition edition) implements Print {
    private static final double TITLE = 19;
    private static final double NAME = 11;
    private static final double WORDS = 8.4;
    private static final double PICTURE = Plates.LEAST;
    private static final double GAP = 9;
    private static final double BESIDE = 10;
    private static final double SIGN = 10;

    /** So many steps stand in one column. */
    private static final int ONE_COLUMN = 9;

    @Override
    public String title() {
        return reading.name();
    }

    /** One step with the line below it. */
    private record Entry(List<Row> words, List<Row> onward, Optional<PatternDocument> picture) {
        double height() {
            return Math.max(picture.isPresent() ? PICTURE : 0, Galley.height(words))
                    + (onward.isEmpty() ? 0 : 4 + Galley.height(onward))
                    + GAP;
        }
    }

    @Override
    public Optional<List<Leaf>> leaves(Consumer<PrintProgress> listener, BooleanSupplier stop) {
        Grid grid = new Grid(edition.size());
        int columns = reading.places().size() > ONE_COLUMN ? 2 : 1;
        double width = grid.columnWidth(columns);
        List<Leaf> leaves = new ArrayList<>();
        List<Block> blocks = new ArrayList<>(List.of(head(grid)));
        double top = blocks.get(0).box().bottom() + 2 * GAP;
        double y = top;
        int column = 0;
        int all = reading.places().size();
        for (int i = 0; i < all; i++) {
            if (stop.getAsBoolean()) {
                return Optional.empty();
            }
            Entry entry = entry(i, width);
            if (y + entry.height() > grid.body().bottom() && y > top) {
                column++;
                y = top;
            }
            if (column == columns) {
                leaves.add(leaf(grid, blocks, leaves.size()));
                blocks = new ArrayList<>();
                top = grid.body().y();
                y = top;
                column = 0;
            }
            blocks.add(block(i, entry, grid.column(column, columns, y, entry.height() - GAP)));
            y += entry.height();
            listener.accept(new PrintProgress(PrintProgress.Step.READING, i + 1, all));
        }
        leaves.add(leaf(grid, blocks, leaves.size()));
        return Optional.of(leaves);
    }

    private Leaf leaf(Grid grid, List<Block> blocks, int before) {
        List<Block> all = new ArrayList<>(blocks);
        Foot foot =
                Foot.of(
                        "A count is one turn of the poi that turns more often. No number here is a permission; stop where it aches.");
        all.add(foot.on(before + 1).block(grid));
        return new Leaf(
                grid.size(),
                grid.margins(),
                all,
                before == 0 ? Optional.of(reading.name()) : Optional.empty());
    }

    private Block head(Grid grid) {
        Box body = grid.body();
        Galley galley = new Galley(body.width());
        galley.title(reading.name(), TITLE, 0);
        galley.paragraph(TellSet.whole(reading.plan(), reading.names()).text(), WORDS + 0.6, 4);
        for (Told fault : reading.faults()) {
            galley.item(Run.bold("!"), List.of(Run.of(fault.text())), WORDS, 3, SIGN);
        }
        List<Row> rows = galley.rows();
        Box box = new Box(body.x(), body.y(), body.width(), Galley.height(rows));
        return new Block("title", box, Galley.placed(rows, box.x(), box.y()));
    }

    private Entry entry(int i, double width) {
        SetPlaces.Place place = reading.places().get(i);
        Optional<Stay> stay = reading.plan().stays().get(i);
        Galley words = new Galley(width - PICTURE - BESIDE);
        words.heading(List.of(Run.quiet(i + 1 + "."), Run.bold(place.name())), NAME, 0);
        if (stay.isEmpty()) {
            words.paragraph(List.of(Run.of("gone from the shelf")), WORDS, 2);
        } else {
            if (reading.inSong(i).isPresent()) {
                reading.kept(i)
                        .forEach(told -> words.paragraph(List.of(Run.of(told.text())), WORDS, 2));
            } else {
                words.paragraph(
                        List.of(
                                Run.bold(TellSet.counts(stay.get().counts())),
                                Run.of("from " + TellSet.duration(stay.get().starts()))),
                        WORDS,
                        2);
            }
            place.pattern()
                    .flatMap(PatternDocument::phrase)
                    .filter(phrase -> !phrase.equals(place.name()))
                    .ifPresent(phrase -> words.paragraph(List.of(Run.quiet(phrase)), WORDS, 2));
            reading.turn(i)
                    .ifPresent(
                            turn ->
                                    TellSet.turn(turn)
                                            .forEach(
                                                    told ->
                                                            words.paragraph(
                                                                    List.of(Run.of(told.text())),
                                                                    WORDS,
                                                                    2)));
            if (!TellSet.reached(stay.get())) {
                words.item(
                        Run.bold("!"),
                        List.of(Run.of(TellSet.reach(stay.get()).text())),
                        WORDS,
                        2,
                        SIGN);
            }
            if (reading.level(i) == Level.DANGER) {
                reading.danger(i)
                        .ifPresent(
                                told ->
                                        words.item(
                                                Run.bold("!"),
                                                List.of(Run.of(told.text()).in(Ink.WARN)),
                                                WORDS,
                                                2,
                                                SIGN));
            }
        }
        Galley onward = new Galley(width - SIGN);
        if (i < reading.plan().joints().size()) {
            List<String> names = reading.names();
            onward.item(
                    Run.bold("·"),
                    List.of(
                            Run.of(
                                    TellSet.joint(
                                                    reading.plan().joints().get(i),
                                                    names.get(i),
                                                    names.get((i + 1) % names.size()))
                                            .text())),
                    WORDS,
                    0,
                    SIGN);
        }
        return new Entry(words.rows(), onward.rows(), place.pattern());
    }

    private Block block(int i, Entry entry, Box box) {
        // The name is read before what its picture shows.
        List<Mark> marks =
                new ArrayList<>(Galley.placed(entry.words(), box.x() + PICTURE + BESIDE, box.y()));
        double high = Galley.height(entry.words());
        if (entry.picture().isPresent()) {
            PatternDocument pattern = Lesson.printed(entry.picture().get(), edition);
            Scene scene = Scene.of(Trace.of(pattern.pairing()));
            marks.addAll(
                    Plates.card(
                            new Box(box.x(), box.y(), PICTURE, PICTURE),
                            scene,
                            Outlook.of(pattern.pairing(), edition.stand()).view(),
                            Counts.of(scene.trace()).get(0),
                            pattern.name()));
            high = Math.max(PICTURE, high);
        }
        marks.addAll(Galley.placed(entry.onward(), box.x() + SIGN, box.y() + high + 4));
        return new Block("step " + (i + 1), box, marks);
    }
}

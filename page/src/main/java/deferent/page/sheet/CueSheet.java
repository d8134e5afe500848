package deferent.page.sheet;

import deferent.page.Palette.Ink;
import deferent.page.sheet.Galley.Row;
import deferent.page.sheet.Galley.Run;
import deferent.record.cue.SetCue;
import deferent.record.cue.SetCues;
import deferent.tell.TellSungSet;
import deferent.tell.Telling;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * The cues of a set on paper, for whoever calls it: cautions first, then a row for each cue with
 * its time, its place in the song's bars and what is called. As many pages as it takes, each with
 * the table's head.
 *
 * @param cues of the set
 * @param edition for which paper
 */
public record CueSheet(SetCues cues, Edition edition) implements Print {
    private static final double TITLE = 19;
    private static final double CALL = 10.5;
    private static final double WORDS = 8.4;
    private static final double SIGN = 10;
    private static final double GAP = 6;

    /** Room of a time and of a place in the bars, and between columns, points. */
    private static final double TIME = 52;

    private static final double PLACE = 74;
    private static final double BETWEEN = 10;

    @Override
    public String title() {
        return cues.name();
    }

    @Override
    public Optional<List<Leaf>> leaves(Consumer<PrintProgress> listener, BooleanSupplier stop) {
        Grid grid = new Grid(edition.size());
        Tag table = Tag.of(Tag.Kind.TABLE);
        List<Leaf> leaves = new ArrayList<>();
        List<Block> blocks = new ArrayList<>(List.of(head(grid)));
        double y = blocks.get(0).box().bottom() + 2 * GAP;
        y = add(blocks, header(grid.body(), table), y);
        int all = cues.cues().size();
        for (int i = 0; i < all; i++) {
            if (stop.getAsBoolean()) {
                return Optional.empty();
            }
            Line line = line(grid.body(), table, cues.cues().get(i), i);
            if (y + line.height() > grid.body().bottom()) {
                leaves.add(leaf(grid, blocks, leaves.size()));
                blocks = new ArrayList<>();
                y = add(blocks, header(grid.body(), table), grid.body().y());
            }
            y = add(blocks, line, y);
            listener.accept(new PrintProgress(PrintProgress.Step.READING, i + 1, all));
        }
        leaves.add(leaf(grid, blocks, leaves.size()));
        return Optional.of(leaves);
    }

    private Leaf leaf(Grid grid, List<Block> blocks, int before) {
        List<Block> all = new ArrayList<>(blocks);
        String clock =
                cues.song().isPresent()
                        ? "Times are the song's, from its start."
                        : "Times are counted from the start of the set.";
        Foot foot =
                Foot.of(
                        clock
                                + " A count is one turn of the poi that turns more often. No number here is a permission.");
        all.add(foot.on(before + 1).block(grid));
        return new Leaf(
                grid.size(),
                grid.margins(),
                all,
                before == 0 ? Optional.of(cues.name()) : Optional.empty());
    }

    private Block head(Grid grid) {
        Box body = grid.body();
        Galley galley = new Galley(body.width());
        galley.title(cues.name(), TITLE, 0);
        cues.song().ifPresent(song -> galley.paragraph("To \"" + song + "\"", WORDS + 2, 3));
        for (String caution : cues.cautions()) {
            galley.item(
                    Run.bold("!").in(Ink.WARN),
                    List.of(Run.of(caution).in(Ink.WARN)),
                    WORDS + 0.6,
                    4,
                    SIGN);
        }
        galley.paragraph(Telling.care(), WORDS, 6);
        List<Row> rows = galley.rows();
        Box box = new Box(body.x(), body.y(), body.width(), Galley.height(rows));
        return new Block("title", box, Galley.placed(rows, box.x(), box.y()));
    }

    /** Cells beside each other, each a column of its own. */
    private record Line(String name, Box columns, double[] left, List<List<Row>> cells) {
        double height() {
            return cells.stream().mapToDouble(Galley::height).max().orElse(0) + GAP;
        }

        Block at(double y) {
            List<Mark> marks = new ArrayList<>();
            for (int i = 0; i < cells.size(); i++) {
                marks.addAll(Galley.placed(cells.get(i), columns.x() + left[i], y));
            }
            return new Block(name, new Box(columns.x(), y, columns.width(), height() - GAP), marks);
        }
    }

    private static double add(List<Block> blocks, Line line, double y) {
        blocks.add(line.at(y));
        return y + line.height();
    }

    private Line header(Box body, Tag table) {
        Tag row = Tag.of(Tag.Kind.ROW, table);
        List<String> names =
                cues.song().isPresent()
                        ? List.of("Time", "Bar and beat", "Call", "What it is")
                        : List.of("Time", "Call", "What it is");
        List<Double> widths = widths(body);
        List<List<Row>> cells = new ArrayList<>();
        for (int i = 0; i < names.size(); i++) {
            Galley cell = Galley.under(Tag.of(Tag.Kind.HEAD, row), widths.get(i));
            cells.add(cell.paragraph(List.of(Run.bold(names.get(i))), WORDS, 0).rows());
        }
        return new Line("table's head", body, lefts(widths), cells);
    }

    private List<Double> widths(Box body) {
        boolean sung = cues.song().isPresent();
        double left = body.width() - TIME - BETWEEN - (sung ? PLACE + BETWEEN : 0) - BETWEEN;
        List<Double> widths = new ArrayList<>(List.of(TIME));
        if (sung) {
            widths.add(PLACE);
        }
        widths.addAll(List.of(0.4 * left, 0.6 * left));
        return widths;
    }

    private static double[] lefts(List<Double> widths) {
        double[] lefts = new double[widths.size()];
        for (int i = 1; i < lefts.length; i++) {
            lefts[i] = lefts[i - 1] + widths.get(i - 1) + BETWEEN;
        }
        return lefts;
    }

    private Line line(Box body, Tag table, SetCue cue, int number) {
        Tag row = Tag.of(Tag.Kind.ROW, table);
        List<Double> widths = widths(body);
        List<List<Row>> cells = new ArrayList<>();
        cells.add(cell(row, widths.get(0), Run.of(TellSungSet.time(cue.time())), CALL));
        if (cues.song().isPresent()) {
            String place = cue.place().map(CueSheet::said).orElse("");
            cells.add(cell(row, widths.get(1), Run.of(place), CALL));
        }
        boolean main = cue.kind() == SetCue.Kind.PATTERN;
        Run call = main ? Run.bold(cue.call()) : Run.of(cue.call());
        cells.add(cell(row, widths.get(cells.size()), call, CALL));
        Galley more = Galley.under(Tag.of(Tag.Kind.CELL, row), widths.get(cells.size()));
        cue.cautions()
                .forEach(
                        caution ->
                                more.paragraph(
                                        List.of(
                                                Run.bold("! ").in(Ink.WARN),
                                                Run.of(caution).in(Ink.WARN)),
                                        WORDS,
                                        1));
        cue.more().forEach(text -> more.paragraph(List.of(Run.of(text)), WORDS, 1));
        cells.add(more.orSpace(WORDS).rows());
        return new Line("cue " + (number + 1), body, lefts(widths), cells);
    }

    private static List<Row> cell(Tag row, double width, Run run, double size) {
        Galley cell = Galley.under(Tag.of(Tag.Kind.CELL, row), width);
        return cell.paragraph(List.of(run), size, 0).orSpace(size).rows();
    }

    /** "5, 3": bar and beat. */
    private static String said(SetCue.Place place) {
        String beat = String.format(Locale.ROOT, "%.1f", place.beat()).replaceFirst("\\.0$", "");
        return place.bar() + ", " + beat;
    }
}

package deferent.page.sheet;

import deferent.motion.shared.Side;
import deferent.page.Face;
import deferent.page.Palette.Ink;
import deferent.page.View;
import deferent.page.sheet.Galley.Row;
import deferent.page.sheet.Galley.Run;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.stream.Collectors;

/** A booklet's cover, its contents, and what to know before spinning. */
final class FrontPages {
    private static final double SIGN = 34;
    private static final double ENTRY = 11;

    private final String title;
    private final List<Lesson> lessons;
    private final Edition edition;
    private final Booklet.Order order;
    private final Grid grid;

    FrontPages(String title, List<Lesson> lessons, Edition edition, Booklet.Order order) {
        this.title = title;
        this.lessons = lessons;
        this.edition = edition;
        this.order = order;
        this.grid = new Grid(edition.size());
    }

    /** How many pages there will be. */
    int count() {
        return leaves(lessons.stream().map(l -> 0).toList(), Foot.of("")::on).size();
    }

    /** At the foot of every page. */
    String foot() {
        String whose = authors();
        return title + (whose.isEmpty() ? "" : " · " + whose);
    }

    /** Whose the patterns are, or that they are invented. */
    private String authors() {
        return lessons.stream()
                .flatMap(lesson -> lesson.pattern().author().stream())
                .distinct()
                .collect(Collectors.joining(", "));
    }

    /**
     * @param pages on which each lesson begins
     * @param foot by page number
     */
    List<Leaf> leaves(List<Integer> pages, IntFunction<Foot> foot) {
        List<Leaf> leaves = new ArrayList<>();
        leaves.add(cover());
        contents(pages, foot, leaves);
        leaves.add(knowing(foot.apply(leaves.size() + 1)));
        return leaves;
    }

    private Leaf leaf(List<Block> blocks, String bookmark) {
        return new Leaf(
                grid.size(),
                grid.margins(),
                blocks,
                bookmark.isEmpty() ? Optional.empty() : Optional.of(bookmark));
    }

    // --- cover

    private Leaf cover() {
        Box all = grid.margins();
        List<Block> blocks = new ArrayList<>();
        Galley words = new Galley(all.width());
        words.title(title, title.length() > 40 ? 24 : 36, 0);
        words.paragraph(List.of(Run.quiet(what())), 12, 8);
        String authors = authors();
        if (!authors.isEmpty()) {
            words.paragraph(List.of(Run.bold(Foot.capital(authors))), 10.5, 6);
        }
        double y = all.y() + 26;
        double height = Galley.height(words.rows());
        blocks.add(
                new Block(
                        "title",
                        new Box(all.x(), y, all.width(), height),
                        Galley.placed(words.rows(), all.x(), y)));
        y += height + 26;
        signs(new Box(all.x(), y, all.width(), all.bottom() - y), blocks);
        return leaf(blocks, title);
    }

    private String what() {
        int n = lessons.size();
        Lesson first = lessons.get(0);
        boolean alike =
                lessons.stream().allMatch(l -> l.outlook().said().equals(first.outlook().said()));
        return (n == 1 ? "One pairing" : n + " pairings")
                + (order == Booklet.Order.ROUTE ? ", one leading to the next" : "")
                + ", a page each · "
                + (alike ? first.outlook().said() : Foot.capital(edition.stand().seenBy()))
                + (edition.mirrored() ? " · left-handed: each hand does what the other did" : "");
    }

    /** All figures, as many as a page holds. */
    private void signs(Box room, List<Block> blocks) {
        int n = lessons.size();
        int across = n <= 2 ? n : n <= 6 ? 2 : n <= 12 ? 3 : n <= 20 ? 4 : 6;
        int down = (n + across - 1) / across;
        double gap = 10;
        double width = (room.width() - (across - 1) * gap) / across;
        double height = Math.min(width, (room.height() - (down - 1) * gap) / down);
        if (height < Plates.LEAST) {
            down = (int) Math.floor((room.height() + gap) / (Plates.LEAST + gap));
            height = Plates.LEAST;
        }
        List<Mark> marks = new ArrayList<>();
        for (int i = 0; i < Math.min(n, across * down); i++) {
            Box box =
                    new Box(
                            room.x() + i % across * (width + gap),
                            room.y() + Math.floorDiv(i, across) * (height + gap),
                            width,
                            height);
            Lesson lesson = lessons.get(i);
            View view = lesson.outlook().view();
            String seen = PictureWords.sign(lesson.pattern().name(), lesson.scene(), view);
            marks.add(Plates.sign(box, lesson.scene(), view, Optional.of(Tag.figure(seen))));
        }
        blocks.add(new Block("figures", room, marks));
    }

    // --- contents

    private void contents(List<Integer> pages, IntFunction<Foot> foot, List<Leaf> leaves) {
        Box body = grid.body();
        List<Block> blocks = new ArrayList<>();
        double y = heading("Contents", blocks);
        boolean first = true;
        Tag list = Tag.of(Tag.Kind.CONTENTS);
        for (int i = 0; i < lessons.size(); i++) {
            Tag tag =
                    Tag.link(
                            Tag.of(Tag.Kind.ENTRY, list),
                            lessons.get(i).pattern().name() + ", page " + pages.get(i));
            List<Row> words = entry(lessons.get(i), tag);
            double height = Math.max(SIGN, Galley.height(words)) + ENTRY;
            if (y + height > body.bottom() && blocks.size() > 1) {
                blocks.add(foot.apply(leaves.size() + 1).block(grid));
                leaves.add(leaf(blocks, first ? "Contents" : ""));
                first = false;
                blocks = new ArrayList<>();
                y = heading("Contents, continued", blocks);
            }
            blocks.add(
                    entry(
                            i,
                            words,
                            pages.get(i),
                            new Box(body.x(), y, body.width(), height),
                            Optional.of(tag)));
            y += height;
        }
        blocks.add(foot.apply(leaves.size() + 1).block(grid));
        leaves.add(leaf(blocks, first ? "Contents" : ""));
    }

    private double heading(String words, List<Block> blocks) {
        Box body = grid.body();
        Galley galley = new Galley(body.width());
        galley.title(words, 22, 0);
        double height = Galley.height(galley.rows());
        Box box = new Box(body.x(), body.y(), body.width(), height + 10);
        List<Mark> marks = new ArrayList<>(Galley.placed(galley.rows(), box.x(), box.y()));
        marks.add(new Mark.Rule(new Box(box.x(), box.bottom(), box.width(), 0), 0.8, Ink.TEXT));
        blocks.add(new Block("heading", box, marks));
        return box.bottom() + 14;
    }

    private double left() {
        return SIGN * 1.4 + 14;
    }

    private List<Row> entry(Lesson lesson, Tag tag) {
        Galley galley = Galley.under(tag, grid.body().width() - left() - 40);
        galley.heading(lesson.pattern().name(), 11, 0);
        lesson.phrase()
                .filter(phrase -> !phrase.equals(lesson.pattern().name()))
                .ifPresent(phrase -> galley.paragraph(List.of(Run.quiet(phrase)), 8.8, 0));
        return galley.rows();
    }

    private Block entry(int i, List<Row> words, int page, Box box, Optional<Tag> tag) {
        Lesson lesson = lessons.get(i);
        List<Mark> marks = new ArrayList<>();
        double height = box.height() - ENTRY;
        Box sign = new Box(box.x(), box.y(), SIGN * 1.4, Math.min(height, SIGN));
        // Beside the name it tells nothing that the cover did not.
        marks.add(Plates.sign(sign, lesson.scene(), lesson.outlook().view(), Optional.empty()));
        double top = box.y() + Math.max(0, (SIGN - Galley.height(words)) / 2);
        marks.addAll(Galley.placed(words, box.x() + left(), top));
        String number = Integer.toString(page);
        double length = Face.BOLD.width(number, 11);
        marks.add(
                HandSetLines.at(
                        number,
                        Face.BOLD,
                        11,
                        Ink.TEXT,
                        box.right() - length,
                        top,
                        1.34 * 11,
                        tag));
        double line = box.bottom() - ENTRY / 2;
        marks.add(
                new Mark.Rule(
                        new Box(box.x() + left(), line, box.width() - left(), 0), 0.4, Ink.FAINT));
        marks.add(new Mark.Link(new Box(box.x(), box.y(), box.width(), height), page - 1, tag));
        return new Block("entry " + (i + 1), box, marks);
    }

    // --- what to know

    private Leaf knowing(Foot foot) {
        Box body = grid.body();
        List<Block> blocks = new ArrayList<>();
        double y = heading("Take care", blocks);
        Galley cautions = new Galley(body.width());
        boolean first = true;
        for (String caution : widest().cautions()) {
            cautions.item(Run.bold("!"), List.of(Run.of(caution)), 10, first ? 0 : 4, 12);
            first = false;
        }
        y = set("cautions", cautions.rows(), y, blocks) + 26;
        Galley reading = new Galley(body.width());
        reading.heading("How to read these pages", 14, 0);
        y = set("how", reading.rows(), y, blocks) + 6;
        for (Side side : Side.values()) {
            y = sample(side, y, blocks);
        }
        Galley notes = new Galley(body.width());
        for (String[] note : NOTES) {
            notes.paragraph(List.of(Run.bold(note[0] + " "), Run.of(note[1])), 10, 6);
        }
        set("notes", notes.rows(), y + 4, blocks);
        blocks.add(foot.block(grid));
        return leaf(blocks, "Take care");
    }

    /** The lesson that asks for the most room; one whose reach is not known asks for more yet. */
    private Lesson widest() {
        return lessons.stream()
                .max(
                        Comparator.comparingDouble(
                                lesson -> lesson.reach().orElse(Double.POSITIVE_INFINITY)))
                .orElseThrow();
    }

    private double set(String name, List<Row> rows, double y, List<Block> blocks) {
        Box body = grid.body();
        Box box = new Box(body.x(), y, body.width(), Galley.height(rows));
        blocks.add(new Block(name, box, Galley.placed(rows, box.x(), y)));
        return box.bottom();
    }

    private double sample(Side side, double y, List<Block> blocks) {
        Box body = grid.body();
        double line = 16;
        String words =
                side == Side.LEFT
                        ? "The left hand is a ring, its head a disc, its lines unbroken and blue."
                        : "The right hand is a square, its head a diamond, its lines dashed and"
                                + " orange.";
        List<Mark> marks = new ArrayList<>();
        // The words beside it say what it shows.
        marks.add(new Mark.Sample(new Box(body.x(), y, 46, line), side, Optional.empty()));
        marks.add(
                HandSetLines.at(
                        words,
                        Face.REGULAR,
                        10,
                        Ink.TEXT,
                        body.x() + 56,
                        y,
                        line,
                        Optional.of(Tag.of(Tag.Kind.PARAGRAPH))));
        blocks.add(
                new Block(
                        "sample " + side.word(), new Box(body.x(), y, body.width(), line), marks));
        return y + line + 2;
    }

    private static final String[][] NOTES = {
        {
            "Counts",
            "are whole turns of the poi that turns more often: 1 where the cycle begins, & half-way"
                    + " to the next, e and a at the quarters."
        },
        {
            "Clockwise",
            "and counter-clockwise are as the performer sees it, and left and right are the performer's"
                    + " own, whoever looks at the picture."
        },
        {
            "Apart now",
            "is how far the one head is from the other hand at the same moment, as drawn; at best is how"
                    + " far it would be if they were turned, shifted and timed best. Nobody notices a hand's"
                    + " breadth, 8 cm."
        },
        {
            "A hand that keeps its path",
            "goes as it is drawn, and the figure gives; a hand that keeps the figure leaves its path, so"
                    + " that the head goes as it is drawn. A slip that grows holds if you correct it in"
                    + " time; a poi runs away where no correction is in time."
        },
        {
            "Largest in reach",
            "is the largest hand path about this centre that the arm can follow without turning or"
                    + " leaning the trunk."
        },
    };
}

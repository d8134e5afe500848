package deferent.page.sheet;

import deferent.motion.shared.Side;
import deferent.page.Face;
import deferent.page.Palette.Ink;
import deferent.page.View;
import deferent.page.sheet.Galley.Run;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Lays out what a student takes home of one pattern, on one page: its name, six sentences, the
 * figure large, and eight poses of one round, numbered.
 */
final class StudentPage {
    static final int POSES = 8;

    private static final int ACROSS = 4;
    private static final double GAP = 12;
    private static final double NUMBER = 17;
    private static final double KEY = 15;
    private static final double[] SIZES = {13, 12, 11, 10, 9};
    private static final double MOST_POSE = 112;

    private static final double LEAST_FIGURE = 150;

    private final Lesson lesson;
    private final Grid grid;
    private final View view;
    private final List<Block> blocks = new ArrayList<>();

    private StudentPage(Lesson lesson, Edition edition) {
        this.lesson = lesson;
        this.grid = new Grid(edition.size());
        this.view = lesson.outlook().view();
    }

    static Leaf leaf(Lesson lesson, Edition edition, Foot foot) {
        return new StudentPage(lesson, edition).laid(foot);
    }

    private Leaf laid(Foot foot) {
        Box body = grid.body();
        String name = lesson.named();
        Galley title = new Galley(body.width());
        title.title(
                name + (lesson.mirrored() ? " (left-handed)" : ""),
                name.length() > 40 ? 16 : 24,
                0);
        double y = place("title", title.rows(), body.y()) + 6;
        double below = y;
        List<Galley.Row> words = List.of();
        double pose = 0;
        for (double size : SIZES) {
            words = words(size);
            double free = body.bottom() - below - Galley.height(words) - 4 * GAP - KEY - 2 * NUMBER;
            pose = Math.min(MOST_POSE, Math.max(Plates.LEAST, (free - LEAST_FIGURE) / 2));
            if (free - 2 * pose >= LEAST_FIGURE) {
                break;
            }
        }
        y = place("words", words, y) + GAP;
        double poses = 2 * (pose + NUMBER) + GAP;
        double figure = body.bottom() - y - poses - KEY - GAP;
        figure(new Box(body.x(), y, body.width(), figure));
        key(new Box(body.x(), y + figure, body.width(), KEY));
        poses(new Box(body.x(), y + figure + KEY + GAP, body.width(), poses), pose);
        blocks.add(foot.block(grid));
        return new Leaf(grid.size(), grid.margins(), blocks, Optional.of(name));
    }

    private double place(String name, List<Galley.Row> rows, double y) {
        Box body = grid.body();
        Box box = new Box(body.x(), y, body.width(), Galley.height(rows));
        blocks.add(new Block(name, box, Galley.placed(rows, box.x(), y)));
        return box.bottom();
    }

    private List<Galley.Row> words(double size) {
        Galley galley = new Galley(grid.body().width());
        for (String sentence : StudentWords.of(lesson)) {
            galley.item(Run.quiet("–"), List.of(Run.of(sentence)), size, 3, 13);
        }
        return galley.rows();
    }

    private void figure(Box box) {
        blocks.add(
                new Block(
                        "figure",
                        box,
                        Plates.figure(
                                box,
                                lesson.scene(),
                                view,
                                lesson.moments().get(0),
                                lesson.named())));
    }

    private void key(Box box) {
        List<Mark> marks = new ArrayList<>();
        double x = box.x();
        for (Side side : Side.values()) {
            x = Plates.key(side, x, box.y(), 9, marks) + 18;
        }
        blocks.add(new Block("key", box, marks));
    }

    private void poses(Box box, double height) {
        List<Mark> marks = new ArrayList<>();
        double width = (box.width() - (ACROSS - 1) * GAP) / ACROSS;
        for (int i = 0; i < POSES; i++) {
            double x = box.x() + i % ACROSS * (width + GAP);
            double top = box.y() + Math.floorDiv(i, ACROSS) * (height + NUMBER + GAP);
            double time =
                    lesson.scene().trace().interval().start() + lesson.scene().period() * i / POSES;
            String number = Integer.toString(i + 1);
            Tag tag =
                    Tag.figure(
                            PictureWords.pose("Pose " + number + ":", lesson.scene(), view, time));
            marks.add(Plates.pose(new Box(x, top, width, height), lesson.scene(), view, time, tag));
            double length = Face.BOLD.width(number, 12);
            marks.add(
                    HandSetLines.at(
                            number,
                            Face.BOLD,
                            12,
                            Ink.TEXT,
                            x + (width - length) / 2,
                            top + height,
                            NUMBER,
                            Optional.of(tag)));
        }
        blocks.add(new Block("poses", box, marks));
    }
}

package deferent.page.sheet;

import deferent.motion.shared.Side;
import deferent.motion.trace.Count;
import deferent.page.Face;
import deferent.page.Layer;
import deferent.page.Palette.Ink;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.StillForm;
import deferent.page.View;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;

/** The few kinds of picture that printed pages have. */
final class Plates {
    /** 25 mm and a hair, points: what is smaller cannot be made out in a hall (our choice). */
    static final double LEAST = 25 * 72 / 25.4 + 1;

    /** Pixels a point: the more, the finer the lines. */
    private static final double LARGE = 2.0;

    private static final double SMALL = 2.3;
    private static final double TINY = 3.2;

    private Plates() {}

    /** The figure in full strength, and over it both hands where the first count finds them. */
    static List<Mark> figure(Box box, Scene scene, View view, Count first, String name) {
        Optional<Tag> tag = Optional.of(Tag.figure(PictureWords.figure(name, scene, view, first)));
        Still hands =
                still(view)
                        .with(StillForm.POSES, List.of(first.time()))
                        .with(EnumSet.of(Layer.TETHER, Layer.HAND, Layer.HEAD));
        return List.of(
                plate(box, scene, still(view).with(StillForm.FIGURE), LARGE, tag),
                plate(box, scene, hands, LARGE, tag));
    }

    /** The same on a card. */
    static List<Mark> card(Box box, Scene scene, View view, Count first, String name) {
        return figure(box, scene, view, first, name);
    }

    /** Both hands at one moment, on the figure. */
    static Mark.Plate pose(Box box, Scene scene, View view, double time, Tag tag) {
        return plate(
                box,
                scene,
                still(view).with(StillForm.POSES, List.of(time)).without(Layer.LINK),
                SMALL,
                Optional.of(tag));
    }

    /** The figure alone, as a sign for it. */
    static Mark.Plate sign(Box box, Scene scene, View view, Optional<Tag> tag) {
        return plate(
                box,
                scene,
                still(view).with(StillForm.FIGURE).without(Layer.HAND_PATH).without(Layer.CENTRE),
                TINY,
                tag);
    }

    /** A sample of a side's lines with its words behind it; where they end. */
    static double key(Side side, double x, double top, double size, List<Mark> marks) {
        double line = 1.34 * size;
        marks.add(
                new Mark.Sample(
                        new Box(x, top, 40, line),
                        side,
                        Optional.of(
                                Tag.figure(
                                        side == Side.LEFT
                                                ? "A ring, an unbroken blue line, a disc:"
                                                : "A square, a dashed orange line, a diamond:"))));
        String name = side.word() + " hand and head";
        marks.add(
                HandSetLines.at(
                        name,
                        Face.REGULAR,
                        size,
                        Ink.QUIET,
                        x + 45,
                        top,
                        line,
                        Optional.of(Tag.of(Tag.Kind.PARAGRAPH))));
        return x + 45 + Face.REGULAR.width(name, size);
    }

    private static Still still(View view) {
        return Still.square(480).with(view).clear();
    }

    private static Mark.Plate plate(
            Box box, Scene scene, Still still, double density, Optional<Tag> tag) {
        int across = (int) Math.max(48, Math.round(box.width() * density));
        double scale = box.width() / across;
        int up = (int) Math.max(48, Math.floor(box.height() / scale + 1e-6));
        return new Mark.Plate(
                new Box(box.x(), box.y(), box.width(), up * scale),
                scene,
                still.sized(across, up),
                tag);
    }
}

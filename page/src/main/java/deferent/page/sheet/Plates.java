package deferent.page.sheet;

import deferent.motion.trace.Count;
import deferent.page.Layer;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.StillForm;
import deferent.page.View;
import java.util.EnumSet;
import java.util.List;

/** The few kinds of picture that printed pages have. */
final class Plates {
    /** Pixels a point: the more, the finer the lines. */
    private static final double LARGE = 2.0;

    private static final double SMALL = 2.3;
    private static final double TINY = 3.2;

    private Plates() {}

    /** The figure in full strength, and over it both hands where the first count finds them. */
    static List<Mark> figure(Box box, Scene scene, View view, Count first) {
        Still hands =
                still(view)
                        .with(StillForm.POSES, List.of(first.time()))
                        .with(EnumSet.of(Layer.TETHER, Layer.HAND, Layer.HEAD));
        return List.of(
                plate(box, scene, still(view).with(StillForm.FIGURE), LARGE),
                plate(box, scene, hands, LARGE));
    }

    /** The same on a card. */
    static List<Mark> card(Box box, Scene scene, View view, Count first) {
        return figure(box, scene, view, first);
    }

    /** Both hands at one count, on the figure. */
    static Mark.Plate pose(Box box, Scene scene, View view, Count count) {
        return plate(
                box,
                scene,
                still(view).with(StillForm.POSES, List.of(count.time())).without(Layer.LINK),
                SMALL);
    }

    /** The figure alone, as a sign for it. */
    static Mark.Plate sign(Box box, Scene scene, View view) {
        return plate(
                box,
                scene,
                still(view).with(StillForm.FIGURE).without(Layer.HAND_PATH).without(Layer.CENTRE),
                TINY);
    }

    private static Still still(View view) {
        return Still.square(480).with(view).clear();
    }

    private static Mark.Plate plate(Box box, Scene scene, Still still, double density) {
        int across = (int) Math.max(48, Math.round(box.width() * density));
        double scale = box.width() / across;
        int up = (int) Math.max(48, Math.floor(box.height() / scale + 1e-6));
        return new Mark.Plate(
                new Box(box.x(), box.y(), box.width(), up * scale), scene, still.sized(across, up));
    }
}

package deferent.page;

import deferent.motion.trace.Count;
import deferent.motion.trace.Counts;
import java.awt.geom.Rectangle2D;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** Paints a still: one scene in one form, one painting for every paper. */
final class Painter {
    private Painter() {}

    static void paint(Scene scene, Still still, Paper paper) {
        Layout layout = Layout.of(still);
        layout.ground(paper);
        double scale;
        if (still.form() instanceof StillForm.Figure) {
            scale = figure(scene, still, layout, paper);
        } else if (still.form() instanceof StillForm.Poses) {
            scale = new PosePainter(scene, still, layout).paint(paper);
        } else if (still.form() instanceof StillForm.Strip) {
            scale = new StripPainter(scene, still, layout).paint(paper);
        } else if (still.form() instanceof StillForm.Exposure exposure) {
            scale = new LightPainter(scene, still, layout, exposure).paint(paper);
        } else if (still.form() instanceof StillForm.Passage passage) {
            scale = new PassagePainter(scene, still, layout, passage).paint(paper);
        } else {
            scale = moment(scene, still, layout, paper);
        }
        layout.caption(paper, scale);
    }

    private static double moment(Scene scene, Still still, Layout layout, Paper paper) {
        Framing framing = Framing.of(scene, still.view(), layout.room());
        MomentPainter painter =
                new MomentPainter(
                        scene,
                        framing,
                        layout.brush(),
                        still.layers(),
                        layout.paper(),
                        paper.moves());
        painter.behind(paper, "", still.time());
        painter.trails(paper, "", still.time());
        painter.moving(paper, "", still.time());
        painter.labels(paper, "", still.time(), layout.labels());
        if (still.shows(Layer.COUNTS)) {
            List<Count> counts = Counts.of(scene.trace());
            Count on = Counts.at(scene.trace(), counts, still.time());
            paper.group("counts", "counts", g -> layout.counts(Brush.smooth(g), counts, on));
        }
        return framing.scale();
    }

    private static double figure(Scene scene, Still still, Layout layout, Paper paper) {
        Rectangle2D room = layout.room();
        Framing framing = Framing.of(scene, still.view(), room);
        Set<Layer> paths = EnumSet.of(Layer.BODY, Layer.HAND_PATH, Layer.TRAIL);
        paths.retainAll(still.layers());
        MomentPainter painter =
                new MomentPainter(scene, framing, layout.brush(), paths, layout.paper());
        painter.behind(paper, "", still.time());
        painter.figure(paper, "", still.time(), 1);
        return framing.scale();
    }
}

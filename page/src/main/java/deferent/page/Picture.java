package deferent.page;

import java.awt.Graphics2D;

/** Stills on any paper that takes AWT's drawing calls: a page of a document, a canvas. */
public final class Picture {
    private Picture() {}

    /**
     * Paints a still with its upper left corner at the graphics' origin, one pixel of the still a
     * unit; move, scale and clip the graphics beforehand. The graphics are left as they were.
     */
    public static void paint(Scene scene, Still still, Graphics2D graphics) {
        Painter.paint(
                scene,
                still,
                (id, name, strokes) -> {
                    Graphics2D g = (Graphics2D) graphics.create();
                    try {
                        strokes.accept(g);
                    } finally {
                        g.dispose();
                    }
                });
    }
}

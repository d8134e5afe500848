package deferent.page.sheet;

import deferent.motion.shared.Side;
import deferent.page.Scene;
import deferent.page.Track;
import deferent.page.View;

/** How wide and high a scene is as seen, metres; never a line, so that a plate has some shape. */
record SeenSize(double width, double height) {
    private static final double FLATTEST = 0.3;

    /** What a scene reaches as seen, metres. */
    record Bounds(double left, double right, double bottom, double top) {
        static Bounds of(Scene scene, View view) {
            double[] box = {
                Double.POSITIVE_INFINITY,
                Double.NEGATIVE_INFINITY,
                Double.POSITIVE_INFINITY,
                Double.NEGATIVE_INFINITY
            };
            for (Side side : Side.values()) {
                widen(box, scene.points(Track.hand(side)), view);
                widen(box, scene.points(Track.head(side)), view);
            }
            return new Bounds(box[0], box[1], box[2], box[3]);
        }

        double width() {
            return Math.max(0.05, right - left);
        }

        double height() {
            return Math.max(0.05, top - bottom);
        }

        private static void widen(double[] box, double[] xyz, View view) {
            for (int i = 0; i < xyz.length; i += 3) {
                View.Seen seen = view.see(xyz[i], xyz[i + 1], xyz[i + 2]);
                box[0] = Math.min(box[0], seen.right());
                box[1] = Math.max(box[1], seen.right());
                box[2] = Math.min(box[2], seen.up());
                box[3] = Math.max(box[3], seen.up());
            }
        }
    }

    static SeenSize of(Scene scene, View view) {
        Bounds box = Bounds.of(scene, view);
        double least = FLATTEST * Math.max(box.width(), box.height());
        return new SeenSize(Math.max(least, box.width()), Math.max(least, box.height()));
    }

    /** How high a picture so wide has to be that nothing is left free. */
    double heightFor(double across) {
        return across * height / width;
    }
}

package deferent.page.sheet;

import deferent.motion.pairing.Side;
import deferent.page.Scene;
import deferent.page.Track;
import deferent.page.View;

/** How wide and high a scene is as seen, metres; never a line, so that a plate has some shape. */
record SeenSize(double width, double height) {
    private static final double FLATTEST = 0.3;

    static SeenSize of(Scene scene, View view) {
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
        double width = box[1] - box[0];
        double height = box[3] - box[2];
        double least = Math.max(0.05, FLATTEST * Math.max(width, height));
        return new SeenSize(Math.max(least, width), Math.max(least, height));
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

    /** How high a picture so wide has to be that nothing is left free. */
    double heightFor(double across) {
        return across * height / width;
    }
}

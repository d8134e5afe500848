package deferent.film.held;

import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.shared.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import org.hipparchus.geometry.euclidean.twod.Vector2D;

/**
 * What a hand and its poi are meant to do over the common cycle, seen from the front, at {@value
 * #COUNT} even moments: the hand's place about its centre, and the tether from hand to head.
 *
 * @param handX metres to the performer's left
 * @param handY metres up
 * @param tetherX likewise, of the tether
 * @param tetherY likewise
 * @param sized whether the hand's path has a size of its own; a still hand's and a rider's has none
 */
record Shape(double[] handX, double[] handY, double[] tetherX, double[] tetherY, boolean sized) {
    static final int COUNT = 120;

    /**
     * A motion in the wall plane.
     *
     * @param tether metres
     * @param cycles of it in the common cycle
     */
    static Shape of(Motion motion, double tether, int cycles, boolean mirrored) {
        HandPath.Course path = motion.riding() ? null : motion.path().course();
        SpinLaw.Course poi = motion.spin().course();
        double[][] at = new double[4][COUNT];
        double left = mirrored ? -1 : 1;
        for (int i = 0; i < COUNT; i++) {
            double phase = (double) i * cycles / COUNT;
            phase -= Math.floor(phase);
            Vector2D hand = path == null ? Vector2D.ZERO : path.place(phase);
            double angle = poi.angle(phase);
            at[0][i] = left * hand.getX();
            at[1][i] = hand.getY();
            at[2][i] = left * tether * Math.cos(angle);
            at[3][i] = tether * Math.sin(angle);
        }
        boolean sized = !motion.riding() && !motion.path().still();
        return new Shape(at[0], at[1], at[2], at[3], sized);
    }

    /** One side of a meant trace, as it stands. */
    static Shape of(Trace trace, Side side) {
        Samples samples = trace.samples(COUNT);
        double[][] at = new double[4][COUNT];
        for (int i = 0; i < COUNT; i++) {
            at[0][i] = samples.hand(side)[3 * i];
            at[1][i] = samples.hand(side)[3 * i + 1];
            at[2][i] = samples.head(side)[3 * i] - at[0][i];
            at[3][i] = samples.head(side)[3 * i + 1] - at[1][i];
        }
        Motion motion = trace.pairing().part(side).motion();
        return new Shape(at[0], at[1], at[2], at[3], !motion.riding() && !motion.path().still());
    }

    /** The same with another poi's head for its hand, that many moments ahead. */
    Shape riding(Shape carrier, int ahead) {
        double[] x = new double[COUNT];
        double[] y = new double[COUNT];
        for (int i = 0; i < COUNT; i++) {
            int j = Math.floorMod(i + ahead, COUNT);
            x[i] = carrier.handX[j] + carrier.tetherX[j];
            y[i] = carrier.handY[j] + carrier.tetherY[j];
        }
        return new Shape(x, y, tetherX, tetherY, false);
    }

    /** The same, its hand's path so many times as large and all turned. */
    Shape fitted(double factor, double turned) {
        double c = Math.cos(turned);
        double s = Math.sin(turned);
        double[][] at = new double[4][COUNT];
        for (int i = 0; i < COUNT; i++) {
            at[0][i] = factor * (c * handX[i] - s * handY[i]);
            at[1][i] = factor * (s * handX[i] + c * handY[i]);
            at[2][i] = c * tetherX[i] - s * tetherY[i];
            at[3][i] = s * tetherX[i] + c * tetherY[i];
        }
        return new Shape(at[0], at[1], at[2], at[3], sized);
    }

    /** Whole turns of the poi over the cycle, positive toward the performer's left from the top. */
    int winding() {
        return winding(tetherX, tetherY);
    }

    static int winding(double[] x, double[] y) {
        double sum = 0;
        for (int i = 0; i < x.length; i++) {
            int j = (i + 1) % x.length;
            sum += Math.atan2(x[i] * y[j] - y[i] * x[j], x[i] * x[j] + y[i] * y[j]);
        }
        return (int) Math.rint(sum / (2 * Math.PI));
    }
}

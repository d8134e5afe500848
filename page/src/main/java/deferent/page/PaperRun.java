package deferent.page;

import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.jspecify.annotations.Nullable;

/**
 * A moving point's run as it lies on the paper: where the point is at evenly spaced times, close
 * enough that straight lines between them will do, and how far it has come by then.
 */
final class PaperRun {
    /** Samples stand no further apart than this on average, pixels. */
    private static final double APART = 3;

    private static final int MOST = 40 * Scene.USUAL_COUNT;

    private final double[] x;
    private final double[] y;
    private final double[] near;
    private final double[] come;
    private final boolean closed;
    private final double start;
    private final double period;
    private @Nullable FittedCurve curve;

    private PaperRun(
            double[] x, double[] y, double[] near, boolean closed, double start, double period) {
        this.x = x;
        this.y = y;
        this.near = near;
        this.closed = closed;
        this.start = start;
        this.period = period;
        come = new double[x.length];
        for (int i = 1; i < x.length; i++) {
            come[i] = come[i - 1] + Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]);
        }
    }

    static PaperRun of(Scene scene, Framing framing, Item.Shape.Run run) {
        PaperRun rough = of(scene, framing, run, scene.count());
        int fine = (int) Math.min(MOST, Math.ceil(rough.length() / APART));
        if (fine <= scene.count()) {
            return rough;
        }
        int times = (fine + scene.count() - 1) / scene.count();
        return of(scene, framing, run, times * scene.count());
    }

    private static PaperRun of(Scene scene, Framing framing, Item.Shape.Run run, int count) {
        Trace trace = scene.trace();
        Samples samples = trace.samples(count);
        Track track = run.track();
        double[] xyz =
                track.end() == Track.End.HAND
                        ? samples.hand(track.side())
                        : samples.head(track.side());
        int points = count + (run.closed() ? 1 : 0);
        double[] x = new double[points];
        double[] y = new double[points];
        double[] near = new double[points];
        for (int i = 0; i < points; i++) {
            int j = 3 * (i % count);
            Framing.Spot p = framing.spot(new Vector3D(xyz[j], xyz[j + 1], xyz[j + 2]));
            x[i] = p.x();
            y[i] = p.y();
            near[i] = p.near();
        }
        return new PaperRun(x, y, near, run.closed(), trace.interval().start(), trace.period());
    }

    /** Points; the first stands again at the end of a closed lane. */
    int count() {
        return x.length;
    }

    double x(int i) {
        return x[i];
    }

    double y(int i) {
        return y[i];
    }

    /** How near the point is to the onlooker, metres. */
    double near(int i) {
        return near[i];
    }

    /** How near it is on average over its length, metres. */
    double near() {
        double sum = 0;
        for (int i = 1; i < near.length; i++) {
            sum += (come[i] - come[i - 1]) * (near[i] + near[i - 1]) / 2;
        }
        return length() > 0 ? sum / length() : near[0];
    }

    /** As it is seen, with depth. */
    Crossings.Lane seen() {
        return new Crossings.Lane(x, y, near);
    }

    /** How far the point has come since the start, pixels. */
    double come(int i) {
        return come[i];
    }

    /** Pixels from start to end. */
    double length() {
        return come[come.length - 1];
    }

    boolean closed() {
        return closed;
    }

    /** Which share of the period has gone by at a time: of a closed lane, of its own cycle. */
    double share(double time) {
        double share = (time - start) / period;
        return closed ? share - Math.floor(share) : Math.max(0, Math.min(1, share));
    }

    /** How far the point has come at a share of the period. */
    double comeAt(double share) {
        double at = share * (x.length - 1);
        int i = Math.min((int) at, x.length - 2);
        return come[i] + (at - i) * (come[i + 1] - come[i]);
    }

    /** The share of the period at which the point has come so far, pixels. */
    double shareAt(double gone) {
        int i = Arrays.binarySearch(come, gone);
        if (i < 0) {
            int after = Math.max(1, Math.min(come.length - 1, -i - 1));
            double step = come[after] - come[after - 1];
            double part = step > 0 ? (gone - come[after - 1]) / step : 0;
            return (after - 1 + Math.max(0, Math.min(1, part))) / (come.length - 1);
        }
        return (double) i / (come.length - 1);
    }

    /** Where the point is at a share of the period; of a closed lane, of any. */
    Point2D.Double pointAt(double share) {
        double within = closed ? share - Math.floor(share) : Math.max(0, Math.min(1, share));
        double at = within * (x.length - 1);
        int i = Math.min((int) at, x.length - 2);
        double part = at - i;
        return new Point2D.Double(x[i] + part * (x[i + 1] - x[i]), y[i] + part * (y[i + 1] - y[i]));
    }

    private FittedCurve curve() {
        FittedCurve drawn = curve;
        if (drawn == null) {
            drawn = FittedCurve.through(x, y, closed);
            curve = drawn;
        }
        return drawn;
    }

    /** The whole line. */
    Path2D.Double whole() {
        return FittedCurve.path(curve().between(0, x.length - 1.0), closed);
    }

    /** The line from one share of the period on to a later one, at most a period on. */
    Path2D.Double between(double from, double to) {
        return FittedCurve.path(cubics(from, to), false);
    }

    private List<double[]> cubics(double from, double to) {
        int points = x.length - 1;
        if (!closed) {
            return curve().between(Math.max(0, from) * points, Math.min(1, to) * points);
        }
        double lap = Math.floor(from);
        List<double[]> cubics =
                new ArrayList<>(
                        curve().between((from - lap) * points, Math.min(1, to - lap) * points));
        if (to - lap > 1) {
            cubics.addAll(curve().between(0, (to - lap - 1) * points));
        }
        return cubics;
    }

    /**
     * A dash that fits a closed lane a whole number of times, and as often on each of {@code laps}
     * equal laps; of an open lane, the dash itself.
     *
     * @param dash pixels on and off; empty for unbroken
     */
    double[] fitted(double[] dash, int laps) {
        if (dash.length != 2 || !closed || length() <= 0) {
            return dash;
        }
        double lap = length() / laps;
        double stretch = lap / (dash[0] + dash[1]);
        stretch /= Math.max(1, Math.rint(stretch));
        return new double[] {stretch * dash[0], stretch * dash[1]};
    }
}

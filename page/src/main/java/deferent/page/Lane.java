package deferent.page;

import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A moving point's run as it lies on the paper: where the point is at evenly spaced times, close
 * enough that straight lines between them will do, and how far it has come by then.
 */
final class Lane {
    /** Samples stand no further apart than this on average, pixels. */
    private static final double APART = 3;

    private static final int MOST = 40 * Scene.USUAL_COUNT;

    private final double[] x;
    private final double[] y;
    private final double[] come;
    private final boolean closed;
    private final double start;
    private final double period;

    private Lane(double[] x, double[] y, boolean closed, double start, double period) {
        this.x = x;
        this.y = y;
        this.closed = closed;
        this.start = start;
        this.period = period;
        come = new double[x.length];
        for (int i = 1; i < x.length; i++) {
            come[i] = come[i - 1] + Math.hypot(x[i] - x[i - 1], y[i] - y[i - 1]);
        }
    }

    static Lane of(Scene scene, Framing framing, Item.Form.Run run) {
        Lane rough = of(scene, framing, run, scene.count());
        int fine = (int) Math.min(MOST, Math.ceil(rough.length() / APART));
        if (fine <= scene.count()) {
            return rough;
        }
        int times = (fine + scene.count() - 1) / scene.count();
        return of(scene, framing, run, times * scene.count());
    }

    private static Lane of(Scene scene, Framing framing, Item.Form.Run run, int count) {
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
        for (int i = 0; i < points; i++) {
            int j = 3 * (i % count);
            Point2D.Double p = framing.place(new Vector3D(xyz[j], xyz[j + 1], xyz[j + 2]));
            x[i] = p.x;
            y[i] = p.y;
        }
        return new Lane(x, y, run.closed(), trace.interval().start(), trace.period());
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

    private Point2D.Double pointAt(double share) {
        double at = share * (x.length - 1);
        int i = Math.min((int) at, x.length - 2);
        double part = at - i;
        return new Point2D.Double(x[i] + part * (x[i + 1] - x[i]), y[i] + part * (y[i + 1] - y[i]));
    }

    /** The whole line. */
    Path2D.Double whole() {
        List<Point2D.Double> points = new ArrayList<>(x.length);
        for (int i = 0; i < x.length - (closed ? 1 : 0); i++) {
            points.add(new Point2D.Double(x[i], y[i]));
        }
        return Framing.thinned(points, closed);
    }

    /** The line from one share of the period on to a later one, less than a period on. */
    List<Point2D.Double> between(double from, double to) {
        int steps = x.length - 1;
        List<Point2D.Double> points = new ArrayList<>();
        points.add(pointAt(wrapped(from)));
        int first = (int) Math.floor(from * steps) + 1;
        int last = (int) Math.ceil(to * steps) - 1;
        for (int i = first; i <= last; i++) {
            int j = Math.floorMod(i, steps);
            points.add(new Point2D.Double(x[j], y[j]));
        }
        points.add(pointAt(wrapped(to)));
        return points;
    }

    private double wrapped(double share) {
        return closed ? share - Math.floor(share) : Math.max(0, Math.min(1, share));
    }

    /**
     * The line run backward from a share of the period over as many periods as {@code back}; of an
     * open lane, no further than its start.
     */
    List<Point2D.Double> back(double share, double back) {
        double from = closed ? share - back : Math.max(0, share - back);
        List<Point2D.Double> points = between(from, share);
        Collections.reverse(points);
        return points;
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

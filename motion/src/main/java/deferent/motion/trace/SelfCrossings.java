package deferent.motion.trace;

import java.util.List;
import org.locationtech.jts.algorithm.RobustLineIntersector;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.kdtree.KdTree;
import org.locationtech.jts.noding.MCIndexNoder;
import org.locationtech.jts.noding.NodedSegmentString;
import org.locationtech.jts.noding.SegmentIntersector;
import org.locationtech.jts.noding.SegmentString;

/**
 * Points at which a head's path runs through itself. The sampled path's own crossings are found by
 * monotone chains and then brought onto the exact path by Newton steps for head(s) = head(t); what
 * runs along itself instead of across, as a path passed over twice does everywhere, is dropped by
 * the angle.
 */
final class SelfCrossings {
    // Sine of the least angle that counts as across.
    private static final double ACROSS = 1e-2;
    private static final double SAME = 1e-5;

    private final HeadPath path;
    private final double size;
    private final KdTree found;
    private int count;

    private SelfCrossings(HeadPath path) {
        this.path = path;
        this.size = Math.max(path.width(), path.height());
        this.found = new KdTree(SAME * size);
    }

    static int count(HeadPath path) {
        SelfCrossings crossings = new SelfCrossings(path);
        crossings.search();
        return crossings.count;
    }

    static Coordinate[] ring(double[] u, double[] v) {
        Coordinate[] ring = new Coordinate[u.length + 1];
        for (int i = 0; i < u.length; i++) {
            ring[i] = new Coordinate(u[i], v[i]);
        }
        ring[u.length] = new Coordinate(u[0], v[0]);
        return ring;
    }

    private void search() {
        Coordinate[] ring = ring(path.u(), path.v());
        RobustLineIntersector lines = new RobustLineIntersector();
        SegmentIntersector each =
                new SegmentIntersector() {
                    @Override
                    public void processIntersections(
                            SegmentString a, int i, SegmentString b, int j) {
                        int apart = Math.floorMod(j - i, ring.length - 1);
                        if (apart <= 1 || apart == ring.length - 2) {
                            return;
                        }
                        lines.computeIntersection(ring[i], ring[i + 1], ring[j], ring[j + 1]);
                        if (lines.hasIntersection() && across(i, j)) {
                            consider(i, j, lines.getIntersection(0));
                        }
                    }

                    @Override
                    public boolean isDone() {
                        return false;
                    }

                    private boolean across(int i, int j) {
                        double ax = ring[i + 1].x - ring[i].x;
                        double ay = ring[i + 1].y - ring[i].y;
                        double bx = ring[j + 1].x - ring[j].x;
                        double by = ring[j + 1].y - ring[j].y;
                        return Math.abs(ax * by - ay * bx)
                                > ACROSS * Math.hypot(ax, ay) * Math.hypot(bx, by);
                    }
                };
        new MCIndexNoder(each).computeNodes(List.of(new NodedSegmentString(ring, null)));
    }

    private void consider(int i, int j, Coordinate near) {
        Envelope about = new Envelope(near);
        about.expandBy(SAME * size);
        if (!found.query(about).isEmpty()) {
            return;
        }
        double[] exact =
                met(path.start() + (i + 0.5) * path.step(), path.start() + (j + 0.5) * path.step());
        if (exact.length == 0) {
            return;
        }
        // What lies within the tree's tolerance of another is that one again.
        if (!found.insert(new Coordinate(exact[0], exact[1])).isRepeated()) {
            count++;
        }
    }

    // The point where the path at two times near s and t meets itself; empty where it does not, or
    // only runs along itself.
    private double[] met(double s, double t) {
        double first = s;
        double second = t;
        for (int n = 0; n < 20; n++) {
            double[] a = path.moving(first);
            double[] b = path.moving(second);
            double det = a[3] * b[2] - a[2] * b[3];
            if (Math.abs(det) <= ACROSS * Math.hypot(a[2], a[3]) * Math.hypot(b[2], b[3])) {
                return new double[0];
            }
            double du = b[0] - a[0];
            double dv = b[1] - a[1];
            double byFirst = (dv * b[2] - du * b[3]) / det;
            double bySecond = (dv * a[2] - du * a[3]) / det;
            first += byFirst;
            second += bySecond;
            if (Math.abs(first - s) > 4 * path.step() || Math.abs(second - t) > 4 * path.step()) {
                return new double[0];
            }
            if (Math.hypot(du, dv) < 1e-9 * size) {
                return new double[] {a[0], a[1]};
            }
        }
        return new double[0];
    }
}

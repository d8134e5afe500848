package deferent.page;

import deferent.reading.body.Person;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.simplify.DouglasPeuckerSimplifier;

/**
 * Lays a scene, as seen from a view, into a room on the paper: one scale for both directions,
 * everything that ever shows inside, so that a picture does not jump from moment to moment.
 */
final class Framing {
    /** Lines are thinned until they are nowhere further than this from the sampled one, pixels. */
    private static final double THINNED = 0.1;

    private static final double SMALLEST = 0.05;
    private static final GeometryFactory PLAIN = new GeometryFactory();

    private final View view;
    private final double scale;
    private final double left;
    private final double top;

    private Framing(View view, double scale, double left, double top) {
        this.view = view;
        this.scale = scale;
        this.left = left;
        this.top = top;
    }

    /** With the scene in the middle of the room. */
    static Framing of(Scene scene, View view, Rectangle2D room) {
        Rectangle2D seen = extent(scene, view);
        double scale =
                Math.min(room.getWidth() / seen.getWidth(), room.getHeight() / seen.getHeight());
        return new Framing(
                view,
                scale,
                room.getCenterX() - scale * seen.getCenterX(),
                room.getCenterY() + scale * seen.getCenterY());
    }

    /** All that ever shows, as seen: metres to the viewer's right and up, never quite nothing. */
    static Rectangle2D extent(Scene scene, View view) {
        double[] box = {
            Double.POSITIVE_INFINITY,
            Double.NEGATIVE_INFINITY,
            Double.POSITIVE_INFINITY,
            Double.NEGATIVE_INFINITY
        };
        for (Item item : scene.items()) {
            if (item.form() instanceof Item.Shape.Run run) {
                double[] xyz = scene.points(run.track());
                for (int i = 0; i < xyz.length; i += 3) {
                    widen(box, view.see(xyz[i], xyz[i + 1], xyz[i + 2]));
                }
            } else if (item.form() instanceof Item.Shape.Fixed fixed) {
                fixed.points().forEach(p -> widen(box, view.see(p)));
            } else if (item.form() instanceof Item.Shape.Body body) {
                for (Person.Ball ball : body.person().balls()) {
                    ball.at().forEach(p -> widen(box, view.see(p), ball.radius()));
                }
            }
        }
        double across = Math.max(SMALLEST, box[1] - box[0]);
        double up = Math.max(SMALLEST, box[3] - box[2]);
        return new Rectangle2D.Double(
                (box[0] + box[1] - across) / 2, (box[2] + box[3] - up) / 2, across, up);
    }

    private static void widen(double[] box, View.Seen seen) {
        widen(box, seen, 0);
    }

    private static void widen(double[] box, View.Seen seen, double round) {
        box[0] = Math.min(box[0], seen.right() - round);
        box[1] = Math.max(box[1], seen.right() + round);
        box[2] = Math.min(box[2], seen.up() - round);
        box[3] = Math.max(box[3], seen.up() + round);
    }

    /** Pixels a metre. */
    double scale() {
        return scale;
    }

    /** Where a point of the frame falls on the paper, pixels from the upper left. */
    Point2D.Double place(Vector3D p) {
        View.Seen seen = view.see(p);
        return new Point2D.Double(left + scale * seen.right(), top - scale * seen.up());
    }

    /**
     * A point as it falls on the paper.
     *
     * @param x pixels from the left
     * @param y pixels from above
     * @param near how near it is to the viewer, metres
     */
    record Spot(double x, double y, double near) {}

    /** Where a point of the frame falls on the paper, with depth. */
    Spot spot(Vector3D p) {
        View.Seen seen = view.see(p);
        return new Spot(left + scale * seen.right(), top - scale * seen.up(), seen.near());
    }

    /** The line through points of the frame. */
    Path2D.Double line(List<Vector3D> points, boolean closed) {
        Coordinate[] all = new Coordinate[points.size() + (closed ? 1 : 0)];
        for (int i = 0; i < all.length; i++) {
            Point2D.Double p = place(points.get(i % points.size()));
            all[i] = new Coordinate(p.x, p.y);
        }
        Coordinate[] kept =
                all.length < 3
                        ? all
                        : DouglasPeuckerSimplifier.simplify(PLAIN.createLineString(all), THINNED)
                                .getCoordinates();
        Path2D.Double path = new Path2D.Double();
        for (int i = 0; i < kept.length; i++) {
            if (i == 0) {
                path.moveTo(kept[i].x, kept[i].y);
            } else if (closed && i == kept.length - 1) {
                path.closePath();
            } else {
                path.lineTo(kept[i].x, kept[i].y);
            }
        }
        return path;
    }
}

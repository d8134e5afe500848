package deferent.reading.body;

import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * How near a poi comes to the body and to its tender parts: the head with its own size, the cord
 * and the hand as the thin line that they are.
 *
 * <p>Face and throat are the outline's head and neck; the groin is a ball as thick as a leg where
 * the legs part, at 0.48 of stature (from memory). All of them lie within the {@link BodyOutline},
 * so that what keeps clear of the whole keeps clear of each. Where the body turns, forward is the
 * way it faces.
 */
public final class Tender {
    private static final double CROTCH = 0.48;
    private static final double GROIN_THICK = 0.05;

    // What is left open where a figure was moved until it keeps clear, metres.
    private static final double CLEAR = 1e-6;
    private static final int STEPS = 500;

    private final Trace trace;
    private final Samples samples;
    private final BodyOutline outline;
    private final Performer performer;
    private final double headRadius;

    public Tender(Trace trace, Performer performer, double headRadius) {
        this.trace = performer.around(trace);
        this.samples = Reach.samples(this.trace);
        this.outline = BodyOutline.of(performer);
        this.performer = performer;
        this.headRadius = headRadius;
    }

    /** How near that side's head, cord or hand comes to a part, metres. */
    public Nearness nearest(Side side, TenderPart part) {
        return nearest(side, part(part), 0);
    }

    /** How near that side's head, cord or hand comes to the body at all, metres. */
    public Nearness nearest(Side side) {
        return nearest(side, body(), 0);
    }

    /**
     * How far toward the audience all has to move until it keeps {@code limit} from that part for
     * the whole cycle, metres; empty where that is further than {@code most}.
     */
    public OptionalDouble forward(Side side, TenderPart part, double limit, double most) {
        return forward(side, part(part), limit, most);
    }

    /** The same of the whole body. */
    public OptionalDouble forward(Side side, double limit, double most) {
        return forward(side, body(), limit, most);
    }

    /** What is kept away from: its distance from a segment and from a point, metres. */
    private interface Shape {
        double from(double px, double py, double pz, double qx, double qy, double qz);

        double from(double x, double y, double z);
    }

    /** Found in closed form, since it is asked for at every sample of a drag. */
    private record Ball(double y, double z, double radius) implements Shape {
        @Override
        public double from(double px, double py, double pz, double qx, double qy, double qz) {
            double dx = qx - px;
            double dy = qy - py;
            double dz = qz - pz;
            double along = -(px * dx + (py - y) * dy + (pz - z) * dz);
            double s = Math.max(0, Math.min(1, along / (dx * dx + dy * dy + dz * dz)));
            return from(px + s * dx, py + s * dy, pz + s * dz);
        }

        @Override
        public double from(double px, double py, double pz) {
            double dy = py - y;
            double dz = pz - z;
            return Math.sqrt(px * px + dy * dy + dz * dz) - radius;
        }
    }

    private record Neck(BodyOutline.Slab slab) implements Shape {
        @Override
        public double from(double px, double py, double pz, double qx, double qy, double qz) {
            return slab.distance(px, py, pz, qx, qy, qz);
        }

        @Override
        public double from(double x, double y, double z) {
            return slab.distance(x, y, z);
        }
    }

    private record Whole(BodyOutline outline) implements Shape {
        @Override
        public double from(double px, double py, double pz, double qx, double qy, double qz) {
            return outline.distance(px, py, pz, qx, qy, qz);
        }

        @Override
        public double from(double x, double y, double z) {
            return outline.distance(x, y, z);
        }
    }

    private Shape body() {
        return new Whole(outline);
    }

    private Shape part(TenderPart part) {
        double h = performer.stature();
        return switch (part) {
            case FACE -> {
                BodyOutline.Slab skull = outline.slab(BodyOutline.Part.HEAD);
                yield new Ball(skull.low(), skull.z(), skull.thick());
            }
            case THROAT -> new Neck(outline.slab(BodyOutline.Part.NECK));
            case GROIN -> new Ball(performer.height(CROTCH), -Performer.DEPTH * h, GROIN_THICK * h);
        };
    }

    private Nearness nearest(Side side, Shape shape, double forward) {
        double[] hand = samples.hand(side);
        double[] head = samples.head(side);
        double[] sampled = new double[samples.count()];
        for (int i = 0; i < sampled.length; i++) {
            int x = 3 * i;
            sampled[i] =
                    distance(
                            shape,
                            hand[x],
                            hand[x + 1],
                            hand[x + 2] + forward,
                            head[x],
                            head[x + 1],
                            head[x + 2] + forward);
        }
        Course hands = trace.hand(side);
        Course heads = trace.head(side);
        return Nearness.of(
                trace,
                samples,
                sampled,
                t -> {
                    Vector3D p = hands.position(t);
                    Vector3D q = heads.position(t);
                    return distance(
                            shape,
                            p.getX(),
                            p.getY(),
                            p.getZ() + forward,
                            q.getX(),
                            q.getY(),
                            q.getZ() + forward);
                });
    }

    private double distance(
            Shape shape, double px, double py, double pz, double qx, double qy, double qz) {
        return Math.min(shape.from(px, py, pz, qx, qy, qz), shape.from(qx, qy, qz) - headRadius);
    }

    /**
     * Moving by d changes no distance by more than d. So from far enough forward it may come back
     * by as much as there is to spare, again and again, and passes no place where it would be too
     * near: it ends at the last of them.
     */
    private OptionalDouble forward(Side side, Shape shape, double limit, double most) {
        double lowest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < samples.count(); i++) {
            lowest =
                    Math.min(
                            lowest,
                            Math.min(samples.hand(side)[3 * i + 2], samples.head(side)[3 * i + 2]));
        }
        double moved = limit + headRadius + performer.stature() - lowest;
        for (int i = 0; i < STEPS; i++) {
            double spare = nearest(side, shape, moved).distance() - limit;
            if (spare < CLEAR) {
                break;
            }
            moved -= spare - CLEAR / 2;
        }
        return moved > most ? OptionalDouble.empty() : OptionalDouble.of(Math.max(moved, 0));
    }
}

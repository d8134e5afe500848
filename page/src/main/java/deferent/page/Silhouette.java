package deferent.page;

import deferent.reading.body.Person;
import java.awt.geom.Area;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The performer as seen at a moment, with depth: which of trunk and arms lies over which, and
 * whether a place lies before the body, behind it or beside it.
 *
 * <p>A limb as seen from afar is what lies between its balls' discs: in each direction it reaches
 * as far as the disc that reaches farthest. How near it is at a place is read from the plane that
 * goes best through its balls' middles, so of two things that touch the one whose middle is nearer
 * lies before the other. The stage does the same in {@code person.js}.
 */
final class Silhouette {
    /** Ways in which a limb's reach is known; its outline has as many corners. */
    private static final int WAYS = 48;

    /** Prime to the ways, so that the first few ways asked lie all round. */
    private static final int STRIDE = 13;

    /** By how much balls have to stand apart before they say how a limb slopes, pixels. */
    private static final double SLOPES = 1;

    private static final double[] COS = new double[WAYS];
    private static final double[] SIN = new double[WAYS];

    static {
        for (int k = 0; k < WAYS; k++) {
            COS[k] = Math.cos(2 * Math.PI * k / WAYS);
            SIN[k] = Math.sin(2 * Math.PI * k / WAYS);
        }
    }

    private final List<Part> order = new ArrayList<>();

    private Silhouette(Person person, Scene scene, Framing framing, double time) {
        List<Person.Ball> balls = person.balls();
        Disc[] discs = new Disc[balls.size()];
        for (int b = 0; b < discs.length; b++) {
            discs[b] =
                    new Disc(
                            framing.spot(at(person, balls.get(b), scene, time)),
                            balls.get(b).radius() * framing.scale());
        }
        List<Part> left = new ArrayList<>();
        for (Person.Group group : Person.Group.values()) {
            List<Limb> limbs =
                    person.limbs().stream()
                            .filter(limb -> limb.group() == group)
                            .map(limb -> limb.balls().stream().map(ball -> discs[ball]).toList())
                            .map(Limb::new)
                            .toList();
            if (!limbs.isEmpty()) {
                left.add(new Part(group, limbs));
            }
        }
        while (!left.isEmpty()) {
            Part next = farthest(left);
            order.add(next);
            left.remove(next);
        }
    }

    /**
     * The performer at a moment.
     *
     * @param time seconds
     */
    static Silhouette of(Person person, Scene scene, Framing framing, double time) {
        return new Silhouette(person, scene, framing, time);
    }

    private record Disc(Framing.Spot at, double radius) {}

    /** Trunk or one of the arms' parts, drawn as one shape. */
    record Part(Person.Group group, List<Limb> limbs) {
        Part {
            limbs = List.copyOf(limbs);
        }

        Area area() {
            Area area = new Area();
            limbs.forEach(limb -> area.add(limb.area()));
            return area;
        }
    }

    /** A limb's reach in every way, and the plane through its middles. */
    static final class Limb {
        final List<Disc> discs;
        private final double[] reach = new double[WAYS];
        private final double x;
        private final double y;
        private final double near;
        private final double least;
        private final double most;
        private final double slopeX;
        private final double slopeY;

        Limb(List<Disc> discs) {
            this.discs = discs;
            int n = discs.size();
            x = discs.stream().mapToDouble(d -> d.at().x()).sum() / n;
            y = discs.stream().mapToDouble(d -> d.at().y()).sum() / n;
            near = discs.stream().mapToDouble(d -> d.at().near()).sum() / n;
            double xx = SLOPES;
            double yy = SLOPES;
            double xy = 0;
            double xn = 0;
            double yn = 0;
            double low = near;
            double high = near;
            for (Disc disc : discs) {
                double dx = disc.at().x() - x;
                double dy = disc.at().y() - y;
                double dn = disc.at().near() - near;
                xx += dx * dx;
                yy += dy * dy;
                xy += dx * dy;
                xn += dx * dn;
                yn += dy * dn;
                low = Math.min(low, disc.at().near());
                high = Math.max(high, disc.at().near());
            }
            double det = xx * yy - xy * xy;
            slopeX = (xn * yy - yn * xy) / det;
            slopeY = (yn * xx - xn * xy) / det;
            least = low;
            most = high;
            for (int k = 0; k < WAYS; k++) {
                double far = Double.NEGATIVE_INFINITY;
                for (Disc disc : discs) {
                    far =
                            Math.max(
                                    far,
                                    disc.at().x() * COS[k]
                                            + disc.at().y() * SIN[k]
                                            + disc.radius());
                }
                reach[k] = far;
            }
        }

        boolean covers(double px, double py) {
            for (int i = 0; i < WAYS; i++) {
                int k = i * STRIDE % WAYS;
                if (px * COS[k] + py * SIN[k] > reach[k]) {
                    return false;
                }
            }
            return true;
        }

        double near(double px, double py) {
            double plane = near + slopeX * (px - x) + slopeY * (py - y);
            return Math.max(least, Math.min(most, plane));
        }

        Area area() {
            Path2D.Double path = new Path2D.Double();
            for (int k = 0; k < WAYS; k++) {
                double far = Double.NEGATIVE_INFINITY;
                double cx = 0;
                double cy = 0;
                for (Disc disc : discs) {
                    double here = disc.at().x() * COS[k] + disc.at().y() * SIN[k] + disc.radius();
                    if (here > far) {
                        far = here;
                        cx = disc.at().x() + disc.radius() * COS[k];
                        cy = disc.at().y() + disc.radius() * SIN[k];
                    }
                }
                if (k == 0) {
                    path.moveTo(cx, cy);
                } else {
                    path.lineTo(cx, cy);
                }
            }
            path.closePath();
            return new Area(path);
        }
    }

    /** Trunk and arms, the farthest first. */
    List<Part> order() {
        return List.copyOf(order);
    }

    /**
     * Whether a place is before the body, behind it or beside it: what is seen there of the body is
     * what lies over the rest.
     *
     * @param x pixels
     * @param y pixels
     * @param near metres
     * @return 1 before, −1 behind, 0 beside
     */
    int side(double x, double y, double near) {
        for (int o = order.size() - 1; o >= 0; o--) {
            double surface = Double.NEGATIVE_INFINITY;
            for (Limb limb : order.get(o).limbs()) {
                if (limb.covers(x, y)) {
                    surface = Math.max(surface, limb.near(x, y));
                }
            }
            if (surface > Double.NEGATIVE_INFINITY) {
                return near < surface - Crossings.LEVEL ? -1 : 1;
            }
        }
        return 0;
    }

    // One that lies over none of the others; where they lie over each other in a ring, the one that
    // is farther as a whole.
    private static Part farthest(List<Part> left) {
        Part best = left.get(0);
        int least = Integer.MAX_VALUE;
        double far = 0;
        for (Part part : left) {
            int over = 0;
            for (Part other : left) {
                over += !part.equals(other) && over(part, other) > 0 ? 1 : 0;
            }
            double near = part.limbs().stream().mapToDouble(limb -> limb.near).average().orElse(0);
            if (over < least || over == least && near < far) {
                least = over;
                far = near;
                best = part;
            }
        }
        return best;
    }

    // How much nearer one is than another where they overlap, summed; 0 where they do not.
    private static double over(Part a, Part b) {
        return beyond(a.limbs(), b.limbs()) - beyond(b.limbs(), a.limbs());
    }

    private static double beyond(List<Limb> limbs, List<Limb> others) {
        double sum = 0;
        for (Limb limb : limbs) {
            Framing.Spot from = limb.discs.get(0).at();
            Framing.Spot to = limb.discs.get(limb.discs.size() - 1).at();
            for (double share = 0.125; share < 1; share += 0.25) {
                double x = from.x() + share * (to.x() - from.x());
                double y = from.y() + share * (to.y() - from.y());
                double near = from.near() + share * (to.near() - from.near());
                for (Limb other : others) {
                    if (other.covers(x, y)) {
                        sum += near - other.near(x, y);
                    }
                }
            }
        }
        return sum;
    }

    /** Between its two nearest instants. */
    private static Vector3D at(Person person, Person.Ball ball, Scene scene, double time) {
        int count = person.count();
        double start = scene.trace().interval().start();
        double share = (time - start) / scene.period() * count;
        int i = (int) Math.floor(share);
        double f = share - i;
        boolean round = scene.trace().periodic();
        int from = round ? Math.floorMod(i, count) : Math.max(0, Math.min(count - 1, i));
        int to = round ? Math.floorMod(i + 1, count) : Math.max(0, Math.min(count - 1, i + 1));
        return new Vector3D(1 - f, ball.at(from), f, ball.at(to));
    }
}

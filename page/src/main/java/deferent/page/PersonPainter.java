package deferent.page;

import deferent.reading.body.Person;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Area;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The performer at a moment, quietly: trunk, head and legs as one silhouette, and either arm as one
 * of its own, so that it shows before the trunk as well. What is nearer to the onlooker is painted
 * later.
 */
final class PersonPainter {
    /** Corners of a limb's outline. */
    private static final int CORNERS = 48;

    /** How much of the outline's ink is in the fill, of the trunk and of an arm (our choice). */
    private static final double TRUNK = 0.24;

    private static final double ARM = 0.36;

    private final Scene scene;
    private final Person person;
    private final Framing framing;
    private final Brush brush;

    PersonPainter(Scene scene, Person person, Framing framing, Brush brush) {
        this.scene = scene;
        this.person = person;
        this.framing = framing;
        this.brush = brush;
    }

    void paint(Graphics2D g, double time) {
        List<Person.Ball> balls = person.balls();
        Vector3D[] at = new Vector3D[balls.size()];
        for (int b = 0; b < at.length; b++) {
            at[b] = at(balls.get(b), time);
        }
        Person.Group[] order = Person.Group.values();
        Area[] shapes = new Area[order.length];
        double[] near = new double[order.length];
        for (Person.Group group : order) {
            shapes[group.ordinal()] = new Area();
            near[group.ordinal()] =
                    person.limbs().stream()
                            .filter(limb -> limb.group() == group)
                            .flatMap(limb -> limb.balls().stream())
                            .mapToDouble(ball -> framing.near(at[ball]))
                            .average()
                            .orElse(0);
        }
        for (Person.Limb limb : person.limbs()) {
            shapes[limb.group().ordinal()].add(area(limb, balls, at));
        }
        Arrays.sort(order, Comparator.comparingDouble(group -> near[group.ordinal()]));
        Palette.Look look = Palette.of(Role.BODY, Optional.empty());
        for (Person.Group group : order) {
            Area shape = shapes[group.ordinal()];
            g.setColor(fill(look, group == Person.Group.TRUNK ? TRUNK : ARM));
            g.fill(shape);
            brush.draw(g, shape, look);
        }
    }

    private Color fill(Palette.Look look, double share) {
        Color paper = brush.ink(Palette.Ink.PAPER);
        Color ink = brush.ink(look.ink());
        return new Color(
                mixed(paper.getRed(), ink.getRed(), share),
                mixed(paper.getGreen(), ink.getGreen(), share),
                mixed(paper.getBlue(), ink.getBlue(), share));
    }

    private static int mixed(int a, int b, double share) {
        return (int) Math.round((1 - share) * a + share * b);
    }

    /** Between its two nearest instants. */
    private Vector3D at(Person.Ball ball, double time) {
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

    /**
     * A limb as seen from afar is what lies between its balls' discs: in each direction it reaches
     * as far as the disc that reaches farthest.
     */
    private Area area(Person.Limb limb, List<Person.Ball> balls, Vector3D[] at) {
        Path2D.Double path = new Path2D.Double();
        for (int corner = 0; corner < CORNERS; corner++) {
            double angle = 2 * Math.PI * corner / CORNERS;
            double ux = Math.cos(angle);
            double uy = Math.sin(angle);
            double most = Double.NEGATIVE_INFINITY;
            double x = 0;
            double y = 0;
            for (int ball : limb.balls()) {
                Point2D.Double p = framing.place(at[ball]);
                double r = balls.get(ball).radius() * framing.scale();
                double reach = p.x * ux + p.y * uy + r;
                if (reach > most) {
                    most = reach;
                    x = p.x + r * ux;
                    y = p.y + r * uy;
                }
            }
            if (corner == 0) {
                path.moveTo(x, y);
            } else {
                path.lineTo(x, y);
            }
        }
        path.closePath();
        return new Area(path);
    }
}

package deferent.page;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import java.awt.geom.Point2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/**
 * One picture on every paper: what is painted lies within half a pixel of where the scene's own
 * points say, in an SVG as another program draws it, in a PNG, in a clip's frame, and on a page.
 */
class PapersAgreeTest {
    private static final List<String> PHRASES =
            List.of(
                    "static spin vs triquetra",
                    "isolation vs four-petal antispin",
                    "pendulum vs CAP");
    private static final double WITHIN = 0.5;

    @Test
    void headsAreWithinHalfAPixelOnEveryPaper() {
        for (String phrase : PHRASES) {
            Scene scene = scene(phrase);
            for (double cycles : new double[] {0.07, 0.4, 0.81}) {
                Still still = heads(600, cycles * scene.period());
                Papers.all(scene, still)
                        .forEach(
                                (paper, image) ->
                                        assertThat(headsOff(scene, still, image))
                                                .as("%s at %s on %s", phrase, cycles, paper)
                                                .isLessThan(WITHIN));
            }
        }
    }

    @Test
    void aPictureMovedByOnePixelWouldBeNoticed() {
        Scene scene = scene("isolation vs four-petal antispin");
        Still still = heads(600, 0.07);
        for (BufferedImage image : Papers.all(scene, still).values()) {
            assertThat(headsOff(scene, still, Papers.moved(image, 1, 0))).isGreaterThan(WITHIN);
            assertThat(headsOff(scene, still, Papers.moved(image, 0, -1))).isGreaterThan(WITHIN);
        }
        Still paths = figure(600);
        for (BufferedImage image : Papers.all(scene, paths).values()) {
            assertThat(pathOff(scene, paths, Papers.moved(image, 1, 1))).isGreaterThan(WITHIN);
        }
    }

    @Test
    void theFigureIsWithinHalfAPixelOnEveryPaper() {
        for (String phrase : PHRASES) {
            Scene scene = scene(phrase);
            Still still = figure(600);
            Papers.all(scene, still)
                    .forEach(
                            (paper, image) ->
                                    assertThat(pathOff(scene, still, image))
                                            .as("%s on %s", phrase, paper)
                                            .isLessThan(WITHIN));
        }
    }

    @Test
    void trailsAreWithinHalfAPixelOnEveryPaper() {
        Scene scene = scene("isolation vs four-petal antispin");
        Still still = figure(600).with(StillForm.MOMENT).at(0.3);
        Papers.all(scene, still)
                .forEach(
                        (paper, image) ->
                                assertThat(pathOff(scene, still, image))
                                        .as(paper)
                                        .isLessThan(WITHIN));
    }

    @Property(tries = 25)
    void headsOfAnyFlowersAreWithinHalfAPixel(Any any) {
        int left = any.whole(-6, 6);
        int right = any.whole(-6, 6);
        double radius = any.number(0.1, 0.9);
        double start = any.number(0, 6.2);
        double cycles = any.number(0, 1);
        Pairing pairing =
                Pairings.pair(Motion.flower(radius, left, start), Motion.flower(0.4, right, 0));
        Scene scene = Scene.of(Trace.of(pairing));
        Still still = heads(480, cycles);
        Map<String, BufferedImage> papers =
                Map.of(
                        "PNG", Papers.png(scene, still),
                        "frame", Papers.frame(scene, still),
                        "SVG", Papers.svg(scene, still));
        papers.forEach(
                (paper, image) ->
                        assertThat(headsOff(scene, still, image)).as(paper).isLessThan(WITHIN));
    }

    private static Scene scene(String phrase) {
        return Scene.of(Trace.of(Phrase.parse(phrase).pairing()));
    }

    private static Still heads(int edge, double time) {
        return Still.square(edge).clear().at(time).with(Set.of(Layer.HEAD));
    }

    private static Still figure(int edge) {
        return Still.square(edge).clear().with(StillForm.FIGURE).with(Set.of(Layer.TRAIL));
    }

    /** How far the heads' middles are from where they should be; where they do not overlap. */
    private static double headsOff(Scene scene, Still still, BufferedImage image) {
        Papers.Expected expected = Papers.Expected.of(scene, still);
        Point2D left = expected.place(scene.at(Track.head(Side.LEFT), still.time()));
        Point2D right = expected.place(scene.at(Track.head(Side.RIGHT), still.time()));
        int reach = still.width() / 34;
        boolean apart =
                Math.abs(left.getX() - right.getX()) > 2 * reach + 2
                        || Math.abs(left.getY() - right.getY()) > 2 * reach + 2;
        if (!apart) {
            Point2D both =
                    new Point2D.Double(
                            (left.getX() + right.getX()) / 2, (left.getY() + right.getY()) / 2);
            // Together they are one blot; its middle is theirs when they lie on one another.
            return left.distance(right) < 0.05
                    ? both.distance(Papers.painted(image, both, reach))
                    : 0;
        }
        return Math.max(
                left.distance(Papers.painted(image, left, reach)),
                right.distance(Papers.painted(image, right, reach)));
    }

    /**
     * How far the left figure's painted line, as it lies within five pixels, is from the left
     * head's path, across it, at the worst of the places where the other's is not near.
     */
    private static double pathOff(Scene scene, Still still, BufferedImage image) {
        Papers.Expected expected = Papers.Expected.of(scene, still);
        double[] left = scene.points(Track.head(Side.LEFT));
        double[] right = scene.points(Track.head(Side.RIGHT));
        int count = scene.count();
        int looked = 0;
        double worst = 0;
        for (int i = 0; i < count; i += 5) {
            Point2D.Double here = place(expected, left, i);
            Point2D.Double next = place(expected, left, (i + 1) % count);
            double step = here.distance(next);
            if (step < 0.2 || crowded(expected, right, here)) {
                continue;
            }
            double nx = -(next.y - here.y) / step;
            double ny = (next.x - here.x) / step;
            double sum = 0;
            double off = 0;
            for (int py = (int) here.y - 6; py <= (int) here.y + 6; py++) {
                for (int px = (int) here.x - 6; px <= (int) here.x + 6; px++) {
                    if (here.distance(px + 0.5, py + 0.5) <= 5) {
                        double alpha = image.getRGB(px, py) >>> 24;
                        sum += alpha;
                        off += alpha * ((px + 0.5 - here.x) * nx + (py + 0.5 - here.y) * ny);
                    }
                }
            }
            worst = Math.max(worst, sum == 0 ? 100 : Math.abs(off / sum));
            looked++;
        }
        assertThat(looked).as("places looked at").isGreaterThan(15);
        return worst;
    }

    private static boolean crowded(Papers.Expected expected, double[] right, Point2D here) {
        int count = right.length / 3;
        for (int j = 0; j < count; j++) {
            if (place(expected, right, j).distance(here) < 12) {
                return true;
            }
        }
        return false;
    }

    private static Point2D.Double place(Papers.Expected expected, double[] xyz, int i) {
        return expected.place(new Vector3D(xyz[3 * i], xyz[3 * i + 1], xyz[3 * i + 2]));
    }
}

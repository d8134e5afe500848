package deferent.page;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.image.BufferedImage;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What is laid over footage stands off from any. */
class OutlineTest {
    private static final int EDGE = 240;
    private static final Scene SCENE =
            Scene.of(Trace.of(Phrase.parse("isolation vs extension").pairing()));

    /** WCAG 2.2, 1.4.11: 3 to 1, of the ink or of the outline beside it. */
    @Test
    void onWhiteBlackAndGreyEveryHeadStandsOffByThreeToOne() {
        for (Palette.Theme theme : Palette.Theme.values()) {
            Still still = Still.square(EDGE).with(theme).clear();
            for (Color ground : new Color[] {Color.WHITE, Color.BLACK, new Color(0x808080)}) {
                BufferedImage over = over(still, 6, ground);
                for (Side side : Side.values()) {
                    assertThat(contrast(over, side, still, ground))
                            .as("%s %s on %s", theme, side, ground)
                            .isGreaterThanOrEqualTo(3);
                }
            }
        }
    }

    @Test
    void withoutItSomeGroundSwallowsThem() {
        Still still = Still.square(EDGE).clear();
        double least = 99;
        for (Side side : Side.values()) {
            Color grey = new Color(0x808080);
            least = Math.min(least, contrast(over(still, 0, grey), side, still, grey));
        }
        assertThat(least).isLessThan(3);
    }

    /** Along all that is laid over a film, at the usual width and a broad one. */
    @Test
    void whatLiesOverAFilmStandsOffAnyFootageByThreeToOne() {
        for (Color ground : new Color[] {Color.WHITE, Color.BLACK, new Color(0x808080)}) {
            for (double outline : new double[] {3, 8}) {
                assertThat(leastOverFilm(outline, ground))
                        .as("%s with %s", ground, outline)
                        .isGreaterThanOrEqualTo(3);
            }
        }
        assertThat(leastOverFilm(0, Color.WHITE)).isLessThan(3);
    }

    // What was meant lies some way off the light, as where a figure came out small.
    private static double leastOverFilm(double outline, Color ground) {
        int edge = 720;
        Map<Side, OverFilm.Lines> lines = new EnumMap<>(Side.class);
        for (Side side : Side.values()) {
            double middle = side == Side.LEFT ? 220 : 500;
            lines.put(
                    side,
                    new OverFilm.Lines(
                            round(middle, 150),
                            round(middle, 180),
                            round(middle, 60),
                            List.of(new OverFilm.Disc(0.1, middle, 360, 4))));
        }
        BufferedImage film = new BufferedImage(edge, edge, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = film.createGraphics();
        g.setColor(ground);
        g.fillRect(0, 0, edge, edge);
        g.dispose();
        new OverFilm(lines, edge, edge).paint(film, 1, 0.1, outline);
        double least = 99;
        for (OverFilm.Lines side : lines.values()) {
            for (double[][] line : List.of(side.light(), side.meant())) {
                for (int i = 0; i < line[0].length; i++) {
                    Point2D at = new Point2D.Double(line[0][i], line[1][i]);
                    // Half a dash and the space behind it, so that some of each is seen.
                    least = Math.min(least, contrast(film, at, 14, ground));
                }
            }
        }
        return least;
    }

    private static double[][] round(double middle, double r) {
        double[][] xy = new double[2][90];
        for (int i = 0; i < 90; i++) {
            xy[0][i] = middle + r * Math.cos(2 * Math.PI * i / 90);
            xy[1][i] = 360 + r * Math.sin(2 * Math.PI * i / 90);
        }
        return xy;
    }

    private static BufferedImage over(Still still, double outline, Color ground) {
        BufferedImage clear = new BufferedImage(EDGE, EDGE, BufferedImage.TYPE_INT_ARGB_PRE);
        Frames.of(SCENE, still).outlined(outline).paint(0, clear);
        BufferedImage over = new BufferedImage(EDGE, EDGE, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = over.createGraphics();
        g.setColor(ground);
        g.fillRect(0, 0, EDGE, EDGE);
        g.drawImage(clear, 0, 0, null);
        g.dispose();
        return over;
    }

    /** The most that anything within a head's marker and just beside it stands off its ground. */
    private static double contrast(BufferedImage over, Side side, Still still, Color ground) {
        Layout layout = Layout.of(still);
        Framing framing = Framing.of(SCENE, still.view(), layout.room());
        Point2D head = framing.place(SCENE.at(Track.head(side), 0));
        double r = layout.brush().reach(Palette.of(Role.HEAD, Optional.of(side))) + 0.006 * EDGE;
        return contrast(over, head, r, ground);
    }

    /** The most that anything so near to a point stands off its ground. */
    private static double contrast(BufferedImage over, Point2D at, double r, Color ground) {
        double most = 1;
        for (int y = (int) (at.getY() - r); y <= at.getY() + r; y++) {
            for (int x = (int) (at.getX() - r); x <= at.getX() + r; x++) {
                double a = luminance(new Color(over.getRGB(x, y)));
                double b = luminance(ground);
                most = Math.max(most, (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05));
            }
        }
        return most;
    }

    // Relative luminance, WCAG 2.2.
    private static double luminance(Color colour) {
        return 0.2126 * linear(colour.getRed())
                + 0.7152 * linear(colour.getGreen())
                + 0.0722 * linear(colour.getBlue());
    }

    private static double linear(int channel) {
        double c = channel / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }
}

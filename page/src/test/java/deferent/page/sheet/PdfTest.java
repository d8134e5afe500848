package deferent.page.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.page.Layer;
import deferent.page.Palette;
import deferent.page.Png;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.StillForm;
import deferent.page.Track;
import deferent.page.View;
import java.awt.geom.Point2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Stills as PDF. */
class PdfTest {
    // Heads on two circles far apart, so that neither ever hides the other.
    private static final Pairing PAIRING = Phrase.parse("isolation vs extension").pairing();
    private static final Scene SCENE = Scene.of(Trace.of(PAIRING));
    private static final int EDGE = 600;
    private static final int MOMENTS = 6;
    private static final double DPI = 144;

    @Test
    void aPixelOfTheStillIsAPoint() {
        Printed.Page page = Printed.of(Pdf.still(SCENE, Still.of(400, 300))).pages().get(0);
        assertThat(page.width()).isEqualTo(400);
        assertThat(page.height()).isEqualTo(300);
    }

    @Test
    void theCaptionCanBeSearchedAndItsFontIsEmbedded() {
        Printed still =
                Printed.of(
                        Pdf.still(
                                SCENE,
                                Still.square(600)
                                        .with(List.of("Ring under the eaves", "tether 60 cm"))));
        assertThat(still.text()).contains("Ring under the eaves").contains("tether 60 cm");
        assertThat(still.foreignFonts()).isEmpty();
        assertThat(still.embeddedFonts()).isNotEmpty();
    }

    @Test
    void headsOfAPdfStillAreWithinHalfAPixelOfTheScenesPoints() {
        Similarity paper = Similarity.of(PdfTest::scenePoint, (side, t) -> rendered(side, t, DPI));
        assertThat(paper.worst()).isLessThan(0.5);
        // One scale for both directions, larger than nothing: a tether is many pixels long.
        assertThat(paper.scale()).isGreaterThan(100);
    }

    @Test
    void aPdfStillAndAPngStillHaveTheirHeadsInOnePlace() {
        for (Side side : Side.values()) {
            Point2D png = centroid(Png.image(SCENE, heads(0.3)), side);
            assertThat(rendered(side, 0.3, 72).distance(png)).isLessThan(0.5);
        }
    }

    @Test
    void aPictureOnAPageIsWhereItsBoxSaysWithinHalfAPixel() throws IOException {
        Box box = new Box(100, 150, 200, 200);
        Leaf leaf =
                new Leaf(
                        PageSize.A4,
                        new Box(0, 0, PageSize.A4.width(), PageSize.A4.height()),
                        List.of(
                                new Block(
                                        "figure",
                                        box,
                                        List.of(
                                                new Mark.Plate(
                                                        box,
                                                        SCENE,
                                                        heads(0.3).clear(),
                                                        Optional.empty())))),
                        Optional.empty());
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Press.print(List.of(leaf), "", out, page -> {}, () -> false);
        BufferedImage image = Printed.of(out.toByteArray()).rendered(0, DPI);
        for (Side side : Side.values()) {
            Point2D png = centroid(Png.image(SCENE, heads(0.3)), side);
            Point2D page = centroid(image, side);
            double pixels = DPI / 72;
            double points = box.width() / EDGE;
            assertThat(page.getX())
                    .isCloseTo(pixels * (box.x() + points * png.getX()), within(0.5));
            assertThat(page.getY())
                    .isCloseTo(pixels * (box.y() + points * png.getY()), within(0.5));
        }
    }

    @Test
    void withoutColourTheLeftLineIsWholeTheRightOneBrokenAndBothStandOff() {
        Similarity paper = Similarity.of(PdfTest::scenePoint, (side, t) -> rendered(side, t, DPI));
        Still still = Still.square(EDGE).with(StillForm.FIGURE).with(EnumSet.of(Layer.TRAIL));
        BufferedImage image = Printed.of(Pdf.still(SCENE, still)).rendered(0, DPI);
        assertThat(inked(image, paper, Side.LEFT)).isGreaterThan(0.995);
        assertThat(inked(image, paper, Side.RIGHT)).isBetween(0.5, 0.9);
        for (Palette.Ink ink : List.of(Palette.Ink.LEFT, Palette.Ink.RIGHT)) {
            double light = grey(ink.on(Palette.Theme.LIGHT).getRGB());
            assertThat((1 + 0.05) / (light + 0.05)).as("%s on white", ink).isGreaterThan(3);
        }
    }

    // --- looking at pictures

    /** Both heads and nothing else. */
    private static Still heads(double share) {
        return Still.square(EDGE)
                .with(StillForm.POSES, List.of(share * SCENE.period()))
                .with(EnumSet.of(Layer.HEAD));
    }

    private static Point2D rendered(Side side, double share, double dpi) {
        return centroid(Printed.of(Pdf.still(SCENE, heads(share))).rendered(0, dpi), side);
    }

    private static Point2D scenePoint(Side side, double share) {
        View.Seen seen = View.AUDIENCE.see(SCENE.at(Track.head(side), share * SCENE.period()));
        return new Point2D.Double(seen.right(), -seen.up());
    }

    /** The middle of a side's colour: blue for the left, orange for the right. */
    private static Point2D centroid(BufferedImage image, Side side) {
        double sum = 0;
        double x = 0;
        double y = 0;
        for (int j = 0; j < image.getHeight(); j++) {
            for (int i = 0; i < image.getWidth(); i++) {
                int rgb = image.getRGB(i, j);
                int bluer = (rgb & 255) - (rgb >> 16 & 255);
                double weight = Math.max(0, (side == Side.LEFT ? bluer : -bluer) - 12);
                sum += weight;
                x += weight * (i + 0.5);
                y += weight * (j + 0.5);
            }
        }
        assertThat(sum).isPositive();
        return new Point2D.Double(x / sum, y / sum);
    }

    /** The share of a head's path, looked at along its middle, that is dark without colour. */
    private static double inked(BufferedImage image, Similarity paper, Side side) {
        int samples = 1440;
        int dark = 0;
        for (int i = 0; i < samples; i++) {
            Point2D at = paper.of(scenePoint(side, (double) i / samples));
            dark += grey(image.getRGB((int) at.getX(), (int) at.getY())) < 0.5 ? 1 : 0;
        }
        return (double) dark / samples;
    }

    // Relative luminance, WCAG 2.2.
    private static double grey(int rgb) {
        double[] linear = new double[3];
        for (int i = 0; i < 3; i++) {
            double c = ((rgb >> (16 - 8 * i)) & 255) / 255.0;
            linear[i] = c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
        }
        return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2];
    }

    private interface Places {
        Point2D of(Side side, double share);
    }

    /** One scale and a shift that take the scene's points to a picture's as nearly as can be. */
    private record Similarity(double scale, double dx, double dy, double worst) {
        static Similarity of(Places from, Places to) {
            List<Point2D> a = new ArrayList<>();
            List<Point2D> b = new ArrayList<>();
            for (Side side : Side.values()) {
                for (int i = 0; i < MOMENTS; i++) {
                    a.add(from.of(side, (i + 0.1) / MOMENTS));
                    b.add(to.of(side, (i + 0.1) / MOMENTS));
                }
            }
            Point2D am = mean(a);
            Point2D bm = mean(b);
            double ab = 0;
            double aa = 0;
            for (int i = 0; i < a.size(); i++) {
                double x = a.get(i).getX() - am.getX();
                double y = a.get(i).getY() - am.getY();
                ab += x * (b.get(i).getX() - bm.getX()) + y * (b.get(i).getY() - bm.getY());
                aa += x * x + y * y;
            }
            double scale = ab / aa;
            Similarity found =
                    new Similarity(
                            scale, bm.getX() - scale * am.getX(), bm.getY() - scale * am.getY(), 0);
            double worst = 0;
            for (int i = 0; i < a.size(); i++) {
                worst = Math.max(worst, found.of(a.get(i)).distance(b.get(i)));
            }
            return new Similarity(scale, found.dx, found.dy, worst);
        }

        Point2D of(Point2D p) {
            return new Point2D.Double(dx + scale * p.getX(), dy + scale * p.getY());
        }

        private static Point2D mean(List<Point2D> points) {
            return new Point2D.Double(
                    points.stream().mapToDouble(Point2D::getX).average().orElseThrow(),
                    points.stream().mapToDouble(Point2D::getY).average().orElseThrow());
        }
    }
}

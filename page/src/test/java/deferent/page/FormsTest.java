package deferent.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Count;
import deferent.motion.trace.Counts;
import deferent.motion.trace.Trace;
import java.awt.geom.Point2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class FormsTest {
    private final Scene scene =
            Scene.of(Trace.of(Phrase.parse("isolation vs four-petal antispin").pairing()));

    @Test
    void theFigureIsThePathsAloneAndTheFartherComesFirst() throws Exception {
        assertThat(ids(svg(scene, Still.square(600).with(StillForm.FIGURE).clear())))
                .containsExactly(
                        "left-hand-path", "right-hand-path", "right-head-trail", "left-head-trail");
    }

    @Test
    void whatIsSwitchedOffIsNotDrawn() throws Exception {
        Still all = Still.square(600).with(EnumSet.allOf(Layer.class)).clear();
        List<String> drawn = ids(svg(scene, all));
        assertThat(drawn).contains("labels", "counts", "left-tether");
        for (Layer layer : Layer.values()) {
            List<String> fewer = ids(svg(scene, all.without(layer)));
            List<String> missing = new ArrayList<>(drawn);
            missing.removeAll(fewer);
            boolean hasBody = layer == Layer.BODY;
            assertThat(missing).as(layer.words()).hasSizeBetween(hasBody ? 0 : 1, 2);
        }
    }

    @Test
    void posesStandAtTheirMomentsAndBearTheirCounts() throws Exception {
        Still still = Still.square(800).with(StillForm.POSES).clear();
        Document svg = svg(scene, still);
        Papers.Expected expected = Papers.Expected.of(scene, still);
        List<Count> counts = Counts.moments(scene.trace(), 4);
        for (int i = 0; i < counts.size(); i++) {
            for (Side side : List.of(Side.LEFT)) {
                Point2D.Double at =
                        middle(byId(svg, "pose-" + (i + 1) + "-" + side.word() + "-head"));
                Point2D.Double should =
                        expected.place(scene.at(Track.head(side), counts.get(i).time()));
                assertThat(at.distance(should)).isLessThan(0.03);
            }
        }
        assertThat(texts(byId(svg, "numbers"))).contains("1", "1&", "2", "2&", "3", "3&");
    }

    @Test
    void posesOffTheCountsAreNumberedInOrder() throws Exception {
        Still still = Still.square(800).with(StillForm.POSES, List.of(0.03, 0.31, 0.62)).clear();
        assertThat(texts(byId(svg(scene, still), "numbers"))).contains("1", "2", "3");
        assertThat(ids(svg(scene, still))).contains("tethers", "heads", "hands");
    }

    @Test
    void numbersOfPosesDoNotCoverEachOther() throws Exception {
        Document svg = svg(scene, Still.square(800).with(StillForm.POSES).clear());
        NodeList plates = byId(svg, "numbers").getElementsByTagName("rect");
        assertThat(plates.getLength()).isGreaterThan(9);
        for (int i = 0; i < plates.getLength(); i++) {
            for (int j = 0; j < i; j++) {
                assertThat(box((Element) plates.item(i)).intersects(box((Element) plates.item(j))))
                        .isFalse();
            }
        }
    }

    private static java.awt.geom.Rectangle2D box(Element rect) {
        return new java.awt.geom.Rectangle2D.Double(
                number(rect, "x"),
                number(rect, "y"),
                number(rect, "width"),
                number(rect, "height"));
    }

    @Test
    void aStripShowsTheAskedMomentsSideBySide() throws Exception {
        List<Double> moments = List.of(0.0, 1.0 / 6, 0.4, 2.0 / 3);
        Still still = Still.of(1600, 420).with(StillForm.STRIP, moments).clear();
        Document svg = svg(scene, still);
        double before = 0;
        for (int i = 0; i < moments.size(); i++) {
            String id = "moment-" + (i + 1);
            Point2D.Double head = middle(byId(svg, id + "-left-head"));
            Point2D.Double hand = middle(byId(svg, id + "-left-hand"));
            Vector3D tether =
                    scene.at(Track.head(Side.LEFT), moments.get(i))
                            .subtract(scene.at(Track.hand(Side.LEFT), moments.get(i)));
            double scale = head.distance(hand) / tether.getNorm();
            assertThat(head.x - hand.x).isCloseTo(scale * tether.getX(), within(0.05));
            assertThat(hand.y - head.y).isCloseTo(scale * tether.getY(), within(0.05));
            Point2D.Double centre = middleOfHandAndHead(hand, head);
            assertThat(centre.x).isGreaterThan(before + 200);
            before = centre.x;
        }
        assertThat(texts(byId(svg, "moment-1-count"))).containsExactly("1");
        assertThat(texts(byId(svg, "moment-2-count"))).containsExactly("&");
        assertThat(texts(byId(svg, "moment-3-count"))).containsExactly("0.40 s");
        assertThat(texts(byId(svg, "moment-4-count"))).containsExactly("3");
    }

    private static Point2D.Double middleOfHandAndHead(Point2D.Double a, Point2D.Double b) {
        return new Point2D.Double((a.x + b.x) / 2, (a.y + b.y) / 2);
    }

    @Test
    void aSquareStripWrapsIntoRows() throws Exception {
        Document svg = svg(scene, Still.square(900).with(StillForm.STRIP).clear());
        Point2D.Double first = middle(byId(svg, "moment-1-left-hand"));
        Point2D.Double last = middle(byId(svg, "moment-6-left-hand"));
        assertThat(last.y).isGreaterThan(first.y + 200);
    }

    @Test
    void everyGroupHasANameOfItsOwnInEveryForm() throws Exception {
        for (StillForm form :
                List.of(
                        StillForm.MOMENT,
                        StillForm.FIGURE,
                        StillForm.POSES,
                        StillForm.STRIP,
                        StillForm.EXPOSURE)) {
            Document svg = svg(scene, Still.square(600).with(form).with(List.of("named")));
            List<String> ids = ids(svg);
            assertThat(ids).as(form.toString()).doesNotHaveDuplicates().contains("caption");
            NodeList groups = svg.getElementsByTagName("g");
            for (int i = 0; i < groups.getLength(); i++) {
                Element group = (Element) groups.item(i);
                if (!group.getAttribute("id").isEmpty()) {
                    assertThat(group.getFirstChild().getNodeName()).isEqualTo("title");
                }
            }
            assertThat(texts(byId(svg, "caption"))).containsExactly("named");
        }
    }

    // ---- Exposure. ----

    @Test
    void aPendulumIsBrightestWhereItIsSlowest() {
        Scene swing = Scene.of(Trace.of(Phrase.parse("pendulum vs pendulum").pairing()));
        Still still = Still.square(700).with(StillForm.EXPOSURE).clear();
        BufferedImage light = Papers.png(swing, still);
        Papers.Expected expected = Papers.Expected.of(swing, still);
        double end = light(light, expected, swing.at(Track.head(Side.LEFT), 0));
        double bottom = light(light, expected, swing.at(Track.head(Side.LEFT), swing.period() / 4));
        assertThat(end).isGreaterThan(3 * bottom);
        assertThat(bottom).isGreaterThan(0.2);
    }

    @Test
    void halfTheSpeedGathersTwiceTheLight() {
        // Two still hands half a metre apart: one head goes round twice while the other does once.
        Scene spins =
                Scene.of(
                        Trace.of(
                                Pairings.pair(Motion.staticSpin(1, 0), Motion.staticSpin(2, 0))
                                        .with(Side.RIGHT, Pairings.longer(2, 0.3))));
        Still still = Still.square(900).with(StillForm.exposure(0.2)).clear();
        BufferedImage image = Papers.png(spins, still);
        Papers.Expected expected = Papers.Expected.of(spins, still);
        double slow = light(image, expected, spins.at(Track.head(Side.LEFT), 0.1));
        // The right head's circle is half as wide and run through twice as often: as fast, as
        // bright, before colours: blue light is counted in blue, orange in red, each near 1.
        double other = light(image, expected, spins.at(Track.head(Side.RIGHT), 0.1));
        assertThat(other / slow).isCloseTo(1, within(0.1));
        Scene faster =
                Scene.of(
                        Trace.of(
                                Pairings.pair(Motion.staticSpin(1, 0), Motion.staticSpin(2, 0))
                                        .with(Side.RIGHT, Pairings.longer(4, 0.3))));
        BufferedImage fast = Papers.png(faster, still);
        double half = light(fast, expected, faster.at(Track.head(Side.RIGHT), 0.05));
        double whole = light(fast, expected, faster.at(Track.head(Side.LEFT), 0.1));
        assertThat(whole / half).isCloseTo(2, within(0.2));
    }

    /** Light at a point of the frame, the strongest colour's, the film's bend undone. */
    private static double light(BufferedImage image, Papers.Expected expected, Vector3D p) {
        Point2D.Double at = expected.place(p);
        double most = 0;
        for (int dy = -1; dy <= 1; dy++) {
            for (int dx = -1; dx <= 1; dx++) {
                int argb = image.getRGB((int) at.x + dx, (int) at.y + dy);
                double alpha = (argb >>> 24) / 255.0;
                for (int shift = 0; shift <= 16; shift += 8) {
                    double shown = alpha * (argb >> shift & 255) / 255;
                    most = Math.max(most, -Math.log(1 - Math.pow(Math.min(0.9999, shown), 2.2)));
                }
            }
        }
        return most;
    }

    @Test
    void aShutterOfHalfACycleGathersHalfTheFigure() {
        Scene spin =
                Scene.of(Trace.of(Pairings.pair(Motion.staticSpin(1, 0), Motion.staticSpin(1, 0))));
        Still still = Still.square(500).with(StillForm.exposure(spin.period() / 2)).clear();
        BufferedImage image = Papers.png(spin, still);
        Papers.Expected expected = Papers.Expected.of(spin, still);
        assertThat(light(image, expected, spin.at(Track.head(Side.LEFT), 0.25))).isGreaterThan(0.5);
        assertThat(light(image, expected, spin.at(Track.head(Side.LEFT), 0.75))).isLessThan(0.01);
        BufferedImage later = Papers.png(spin, still.at(spin.period() / 2));
        assertThat(light(later, expected, spin.at(Track.head(Side.LEFT), 0.25))).isLessThan(0.01);
        assertThat(light(later, expected, spin.at(Track.head(Side.LEFT), 0.75))).isGreaterThan(0.5);
    }

    @Test
    void aBlinkingLightLeavesAsManyDashesAsItBlinks() {
        Scene spin =
                Scene.of(Trace.of(Pairings.pair(Motion.staticSpin(1, 0), Motion.staticSpin(1, 0))));
        for (int rate : new int[] {7, 12, 20}) {
            Still still = Still.square(900).with(StillForm.exposure(1, rate, 0.3)).clear();
            for (BufferedImage image : List.of(Papers.png(spin, still), Papers.svg(spin, still))) {
                Papers.Expected expected = Papers.Expected.of(spin, still);
                int dashes = 0;
                boolean lit = true;
                for (int i = 0; i <= 3600; i++) {
                    Point2D.Double at =
                            expected.place(spin.at(Track.head(Side.LEFT), i / 3600.0 - 0.01));
                    int alpha = image.getRGB((int) at.x, (int) at.y) >>> 24;
                    if (!lit && alpha > 190) {
                        dashes++;
                        lit = true;
                    } else if (alpha < 150) {
                        lit = false;
                    }
                }
                assertThat(dashes).isEqualTo(rate);
            }
        }
    }

    @Test
    void lightAddsUpWhereThePathsCross() {
        BufferedImage image = Papers.png(scene, Still.square(700).with(StillForm.EXPOSURE).clear());
        Papers.Expected expected = Papers.Expected.of(scene, Still.square(700));
        // The four petals all pass through the middle; a little way out there is one of them.
        double middle = light(image, expected, scene.at(Track.head(Side.RIGHT), 0.125));
        double alone = light(image, expected, scene.at(Track.head(Side.RIGHT), 0.06));
        assertThat(middle).isGreaterThan(1.3 * alone);
    }

    // ---- Sizes and files. ----

    @Test
    void aPosterPaintedBandByBandIsTheSamePicture() throws IOException {
        for (StillForm form : List.of(StillForm.MOMENT, StillForm.EXPOSURE, StillForm.POSES)) {
            Still still = Still.square(2600).with(form).at(0.3).with(List.of("a poster")).clear();
            BufferedImage read = Papers.png(scene, still);
            BufferedImage whole = Png.image(scene, still);
            // A stroke cut at a band's edge may be rounded otherwise.
            assertThat(FramesTest.worst(read, whole)).as(form.toString()).isLessThanOrEqualTo(8);
            assertThat(FramesTest.mean(read, whole)).as(form.toString()).isLessThan(0.02);
        }
    }

    @Test
    void theLargestStillCanBeMade() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Png.write(scene, Still.of(Still.LARGEST, 200), out);
        BufferedImage read = ImageIO.read(new ByteArrayInputStream(out.toByteArray()));
        assertThat(read.getWidth()).isEqualTo(16384);
        assertThat(read.getColorModel().hasAlpha()).isFalse();
    }

    @Test
    void whatCannotBeIsRefusedAndSaysWhatCould() {
        assertThatThrownBy(() -> Still.square(16385))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("16384");
        assertThatThrownBy(() -> StillForm.exposure(0)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> StillForm.exposure(1, 50, 0)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> Still.square(100).with(StillForm.POSES, List.of(Double.NaN)))
                .isInstanceOf(Refusal.class);
        assertThatThrownBy(
                        () ->
                                Still.square(100)
                                        .with(
                                                StillForm.STRIP,
                                                java.util.Collections.nCopies(65, 0.5)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("64");
    }

    @Test
    void nothingIsPaintedWhereNothingIs() {
        for (StillForm form :
                List.of(
                        StillForm.MOMENT,
                        StillForm.FIGURE,
                        StillForm.POSES,
                        StillForm.STRIP,
                        StillForm.EXPOSURE)) {
            Still still = Still.square(400).with(form).clear().with(Set.copyOf(Layer.usual()));
            BufferedImage image = Papers.png(scene, still);
            for (int i = 0; i < 400; i += 3) {
                assertThat(image.getRGB(i, 1) >>> 24).as(form.toString()).isZero();
                assertThat(image.getRGB(1, i) >>> 24).as(form.toString()).isZero();
            }
        }
    }

    private static Document svg(Scene scene, Still still) throws Exception {
        return DocumentBuilderFactory.newDefaultNSInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(Svg.of(scene, still))));
    }

    private static List<String> ids(Document svg) {
        List<String> ids = new ArrayList<>();
        NodeList groups = svg.getElementsByTagName("g");
        for (int i = 0; i < groups.getLength(); i++) {
            String id = ((Element) groups.item(i)).getAttribute("id");
            if (!id.isEmpty()) {
                ids.add(id);
            }
        }
        return ids;
    }

    private static Element byId(Document svg, String id) {
        NodeList groups = svg.getElementsByTagName("g");
        for (int i = 0; i < groups.getLength(); i++) {
            if (groups.item(i) instanceof Element group && group.getAttribute("id").equals(id)) {
                return group;
            }
        }
        throw new AssertionError("no group " + id);
    }

    private static List<String> texts(Element group) {
        List<String> texts = new ArrayList<>();
        NodeList all = group.getElementsByTagName("text");
        for (int i = 0; i < all.getLength(); i++) {
            texts.add(all.item(i).getTextContent());
        }
        return texts;
    }

    private static Point2D.Double middle(Element group) {
        Element disc = (Element) group.getElementsByTagName("circle").item(0);
        return new Point2D.Double(number(disc, "cx"), number(disc, "cy"));
    }

    private static double number(Element element, String key) {
        return Double.parseDouble(element.getAttribute(key));
    }

    @Test
    void theWordsBesideTheHeadsHideNoHead() {
        // The right hand is farther off than the left head and hides none of it either.
        Scene scene = Scene.of(Trace.of(Phrase.parse("triquetra vs static spin").pairing()));
        Still still = Still.of(600, 900).with(Layer.LABELS);
        Framing framing = Framing.of(scene, still.view(), Layout.of(still).room());
        for (double share = 0; share < 1; share += 0.05) {
            double time = share * scene.period();
            BufferedImage picture = Png.image(scene, still.at(time));
            Point2D.Double head = framing.place(scene.at(Track.head(Side.LEFT), time));
            int ink =
                    Palette.of(Role.HEAD, Optional.of(Side.LEFT)).ink().on(still.theme()).getRGB();
            assertThat(picture.getRGB((int) head.x, (int) head.y))
                    .as("left head after %.2f of the cycle", share)
                    .isEqualTo(ink);
        }
    }
}

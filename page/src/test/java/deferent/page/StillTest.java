package deferent.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Trace;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

class StillTest {
    // Two still hands about one centre: every head is a tether from the middle of the picture.
    private static final Pairing SPINS =
            Pairings.pair(Motion.staticSpin(1, 0), Motion.staticSpin(1, Math.PI));
    private static final int EDGE = 400;
    private static final double SCALE = EDGE * (1 - 2 * 0.075) / 1.2;

    @Test
    void theHeadIsPaintedWhereItIsInItsSidesColour() {
        BufferedImage image = Png.image(scene(SPINS), Still.square(EDGE));
        assertThat(image.getWidth()).isEqualTo(EDGE);
        Color left = new Color(image.getRGB((int) (EDGE / 2 + 0.6 * SCALE), EDGE / 2));
        Color right = new Color(image.getRGB((int) (EDGE / 2 - 0.6 * SCALE), EDGE / 2));
        assertThat(left).isEqualTo(Palette.Ink.LEFT.on(Palette.Theme.LIGHT));
        assertThat(right).isEqualTo(Palette.Ink.RIGHT.on(Palette.Theme.LIGHT));
    }

    @Test
    void aQuarterCycleLaterTheLeftHeadIsAtTheTop() {
        BufferedImage image = Png.image(scene(SPINS), Still.square(EDGE).at(0.25));
        Color top = new Color(image.getRGB(EDGE / 2, (int) (EDGE / 2 - 0.6 * SCALE)));
        assertThat(top).isEqualTo(Palette.Ink.LEFT.on(Palette.Theme.LIGHT));
    }

    @Test
    void theTrailFadesBehindTheHead() {
        Still clear = Still.square(800).clear();
        BufferedImage image =
                Png.image(scene(Pairings.pair(Motion.staticSpin(1, 0), still())), clear);
        // The head at three o'clock came from below: an eighth of a turn back is fresh, half a
        // turn back old, seven eighths back gone but for the faint figure.
        double[] strength = new double[3];
        double[] back = {Math.PI / 4, Math.PI, 7 * Math.PI / 4};
        for (int i = 0; i < back.length; i++) {
            strength[i] = strongest(image, -back[i]);
        }
        assertThat(strength[0]).isGreaterThan(strength[1] + 30);
        assertThat(strength[1]).isGreaterThan(strength[2] + 10);
        assertThat(strength[2]).isGreaterThan(20);
    }

    private static Motion still() {
        // A poi whose tether keeps pointing one way, at the left head's first place.
        return Motion.staticSpin(0, 0);
    }

    private static double strongest(BufferedImage image, double angle) {
        double most = 0;
        double scale = 800 * (1 - 2 * 0.075) / 1.2;
        for (int i = -4; i <= 4; i++) {
            double r = 0.6 * scale + i;
            int x = (int) Math.round(400 + r * Math.cos(angle));
            int y = (int) Math.round(400 - r * Math.sin(angle));
            most = Math.max(most, image.getRGB(x, y) >>> 24);
        }
        return most;
    }

    @Test
    void aTransparentStillHasNoGround() throws IOException {
        Still still = Still.square(EDGE).clear();
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(Png.of(scene(SPINS), still)));
        assertThat(image.getColorModel().hasAlpha()).isTrue();
        assertThat(image.getRGB(2, 2) >>> 24).isZero();
        BufferedImage opaque = Png.image(scene(SPINS), Still.square(EDGE));
        assertThat(new Color(opaque.getRGB(2, 2)))
                .isEqualTo(Palette.Ink.PAPER.on(Palette.Theme.LIGHT));
    }

    @Test
    void everyThingOfTheSceneIsAGroupOfItsOwnWithItsName() throws Exception {
        Scene scene = scene(Pairings.isolationWithFourPetals());
        Document svg = svg(scene, Still.square(600).with(List.of("isolation vs flower")));
        List<String> ids = new ArrayList<>();
        NodeList groups = svg.getDocumentElement().getChildNodes();
        for (int i = 0; i < groups.getLength(); i++) {
            if (groups.item(i) instanceof Element group && group.getTagName().equals("g")) {
                ids.add(group.getAttribute("id"));
                assertThat(group.getFirstChild().getNodeName()).isEqualTo("title");
                assertThat(group.getElementsByTagName("*").getLength()).isGreaterThan(2);
            }
        }
        List<String> expected = new ArrayList<>(List.of("ground"));
        scene.items().forEach(item -> expected.add(item.id()));
        expected.addAll(List.of("scale", "caption"));
        assertThat(ids).containsExactlyInAnyOrderElementsOf(expected);
        assertThat(ids.indexOf("left-head-trail")).isLessThan(ids.indexOf("left-head"));
    }

    @Test
    void aPictureIsNamedByItsCaption() throws Exception {
        Document svg =
                svg(scene(SPINS), Still.square(300).with(List.of("static spin & <static spin>")));
        Element root = svg.getDocumentElement();
        assertThat(root.getFirstChild().getTextContent()).isEqualTo("static spin & <static spin>");
        assertThat(root.getAttribute("viewBox")).isEqualTo("0 0 300 300");
    }

    @Test
    void svgAndPixelsAreTheSamePainting() throws Exception {
        Document svg = svg(scene(SPINS), Still.square(EDGE));
        Element head = byId(svg, "left-head");
        Element disc = (Element) head.getElementsByTagName("circle").item(0);
        assertThat(Double.parseDouble(disc.getAttribute("cx")))
                .isCloseTo(EDGE / 2 + 0.6 * SCALE, within(0.02));
        assertThat(Double.parseDouble(disc.getAttribute("cy"))).isCloseTo(200, within(0.02));
    }

    @Test
    void nothingIsDrawnOutsideTheMarginWhateverTheView() {
        Scene scene = scene(Pairings.isolationWithFourPetals());
        for (View view :
                List.of(
                        View.PERFORMER,
                        View.MIRROR,
                        new View(View.Stand.AUDIENCE, 1, 0.4),
                        new View(View.Stand.AUDIENCE, 0, 1.57))) {
            BufferedImage image = Png.image(scene, Still.square(300).with(view).clear());
            for (int i = 0; i < 300; i++) {
                for (int edge : new int[] {0, 8, 291, 299}) {
                    assertThat(image.getRGB(i, edge) >>> 24).isZero();
                    assertThat(image.getRGB(edge, i) >>> 24).isZero();
                }
            }
        }
    }

    @Test
    void theScaleBarHasARoundLength() {
        assertThat(Layout.round(0.93)).isEqualTo(0.5);
        assertThat(Layout.round(0.13)).isEqualTo(0.1);
        assertThat(Layout.round(2.4)).isEqualTo(2);
        assertThat(Layout.said(0.5)).isEqualTo("50 cm");
        assertThat(Layout.said(2)).isEqualTo("2 m");
    }

    @Test
    void theCaptionSaysTheSizesThatWereDrawn() {
        assertThat(
                        Caption.of(
                                "static spin vs triquetra",
                                Pairings.staticSpinWithTriquetra(),
                                View.AUDIENCE))
                .containsExactly(
                        "static spin vs triquetra",
                        "left: hand still, tether 60 cm  ·  right: hand radius 60 cm, tether 60 cm",
                        "60 a minute, 1 s a cycle  ·  seen by the audience");
    }

    @Test
    void aPaperOfNoSizeIsRefused() {
        assertThatThrownBy(() -> Still.square(0))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("width of a still");
    }

    private static Scene scene(Pairing pairing) {
        return Scene.of(Trace.of(pairing));
    }

    private static Document svg(Scene scene, Still still) throws Exception {
        return DocumentBuilderFactory.newDefaultInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(Svg.of(scene, still))));
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
}

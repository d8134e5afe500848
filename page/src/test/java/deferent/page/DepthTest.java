package deferent.page;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.body.Person;
import deferent.reading.body.PoseOver;
import java.awt.Color;
import java.awt.geom.Point2D;
import java.awt.image.BufferedImage;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** What passes before what is read from the picture alone. */
class DepthTest {
    private static final View SIDE = new View(View.Stand.AUDIENCE, Math.PI / 2, 0);
    private static final View ABOVE = new View(View.Stand.AUDIENCE, 0, Math.PI / 2);

    private static Scene scene(String phrase) {
        return Scene.of(Trace.of(Phrase.parse(phrase).pairing()));
    }

    private static Scene bodied(String phrase) {
        Trace trace = Trace.of(Phrase.parse(phrase).pairing());
        Person person = Person.of(PoseOver.of(trace, Performer.USUAL));
        return Scene.of(trace, Scene.USUAL_COUNT, Side.LEFT, Optional.of(person));
    }

    @Test
    void aCordThatPassesBehindTheChestIsNotPaintedOverIt() {
        Scene scene = bodied("static spin vs static spin, opposites");
        for (double share : new double[] {0.05, 0.3, 0.45}) {
            assertThat(overTheBody(scene, View.PERFORMER, share)).as("from behind").isZero();
            assertThat(overTheBody(scene, View.AUDIENCE, share)).as("from before").isPositive();
        }
    }

    /** Pixels inside the body that the left cord changes. */
    private static int overTheBody(Scene scene, View view, double share) {
        Still still =
                Still.square(700)
                        .with(view)
                        .at(share * scene.period())
                        .with(Set.of(Layer.BODY, Layer.TETHER));
        BufferedImage with = Png.image(scene, still);
        BufferedImage without = Png.image(scene, still.without(Layer.TETHER));
        Framing framing = Framing.of(scene, view, Layout.of(still).room());
        Silhouette body = body(scene, framing, still.time());
        Vector3D hand = scene.at(Track.hand(Side.LEFT), still.time());
        Vector3D head = scene.at(Track.head(Side.LEFT), still.time());
        int changed = 0;
        for (double along = 0.01; along < 1; along += 0.01) {
            Point2D.Double at = framing.place(new Vector3D(1 - along, hand, along, head));
            boolean inside = body.side(at.x, at.y, 10) > 0;
            int x = (int) at.x;
            int y = (int) at.y;
            changed += inside && with.getRGB(x, y) != without.getRGB(x, y) ? 1 : 0;
        }
        return changed;
    }

    private static Silhouette body(Scene scene, Framing framing, double time) {
        for (Item item : scene.items()) {
            if (item.form() instanceof Item.Shape.Body body) {
                return Silhouette.of(body.person(), scene, framing, time);
            }
        }
        throw new AssertionError("nobody there");
    }

    @Test
    void ofTwoFiguresInOneCircleThatWhichIsNearerLiesUnbrokenOverTheOther() {
        Scene scene = scene("static spin vs static spin, opposites");
        assertThat(inked(scene, View.AUDIENCE, Side.LEFT)).isGreaterThan(0.99);
        assertThat(inked(scene, View.AUDIENCE, Side.RIGHT)).isLessThan(0.01);
        // The right is dashed: where it has its spaces the left is seen below it.
        assertThat(inked(scene, View.PERFORMER, Side.RIGHT)).isGreaterThan(0.6);
        assertThat(inked(scene, View.PERFORMER, Side.LEFT)).isLessThan(0.35);
        assertThat(inked(scene, View.MIRROR, Side.LEFT)).isGreaterThan(0.99);
    }

    @Test
    void aFigureIsInterruptedWhereANearerOnePassesAndTheNearerNowhere() {
        Scene scene = scene("isolation vs triquetra");
        assertThat(inked(scene, View.AUDIENCE, Side.LEFT)).isGreaterThan(0.99);
        double under = inked(scene, View.PERFORMER, Side.LEFT);
        assertThat(under).isBetween(0.5, 0.97);
    }

    /** How much of a figure's line shows its own ink. */
    private static double inked(Scene scene, View view, Side side) {
        Still still = Still.square(900).with(view).with(StillForm.FIGURE).with(Set.of(Layer.TRAIL));
        BufferedImage picture = Png.image(scene, still);
        Framing framing = Framing.of(scene, view, Layout.of(still).room());
        Color ink = Palette.of(Role.HEAD, Optional.of(side)).ink().on(still.theme());
        int count = 2000;
        int inked = 0;
        for (int i = 0; i < count; i++) {
            double time = i * scene.period() / count;
            Point2D.Double at = framing.place(scene.at(Track.head(side), time));
            Color seen = new Color(picture.getRGB((int) at.x, (int) at.y));
            int off =
                    Math.abs(seen.getRed() - ink.getRed())
                            + Math.abs(seen.getBlue() - ink.getBlue());
            inked += off < 60 ? 1 : 0;
        }
        return (double) inked / count;
    }

    @Test
    void onlyTheFartherOfTwoGivesWayWhoeverLooksFromWherever() {
        for (View view :
                List.of(
                        View.AUDIENCE,
                        View.PERFORMER,
                        View.MIRROR,
                        SIDE,
                        ABOVE,
                        new View(View.Stand.AUDIENCE, 0.7, 0.4),
                        new View(View.Stand.MIRROR, -1.1, 0.9))) {
            Scene scene = scene("isolation vs triquetra");
            for (Crossings.Cut cut : cuts(scene, view)) {
                assertThat(near(scene, view, cut.lane(), cut.at()))
                        .as(view.toString())
                        .isLessThan(nearest(scene, view, cut) - Crossings.LEVEL / 2);
            }
        }
        assertThat(cuts(scene("isolation vs triquetra"), View.AUDIENCE))
                .isNotEmpty()
                .allMatch(cut -> cut.lane() == 1 && cut.over() == 0);
        assertThat(cuts(scene("isolation vs triquetra"), View.PERFORMER))
                .isNotEmpty()
                .allMatch(cut -> cut.lane() == 0 && cut.over() == 1);
    }

    @Test
    void fromAboveTheUpperOfTwoLevelFiguresPassesOverTheOther() {
        Scene scene = scene("isolation floor plane vs triquetra floor plane");
        boolean leftIsUpper =
                scene.at(Track.head(Side.LEFT), 0).getY()
                        > scene.at(Track.head(Side.RIGHT), 0).getY();
        assertThat(cuts(scene, ABOVE))
                .isNotEmpty()
                .allMatch(cut -> cut.over() == (leftIsUpper ? 0 : 1));
    }

    @Test
    void aFlatFigureThatCrossesItselfHasNoGap() {
        Scene scene = scene("triquetra vs static spin");
        assertThat(cuts(scene, View.AUDIENCE)).noneMatch(cut -> cut.lane() == cut.over());
        assertThat(cuts(scene, new View(View.Stand.AUDIENCE, 0.5, 0.3)))
                .noneMatch(cut -> cut.lane() == cut.over());
    }

    @Test
    void aLineThatComesBackBeforeItselfGivesWayToItself() {
        // A loop like that of a fish's tail, its second way 10 cm before its first.
        double[] x = {0, 50, 100, 100, 50, 0};
        double[] y = {0, 50, 100, 0, 50.5, 100};
        double[] near = {0, 0, 0, 0.1, 0.1, 0.1};
        assertThat(Crossings.of(List.of(new Crossings.Lane(x, y, near))))
                .singleElement()
                .satisfies(
                        cut -> {
                            assertThat(cut.lane()).isZero();
                            assertThat(cut.over()).isZero();
                            assertThat(cut.at()).isBetween(0.9, 1.1);
                            assertThat(cut.sine()).isGreaterThan(0.9);
                        });
        double[] flat = {0, 0, 0, 0, 0, 0};
        assertThat(Crossings.of(List.of(new Crossings.Lane(x, y, flat)))).isEmpty();
    }

    private static List<Crossings.Cut> cuts(Scene scene, View view) {
        Framing framing = Framing.of(scene, view, Layout.of(Still.square(900)).room());
        return Crossings.of(
                List.of(Side.LEFT, Side.RIGHT).stream()
                        .map(side -> new Item.Shape.Run(Track.head(side), true))
                        .map(run -> PaperRun.of(scene, framing, run).seen())
                        .toList());
    }

    private static double near(Scene scene, View view, int lane, double at) {
        Framing framing = Framing.of(scene, view, Layout.of(Still.square(900)).room());
        Track track = Track.head(lane == 0 ? Side.LEFT : Side.RIGHT);
        int points = PaperRun.of(scene, framing, new Item.Shape.Run(track, true)).count() - 1;
        return view.see(scene.at(track, at / points * scene.period())).near();
    }

    /** How near the other lane comes at the place of a cut. */
    private static double nearest(Scene scene, View view, Crossings.Cut cut) {
        Framing framing = Framing.of(scene, view, Layout.of(Still.square(900)).room());
        Track own = Track.head(cut.lane() == 0 ? Side.LEFT : Side.RIGHT);
        Track over = Track.head(cut.over() == 0 ? Side.LEFT : Side.RIGHT);
        int points = PaperRun.of(scene, framing, new Item.Shape.Run(own, true)).count() - 1;
        Point2D.Double at = framing.place(scene.at(own, cut.at() / points * scene.period()));
        double nearest = -9;
        for (int i = 0; i < 4000; i++) {
            Vector3D other = scene.at(over, i * scene.period() / 4000);
            if (framing.place(other).distance(at) < 1.5) {
                nearest = Math.max(nearest, view.see(other).near());
            }
        }
        return nearest;
    }

    @Test
    void ofTwoCordsThatCrossTheFartherHasAHoleAndTheNearerNone() {
        Framing.Spot a = new Framing.Spot(0, 0, 0);
        Framing.Spot b = new Framing.Spot(100, 100, 0);
        Framing.Spot c = new Framing.Spot(0, 100, 0.08);
        Framing.Spot d = new Framing.Spot(100, 0, 0.08);
        List<Strand> farther = Strand.of(a, b, Optional.empty(), List.of(), List.of(c, d), 8, 4);
        assertThat(farther).hasSize(2);
        assertThat(farther.get(0).to()).isBetween(0.4, 0.49);
        assertThat(farther.get(1).from()).isBetween(0.51, 0.6);
        assertThat(Strand.of(c, d, Optional.empty(), List.of(), List.of(a, b), 8, 4))
                .containsExactly(new Strand(0, 1, false, false));
    }

    @Test
    void aCordBeforeTheOthersHeadIsPaintedOverItAndOneBehindItIsNot() {
        Framing.Spot hand = new Framing.Spot(0, 0, 0);
        Framing.Spot head = new Framing.Spot(100, 0, 0);
        for (double near : new double[] {-0.08, 0.08}) {
            Strand.Mark mark = new Strand.Mark(new Framing.Spot(50, 0, near), 10);
            assertThat(Strand.of(hand, head, Optional.empty(), List.of(mark), List.of(), 8, 4))
                    .extracting(Strand::above)
                    .as("other head %.2f m nearer", near)
                    .isEqualTo(near < 0 ? List.of(false, true, false) : List.of(false));
        }
    }

    @Test
    void anOwnHandAndHeadLieOverTheirCordWhateverIsBelow() {
        Framing.Spot hand = new Framing.Spot(0, 0, 0);
        Framing.Spot head = new Framing.Spot(100, 0, 0);
        Strand.Mark below = new Strand.Mark(new Framing.Spot(0, 0, -0.08), 10);
        List<Strand> pieces =
                Strand.of(hand, head, Optional.empty(), List.of(below), List.of(), 11, 2);
        assertThat(pieces).filteredOn(Strand::above).allMatch(one -> one.from() >= 0.1);
    }

    @Test
    void aLinkBeforeTheBodyKeepsItsDots() {
        Scene scene = bodied("static spin vs static spin, opposites");
        Still still = Still.square(700).with(Set.of(Layer.BODY, Layer.LINK));
        assertThat(green(Png.image(scene, still)))
                .isGreaterThan(green(Png.image(scene, still.without(Layer.BODY))) * 3 / 4);
    }

    private static int green(BufferedImage picture) {
        int green = 0;
        for (int y = 0; y < picture.getHeight(); y++) {
            for (int x = 0; x < picture.getWidth(); x++) {
                Color seen = new Color(picture.getRGB(x, y));
                green += seen.getGreen() - seen.getRed() > 100 ? 1 : 0;
            }
        }
        return green;
    }

    @Test
    void aLightBehindTheBodyIsFaintAndOneBeforeItIsNot() {
        Scene scene = bodied("static spin vs static spin, opposites");
        Still still = Still.square(700).at(0);
        for (View view : List.of(View.AUDIENCE, View.PERFORMER)) {
            Framing framing = Framing.of(scene, view, Layout.of(still).room());
            Silhouette body = body(scene, framing, 0);
            Item.Shape.Run run = new Item.Shape.Run(Track.head(Side.LEFT), true);
            Trail trail =
                    Trail.of(
                            scene,
                            framing,
                            Layout.of(still).brush(),
                            Item.of(Role.HEAD_TRAIL, Side.LEFT, run),
                            run);
            double[] seen = trail.seen(Optional.of(body));
            long faint = Arrays.stream(seen).filter(share -> share == Trail.BEHIND).count();
            if (view.equals(View.AUDIENCE)) {
                assertThat(faint).isZero();
            } else {
                // The legs are seen before it, at its lowest.
                assertThat(faint).isGreaterThan(20);
            }
        }
    }

    @Test
    void aClipWithoutAlphaHasNoSpecksWhereALightCrossesTheBodysOutline() {
        Scene scene = bodied("static spin vs static spin, opposites");
        Still still = Still.square(500).with(Layer.BODY);
        Frames frames = Frames.of(scene, still);
        BufferedImage plain = new BufferedImage(500, 500, BufferedImage.TYPE_INT_RGB);
        BufferedImage alpha = new BufferedImage(500, 500, BufferedImage.TYPE_INT_ARGB_PRE);
        frames.paint(0.3, plain);
        frames.paint(0.3, alpha);
        int worst = 0;
        for (int y = 0; y < 500; y++) {
            for (int x = 0; x < 500; x++) {
                Color a = new Color(plain.getRGB(x, y));
                Color b = new Color(alpha.getRGB(x, y));
                worst = Math.max(worst, Math.abs(a.getRed() - b.getRed()));
                worst = Math.max(worst, Math.abs(a.getBlue() - b.getBlue()));
            }
        }
        assertThat(worst).isLessThanOrEqualTo(3);
    }
}

package deferent.reading.link;

import static deferent.reading.link.Hands.CAP;
import static deferent.reading.link.Hands.CAT_EYE;
import static deferent.reading.link.Hands.EXTENSION;
import static deferent.reading.link.Hands.ISOLATION;
import static deferent.reading.link.Hands.L;
import static deferent.reading.link.Hands.LINEAR_EXTENSION;
import static deferent.reading.link.Hands.ONE_PETAL_INSPIN;
import static deferent.reading.link.Hands.PENDULUM;
import static deferent.reading.link.Hands.RIDING_CAP;
import static deferent.reading.link.Hands.RIDING_INSPIN;
import static deferent.reading.link.Hands.RIDING_TRIQUETRA;
import static deferent.reading.link.Hands.STATIC_SPIN;
import static deferent.reading.link.Hands.TRIQUETRA;
import static deferent.reading.link.Hands.pair;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Timing;
import deferent.motion.pairing.Turns;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.shared.LinkKind;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Pairings of the trade, first head to second hand. What is called none is under a millimetre. */
class LinkReadingTest {
    private static final double MILLIMETRE = 0.001;

    // Common practice, no source.
    @Test
    void aStaticSpinCarriesATriquetraWhenTheHandCircleIsAsLongAsTheTether() {
        LinkReading link = read(pair(STATIC_SPIN, TRIQUETRA));
        assertThat(link.kind()).isEqualTo(LinkKind.TOUCHING);
        assertThat(link.shapeGap() + link.shapeGapError()).isLessThan(MILLIMETRE);
        assertThat(link.clockGap()).isLessThan(MILLIMETRE);
        assertThat(link.inPlaneGap()).isLessThan(MILLIMETRE);
        assertThat(link.lag()).isZero();
        assertThat(link.headRadius()).isCloseTo(0.6, within(MILLIMETRE));
    }

    @Test
    void handsThatLinkWorkInPlanesAHandsBreadthApart() {
        LinkReading link = read(pair(STATIC_SPIN, TRIQUETRA));
        assertThat(link.depthGap()).isCloseTo(Place.HAND_BREADTH, within(1e-12));
        assertThat(link.placedGap()).isCloseTo(Place.HAND_BREADTH, within(1e-12));
        assertThat(link.offset().distance(new Vector3D(0, 0, -Place.HAND_BREADTH)))
                .isLessThan(1e-12);
    }

    // Common practice, no source: the isolation's head circle is the cat-eye's hand circle.
    @Test
    void aCatEyesHandFollowsAnIsolationsHeadHalfACycleLater() {
        LinkReading link = read(pair(ISOLATION, CAT_EYE));
        assertThat(link.kind()).isEqualTo(LinkKind.FOLLOWED);
        assertThat(link.lag()).isCloseTo(-0.5, within(1e-9));
        assertThat(link.shapeGap() + link.shapeGapError()).isLessThan(MILLIMETRE);
        assertThat(link.clockGap()).isLessThan(MILLIMETRE);
        assertThat(link.headRadius()).isCloseTo(0.3, within(MILLIMETRE));
        assertThat(link.handRadius()).isCloseTo(0.3, within(MILLIMETRE));
    }

    @Test
    void inSplitTimeTheCatEyesHandTouchesTheIsolationsHead() {
        LinkReading link = read(pair(ISOLATION, CAT_EYE).with(Timing.SPLIT));
        assertThat(link.kind()).isEqualTo(LinkKind.TOUCHING);
        assertThat(link.inPlaneGap()).isLessThan(MILLIMETRE);
        assertThat(link.lag()).isZero();
    }

    @Test
    void anExtensionsHeadCircleIsTooWideForATriquetrasHand() {
        LinkReading link = read(pair(EXTENSION, TRIQUETRA));
        assertThat(link.kind()).isEqualTo(LinkKind.NONE);
        assertThat(link.shapeGap()).isCloseTo(0.6, within(MILLIMETRE));
        assertThat(link.shapeGapAtLeast()).isCloseTo(0.6, within(MILLIMETRE));
        assertThat(link.shapeGapError()).isLessThan(MILLIMETRE);
        assertThat(link.shareOfFigure()).isCloseTo(0.25, within(MILLIMETRE));
        assertThat(link.handsBreadths()).isCloseTo(7.5, within(0.02));
    }

    @Test
    void aPendulumAndACapShareOneArcButNotOneClock() {
        LinkReading link = read(pair(PENDULUM, CAP));
        assertThat(link.shapeGap() + link.shapeGapError()).isLessThan(MILLIMETRE);
        assertThat(link.clockGap()).isGreaterThan(10 * MILLIMETRE);
        assertThat(link.kind()).isEqualTo(LinkKind.TOUCHING);
        LinkReading split = read(pair(PENDULUM, CAP).with(Timing.SPLIT));
        assertThat(split.kind()).isEqualTo(LinkKind.FOLLOWED);
        assertThat(split.shapeGap() + split.shapeGapError()).isLessThan(MILLIMETRE);
    }

    @Test
    void aCapThatRidesThePendulumClosesEveryGap() {
        allClosed(read(pair(PENDULUM, RIDING_CAP)));
    }

    // A loop laid on an arc brings two points a diameter apart onto one point of the arc.
    @Test
    void anArcIsNoCircleSoAPendulumCannotLeadATriquetra() {
        LinkReading link = read(pair(PENDULUM, TRIQUETRA));
        assertThat(link.kind()).isEqualTo(LinkKind.NONE);
        assertThat(link.shapeGap()).isCloseTo(0.6, within(MILLIMETRE));
        assertThat(link.shapeGapAtLeast()).isCloseTo(0.6, within(MILLIMETRE));
        allClosed(read(pair(PENDULUM, RIDING_TRIQUETRA)));
    }

    @Test
    void aPendulumCannotLeadAOnePetalInspinUnlessItRides() {
        LinkReading link = read(pair(PENDULUM, ONE_PETAL_INSPIN));
        assertThat(link.kind()).isEqualTo(LinkKind.NONE);
        assertThat(link.shapeGap()).isCloseTo(0.6, within(MILLIMETRE));
        allClosed(read(pair(PENDULUM, RIDING_INSPIN)));
    }

    @Test
    void aHandCircleATenthShortMissesByATenthOfTheTether() {
        LinkReading link = read(pair(STATIC_SPIN, Motion.flower(0.9 * L, -3, 0)));
        assertThat(link.shapeGap()).isCloseTo(0.1 * L, within(MILLIMETRE));
        assertThat(link.clockGap()).isCloseTo(0.1 * L, within(MILLIMETRE));
        assertThat(link.inPlaneGap()).isCloseTo(0.1 * L, within(MILLIMETRE));
        assertThat(link.gapOverCycle()).hasSize(720);
        assertThat(link.worstTime()).isZero();
    }

    @Test
    void headAndHandOnCrossingLinesAreJoinedAsByARod() {
        Motion upright = new Motion(Series.line(1.2, Math.PI / 2), new Turns(1, 0));
        LinkReading link = read(pair(LINEAR_EXTENSION, upright).with(Timing.QUARTER));
        assertThat(link.kind()).isEqualTo(LinkKind.ROD);
    }

    @Test
    void aHandThatKeepsItsDistanceSidewaysIsCarried() {
        Pairing together = pair(STATIC_SPIN, TRIQUETRA);
        Place aside = together.right().place().withCentre(new Vector3D(0.5, 0.2, 0.26));
        LinkReading link = read(together.with(Side.RIGHT, together.right().with(aside)));
        assertThat(link.kind()).isEqualTo(LinkKind.CARRIED);
        assertThat(link.offset().distance(new Vector3D(0.5, 0.2, -0.08))).isLessThan(1e-9);
        assertThat(link.inPlaneGap()).isCloseTo(Math.hypot(0.5, 0.2), within(1e-9));
    }

    @Test
    void aHandAQuarterCycleAheadHasALagOfMinusAQuarter() {
        LinkReading link = read(pair(STATIC_SPIN, TRIQUETRA).with(Timing.QUARTER));
        assertThat(link.kind()).isEqualTo(LinkKind.FOLLOWED);
        assertThat(link.lag()).isCloseTo(-0.25, within(1e-6));
    }

    @Test
    void oppositeCirclesAreTheSameShapeAndNoLagBringsThemTogether() {
        LinkReading link = read(pair(STATIC_SPIN, TRIQUETRA).with(Direction.OPPOSITE));
        assertThat(link.shapeGap()).isLessThan(MILLIMETRE);
        assertThat(link.clockGap()).isLessThan(MILLIMETRE);
        assertThat(link.lag()).isZero();
        assertThat(link.kind()).isEqualTo(LinkKind.NONE);
    }

    @Test
    void aStillHandIsAsFarFromACircleAsItsRadius() {
        LinkReading link = read(pair(STATIC_SPIN, STATIC_SPIN));
        assertThat(link.shapeGap()).isCloseTo(L, within(MILLIMETRE));
        assertThat(link.handRadius()).isZero();
        assertThat(link.kind()).isEqualTo(LinkKind.NONE);
    }

    @Test
    void anotherPlaneChangesNeitherShapeNorClock() {
        Pairing wall = pair(STATIC_SPIN, TRIQUETRA);
        Pairing across =
                wall.with(Side.RIGHT, wall.right().with(Place.usual(Side.RIGHT, Plane.WHEEL)));
        LinkReading link = read(across);
        assertThat(link.shapeGap()).isLessThan(MILLIMETRE);
        assertThat(link.clockGap()).isLessThan(MILLIMETRE);
        assertThat(link.inPlaneGap()).isGreaterThan(0.5);
    }

    @Test
    void aRiderClosesItsLinkWithAToroid() {
        Pairing flat = pair(Motion.flower(L, 3, 0), RIDING_TRIQUETRA);
        Place turning =
                flat.left()
                        .place()
                        .withTurn(
                                new PlaneTurn(1, PlaneTurn.Axis.UPRIGHT, PlaneTurn.Carries.FIGURE));
        allClosed(read(flat.with(Side.LEFT, flat.left().with(turning))));
    }

    @Test
    void theOtherLinkIsReadFromTheRightHead() {
        LinkReading link = LinkReading.of(Trace.of(pair(TRIQUETRA, STATIC_SPIN)), Side.RIGHT);
        assertThat(link.kind()).isEqualTo(LinkKind.TOUCHING);
        assertThat(LinkReading.both(Trace.of(pair(TRIQUETRA, STATIC_SPIN))).get(0).kind())
                .isEqualTo(LinkKind.NONE);
    }

    @Test
    void aWiderToleranceMakesALinkOfANearMiss() {
        Trace trace = Trace.of(pair(STATIC_SPIN, Motion.flower(0.8 * L, -3, 0)));
        assertThat(LinkReading.of(trace, Side.LEFT).kind()).isNotEqualTo(LinkKind.TOUCHING);
        assertThat(LinkReading.of(trace, Side.LEFT, 0.13).kind()).isEqualTo(LinkKind.TOUCHING);
        assertThatThrownBy(() -> LinkReading.of(trace, Side.LEFT, 0))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("tolerance");
    }

    @Test
    void whileDraggingTheEstimateIsNearTheCertifiedGapAndSaysSo() {
        for (Pairing p :
                new Pairing[] {
                    pair(STATIC_SPIN, TRIQUETRA),
                    pair(ISOLATION, CAT_EYE),
                    pair(EXTENSION, TRIQUETRA),
                    pair(PENDULUM, CAP),
                    pair(STATIC_SPIN, Motion.flower(0.9 * L, -3, 0))
                }) {
            LinkReading quick = LinkReading.quick(Trace.of(p), Side.LEFT);
            LinkReading settled = read(p);
            assertThat(quick.quick()).isTrue();
            assertThat(settled.quick()).isFalse();
            assertThat(quick.shapeGapError()).isNaN();
            assertThat(quick.shapeGap()).isCloseTo(settled.shapeGap(), within(0.005));
            assertThat(quick.clockGap()).isCloseTo(settled.clockGap(), within(0.005));
            assertThat(quick.lag()).isCloseTo(settled.lag(), within(0.01));
            assertThat(quick.kind()).isEqualTo(settled.kind());
        }
    }

    @Test
    void thePairingsOfTheTradeReadTheSameWhenTheyAreSaid() {
        allClosed(said("static spin vs triquetra"));
        allClosed(said("isolation vs horizontal cat-eye, split time"));
        allClosed(said("pendulum vs CAP riding"));
        allClosed(said("pendulum vs triquetra riding"));
        allClosed(said("pendulum vs one-petal in-spin riding"));
        LinkReading followed = said("isolation vs horizontal cat-eye");
        assertThat(followed.kind()).isEqualTo(LinkKind.FOLLOWED);
        assertThat(followed.lag()).isCloseTo(-0.5, within(1e-9));
        assertThat(followed.shapeGap()).isLessThan(MILLIMETRE);
        for (String none :
                new String[] {
                    "extension vs triquetra",
                    "pendulum vs triquetra",
                    "pendulum vs one-petal in-spin"
                }) {
            assertThat(said(none).kind()).as(none).isEqualTo(LinkKind.NONE);
            assertThat(said(none).shapeGap()).as(none).isCloseTo(0.6, within(MILLIMETRE));
        }
        assertThat(said("pendulum vs CAP").shapeGap()).isLessThan(MILLIMETRE);
        assertThat(said("pendulum vs CAP").clockGap()).isGreaterThan(10 * MILLIMETRE);
        assertThat(said("pendulum vs cat-eye CAP, split time").kind()).isEqualTo(LinkKind.FOLLOWED);
    }

    // Common practice, no source: outer radii of extension and triquetra are both R + L; a static
    // spin's is L.
    @Test
    void extensionAndTriquetraReachEquallyFarAndAStaticSpinLessFar() {
        assertThat(outer("extension vs triquetra", Side.LEFT)).isCloseTo(1.2, within(MILLIMETRE));
        assertThat(outer("extension vs triquetra", Side.RIGHT)).isCloseTo(1.2, within(MILLIMETRE));
        assertThat(outer("static spin vs triquetra", Side.LEFT)).isCloseTo(0.6, within(MILLIMETRE));
        assertThat(outer("static spin vs triquetra", Side.RIGHT))
                .isCloseTo(1.2, within(MILLIMETRE));
    }

    private static double outer(String phrase, Side side) {
        return LinkReading.of(Trace.of(Phrase.parse(phrase).pairing()), side).headRadius();
    }

    private static LinkReading said(String phrase) {
        return read(Phrase.parse(phrase).pairing());
    }

    private static LinkReading read(Pairing pairing) {
        return LinkReading.of(Trace.of(pairing));
    }

    private static void allClosed(LinkReading link) {
        assertThat(link.kind()).isEqualTo(LinkKind.TOUCHING);
        assertThat(link.shapeGap() + link.shapeGapError()).isLessThan(MILLIMETRE);
        assertThat(link.clockGap()).isLessThan(MILLIMETRE);
        assertThat(link.inPlaneGap()).isLessThan(MILLIMETRE);
        assertThat(link.lag()).isZero();
    }

    /**
     * A circle of 60 cm about a point 30 cm beside the hand comes no further from it than 90 cm.
     */
    @Test
    void aHeadOfManyCyclesIsSeenAtItsFurthest() {
        LinkReading link =
                read(
                        Phrase.parse(
                                        "static spin start 4° cycles 24 vs static spin centre 30 cm"
                                                + " right")
                                .pairing());
        assertThat(link.inPlaneGap()).isCloseTo(0.9, within(2e-4));
    }

    /** About a still hand a path is as far off as the least circle round it is large. */
    @Test
    void noCircleRoundAPathIsSmallerThanHalfItsLength() {
        LinkReading link =
                LinkReading.of(
                        Trace.of(
                                Phrase.parse(
                                                "stall swivel -136.3° vs CAP turns 0.5 out 1.5 back"
                                                        + " hand radius 0.16 tether tether 55 cm wheel,"
                                                        + " quarter, opposite direction, tempo 39.7")
                                        .pairing()),
                        Side.RIGHT);
        assertThat(link.shapeGapAtLeast()).isLessThanOrEqualTo(link.shapeGap());
        assertThat(link.shapeGap()).isCloseTo(link.headRadius(), within(1e-12));
        assertThat(2 * link.headRadius()).isGreaterThan(1.2257);
    }

    /** In doubles: no more than the rounding of lengths of half a metre. */
    @Test
    void theShapeGapOfAnyTwoCapsIsToldToFiveMillimetres() {
        String[] caps = {
            "CAP",
            "triquetra CAP",
            "cat-eye CAP",
            "CAP with 2 petals",
            "CAP with 6 petals",
            "CAP turns 3",
            "CAP turns 1.5 out 0.5 back"
        };
        for (String leads : caps) {
            for (String follows : caps) {
                String said = leads + " vs " + follows + ", split time";
                LinkReading link = LinkReading.of(Trace.of(Phrase.parse(said).pairing()));
                assertThat(link.shapeGapError()).as(said).isBetween(0.0, 0.005);
            }
        }
    }

    @Test
    void aHandStraightBehindAHeadIsNotApartFromItInTheirPlane() {
        Vector3D across = new Vector3D(1, 2, -3).normalize();
        double[] head = {0.31, -0.17, 0.53, -0.4, 0.29, 0.11};
        double[] hand = head.clone();
        for (int i = 0; i < head.length; i++) {
            hand[i] += 0.38 * across.toArray()[i % 3];
        }
        Placed placed = Placed.of(head, hand, across);
        assertThat(placed.depth()).isCloseTo(0.38, within(1e-15));
        assertThat(placed.inPlane()).isLessThan(1e-15);
    }
}

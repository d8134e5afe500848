package deferent.reading.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Timing;
import deferent.motion.pairing.Turns;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** What a shape gap must not depend on, and what it must. */
class ShapeGapPropertiesTest {
    /**
     * How far two searches for the gap of one pair of unlike paths may end apart, as a share of it:
     * the search is local, see {@link ShapeSearch}. Mostly they end within three hundredths.
     */
    private static final double SEARCHED = 0.5;

    @Property(tries = 25)
    void aHandOnTheHeadsOwnFigureClosesHoweverTurnedShiftedReversedAndTimed(Any any) {
        Motion carrier = any.from(ShapeGapPropertiesTest::flower);
        double turn = any.number(-3, 3);
        double shift = any.number(-0.5, 0.5);
        double ahead = any.number(0, 0.99);
        boolean mirrored = any.of(false, true);
        Series figure = headFigure(carrier, mirrored).turned(turn);
        LinkReading link = read(carrier, new Motion(figure, new Turns(1, 0)), shift, ahead);
        assertThat(link.shapeGap()).isLessThan(0.001);
        assertThat(link.shapeGapAtLeast()).isLessThan(0.001);
    }

    @Property(tries = 12)
    void turningShiftingAndRetimingLeaveTheGapNearlyAlone(Any any) {
        Motion carrier = any.from(ShapeGapPropertiesTest::flower);
        double off = any.number(0.02, 0.15);
        double turn = any.number(-3, 3);
        double shift = any.number(-0.5, 0.5);
        double ahead = any.number(0, 0.99);
        Motion rider = nearly(carrier, off);
        LinkReading plain = read(carrier, rider, 0, 0);
        LinkReading moved = read(carrier, rider.turned(turn), shift, ahead);
        assertThat(moved.shapeGap())
                .isCloseTo(plain.shapeGap(), within(0.004 + SEARCHED * plain.shapeGap()));
    }

    @Property(tries = 12)
    void itDoesNotMatterWhichOfTheTwoPathsIsTheHeads(Any any) {
        Motion carrier = any.from(ShapeGapPropertiesTest::flower);
        double off = any.number(0.02, 0.15);
        Trace trace = trace(carrier, nearly(carrier, off), 0, 0);
        WalkedCurve head = curve(trace, true);
        WalkedCurve hand = curve(trace, false);
        ShapeGap there = ShapeGap.certified(head, hand);
        ShapeGap back = ShapeGap.certified(hand, head);
        assertThat(back.gap()).isCloseTo(there.gap(), within(0.004 + SEARCHED * there.gap()));
        assertThat(back.atLeast()).isCloseTo(there.atLeast(), within(0.001));
    }

    @Property(tries = 25)
    void noRigidMotionComesBelowTheBound(Any any) {
        Motion carrier = any.from(ShapeGapPropertiesTest::flower);
        Motion rider = any.from(ShapeGapPropertiesTest::rider);
        LinkReading link = read(carrier, rider, 0, 0);
        assertThat(link.shapeGapAtLeast()).isLessThanOrEqualTo(link.shapeGap() + 1e-9);
        assertThat(link.shapeGapError()).isNotNegative();
        assertThat(link.clockGap()).isNotNegative();
    }

    @Property(tries = 25)
    void twoCirclesAreApartByTheDifferenceOfTheirRadii(Any any) {
        double tether = any.number(0.05, 1.5);
        double radius = any.number(0.05, 1.5);
        Pairing pairing =
                Pairing.of(
                        new Part(
                                Motion.staticSpin(1, 0),
                                Tether.of(tether),
                                Place.usual(Side.LEFT, Plane.WALL),
                                1),
                        Hands.part(Side.RIGHT, Motion.flower(radius, -2, 0)));
        LinkReading link = LinkReading.of(Trace.of(pairing));
        assertThat(link.shapeGap()).isCloseTo(Math.abs(tether - radius), within(0.0005));
        assertThat(link.shapeGapAtLeast()).isCloseTo(link.shapeGap(), within(0.001));
        assertThat(link.clockGap()).isCloseTo(Math.abs(tether - radius), within(1e-5));
    }

    private static Motion flower(Any any) {
        int turns = any.of(-1, 2, -2, 3, -3, 4, -4);
        return Motion.flower(any.number(0.1, 0.9), turns, any.number(-3, 3));
    }

    private static Motion rider(Any any) {
        Series.Term once = new Series.Term(1, any.number(0.1, 0.9), 0.4);
        Series.Term other = new Series.Term(any.of(-1, 2, -2, 3, -3), any.number(0, 0.5), 1.1);
        return new Motion(new Series(List.of(once, other)), new Turns(1, 0));
    }

    // The carrier's own figure with a fifth loop in it, so that the two differ by at most that.
    private static Motion nearly(Motion carrier, double off) {
        List<Series.Term> terms = new ArrayList<>(headFigure(carrier, false).terms());
        terms.add(new Series.Term(5, off, 0.7));
        return new Motion(new Series(terms), new Turns(1, 0));
    }

    private static Series headFigure(Motion flower, boolean mirrored) {
        Series.Term hand = ((Series) flower.path()).terms().get(0);
        Turns poi = (Turns) flower.spin();
        int way = mirrored ? -1 : 1;
        return new Series(
                List.of(
                        new Series.Term(way, hand.radius(), way * hand.angle()),
                        new Series.Term(way * poi.turns(), Hands.L, way * poi.start())));
    }

    private static Trace trace(Motion carrier, Motion rider, double shift, double ahead) {
        Pairing pairing = Hands.pair(carrier, rider).with(Timing.of(ahead));
        Place there = pairing.right().place().withCentre(new Vector3D(shift, -shift / 2, shift));
        return Trace.of(pairing.with(Side.RIGHT, pairing.right().with(there)));
    }

    private static LinkReading read(Motion carrier, Motion rider, double shift, double ahead) {
        return LinkReading.of(trace(carrier, rider, shift, ahead));
    }

    private static WalkedCurve curve(Trace trace, boolean head) {
        return WalkedCurve.of(
                head ? trace.head(Side.LEFT) : trace.hand(Side.RIGHT),
                trace.interval(),
                true,
                new double[0],
                1440);
    }
}

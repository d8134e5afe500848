package deferent.motion.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Timing;
import deferent.motion.pairing.Turns;
import deferent.motion.trace.Trace;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** What a shape gap must not depend on, and what it must. */
class ShapeGapPropertiesTest {
    /**
     * How far two searches for the gap of one pair of unlike paths may end apart, as a share of it:
     * the search is local, see {@link ShapeSearch}. Mostly they end within three hundredths.
     */
    private static final double SEARCHED = 0.5;

    @Property(tries = 25)
    void aHandOnTheHeadsOwnFigureClosesHoweverTurnedShiftedReversedAndTimed(
            @ForAll("flowers") Motion root,
            @ForAll @DoubleRange(min = -3, max = 3) double turn,
            @ForAll @DoubleRange(min = -0.5, max = 0.5) double shift,
            @ForAll @DoubleRange(min = 0, max = 0.99) double ahead,
            @ForAll boolean mirrored) {
        Series figure = headFigure(root, mirrored).turned(turn);
        LinkReading link = read(root, new Motion(figure, new Turns(1, 0)), shift, ahead);
        assertThat(link.shapeGap()).isLessThan(0.001);
        assertThat(link.shapeGapAtLeast()).isLessThan(0.001);
    }

    @Property(tries = 12)
    void turningShiftingAndRetimingLeaveTheGapNearlyAlone(
            @ForAll("flowers") Motion root,
            @ForAll @DoubleRange(min = 0.02, max = 0.15) double off,
            @ForAll @DoubleRange(min = -3, max = 3) double turn,
            @ForAll @DoubleRange(min = -0.5, max = 0.5) double shift,
            @ForAll @DoubleRange(min = 0, max = 0.99) double ahead) {
        Motion rider = nearly(root, off);
        LinkReading plain = read(root, rider, 0, 0);
        LinkReading moved = read(root, rider.turned(turn), shift, ahead);
        assertThat(moved.shapeGap())
                .isCloseTo(plain.shapeGap(), within(0.004 + SEARCHED * plain.shapeGap()));
    }

    @Property(tries = 12)
    void itDoesNotMatterWhichOfTheTwoPathsIsTheHeads(
            @ForAll("flowers") Motion root,
            @ForAll @DoubleRange(min = 0.02, max = 0.15) double off) {
        Trace trace = trace(root, nearly(root, off), 0, 0);
        Curve head = curve(trace, true);
        Curve hand = curve(trace, false);
        ShapeGap there = ShapeGap.certified(head, hand);
        ShapeGap back = ShapeGap.certified(hand, head);
        assertThat(back.gap()).isCloseTo(there.gap(), within(0.004 + SEARCHED * there.gap()));
        assertThat(back.atLeast()).isCloseTo(there.atLeast(), within(0.001));
    }

    @Property(tries = 25)
    void noRigidMotionComesBelowTheBound(
            @ForAll("flowers") Motion root, @ForAll("paths") Motion rider) {
        LinkReading link = read(root, rider, 0, 0);
        assertThat(link.shapeGapAtLeast()).isLessThanOrEqualTo(link.shapeGap() + 1e-9);
        assertThat(link.shapeGapError()).isNotNegative();
        assertThat(link.clockGap()).isNotNegative();
    }

    @Property(tries = 25)
    void twoCirclesAreApartByTheDifferenceOfTheirRadii(
            @ForAll @DoubleRange(min = 0.05, max = 1.5) double tether,
            @ForAll @DoubleRange(min = 0.05, max = 1.5) double radius) {
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

    @Provide
    Arbitrary<Motion> flowers() {
        return Combinators.combine(
                        Arbitraries.doubles().between(0.1, 0.9),
                        Arbitraries.of(-4, -3, -2, -1, 2, 3, 4),
                        Arbitraries.doubles().between(-3, 3))
                .as(Motion::flower);
    }

    @Provide
    Arbitrary<Motion> paths() {
        return Combinators.combine(
                        Arbitraries.doubles().between(0.1, 0.9),
                        Arbitraries.doubles().between(0, 0.5),
                        Arbitraries.of(-3, -2, -1, 2, 3))
                .as(
                        (one, other, k) ->
                                new Motion(
                                        new Series(
                                                List.of(
                                                        new Series.Term(1, one, 0.4),
                                                        new Series.Term(k, other, 1.1))),
                                        new Turns(1, 0)));
    }

    // The root's own figure with a fifth loop in it, so that the two differ by at most that.
    private static Motion nearly(Motion root, double off) {
        List<Series.Term> terms = new ArrayList<>(headFigure(root, false).terms());
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

    private static Trace trace(Motion root, Motion rider, double shift, double ahead) {
        Pairing pairing = Hands.pair(root, rider).with(Timing.of(ahead));
        Place there = pairing.right().place().withCentre(new Vector3D(shift, -shift / 2, shift));
        return Trace.of(pairing.with(Side.RIGHT, pairing.right().with(there)));
    }

    private static LinkReading read(Motion root, Motion rider, double shift, double ahead) {
        return LinkReading.of(trace(root, rider, shift, ahead));
    }

    private static Curve curve(Trace trace, boolean head) {
        return Curve.of(
                head ? trace.head(Side.LEFT) : trace.hand(Side.RIGHT),
                trace.interval(),
                true,
                new double[0],
                1440);
    }
}

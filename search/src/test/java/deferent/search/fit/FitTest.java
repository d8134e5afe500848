package deferent.search.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Arc;
import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Drawn;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Size;
import deferent.motion.pairing.Timing;
import deferent.motion.pairing.Turns;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.link.LinkReading;
import deferent.reading.shared.LinkKind;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Pairings of the trade with tethers of 60 cm; the first hand's poi leads. */
class FitTest {
    private static final Size CARRIER_CIRCLE = Size.of(Side.LEFT, Size.Kind.HAND_RADIUS);
    private static final Size CARRIER_TETHER = Size.of(Side.LEFT, Size.Kind.TETHER);
    private static final Size RIDER_CIRCLE = Size.of(Side.RIGHT, Size.Kind.HAND_RADIUS);
    private static final Size TIMING = Size.of(Side.LEFT, Size.Kind.TIMING);

    @Test
    void aLinkThatIsClosedNeedsNoChange() {
        FitReading fit = fit(said("static spin vs triquetra"));
        assertThat(fit.goal()).isEqualTo(Goal.PLACED);
        assertThat(fit.obstacle()).isEqualTo(Obstacle.NONE);
        assertThat(fit.answers()).hasSize(1);
        assertThat(fit.answers().get(0).changes()).isEmpty();
    }

    @Test
    void aHandCircleATenthShortIsFittedByItselfOrByTheCarriersTether() {
        Pairing pairing = RIDER_CIRCLE.set(said("static spin vs four-petal antispin"), 0.9 * 0.6);
        FitReading fit = fit(pairing);
        assertThat(fit.goal()).isEqualTo(Goal.PLACED);
        assertThat(fit.answers()).hasSize(2).allSatisfy(a -> assertThat(a.exact()).isTrue());
        assertThat(fit.answers())
                .anySatisfy(a -> changesOnly(a, RIDER_CIRCLE, 0.54, 0.60))
                .anySatisfy(a -> changesOnly(a, CARRIER_TETHER, 0.60, 0.54));
        assertThat(fit.answers())
                .allSatisfy(a -> assertThat(a.moved()).isCloseTo(0.06, within(1e-6)));
        touches(fit.answers().get(0));
    }

    // Two circles of half a line's length that go round opposite ways draw the line (Cardano's
    // circles: Weisstein, "Tusi Couple", MathWorld); a poi that cancels one leaves the other.
    @Test
    void aLinearIsolationOfHalfItsTetherDrawsOneCircle() {
        Pairing line = said("linear isolation vs extension");
        FitReading fit = fit(line);
        double half = line.part(Side.LEFT).motion().path().radius() / 2;
        assertThat(fit.closes()).isTrue();
        assertThat(fit.answers())
                .anySatisfy(
                        a -> {
                            assertThat(CARRIER_TETHER.read(a.pairing()).getAsDouble())
                                    .isCloseTo(half, within(1e-9));
                            assertThat(RIDER_CIRCLE.read(a.pairing()).getAsDouble())
                                    .isCloseTo(half, within(1e-9));
                        });
    }

    @Test
    void anIsolationsHeadStandsStillWithAHandThatDoes() {
        FitReading fit = Fit.of(said("stall tether 80 cm vs isolation"), Side.RIGHT);
        assertThat(fit.closes()).isTrue();
        assertThat(fit.answers()).anySatisfy(a -> changesOnly(a, RIDER_CIRCLE, 0.30, 0.60));
    }

    @Test
    void anIsolationAndACatEyeTouchInSplitTime() {
        FitReading fit = fit(said("isolation vs cat-eye"));
        changesOnly(fit.answers().get(0), TIMING, 0, 0.5);
        touches(fit.answers().get(0));
    }

    @Test
    void anExtensionsHeadCircleIsNeverSmallerThanItsTether() {
        Pairing pairing = said("extension vs triquetra");
        FitReading carriers = Fit.of(pairing, Side.LEFT, Set.of(CARRIER_CIRCLE));
        assertThat(carriers.closes()).isFalse();
        assertThat(carriers.obstacle()).isEqualTo(Obstacle.HEAD_CIRCLE_NEVER_SMALLER_THAN_TETHER);
        assertThat(carriers.have()).isCloseTo(0.6, within(1e-9));
        assertThat(carriers.need()).isCloseTo(0.6, within(1e-9));
        // The hand circle shrunk to the least that the limits allow.
        assertThat(carriers.leastGap()).isCloseTo(0.05, within(0.001));

        FitReading all = fit(pairing);
        assertThat(all.obstacle()).isEqualTo(Obstacle.HEAD_CIRCLE_NEVER_SMALLER_THAN_TETHER);
        changesOnly(all.answers().get(0), RIDER_CIRCLE, 0.6, 1.2);
        touches(all.answers().get(0));
    }

    @Test
    void anExtensionWhosePoiMayStartElsewhereBecomesAnIsolationAboutAPointOfItsTether() {
        Size start = Size.of(Side.LEFT, Size.Kind.START);
        FitReading fit = Fit.of(said("extension vs triquetra"), Side.LEFT, Set.of(start, TIMING));
        // |R + L·e^{iφ}| = L with R = L: φ is a third of a turn either way.
        assertThat(fit.answers()).isNotEmpty();
        assertThat(fit.answers())
                .allSatisfy(
                        a ->
                                assertThat(Math.cos(start.read(a.pairing()).orElseThrow()))
                                        .isCloseTo(-0.5, within(1e-9)));
        touches(fit.answers().get(0));
    }

    @Test
    void anIsolationsCircleIsTheDifferenceOfTetherAndHandCircle() {
        FitReading fit = fit(said("isolation vs four-petal antispin"));
        // |R − L| = 0.6: the hand circle of the isolation at twice the tether, or the tether 0.9.
        assertThat(fit.answers())
                .anySatisfy(a -> changesOnly(a, CARRIER_CIRCLE, 0.3, 1.2))
                .anySatisfy(
                        a ->
                                assertThat(a.changes())
                                        .anyMatch(
                                                c ->
                                                        c.size().equals(CARRIER_TETHER)
                                                                && Math.abs(c.to() - 0.9) < 1e-9));
        fit.answers().forEach(FitTest::touches);
    }

    @Test
    void aPendulumSetsItsOwnTempoAnewWhenItsTetherIsFitted() {
        Pairing pairing = said("pendulum vs CAP");
        Arc arc = (Arc) pairing.right().motion().path();
        Pairing shorter = RIDER_CIRCLE.set(pairing, 0.5);
        FitReading fit = Fit.of(shorter, Side.LEFT, Set.of(CARRIER_TETHER));
        Remedy answer = fit.answers().get(0);
        changesOnly(answer, CARRIER_TETHER, 0.6, 0.5);
        assertThat(answer.exact()).isTrue();
        assertThat(answer.pairing().period())
                .isCloseTo(shorter.period() * Math.sqrt(0.5 / 0.6), within(1e-9));
        // Same arc, but the pendulum's clock is not the CAP's.
        assertThat(fit.goal()).isEqualTo(Goal.SHAPE);
        assertThat(fit.obstacle()).isEqualTo(Obstacle.NOT_IN_TIME);
        assertThat(arc.halfSweep()).isCloseTo(Math.PI / 2, within(1e-9));
    }

    @Test
    void aPendulumSaidAtItsOwnTempoIsFittedAllTheSame() {
        Pairing pairing = RIDER_CIRCLE.set(said("pendulum vs CAP"), 0.5);
        Pairing saidTempo = pairing.withTempo(OptionalDouble.of(pairing.tempo()));
        FitReading fit = Fit.of(saidTempo, Side.LEFT, Set.of(CARRIER_TETHER));
        changesOnly(fit.answers().get(0), CARRIER_TETHER, 0.6, 0.5);
    }

    @Test
    void noSizeMakesACircleOfAnArc() {
        FitReading fit = fit(said("pendulum vs triquetra"));
        assertThat(fit.closes()).isFalse();
        assertThat(fit.obstacle()).isEqualTo(Obstacle.ARC_IS_NO_CIRCLE);
        assertThat(fit.have()).isCloseTo(0.6, within(0.001));
        assertThat(fit.need()).isCloseTo(0.6, within(0.001));
        // A circle of the least hand radius: some two of its points that are opposite come onto one
        // of
        // the arc (Borsuk and Ulam, in one dimension).
        assertThat(fit.leastGap()).isCloseTo(0.05, within(0.001));
    }

    @Test
    void whereAnArcIsNoCircleTheHandThatRidesClosesIt() {
        for (String said :
                new String[] {
                    "pendulum vs triquetra",
                    "pendulum vs one-petal in-spin",
                    "pendulum amplitude 50° vs isolation, split time",
                    "static spin vs CAP"
                }) {
            FitReading fit = fit(said(said));
            assertThat(fit.obstacle()).as(said).isEqualTo(Obstacle.ARC_IS_NO_CIRCLE);
            Pairing ridden = fit.riding().orElseThrow().pairing();
            assertThat(ridden.rider()).contains(Side.RIGHT);
            assertThat(ridden.right().motion().spin())
                    .isEqualTo(said(said).right().motion().spin());
            assertThat(LinkReading.of(Trace.of(ridden), Side.LEFT).kind())
                    .isEqualTo(LinkKind.TOUCHING);
        }
        assertThat(fit(said("pendulum vs triquetra")).riding().orElseThrow().pairing())
                .isEqualTo(said("pendulum vs triquetra riding"));
    }

    @Test
    void whatAgreesInShapeAloneNeedsMoreThanNoChangeAndTheHandThatRidesClosesIt() {
        for (String[] said :
                new String[][] {
                    {"pendulum vs CAP", "pendulum vs CAP riding"},
                    {"pendulum vs cat-eye CAP", "pendulum vs cat-eye CAP riding"},
                    {"pendulum vs CAP with 5 petals", "pendulum vs CAP riding"},
                    {"pendulum amplitude 60° vs CAP", "pendulum amplitude 60° vs CAP riding"},
                    {"stall vs CAP", "stall vs CAP riding"},
                    {"triquetra vs cat-eye", "triquetra vs cat-eye riding"}
                }) {
            FitReading fit = fit(said(said[0]));
            assertThat(fit.answers()).as(said[0]).noneMatch(a -> a.changes().isEmpty());
            assertThat(fit.riding().orElseThrow().pairing()).as(said[0]).isEqualTo(said(said[1]));
        }
        Pairing second = said("CAP vs pendulum");
        assertThat(Fit.of(second, Side.RIGHT).riding().orElseThrow().pairing())
                .isEqualTo(said("CAP riding pendulum"));
    }

    @Test
    void whatIsCalledAfterItsHandsPathAndAHandThatIsStillDoNotRide() {
        assertThat(fit(said("isolation vs vertical line")).riding()).isEmpty();
        assertThat(fit(said("pendulum vs square")).riding()).isEmpty();
        assertThat(fit(said("triquetra vs static spin")).riding()).isEmpty();
    }

    @Test
    void aCircleIsNoLine() {
        FitReading fit = fit(said("isolation vs vertical line"));
        assertThat(fit.closes()).isFalse();
        assertThat(fit.obstacle()).isEqualTo(Obstacle.OTHER_KIND);
    }

    @Test
    void whatTheCarriersOwnSizesCloseIsSaidToHaveNothingInItsWay() {
        assertThat(fit(said("point isolation vs extension")).obstacle()).isEqualTo(Obstacle.NONE);
        assertThat(fit(said("isolation vs stall")).obstacle()).isEqualTo(Obstacle.NONE);
    }

    @Test
    void aChangeTooSlightToBeToldIsLeftOut() {
        Pairing pairing = RIDER_CIRCLE.set(said("static spin vs triquetra"), 0.6004);
        pairing = pairing.with(Timing.of(0.25));
        assertThat(fit(pairing).answers())
                .isNotEmpty()
                .allSatisfy(a -> assertThat(a.changes()).hasSize(1))
                .anySatisfy(a -> changesOnly(a, TIMING, 0.25, 0));
    }

    @Test
    void noSizeMakesOneCircleOfAFlower() {
        FitReading fit = fit(said("triquetra vs cat-eye"));
        assertThat(fit.closes()).isFalse();
        assertThat(fit.obstacle()).isEqualTo(Obstacle.OTHER_KIND);
        assertThat(fit.leastGap()).isGreaterThan(0.01);
    }

    @Test
    void aStillHandFollowsNoHeadThatGoesRound() {
        FitReading fit = fit(said("static spin vs static spin"));
        assertThat(fit.obstacle()).isEqualTo(Obstacle.HAND_STANDS_STILL);
        assertThat(fit.closes()).isFalse();
    }

    @Test
    void aCarrierIsFoundForARiderWithAPathOfTheUsersOwn() {
        // The head of a cat-eye with R = 0.55 and L = 0.35, drawn by a hand; tilted and shifted.
        Motion own = new Motion(Series.ellipse(0.9, 0.2, 0.4), new Turns(3, 0));
        Pairing pairing = rider(said("cat-eye vs triquetra"), own);
        FitReading fit = fit(pairing);
        assertThat(fit.goal()).isEqualTo(Goal.PLACED);
        assertThat(fit.answers())
                .anySatisfy(
                        a -> {
                            assertThat(a.exact()).isTrue();
                            assertThat(CARRIER_CIRCLE.read(a.pairing()).orElseThrow())
                                    .isCloseTo(0.55, within(1e-9));
                            assertThat(CARRIER_TETHER.read(a.pairing()).orElseThrow())
                                    .isCloseTo(0.35, within(1e-9));
                            touches(a);
                        });
    }

    @Test
    void aCarrierIsFoundBySearchForARiderWhosePathWasDrawn() {
        double r = 0.45;
        double c = r * 0.5522847498;
        Drawn circle =
                new Drawn(
                        List.of(
                                new Drawn.Cubic(r, 0, r, c, c, r, 0, r),
                                new Drawn.Cubic(0, r, -c, r, -r, c, -r, 0),
                                new Drawn.Cubic(-r, 0, -r, -c, -c, -r, 0, -r),
                                new Drawn.Cubic(0, -r, c, -r, r, -c, r, 0)));
        Pairing pairing =
                rider(said("static spin vs triquetra"), new Motion(circle, new Turns(-2, 0)));
        FitReading fit = Fit.of(pairing, Side.LEFT, Set.of(CARRIER_TETHER));
        assertThat(fit.answers()).hasSize(1);
        assertThat(fit.answers().get(0).exact()).isFalse();
        assertThat(fit.answers().get(0).changes().get(0).to()).isCloseTo(r, within(0.001));
        touches(fit.answers().get(0));
    }

    @Test
    void aHandAsideAndAheadIsBroughtBackByTimingAndCentre() {
        Pairing pairing = said("static spin vs triquetra").with(Timing.QUARTER);
        Place aside = pairing.right().place().withCentre(new Vector3D(0.3, 0.2, 0.26));
        pairing = pairing.with(Side.RIGHT, pairing.right().with(aside));
        Set<Size> free =
                Set.of(
                        TIMING,
                        Size.of(Side.RIGHT, Size.Kind.CENTRE_X),
                        Size.of(Side.RIGHT, Size.Kind.CENTRE_Y));
        FitReading fit = Fit.of(pairing, Side.LEFT, free);
        assertThat(fit.answers()).hasSize(1);
        assertThat(fit.answers().get(0).changes()).hasSize(3);
        touches(fit.answers().get(0));

        FitReading shape = Fit.of(pairing, Side.LEFT, free, Limits.USUAL, Goal.SHAPE);
        assertThat(shape.answers().get(0).changes()).isEmpty();
    }

    @Test
    void headAndHandThatGoRoundOppositeWaysNeverTouchAllTheWay() {
        FitReading fit = fit(said("static spin vs triquetra").with(Direction.OPPOSITE));
        assertThat(fit.closes()).isFalse();
        assertThat(fit.leastGap()).isGreaterThan(0.1);
        assertThat(fit.obstacle()).isEqualTo(Obstacle.OPPOSITE_WAYS);
    }

    @Test
    void planesThatStandAcrossEachOtherAreSaidToDiffer() {
        Pairing pairing = said("static spin vs triquetra");
        pairing =
                pairing.with(
                        Side.RIGHT, pairing.right().with(Place.usual(Side.RIGHT, Plane.WHEEL)));
        FitReading fit = fit(pairing);
        assertThat(fit.obstacle()).isEqualTo(Obstacle.PLANES_DIFFER);
        assertThat(fit.have()).isCloseTo(Math.PI / 2, within(1e-9));
    }

    @Test
    void aLimitThatAloneStandsInTheWayIsNamed() {
        Pairing pairing = said("static spin vs triquetra");
        pairing = RIDER_CIRCLE.set(pairing, 0.9);
        FitReading fit =
                Fit.of(
                        pairing,
                        Side.LEFT,
                        Set.of(CARRIER_TETHER),
                        Limits.USUAL.with(CARRIER_TETHER, 0.4, 0.8));
        assertThat(fit.closes()).isFalse();
        assertThat(fit.obstacle()).isEqualTo(Obstacle.BEYOND_A_LIMIT);
        assertThat(fit.have()).isEqualTo(0.8);
        assertThat(fit.need()).isCloseTo(0.9, within(1e-9));
        assertThat(fit.leastGap()).isCloseTo(0.1, within(0.002));
    }

    @Test
    void withNothingFreeNothingIsClaimed() {
        FitReading fit = Fit.of(said("extension vs triquetra"), Side.RIGHT, Set.of());
        assertThat(fit.closes()).isFalse();
        assertThat(fit.nearest().changes()).isEmpty();
    }

    @Test
    void theRightHandsPoiMayLead() {
        Pairing pairing = said("triquetra vs static spin").with(Timing.QUARTER);
        FitReading fit = Fit.of(pairing, Side.RIGHT, Set.of(TIMING));
        LinkReading link = LinkReading.of(Trace.of(fit.answers().get(0).pairing()), Side.RIGHT);
        assertThat(link.inPlaneGap()).isLessThan(0.001);
    }

    private static Pairing said(String phrase) {
        return Phrase.parse(phrase).pairing();
    }

    private static FitReading fit(Pairing pairing) {
        return Fit.of(pairing, Side.LEFT);
    }

    private static Pairing rider(Pairing pairing, Motion motion) {
        return pairing.with(Side.RIGHT, pairing.right().with(motion));
    }

    private static void changesOnly(Remedy answer, Size size, double from, double to) {
        assertThat(answer.changes()).hasSize(1);
        assertThat(answer.changes().get(0).size()).isEqualTo(size);
        assertThat(answer.changes().get(0).from()).isCloseTo(from, within(1e-9));
        assertThat(answer.changes().get(0).to()).isCloseTo(to, within(1e-6));
    }

    private static void touches(Remedy answer) {
        LinkReading link = LinkReading.of(Trace.of(answer.pairing()));
        assertThat(link.kind()).isEqualTo(LinkKind.TOUCHING);
        assertThat(link.inPlaneGap()).isLessThan(0.001);
        assertThat(link.inPlaneGap()).isCloseTo(answer.gapLeft(), within(1e-9));
    }
}

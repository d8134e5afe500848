package deferent.search.crossing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Stretches;
import deferent.motion.phrase.Phrase;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class CrossingsTest {
    private static Pairing said(String phrase) {
        return Phrase.parse(phrase).pairing();
    }

    private static Crossing only(Crossings crossings) {
        assertThat(crossings.list()).hasSize(1);
        return crossings.list().get(0);
    }

    @Test
    void aPairingMeetsItselfAtEveryMomentWhichIsOneCrossingForAWholeCycle() {
        Pairing triquetra = said("triquetra vs triquetra");
        Crossings crossings = Crossings.between(triquetra, triquetra);
        assertThat(crossings.list())
                .anySatisfy(
                        c -> {
                            assertThat(c.fromShare()).isCloseTo(c.toShare(), within(1e-6));
                            assertThat(c.together()).isCloseTo(1.0, within(1e-9));
                            assertThat(c.need()).isEqualTo(Need.NOTHING);
                            assertThat(c.roughness().weights()).isLessThan(1e-6);
                        });
    }

    @Test
    void anIsolationAndAStaticSpinOfTheSameTurnNeverShareTheirHands() {
        assertThat(
                        Crossings.between(
                                        said("isolation vs isolation"),
                                        said("static spin vs static spin"))
                                .list())
                .isEmpty();
    }

    // The hands of a flower and its extension agree at the petals' tips but their heads do not move
    // alike, so nothing short of a whole tolerance of speed lets one become the other.
    @Test
    void aFlowerCannotFlowIntoItsExtensionAtTheUsualTolerance() {
        assertThat(
                        Crossings.between(
                                        said("triquetra vs triquetra"),
                                        said("extension vs extension"))
                                .list())
                .isEmpty();
    }

    @Test
    void oneHandCanCrossWhileTheOtherGoesOn() {
        Pairing from = said("triquetra vs static spin");
        Pairing to = said("triquetra vs extension");
        assertThat(Crossings.between(from, to).list()).isEmpty();
        Crossings left = Crossings.between(from, to, CrossingRequest.USUAL.with(Who.LEFT));
        assertThat(left.list()).anySatisfy(c -> assertThat(c.need()).isEqualTo(Need.NOTHING));
        assertThat(left.list()).allSatisfy(c -> assertThat(c.right()).isEqualTo(Need.NOTHING));
    }

    @Test
    void aPairingCarriedAsideIsCrossedIntoOnlyWhenItMayBeShifted() {
        Pairing from = said("triquetra vs triquetra");
        Pairing aside = said("triquetra vs triquetra, centre 40 cm left");
        assertThat(Crossings.between(from, aside).list()).isEmpty();
        Freedom shift = Freedom.NONE.withShift(1);
        assertThat(Crossings.between(from, aside, CrossingRequest.USUAL.with(shift)).list())
                .anySatisfy(
                        c -> {
                            assertThat(c.adjustment().shift().getX()).isCloseTo(-0.4, within(1e-6));
                            assertThat(c.placeGap()).isLessThan(1e-6);
                            assertThat(c.to().left().place().centre().getX())
                                    .isCloseTo(0, within(1e-6));
                        });
    }

    @Test
    void aTurnedCatEyeIsCrossedIntoOnceItIsTurnedBack() {
        Pairing from = said("horizontal cat-eye vs horizontal cat-eye");
        Pairing to = said("vertical cat-eye vs vertical cat-eye");
        Freedom turn = Freedom.NONE.withTurn(Math.PI);
        Crossings crossings = Crossings.between(from, to, CrossingRequest.USUAL.with(turn));
        assertThat(crossings.list())
                .anySatisfy(
                        c -> {
                            assertThat(Math.abs(c.adjustment().turn()))
                                    .isCloseTo(Math.PI / 2, within(1e-6));
                            assertThat(c.placeGap()).isLessThan(1e-6);
                            assertThat(c.speedGap()).isLessThan(1e-5);
                            assertThat(c.together()).isCloseTo(1, within(1e-9));
                        });
    }

    @Test
    void aPairingAtAnotherTempoIsCrossedIntoOnceItIsRetimed() {
        Pairing from = said("triquetra vs triquetra, tempo 60");
        Pairing to = said("triquetra vs triquetra, tempo 90");
        assertThat(Crossings.between(from, to).list()).isEmpty();
        Freedom tempo = Freedom.NONE.withTempo(2);
        assertThat(Crossings.between(from, to, CrossingRequest.USUAL.with(tempo)).list())
                .anySatisfy(
                        c -> {
                            assertThat(c.need()).isEqualTo(Need.TEMPO);
                            assertThat(c.adjustment().tempo()).isCloseTo(2.0 / 3, within(1e-6));
                            assertThat(c.to().tempo()).isCloseTo(60, within(1e-4));
                            assertThat(c.speedGap()).isLessThan(1e-4);
                        });
    }

    @Test
    void thePairingThatGoesTheOtherWayRoundIsCrossedIntoOnceItIsMirrored() {
        Pairing from = said("triquetra vs triquetra, clockwise");
        Pairing to = said("triquetra vs triquetra, counter-clockwise");
        assertThat(Crossings.between(from, to).list()).noneMatch(c -> c.together() > 0.9);
        Freedom mirror = Freedom.NONE.withMirror(true);
        assertThat(Crossings.between(from, to, CrossingRequest.USUAL.with(mirror)).list())
                .anyMatch(c -> c.adjustment().mirrored() && c.together() > 0.99);
    }

    @Test
    void togetherBecomesSplitByAChangeOfTiming() {
        Pairing from = said("isolation vs isolation, together");
        Pairing to = said("isolation vs isolation, split time");
        assertThat(Crossings.between(from, to).list()).isEmpty();
        Freedom timing = Freedom.NONE.withTiming(true);
        Crossing c = only(Crossings.between(from, to, CrossingRequest.USUAL.with(timing)));
        assertThat(c.need()).isEqualTo(Need.TIMING);
        assertThat(Math.abs(c.adjustment().timing())).isCloseTo(0.5, within(1e-6));
        assertThat(c.to().timing().ahead()).isCloseTo(0, within(1e-6));
        assertThat(c.placeGap()).isLessThan(1e-6);
    }

    @Test
    void theDirectionAndTimingOfThePropsAreReadAtTheCrossing() {
        Pairing split = said("static spin vs static spin, split time, same direction");
        Crossing c = Crossings.between(split, split).smoothest().orElseThrow();
        assertThat(c.before().direction()).contains(Direction.SAME);
        assertThat(c.before().ahead()).isCloseTo(0.5, within(1e-9));
        Pairing opposite = said("static spin vs static spin, together, opposite direction");
        Crossing o = Crossings.between(opposite, opposite).smoothest().orElseThrow();
        assertThat(o.before().direction()).contains(Direction.OPPOSITE);
        assertThat(Math.abs(Math.IEEEremainder(o.before().ahead(), 1))).isLessThan(1e-9);
    }

    private static Pairing stretches(double... turns) {
        List<Stretches.Stretch> list = new ArrayList<>();
        for (double t : turns) {
            list.add(new Stretches.Stretch(1.0 / turns.length, t, Stretches.Ease.RESTING));
        }
        Motion motion = new Motion(Series.STILL, new Stretches(0, list));
        return PathCrossingsTest.both(motion, 0.6, 0);
    }

    // One poi goes half round and back, the other half round and half round again: they go together
    // until both stand, and then the one turns the other way.
    @Test
    void whereAPoiStallsItMayGoOnTheOtherWay() {
        Crossings crossings = Crossings.between(stretches(0.5, -0.5), stretches(0.5, 0.5));
        assertThat(crossings.list())
                .anySatisfy(
                        c -> {
                            assertThat(c.left()).isEqualTo(Need.SPIN_REVERSAL);
                            assertThat(c.placeGap()).isLessThan(1e-6);
                            assertThat(c.together()).isBetween(0.5, 0.9);
                        });
    }

    // A still hand, and a hand on a circle of 15 cm that passes through the same place at 0.94 m/s:
    // the pois turn alike.
    @Test
    void fromAStillHandToACirclingOneThePoiTurnsOn() {
        Crossings crossings =
                Crossings.between(
                        PathCrossingsTest.both(Motion.staticSpin(1, 0), 0.6, 0),
                        PathCrossingsTest.both(Motion.flower(0.15, 1, 0), 0.6, -0.15));
        Crossing c = only(crossings);
        assertThat(c.need()).isEqualTo(Need.HAND_PATH);
        assertThat(c.fromShare()).isCloseTo(0, within(0.03));
        assertThat(c.speedGap()).isCloseTo(2 * Math.PI * 0.15, within(0.01));
    }

    @Test
    void aPendulumPassesThroughItsLowestPointBothWays() {
        Pairing pendulum = said("pendulum vs pendulum");
        assertThat(Crossings.between(pendulum, pendulum).list())
                .anyMatch(c -> c.need() == Need.NOTHING && c.together() > 0.9 * pendulum.period());
    }

    @Test
    void aShiftIsNeverLongerThanAllowed() {
        Pairing from = said("triquetra vs triquetra");
        Pairing aside = said("triquetra vs triquetra, centre 20 cm left");
        CrossingRequest request =
                CrossingRequest.USUAL.with(Freedom.NONE.withShift(0.15)).withTolerance(0.06, 1);
        assertThat(Crossings.between(from, aside, request).list())
                .isNotEmpty()
                .allSatisfy(
                        c -> {
                            Vector3D shift = c.adjustment().shift();
                            assertThat(shift.getNorm()).isLessThanOrEqualTo(0.15 + 1e-12);
                        });
    }
}

package deferent.motion.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Turns;
import deferent.motion.pairing.Weave;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Patterns that pass from one side of the body to the other, against the counts that spinners keep
 * (common practice, no source).
 */
class WeaveTest {
    private static Trace trace(String phrase) {
        return Trace.of(Phrase.parse(phrase).pairing());
    }

    private static Vector3D tether(Trace trace, Side side, double time) {
        return trace.head(side).position(time).subtract(trace.hand(side).position(time));
    }

    /**
     * One letter a turn of the poi, from the moment at which it points straight at the audience: o
     * where its hand is on its own side when it points straight back, x where it is across.
     */
    private static String sides(Trace trace, Side side) {
        StringBuilder all = new StringBuilder();
        int steps = 4000;
        Vector3D before = tether(trace, side, -trace.period() / steps);
        for (int i = 0; i < steps; i++) {
            double time = trace.period() * i / steps;
            Vector3D here = tether(trace, side, time);
            boolean pointsBack = here.getZ() < 0 && before.getY() * here.getY() <= 0;
            if (pointsBack && here.getY() != before.getY()) {
                double x = trace.hand(side).position(time).getX();
                all.append(x > 0 == (side == Side.LEFT) ? 'o' : 'x');
            }
            before = here;
        }
        return all.toString();
    }

    private static boolean same(String found, String turns) {
        return found.length() == turns.length() && (turns + turns).contains(found);
    }

    @ParameterizedTest
    @CsvSource({
        "two-beat weave, ox",
        "three-beat weave, oxx",
        "five-beat weave, ooxxx",
        "crosser, ox"
    })
    void eachPoiTurnsSoOftenOnItsOwnSideAndAcross(String word, String turns) {
        Trace trace = trace(word);
        for (Side side : Side.values()) {
            assertThat(sides(trace, side)).matches(found -> same(found, turns), turns);
        }
        Trace reversed = trace(word + ", reversed");
        for (Side side : Side.values()) {
            assertThat(sides(reversed, side)).matches(found -> same(found, turns), turns);
        }
    }

    @Test
    void aWeaveGoesForwardOverTheTopAndItsReverseBack() {
        assertThat(atTheTop(trace("three-beat weave")).getZ()).isPositive();
        assertThat(atTheTop(trace("three-beat weave, reversed")).getZ()).isNegative();
    }

    private static Vector3D atTheTop(Trace trace) {
        double best = 0;
        for (int i = 0; i < 3000; i++) {
            double time = trace.period() * i / 3000;
            if (tether(trace, Side.LEFT, time).getY() > tether(trace, Side.LEFT, best).getY()) {
                best = time;
            }
        }
        return trace.head(Side.LEFT)
                .at(best)
                .velocity()
                .subtract(trace.hand(Side.LEFT).at(best).velocity());
    }

    @ParameterizedTest
    @ValueSource(strings = {"two-beat weave", "three-beat weave", "five-beat weave"})
    void inAWeaveTheTwoPoiAreHalfATurnApart(String word) {
        Trace trace = trace(word);
        for (int i = 0; i < 50; i++) {
            double time = trace.period() * i / 50;
            assertThat(
                            tether(trace, Side.LEFT, time)
                                    .add(tether(trace, Side.RIGHT, time))
                                    .getNorm())
                    .isLessThan(1e-9);
        }
    }

    @Test
    void aHandPassesBeforeTheBodyOnlyWhilePointingAwayFromIt() {
        Trace trace = trace("five-beat weave");
        for (int i = 0; i < 2000; i++) {
            double time = trace.period() * i / 2000;
            double x = trace.hand(Side.LEFT).position(time).getX();
            // Before the breast: half way to the shoulders of a stature of 1.70 m, 0.129 of it out.
            if (Math.abs(x) < 0.129 * 1.70 / 2) {
                assertThat(tether(trace, Side.LEFT, time).getZ()).isPositive();
            }
        }
    }

    @Test
    void aButterflyIsTwoWheelsAgainstEachOtherThatMeetAtTheTopAndAtTheBottom() {
        Trace trace = trace("butterfly");
        double apart =
                trace.hand(Side.LEFT).position(0).distance(trace.hand(Side.RIGHT).position(0));
        assertThat(apart).isCloseTo(Place.HAND_BREADTH, within(1e-9));
        int meetings = 0;
        double before = 0;
        for (int i = 0; i <= 400; i++) {
            double time = trace.period() * (i + 0.5) / 400;
            Vector3D left = tether(trace, Side.LEFT, time);
            Vector3D right = tether(trace, Side.RIGHT, time);
            assertThat(left.getX() + right.getX()).isCloseTo(0, within(1e-9));
            assertThat(left.getY()).isCloseTo(right.getY(), within(1e-9));
            if (i > 0 && left.getX() * before < 0) {
                meetings++;
                assertThat(Math.abs(left.getY())).isCloseTo(0.6, within(1e-3));
            }
            before = left.getX();
        }
        assertThat(meetings).isEqualTo(2);
    }

    @Test
    void aWindmillPassesOverTheHeadFromBeforeTheBodyToBehindIt() {
        Trace trace = trace("windmill");
        double least = 1;
        double most = -1;
        for (int i = 0; i < 400; i++) {
            Vector3D hand = trace.hand(Side.RIGHT).position(trace.period() * i / 400);
            least = Math.min(least, hand.getZ());
            most = Math.max(most, hand.getZ());
            // The crown of a stature of 1.70 m, 0.28 of it above the breastbone.
            assertThat(hand.getY()).isGreaterThan(0.28 * 1.70);
        }
        assertThat(most).isGreaterThan(0.15);
        assertThat(least).isLessThan(-0.35);
    }

    @Test
    void inAFountainWhatWentForwardGoesInReverseOnceTheBodyHasTurned() {
        Trace trace = trace("fountain");
        Trace around = trace.aroundBody(new BodyAxis(0.1));
        // Two turns a quarter: at the end of each the body faces one way for a quarter of the
        // cycle.
        Vector3D facing = momentum(around, 0.1 * trace.period());
        Vector3D turned = momentum(around, 0.6 * trace.period());
        assertThat(facing.getX() * turned.getX()).isNegative();
        assertThat(momentum(trace, 0.1 * trace.period()).getX())
                .isCloseTo(momentum(trace, 0.6 * trace.period()).getX(), within(1e-9));
    }

    private static Vector3D momentum(Trace trace, double time) {
        State hand = trace.hand(Side.LEFT).at(time);
        State head = trace.head(Side.LEFT).at(time);
        return head.position()
                .subtract(hand.position())
                .crossProduct(head.velocity().subtract(hand.velocity()));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "three-beat weave",
                "five-beat weave, reversed",
                "windmill",
                "corkscrew, reversed",
                "crosser"
            })
    void derivativesAreThoseOfThePlaces(String phrase) {
        Trace trace = trace(phrase);
        double h = 1e-4;
        for (int i = 0; i < 40; i++) {
            double time = trace.period() * (i + 0.3) / 40;
            Course head = trace.head(Side.RIGHT);
            State here = head.at(time);
            State a = head.at(time - h);
            State b = head.at(time + h);
            assertThat(b.position().subtract(a.position()).scalarMultiply(0.5 / h))
                    .matches(v -> v.distance(here.velocity()) < 1e-3, "" + here.velocity());
            assertThat(b.velocity().subtract(a.velocity()).scalarMultiply(0.5 / h))
                    .matches(v -> v.distance(here.acceleration()) < 0.05, "acceleration");
            assertThat(b.acceleration().subtract(a.acceleration()).scalarMultiply(0.5 / h))
                    .matches(v -> v.distance(here.jerk()) < 3, "jerk");
            assertThat(head.position(time)).isEqualTo(here.position());
        }
    }

    /** A passage is all of a beat; one cut short would jump by a millimetre at its ends. */
    @Test
    void aPlaneNeverJumps() {
        Weave weave = new Weave(Weave.Between.LEFT_AND_RIGHT, 2, 3, 0.28);
        int steps = 50_000;
        for (int i = 0; i < steps; i++) {
            double here = weave.toOwn((double) i / steps).value();
            double next = weave.toOwn((i + 1.0) / steps).value();
            double most = 0.28 * 2 * 630.0 / 256 * weave.beats() / steps;
            assertThat(Math.abs(next - here)).isLessThanOrEqualTo(most * 1.001);
        }
    }

    @Test
    void aWeaveIsItsOwnImageInAMirrorHalfACycleLater() {
        Pairing weave = Phrase.parse("three-beat weave").pairing();
        assertThat(Phrase.parse("three-beat weave, mirrored").pairing()).isEqualTo(weave);
    }

    @Test
    void aPoiThatDoesNotTurnOnceABeatIsRefused() {
        Weave weave = new Weave(Weave.Between.LEFT_AND_RIGHT, 1, 2, 0.28);
        assertThatThrownBy(() -> new Motion(Series.STILL, new Turns(2, 0), Optional.of(weave)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("3 turns a cycle");
        assertThatThrownBy(() -> new Weave(Weave.Between.LEFT_AND_RIGHT, 0, 2, 0.28))
                .isInstanceOf(Refusal.class);
    }
}

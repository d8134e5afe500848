package deferent.motion.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What spinners mean by a CAP. Common practice, no source. */
class CapTest {
    private static final double TETHER = 0.6;

    private static Pairing said(String cap) {
        return Phrase.parse(cap + " vs static spin").pairing();
    }

    private static double share(Pairing pairing) {
        return pairing.left().motion().path().arc().orElseThrow().out();
    }

    /** What the mirror on the plumb line through the hand's centre shows of a place. */
    private static Vector3D mirrored(Vector3D place, Vector3D centre) {
        return new Vector3D(2 * centre.getX() - place.getX(), place.getY(), place.getZ());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "CAP",
                "CAP with 3 petals",
                "CAP with 5 petals",
                "CAP with 12 petals",
                "cat-eye CAP",
                "CAP turns 3",
                "CAP turns -2",
                "CAP turns 1.5 out 0.5 back",
                "CAP sweep 50°"
            })
    void itsFigureIsItsOwnMirrorImage(String cap) {
        Pairing pairing = said(cap);
        Trace trace = Trace.of(pairing);
        Vector3D centre = pairing.left().place().centre();
        double middle = share(pairing) / 2 * trace.period();
        for (double off = 0; off < trace.period(); off += 0.0173) {
            Vector3D before = trace.head(Side.LEFT).position(middle - off);
            Vector3D after = trace.head(Side.LEFT).position(middle + off);
            assertThat(mirrored(before, centre).distance(after)).isLessThan(1e-12);
        }
    }

    @Test
    void onAPendulumTooAndHangsStraightDownInMidSwing() {
        for (String cap : new String[] {"CAP", "cat-eye CAP"}) {
            Pairing pairing = Phrase.parse(cap + " riding pendulum").pairing();
            Trace trace = Trace.of(pairing);
            Vector3D centre = pairing.left().place().centre();
            double middle = trace.period() / 4;
            assertThat(trace.head(Side.LEFT).position(middle).getY())
                    .as("head under a hand that hangs")
                    .isCloseTo(centre.getY() - 2 * TETHER, within(1e-12));
            for (double off = 0; off < trace.period(); off += 0.0173) {
                Vector3D before = trace.head(Side.LEFT).position(middle - off);
                Vector3D after = trace.head(Side.LEFT).position(middle + off);
                assertThat(mirrored(before, centre).distance(after)).isLessThan(1e-12);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"2", "3", "4", "5", "8", "25"})
    void ofItsTwoTurnsTwoOverItsPetalsGoWithTheHandAndTheRestAgainstIt(int petals) {
        Pairing pairing = said("CAP with " + petals + " petals");
        Trace trace = Trace.of(pairing);
        Vector3D centre = pairing.left().place().centre();
        double wayOut = trace.period() / petals;
        int most = 2000;
        double sweptOut = 0;
        double sweptBack = 0;
        for (int i = 0; i < most; i++) {
            double from = trace.period() * i / most;
            double by = swept(trace, centre, from, from + trace.period() / most);
            if (from + trace.period() / most <= wayOut + 1e-12) {
                assertThat(by).as("goes out at %s s", from).isPositive();
                sweptOut += by;
            } else if (from >= wayOut - 1e-12) {
                assertThat(by).as("comes back at %s s", from).isNegative();
                sweptBack -= by;
            } else {
                sweptOut += Math.abs(by) / 2;
                sweptBack += Math.abs(by) / 2;
            }
        }
        assertThat(sweptOut).isCloseTo(4 * Math.PI / petals, within(2e-4));
        assertThat(sweptBack).isCloseTo(sweptOut, within(4e-4));
        Motion motion = pairing.left().motion();
        double turnedOut =
                motion.spin().course().angle(1.0 / petals) - motion.spin().course().angle(0);
        assertThat(turnedOut).isCloseTo(4 * Math.PI / petals, within(1e-12));
    }

    private static double swept(Trace trace, Vector3D centre, double from, double to) {
        Vector3D a = trace.hand(Side.LEFT).position(from).subtract(centre);
        Vector3D b = trace.hand(Side.LEFT).position(to).subtract(centre);
        return Math.atan2(a.crossProduct(b).getZ(), a.dotProduct(b));
    }

    @ParameterizedTest
    @CsvSource({
        "CAP, 1, 1, 1, 1",
        "CAP with 3 petals, 1, 1, 1, 1",
        "CAP with 7 petals, 1, 1, 1, 1",
        "cat-eye CAP, 1, 1, 1, -1"
    })
    void theTetherPointsStraightAwayFromTheCentre(
            String cap, double first, double out, double last, double back) {
        Pairing pairing = said(cap);
        double share = share(pairing);
        Trace trace = Trace.of(pairing);
        double[] phases = {0, share / 2, share, (1 + share) / 2};
        double[] ways = {first, out, last, back};
        for (int i = 0; i < phases.length; i++) {
            double time = phases[i] * trace.period();
            Vector3D hand = trace.hand(Side.LEFT).position(time);
            Vector3D away = hand.subtract(pairing.left().place().centre()).normalize();
            Vector3D tether = trace.head(Side.LEFT).position(time).subtract(hand);
            assertThat(tether.dotProduct(away))
                    .as("of its cycle %s", phases[i])
                    .isCloseTo(ways[i] * TETHER, within(1e-9));
        }
    }

    /** Two raised cosines joined would jump by 13 g, at 60 a minute, at either end. */
    @Test
    void theHandsAccelerationNeverJumps() {
        Trace trace = Trace.of(said("CAP"));
        assertThat(trace.breaks()).isEmpty();
        for (double end : new double[] {0, 0.25}) {
            Vector3D before = trace.hand(Side.LEFT).at(end - 1e-7).acceleration();
            Vector3D after = trace.hand(Side.LEFT).at(end + 1e-7).acceleration();
            assertThat(before.distance(after)).isLessThan(1e-3);
            assertThat(trace.hand(Side.LEFT).at(end).velocity().getNorm()).isLessThan(1e-12);
        }
    }

    /** Exact derivatives against differences of the places. */
    @Test
    void theHandsSpeedAccelerationAndJerkAreThoseOfItsPlaces() {
        Trace trace = Trace.of(said("CAP with 5 petals"));
        double h = 1e-4;
        for (double time = 0; time < 1; time += 0.0371) {
            State at = trace.hand(Side.LEFT).at(time);
            State before = trace.hand(Side.LEFT).at(time - h);
            State after = trace.hand(Side.LEFT).at(time + h);
            assertSlope(before.position(), after.position(), at.velocity(), h);
            assertSlope(before.velocity(), after.velocity(), at.acceleration(), h);
            assertSlope(before.acceleration(), after.acceleration(), at.jerk(), h);
        }
    }

    private static void assertSlope(Vector3D before, Vector3D after, Vector3D slope, double h) {
        Vector3D found = after.subtract(before).scalarMultiply(1 / (2 * h));
        assertThat(found.distance(slope)).isLessThan(1e-3 * (1 + slope.getNorm()));
    }
}

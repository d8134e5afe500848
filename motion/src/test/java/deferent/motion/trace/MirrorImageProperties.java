package deferent.motion.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import deferent.motion.pairing.AnyPairing;
import deferent.motion.pairing.MirrorImage;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.shared.Side;
import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** The mirror image of a pairing is the mirror image of its trace. */
class MirrorImageProperties {
    private static final int MOMENTS = 24;

    @Property(tries = 300)
    void eachHandIsWhereTheOtherWasOnTheOtherSideOfTheBody(Any any) {
        Pairing pairing = any.from(AnyPairing::of);
        countable(pairing);
        Trace trace = Trace.of(pairing);
        Trace image = Trace.of(MirrorImage.of(pairing));
        assertThat(image.period()).isCloseTo(trace.period(), within(1e-12 * trace.period()));
        double later = -pairing.timing().ahead() * trace.period() / pairing.right().cycles();
        for (int i = 0; i < MOMENTS; i++) {
            // Off the evenly spaced moments, at which hands may turn a corner.
            double time = trace.period() * (i + 0.2371) / MOMENTS;
            for (Side side : Side.values()) {
                assertMirrored(
                        image.hand(side).position(time),
                        trace.hand(side.other()).position(time + later));
                assertMirrored(
                        image.head(side).position(time),
                        trace.head(side.other()).position(time + later));
            }
        }
    }

    @Property(tries = 300)
    void theImageOfTheImageIsThePairingItself(Any any) {
        Pairing pairing = any.from(AnyPairing::of);
        countable(pairing);
        Pairing twice = MirrorImage.of(MirrorImage.of(pairing));
        assertThat(twice.left()).isEqualTo(pairing.left());
        assertThat(twice.right()).isEqualTo(pairing.right());
        assertThat(twice.direction()).isEqualTo(pairing.direction());
        assertThat(twice.sense()).isEqualTo(pairing.sense());
        assertThat(twice.period()).isCloseTo(pairing.period(), within(1e-12 * pairing.period()));
    }

    /** Where only pois count, the image counts the other one, which may turn too often a minute. */
    private static void countable(Pairing pairing) {
        double beats = beats(pairing.right()) * 60 / pairing.period();
        assumeTrue(!(pairing.left().still() && pairing.right().still()) || beats <= 600);
    }

    private static double beats(Part part) {
        return part.cycles() * Math.max(1, Math.abs(part.motion().spin().turns()));
    }

    private static void assertMirrored(Vector3D image, Vector3D point) {
        Vector3D expected = new Vector3D(-point.getX(), point.getY(), point.getZ());
        assertThat(image.distance(expected)).isLessThan(1e-9);
    }
}

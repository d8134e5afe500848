package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Timing;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class ChangeTest {
    private static final String[] PHRASES = {
        "isolation vs triquetra, split time",
        "static spin vs four-petal antispin, quarter time, opposite direction",
        "horizontal cat-eye vs CAP, counter-clockwise",
        "CAP riding pendulum"
    };

    @Test
    void swappingHandsTwiceChangesNothing() {
        for (String phrase : PHRASES) {
            Pairing pairing = Phrase.parse(phrase).pairing();
            Pairing back = Change.Key.SWAP.applied(Change.Key.SWAP.applied(pairing));
            assertThat(back).as(phrase).isEqualTo(pairing);
        }
    }

    @Test
    void afterASwapEachHandDoesWhatTheOtherDidInItsOwnPlane() {
        Pairing pairing = Phrase.parse(PHRASES[1]).pairing();
        Pairing swapped = Change.Key.SWAP.applied(pairing);
        Trace before = Trace.of(pairing);
        Trace after = Trace.of(swapped);
        double late = pairing.period() * pairing.timing().ahead();
        for (int i = 0; i < 20; i++) {
            double time = pairing.period() * i / 20;
            // The cycle now starts where the new left hand's starts.
            Vector3D was = before.head(Side.RIGHT).at(time - late).position();
            Vector3D is = after.head(Side.LEFT).at(time).position();
            assertThat(Math.hypot(was.getX() - is.getX(), was.getY() - is.getY())).isLessThan(1e-9);
            Vector3D wasLeft = before.head(Side.LEFT).at(time - late).position();
            Vector3D isRight = after.head(Side.RIGHT).at(time).position();
            assertThat(Math.hypot(wasLeft.getX() - isRight.getX(), wasLeft.getY() - isRight.getY()))
                    .isLessThan(1e-9);
        }
        assertThat(swapped.left().place().centre()).isEqualTo(pairing.left().place().centre());
    }

    @Test
    void reversingTwiceChangesNothingAndOnceMirrorsTheFigure() {
        Pairing pairing = Phrase.parse("isolation vs triquetra").pairing();
        Pairing reversed = Change.Key.REVERSE.applied(pairing);
        assertThat(Change.Key.REVERSE.applied(reversed)).isEqualTo(pairing);
        Vector3D head = Trace.of(pairing).head(Side.RIGHT).at(0.21).position();
        Vector3D mirrored = Trace.of(reversed).head(Side.RIGHT).at(0.21).position();
        assertThat(mirrored.getX()).isEqualTo(-head.getX());
        assertThat(mirrored.getY()).isEqualTo(head.getY());
    }

    @Test
    void fourStepsOfTimingAndTwoOfDirectionComeRound() {
        Pairing pairing = Phrase.parse("isolation vs triquetra").pairing();
        Pairing stepped = Change.Key.STEP_TIMING.applied(pairing);
        assertThat(stepped.timing()).isEqualTo(Timing.QUARTER);
        for (int i = 0; i < 3; i++) {
            stepped = Change.Key.STEP_TIMING.applied(stepped);
        }
        assertThat(stepped).isEqualTo(pairing);
        Pairing opposite = Change.Key.STEP_DIRECTION.applied(pairing);
        assertThat(opposite.direction()).isEqualTo(Direction.OPPOSITE);
        assertThat(Change.Key.STEP_DIRECTION.applied(opposite)).isEqualTo(pairing);
    }
}

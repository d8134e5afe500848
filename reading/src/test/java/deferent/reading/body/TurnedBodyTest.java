package deferent.reading.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Facing;
import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Heading;
import deferent.motion.trace.Trace;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** The body that turns: what it reaches, what comes near it, and how it is drawn. */
class TurnedBodyTest {
    private static final Performer PERFORMER = Performer.of(1.70);
    private static final Facing AWAY = new Facing(2, List.of());
    private static final Facing THERE_AND_BACK =
            Facing.of(new Facing.Turn(0.2, 0.2, 2), new Facing.Turn(0.7, 0.2, -2));

    private static Pairing pairing() {
        return Phrase.parse("isolation vs isolation, 40 cm tether").pairing();
    }

    private static Trace turned(Facing facing) {
        Trace trace = Trace.of(pairing());
        return trace.turnedBy(Heading.of(facing, trace.period()), PERFORMER.axis());
    }

    @Test
    void aTurnedBodyReachesWhatItReachedBefore() {
        Reach before = Reach.of(Trace.of(pairing()), PERFORMER);
        Reach after = Reach.of(turned(THERE_AND_BACK), PERFORMER);
        for (Side side : Side.values()) {
            assertThat(after.hand(side).farthest())
                    .isCloseTo(before.hand(side).farthest(), within(1e-9));
            assertThat(after.hand(side).nearest())
                    .isCloseTo(before.hand(side).nearest(), within(1e-9));
        }
        assertThat(after.turned().tooFar()).isCloseTo(before.turned().tooFar(), within(1e-6));
    }

    @Test
    void whatKeepsClearOfTheBodyKeepsClearOfItTurned() {
        Room before = Room.of(Trace.of(pairing()), PERFORMER);
        Room after = Room.of(turned(THERE_AND_BACK), PERFORMER);
        assertThat(after.left().tetherToBody().distance())
                .isCloseTo(before.left().tetherToBody().distance(), within(1e-9));
        assertThat(after.headToHead().distance())
                .isCloseTo(before.headToHead().distance(), within(1e-9));
    }

    @Test
    void whoTurnsAQuarterToTheLeftTakesTheLeftShoulderAwayFromItsHand() {
        Reach ahead = Reach.of(Trace.of(pairing()), PERFORMER);
        Facing left = new Facing(1, List.of());
        Reach turned = Reach.of(Trace.of(pairing().with(left)), PERFORMER);
        assertThat(turned.left().farthest()).isGreaterThan(ahead.left().farthest() + 0.05);
        assertThat(turned.right().farthest()).isLessThan(ahead.right().farthest() - 0.05);
    }

    @Test
    void theDrawnBodyTurnsWithItsHandsAndItsToesPointAway() {
        Trace trace = turned(AWAY);
        PoseOver pose = PoseOver.of(trace, Reach.of(trace, PERFORMER));
        for (int i = 0; i < pose.count(); i += 7) {
            Vector3D hand = trace.hand(Side.LEFT).position(pose.time(i));
            assertThat(pose.grip(Side.LEFT, i).distance(hand)).isLessThan(2e-3);
            assertThat(pose.shoulder(Side.LEFT, i).getX()).isNegative();
        }
        double farthest = farthestTowardTheAudience(Person.of(pose));
        Trace ahead = Trace.of(pairing());
        double before =
                farthestTowardTheAudience(
                        Person.of(PoseOver.of(ahead, Reach.of(ahead, PERFORMER))));
        assertThat(farthest).isLessThan(before - 0.05);
    }

    /** Of what is low: toes, heels, ankles. */
    private static double farthestTowardTheAudience(Person person) {
        return person.balls().stream()
                .map(ball -> ball.at(0))
                .filter(at -> at.getY() < PERFORMER.ground() + 0.2)
                .mapToDouble(Vector3D::getZ)
                .max()
                .orElseThrow();
    }

    @Test
    void theRadiusThatAHandReachesIsThatOfItsWorstMoment() {
        Trace ahead = Trace.of(pairing());
        Trace under = Trace.of(pairing().with(THERE_AND_BACK));
        double before = Reach.of(ahead, PERFORMER).left().largestRadius().orElseThrow();
        assertThat(Reach.of(under, PERFORMER).left().largestRadius().orElse(0)).isLessThan(before);
    }
}

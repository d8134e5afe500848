package deferent.motion.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.AnyPairing;
import deferent.motion.pairing.Facing;
import deferent.motion.pairing.MirrorImage;
import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** What the body's turn makes of a trace, and a trace of the body's turn. */
class TurnedTraceTest {
    private static final BodyAxis AXIS = new BodyAxis(0.1);
    private static final Facing BACK_AT_HALF =
            Facing.of(new Facing.Turn(0.2, 0.2, 2), new Facing.Turn(0.7, 0.2, -2));

    private static Pairing windmill() {
        return Phrase.parse("static spin vs static spin, split time").pairing();
    }

    private static Heading quarterLeft() {
        return Heading.of(new Facing(1, List.of()), 1);
    }

    @Test
    void aQuarterTurnToTheLeftBringsTheWallPlaneToTheSide() {
        Trace trace = Trace.of(windmill());
        Trace turned = trace.turnedBy(quarterLeft(), AXIS);
        for (double time = 0; time < trace.period(); time += 0.07) {
            Vector3D before = trace.head(Side.LEFT).position(time);
            Vector3D after = turned.head(Side.LEFT).position(time);
            // To the performer's left of the axis by as much as it was before it.
            assertThat(after.getX()).isCloseTo(before.getZ() + 0.1, within(1e-12));
            assertThat(after.getZ()).isCloseTo(-before.getX() - 0.1, within(1e-12));
            assertThat(after.getY()).isEqualTo(before.getY());
        }
    }

    @Test
    void whatTurnsWithTheBodyKeepsStillForIt() {
        Trace trace = Trace.of(windmill());
        Heading heading = Heading.of(BACK_AT_HALF, trace.period());
        Trace around = trace.turnedBy(heading, AXIS).aroundBody(AXIS);
        assertThat(around.turned()).isFalse();
        for (double time = 0; time < trace.period(); time += 0.03) {
            State is = around.head(Side.RIGHT).at(time);
            State was = trace.head(Side.RIGHT).at(time);
            assertThat(is.position().distance(was.position())).isLessThan(1e-12);
            assertThat(is.velocity().distance(was.velocity())).isLessThan(1e-11);
            assertThat(is.acceleration().distance(was.acceleration())).isLessThan(1e-9);
        }
    }

    @Test
    void aPoiThatGoesRoundForwardOnTheWheelGoesRoundInReverseForWhoHasTurnedHalfATurn() {
        Pairing forward = Phrase.parse("static spin vs static spin, wheel plane").pairing();
        Pairing fountain = forward.with(BACK_AT_HALF);
        Trace room = Trace.of(fountain);
        Trace body = room.aroundBody(AXIS);
        double before = 0.1 * room.period();
        double away = 0.5 * room.period();
        assertThat(aboutX(body, away) * aboutX(room, away)).isNegative();
        assertThat(aboutX(body, before)).isCloseTo(aboutX(room, before), within(1e-12));
        assertThat(aboutX(room, before) * aboutX(room, away)).isPositive();
    }

    /** Which way the poi goes round as seen along x. */
    private static double aboutX(Trace trace, double time) {
        State head = trace.head(Side.LEFT).at(time);
        State hand = trace.hand(Side.LEFT).at(time);
        return Vector3D.crossProduct(
                        head.position().subtract(hand.position()),
                        head.velocity().subtract(hand.velocity()))
                .getX();
    }

    @Test
    void whereNobodyTurnsTheBodysTraceIsTheTraceItself() {
        Trace trace = Trace.of(windmill());
        assertThat(trace.aroundBody(AXIS)).isSameAs(trace);
        assertThat(trace.turnedBy(Heading.AHEAD, AXIS)).isSameAs(trace);
        assertThat(Trace.of(windmill().with(BACK_AT_HALF)).turned()).isTrue();
    }

    @Property(tries = 40)
    void theMirrorImageOfATurningBodyIsSeenInTheMirror(Any any) {
        Pairing pairing = any.from(AnyPairing::of).with(AnyPairing.facing(any));
        // Where only pois count, the image counts the other one, which may turn too often.
        if (pairing.left().still() && pairing.right().still()) {
            return;
        }
        Trace trace = Trace.of(pairing);
        Trace image = Trace.of(MirrorImage.of(pairing));
        double later = -pairing.timing().ahead() / pairing.right().cycles() * trace.period();
        double time = any.number(0, 1) * trace.period();
        double apart = image.heading(time).value() + trace.heading(time + later).value();
        assertThat(Math.IEEEremainder(apart, 2 * Math.PI)).isCloseTo(0, within(1e-7));
    }
}

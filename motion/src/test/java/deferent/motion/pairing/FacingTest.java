package deferent.motion.pairing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Facing.Turn;
import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The performer's body turns by quarters, at shares of the cycle. */
class FacingTest {
    private static final Facing THERE_AND_BACK =
            Facing.of(new Turn(0.25, 0.1, 2), new Turn(0.75, 0.1, -2));
    private static final Facing ON_ROUND =
            Facing.of(new Turn(0.25, 0.1, 2), new Turn(0.95, 0.1, 2));

    @Test
    void whoTurnsHalfATurnFacesAwayUntilItIsTurnedBack() {
        assertThat(THERE_AND_BACK.at(0.2).value()).isZero();
        assertThat(THERE_AND_BACK.at(0.3).value()).isCloseTo(Math.PI / 2, within(1e-12));
        assertThat(THERE_AND_BACK.at(0.5)).isEqualTo(Jet.constant(Math.PI));
        assertThat(THERE_AND_BACK.at(0.9).value()).isZero();
        assertThat(THERE_AND_BACK.at(7.5).value()).isEqualTo(Math.PI);
    }

    @Test
    void whoTurnsOnRoundHasTurnedOnceMoreEachCycle() {
        assertThat(ON_ROUND.at(1.2).value()).isCloseTo(2 * Math.PI, within(1e-12));
        assertThat(ON_ROUND.at(3.5).value()).isCloseTo(7 * Math.PI, within(1e-12));
    }

    @Test
    void aTurnThatLastsIntoTheNextCycleDoesNotJumpThere() {
        assertThat(ON_ROUND.at(1).value()).isCloseTo(1.5 * Math.PI, within(1e-12));
        assertThat(ON_ROUND.at(Math.nextDown(1.0)).value()).isCloseTo(1.5 * Math.PI, within(1e-9));
        assertThat(ON_ROUND.at(0).value()).isCloseTo(-Math.PI / 2, within(1e-12));
    }

    @Test
    void aTurnBeginsAndEndsWithoutAJerk() {
        for (double edge : new double[] {0.25, 0.35, 0.75, 0.85}) {
            Jet inside = THERE_AND_BACK.at(edge + (edge % 0.5 < 0.3 ? 1e-6 : -1e-6));
            assertThat(inside.d1()).isCloseTo(0, within(1e-12));
            assertThat(inside.d2()).isCloseTo(0, within(1e-7));
            assertThat(inside.d3()).isCloseTo(0, within(0.2));
        }
    }

    @Test
    void whoHasNotTurnedRoundWhenTheCycleIsOverIsRefused() {
        assertThatThrownBy(() -> Facing.of(new Turn(0.5, 0.1, 1)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("so the next cycle would begin turned")
                .hasMessageContaining("turn back, or on round");
        assertThat(Facing.of(new Turn(0.5, 0.1, 4)).aCycle()).isEqualTo(2 * Math.PI);
    }

    @Test
    void nobodyTurnsTwoWaysAtOnce() {
        assertThatThrownBy(() -> Facing.of(new Turn(0.2, 0.4, 2), new Turn(0.5, 0.1, -2)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("before the one before it is done");
        assertThatThrownBy(() -> Facing.of(new Turn(0.1, 0.1, 2), new Turn(0.9, 0.3, -2)))
                .isInstanceOf(Refusal.class);
    }

    @Property
    void begunAtAnotherMomentItIsTheSameFacing(Any any) {
        Facing facing = AnyPairing.facing(any);
        double share = any.number(-2, 2);
        double at = any.number(0, 1);
        double apart = facing.startingAt(share).at(at).value() - facing.at(at + share).value();
        assertThat(Math.IEEEremainder(apart, 2 * Math.PI)).isCloseTo(0, within(1e-9));
    }

    @Test
    void whatTheMirrorShowsTurnsToTheOtherSide() {
        Facing left = new Facing(1, List.of(new Turn(0.1, 0.2, 4)));
        assertThat(left.mirrored()).isEqualTo(new Facing(3, List.of(new Turn(0.1, 0.2, -4))));
    }
}

package deferent.search.set;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.body.Reach;
import deferent.reading.tether.Kit;
import deferent.search.transition.Grade;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Turns of the body in a set. */
class SetTurnTest {
    private static final PairBook BOOK = new PairBook(Grade.PRACTISED, Performer.USUAL, Kit.USUAL);
    private static final Pairing SMALL =
            said("extension hand radius 10 cm vs extension hand radius 10 cm");
    private static final Pairing LARGER =
            said("extension hand radius 16 cm vs extension hand radius 16 cm");

    private static Pairing said(String phrase) {
        return Phrase.parse(phrase).pairing();
    }

    private static Wanted turning(Pairing pairing, int counts, int quarters, int count) {
        return new Wanted(pairing, counts, Optional.of(new BodyTurn(quarters, count)));
    }

    private static SetPlan plan(Wanted... wanted) {
        return SetPlan.of(List.of(wanted), BOOK);
    }

    @Test
    void afterAHalfTurnTheAudienceSeesLeftAndRightChanged() {
        SetPlan plan = plan(turning(SMALL, 8, 2, 3), new Wanted(LARGER, 8));
        SetPlan ahead = plan(new Wanted(SMALL, 8), new Wanted(LARGER, 8));
        Trace turned = SetTrace.of(plan, BOOK);
        Trace before = SetTrace.of(ahead, BOOK);
        double behind = BOOK.performer().axis().behind();
        for (double time = 7; time < plan.seconds(); time += 0.31) {
            Vector3D is = turned.head(Side.LEFT).position(time);
            Vector3D was = before.head(Side.LEFT).position(time);
            assertThat(is.getX()).isCloseTo(-was.getX(), within(1e-9));
            assertThat(is.getY()).isCloseTo(was.getY(), within(1e-12));
            assertThat(is.getZ() + behind).isCloseTo(-was.getZ() - behind, within(1e-9));
        }
        Vector3D first = turned.head(Side.LEFT).position(1.7);
        assertThat(first.distance(before.head(Side.LEFT).position(1.7))).isZero();
    }

    @Test
    void aTurnBackBringsAllOfItToTheFrontAgain() {
        SetPlan plan = plan(turning(SMALL, 6, 1, 2), turning(SMALL, 6, -1, 2));
        assertThat(plan.quartersBefore(1)).isEqualTo(1);
        assertThat(plan.quartersBefore(2)).isZero();
        Trace turned = SetTrace.of(plan, BOOK);
        Trace before = SetTrace.of(plan(new Wanted(SMALL, 12)), BOOK);
        assertThat(
                        turned.head(Side.RIGHT)
                                .position(11.3)
                                .distance(before.head(Side.RIGHT).position(11.3)))
                .isLessThan(1e-9);
        assertThat(turned.heading(5).value()).isEqualTo(Math.PI / 2);
    }

    @Test
    void aQuarterTurnIsMadeOnItsCountOverTwoCounts() {
        TurnMade turning = plan(turning(SMALL, 8, 1, 5)).turnings().get(0);
        double count = Wanted.count(SMALL);
        assertThat(turning.starts()).isCloseTo(4 * count, within(1e-12));
        assertThat(turning.seconds()).isCloseTo(2 * count, within(1e-12));
        assertThat(turning.count()).isEqualTo(5);
    }

    @Test
    void whereCountsAreQuickAQuarterStillTakesHalfASecond() {
        Pairing quick = SMALL.withTempo(java.util.OptionalDouble.of(300));
        TurnMade half = plan(turning(quick, 15, -2, 2)).turnings().get(0);
        assertThat(half.seconds()).isCloseTo(1, within(1e-9));
        assertThat(Math.toDegrees(half.fastest())).isCloseTo(443, within(0.5));
        // On the last count there is no time left: it begins sooner, and is done in time.
        TurnMade late = plan(turning(quick, 15, -2, 15)).turnings().get(0);
        assertThat(late.count()).isCloseTo(11, within(1e-9));
        assertThat(late.ends()).isCloseTo(3, within(1e-9));
    }

    @Test
    void aTurnOnACountThatIsNotSpunIsRefusedWithWhatWouldBeRight() {
        assertThatThrownBy(() -> turning(SMALL, 8, 1, 9))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("is on count 9 of 8")
                .hasMessageContaining("give a count from 1 to 8");
        assertThatThrownBy(() -> new BodyTurn(3, 1)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> new BodyTurn(1, 0)).isInstanceOf(Refusal.class);
    }

    @Test
    void theTurningBodyReachesWhatItReachedStandingStill() {
        SetPlan plan = plan(turning(SMALL, 8, 2, 3), new Wanted(LARGER, 8));
        Reach turned = Reach.of(SetTrace.of(plan, BOOK), BOOK.performer());
        Reach still = Reach.of(SetTrace.unturned(plan, BOOK, 0, plan.seconds()), BOOK.performer());
        assertThat(turned.left().farthest()).isCloseTo(still.left().farthest(), within(1e-6));
        assertThat(turned.right().nearest()).isCloseTo(still.right().nearest(), within(1e-6));
    }

    @Test
    void theTurnIsSmoothAndItsVelocityIsTheSlopeOfItsPlace() {
        Trace turned = SetTrace.of(plan(turning(SMALL, 8, 2, 3)), BOOK, 1, 4);
        for (double time = 0.9; time < 2.2; time += 0.09) {
            State at = turned.head(Side.LEFT).at(time);
            double step = 1e-5;
            Vector3D slope =
                    turned.head(Side.LEFT)
                            .position(time + step)
                            .subtract(turned.head(Side.LEFT).position(time - step))
                            .scalarMultiply(0.5 / step);
            assertThat(slope.distance(at.velocity())).isLessThan(1e-4);
        }
    }

    /**
     * At ω in the middle of the turn a head that runs at v is pushed across its plane by 2ωv:
     * 1.93/s and 4.4 m/s make 17 m/s², 1.7 weights.
     */
    @Test
    void aQuickTurnIsFeltInTheCordsAndASlowOneHardly() {
        TurnLoad quick = TurnLoad.of(plan(turning(SMALL, 8, 2, 3)), BOOK).get(0);
        Pairing slow = SMALL.withTempo(java.util.OptionalDouble.of(15));
        PairBook book = BOOK;
        assertThat(quick.left().felt()).isTrue();
        assertThat(quick.most()).isBetween(1.5, 2.5);
        SetPlan plan = SetPlan.of(List.of(turning(slow, 4, 1, 2)), book);
        TurnLoad gentle = TurnLoad.of(plan, book).get(0);
        assertThat(gentle.turning().seconds()).isCloseTo(8, within(1e-9));
        assertThat(gentle.most()).isLessThan(quick.most() / 8);
        assertThat(quick.left().behind()).isFalse();
        // Squeezed into two counts, no cord carries the poi round.
        TurnLoad squeezed = TurnLoad.of(plan(turning(SMALL, 2, 2, 1)), BOOK).get(0);
        assertThat(squeezed.left().behind() || squeezed.left().slack()).isTrue();
    }

    @Test
    void aSetWithoutTurnsIsPlayedAsBefore() {
        SetPlan plan = plan(new Wanted(SMALL, 4));
        assertThat(TurnLoad.of(plan, BOOK)).isEmpty();
        assertThat(SetTrace.of(plan, BOOK).turned()).isFalse();
    }
}

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
import deferent.reading.tether.Kit;
import deferent.search.transition.Grade;
import deferent.search.transition.Transition;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class SetPlanTest {
    private static final PairBook BOOK = new PairBook(Grade.PRACTISED, Performer.USUAL, Kit.USUAL);
    private static final Pairing SMALL =
            said("extension hand radius 10 cm vs extension hand radius 10 cm");
    private static final Pairing LARGER =
            said("extension hand radius 16 cm vs extension hand radius 16 cm");

    /** Of another tether, so that nothing leads there. */
    private static final Pairing ELSEWHERE = said("static spin vs static spin, tether 40 cm");

    private static Pairing said(String phrase) {
        return Phrase.parse(phrase).pairing();
    }

    private static Stay stay(SetPlan plan, int step) {
        return plan.stays().get(step).orElseThrow();
    }

    @Test
    void everyPatternIsLeftWhereItsTransitionLeavesItAndEnteredWhereItEnters() {
        SetPlan plan =
                SetPlan.of(
                        List.of(new Wanted(SMALL, 8), new Wanted(LARGER, 13), new Wanted(SMALL, 8)),
                        BOOK);
        assertThat(plan.flows()).isTrue();
        double clock = 0;
        for (int i = 0; i < 3; i++) {
            Stay stay = stay(plan, i);
            assertThat(stay.starts()).isCloseTo(clock, within(1e-9));
            clock += stay.seconds();
            if (i < 2) {
                Transition led = plan.joints().get(i).transition().orElseThrow();
                double cycles =
                        (stay.entered() + stay.seconds() - led.leaves())
                                / stay.wanted().pairing().period();
                assertThat(cycles).isCloseTo(Math.rint(cycles), within(1e-9));
                assertThat(stay(plan, i + 1).entered()).isCloseTo(led.joins(), within(1e-12));
                assertThat(plan.joints().get(i).starts()).isCloseTo(clock, within(1e-9));
                clock += led.seconds();
            }
            // Half a common cycle off is the most that a single transition asks.
            assertThat(stay.counts()).isCloseTo(stay.wanted().counts(), within(4.0));
        }
        assertThat(plan.seconds()).isCloseTo(clock, within(1e-9));
        // The last ends when it is asked to.
        assertThat(stay(plan, 2).counts()).isCloseTo(8, within(1e-9));
    }

    @Test
    void aCountIsOneTurnOfThePoiThatTurnsMoreOften() {
        Pairing slow = said("extension vs extension, 30 cycles a minute");
        assertThat(Wanted.count(slow)).isCloseTo(2, within(1e-12));
        Pairing leaves = said("extension vs triquetra, 30 cycles a minute");
        assertThat(Wanted.count(leaves)).isCloseTo(1, within(1e-12));
        assertThat(new Wanted(leaves, 6).seconds()).isCloseTo(6, within(1e-12));
        assertThatThrownBy(() -> new Wanted(slow, 0)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> new Wanted(slow, 1001)).isInstanceOf(Refusal.class);
    }

    @Test
    void theSamePatternTwiceInARowGoesOnWithoutAPassing() {
        SetPlan plan = SetPlan.of(List.of(new Wanted(SMALL, 5), new Wanted(SMALL, 10)), BOOK);
        assertThat(plan.joints().get(0).way()).isEqualTo(Joint.Way.SAME);
        assertThat(stay(plan, 1).entered()).isCloseTo(stay(plan, 0).seconds(), within(1e-12));
        assertThat(plan.seconds()).isCloseTo(15 * Wanted.count(SMALL), within(1e-12));
    }

    @Test
    void whereNothingLeadsOnThePatternBeginsAnew() {
        SetPlan plan = SetPlan.of(List.of(new Wanted(SMALL, 5), new Wanted(ELSEWHERE, 10)), BOOK);
        assertThat(plan.flows()).isFalse();
        assertThat(plan.joints().get(0).way()).isEqualTo(Joint.Way.NONE);
        assertThat(stay(plan, 0).counts()).isCloseTo(5, within(1e-12));
        assertThat(stay(plan, 1).entered()).isZero();
    }

    @Test
    void aPatternThatIsGoneTakesNoTimeAndTheRestIsStillPlanned() {
        SetPlan plan =
                SetPlan.of(
                                List.of(
                                        Optional.of(new Wanted(SMALL, 4)),
                                        Optional.empty(),
                                        Optional.of(new Wanted(SMALL, 6))),
                                BOOK,
                                false,
                                p -> {},
                                () -> false)
                        .orElseThrow();
        assertThat(plan.stays().get(1)).isEmpty();
        assertThat(plan.joints())
                .extracting(Joint::way)
                .containsExactly(Joint.Way.GONE, Joint.Way.GONE);
        assertThat(plan.seconds()).isCloseTo(10 * Wanted.count(SMALL), within(1e-12));
        assertThat(SetWork.of(plan, BOOK).times()).hasSize(4);
    }

    @Test
    void aRoundComesBackToWhereItBegan() {
        SetPlan plan =
                SetPlan.of(
                                List.of(
                                        Optional.of(new Wanted(SMALL, 8)),
                                        Optional.of(new Wanted(LARGER, 8))),
                                BOOK,
                                true,
                                p -> {},
                                () -> false)
                        .orElseThrow();
        Transition back = plan.joints().get(1).transition().orElseThrow();
        assertThat(stay(plan, 0).entered()).isCloseTo(back.joins(), within(1e-12));
        Trace played = SetTrace.of(plan, BOOK);
        for (Side side : Side.values()) {
            assertThat(
                            played.head(side)
                                    .position(0)
                                    .distance(played.head(side).position(plan.seconds())))
                    .isLessThan(1e-6);
        }
    }

    @Test
    void aRoundOfOnePatternTwiceEndsWithItsCycle() {
        SetPlan plan =
                SetPlan.of(
                                List.of(
                                        Optional.of(new Wanted(SMALL, 5)),
                                        Optional.of(new Wanted(LARGER, 8)),
                                        Optional.of(new Wanted(SMALL, 6))),
                                BOOK,
                                true,
                                p -> {},
                                () -> false)
                        .orElseThrow();
        assertThat(plan.joints().get(2).way()).isEqualTo(Joint.Way.SAME);
        Stay last = stay(plan, 2);
        double cycles = (last.entered() + last.seconds()) / SMALL.period();
        assertThat(cycles).isCloseTo(Math.rint(cycles), within(1e-9));
        assertThat(stay(plan, 0).entered()).isZero();
    }

    @Test
    void noHeadJumpsInASetThatFlows() {
        SetPlan plan =
                SetPlan.of(
                        List.of(new Wanted(SMALL, 6), new Wanted(LARGER, 6), new Wanted(LARGER, 3)),
                        BOOK);
        Trace played = SetTrace.of(plan, BOOK);
        assertThat(played.breaks()).isEmpty();
        assertThat(played.period()).isCloseTo(plan.seconds(), within(1e-9));
        for (Side side : Side.values()) {
            var head = played.head(side);
            double step = 1e-3;
            for (double t = 0; t + step < plan.seconds(); t += step) {
                double way = head.position(t).distance(head.position(t + step));
                assertThat(way)
                        .as("%s at %.3f s", side, t)
                        .isLessThan(0.02 + 2 * step * head.at(t).velocity().getNorm());
            }
        }
    }

    @Test
    void aPartOfASetIsThatPartOfIt() {
        SetPlan plan = SetPlan.of(List.of(new Wanted(SMALL, 6), new Wanted(LARGER, 6)), BOOK);
        Trace whole = SetTrace.of(plan, BOOK);
        double from = stay(plan, 0).ends() - 0.2;
        Trace part = SetTrace.of(plan, BOOK, from, from + 1);
        for (double t : new double[] {0, 0.3, 0.9}) {
            assertThat(
                            part.head(Side.LEFT)
                                    .position(t)
                                    .distance(whole.head(Side.LEFT).position(from + t)))
                    .isLessThan(1e-9);
        }
        assertThatThrownBy(() -> SetTrace.of(plan, BOOK, 2, 1)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> SetTrace.of(plan, BOOK, 0, plan.seconds() + 1))
                .isInstanceOf(Refusal.class);
    }

    @Test
    void fiveHundredStepsOfAFewPatternsAreComparedOnce() {
        List<Optional<Wanted>> many =
                java.util.stream.IntStream.range(0, 500)
                        .mapToObj(i -> Optional.of(new Wanted(i % 2 == 0 ? SMALL : LARGER, 8)))
                        .toList();
        SetPlan.of(
                List.of(new Wanted(SMALL, 8), new Wanted(LARGER, 8), new Wanted(SMALL, 8)), BOOK);
        long before = System.nanoTime();
        AtomicInteger heard = new AtomicInteger();
        SetPlan plan =
                SetPlan.of(many, BOOK, false, p -> heard.incrementAndGet(), () -> false)
                        .orElseThrow();
        assertThat((System.nanoTime() - before) / 1e9).isLessThan(2);
        assertThat(plan.stays()).hasSize(500);
        assertThat(heard.get()).isEqualTo(499);
    }

    @Test
    void aStoppedPlanIsNone() {
        assertThat(
                        SetPlan.of(
                                List.of(Optional.of(new Wanted(SMALL, 6))),
                                BOOK,
                                false,
                                p -> {},
                                () -> true))
                .isEmpty();
    }

    @Test
    void anEmptySetIsRefused() {
        assertThatThrownBy(() -> SetPlan.of(List.of(), BOOK))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("no patterns");
    }

    @Test
    void theWorkOfAPatternIsItsMeanPullTimesHowLongItIsKept() {
        SetPlan plan = SetPlan.of(List.of(new Wanted(ELSEWHERE, 10)), BOOK);
        SetWork work = SetWork.of(plan, BOOK);
        double mean =
                BOOK.readings(ELSEWHERE).cord(Side.LEFT).pull().reading().orElseThrow().mean();
        assertThat(work.left().gripped()).isCloseTo(mean * plan.seconds(), within(1e-9));
        // A still hand: the shoulder bears what the grip holds.
        assertThat(work.left().borne()).isCloseTo(work.left().gripped(), within(0.05));
        assertThat(work.left().grip()).hasSameSizeAs(work.times());
    }

    @Test
    void aHandThatIsThrownAboutAsksMoreOfTheShoulderThanOfTheGrip() {
        SetPlan plan =
                SetPlan.of(
                        List.of(
                                new Wanted(ELSEWHERE, 4),
                                new Wanted(
                                        said(
                                                "triquetra hand radius 40 cm vs static spin, tether 40 cm"),
                                        4)),
                        BOOK);
        SetWork work = SetWork.of(plan, BOOK);
        assertThat(work.left().borne()).isGreaterThan(1.5 * work.left().gripped());
        assertThat(work.left().hardest()).isEqualTo(1);
        assertThat(work.left().grip()).isSorted();
    }

    /** By Newton's second law on the heads of the set as it is played. */
    @Test
    void theWorkBetweenTwoPatternsIsThatOfThePassageAsItIsPlayed() {
        SetPlan plan = SetPlan.of(List.of(new Wanted(SMALL, 8), new Wanted(LARGER, 8)), BOOK);
        Joint joint = plan.joints().get(0);
        double from = joint.starts();
        Trace played = SetTrace.of(plan, BOOK, from, from + joint.seconds());
        SetWork work = SetWork.of(plan, BOOK);
        for (Side side : Side.values()) {
            double held = 0;
            int steps = 4000;
            double step = joint.seconds() / steps;
            for (int i = 0; i < steps; i++) {
                double time = (i + 0.5) * step;
                State hand = played.hand(side).at(time);
                State head = played.head(side).at(time);
                Vector3D cord = hand.position().subtract(head.position()).normalize();
                Vector3D force =
                        head.acceleration()
                                .add(new Vector3D(0, 9.80665, 0))
                                .scalarMultiply(Kit.USUAL.headMass());
                held += force.dotProduct(cord) * step;
            }
            List<Double> grip = work.arm(side).grip();
            assertThat(grip.get(2) - grip.get(1)).isCloseTo(held, within(0.01 * held));
            double middle =
                    (grip.get(1) / stay(plan, 0).seconds()
                                    + (grip.get(3) - grip.get(2)) / stay(plan, 1).seconds())
                            / 2;
            assertThat(held).isNotCloseTo(middle * joint.seconds(), within(0.012 * held));
        }
    }

    @Test
    void opposedAntispinIsHarderThanTwoHandsTheSame() {
        double easy = Difficulty.of(BOOK.readings(ELSEWHERE));
        double same = Difficulty.of(BOOK.readings(said("isolation vs isolation")));
        double hard =
                Difficulty.of(
                        BOOK.readings(
                                said("isolation vs four-petal antispin, opposite direction")));
        assertThat(easy).isLessThan(same);
        assertThat(same).isLessThan(hard);
    }
}

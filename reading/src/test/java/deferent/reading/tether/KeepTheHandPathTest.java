package deferent.reading.tether;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Arc;
import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.MirrorImage;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Turns;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class KeepTheHandPathTest {
    // Independently computed for R = L = 0.60 m, one hand turn a second.
    @Test
    void aTriquetraHasTwoWaysToFollowItsHandAndOneRunsAwaySlowly() {
        KeepTheHandPath keep = KeepTheHandPath.of(Spun.triquetra(1.0), Side.LEFT, Kit.USUAL);
        assertThat(keep.turns()).isEqualTo(-2);
        assertThat(keep.solutions())
                .extracting(KeepTheHandPath.Solution::leastPullWeights)
                .satisfiesExactlyInAnyOrder(
                        pull -> assertThat(pull).isCloseTo(2.87, within(0.005)),
                        pull -> assertThat(pull).isCloseTo(1.73, within(0.005)));
        assertThat(keep.solutions())
                .extracting(KeepTheHandPath.Solution::growth)
                .satisfiesExactlyInAnyOrder(
                        growth -> assertThat(growth).isCloseTo(1, within(1e-6)),
                        growth -> assertThat(growth).isCloseTo(1.027, within(5e-4)));
    }

    @Test
    void aSlowTriquetraWouldHaveToPushOneOfTheTwo() {
        KeepTheHandPath keep = KeepTheHandPath.of(Spun.triquetra(1.5), Side.LEFT, Kit.USUAL);
        assertThat(keep.solutions()).hasSize(2);
        assertThat(keep.solutions()).filteredOn(s -> !s.pulls()).hasSize(1);
        assertThat(keep.best()).hasValueSatisfying(s -> assertThat(s.pulls()).isTrue());
    }

    @Test
    void whatItFindsObeysTheCordAndComesBackToItsStart() {
        for (Motion motion :
                new Motion[] {
                    Motion.flower(0.6, -2, 0),
                    Motion.flower(0.3, 2, 0.5),
                    Motion.flower(0.6, 1, 0),
                    new Motion(new Arc(0.5, -Math.PI / 2, Math.PI / 2), new Turns(2, -Math.PI / 2))
                }) {
            Trace ideal = Spun.of(motion, 0.9);
            KeepTheHandPath keep = KeepTheHandPath.of(ideal, Side.LEFT, Kit.USUAL);
            assertThat(keep.solutions()).as("%s %s", motion, keep.tried()).isNotEmpty();
            for (KeepTheHandPath.Solution s : keep.solutions()) {
                Trace corded = keep.in(ideal, s);
                Pull pull = Pull.of(corded, Side.LEFT, Kit.USUAL);
                assertThat(pull.sideways()).as("rest across the cord").isLessThan(1e-9);
                assertThat(pull.least()).isCloseTo(s.leastPull(), within(1e-6));
                assertThat(s.orbit().closing()).isLessThan(1e-9);
                assertThat(
                                Turning.of(corded, Side.LEFT)
                                        .turns(corded.hand(Side.LEFT), corded.head(Side.LEFT)))
                        .isEqualTo(keep.turns());
                State start = s.head().at(0);
                assertThat(s.head().before(ideal.period()).position().distance(start.position()))
                        .isLessThan(1e-9);
            }
        }
    }

    @Test
    void theCordedHeadsDerivativesAreThoseOfItsPlaces() {
        Trace ideal = Spun.triquetra(1.0);
        for (Kit kit : new Kit[] {Kit.USUAL, new Kit(0.12, 0.07, 0.02, true)}) {
            Cord cord = Cord.of(ideal, Side.LEFT, kit);
            HandTable table = HandTable.of(ideal.hand(Side.LEFT), new double[] {0, 1.0}, 192);
            Course head =
                    Following.cycle(
                            table,
                            cord,
                            Orbit.state(
                                    ideal.hand(Side.LEFT).at(0),
                                    ideal.head(Side.LEFT).at(0),
                                    cord));
            double h = 1e-4;
            for (double t : new double[] {0.11, 0.4, 0.73}) {
                State at = head.at(t);
                State back = head.at(t - h);
                State on = head.at(t + h);
                assertThat(slope(on.position(), back.position(), h).distance(at.velocity()))
                        .isLessThan(1e-4);
                assertThat(slope(on.velocity(), back.velocity(), h).distance(at.acceleration()))
                        .isLessThan(1e-3);
                assertThat(slope(on.acceleration(), back.acceleration(), h).distance(at.jerk()))
                        .isLessThan(2e-2);
            }
        }
    }

    private static Vector3D slope(Vector3D on, Vector3D back, double h) {
        return on.subtract(back).scalarMultiply(1 / (2 * h));
    }

    /** An isolation's kept hand also carries an extension; that is not what was said. */
    @Test
    void aMotionHalfATurnFromWhatWasSaidIsFoundButNotMeant() {
        KeepTheHandPath keep = KeepTheHandPath.of(Spun.isolation(0.7), Side.LEFT, Kit.USUAL);
        assertThat(keep.solutions())
                .anyMatch(KeepTheHandPath.Solution::asMeant)
                .anyMatch(s -> !s.asMeant());
        assertThat(keep.best()).hasValueSatisfying(s -> assertThat(s.asMeant()).isTrue());
    }

    @Test
    void theRightHandTurnedTheOtherWayFindsTheMirroredMotions() {
        Trace same = Spun.triquetra(1.0);
        Trace mirrored = Trace.of(same.pairing().with(Direction.OPPOSITE));
        KeepTheHandPath left = KeepTheHandPath.of(mirrored, Side.LEFT, Kit.USUAL);
        KeepTheHandPath right = KeepTheHandPath.of(mirrored, Side.RIGHT, Kit.USUAL);
        assertThat(right.turns()).isEqualTo(-left.turns());
        assertThat(right.solutions()).hasSameSizeAs(left.solutions());
        for (int i = 0; i < left.solutions().size(); i++) {
            assertThat(right.solutions().get(i).leastPull())
                    .isCloseTo(left.solutions().get(i).leastPull(), within(1e-6));
        }
    }

    /** A conical pendulum, any mechanics textbook: cos of the angle from down = g/(ω²L). */
    @Test
    void aStaticSpinInTheFloorPlaneIsAConicalPendulum() {
        double period = 0.9;
        Trace ideal = Spun.of(Motion.staticSpin(1, 0), Plane.FLOOR, period);
        KeepTheHandPath keep = KeepTheHandPath.of(ideal, Side.LEFT, Kit.USUAL);
        double down = Gravity.STANDARD / (0.6 * Math.pow(2 * Math.PI / period, 2));
        assertThat(keep.best())
                .hasValueSatisfying(
                        s -> {
                            for (double t : new double[] {0, 0.2, 0.5}) {
                                Vector3D cord =
                                        s.head()
                                                .at(t)
                                                .position()
                                                .subtract(ideal.hand(Side.LEFT).at(t).position());
                                assertThat(-cord.getY() / 0.6).isCloseTo(down, within(1e-8));
                            }
                            assertThat(s.leastPullWeights()).isCloseTo(1 / down, within(1e-7));
                        });
    }

    @Test
    void aToroidsPoiIsFollowedInThreeDimensions() {
        Part left =
                new Part(
                        Motion.flower(0.3, 3, 0),
                        Tether.of(0.6),
                        Place.usual(Side.LEFT, Plane.WALL)
                                .withTurn(
                                        new PlaneTurn(
                                                1,
                                                PlaneTurn.Axis.UPRIGHT,
                                                PlaneTurn.Carries.FIGURE)),
                        1);
        Trace ideal = Trace.of(Pairing.of(left, left).withTempo(OptionalDouble.of(40)));
        KeepTheFigure kept = KeepTheFigure.of(ideal, Side.LEFT, Kit.USUAL);
        assertThat(kept.possible()).isTrue();
        assertThat(kept.orbit().closing()).isLessThan(1e-6);
        KeepTheHandPath hand = KeepTheHandPath.of(ideal, Side.LEFT, Kit.USUAL);
        for (KeepTheHandPath.Solution s : hand.solutions()) {
            assertThat(s.orbit().closing()).isLessThan(1e-9);
        }
        assertThat(hand.tried().starts()).isEqualTo(12);
    }

    @Test
    void inAirAStillHandCannotKeepASpinGoing() {
        KeepTheHandPath keep =
                KeepTheHandPath.of(Spun.staticSpin(0.8), Side.LEFT, Kit.USUAL.withAir(true));
        assertThat(keep.solutions()).isEmpty();
        assertThat(keep.tried().starts()).isEqualTo(36);
    }

    /** A periodic motion has no first moment, so a jump of the turning at the start hides none. */
    @Test
    void aPoiThatTurnsBackFollowsItsHandTheSameFromAnyMoment() {
        Kit kit = new Kit(0.3773, 0.07, 0.01, true);
        String ridden = "half-and-half flower ease 0 hand radius 30 cm";
        String more = ", split, same direction, tempo 127.2";
        KeepTheHandPath first =
                KeepTheHandPath.of(
                        Trace.of(Phrase.parse(ridden + " vs cat-eye" + more).pairing()),
                        Side.LEFT,
                        kit);
        KeepTheHandPath second =
                KeepTheHandPath.of(
                        Trace.of(Phrase.parse("cat-eye vs " + ridden + more).pairing()),
                        Side.RIGHT,
                        kit);
        assertThat(first.solutions()).hasSizeGreaterThan(1).hasSameSizeAs(second.solutions());
        for (int i = 0; i < first.solutions().size(); i++) {
            assertThat(first.solutions().get(i).leastPullWeights())
                    .isCloseTo(second.solutions().get(i).leastPullWeights(), within(1e-6));
        }
    }

    /** The mirror begins elsewhere in the cycle, from where other starts settle. */
    @Test
    void anArcsMotionIsFoundInTheMirrorToo() {
        Pairing arc =
                Phrase.parse(
                                "arc turns 2 sweep 101° hand radius 79.5 cm tether 50.9 cm wheel vs arc sweep"
                                        + " 83°, timing 0.773, tempo 55, tether 26.7 cm")
                        .pairing();
        Kit kit = Kit.USUAL.withAir(true);
        KeepTheHandPath.Solution said = pulling(KeepTheHandPath.of(Trace.of(arc), Side.LEFT, kit));
        KeepTheHandPath.Solution mirrored =
                pulling(KeepTheHandPath.of(Trace.of(MirrorImage.of(arc)), Side.RIGHT, kit));
        // Its cord is now ahead of the ideal's and now behind, by up to half a turn: no such arc.
        assertThat(said.lead().length()).isLessThan(0.4);
        assertThat(said.asMeant()).isFalse();
        assertThat(mirrored.leastPullWeights()).isCloseTo(said.leastPullWeights(), within(1e-6));
        assertThat(mirrored.growth() / said.growth()).isCloseTo(1, within(1e-3));
    }

    private static KeepTheHandPath.Solution pulling(KeepTheHandPath kept) {
        return kept.solutions().stream()
                .filter(KeepTheHandPath.Solution::pulls)
                .findFirst()
                .orElseThrow();
    }

    /** Past a quarter turn a swing pushes; what is left is a poi at rest, and that is none. */
    @Test
    void aPoiThatHangsDeadStillIsNoSwing() {
        Trace pendulum = Spun.pendulum(2.0);
        KeepTheHandPath kept = KeepTheHandPath.of(pendulum, Side.LEFT, Kit.USUAL);
        assertThat(kept.solutions()).anyMatch(s -> s.pulls() && s.lead().still());
        assertThat(kept.best()).isEmpty();
        assertThat(kept.hangs()).isTrue();
        assertThat(
                        SlowestTempo.of(pendulum.pairing(), Side.LEFT, Kit.USUAL)
                                .handPathKept()
                                .reason())
                .isEqualTo(SlowestTempo.Reason.NEVER);
    }

    @Test
    void aHeadThatStandsOnItsFigureIsAsFarFromItAsTheFigureIsWide() {
        Trace ideal = Spun.staticSpin(0.8);
        State stall = ideal.head(Side.LEFT).at(0.1);
        Course still =
                time -> new State(stall.position(), Vector3D.ZERO, Vector3D.ZERO, Vector3D.ZERO);
        Course head = ideal.head(Side.LEFT);
        Away stalled = Away.of(still, head, ideal, Side.LEFT);
        assertThat(stalled.fromPath()).isLessThan(1e-3);
        assertThat(stalled.missed()).isCloseTo(1.2, within(1e-3));
        assertThat(stalled.paths()).isCloseTo(1.2, within(1e-3));
        assertThat(Away.of(head, still, ideal, Side.LEFT).fromPath()).isCloseTo(1.2, within(1e-3));
        assertThat(Away.of(head, head, ideal, Side.LEFT).paths()).isLessThan(1e-3);
    }

    /** It hangs while the hand goes slowly; while it goes fast it is swung far aside. */
    @Test
    void aPoiHangsFromASlowHandAlone() {
        String extension = "extension vs static spin, tempo ";
        assertThat(handPath(extension + 10).hangs()).isTrue();
        assertThat(handPath(extension + 40).hangs()).isFalse();
    }

    private static KeepTheHandPath handPath(String phrase) {
        return KeepTheHandPath.of(Trace.of(Phrase.parse(phrase).pairing()), Side.LEFT, Kit.USUAL);
    }
}

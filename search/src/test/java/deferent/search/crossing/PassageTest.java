package deferent.search.crossing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Jet;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Side;
import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Course;
import deferent.motion.trace.Origin;
import deferent.motion.trace.Trace;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class PassageTest {
    private static Pairing said(String phrase) {
        return Phrase.parse(phrase).pairing();
    }

    private static Crossing smoothest(String from, String to, CrossingRequest request) {
        return Crossings.between(said(from), said(to), request).smoothest().orElseThrow();
    }

    private static Crossing nearExtensions() {
        return smoothest(
                "extension vs extension, tempo 100",
                "extension vs extension, hand radius 55 cm, tempo 100",
                CrossingRequest.USUAL);
    }

    private static void runsSmoothly(Trace trace, double tolerance) {
        double step = trace.period() / 2000;
        for (Side side : Side.values()) {
            for (Course course : new Course[] {trace.hand(side), trace.head(side)}) {
                for (int i = 2; i < 1998; i++) {
                    double t = i * step;
                    Vector3D before = course.at(t - step / 2).velocity();
                    Vector3D after = course.at(t + step / 2).velocity();
                    Vector3D rate = after.subtract(before).scalarMultiply(1 / step);
                    assertThat(rate.distance(course.at(t).acceleration())).isLessThan(tolerance);
                    Vector3D moved =
                            course.position(t + step / 2)
                                    .subtract(course.position(t - step / 2))
                                    .scalarMultiply(1 / step);
                    assertThat(moved.distance(course.at(t).velocity())).isLessThan(tolerance);
                }
            }
        }
    }

    @Test
    void aPassageBeginsAsTheOnePairingAndEndsAsTheOther() {
        Crossing c = nearExtensions();
        Passage passage = c.passage();
        Trace from = Trace.of(c.from());
        Trace to = Trace.of(c.to());
        double joint = passage.joints().get(0);
        for (Side side : Side.values()) {
            Course head = passage.trace().head(side);
            double early = joint - c.blend() / 2 - 0.1;
            assertThat(head.position(early))
                    .isEqualTo(from.head(side).position(c.fromTime() + early - joint));
            double later = joint + c.blend() / 2 + 0.1;
            assertThat(
                            head.position(later)
                                    .distance(to.head(side).position(c.toTime() + later - joint)))
                    .isLessThan(1e-12);
        }
    }

    @Test
    void aPassageIsSmoothToAccelerationOnACord() {
        Passage passage = nearExtensions().passage();
        assertThat(passage.why()).isEqualTo(Passage.Hindrance.NONE);
        assertThat(passage.trace().origin()).isEqualTo(Origin.CORDED);
        assertThat(passage.trace().periodic()).isFalse();
        runsSmoothly(passage.trace(), 0.05);
    }

    // On a cord the head's force is along the cord and toward the hand: nothing across it, and the
    // cord keeps its length.
    @Test
    void aCordedPassageObeysTheCord() {
        Passage passage = nearExtensions().passage();
        for (Side side : Side.values()) {
            assertThat(passage.pull(side).sideways()).isLessThan(1e-6);
            assertThat(passage.pull(side).least()).isGreaterThan(0);
            assertThat(passage.taut()).isTrue();
            for (double t : new double[] {0, 0.3, 0.625, 0.7, 1.25}) {
                assertThat(
                                passage.trace()
                                        .hand(side)
                                        .position(t)
                                        .distance(passage.trace().head(side).position(t)))
                        .isCloseTo(0.6, within(1e-9));
            }
        }
    }

    @Test
    void whereNoCordCanDoItThePassageIsOfRodsAndSaysWhy() {
        Pairing stiff = said("square vs square, tempo 60");
        Crossing c = Crossings.between(stiff, stiff).smoothest().orElseThrow();
        Passage passage = c.passage();
        assertThat(passage.why()).isEqualTo(Passage.Hindrance.CORNER);
        assertThat(passage.trace().origin()).isEqualTo(Origin.IDEAL);
        for (Side side : Side.values()) {
            for (double t : new double[] {0, 0.4, 0.6, 0.65, 0.9}) {
                assertThat(
                                passage.trace()
                                        .hand(side)
                                        .position(t)
                                        .distance(passage.trace().head(side).position(t)))
                        .isCloseTo(0.6, within(1e-9));
            }
        }
    }

    @Test
    void theHandThatDoesNotCrossGoesOnUntouched() {
        Crossing c =
                smoothest(
                        "extension vs triquetra, tempo 100",
                        "extension vs triquetra, hand radius 55 cm, tempo 100",
                        CrossingRequest.USUAL.with(Who.LEFT));
        Passage passage = c.passage();
        Trace from = Trace.of(c.from());
        double joint = passage.joints().get(0);
        for (int i = 0; i < 50; i++) {
            double t = passage.trace().period() * i / 50;
            assertThat(
                            passage.trace()
                                    .head(Side.RIGHT)
                                    .position(t)
                                    .distance(
                                            from.head(Side.RIGHT)
                                                    .position(c.fromTime() + t - joint)))
                    .isLessThan(1e-9);
        }
    }

    // The least of all passages cannot be rougher than this one.
    @Test
    void noPassageIsGentlerThanItsCrossingsRoughness() {
        Crossing c = nearExtensions();
        Passage passage = c.passage();
        assertThat(passage.extraHeads()).isGreaterThanOrEqualTo(c.roughness().heads());
        assertThat(passage.extraHands()).isGreaterThanOrEqualTo(c.roughness().hands());
    }

    @Test
    void thePolynomialOfTheBlendGoesFromNoneToAllWithFourStillDerivatives() {
        var start = Splice.share(Jet.line(0, 1));
        var end = Splice.share(Jet.line(1, 1));
        assertThat(start.value()).isZero();
        assertThat(end.value()).isCloseTo(1, within(1e-12));
        assertThat(Math.abs(start.d1()) + Math.abs(start.d2()) + Math.abs(start.d3())).isZero();
        assertThat(Math.abs(end.d1()) + Math.abs(end.d2()) + Math.abs(end.d3())).isZero();
        // s⁗ is d/dx of s‴, which goes as x² at the start.
        assertThat(Splice.share(Jet.line(1e-4, 1)).d3()).isLessThan(1e-4);
        double h = 1e-5;
        for (double x = 0.1; x < 1; x += 0.2) {
            var a = Splice.share(Jet.line(x - h, 1));
            var b = Splice.share(Jet.line(x + h, 1));
            var m = Splice.share(Jet.line(x, 1));
            assertThat((b.value() - a.value()) / (2 * h)).isCloseTo(m.d1(), within(1e-6));
            assertThat((b.d1() - a.d1()) / (2 * h)).isCloseTo(m.d2(), within(1e-5));
            assertThat((b.d2() - a.d2()) / (2 * h)).isCloseTo(m.d3(), within(1e-4));
        }
    }
}

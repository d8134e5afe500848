package deferent.search.fit;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Size;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Timing;
import deferent.motion.pairing.Turns;
import deferent.motion.phrase.MotionWords;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import deferent.reading.link.LinkReading;
import java.util.Arrays;
import java.util.List;

/** Whatever the sizes, an answer closes what it claims to close. */
class FitPropertiesTest {

    @Property(tries = 15)
    void aCirclingHeadIsFittedToACirclingHandWhateverTheirSizesAndTiming(Any any) {
        double tether = any.number(0.3, 1.2);
        double circle = any.number(0.1, 1.2);
        double ahead = any.number(0, 0.99);
        int turns = any.whole(-6, -2);
        Pairing pairing =
                pairing(Motion.staticSpin(1, 0), tether, Motion.flower(circle, turns, 0.3))
                        .with(Timing.of(ahead));
        FitReading fit = Fit.of(pairing, Side.LEFT);
        assertThat(fit.goal()).isEqualTo(Goal.PLACED);
        assertThat(fit.closes()).isTrue();
        for (Remedy answer : fit.answers()) {
            assertThat(read(answer).inPlaneGap()).isLessThan(0.001);
        }
    }

    @Property(tries = 12)
    void aFlowersHeadIsFittedToAHandOnALikeFigure(Any any) {
        int n = any.of(-1, 2, -2, 3, -3, 4, -4);
        double radius = any.number(0.2, 0.9);
        double tether = any.number(0.25, 0.9);
        double turn = any.number(-3, 3);
        Series figure =
                new Series(
                        List.of(
                                new Series.Term(1, radius, turn),
                                new Series.Term(n, tether, 2 * turn)));
        Pairing pairing =
                pairing(Motion.flower(0.5, n, 0), 0.6, new Motion(figure, new Turns(1, 0)));
        Size circle = Size.of(Side.LEFT, Size.Kind.HAND_RADIUS);
        Size cord = Size.of(Side.LEFT, Size.Kind.TETHER);
        FitReading fit =
                Fit.of(
                        pairing,
                        Side.LEFT,
                        java.util.Set.of(circle, cord),
                        Limits.USUAL,
                        Goal.SHAPE);
        assertThat(fit.closes()).isTrue();
        for (Remedy answer : fit.answers()) {
            assertThat(read(answer).shapeGap()).isLessThan(0.001);
            assertThat(answer.exact()).isTrue();
        }
    }

    @Property(tries = 8)
    void keptNamesComeFirstThenFewerChangesThenTheLeastMoved(Any any) {
        double circle = any.number(0.15, 0.9);
        Pairing pairing =
                pairing(Motion.flower(0.3, 1, Math.PI), 0.6, Motion.flower(circle, -3, 0));
        FitReading fit = Fit.of(pairing, Side.LEFT);
        for (int i = 1; i < fit.answers().size(); i++) {
            Remedy before = fit.answers().get(i - 1);
            Remedy after = fit.answers().get(i);
            long renamedBefore = renamed(pairing, before.pairing());
            long renamedAfter = renamed(pairing, after.pairing());
            assertThat(renamedBefore).isLessThanOrEqualTo(renamedAfter);
            if (renamedBefore < renamedAfter) {
                continue;
            }
            assertThat(before.sizesChanged()).isLessThanOrEqualTo(after.sizesChanged());
            if (before.sizesChanged() == after.sizesChanged()) {
                assertThat(before.moved()).isLessThanOrEqualTo(after.moved());
            }
        }
        assertThat(fit.closes()).isTrue();
    }

    private static long renamed(Pairing from, Pairing to) {
        return Arrays.stream(Side.values())
                .filter(side -> !MotionWords.of(from, side).equals(MotionWords.of(to, side)))
                .count();
    }

    private static LinkReading read(Remedy answer) {
        return LinkReading.of(Trace.of(answer.pairing()));
    }

    private static Pairing pairing(Motion left, double tether, Motion right) {
        return Pairing.of(
                new Part(left, Tether.of(tether), Place.usual(Side.LEFT, Plane.WALL), 1),
                new Part(right, Tether.USUAL, Place.usual(Side.RIGHT, Plane.WALL), 1));
    }
}

package deferent.reading.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.trace.Course;
import deferent.motion.trace.State;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class HandPaceTest {
    private static final double[] SECOND = {0, 1};

    /** To and fro on a line, sin(2πnt) times a size: by hand. */
    private static Course line(double size, int n) {
        double w = 2 * Math.PI * n;
        return time ->
                new State(
                        new Vector3D(size * Math.sin(w * time), 0, 0),
                        new Vector3D(size * w * Math.cos(w * time), 0, 0),
                        new Vector3D(-size * w * w * Math.sin(w * time), 0, 0),
                        Vector3D.ZERO);
    }

    @Test
    void aSwingToAndFroIsFastestInTheMiddleAndQuickestAtItsEnds() {
        HandPace pace = HandPace.of(line(0.3, 7), SECOND);
        double w = 14 * Math.PI;
        assertThat(pace.speed()).isCloseTo(0.3 * w, within(1e-6));
        assertThat(pace.acceleration()).isCloseTo(0.3 * w * w, within(1e-5));
        assertThat(pace.tooFast()).isFalse();
        assertThat(pace.tooQuick()).isTrue();
        assertThat(pace.beyond()).isTrue();
    }

    @Test
    void aWideSlowSwingIsFastWithoutBeingQuickAndACalmOneIsNeither() {
        HandPace wide = HandPace.of(line(2.5, 1), SECOND);
        assertThat(wide.tooFast()).isTrue();
        assertThat(wide.tooQuick()).isFalse();
        assertThat(wide.beyond()).isTrue();
        assertThat(HandPace.of(line(0.6, 1), SECOND).beyond()).isFalse();
    }

    /** A break lasts no time: what the hand is said to do at it is of neither side. */
    @Test
    void nothingIsTakenAcrossABreak() {
        Course still = line(0, 1);
        Course broken =
                time ->
                        time == 0.5
                                ? new State(
                                        Vector3D.ZERO,
                                        Vector3D.PLUS_I,
                                        new Vector3D(1e9, 0, 0),
                                        Vector3D.ZERO)
                                : still.at(time);
        assertThat(HandPace.of(broken, new double[] {0, 0.5, 1})).isEqualTo(new HandPace(0, 0));
    }
}

package deferent.reel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Rate;
import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import org.junit.jupiter.api.Test;

class LoopTest {
    @Test
    void aCycleOfWholeFramesIsShownExactly() {
        Loop loop = Loop.of(2, 1, 1, Rate.PAL);
        assertThat(loop.frames()).isEqualTo(50);
        assertThat(loop.moment(25)).isEqualTo(1.0);
        assertThat(loop.tempoOff()).isZero();
        assertThat(loop.seconds()).isEqualTo(2.0);
    }

    @Test
    void aCycleThatIsNoWholeNumberOfFramesIsSpreadEvenlyOverTheNearest() {
        // One second at 30000/1001 is 29.97 frames: thirty of them last 1.001 s.
        Loop loop = Loop.of(1, 1, 1, Rate.NTSC);
        assertThat(loop.frames()).isEqualTo(30);
        assertThat(loop.seconds()).isEqualTo(1.001);
        assertThat(loop.tempoOff()).isCloseTo(1 / 1.001 - 1, within(1e-12));
        assertThat(loop.moment(15)).isEqualTo(0.5);
    }

    @Test
    void everyCycleOfSeveralBeginsOnTheSameFrameWhereItCan() {
        Loop loop = Loop.of(1, 1, 4, Rate.THIRTY);
        assertThat(loop.frames()).isEqualTo(120);
        for (int frame = 0; frame < 30; frame++) {
            assertThat(loop.moment(frame + 60)).isEqualTo(loop.moment(frame));
        }
    }

    @Test
    void slowMotionTakesMoreFramesOverTheSameCycle() {
        Loop loop = Loop.of(1, 0.25, 1, Rate.SIXTY);
        assertThat(loop.frames()).isEqualTo(240);
        assertThat(loop.moment(120)).isEqualTo(0.5);
    }

    @Test
    void whatIsNotPeriodicIsShownOnceEachFrameAtItsOwnTime() {
        Loop loop = Loop.once(1.01, 1, Rate.PAL);
        assertThat(loop.frames()).isEqualTo(26);
        assertThat(loop.moment(3)).isEqualTo(0.12);
        assertThat(loop.moment(25)).isEqualTo(1.0);
    }

    @Property
    void aLoopIsOffByHalfAFrameAtMost(Any any) {
        double period = any.number(0.3, 12);
        int rate = any.whole(0, 7);
        int cycles = any.whole(1, 20);
        Loop loop = Loop.of(period, 1, cycles, Rate.FRAMES.get(rate));
        assertThat(Math.abs(loop.seconds() - loop.asked()))
                .isLessThanOrEqualTo(0.5 / loop.rate().perSecond() + 1e-9);
        // The step over the seam is a step like every other.
        double step = period * cycles / loop.frames();
        double last = loop.moment(loop.frames() - 1);
        assertThat(last + step).isCloseTo(period, within(1e-9));
    }

    @Property
    void noOtherNumberOfCyclesIsNearerToTheTimeAskedFor(Any any) {
        double period = any.number(0.3, 4);
        double seconds = any.number(0.1, 60);
        double slow = any.number(0.2, 2);
        int cycles = Loop.filling(seconds, period, slow);
        double off = Math.abs(cycles * period / slow - seconds);
        for (int other = 1; other <= cycles + 2; other++) {
            assertThat(off).isLessThanOrEqualTo(Math.abs(other * period / slow - seconds) + 1e-9);
        }
    }

    @Test
    void tooShortAndTooLongAreRefused() {
        assertThatThrownBy(() -> Loop.of(0.01, 1, 1, Rate.PAL))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("fewer than two frames");
        assertThatThrownBy(() -> Loop.of(10, 0.02, 10_000, Rate.SIXTY))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("an hour");
    }
}

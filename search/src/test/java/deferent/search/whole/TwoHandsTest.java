package deferent.search.whole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.motion.shared.Side;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TwoHandsTest {
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void eachHandGetsItsOwnAnswer(boolean atOnce) {
        TwoHands<String> both = TwoHands.of(Side::word, atOnce);
        assertThat(both.left()).isEqualTo("left");
        assertThat(both.right()).isEqualTo("right");
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void whatGoesWrongInOneGoesWrongInBoth(boolean atOnce) {
        for (Side wrong : Side.values()) {
            assertThatThrownBy(() -> TwoHands.of(side -> fine(side, wrong), atOnce))
                    .isInstanceOf(IllegalStateException.class)
                    .hasMessage(wrong.word());
        }
    }

    private static Side fine(Side side, Side wrong) {
        if (side == wrong) {
            throw new IllegalStateException(side.word());
        }
        return side;
    }

    @Test
    void whoIsCalledOffCallsOffTheOtherToo() throws InterruptedException {
        CountDownLatch begun = new CountDownLatch(1);
        CountDownLatch ended = new CountDownLatch(1);
        AtomicBoolean interrupted = new AtomicBoolean();
        assertThatThrownBy(
                        () ->
                                TwoHands.of(
                                        side ->
                                                side == Side.LEFT
                                                        ? calledOff(begun)
                                                        : working(begun, interrupted, ended),
                                        true))
                .isInstanceOf(CancellationException.class);
        assertThat(Thread.interrupted()).isTrue();
        ended.await();
        assertThat(interrupted).isTrue();
    }

    private static Side calledOff(CountDownLatch begun) {
        try {
            begun.await();
        } catch (InterruptedException early) {
            throw new AssertionError(early);
        }
        Thread.currentThread().interrupt();
        return Side.LEFT;
    }

    private static Side working(
            CountDownLatch begun, AtomicBoolean interrupted, CountDownLatch ended) {
        begun.countDown();
        try {
            Thread.sleep(60_000);
        } catch (InterruptedException off) {
            interrupted.set(true);
        }
        ended.countDown();
        return Side.RIGHT;
    }
}

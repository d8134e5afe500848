package deferent.motion.trace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Refusal;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import org.junit.jupiter.api.Test;

class RateTest {
    @Test
    void whatCamerasCallThemIsUnderstoodExactly() {
        assertThat(
                        List.of("23.976", "24", "25", "29.97", "30", "50", "59.94", "60").stream()
                                .map(Rate::of))
                .containsExactlyElementsOf(Rate.FRAMES);
        assertThat(Rate.of("60000/2002")).isEqualTo(Rate.NTSC);
        assertThat(Rate.FRAMES.stream().map(Rate::said))
                .containsExactly("23.976", "24", "25", "29.97", "30", "50", "59.94", "60");
    }

    @Test
    void noFrameDriftsInAnHour() {
        for (Rate rate : Rate.FRAMES) {
            for (long frame : new long[] {1, 1799, 108_000, 215_999}) {
                BigDecimal exact =
                        BigDecimal.valueOf(frame * rate.den())
                                .divide(BigDecimal.valueOf(rate.num()), MathContext.DECIMAL64);
                assertThat(Math.abs(rate.time(frame) - exact.doubleValue())).isLessThan(1e-11);
            }
        }
    }

    @Test
    void whatIsNoRateIsRefused() {
        for (String said : List.of("", "fast", "0", "-25", "30/0", "1/2/3")) {
            assertThatThrownBy(() -> Rate.of(said))
                    .as(said)
                    .isInstanceOf(Refusal.class)
                    .hasMessageContaining("rate");
        }
    }

    @Test
    void anNtscSecondHasThirtyFramesLessAThousandthOfThem() {
        assertThat(Rate.NTSC.perSecond() * 1.001).isCloseTo(30, within(1e-12));
    }
}

package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class KeyRingTest {
    private final AtomicLong time = new AtomicLong();
    private final KeyRing keys = new KeyRing(time::get);
    private final AtomicInteger over = new AtomicInteger();

    @Test
    void anOpeningKeyOpensOnce() {
        String opening = keys.opening(over::incrementAndGet);
        assertThat(over).hasValue(0);
        String session = keys.session(opening).orElseThrow();
        assertThat(over).hasValue(1);
        assertThat(keys.knows(session)).isTrue();
        assertThat(keys.knows(opening)).isFalse();
        assertThat(keys.session(opening)).isEmpty();
        assertThat(over).hasValue(1);
    }

    @Test
    void anOpeningKeyDiesAfterAMinute() {
        String inTime = keys.opening(over::incrementAndGet);
        time.addAndGet(OneUse.LIVES.toNanos() - 1);
        assertThat(keys.session(inTime)).isPresent();
        String late = keys.opening(over::incrementAndGet);
        time.addAndGet(OneUse.LIVES.toNanos());
        keys.sweep();
        assertThat(over).as("what stands for it is taken away").hasValue(2);
        assertThat(keys.session(late)).isEmpty();
    }

    @Test
    void aPageKeyTurnsOnceAndForItsOwnSession() {
        String one = keys.session(keys.opening(() -> {})).orElseThrow();
        String other = keys.session(keys.opening(() -> {})).orElseThrow();
        assertThat(one).isNotEqualTo(other);
        String page = keys.page(other);
        assertThat(keys.turned(page)).contains(other);
        assertThat(keys.turned(page)).isEmpty();
        assertThat(keys.knows(page)).isFalse();
    }

    @Test
    void keysAreLongAndNeverTheSame() {
        Set<String> all = new HashSet<>();
        for (int i = 0; i < 200; i++) {
            String key = OneUse.random();
            // 192 bits in base 64.
            assertThat(key).matches("[A-Za-z0-9_-]{32}");
            all.add(key);
        }
        assertThat(all).hasSize(200);
    }

    @Test
    void ofManyOpeningsThatNobodyUsesTheFirstDie() {
        String first = keys.opening(over::incrementAndGet);
        for (int i = 0; i < 100; i++) {
            keys.opening(() -> {});
        }
        assertThat(over).hasValue(1);
        assertThat(keys.session(first)).isEmpty();
    }

    @Test
    void onceClosedNoKeyOpens() {
        String opening = keys.opening(over::incrementAndGet);
        String session = keys.session(keys.opening(() -> {})).orElseThrow();
        keys.close();
        assertThat(over).hasValue(1);
        assertThat(keys.session(opening)).isEmpty();
        assertThat(keys.knows(session)).isFalse();
    }
}

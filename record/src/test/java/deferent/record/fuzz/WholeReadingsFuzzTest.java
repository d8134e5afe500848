package deferent.record.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * Whole readings of phrases of every make: none dies, none holds a number that is none, none takes
 * over two seconds of a processor, and none breaks an invariant of the written list. Two dozen
 * phrases, or twenty thousand with {@code -Ddeferent.deep=true}; other ones with {@code
 * -Ddeferent.seed=N}. A failure names seed and number, which make the phrase again. Invariants that
 * are still {@linkplain Invariants#SOUGHT sought} are counted in either form, and asserted in the
 * deep one alone.
 */
class WholeReadingsFuzzTest {
    private static final boolean DEEP = Boolean.getBoolean("deferent.deep");
    private static final int PHRASES = Integer.getInteger("deferent.phrases", DEEP ? 20_000 : 24);
    private static final long SEED = Long.getLong("deferent.seed", 1);

    @Test
    void noReadingBreaksAnInvariant() {
        Fuzz.warm();
        Fuzz fuzz = new Fuzz(SEED);
        IntStream numbers = IntStream.range(0, PHRASES);
        (DEEP ? numbers.parallel() : numbers).forEach(fuzz::read);
        System.out.println("fuzz: " + fuzz.counts());
        System.out.println("fuzz: each invariant was asked of so many phrases:" + fuzz.asked());
        assertThat(DEEP ? fuzz.found() : fuzz.surprises()).as(fuzz.counts()).isEmpty();
        // A few phrases leave out some that few phrases are asked of.
        assertThat(DEEP ? fuzz.neverAsked() : List.of()).isEmpty();
    }
}

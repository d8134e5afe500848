package deferent.search.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Refusal;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against Wozniak 1990, section 3.2. */
class SpacingTest {
    @Test
    void whatGoesWellComesBackAfterOneDayThenSixThenTwoAndAHalfTimesAsLong() {
        List<Integer> days = new ArrayList<>();
        Spacing spacing = Spacing.NEW;
        for (int n = 0; n < 6; n++) {
            spacing = spacing.after(4);
            days.add(spacing.interval());
        }
        // 6 · 2.5 = 15; 37.5 and 237.5 are rounded up, as the method says.
        assertThat(days).containsExactly(1, 6, 15, 38, 95, 238);
        assertThat(spacing.easiness()).isEqualTo(2.5);
    }

    /** EF' = EF − 0.8 + 0.28·q − 0.02·q², the reduced form in which the thesis has it too. */
    @ParameterizedTest
    @CsvSource({"3,2.36", "4,2.50", "5,2.60"})
    void theEasinessChangesAsPublished(int quality, double easiness) {
        assertThat(Spacing.NEW.after(quality).easiness()).isCloseTo(easiness, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({"0", "1", "2"})
    void whatWentBadlyBeginsAnewAndKeepsItsEasiness(int quality) {
        Spacing known = Spacing.NEW.after(5).after(3).after(4);
        Spacing anew = known.after(quality);
        assertThat(anew).isEqualTo(new Spacing(0, 1, known.easiness()));
        assertThat(anew.after(4).interval()).isEqualTo(1);
        assertThat(anew.after(4).after(4).interval()).isEqualTo(6);
    }

    @Test
    void theEasinessNeverFallsBelowOnePointThree() {
        Spacing spacing = Spacing.NEW;
        for (int n = 0; n < 12; n++) {
            spacing = spacing.after(3);
        }
        assertThat(spacing.easiness()).isEqualTo(1.3);
    }

    @Test
    void noQualityIsAboveFive() {
        assertThatThrownBy(() -> Spacing.NEW.after(6)).isInstanceOf(Refusal.class);
    }
}

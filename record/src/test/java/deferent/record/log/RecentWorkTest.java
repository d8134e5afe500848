package deferent.record.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.record.LogEntry;
import deferent.tell.Told;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** When a log warns that grips or shoulders work much more than they are used to. */
class RecentWorkTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 28);
    private static final String SPIN = "static spin vs static spin";

    private final List<LogEntry> entries = new ArrayList<>();

    private void practised(int daysAgo, double minutes, String pattern, double tempo, String part) {
        entries.add(
                new LogEntry(
                        "entry%05d".formatted(entries.size()),
                        TODAY.minusDays(daysAgo),
                        pattern,
                        part.isEmpty() ? Optional.empty() : Optional.of(part),
                        minutes,
                        OptionalDouble.of(tempo),
                        Optional.empty(),
                        "",
                        Map.of()));
    }

    /** An hour a week, four weeks long, before the last seven days. */
    private void anHourAWeek() {
        for (int ago = 13; ago < 35; ago += 7) {
            practised(ago, 60, SPIN, 60, "");
        }
    }

    private Optional<RecentWork> work() {
        return RecentWork.of(
                entries,
                TODAY,
                new ArmForces(
                        pattern ->
                                pattern.equals("the gate")
                                        ? Optional.empty()
                                        : Optional.of(Phrase.parse(pattern).pairing())));
    }

    private Optional<Told> told() {
        return work().flatMap(RecentWork::told);
    }

    @Test
    void asMuchAsUsualIsNotWarnedOf() {
        anHourAWeek();
        practised(0, 60, SPIN, 60, "");
        assertThat(told()).isEmpty();
        assertThat(work().orElseThrow().arms())
                .hasSize(4)
                .allSatisfy(arm -> assertThat(arm.times()).isCloseTo(1, within(1e-9)));
    }

    @Test
    void halfAsMuchAgainIsWarnedOfAndALittleLessIsNot() {
        anHourAWeek();
        practised(6, 50, SPIN, 60, "");
        practised(0, 39.9, SPIN, 60, "");
        assertThat(told()).isEmpty();
        practised(0, 0.2, SPIN, 60, "");
        Told warned = told().orElseThrow();
        assertThat(warned.tone()).isEqualTo(Told.Tone.WARN);
        assertThat(warned.text()).contains("worked 1.5 times as much").contains("doctor");
        assertThat(warned.why())
                .contains("90.1 min against 60 min", "no permission", "Gabbett", "Buist")
                .contains("Impellizzeri", "our choice");
    }

    @Test
    void theSameMinutesAtAQuickerTempoPullHarderAndAreWarnedOf() {
        anHourAWeek();
        practised(0, 60, SPIN, 120, "");
        Told warned = told().orElseThrow();
        assertThat(warned.text()).contains("both your grips worked 4 times as much");
        // A head on a circle pulls as its tempo squared.
        assertThat(work().orElseThrow().most().orElseThrow().times()).isCloseTo(4, within(0.01));
    }

    @Test
    void aHandThatBeginsToMoveCountsBesideTheWeightOfItsArm() {
        anHourAWeek();
        practised(0, 60, "isolation vs static spin", 60, "");
        // Cord and arm alone would make it several times as much at once.
        assertThat(work().orElseThrow().arms())
                .filteredOn(arm -> arm.spot() == RecentWork.Spot.SHOULDER)
                .extracting(RecentWork.Worked::times)
                .satisfiesExactly(
                        left -> assertThat(left).isBetween(1.5, 3.0),
                        right -> assertThat(right).isCloseTo(1, within(1e-9)));
    }

    @Test
    void ofOneHandAloneOnlyThatArmWorks() {
        anHourAWeek();
        practised(0, 120, SPIN, 60, "Left hand");
        for (RecentWork.Worked arm : work().orElseThrow().arms()) {
            assertThat(arm.times()).isCloseTo(arm.side() == Side.LEFT ? 2 : 0, within(1e-9));
        }
        assertThat(told().orElseThrow().text()).contains("your left grip worked 2 times");
    }

    @Test
    void theLastSevenDaysAreSeven() {
        anHourAWeek();
        practised(6, 120, SPIN, 60, "");
        assertThat(told()).isPresent();
        entries.remove(entries.size() - 1);
        practised(7, 120, SPIN, 60, "");
        assertThat(told()).isEmpty();
    }

    @Test
    void aWeekOfLessThanAnHourIsNeverTooMuch() {
        for (int ago = 13; ago < 35; ago += 7) {
            practised(ago, 10, SPIN, 60, "");
        }
        practised(0, 59, SPIN, 60, "");
        assertThat(told()).isEmpty();
        practised(0, 1, SPIN, 60, "");
        assertThat(told().orElseThrow().text()).contains("worked 6 times as much");
    }

    @Test
    void aYoungLogKnowsNoUsual() {
        practised(19, 10, SPIN, 60, "");
        practised(0, 300, SPIN, 60, "");
        assertThat(work()).isEmpty();
        // Two weeks before the last seven days are enough, and are two weeks and not four.
        practised(20, 90, SPIN, 60, "");
        assertThat(work().orElseThrow().usualMinutes()).isCloseTo(50, within(1e-9));
        assertThat(told().orElseThrow().text()).contains("worked 6 times as much");
    }

    @Test
    void afterAPauseItSaysToBeginWithLess() {
        practised(60, 60, SPIN, 60, "");
        assertThat(told()).isEmpty();
        practised(0, 20, SPIN, 60, "");
        assertThat(told().orElseThrow().text()).contains("begin with less");
        practised(10, 60, SPIN, 60, "");
        assertThat(told()).isEmpty();
    }

    @Test
    void whatCannotBeReadCountsAsTheMeanOfTheOthers() {
        anHourAWeek();
        practised(0, 60, SPIN, 60, "");
        practised(0, 60, "the gate", 60, "");
        assertThat(work().orElseThrow().unweighed()).isEqualTo(60);
        assertThat(told().orElseThrow().text()).contains("worked 2 times as much");
        assertThat(told().orElseThrow().why()).contains("60 min could not be weighed");
    }

    @Test
    void whereNothingCanBeReadMinutesAloneCount() {
        for (int ago = 13; ago < 35; ago += 7) {
            practised(ago, 60, "the gate", 60, "");
        }
        practised(0, 120, "the gate", 60, "");
        assertThat(told().orElseThrow().text()).contains("worked 2 times as much");
    }
}

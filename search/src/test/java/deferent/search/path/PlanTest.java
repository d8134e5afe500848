package deferent.search.path;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class PlanTest {
    private static final long FROM = 1000;

    private static Drill drill(DrillKind kind, Side hand, String phrase, double hands, int before) {
        Pairing pairing = Phrase.parse(phrase).pairing();
        return new Drill(
                kind,
                kind == DrillKind.ALONE ? Optional.of(hand) : Optional.empty(),
                pairing,
                Phrase.write(pairing),
                new Hardness(hands, 0, 0, 0, 0, 0),
                IntStream.range(0, before).boxed().toList());
    }

    /** 15, 20, 25 and 30 minutes: 90 in all. */
    private static final Path PATH =
            new Path(
                    List.of(
                            drill(DrillKind.ALONE, Side.LEFT, "static spin vs point turns 0", 1, 0),
                            drill(DrillKind.ALONE, Side.RIGHT, "point turns 0 vs triquetra", 2, 0),
                            drill(
                                    DrillKind.SLOWER,
                                    Side.LEFT,
                                    "static spin vs triquetra, tempo 48",
                                    3,
                                    2),
                            drill(DrillKind.WHOLE, Side.LEFT, "static spin vs triquetra", 4, 3)),
                    List.of());

    private static Plan plan(List<Practised> practised, long from, long by, int minutes) {
        return Plan.of(PATH, practised, Lexicon.EMPTY, from, by, minutes);
    }

    private static Practised practised(long day, int number, double minutes, Went went) {
        Pairing pairing = PATH.drills().get(number).pairing();
        return new Practised(
                day,
                Phrase.write(pairing.withTempo(OptionalDouble.empty())).orElseThrow(),
                Optional.empty(),
                minutes,
                OptionalDouble.of(pairing.tempo()),
                Optional.of(went));
    }

    private static List<Practised> done(Plan plan, int days) {
        List<Practised> all = new ArrayList<>();
        for (PlannedDay day : plan.days().subList(0, days)) {
            for (Sitting sitting : day.sittings()) {
                all.add(practised(day.day(), sitting.number(), sitting.minutes(), Went.WELL));
            }
        }
        return all;
    }

    private static int learning(Plan plan) {
        return plan.days().stream()
                .flatMap(day -> day.sittings().stream())
                .filter(sitting -> !sitting.review())
                .mapToInt(Sitting::minutes)
                .sum();
    }

    private static List<Long> reviews(Plan plan, int number) {
        return plan.days().stream()
                .filter(
                        day ->
                                day.sittings().stream()
                                        .anyMatch(s -> s.review() && s.number() == number))
                .map(PlannedDay::day)
                .toList();
    }

    @Test
    void noDayAsksForMoreThanWasGivenAndAllIsLearntInOrder() {
        Plan plan = plan(List.of(), FROM, FROM + 30, 20);
        assertThat(plan.days()).hasSize(31);
        assertThat(plan.days()).allMatch(day -> day.minutes() <= 20);
        assertThat(learning(plan)).isEqualTo(90);
        List<Integer> order =
                plan.days().stream()
                        .flatMap(day -> day.sittings().stream())
                        .filter(sitting -> !sitting.review())
                        .map(Sitting::number)
                        .toList();
        assertThat(order).isSorted().contains(0, 1, 2, 3);
    }

    @Test
    void whatIsKnownComesBackWhenTheMethodSays() {
        Plan plan = plan(List.of(), FROM, FROM + 80, 60);
        // Learnt on the first day; then 1, 6, 15 and 38 days on.
        assertThat(reviews(plan, 0)).containsExactly(FROM + 1, FROM + 7, FROM + 22, FROM + 60);
    }

    @Test
    void aMissedWeekPlansAnewAndNothingDueIsLost() {
        Plan before = plan(List.of(), FROM, FROM + 30, 20);
        List<Practised> done = done(before, 3);
        long back = FROM + 10;
        Plan after = plan(done, back, FROM + 30, 20);
        assertThat(learning(after))
                .isEqualTo(
                        90
                                - learning(
                                        new Plan(
                                                PATH,
                                                0,
                                                0,
                                                20,
                                                before.days().subList(0, 3),
                                                List.of(),
                                                0)));
        assertThat(after.ready()).isGreaterThan(before.ready());
        assertThat(after.kept()).isTrue();
        for (int number = 0; number < 4; number++) {
            int n = number;
            // Before the week both hands were known, and both have come due in it.
            boolean known =
                    done.stream()
                                    .filter(
                                            p ->
                                                    p.phrase()
                                                            .equals(
                                                                    practised(0, n, 1, Went.WELL)
                                                                            .phrase()))
                                    .mapToDouble(Practised::minutes)
                                    .sum()
                            >= PATH.drills().get(n).minutes();
            if (known) {
                assertThat(reviews(after, n)).as("drill %s", n).first().isEqualTo(back);
            }
        }
        assertThat(reviews(after, 0)).isNotEmpty();
    }

    @Test
    void whatDoesNotFitIntoADayWaitsForTheNext() {
        List<Practised> all = new ArrayList<>();
        for (int number = 0; number < 4; number++) {
            all.add(practised(FROM - 20, number, 60, Went.WELL));
        }
        Plan plan = plan(all, FROM, FROM + 5, 5);
        // Five minutes hold one of them a day; the one that waits longest goes first.
        assertThat(IntStream.range(0, 4).mapToObj(n -> reviews(plan, n).get(0)).toList())
                .containsExactly(FROM, FROM + 1, FROM + 2, FROM + 3);
    }

    @Test
    void whatWentBadlyIsNotKnownYet() {
        Plan plan = plan(List.of(practised(FROM - 1, 0, 60, Went.BADLY)), FROM, FROM + 30, 20);
        assertThat(plan.days().get(0).sittings().get(0)).isEqualTo(new Sitting(0, 5, false));
    }

    @Test
    void whatWasKnownAndWentBadlyIsDueTheNextDay() {
        List<Practised> all =
                List.of(
                        practised(FROM - 3, 0, 15, Went.WELL),
                        practised(FROM - 2, 0, 5, Went.WELL),
                        practised(FROM - 1, 0, 5, Went.BADLY));
        assertThat(reviews(plan(all, FROM, FROM + 30, 20), 0)).startsWith(FROM, FROM + 1, FROM + 7);
    }

    @Test
    void oneHandOfThePatternCountsForThatHandAlone() {
        String whole = PATH.whole().phrase().orElseThrow();
        Practised left =
                new Practised(
                        FROM - 1,
                        whole,
                        Optional.of(Side.LEFT),
                        15,
                        OptionalDouble.empty(),
                        Optional.empty());
        Plan plan = plan(List.of(left), FROM, FROM + 30, 20);
        assertThat(learning(plan)).isEqualTo(75);
        assertThat(reviews(plan, 0)).startsWith(FROM);
    }

    @Test
    void theTempoTellsTheSlowerVersionFromThePatternItself() {
        Plan slower = plan(List.of(practised(FROM - 1, 2, 25, Went.WELL)), FROM, FROM + 30, 20);
        assertThat(reviews(slower, 2)).startsWith(FROM);
        Plan whole = plan(List.of(practised(FROM - 1, 3, 30, Went.WELL)), FROM, FROM + 30, 20);
        assertThat(reviews(whole, 3)).startsWith(FROM);
        assertThat(whole.ready()).isEqualTo(FROM - 1);
    }

    @Test
    void aDateThatCannotBeKeptIsToldWithTheDayOnWhichItIsReady() {
        Plan plan = plan(List.of(), FROM, FROM + 2, 20);
        assertThat(plan.kept()).isFalse();
        Plan later = plan(List.of(), FROM, plan.ready(), 20);
        assertThat(later.kept()).isTrue();
        assertThat(plan(List.of(), FROM, plan.ready() - 1, 20).kept()).isFalse();
    }

    @Test
    void aDayBeforeTheFirstIsRefused() {
        assertThatThrownBy(() -> plan(List.of(), FROM, FROM - 1, 20)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> plan(List.of(), FROM, FROM + 9, 4)).isInstanceOf(Refusal.class);
    }
}

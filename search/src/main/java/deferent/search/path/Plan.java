package deferent.search.path;

import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.Lexicon;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalLong;
import java.util.stream.IntStream;

/**
 * A path laid out over days. What is due comes first, what has waited longest before the rest; it
 * takes at most half of a day until the pattern itself is known, and what does not fit waits for
 * the next day, so nothing due is lost. The rest of a day goes to the first drill that is not known
 * yet. What is yet to come is taken to go well enough ({@link Went#UNSAID}).
 *
 * <p>A plan is worked out anew from what was practised, whatever was planned: a week that was
 * missed moves what was not done, and what has come due meanwhile is due on the first day.
 *
 * @param path what is learnt
 * @param from the first day
 * @param by the day on which it is wanted
 * @param minutesADay so many
 * @param days every day from the first to the one on which it is wanted, or later if it is not
 *     known by then
 * @param begun how far each drill is by what was practised so far
 * @param ready the day on which the pattern itself is known; before the first day if it is known
 *     already
 */
public record Plan(
        Path path,
        long from,
        long by,
        int minutesADay,
        List<PlannedDay> days,
        List<Standing> begun,
        long ready) {
    /** Fewer minutes a day are no plan. */
    public static final int LEAST = 5;

    public static final int MOST = 240;

    /** Minutes that keeping something known takes on a day on which it is due (our choice). */
    public static final int REVIEW = 3;

    public Plan {
        days = List.copyOf(days);
        begun = List.copyOf(begun);
    }

    /** Whether it is known on the day on which it is wanted. */
    public boolean kept() {
        return ready <= by;
    }

    /**
     * Laid out from a day on.
     *
     * @param practised what was practised so far, in any order; what is none of the path's drills
     *     is passed over
     * @param lexicon the user's own names for motions
     * @param by no earlier than {@code from}, and within ten years
     */
    public static Plan of(
            Path path,
            List<Practised> practised,
            Lexicon lexicon,
            long from,
            long by,
            int minutesADay) {
        Refusal.within(minutesADay, LEAST, MOST, "practice", "minutes a day");
        if (by < from || by - from > 3653) {
            throw new Refusal(
                    by < from ? "is before the first one" : "is more than ten years off",
                    "the day on which it is wanted",
                    "give one from the first day on, within ten years");
        }
        return new Laying(path, practised, lexicon, minutesADay).plan(from, by);
    }

    /** One plan in the making. */
    private static final class Laying {
        private final Path path;
        private final int minutesADay;
        private final Standing[] standings;
        private OptionalLong ready = OptionalLong.empty();

        Laying(Path path, List<Practised> practised, Lexicon lexicon, int minutesADay) {
            this.path = path;
            this.minutesADay = minutesADay;
            this.standings = new Standing[path.drills().size()];
            Arrays.fill(standings, Standing.NOTHING);
            Whose whose = new Whose(path, lexicon);
            practised.stream()
                    .sorted(Comparator.comparingLong(Practised::day))
                    .forEach(
                            one ->
                                    whose.of(one, this::known)
                                            .ifPresent(
                                                    n ->
                                                            after(
                                                                    n,
                                                                    one.day(),
                                                                    one.minutes(),
                                                                    one.quality())));
        }

        Plan plan(long from, long by) {
            List<Standing> begun = List.of(standings);
            List<PlannedDay> days = new ArrayList<>();
            for (long day = from; day <= by || ready.isEmpty(); day++) {
                days.add(new PlannedDay(day, sittings(day)));
            }
            return new Plan(path, from, by, minutesADay, days, begun, ready.orElseThrow());
        }

        private boolean known(int n) {
            return standings[n].known();
        }

        private void after(int n, long day, double minutes, int quality) {
            standings[n] =
                    standings[n].after(day, minutes, quality, path.drills().get(n).minutes());
            if (n == standings.length - 1 && known(n) && ready.isEmpty()) {
                ready = OptionalLong.of(day);
            }
        }

        private List<Sitting> sittings(long day) {
            List<Sitting> all = new ArrayList<>();
            int left = minutesADay;
            int reviews = ready.isPresent() ? left : Math.max(REVIEW, left / 2);
            for (int n : due(day)) {
                if (reviews >= REVIEW) {
                    all.add(new Sitting(n, REVIEW, true));
                    after(n, day, REVIEW, Went.UNSAID);
                    reviews -= REVIEW;
                    left -= REVIEW;
                }
            }
            for (int n = 0; n < standings.length && left > 0; n++) {
                if (!known(n)) {
                    int lacking = standings[n].left(drill(n).minutes());
                    int minutes = Math.min(left, lacking);
                    // A drill is not taken up for less than is worth the while.
                    if (minutes < lacking && left < Math.min(LEAST, minutesADay - REVIEW)) {
                        break;
                    }
                    all.add(new Sitting(n, minutes, false));
                    after(n, day, minutes, Went.UNSAID);
                    left -= minutes;
                }
            }
            return all;
        }

        private Drill drill(int n) {
            return path.drills().get(n);
        }

        /** What is due by that day, what has waited longest first. */
        private List<Integer> due(long day) {
            return IntStream.range(0, standings.length)
                    .filter(n -> known(n) && standings[n].due() <= day)
                    .boxed()
                    .sorted(Comparator.comparingLong(n -> standings[n].due()))
                    .toList();
        }
    }
}

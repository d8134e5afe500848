package deferent.motion.song;

import deferent.motion.pairing.Refusal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;

/**
 * When the beats of a song fall, and which of them begin a bar.
 *
 * <p>Beats are numbered from 0; between two of them their numbers run on evenly, and before the
 * first and after the last at the usual distance of their neighbours, so that every time has its
 * beat and every beat its time.
 *
 * @param times when each falls, seconds from the start of the sound, each after the one before; 2
 *     to {@value #MOST}
 * @param beatsABar how many make a bar, 1 to {@value #LONGEST_BAR}
 * @param firstBar the number of the first that begins a bar, below {@code beatsABar}
 */
public record Beats(List<Double> times, int beatsABar, int firstBar) {
    /** Ten hours of three a second are fewer. */
    public static final int MOST = 120_000;

    public static final int LONGEST_BAR = 16;

    /** The usual distance at an end is the median of so many. */
    private static final int NEIGHBOURS = 8;

    public Beats {
        times = List.copyOf(times);
        if (times.size() < 2 || times.size() > MOST) {
            throw new Refusal(
                    times.size() == 1 ? "is one alone" : "are " + times.size(),
                    "beats of a song",
                    "give 2 to " + MOST);
        }
        for (int i = 0; i < times.size(); i++) {
            double time = times.get(i);
            if (!Double.isFinite(time) || (i > 0 && !(time > times.get(i - 1)))) {
                throw new Refusal(
                        "falls at "
                                + time
                                + " s"
                                + (i > 0 ? " after " + times.get(i - 1) + " s" : ""),
                        "beat " + i + " of a song",
                        "give each a time after the one before");
            }
        }
        Refusal.within(beatsABar, 1, LONGEST_BAR, "bar of a song", "beats");
        Refusal.within(firstBar, 0, beatsABar - 1, "first bar of a song", "beats after the first");
    }

    /** Even ones: {@code count} of them, the first at {@code first} seconds. */
    public static Beats even(double first, double aMinute, int count, int beatsABar) {
        return new Beats(
                IntStream.range(0, count).mapToObj(i -> first + i * 60 / aMinute).toList(),
                beatsABar,
                0);
    }

    /** When a beat or a place between beats comes, seconds from the start of the sound. */
    public double time(double beat) {
        int last = times.size() - 1;
        if (beat <= 0) {
            return times.get(0) + beat * distance(0);
        }
        if (beat >= last) {
            return times.get(last) + (beat - last) * distance(Math.max(0, last - NEIGHBOURS));
        }
        int on = (int) beat;
        return times.get(on) + (beat - on) * (times.get(on + 1) - times.get(on));
    }

    /** Which beat, or place between beats, is on at a time, seconds from the start of the sound. */
    public double beat(double time) {
        int last = times.size() - 1;
        if (time <= times.get(0)) {
            return (time - times.get(0)) / distance(0);
        }
        if (time >= times.get(last)) {
            return last + (time - times.get(last)) / distance(Math.max(0, last - NEIGHBOURS));
        }
        int found = Collections.binarySearch(times, time);
        int on = found >= 0 ? found : -found - 2;
        return on + (time - times.get(on)) / (times.get(on + 1) - times.get(on));
    }

    /** The usual distance of two neighbours, of some from {@code from} on, seconds. */
    private double distance(int from) {
        List<Double> apart = new ArrayList<>();
        for (int i = from; i < Math.min(from + NEIGHBOURS, times.size() - 1); i++) {
            apart.add(times.get(i + 1) - times.get(i));
        }
        return median(apart);
    }

    private static double median(List<Double> numbers) {
        List<Double> sorted = numbers.stream().sorted().toList();
        int half = sorted.size() / 2;
        return sorted.size() % 2 == 1
                ? sorted.get(half)
                : (sorted.get(half - 1) + sorted.get(half)) / 2;
    }

    /** The usual tempo, beats a minute: of the median distance of two neighbours. */
    public double tempo() {
        return 60
                / median(
                        IntStream.range(1, times.size())
                                .mapToObj(i -> times.get(i) - times.get(i - 1))
                                .toList());
    }

    /** The mean tempo from one beat to a later one, beats a minute. */
    public double tempo(double from, double to) {
        if (!(to > from)) {
            throw new Refusal(
                    "ends at beat " + to + " and starts at " + from, "part of a song", "swap them");
        }
        return 60 * (to - from) / (time(to) - time(from));
    }

    /** Whether a beat is the first of a bar. */
    public boolean beginsBar(int beat) {
        return Math.floorMod(beat - firstBar, beatsABar) == 0;
    }

    /** The number of a beat in its bar as it is counted aloud, from 1. */
    public int inBar(int beat) {
        return Math.floorMod(beat - firstBar, beatsABar) + 1;
    }

    /** The number of a beat's bar, from 1; none of those before the first bar, 0 or less. */
    public int bar(int beat) {
        return Math.floorDiv(beat - firstBar, beatsABar) + 1;
    }

    /** Double time: one more in the middle of each two. A bar keeps its number of beats. */
    public Beats doubled() {
        return new Beats(
                IntStream.rangeClosed(0, 2 * (times.size() - 1))
                        .mapToObj(i -> time(i / 2.0))
                        .toList(),
                beatsABar,
                2 * firstBar % beatsABar);
    }

    /**
     * Half time: every other, that which begins the first bar among them. A bar keeps its number of
     * beats.
     */
    public Beats halved() {
        int from = firstBar % 2;
        return new Beats(
                IntStream.range(0, (times.size() - from + 1) / 2)
                        .mapToObj(i -> times.get(from + 2 * i))
                        .toList(),
                beatsABar,
                (firstBar - from) / 2);
    }
}

package deferent.search.set;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Swing;
import deferent.motion.shared.Side;
import deferent.motion.song.Beats;
import deferent.motion.song.SongClock;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What a set is spun to: the beats of a song, and the one on which the set begins.
 *
 * <p>The set is planned at the song's usual tempo; {@link SongClock} follows what it really does.
 * Each pattern is given a tempo so that its cycle, as its tempo counts cycles, lasts a whole number
 * of beats: said, or that with which it is nearest to its own tempo, of those that go evenly with
 * the song's bars. A pendulum that nobody drives keeps its own time.
 *
 * @param beats when they fall
 * @param fromBeat the beat on which the set begins, from 0
 */
public record ToSong(Beats beats, int fromBeat) {
    /** No cycle is given more beats. */
    public static final int MOST_BEATS = 32;

    /** None is chosen with more, where nothing is said. */
    private static final int MOST_CHOSEN = 16;

    /** Nearer to whole beats than that, in beats a cycle, a pendulum keeps the song's time. */
    private static final double ON_BEAT = 1e-6;

    private static final double SLOWEST = 1;
    private static final double FASTEST = 600;

    public ToSong {
        if (fromBeat < 0 || fromBeat >= beats.times().size()) {
            throw new Refusal(
                    "is " + fromBeat + " of a song of " + beats.times().size() + " beats",
                    "the beat on which the set begins",
                    "give 0 to " + (beats.times().size() - 1));
        }
    }

    /** The tempo at which the set is planned, beats a minute. */
    public double tempo() {
        return beats.tempo();
    }

    /** A beat at that tempo, seconds. */
    public double beat() {
        return 60 / tempo();
    }

    /** Turns the set's seconds into the song's. */
    public SongClock clock() {
        return SongClock.of(beats, fromBeat, tempo());
    }

    /**
     * How many beats a cycle lasts where nothing is said: those with which a pattern is nearest to
     * its own tempo, of the parts and multiples of a bar.
     */
    public int beatsACycle(Pairing pairing) {
        return nearest(tempo() / pairing.tempo());
    }

    /**
     * The number of beats nearest to another in proportion, of the parts and multiples of a bar.
     */
    private int nearest(double wanted) {
        int bar = beats.beatsABar();
        int best = bar;
        double least = Double.POSITIVE_INFINITY;
        for (int n = 1; n <= MOST_CHOSEN; n++) {
            double off = Math.abs(Math.log(n / wanted));
            if ((bar % n == 0 || n % bar == 0) && spinnable(n) && off < least - 1e-9) {
                best = n;
                least = off;
            }
        }
        return best;
    }

    private boolean spinnable(int beatsACycle) {
        double cycles = tempo() / beatsACycle;
        return cycles >= SLOWEST && cycles <= FASTEST;
    }

    /**
     * A pattern at the song's tempo.
     *
     * @param beatsACycle as said; empty for what {@link #beatsACycle} chooses
     */
    public Pairing fitted(Pairing pairing, OptionalInt beatsACycle) {
        if (pairing.setsOwnTempo()) {
            return pairing;
        }
        int asked = beatsACycle.orElseGet(() -> beatsACycle(pairing));
        Refusal.within(asked, 1, MOST_BEATS, "a cycle", "beats");
        if (!spinnable(asked)) {
            throw new Refusal(
                    "would be " + tempo() / asked + " cycles a minute",
                    "a cycle of " + asked + (asked == 1 ? " beat" : " beats"),
                    "give another number of beats, or take the song at half or double time");
        }
        return pairing.withTempo(OptionalDouble.of(tempo() / asked));
    }

    /** How many of the song's beats a cycle of a pattern lasts, as its tempo counts cycles. */
    public double beatsOf(Pairing pairing) {
        return tempo() / pairing.tempo();
    }

    /**
     * A pendulum that nobody drives, beside the song.
     *
     * @param beats how many of the song's beats its cord makes a swing last
     * @param whole how many it would best be given: the nearest that go evenly with the bars
     * @param tether the cord with which it lasts those, metres
     */
    public record Pendulum(double beats, int whole, double tether) {}

    /** The pendulum of a pattern, if it has one that nobody drives. */
    public Optional<Pendulum> pendulum(Pairing pairing, OptionalInt beatsACycle) {
        for (Side side : Side.values()) {
            Part part = pairing.part(side);
            if (part.motion().undriven()) {
                Swing swing = part.motion().spin().swing().orElseThrow();
                double period = swing.period(part.tether().length(), Gravity.STANDARD);
                int whole = beatsACycle.orElseGet(() -> nearest(period / beat()));
                return Optional.of(
                        new Pendulum(
                                period / beat(),
                                whole,
                                swing.tether(whole * beat(), Gravity.STANDARD)));
            }
        }
        return Optional.empty();
    }

    /** Whether a pattern keeps the song's time: its common cycle lasts whole beats. */
    public boolean keeps(Pairing pairing) {
        double beats = pairing.period() / beat();
        return Math.abs(beats - Math.rint(beats)) < ON_BEAT * Math.max(1, beats);
    }

    /** Seconds of the plan from a time on to the next beat, none where it is one. */
    double toBeat(double seconds) {
        double on = seconds / beat();
        return Math.max(0, Math.ceil(on - 1e-9) - on) * beat();
    }

    /** The bars as they go on from a beat of the plan, seconds from the set's begin. */
    SongBars bars(double seconds) {
        int on = fromBeat + (int) Math.rint(seconds / beat());
        return new SongBars(beats.beatsABar(), beats.inBar(on) - 1, beat());
    }
}

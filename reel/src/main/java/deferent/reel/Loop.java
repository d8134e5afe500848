package deferent.reel;

import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Rate;
import deferent.reel.Accompaniment.Pace;
import java.util.Optional;

/**
 * Which moment of the cycle each frame of a clip shows.
 *
 * <p>A cycle is seldom a whole number of frames long. So that a clip can be repeated without a
 * seam, its {@code k} cycles get the nearest whole number of frames and are spread evenly over
 * them: frame {@code i} of {@code n} shows the phase {@code i·k/n}, and the frame after the last is
 * the first again. The clip then spins a little faster or slower than asked, by half a frame over
 * the whole clip at most; {@link #tempoOff()} says how much. More cycles in a clip share that half
 * frame, and {@link #filling} picks the number that does so best.
 *
 * <p>What is not periodic is shown once, from its start to its end, each frame at its own time;
 * with a song, at the time that the song's clock has then.
 *
 * @param frames how many
 * @param cycles how many common cycles they show
 * @param rate frames a second
 * @param period of the common cycle as spun, seconds
 * @param slow seconds spun in a second of the clip: 1 as spun, 0.5 half as fast
 * @param seamless whether the end joins the start
 * @param pace of a song, which what is shown once goes along with
 */
record Loop(
        int frames,
        int cycles,
        Rate rate,
        double period,
        double slow,
        boolean seamless,
        Optional<Pace> pace) {
    /** An hour at sixty frames a second. */
    private static final int MOST_FRAMES = 216_000;

    /** How far from the time to fill a clip may be, as a share of it. */

    /** So many cycles, seamless. */
    static Loop of(double period, double slow, int cycles, Rate rate) {
        double exact = cycles * period / slow * rate.num() / rate.den();
        return new Loop(
                count(Math.rint(exact)), cycles, rate, period, slow, true, Optional.empty());
    }

    /** Once from the start to the end. */
    static Loop once(double length, double slow, Rate rate) {
        return once(length, length / slow, slow, rate, Optional.empty());
    }

    /** Once from the start to the end, along with a song. */
    static Loop along(Pace pace, double length, Rate rate) {
        return once(length, pace.seen(length), 1, rate, Optional.of(pace));
    }

    private static Loop once(
            double length, double seen, double slow, Rate rate, Optional<Pace> pace) {
        double exact = seen * rate.num() / rate.den();
        int frames = count(Math.floor(exact + 1e-9) + 1);
        return new Loop(frames, 1, rate, length, slow, false, pace);
    }

    private static int count(double frames) {
        if (!(frames >= 2)) {
            throw new Refusal(
                    "has fewer than two frames",
                    "length of a clip",
                    "give more cycles, a higher frame rate or slower motion");
        }
        if (frames > MOST_FRAMES) {
            throw new Refusal(
                    "has " + (long) frames + " frames",
                    "length of a clip",
                    "give fewer cycles or less slow motion: at most "
                            + MOST_FRAMES
                            + " frames, an hour at 60 a second");
        }
        return (int) frames;
    }

    /** How many whole cycles come nearest to a time in seconds; one at least. */
    static int filling(double seconds, double period, double slow) {
        Refusal.positive(seconds, 3600, "time to fill", "seconds");
        return (int) Math.max(1, Math.rint(seconds * slow / period));
    }

    /** What a frame shows, seconds from the start of the cycle, less than the period. */
    double moment(int frame) {
        if (!seamless) {
            double time = rate.time(frame);
            double moment = pace.isPresent() ? pace.get().moment(time) : slow * time;
            return Math.max(0, Math.min(moment, period));
        }
        // Whole numbers until the last step: the first frame of every cycle that falls on one is
        // exactly the first frame again.
        long turned = (long) frame * cycles % frames;
        return period * turned / frames;
    }

    /** How long the clip is, seconds. */
    double seconds() {
        return rate.time(frames);
    }

    /** How long it would be had it not to be a whole number of frames, seconds. */
    double asked() {
        return cycles * period / slow;
    }

    /** By which share the clip spins faster than asked; below 0, slower. */
    double tempoOff() {
        return seamless ? asked() / seconds() - 1 : 0;
    }

    /** When something at a moment of the cycle is seen in the clip, seconds. */
    double seen(double moment, int cycle) {
        if (seamless) {
            return (cycle + moment / period) / cycles * seconds();
        }
        return pace.isPresent() ? pace.get().seen(moment) : moment / slow;
    }
}

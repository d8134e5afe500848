package deferent.sound.tune;

import deferent.motion.pairing.Refusal;

/**
 * How a tune is to be: everything that chance does not decide while it is composed.
 *
 * @param tempo its usual tempo, beats a minute
 * @param beatsABar 2 to 7
 * @param seconds how long it plays
 * @param drift how its tempo moves
 * @param drifts by how much, a share of the tempo either way
 * @param swing where the second half of a beat begins, a share of the beat: 0.5 is even
 * @param band who plays
 * @param loose how far notes stray from their beats, deviation in seconds
 * @param missing how many beats nobody plays, a share
 * @param ornaments how many notes have a short one before them, a share
 * @param noise how loud noise is beside the music, a share of its strength (root mean square)
 * @param quiet how long it starts quietly, seconds
 * @param lead silence before the first beat, seconds
 */
public record Manner(
        double tempo,
        int beatsABar,
        double seconds,
        Drift drift,
        double drifts,
        double swing,
        Band band,
        double loose,
        double missing,
        double ornaments,
        double noise,
        double quiet,
        double lead) {
    /** How a tempo moves. */
    public enum Drift {
        STEADY,
        /** To and fro, in some twenty beats. */
        WANDERS,
        /** All the way from slower to quicker. */
        QUICKENS,
        /** All the way from quicker to slower. */
        SLOWS
    }

    /** Who plays. */
    public enum Band {
        DRUMS_BASS_STRINGS,
        DRUMS_STRINGS,
        BASS_STRINGS,
        STRINGS,
        DRUMS;

        boolean drums() {
            return this != BASS_STRINGS && this != STRINGS;
        }

        boolean bass() {
            return this == DRUMS_BASS_STRINGS || this == BASS_STRINGS;
        }

        boolean strings() {
            return this != DRUMS;
        }
    }

    public Manner {
        Refusal.within(tempo, 30, 300, "tune's tempo", "beats a minute");
        Refusal.within(beatsABar, 2, 7, "tune's bar", "beats");
        Refusal.within(seconds, 2, 40_000, "tune", "s");
        Refusal.within(drifts, 0, 0.3, "tune's drift", "of its tempo");
        Refusal.within(swing, 0.5, 0.75, "tune's swing", "of a beat");
    }

    /** A steady one in which nothing is in the way. */
    public static Manner plain(double tempo, int beatsABar, double seconds) {
        return new Manner(
                tempo,
                beatsABar,
                seconds,
                Drift.STEADY,
                0,
                0.5,
                Band.DRUMS_BASS_STRINGS,
                0,
                0,
                0,
                0,
                0,
                0.5);
    }

    /** As chance has it: of ten, three keep their tempo, three are in three, six have noise. */
    public static Manner drawn(long seed, double tempo, double seconds) {
        Dice dice = new Dice(seed);
        int beatsABar = dice.happens(0.3) ? 3 : 4;
        Drift drift = Drift.STEADY;
        double drifts = 0;
        if (dice.happens(0.7)) {
            drift = new Drift[] {Drift.WANDERS, Drift.QUICKENS, Drift.SLOWS}[dice.whole(3)];
            drifts = dice.between(0.01, 0.07);
        }
        return new Manner(
                tempo,
                beatsABar,
                seconds,
                drift,
                drifts,
                dice.happens(0.35) ? dice.between(0.54, 0.67) : 0.5,
                Band.values()[dice.whole(Band.values().length)],
                dice.between(0, 0.012),
                dice.happens(0.6) ? dice.between(0, 0.15) : 0,
                dice.happens(0.4) ? dice.between(0, 0.15) : 0,
                dice.happens(0.6) ? dice.between(0.02, 0.3) : 0,
                dice.happens(0.3) ? dice.between(2, 5) : 0,
                dice.between(0.2, 1.5));
    }
}

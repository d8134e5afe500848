package deferent.motion.phrase;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Side;

/** What a hand does, in the trade's words where it has some, else described. */
public final class MotionWords {
    private MotionWords() {}

    public static String of(Pairing pairing, Side side) {
        return of(pairing, side, Lexicon.EMPTY);
    }

    public static String of(Pairing pairing, Side side, Lexicon lexicon) {
        return describe(pairing.part(side).motion(), pairing.part(side).tether().length());
    }

    static String describe(Motion motion, double tether) {
        return motion.petals() > 0 ? motion.petals() + " petals" : "a motion of its own";
    }
}

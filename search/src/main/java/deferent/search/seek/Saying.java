package deferent.search.seek;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.MotionWords;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import java.util.List;
import java.util.Optional;

/**
 * An answer in words: its phrase where the trade can say it on one line, else what each hand does.
 *
 * @param text the words
 * @param phrase whether they read back as exactly this pairing
 */
record Saying(String text, boolean phrase) {
    // A hand path of more terms than this is a list of numbers, not a phrase.
    private static final int SAYABLE = 3;

    static Saying of(Pairing pairing) {
        Optional<String> phrase =
                sayable(pairing.left().motion()) && sayable(pairing.right().motion())
                        ? Phrase.write(pairing)
                        : Optional.empty();
        return phrase.map(text -> new Saying(text, true))
                .orElseGet(
                        () ->
                                new Saying(
                                        side(pairing, Side.LEFT)
                                                + " vs "
                                                + side(pairing, Side.RIGHT),
                                        false));
    }

    /** One motion alone. */
    static String of(Motion motion, Tether tether) {
        Part part = new Part(motion, tether, Place.usual(Side.LEFT, Plane.WALL), 1);
        return side(
                Pairing.of(
                        part,
                        new Part(
                                Motion.staticSpin(1, 0),
                                tether,
                                Place.usual(Side.RIGHT, Plane.WALL),
                                1)),
                Side.LEFT);
    }

    private static String side(Pairing pairing, Side side) {
        Motion motion = pairing.part(side).motion();
        if (sayable(motion)) {
            return MotionWords.of(pairing, side);
        }
        int n = motion.spin().turns();
        return "hand to and fro on a pendulum's arc, "
                + (n == 0 ? "poi pointing one way" : "poi turning " + n + " times a swing");
    }

    private static boolean sayable(Motion motion) {
        return motion.path().asTerms().map(List::size).orElse(0) <= SAYABLE;
    }
}

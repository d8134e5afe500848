package deferent.film;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Timing;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import java.nio.file.Path;

/**
 * Makes docs/practice.mp4, the film that ships as an example: the invented duo's static spin vs
 * triquetra as cords let it be spun, rendered and spoilt like a phone's, the right hand's circle
 * and time a little off on purpose. Nobody was filmed.
 */
final class PracticeFilm {
    /** What was meant. */
    static final String MEANT = "static spin vs triquetra at 40";

    private static final double SECONDS = 9;
    private static final double PIXEL = 0.005;

    private PracticeFilm() {}

    static Pairing spun() {
        Pairing meant = Phrase.parse(MEANT).pairing();
        return meant.with(
                        Side.RIGHT,
                        meant.right()
                                .with(
                                        meant.right()
                                                .motion()
                                                .withPath(
                                                        meant.right()
                                                                .motion()
                                                                .path()
                                                                .resized(0.5))))
                .with(Timing.of(0.97));
    }

    public static void main(String[] to) {
        Spoilt phone =
                new Spoilt(30, 1 / 60.0, 1.2, 0.22, 0, 0, 0, Spoilt.TWO_LAMPS, 0, 0, 0, 0, true, 0);
        RenderedFilm film =
                new RenderedFilm(Classics.corded(spun(), true).orElseThrow(), phone, PIXEL, 3);
        Tried.code(film, SECONDS, Path.of(to[0]));
    }
}

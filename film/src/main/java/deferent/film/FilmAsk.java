package deferent.film;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Sense;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.Tether;
import deferent.reading.tether.Kit;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is known of a film beforehand.
 *
 * @param tether metres, of both; where it is unsaid, the meant pairing's, or the usual
 * @param metresAPixel at the performer, where it is known
 * @param mirrored whether the picture is a mirror's
 * @param first whose the head is that stands further to the picture's left when both are first
 *     seen; empty where nobody said
 * @param meant what was meant, where a phrase says it
 * @param anySense whether that leaves open which way round it goes
 * @param readout seconds in which the camera reads a picture from its first row to its last; 0
 *     where all rows are read at once
 * @param kit the poi
 */
public record FilmAsk(
        OptionalDouble tether,
        OptionalDouble metresAPixel,
        boolean mirrored,
        Optional<Side> first,
        Optional<Pairing> meant,
        boolean anySense,
        double readout,
        Kit kit) {
    public FilmAsk {
        tether.ifPresent(l -> Refusal.within(l, 0.1, 5, "a film's tether", "m"));
        metresAPixel.ifPresent(s -> Refusal.within(s, 1e-5, 0.1, "a film's scale", "m"));
        Refusal.within(readout, 0, 0.1, "a camera's readout", "s");
    }

    /** Nothing but what is usual. */
    public static final FilmAsk NOTHING =
            new FilmAsk(
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    false,
                    Optional.empty(),
                    Optional.empty(),
                    true,
                    0,
                    Kit.USUAL);

    /** With a scale. */
    public FilmAsk scaled(double metres) {
        return new FilmAsk(
                tether, OptionalDouble.of(metres), mirrored, first, meant, anySense, readout, kit);
    }

    /** With a tether, metres. */
    public FilmAsk tethered(double metres) {
        return new FilmAsk(
                OptionalDouble.of(metres),
                metresAPixel,
                mirrored,
                first,
                meant,
                anySense,
                readout,
                kit);
    }

    /** With whose the head is that stands further to the picture's left at first. */
    public FilmAsk first(Side side) {
        return new FilmAsk(
                tether, metresAPixel, mirrored, Optional.of(side), meant, anySense, readout, kit);
    }

    /** The same, the picture being a mirror's or not. */
    public FilmAsk mirrored(boolean mirror) {
        return new FilmAsk(tether, metresAPixel, mirror, first, meant, anySense, readout, kit);
    }

    /** With a camera's readout, seconds. */
    public FilmAsk reading(double seconds) {
        return new FilmAsk(tether, metresAPixel, mirrored, first, meant, anySense, seconds, kit);
    }

    /** With what was meant. */
    public FilmAsk meaning(Pairing pairing, boolean sense) {
        return new FilmAsk(
                tether, metresAPixel, mirrored, first, Optional.of(pairing), sense, readout, kit);
    }

    /**
     * With what was meant, as it was said: the sense is left open where the words do not say it.
     */
    public FilmAsk meaning(Pairing pairing, String said) {
        return meaning(
                pairing,
                pairing.sense() == Sense.CLOCKWISE
                        && !said.toLowerCase(Locale.ROOT).contains("clockwise"));
    }

    /** The tether of a side, metres. */
    double tether(Side side) {
        return tether.orElseGet(
                () -> meant.map(p -> p.part(side).tether().length()).orElse(Tether.USUAL.length()));
    }
}

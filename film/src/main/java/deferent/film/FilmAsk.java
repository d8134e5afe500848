package deferent.film;

import deferent.film.follow.HeadAt;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Sense;
import deferent.motion.pairing.Tether;
import deferent.motion.shared.Side;
import deferent.motion.trace.Interval;
import deferent.reading.tether.Kit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;

/**
 * What is known of a film beforehand.
 *
 * @param tether metres, of both; where it is unsaid, the meant pairing's, or the usual
 * @param metresAPixel at the performer, where it is known
 * @param mirrored whether the picture is a mirror's
 * @param first whose the head is that stands further to the picture's left when both are first
 *     seen, or whose is pointed at first; empty where nobody said
 * @param meant what was meant, where a phrase says it
 * @param anySense whether that leaves open which way round it goes
 * @param readout seconds in which the camera reads a picture from its first row to its last; 0
 *     where all rows are read at once
 * @param kit the poi
 * @param heads both heads, where somebody pointed at each in a frame; else none
 * @param passage of the film, seconds; empty for the whole
 * @param roll radians by which what is upright is turned counter-clockwise in the picture, where
 *     that is known
 */
public record FilmAsk(
        OptionalDouble tether,
        OptionalDouble metresAPixel,
        boolean mirrored,
        Optional<Side> first,
        Optional<Pairing> meant,
        boolean anySense,
        double readout,
        Kit kit,
        List<HeadAt> heads,
        Optional<Interval> passage,
        OptionalDouble roll) {
    public FilmAsk {
        tether.ifPresent(l -> Refusal.within(l, 0.1, 5, "a film's tether", "m"));
        metresAPixel.ifPresent(s -> Refusal.within(s, 1e-5, 0.1, "a film's scale", "m"));
        Refusal.within(readout, 0, 0.1, "a camera's readout", "s");
        roll.ifPresent(r -> Refusal.within(r, -Math.PI / 2, Math.PI / 2, "a camera's roll", "rad"));
        heads = List.copyOf(heads);
        if (heads.size() == 1 || heads.size() > 2) {
            throw new Refusal(
                    heads.size() == 1 ? "is pointed at alone" : "are more than two",
                    heads.size() == 1 ? "one head" : "heads that are pointed at",
                    "point at each head once");
        }
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
                    Kit.USUAL,
                    List.of(),
                    Optional.empty(),
                    OptionalDouble.empty());

    // All of it, for one change.
    private static final class Draft {
        private OptionalDouble tether;
        private OptionalDouble metresAPixel;
        private boolean mirrored;
        private Optional<Side> first;
        private Optional<Pairing> meant;
        private boolean anySense;
        private double readout;
        private final Kit kit;
        private List<HeadAt> heads;
        private Optional<Interval> passage;
        private OptionalDouble roll;

        Draft(FilmAsk ask) {
            tether = ask.tether;
            metresAPixel = ask.metresAPixel;
            mirrored = ask.mirrored;
            first = ask.first;
            meant = ask.meant;
            anySense = ask.anySense;
            readout = ask.readout;
            kit = ask.kit;
            heads = ask.heads;
            passage = ask.passage;
            roll = ask.roll;
        }

        FilmAsk done() {
            return new FilmAsk(
                    tether,
                    metresAPixel,
                    mirrored,
                    first,
                    meant,
                    anySense,
                    readout,
                    kit,
                    heads,
                    passage,
                    roll);
        }
    }

    private FilmAsk with(Consumer<Draft> change) {
        Draft draft = new Draft(this);
        change.accept(draft);
        return draft.done();
    }

    /** With a scale. */
    public FilmAsk scaled(double metres) {
        return with(d -> d.metresAPixel = OptionalDouble.of(metres));
    }

    /** With a tether, metres. */
    public FilmAsk tethered(double metres) {
        return with(d -> d.tether = OptionalDouble.of(metres));
    }

    /**
     * With whose the head is that stands further to the picture's left, or is pointed at, first.
     */
    public FilmAsk first(Side side) {
        return with(d -> d.first = Optional.of(side));
    }

    /** The same, the picture being a mirror's or not. */
    public FilmAsk mirrored(boolean mirror) {
        return with(d -> d.mirrored = mirror);
    }

    /** With a camera's readout, seconds. */
    public FilmAsk reading(double seconds) {
        return with(d -> d.readout = seconds);
    }

    /** With what was meant. */
    public FilmAsk meaning(Pairing pairing, boolean sense) {
        return with(
                d -> {
                    d.meant = Optional.of(pairing);
                    d.anySense = sense;
                });
    }

    /**
     * With both heads pointed at, each in a frame of its own or both in one: what else is lit or
     * moves does not count. Where it is also said whose head is {@link #first}, it is the one that
     * is named first here.
     */
    public FilmAsk pointing(HeadAt one, HeadAt other) {
        return with(d -> d.heads = List.of(one, other));
    }

    /** A passage of the film alone. */
    public FilmAsk within(Interval seconds) {
        return with(d -> d.passage = Optional.of(seconds));
    }

    /** The same of the whole film. */
    FilmAsk whole() {
        return with(d -> d.passage = Optional.empty());
    }

    /** The same where nobody says whose head is whose. */
    FilmAsk unsided() {
        return with(d -> d.first = Optional.empty());
    }

    /** With how far what is upright is turned counter-clockwise in the picture, radians. */
    public FilmAsk rolled(double radians) {
        return with(d -> d.roll = OptionalDouble.of(radians));
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

package deferent.studio;

import static deferent.studio.AskKey.keys;

import deferent.motion.phrase.Lexicon;
import deferent.record.PatternDocument;
import deferent.search.crossing.CrossingRequest;
import deferent.search.crossing.Crossings;
import deferent.search.crossing.Freedom;
import deferent.search.crossing.Who;
import java.util.List;

/**
 * What a question about crossings asks: from which pattern into which, and what counts as one.
 *
 * @param from the pattern that is left
 * @param to the pattern that is entered, as it was given
 */
record CrossingAsk(PatternDocument from, PatternDocument to, CrossingRequest request) {

    private static final AskKey<Question> TO =
            AskKey.object("to", "the pattern that is passed into", Matter.KEYS);

    private static final AskKey<Double> TOLERANCE =
            AskKey.number("tolerance_m", "how far apart still meets", 0.001, 1, "m");
    private static final AskKey<Double> SPEED_TOLERANCE =
            AskKey.number("speed_tolerance_m_s", "and how unlike in velocity", 0.01, 100, "m/s");
    private static final AskKey<Double> BLEND =
            AskKey.number("blend_s", "how long one eases into the other", 0.05, 2, "s");

    private static final AskKey<Double> SHIFT =
            AskKey.number("shift_m", "how far the second may be shifted", 0, 10, "m");
    private static final AskKey<Double> TURN =
            AskKey.number("turn_deg", "how far it may be turned", 0, 180, "degrees");
    private static final AskKey<Boolean> MIRROR =
            AskKey.yes("mirror", "whether it may be mirrored");
    private static final AskKey<Double> TEMPO =
            AskKey.number("tempo_factor", "how much faster or slower it may be", 1, 4, "");
    private static final AskKey<Boolean> TIMING =
            AskKey.yes("timing", "whether its timing may change");
    private static final AskKey<Question> FREEDOM =
            AskKey.object(
                    "freedom",
                    "what may be done to the second pattern so that it is met",
                    keys(SHIFT, TURN, MIRROR, TEMPO, TIMING));
    private static final AskKey<Who> WHO =
            AskKey.one("who", "which hands cross; unsaid is both", Who.class);

    /** What counts as a crossing between patterns that stay where they are. */
    static final List<AskKey<?>> AS_THEY_STAND = keys(TOLERANCE, SPEED_TOLERANCE, BLEND);

    static final List<AskKey<?>> KEYS =
            keys(Matter.KEYS, AS_THEY_STAND, keys(TO.must(), FREEDOM, WHO));

    /** Reads the pattern, "to", and what counts as a crossing. */
    static CrossingAsk of(Question asked, Lexicon lexicon) {
        Matter from = Matter.of(asked, lexicon);
        Matter to = Matter.of(asked.get(TO), lexicon);
        return new CrossingAsk(from.document(), to.document(), request(asked));
    }

    private static CrossingRequest request(Question asked) {
        Freedom freedom = asked.maybe(FREEDOM).map(CrossingAsk::freedom).orElse(Freedom.NONE);
        return asTheyStand(asked).with(asked.or(WHO, Who.BOTH)).with(freedom);
    }

    /** What counts as one between patterns that stay where they are. */
    static CrossingRequest asTheyStand(Question asked) {
        CrossingRequest usual = CrossingRequest.USUAL;
        return usual.withTolerance(
                        asked.or(TOLERANCE, usual.place()),
                        asked.or(SPEED_TOLERANCE, usual.speed()))
                .withBlend(asked.or(BLEND, usual.blend()));
    }

    private static Freedom freedom(Question asked) {
        return Freedom.NONE
                .withShift(asked.or(SHIFT, 0.0))
                .withTurn(Math.toRadians(asked.or(TURN, 0.0)))
                .withMirror(asked.or(MIRROR, false))
                .withTempo(asked.or(TEMPO, 1.0))
                .withTiming(asked.or(TIMING, false));
    }

    Crossings found() {
        return Crossings.between(from.pairing(), to.pairing(), request);
    }
}

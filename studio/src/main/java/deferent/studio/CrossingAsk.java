package deferent.studio;

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

    /** Reads the pattern, "to", and what counts as a crossing. */
    static CrossingAsk of(Question asked, Lexicon lexicon) {
        Matter from = Matter.of(asked, lexicon);
        Question inner =
                asked.maybeObject("to")
                        .orElseThrow(
                                () ->
                                        new BadRequest(
                                                400,
                                                "is missing",
                                                "to",
                                                "give {\"phrase\": ...} or {\"pattern\": ...}"));
        Matter to = Matter.of(inner, lexicon);
        inner.done();
        return new CrossingAsk(from.document(), to.document(), request(asked));
    }

    private static CrossingRequest request(Question asked) {
        Freedom freedom =
                asked.maybeObject("freedom").map(CrossingAsk::freedom).orElse(Freedom.NONE);
        Who who =
                switch (asked.word("who", List.of("both", "left", "right"))) {
                    case "left" -> Who.LEFT;
                    case "right" -> Who.RIGHT;
                    default -> Who.BOTH;
                };
        return asTheyStand(asked).with(who).with(freedom);
    }

    /** What counts as one between patterns that stay where they are. */
    static CrossingRequest asTheyStand(Question asked) {
        CrossingRequest usual = CrossingRequest.USUAL;
        return usual.withTolerance(
                        asked.maybeNumber("tolerance_m", 0.001, 1).orElse(usual.place()),
                        asked.maybeNumber("speed_tolerance_m_s", 0.01, 100).orElse(usual.speed()))
                .withBlend(asked.maybeNumber("blend_s", 0.05, 2).orElse(usual.blend()));
    }

    private static Freedom freedom(Question asked) {
        Freedom freedom =
                Freedom.NONE
                        .withShift(asked.maybeNumber("shift_m", 0, 10).orElse(0))
                        .withTurn(Math.toRadians(asked.maybeNumber("turn_deg", 0, 180).orElse(0)))
                        .withMirror(asked.yes("mirror", false))
                        .withTempo(asked.maybeNumber("tempo_factor", 1, 4).orElse(1))
                        .withTiming(asked.yes("timing", false));
        asked.done();
        return freedom;
    }

    Crossings found() {
        return Crossings.between(from.pairing(), to.pairing(), request);
    }
}

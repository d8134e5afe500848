package deferent.studio;

import static deferent.studio.AskKey.keys;

import deferent.search.crossing.CrossingRequest;
import java.util.List;

/** What counts as a crossing of the map. */
final class CrossingAsk {
    private CrossingAsk() {}

    private static final AskKey<Double> TOLERANCE =
            AskKey.number("tolerance_m", "how far apart still meets", 0.001, 1, "m");
    private static final AskKey<Double> SPEED_TOLERANCE =
            AskKey.number("speed_tolerance_m_s", "and how unlike in velocity", 0.01, 100, "m/s");
    private static final AskKey<Double> BLEND =
            AskKey.number("blend_s", "how long one eases into the other", 0.05, 2, "s");

    static final List<AskKey<?>> AS_THEY_STAND = keys(TOLERANCE, SPEED_TOLERANCE, BLEND);

    static CrossingRequest asTheyStand(Question asked) {
        CrossingRequest usual = CrossingRequest.USUAL;
        return usual.withTolerance(
                        asked.or(TOLERANCE, usual.place()),
                        asked.or(SPEED_TOLERANCE, usual.speed()))
                .withBlend(asked.or(BLEND, usual.blend()));
    }
}

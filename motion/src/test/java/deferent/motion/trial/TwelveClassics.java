package deferent.motion.trial;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** The twelve classics, and any of them so that the livelier poi goes round so often. */
public final class TwelveClassics {
    public static final List<String> ALL =
            List.of(
                    "static spin vs triquetra",
                    "isolation vs horizontal cat-eye, split time",
                    "CAP riding pendulum",
                    "triquetra riding pendulum",
                    "extension vs triquetra",
                    "extension vs extension, opposites",
                    "isolation vs isolation, split time",
                    "four-petal antispin vs static spin",
                    "four-petal antispin vs four-petal in-spin",
                    "pendulum vs one-petal in-spin riding",
                    "horizontal cat-eye vs static spin",
                    "CAP vs CAP, split time");

    private TwelveClassics() {}

    /** The list, for tests of each. */
    public static List<String> all() {
        return ALL;
    }

    /** With so many turns a minute of the poi that turns more; a pendulum keeps its own tempo. */
    public static Pairing turning(String phrase, double turnsAMinute) {
        Pairing pairing = Phrase.parse(phrase).pairing();
        if (pairing.setsOwnTempo()) {
            return pairing;
        }
        double turns =
                Stream.of(Side.values())
                        .map(pairing::part)
                        .mapToDouble(p -> p.cycles() * Math.abs(p.motion().spin().turns()))
                        .max()
                        .orElseThrow();
        double now = Math.max(1, turns) / pairing.period() * 60;
        return pairing.withTempo(OptionalDouble.of(pairing.tempo() * turnsAMinute / now));
    }
}

package deferent.reading.danger;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.body.Room;
import deferent.reading.tether.Kit;
import deferent.reading.tether.Pull;
import deferent.reading.worked.Detail;
import deferent.reading.worked.Worked;
import java.util.OptionalDouble;

/** Dangers read of a pairing, with its pulls. */
final class Read {
    private Read() {}

    static Dangers of(Pairing pairing, Kit kit, Detail detail) {
        Trace trace = Trace.of(pairing);
        return Dangers.of(
                trace,
                Performer.USUAL,
                kit,
                Worked.of("room", () -> Room.of(trace, Performer.USUAL)),
                pull(trace, Side.LEFT, kit),
                pull(trace, Side.RIGHT, kit),
                detail);
    }

    private static Worked<Pull> pull(Trace trace, Side side, Kit kit) {
        return Worked.of("the pull", () -> Pull.of(trace, side, kit));
    }

    static Dangers of(Pairing pairing, Kit kit) {
        return of(pairing, kit, Detail.SETTLED);
    }

    static Dangers of(String phrase) {
        return of(Phrase.parse(phrase).pairing(), Kit.USUAL);
    }

    static Pairing at(String phrase, double tempo) {
        return Phrase.parse(phrase).pairing().withTempo(OptionalDouble.of(tempo));
    }
}

package deferent.take;

import deferent.motion.pairing.Pairing;
import deferent.motion.trace.Trace;
import deferent.reading.photo.PhotoReading;
import deferent.reading.tether.Kit;
import deferent.reading.worked.Worked;
import deferent.tell.TellPhoto;
import java.util.Optional;
import java.util.stream.Stream;

/** What to say beside a clip of several patterns whose lights move fast. */
final class FastLights {
    private FastLights() {}

    static Optional<String> of(Stream<Pairing> patterns, Kit kit, Wishes wishes) {
        double slow = wishes.number(Wish.SLOW).orElse(1);
        return patterns.distinct()
                .flatMap(
                        pairing ->
                                Worked.of(
                                        "how fast the lights go",
                                        () ->
                                                PhotoReading.of(
                                                        Trace.of(pairing), kit.headDiameter()))
                                        .reading()
                                        .flatMap(read -> TellPhoto.fastLights(read, slow))
                                        .stream())
                .findFirst();
    }
}

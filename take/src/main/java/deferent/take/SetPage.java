package deferent.take;

import deferent.page.sheet.Taught;
import deferent.page.web.HallPage;
import deferent.page.web.TaughtSet;
import deferent.page.web.TaughtShelf;
import deferent.page.web.TaughtSong;
import deferent.record.PatternDocument;
import deferent.record.SetPlaces;
import deferent.record.cue.SungSet;
import deferent.reel.HeardPart;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A set as the hall file of it alone, to its song where it has one, with the sound inside. */
final class SetPage {
    /** What is heard after the set's end, seconds. */
    private static final double AFTER = 1;

    private SetPage() {}

    static Streamed.Writing of(SetTake take) {
        return (out, listener, stop) -> {
            List<PatternDocument> patterns = patterns(take);
            Optional<List<Taught>> taught =
                    Taught.of(
                            patterns,
                            take.lexicon(),
                            0,
                            at -> listener.accept(TakeProgress.of(at)),
                            stop);
            if (taught.isEmpty()) {
                return Optional.empty();
            }
            TaughtSet set =
                    new TaughtSet(
                            take.reading(),
                            take.book(),
                            Optional.empty(),
                            take.song().map(sung -> song(sung, true)));
            String html =
                    HallPage.of(
                            new TaughtShelf(
                                    take.reading().name(),
                                    taught.get(),
                                    patterns.size(),
                                    List.of(set),
                                    take.lexicon()));
            out.write(html.getBytes(StandardCharsets.UTF_8));
            return Optional.of(
                    "page that plays the set" + (take.song().isPresent() ? " to its song" : ""));
        };
    }

    /** The patterns as they are kept; in the set each is at the tempo that it has there. */
    private static List<PatternDocument> patterns(SetTake take) {
        List<PatternDocument> patterns = new ArrayList<>();
        for (SetPlaces.Place place : take.reading().places()) {
            place.pattern()
                    .filter(
                            kept ->
                                    patterns.stream()
                                            .noneMatch(p -> p.pairing().equals(kept.pairing())))
                    .ifPresent(patterns::add);
        }
        return patterns;
    }

    /**
     * The song as a page plays it, from a bar before the set begins.
     *
     * @param heard whether its sound is taken along, where it is there
     */
    static TaughtSong song(SungSet sung, boolean heard) {
        double begins =
                sung.clock()
                        .time(
                                sung.clock()
                                        .onBeat(
                                                sung.clock().fromBeat()
                                                        - sung.beats().beatsABar()));
        byte[] sound =
                sung.sound()
                        .filter(file -> heard)
                        .map(file -> HeardPart.of(file, begins, sung.ends() + AFTER - begins))
                        .orElse(new byte[0]);
        return new TaughtSong(sung, sound, HeardPart.MEDIA_TYPE, begins);
    }
}

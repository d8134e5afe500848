package deferent.take;

import deferent.page.Layer;
import deferent.page.web.LessonPage;
import deferent.reading.worked.Detail;
import deferent.record.PatternDocument;
import deferent.search.whole.Readings;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/** A page that plays by itself. */
record PageEnding(String key, String mediaType, String words) implements Streamed {
    private static final Family FAMILY =
            new Family("page", "Lesson page", "to play and scrub without a network");

    @Override
    public Family family() {
        return FAMILY;
    }

    @Override
    public List<Offer> offers() {
        return Offer.all(
                List.of(Wish.CORD, Wish.VIEW, Wish.LEFT_HANDED),
                Wish.WITH.usual().choosing(Offer.Choice.layers(Layer.BODY)));
    }

    @Override
    public Writing writing(Take take) {
        Subject subject = take.subject();
        PatternDocument document = subject.document();
        Readings readings =
                Readings.of(
                        document.pairing(),
                        document.performer(),
                        document.kit(),
                        Detail.SETTLED,
                        take.lexicon());
        String page =
                LessonPage.of(
                        subject.scene(take.wishes().layers()),
                        readings,
                        subject.named(),
                        document.note(),
                        take.wishes().view().stand());
        return Writing.whole("page", page.getBytes(StandardCharsets.UTF_8));
    }

    @Override
    public Optional<Preview> preview(Take take, boolean calm, BooleanSupplier stop)
            throws IOException {
        return writing(take)
                .bytes(stop)
                .map(
                        page ->
                                Preview.of(page, mediaType, "one file, " + Taken.size(page.length))
                                        .moving());
    }
}

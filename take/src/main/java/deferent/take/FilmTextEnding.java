package deferent.take;

import deferent.film.words.FilmJson;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/** What was read from a film, for programs. */
record FilmTextEnding() implements FilmEnding, Streamed {
    private static final int SHOWN = 1200; // signs of a preview

    @Override
    public String key() {
        return "json";
    }

    @Override
    public String mediaType() {
        return "application/json";
    }

    @Override
    public String words() {
        return "what was read from the film, with the mean cycle of hands and heads";
    }

    @Override
    public Family family() {
        return Endings.of(key()).family();
    }

    @Override
    public List<Offer> offers() {
        return List.of();
    }

    @Override
    public Writing writing(Take take) {
        String json = FilmJson.writeWithTrace(take.filmed().reading());
        return Writing.whole("reading and mean cycle", json.getBytes(StandardCharsets.UTF_8));
    }

    @Override
    public Optional<Preview> preview(Take take, boolean calm, BooleanSupplier stop)
            throws IOException {
        return writing(take)
                .bytes(stop)
                .map(
                        all ->
                                Preview.of(
                                        Arrays.copyOf(all, Math.min(all.length, SHOWN)),
                                        "text/plain",
                                        Taken.size(all.length)));
    }
}

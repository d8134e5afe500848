package deferent.record;

import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Tether;
import deferent.search.seek.FoundAfar;
import deferent.search.seek.SeekRequest;
import deferent.search.seek.Space;
import deferent.search.seek.Tethers;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * The answers of a seek that ran elsewhere, page by page: a family once, the simplest first.
 *
 * @param folder where {@code pages/} stands
 * @param request what was sought
 * @param links how many links there are
 * @param exact how many of them are exact
 * @param families how many families of the exact ones
 * @param size families a page
 */
public record AnswerPages(
        Path folder, SeekRequest request, long links, long exact, int families, int size) {
    private static final int VERSION = 1;
    private static final long MOST_BYTES = 1_000_000;
    private static final JsonMapper JSON = JsonMapper.builder().build();

    /**
     * Those of a folder.
     *
     * @throws Refusal where there are none, or of a newer version
     */
    public static AnswerPages of(Path folder) {
        Path file = folder.resolve("pages").resolve("index.json");
        JsonNode index = read(file);
        int version = index.path("deferent_pages").asInt(0);
        if (version < 1 || version > VERSION) {
            throw new Refusal(
                    "is of version " + version,
                    file.toString(),
                    "take another folder, or a Deferent that knows that version");
        }
        JsonNode grid = index.path("grid");
        SeekRequest request =
                SeekRequest.of(
                                Space.of(
                                        new Space.Grid(
                                                whole(grid, "circle_steps", file),
                                                whole(grid, "pair_steps", file),
                                                whole(grid, "most_tethers", file),
                                                whole(grid, "turns", file),
                                                whole(grid, "starts", file),
                                                whole(grid, "arcs", file),
                                                grid.path("stretches").asBoolean(false))))
                        .with(Tether.of(index.path("tether_m").asDouble(0)))
                        .with(
                                index.path("tethers").asString("").equals("free")
                                        ? Tethers.FREE
                                        : Tethers.EQUAL)
                        .withTolerance(index.path("tolerance_m").asDouble(0));
        return new AnswerPages(
                folder,
                request,
                index.path("links").asLong(0),
                index.path("exact_links").asLong(0),
                whole(index, "families", file),
                whole(index, "page_size", file));
    }

    /** How many pages there are. */
    public int pages() {
        return (families + size - 1) / size;
    }

    /** One page of them, the first is 1. */
    public List<FoundAfar> page(int number) {
        if (number < 1 || number > pages()) {
            throw new Refusal("is page " + number, "page", "give 1 to " + pages());
        }
        Path file =
                folder.resolve("pages")
                        .resolve(String.format(Locale.ROOT, "page-%05d.json", number));
        List<FoundAfar> found = new ArrayList<>();
        for (JsonNode one : read(file)) {
            FoundAfar link =
                    new FoundAfar(
                            one.path("carrier").asLong(-1),
                            one.path("rider").asLong(-1),
                            one.path("gap").asDouble(1),
                            whole(one, "carriers", file),
                            whole(one, "riders", file),
                            one.path("family").asString(""),
                            whole(one, "links", file),
                            one.path("pairs").asLong(0));
            if (!request.space().holds(link.carrier()) || !request.space().holds(link.rider())) {
                throw new Refusal(
                        "names a motion that its space has not",
                        file.toString(),
                        "let deferent-far write the pages anew");
            }
            found.add(link);
        }
        return found;
    }

    private static int whole(JsonNode node, String key, Path file) {
        JsonNode value = node.path(key);
        if (!value.isIntegralNumber() || !value.canConvertToInt()) {
            throw new Refusal(
                    "has no whole number \"" + key + "\"",
                    file.toString(),
                    "let deferent-far write the pages anew");
        }
        return value.asInt();
    }

    private static JsonNode read(Path file) {
        try {
            if (!Files.isRegularFile(file) || Files.size(file) > MOST_BYTES) {
                throw new Refusal(
                        "has no answers to leaf through",
                        file.toString(),
                        "give a folder that deferent-far seek wrote to its end");
            }
            return JSON.readTree(Files.readString(file));
        } catch (JacksonException e) {
            throw new Refusal(
                    "is not JSON", file.toString(), "let deferent-far write the pages anew");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

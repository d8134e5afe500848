package deferent.far;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Tether;
import deferent.search.seek.Bands;
import deferent.search.seek.SeekRequest;
import deferent.search.seek.Space;
import deferent.search.seek.Tethers;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;

/**
 * A seek cut into units: what is sought, where the bands are parted, and into how many shares by
 * signature each band is split, so that no unit outgrows a machine. Written as {@value #FILE}
 * beside the answers; whoever reads it makes the same units.
 *
 * @param request what is sought
 * @param edges where the bands are parted
 * @param shares into how many units each band is split
 */
record Errand(SeekRequest request, double[] edges, int[] shares) {
    static final String FILE = "request.json";
    static final int VERSION = 1;

    private static final JsonMapper JSON = JsonMapper.builder().build();
    private static final Map<String, Made> MADE = new ConcurrentHashMap<>();

    /** Errand and bands, made once in a process and used by all of its tasks. */
    record Made(Errand errand, Bands bands) {}

    Errand {
        if (shares.length != edges.length + 1) {
            throw new Refusal("has " + shares.length + " shares", FILE, "give one a band");
        }
    }

    /**
     * Cuts a seek.
     *
     * @param motions about how many a unit shall have; 49 bytes a motion are held while it is
     *     joined
     */
    static Errand of(SeekRequest request, long motions) {
        long all = request.space().count();
        Bands bands = Bands.of(request, (int) Math.max(1, Math.min(50_000, all / motions)));
        // many curves may have one number and fall in one band, however finely it is cut
        int[] shares =
                Arrays.stream(bands.expected())
                        .mapToInt(
                                expected ->
                                        (int) Math.max(1, Math.round((double) expected / motions)))
                        .toArray();
        return new Errand(request, bands.edges(), shares);
    }

    Bands bands() {
        return Bands.at(request, edges);
    }

    int units() {
        return Arrays.stream(shares).sum();
    }

    /** The first unit of each band, and the number of all behind them. */
    int[] firsts() {
        int[] firsts = new int[shares.length + 1];
        System.arraycopy(shares, 0, firsts, 1, shares.length);
        Arrays.parallelPrefix(firsts, Integer::sum);
        return firsts;
    }

    /** The band of a unit. */
    int band(int unit) {
        int at = Arrays.binarySearch(firsts(), unit);
        return at < 0 ? -at - 2 : at;
    }

    /** Where a unit's answers stand, below the folder. */
    String file(int unit) {
        int band = band(unit);
        return String.format(
                Locale.ROOT, "answers/band=%05d/share-%03d.parquet", band, unit - firsts()[band]);
    }

    /** The bands that hold these units. */
    BitSet bandsOf(BitSet units) {
        BitSet bands = new BitSet();
        int[] firsts = firsts();
        for (int band = 0; band < shares.length; band++) {
            int unit = units.nextSetBit(firsts[band]);
            bands.set(band, unit >= 0 && unit < firsts[band + 1]);
        }
        return bands;
    }

    String json() {
        ObjectNode node = JSON.createObjectNode();
        node.put("deferent_far", VERSION);
        node.setAll(asked());
        ArrayNode parted = node.putArray("edges");
        DoubleStream.of(edges).forEach(parted::add);
        ArrayNode split = node.putArray("shares");
        IntStream.of(shares).forEach(split::add);
        return node.toPrettyString() + "\n";
    }

    /** What is sought, as JSON. */
    ObjectNode asked() {
        Space.Grid grid = request.space().grid();
        ObjectNode node = JSON.createObjectNode();
        node.putObject("grid")
                .put("circle_steps", grid.circleSteps())
                .put("pair_steps", grid.pairSteps())
                .put("most_tethers", grid.most())
                .put("turns", grid.turns())
                .put("starts", grid.starts())
                .put("arcs", grid.arcs())
                .put("stretches", grid.stretches());
        node.put("tether_m", request.tether().length());
        node.put("tethers", request.tethers().name().toLowerCase(Locale.ROOT));
        node.put("tolerance_m", request.tolerance());
        return node;
    }

    /** Whether both ask for the same, however it was cut. */
    boolean asksAs(Errand other) {
        return asked().equals(other.asked());
    }

    static Errand parse(String json) {
        JsonNode node;
        try {
            node = JSON.readTree(json);
        } catch (JsonProcessingException e) {
            throw new Refusal("is not JSON", FILE, "take another folder");
        }
        int version = node.path("deferent_far").asInt(0);
        if (version < 1 || version > VERSION) {
            throw new Refusal(
                    "is of version " + version,
                    FILE,
                    "take another folder, or a Deferent that knows that version");
        }
        JsonNode grid = node.required("grid");
        SeekRequest request =
                SeekRequest.of(
                                Space.of(
                                        new Space.Grid(
                                                grid.required("circle_steps").asInt(),
                                                grid.required("pair_steps").asInt(),
                                                grid.required("most_tethers").asInt(),
                                                grid.required("turns").asInt(),
                                                grid.required("starts").asInt(),
                                                grid.required("arcs").asInt(),
                                                grid.required("stretches").asBoolean())))
                        .with(Tether.of(node.required("tether_m").asDouble()))
                        .with(
                                node.required("tethers").asText().equals("free")
                                        ? Tethers.FREE
                                        : Tethers.EQUAL)
                        .withTolerance(node.required("tolerance_m").asDouble());
        return new Errand(
                request,
                listed(node, "edges").mapToDouble(JsonNode::asDouble).toArray(),
                listed(node, "shares").mapToInt(JsonNode::asInt).toArray());
    }

    private static Stream<JsonNode> listed(JsonNode node, String key) {
        return StreamSupport.stream(node.required(key).spliterator(), false);
    }

    /** What a task asks for: read once in a process. */
    static Made made(String json) {
        return MADE.computeIfAbsent(
                json,
                text -> {
                    Errand errand = parse(text);
                    return new Made(errand, errand.bands());
                });
    }
}

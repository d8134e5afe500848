package deferent.search.seek;

import deferent.motion.pairing.Refusal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A seek cut into bands that know nothing of each other: parts of a space's curves by size, or,
 * where tethers are free and all sizes are one, by how much of the size is in the terms that go
 * round once. Both numbers are norms of part of a curve's terms, so two curves' numbers are never
 * further apart than the curves' clock gap, and a head has to ask only hands within the tolerance
 * of its own band.
 *
 * <p>A curve's number comes from the same rounded moduli as its {@link Signature}: equal signatures
 * lie in one band, no class is cut, and the bands' matches are those of the whole.
 *
 * <pre>
 * Bands bands = Bands.of(request, 16);
 * for (int band = 0; band &lt; bands.count(); band++) {
 *     BandMatches found = bands.seek(band);
 * }
 * </pre>
 *
 * Or, in pieces that run anywhere: {@link #key(long, long)} over parts of the key range, the keyed
 * motions of one band brought together, {@link #join}. Space, tethers, nearness and the edges are
 * all there is to know about bands.
 */
public final class Bands {
    private static final int SLICE = 4096;
    private static final int SAMPLED_PATHS = 4096;
    private static final int SAMPLED_MOTIONS = 16;
    private static final long KEYS_AT_ONCE = 1 << 20;

    /** What rounding moduli to a ten-millionth, and leaving out shorter terms, can do to a norm. */
    private static final double ROUNDING = 1e-6;

    private final SeekRequest request;
    private final Look look;
    private final double[] edges;

    private Bands(SeekRequest request, double[] edges) {
        this.request = request;
        this.look = new Look(request.space(), request.tethers());
        this.edges = edges.clone();
        for (int i = 1; i < edges.length; i++) {
            if (!(edges[i] >= edges[i - 1])) {
                throw new Refusal("do not rise", "edges of bands", "give them in order");
            }
        }
    }

    /** Bands with as many motions each, as far as a sample tells: some may hold more, some none. */
    public static Bands of(SeekRequest request, int count) {
        Refusal.within(count, 1, 100_000, "bands", "bands");
        double[][] sample = sample(new Bands(request, new double[0]));
        double all = Arrays.stream(sample).mapToDouble(s -> s[1]).sum();
        double[] edges = new double[count - 1];
        double sum = 0;
        int edge = 0;
        for (double[] one : sample) {
            sum += one[1];
            while (edge < edges.length && sum > all * (edge + 1) / count) {
                edges[edge++] = one[0];
            }
        }
        Arrays.fill(edges, edge, edges.length, Double.MAX_VALUE);
        return new Bands(request, edges);
    }

    /** Bands parted at these numbers, as {@link #edges} told them. */
    public static Bands at(SeekRequest request, double[] edges) {
        return new Bands(request, edges);
    }

    /** Numbers and weights of some of the space's head paths, by rising number. */
    private static double[][] sample(Bands bands) {
        Space space = bands.request.space();
        List<double[]> found = new ArrayList<>();
        int paths = Math.min(SAMPLED_PATHS, space.paths());
        for (int i = 0; i < paths; i++) {
            long[] riders = space.riders((int) ((long) space.paths() * i / paths));
            int step = Math.max(1, riders.length / SAMPLED_MOTIONS);
            // not the same start angle each time
            for (int r = i % step; r < riders.length; r += step) {
                found.add(new double[] {bands.look.number(bands.look.head(riders[r])), step});
            }
        }
        found.sort(Comparator.comparingDouble(s -> s[0]));
        return found.toArray(double[][]::new);
    }

    /** About how many motions lie in each band, from a sample. */
    public long[] expected() {
        double[] sum = new double[count()];
        double[][] sample = sample(this);
        double all = Arrays.stream(sample).mapToDouble(s -> s[1]).sum();
        for (double[] one : sample) {
            sum[band(one[0])] += one[1] / all * request.space().count();
        }
        return Arrays.stream(sum).mapToLong(Math::round).toArray();
    }

    public int count() {
        return edges.length + 1;
    }

    /** Where each band but the first begins. */
    public double[] edges() {
        return edges.clone();
    }

    private int band(double number) {
        int low = 0;
        int high = edges.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (edges[middle] <= number) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private double from(int band) {
        return band == 0 ? 0 : edges[band - 1];
    }

    private double to(int band) {
        return band == edges.length ? Double.MAX_VALUE : edges[band];
    }

    /**
     * Key: the motions among the keys from {@code from} to below {@code to}, each with its band.
     */
    public Keyed key(long from, long to) {
        return key(from, to, 0, count());
    }

    /** The same of one band; most others are ruled out by their power, without their curve. */
    public Keyed key(long from, long to, int band) {
        return key(from, to, band, band + 1);
    }

    /** The same of the bands from {@code first} to below {@code end}. */
    public Keyed key(long from, long to, int first, int end) {
        Keying keying = new Keying(first, end);
        request.space().motions(from, to, keying);
        return keying.keyed();
    }

    /** Takes a space's motions in their order and keeps those of its bands. */
    private final class Keying implements Space.Visitor {
        private final int first;
        private final int end;
        private final boolean ruling;
        private final double least;
        private final double most;
        private long[] keys = new long[1024];
        private long[] signatures = new long[1024];
        private int[] bands = new int[1024];
        private int count;

        Keying(int first, int end) {
            this.first = first;
            this.end = end;
            ruling = request.tethers() == Tethers.EQUAL && end - first < count();
            least = from(first) - ROUNDING;
            most = to(end - 1) + ROUNDING;
        }

        @Override
        public boolean wants(double size) {
            return !ruling || size >= least && size < most;
        }

        @Override
        public void motion(long key, SeriesCurve head) {
            SeriesCurve shown = look.shown(head);
            int band = band(look.number(shown));
            if (band < first || band >= end) {
                return;
            }
            if (count == keys.length) {
                keys = Arrays.copyOf(keys, 2 * count);
                signatures = Arrays.copyOf(signatures, 2 * count);
                bands = Arrays.copyOf(bands, 2 * count);
            }
            keys[count] = key;
            signatures[count] = Signature.of(shown);
            bands[count++] = band;
        }

        Keyed keyed() {
            return new Keyed(
                    Arrays.copyOf(keys, count),
                    Arrays.copyOf(signatures, count),
                    Arrays.copyOf(bands, count));
        }
    }

    /**
     * Join: the matches of a band's head paths, or of those of some of its signatures.
     *
     * @param keys of motions of the band, in any order; of equal signatures all or none
     * @param signatures theirs, one a key
     */
    public BandMatches join(int band, long[] keys, long[] signatures) {
        HeadClasses heads = HeadClasses.of(look, keys, signatures);
        double reach = request.nearness() + 2 * ROUNDING;
        HandClasses hands = HandClasses.within(look, from(band) - reach, to(band) + reach);
        Join join = new Join(look, heads, hands, request.nearness());
        int slices = (heads.count() + SLICE - 1) / SLICE;
        List<Matches> parts =
                IntStream.range(0, slices)
                        .parallel()
                        .mapToObj(
                                s ->
                                        join.slice(
                                                s * SLICE,
                                                Math.min(heads.count(), (s + 1) * SLICE)))
                        .toList();
        return BandMatches.of(request.space(), heads, hands, parts);
    }

    /** Everything of one band, here: its motions keyed, gathered and joined. */
    public BandMatches seek(int band) {
        long all = request.space().keys();
        int slices = (int) Math.min(1 << 16, (all + KEYS_AT_ONCE - 1) / KEYS_AT_ONCE);
        List<Keyed> parts =
                IntStream.range(0, slices)
                        .parallel()
                        .mapToObj(s -> key(part(all, s, slices), part(all, s + 1, slices), band))
                        .toList();
        int count = parts.stream().mapToInt(Keyed::count).sum();
        long[] keys = new long[count];
        long[] signatures = new long[count];
        int at = 0;
        for (Keyed part : parts) {
            System.arraycopy(part.keys(), 0, keys, at, part.count());
            System.arraycopy(part.signatures(), 0, signatures, at, part.count());
            at += part.count();
        }
        return join(band, keys, signatures);
    }

    private static long part(long all, long s, long slices) {
        return all / slices * s + all % slices * s / slices;
    }
}

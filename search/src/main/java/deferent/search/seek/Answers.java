package deferent.search.seek;

import deferent.motion.pairing.Drawn;
import deferent.motion.pairing.Pairing;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import java.util.stream.LongStream;

/**
 * What a seek has found: class matches, and from them the answers asked for.
 *
 * <p>A pair of motions that links both ways (each head goes where the other's hand goes) stands in
 * two class matches; it is one pairing, so {@link #pairings(Answer)} and {@link #exactPairings()}
 * have it once, in the match of the smaller gap, then of the lower key as carrier.
 */
public final class Answers {
    /** A gap up to this, in tethers, is no gap: linked exactly. */
    static final double EXACT = 2e-6;

    private final SeekRequest request;
    private final HeadClasses heads;
    private final HandClasses hands;
    private final Matches matches;
    private final Staging staging;
    private final Staging alike;
    private final Judge judge;
    private final Map<Integer, Long> simplestRider = new HashMap<>();
    private final Map<Integer, long[]> striking = new HashMap<>();

    Answers(SeekRequest request, HeadClasses heads, HandClasses hands, Matches matches) {
        this.request = request;
        this.heads = heads;
        this.hands = hands;
        this.matches = matches;
        this.staging = new Staging(request.space(), request.tethers(), request.tether().length());
        this.alike = new Staging(request.space(), Tethers.EQUAL, request.tether().length());
        this.judge = new Judge(request);
    }

    /** Class matches. */
    public int count() {
        return matches.count();
    }

    /** Class matches that link exactly. */
    public int exactCount() {
        return (int) IntStream.range(0, count()).filter(this::exact).count();
    }

    /** Different head paths among the space's motions. */
    public int headPaths() {
        return heads.count();
    }

    /** Different hand paths among them. */
    public int handPaths() {
        return hands.count();
    }

    /** Full comparisons of two curves that it took. */
    public long comparisons() {
        return matches.comparisons();
    }

    /** Pairs of carrier and rider that the matches stand for. */
    public long pairs() {
        return IntStream.range(0, count()).mapToLong(this::pairs).sum();
    }

    /** Exactly linked pairs of carrier and rider. */
    public long exactPairs() {
        return IntStream.range(0, count()).filter(this::exact).mapToLong(this::pairs).sum();
    }

    /**
     * Exactly linked pairings, those that link both ways once: of the pairs of carrier and rider
     * every one of two unlike motions that also links the other way is there twice.
     */
    public long exactPairings() {
        Map<Long, Long> kinds = new TreeMap<>();
        List<Integer> exact = IntStream.range(0, count()).filter(this::exact).boxed().toList();
        Map<Integer, List<Integer>> headsOf = new HashMap<>();
        for (int m : exact) {
            headsOf.computeIfAbsent(matches.hand(m), h -> new ArrayList<>()).add(matches.head(m));
        }
        for (int head : exact.stream().map(matches::head).distinct().toList()) {
            for (long key : heads.members(head)) {
                int hand = hands.of(key);
                if (hand >= 0) {
                    kinds.merge(kind(head, hand), 1L, Long::sum);
                }
            }
        }
        long bothWays = 0;
        for (int m : exact) {
            int head = matches.head(m);
            int hand = matches.hand(m);
            for (int other : ridden(head)) {
                for (int lead : headsOf.getOrDefault(other, List.of())) {
                    bothWays +=
                            kinds.getOrDefault(kind(head, other), 0L)
                                    * kinds.getOrDefault(kind(lead, hand), 0L);
                }
            }
        }
        long withItself = 0;
        for (int m : exact) {
            withItself += kinds.getOrDefault(kind(matches.head(m), matches.hand(m)), 0L);
        }
        return exactPairs() - (bothWays - withItself) / 2;
    }

    private List<Integer> ridden(int head) {
        return Arrays.stream(heads.members(head))
                .mapToInt(hands::of)
                .filter(h -> h >= 0)
                .distinct()
                .boxed()
                .toList();
    }

    private static long kind(int head, int hand) {
        return (long) head << 32 | hand;
    }

    private boolean exact(int match) {
        return matches.gap(match) <= EXACT;
    }

    private long pairs(int match) {
        return (long) heads.size(matches.head(match)) * hands.riders(matches.hand(match));
    }

    /** Keys of an answer's carriers. */
    public long[] carriers(Answer answer) {
        return heads.members(answer.headClass());
    }

    /** Keys of its riders. */
    public long[] riders(Answer answer) {
        return hands.keys(answer.handClass());
    }

    /** The pairing of one of its carriers and one of its riders. */
    public Pairing pairing(long carrier, long rider) {
        return staging.pairing(carrier, rider);
    }

    /**
     * An answer's pairings, carrier by carrier, without those that are told by the match the other
     * way round.
     */
    public List<long[]> pairings(Answer answer) {
        List<long[]> found = new ArrayList<>();
        for (long carrier : carriers(answer)) {
            for (long rider : riders(answer)) {
                if (own(carrier, rider)) {
                    found.add(new long[] {carrier, rider});
                }
            }
        }
        return found;
    }

    /** Whether a pair that links is told this way round. */
    private boolean own(long carrier, long rider) {
        int back = hands.of(carrier) < 0 ? -1 : matches.find(heads.of(rider), hands.of(carrier));
        if (back < 0 || carrier == rider) {
            return true;
        }
        int there = matches.find(heads.of(carrier), hands.of(rider));
        double less = matches.gap(there) - matches.gap(back);
        return Math.abs(less) > EXACT ? less < 0 : carrier < rider;
    }

    /** Whether this carrier and this rider link within the tolerance. */
    public boolean links(long carrier, long rider) {
        return hands.of(rider) >= 0
                && heads.of(carrier) >= 0
                && matches.find(heads.of(carrier), hands.of(rider)) >= 0;
    }

    /** One match with the pair that stands for it. */
    record Candidate(int match, long carrier, long rider, int simplicity, BothFigures seen) {}

    /** The answers asked for, filtered, in the order asked for. */
    public List<Answer> list() {
        return list(answer -> {}, () -> false);
    }

    /**
     * The answers asked for, filtered, in the order asked for.
     *
     * @param found told of each as it is worked out, on the calling thread; orders that need a
     *     trace are only known at the end, and of these some are left out then
     * @param stop asked before each; what was worked out by then is the answer
     */
    public List<Answer> list(Consumer<Answer> found, BooleanSupplier stop) {
        return switch (request.order()) {
            case TRY -> toTry(found, stop);
            case NEAR_SHELF -> besideTheShelf(found, stop);
            default -> ranked(found, stop);
        };
    }

    private List<Answer> toTry(Consumer<Answer> each, BooleanSupplier stop) {
        List<Answer> found = new ArrayList<>();
        new Ideas(request, heads, hands, matches)
                .each(
                        tried -> {
                            answer(tried)
                                    .ifPresent(
                                            answer -> {
                                                found.add(answer);
                                                each.accept(answer);
                                            });
                            return found.size() < request.limit();
                        },
                        stop);
        return List.copyOf(found);
    }

    private Optional<Answer> answer(Ideas.Tried tried) {
        Ideas.Sketch sketch = tried.sketch();
        Candidate candidate = measured(sketch.match(), sketch.carrier(), sketch.rider());
        return passes(candidate)
                ? judge.asSized(linked(candidate), tried.pairing()).map(a -> a.tried(tried))
                : Optional.empty();
    }

    private boolean passes(Candidate candidate) {
        return candidate.seen.contrast() >= request.filter().leastContrast()
                && candidate.seen.symmetry() >= request.filter().leastSymmetry();
    }

    // Each pattern of the shelf asks for more like itself, and the nearest of all that are told.
    private List<Answer> besideTheShelf(Consumer<Answer> each, BooleanSupplier stop) {
        Map<String, Integer> families = new HashMap<>();
        Map<long[], Answer> found = new TreeMap<>(Arrays::compare);
        for (Pairing pattern : request.shelf()) {
            if (stop.getAsBoolean()) {
                break;
            }
            for (Like like : like(pattern, request.limit())) {
                Answer answer = like.answer();
                if (!request.filter().exactOnly() || answer.exact()) {
                    long[] key = {answer.carrier(), answer.rider()};
                    if (found.putIfAbsent(key, answer) == null) {
                        each.accept(answer);
                    }
                }
            }
        }
        return found.values().stream()
                .filter(a -> a.merit().contrast() >= request.filter().leastContrast())
                .filter(a -> a.merit().symmetry() >= request.filter().leastSymmetry())
                .sorted(Comparator.comparingDouble(this::lateRank))
                .filter(
                        a ->
                                families.merge(a.family().name(), 1, Integer::sum)
                                        <= request.perFamily())
                .limit(request.limit())
                .toList();
    }

    private List<Answer> ranked(Consumer<Answer> each, BooleanSupplier stop) {
        List<Candidate> candidates = new ArrayList<>();
        for (int m = 0; m < count(); m++) {
            if (request.filter().exactOnly() && !exact(m)) {
                continue;
            }
            candidates.add(candidate(m));
        }
        candidates.sort(Comparator.comparingDouble(this::rank).thenComparing(this::byGap));
        // What costs a trace is worked out for the first few times as many as are asked for.
        int times =
                switch (request.order()) {
                    case TRY, CLOSEST, SYMMETRY, CONTRAST, NEAR_SHELF -> 1;
                    case SLOWEST, STEADINESS -> 2;
                    case REACH, NEW -> 5;
                };
        int most = times * request.limit();
        Map<String, Integer> families = new HashMap<>();
        List<Answer> found = new ArrayList<>();
        for (Candidate candidate : candidates) {
            if (found.size() >= most || stop.getAsBoolean()) {
                break;
            }
            if (!passes(candidate)) {
                continue;
            }
            String family = family(candidate);
            if (families.getOrDefault(family, 0) >= request.perFamily()) {
                continue;
            }
            answer(candidate)
                    .ifPresent(
                            answer -> {
                                families.merge(family, 1, Integer::sum);
                                found.add(answer);
                                each.accept(answer);
                            });
        }
        if (times > 1) {
            found.sort(Comparator.comparingDouble(this::lateRank).thenComparingDouble(this::small));
        }
        return List.copyOf(found.subList(0, Math.min(found.size(), request.limit())));
    }

    private String family(Candidate c) {
        return Sight.family(request.space(), c.carrier, c.rider);
    }

    private double rank(Candidate c) {
        return switch (request.order()) {
            case SYMMETRY -> c.seen.symmetry() == 0 ? -1000 : -c.seen.symmetry();
            case CONTRAST -> -c.seen.contrast();
            case TRY, CLOSEST, REACH, SLOWEST, STEADINESS, NEAR_SHELF, NEW -> 0;
        };
    }

    private int byGap(Candidate a, Candidate b) {
        double ga = exact(a.match) ? 0 : matches.gap(a.match);
        double gb = exact(b.match) ? 0 : matches.gap(b.match);
        int closer = Double.compare(ga, gb);
        int bySaying = Integer.compare(a.simplicity, b.simplicity);
        return closer != 0 ? closer : bySaying != 0 ? bySaying : a.match - b.match;
    }

    private double lateRank(Answer a) {
        Merit merit = a.merit();
        return switch (request.order()) {
            case REACH -> merit.missing();
            case SLOWEST -> merit.slowest().orElse(Double.MAX_VALUE);
            case STEADINESS -> merit.growth().orElse(Double.MAX_VALUE);
            case NEAR_SHELF -> merit.toShelf().orElse(Double.MAX_VALUE);
            case NEW -> -merit.toShelf().orElse(0);
            case TRY, CLOSEST, SYMMETRY, CONTRAST -> 0;
        };
    }

    // Of what is reached, what keeps the longest tethers is in reach best.
    private double small(Answer a) {
        return request.order() == Order.REACH ? -a.pairing().left().tether().length() : 0;
    }

    private Candidate candidate(int match) {
        Space space = request.space();
        int head = matches.head(match);
        long carrier = Sight.simplest(space, heads.members(head));
        int hand = matches.hand(match);
        long rider = simplestRider.computeIfAbsent(hand, h -> Sight.simplest(space, hands.keys(h)));
        Candidate best = measured(match, carrier, rider);
        if (request.order() != Order.CONTRAST && request.order() != Order.SYMMETRY) {
            return best;
        }
        for (long other : striking.computeIfAbsent(hand, this::striking)) {
            Candidate here = measured(match, carrier, other);
            if (rank(here) < rank(best)) {
                best = here;
            }
        }
        return best;
    }

    /**
     * Of a hand path's riders the simplest of each symmetry, and those of the largest and smallest
     * figure.
     */
    private long[] striking(int hand) {
        Space space = request.space();
        Map<Integer, Long> bySymmetry = new TreeMap<>();
        long largest = -1;
        long smallest = -1;
        double most = -1;
        double least = Double.MAX_VALUE;
        for (long key : hands.keys(hand)) {
            SeriesCurve head = space.head(key);
            bySymmetry.merge(
                    head.symmetry(),
                    key,
                    (a, b) -> Sight.simplicity(space, b) < Sight.simplicity(space, a) ? b : a);
            double radius = Sight.outerRadius(head);
            if (radius > most) {
                most = radius;
                largest = key;
            }
            if (radius < least && radius > Look.POINT) {
                least = radius;
                smallest = key;
            }
        }
        return LongStream.concat(
                        bySymmetry.values().stream().mapToLong(Long::longValue),
                        LongStream.of(largest, smallest).filter(k -> k >= 0))
                .toArray();
    }

    private Candidate measured(int match, long carrier, long rider) {
        Space space = request.space();
        return new Candidate(
                match,
                carrier,
                rider,
                Sight.simplicity(space, carrier) + Sight.simplicity(space, rider),
                BothFigures.of(space, carrier, rider));
    }

    private Optional<Answer> answer(Candidate c) {
        return judge.answer(linked(c), request.filter().reachable());
    }

    private Linked linked(Candidate c) {
        int head = matches.head(c.match);
        int hand = matches.hand(c.match);
        return new Linked(
                head,
                hand,
                heads.size(head),
                hands.riders(hand),
                matches.gap(c.match),
                c.carrier,
                c.rider,
                c.seen,
                Family.of(family(c), pairs(c.match)));
    }

    /**
     * More like this: the answers' pairings nearest to a given one in what hands and heads draw,
     * one a class, nearest first. A pairing of the space finds itself at no distance. They keep
     * their sizes, reached or not, as it is these that are likened.
     */
    public List<Like> like(Pairing given, int count) {
        Portrait wanted = Portrait.of(given);
        double tether = staging.tether();
        double[] carriers = new double[count()];
        for (int m = 0; m < count(); m++) {
            double[] link = new double[Descriptor.SIZE];
            Descriptor.write(hands.curve(matches.hand(m)).scaled(tether), link, 0);
            // where tethers are free the links have no size of their own to go by
            carriers[m] =
                    request.tethers() == Tethers.FREE
                            ? 0
                            : Math.min(
                                    Descriptor.distance(link, wanted.riderHand()),
                                    Descriptor.distance(link, wanted.carrierHand()));
        }
        List<Integer> order =
                IntStream.range(0, count())
                        .boxed()
                        .sorted(Comparator.comparingDouble(m -> carriers[m]))
                        .toList();
        List<Like> found = new ArrayList<>();
        Map<Integer, Map<Long, Portrait>> known = new HashMap<>();
        for (int m : order) {
            // a link this far off leaves the whole portrait at least half as far off
            if (found.size() >= count && carriers[m] / 2 > found.get(count - 1).distance()) {
                break;
            }
            likest(m, wanted, known)
                    .filter(
                            like ->
                                    found.size() < count
                                            || like.distance() < found.get(count - 1).distance())
                    .flatMap(this::like)
                    .ifPresent(found::add);
            found.sort(Comparator.comparingDouble(Like::distance));
            if (found.size() > count) {
                found.remove(count);
            }
        }
        return List.copyOf(found);
    }

    private record Likest(int match, long carrier, long rider, double distance) {}

    private Optional<Like> like(Likest likest) {
        Candidate candidate = measured(likest.match, likest.carrier, likest.rider);
        return judge.answer(linked(candidate), false).map(a -> new Like(a, likest.distance));
    }

    // Carrier and rider each choose for themselves: a portrait's square is the sum of theirs.
    private Optional<Likest> likest(
            int match, Portrait wanted, Map<Integer, Map<Long, Portrait>> known) {
        long[] leads = heads.members(matches.head(match));
        Map<Long, Portrait> riders =
                known.computeIfAbsent(
                        matches.hand(match),
                        h -> {
                            Map<Long, Portrait> all = new HashMap<>();
                            for (long key : hands.keys(h)) {
                                all.put(key, Portrait.of(alike, key, key));
                            }
                            return all;
                        });
        Likest best = new Likest(match, -1, -1, Double.MAX_VALUE);
        for (Portrait way : List.of(wanted, wanted.swapped())) {
            long carrier = -1;
            double near = Double.MAX_VALUE;
            for (long key : leads) {
                double here = Portrait.of(alike, key, key).carrierApart(way);
                if (here < near) {
                    near = here;
                    carrier = key;
                }
            }
            long rider = -1;
            double nearest = Double.MAX_VALUE;
            for (Map.Entry<Long, Portrait> entry : riders.entrySet()) {
                double here = entry.getValue().riderApart(way);
                if (here < nearest || here == nearest && entry.getKey() < rider) {
                    nearest = here;
                    rider = entry.getKey();
                }
            }
            double distance = Math.sqrt((near * near + nearest * nearest) / 4);
            if (distance < best.distance) {
                best = new Likest(match, carrier, rider, distance);
            }
        }
        return best.carrier < 0 || best.rider < 0 ? Optional.empty() : Optional.of(best);
    }

    /** Which motions draw a figure or come close, nearest first, one a head path. */
    public List<Drawer> drawing(Drawn figure, int count) {
        return drawing(figure, count, progress -> {}, () -> false);
    }

    /** The same, telling how far it is and asking whether to stop; empty when stopped. */
    public List<Drawer> drawing(
            Drawn figure, int count, Consumer<SeekProgress> listener, BooleanSupplier stop) {
        return new FigureSearch(request.space(), heads).nearest(figure, count, listener, stop);
    }

    /** Which pairings link to a figure: the answers whose carrier draws it. */
    public List<Answer> tiedTo(Drawer drawer) {
        List<Answer> found = new ArrayList<>();
        for (int m = matches.first(drawer.headClass());
                m < count() && matches.head(m) == drawer.headClass();
                m++) {
            Candidate candidate = candidate(m);
            answer(candidate).ifPresent(found::add);
        }
        found.sort(Comparator.comparingDouble(Answer::gap));
        return List.copyOf(found);
    }
}

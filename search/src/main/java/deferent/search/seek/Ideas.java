package deferent.search.seek;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.pairing.Swing;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.body.Room;
import deferent.reading.danger.Dangers;
import deferent.reading.danger.Level;
import deferent.reading.tether.Cord;
import deferent.reading.tether.Kit;
import deferent.reading.tether.Pull;
import deferent.reading.worked.CordReading;
import deferent.reading.worked.Detail;
import deferent.reading.worked.Worked;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * All exact links of a seek, folded into what a person would call one thing to try, in the order in
 * which a person might try them.
 *
 * <p>Two pairs are one thing if their carriers are of one {@link MotionKind} and their riders are:
 * sizes, starts and the count of petals are its family. A rider whose hand does nothing but walk
 * the figure that the carrier's head draws (an ellipse or loops, made of the carrier's own circles)
 * is one thing for all carriers: that every figure can be walked is no find.
 *
 * <p>First comes what both hands have practised, then what is stranger, and of all that is left
 * always what shares least with what came before. Each is then given sizes that can be learnt
 * ({@link Learnable}) and tried: in reach, both cords taut at its tempo or at a quicker one, no
 * danger, said in {@value #WORDS} words or fewer, none of its kind on the shelf. What fails that
 * comes after all that passes, with what speaks against it.
 */
final class Ideas {
    /** Words a person keeps in mind at a glance. */
    static final int WORDS = 8;

    /** So many sizes of one idea are tried before it is given up. */
    private static final int TRIES = 16;

    /** The idea is said as shortly as in the best of so many sizes. */
    private static final int COMPARED = 6;

    private static final int AT_ONCE = 8;
    private static final int STRANGE = 10;
    private static final int SEEN = 10;

    /** Faster is not tried, hand cycles a minute. */
    private static final double QUICKEST = 120;

    private static final double STEP = 10;

    /** A tempo at which a cord is only just taut is too slow. */
    private static final double MARGIN = 1.05;

    /** A pull of no more than that below nothing is nothing, head weights. */
    private static final double SLACK = 1e-9;

    private final SeekRequest request;
    private final HeadClasses heads;
    private final HandClasses hands;
    private final Matches matches;
    private final Set<Both> shelf;
    private final Map<Integer, Map<MotionKind, Gathered>> carriers = new HashMap<>();
    private final Map<Integer, Map<MotionKind, Gathered>> riders = new HashMap<>();

    Ideas(SeekRequest request, HeadClasses heads, HandClasses hands, Matches matches) {
        this.request = request;
        this.heads = heads;
        this.hands = hands;
        this.matches = matches;
        this.shelf =
                request.shelf().stream()
                        .flatMap(p -> Both.of(p).stream())
                        .collect(Collectors.toSet());
    }

    /** What the two hands are taken for. */
    record Both(MotionKind carrier, MotionKind rider) implements Comparable<Both> {
        static Both of(MotionKind carrier, MotionKind rider) {
            return rider.walksAFigure()
                    ? new Both(MotionKind.LOOP, MotionKind.LOOP)
                    : new Both(carrier, rider);
        }

        /** Of a pattern, whichever hand leads. */
        static List<Both> of(Pairing pairing) {
            MotionKind left = MotionKind.of(pairing, Side.LEFT);
            MotionKind right = MotionKind.of(pairing, Side.RIGHT);
            return List.of(of(left, right), of(right, left));
        }

        int strangeness() {
            return carrier.strangeness() + rider.strangeness();
        }

        @Override
        public int compareTo(Both other) {
            return Comparator.comparing(Both::carrier)
                    .thenComparing(Both::rider)
                    .compare(this, other);
        }
    }

    /** The members of a class that are of one kind: how many, and the plainest of each spin. */
    private static final class Gathered {
        private int count;
        private final Map<Integer, Long> bySpin = new TreeMap<>();

        private void add(Space space, long key) {
            count++;
            bySpin.merge(
                    space.spin(key),
                    key,
                    (a, b) -> plainness(space, b) < plainness(space, a) ? b : a);
        }
    }

    /** One pair that links, before it is sized. */
    record Sketch(int match, long carrier, long rider, int plainness) {}

    /** All pairs that are one thing to try. */
    static final class Pool {
        private final Both both;
        private int sizes;
        private long pairs;
        private final List<Sketch> sketches = new ArrayList<>();

        private Pool(Both both) {
            this.both = both;
        }

        Both both() {
            return both;
        }

        private int plainest() {
            return sketches.get(0).plainness;
        }
    }

    /**
     * One thing to try, tried.
     *
     * @param sketch keys and match
     * @param pairing in sizes that can be learnt, at a tempo that keeps both cords taut if one does
     * @param slowest at which both cords are taut, hand cycles a minute
     * @param idea in words
     * @param against what speaks against trying it first
     * @param family what it stands for
     */
    record Tried(
            Sketch sketch,
            Pairing pairing,
            OptionalDouble slowest,
            Idea idea,
            Set<Against> against,
            Family family) {
        private boolean passed() {
            return against.isEmpty();
        }
    }

    /**
     * In the order in which they are to be told.
     *
     * @param each told of each; false when no more are wanted
     */
    void each(Predicate<Tried> each, BooleanSupplier stop) {
        List<Pool> order = inOrder(pools());
        List<Tried> later = new ArrayList<>();
        for (int from = 0; from < order.size(); from += AT_ONCE) {
            List<Tried> tried =
                    order.subList(from, Math.min(order.size(), from + AT_ONCE)).parallelStream()
                            .flatMap(pool -> tried(pool).stream())
                            .toList();
            for (Tried one : tried) {
                if (stop.getAsBoolean()) {
                    return;
                }
                if (!one.passed()) {
                    later.add(one);
                } else if (!each.test(one)) {
                    return;
                }
            }
        }
        for (Tried one : later) {
            if (stop.getAsBoolean() || !each.test(one)) {
                return;
            }
        }
    }

    private List<Pool> pools() {
        Map<Both, Pool> pools = new TreeMap<>();
        for (int m = 0; m < matches.count(); m++) {
            if (matches.gap(m) > Answers.EXACT) {
                continue;
            }
            int match = m;
            Map<MotionKind, Gathered> lead =
                    carriers.computeIfAbsent(
                            matches.head(m), head -> gathered(heads.members(head)));
            Map<MotionKind, Gathered> follow =
                    riders.computeIfAbsent(matches.hand(m), hand -> gathered(hands.keys(hand)));
            lead.forEach(
                    (carrier, from) ->
                            follow.forEach(
                                    (rider, to) -> add(pools, match, carrier, from, rider, to)));
        }
        pools.values()
                .forEach(
                        pool ->
                                pool.sketches.sort(
                                        Comparator.comparingInt(Sketch::plainness)
                                                .thenComparing(Sketch::carrier)
                                                .thenComparing(Sketch::rider)));
        return List.copyOf(pools.values());
    }

    private void add(
            Map<Both, Pool> pools,
            int match,
            MotionKind carrier,
            Gathered from,
            MotionKind rider,
            Gathered to) {
        Pool pool = pools.computeIfAbsent(Both.of(carrier, rider), Pool::new);
        pool.sizes++;
        pool.pairs += (long) from.count * to.count;
        for (long lead : from.bySpin.values()) {
            for (long follow : to.bySpin.values()) {
                pool.sketches.add(
                        new Sketch(
                                match,
                                lead,
                                follow,
                                plainness(request.space(), lead)
                                        + plainness(request.space(), follow)));
            }
        }
    }

    private Map<MotionKind, Gathered> gathered(long[] keys) {
        Map<MotionKind, Gathered> found = new EnumMap<>(MotionKind.class);
        for (long key : keys) {
            found.computeIfAbsent(MotionKind.of(request.space(), key), k -> new Gathered())
                    .add(request.space(), key);
        }
        return found;
    }

    /** Plain to say, and of a size that is neither beyond the arms nor too small to see. */
    private static int plainness(Space space, long key) {
        HandShape hand = space.handShape(key);
        SpinLaw law = space.law(key);
        double reach = hand.reach();
        int large = reach > 1 ? (int) Math.round(8 * (reach - 1)) : 0;
        int small = reach > 0 && reach < 0.25 ? 8 : 0;
        // a pendulum's cord is all but slack at the ends of a wide swing, a narrow one hardly seen
        int wide =
                law.swing().map(s -> (int) Math.abs(60 - Math.toDegrees(s.amplitude()))).orElse(0);
        // a rider's tether hangs straight down as the pendulum's does
        boolean rides = hand.kind() == HandShape.Kind.PENDULUM_ARC;
        double down = Swing.DOWN - law.turns() * Math.PI / 2 - space.startOf(key);
        int leaning = rides && Math.abs(Math.IEEEremainder(down, 2 * Math.PI)) > 1e-9 ? 20 : 0;
        return Sight.simplicity(space, key) + large + small + wide + leaning;
    }

    private List<Pool> inOrder(List<Pool> pools) {
        Map<MotionKind, Integer> led = new EnumMap<>(MotionKind.class);
        Map<MotionKind, Integer> ridden = new EnumMap<>(MotionKind.class);
        List<Pool> left = new ArrayList<>(pools);
        List<Pool> order = new ArrayList<>();
        while (!left.isEmpty()) {
            Pool next =
                    left.stream()
                            .min(
                                    Comparator.comparingInt((Pool p) -> cost(p, led, ridden))
                                            .thenComparingInt(Pool::plainest)
                                            .thenComparing(Pool::both))
                            .orElseThrow();
            left.remove(next);
            order.add(next);
            led.merge(next.both.carrier, 1, Integer::sum);
            ridden.merge(next.both.rider, 1, Integer::sum);
        }
        return order;
    }

    private int cost(Pool pool, Map<MotionKind, Integer> led, Map<MotionKind, Integer> ridden) {
        return STRANGE * pool.both.strangeness()
                + SEEN * led.getOrDefault(pool.both.carrier, 0)
                + SEEN * ridden.getOrDefault(pool.both.rider, 0);
    }

    private Optional<Tried> tried(Pool pool) {
        List<Learning> learnt = new ArrayList<>();
        List<Sketch> first = byTurns(pool.sketches);
        for (int i = 0; i < first.size() && i < TRIES && learnt.size() < COMPARED; i++) {
            Sketch sketch = first.get(i);
            learnable(sketch).ifPresent(found -> learnt.add(new Learning(sketch, found)));
        }
        learnt.sort(
                Comparator.comparing((Learning l) -> !l.idea().spoken())
                        .thenComparing(l -> words(Saying.of(l.pairing).text())));
        Optional<Trying> best = Optional.empty();
        for (Learning one : learnt) {
            Trying trying = trying(one);
            if (trying.against.isEmpty()) {
                return Optional.of(tried(pool, trying));
            }
            best = best.or(() -> Optional.of(trying));
        }
        return best.map(trying -> tried(pool, trying));
    }

    private static int words(String text) {
        return text.split(" ").length;
    }

    private record Trying(
            Sketch sketch,
            Pairing pairing,
            OptionalDouble slowest,
            Idea idea,
            Set<Against> against) {}

    private record Learning(Sketch sketch, Pairing pairing) {
        Idea idea() {
            return Idea.of(pairing);
        }
    }

    /** The plainest of each way for both poi to turn, the spoken ones first; then the next. */
    private List<Sketch> byTurns(List<Sketch> plainestFirst) {
        Map<Long, Boolean> spoken = new HashMap<>();
        Map<Sketch, Integer> place = new HashMap<>();
        Map<Long, Integer> alike = new HashMap<>();
        for (Sketch sketch : plainestFirst) {
            place.put(sketch, alike.merge(spins(sketch), 1, Integer::sum));
            spoken.computeIfAbsent(spins(sketch), s -> Idea.of(staged(sketch)).spoken());
        }
        return plainestFirst.stream()
                .sorted(
                        Comparator.comparingInt((Sketch s) -> place.getOrDefault(s, 0))
                                .thenComparing(s -> !spoken.getOrDefault(spins(s), false)))
                .toList();
    }

    private Pairing staged(Sketch sketch) {
        return new Staging(request.space(), request.tethers(), request.tether().length())
                .pairing(sketch.carrier, sketch.rider);
    }

    private Optional<Pairing> learnable(Sketch sketch) {
        return Learnable.of(
                request.space(),
                sketch.carrier,
                sketch.rider,
                request.tethers(),
                request.tether().length(),
                request.filter().reachable() ? Optional.of(request.performer()) : Optional.empty());
    }

    private Trying trying(Learning learning) {
        OptionalDouble slowest = CordMerit.of(Trace.of(learning.pairing), true, false).slowest();
        Optional<Pairing> taut = tautAt(learning.pairing, slowest);
        Pairing told = taut.orElse(learning.pairing);
        Idea idea = Idea.of(told);
        Set<Against> against = EnumSet.noneOf(Against.class);
        if (taut.isEmpty()) {
            against.add(Against.SLACK);
        }
        if (jumps(told)) {
            against.add(Against.JUMP);
        }
        if (danger(told) == Level.DANGER) {
            against.add(Against.DANGER);
        }
        if (idea.length() > WORDS) {
            against.add(Against.WORDS);
        }
        return new Trying(learning.sketch, told, slowest, idea, against);
    }

    private Tried tried(Pool pool, Trying trying) {
        Set<Against> against = EnumSet.noneOf(Against.class);
        against.addAll(trying.against);
        if (shelf.contains(pool.both)) {
            against.add(Against.KNOWN);
        }
        return new Tried(
                trying.sketch,
                trying.pairing,
                trying.slowest,
                trying.idea,
                against,
                new Family(
                        pool.both.carrier + " > " + pool.both.rider,
                        pool.sizes,
                        pool.pairs,
                        members(pool, trying.sketch, trying.idea)));
    }

    /** At its own tempo, or the least of the quicker ones at which both cords are taut. */
    private static Optional<Pairing> tautAt(Pairing pairing, OptionalDouble slowest) {
        double tempo = Math.ceil(MARGIN * slowest.orElse(Double.MAX_VALUE) / STEP) * STEP;
        if (pairing.setsOwnTempo()) {
            return Optional.of(pairing).filter(p -> slowest.isPresent() && taut(p));
        }
        for (double at = Math.max(tempo, pairing.tempo()); at <= QUICKEST; at += STEP) {
            Pairing quicker = atLeast(pairing, at);
            if (taut(quicker)) {
                return Optional.of(quicker);
            }
        }
        return Optional.empty();
    }

    private static Pairing atLeast(Pairing pairing, double tempo) {
        return tempo <= pairing.tempo() ? pairing : pairing.withTempo(OptionalDouble.of(tempo));
    }

    /** Whether neither cord would have to push, hands and heads where they are meant to be. */
    private static boolean taut(Pairing pairing) {
        Trace trace = Trace.of(pairing);
        return Stream.of(Side.values())
                .map(side -> pull(trace, side).reading())
                .allMatch(pull -> pull.filter(Ideas::taut).isPresent());
    }

    private static boolean taut(Pull pull) {
        return pull.least() >= -SLACK * pull.headWeight() && pull.jerks().isEmpty();
    }

    /** Whether a poi would have to change its pace in an instant. */
    private static boolean jumps(Pairing pairing) {
        return Stream.of(Side.values())
                .flatMap(side -> pairing.part(side).motion().spin().inStretches().stream())
                .anyMatch(stretches -> !stretches.equals(stretches.resting()));
    }

    private List<Family.Member> members(Pool pool, Sketch told, Idea known) {
        List<Family.Member> members = new ArrayList<>();
        Set<Long> spins = new HashSet<>(Set.of(spins(told)));
        Set<String> words = new HashSet<>(Set.of(known.words()));
        for (Sketch sketch : pool.sketches) {
            if (members.size() >= Family.MOST || spins.size() > 3 * Family.MOST) {
                break;
            }
            if (spins.add(spins(sketch))) {
                learnable(sketch)
                        .filter(pairing -> words.add(Idea.of(pairing).words()))
                        .ifPresent(pairing -> members.add(member(pairing)));
            }
        }
        return members;
    }

    private static Family.Member member(Pairing pairing) {
        Saying said = Saying.of(pairing);
        return new Family.Member(Idea.of(pairing), pairing, said.text(), said.phrase());
    }

    private long spins(Sketch sketch) {
        Space space = request.space();
        return (long) space.spin(sketch.carrier) << 32 | space.spin(sketch.rider);
    }

    private Level danger(Pairing pairing) {
        Performer performer = request.performer();
        Trace trace = Trace.of(pairing);
        return Dangers.of(
                        trace,
                        performer,
                        Kit.USUAL,
                        Worked.of("how near things come", () -> Room.of(trace, performer)),
                        pull(trace, Side.LEFT),
                        pull(trace, Side.RIGHT),
                        Detail.LIVE)
                .level();
    }

    private static Worked<Pull> pull(Trace trace, Side side) {
        return Worked.of(
                "the pull of the " + side.word() + " cord",
                () ->
                        Pull.of(
                                trace,
                                side,
                                Cord.of(trace, side, Kit.USUAL),
                                CordReading.LIVE_COUNT));
    }
}

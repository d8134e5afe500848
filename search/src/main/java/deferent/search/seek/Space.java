package deferent.search.seek;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.pairing.Stretches;
import deferent.motion.pairing.Stretches.Ease;
import deferent.motion.pairing.Stretches.Stretch;
import deferent.motion.pairing.Swing;
import deferent.motion.pairing.Turns;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * One-hand motions on a grid: every hand path with every spin law from every start angle that makes
 * a motion of its own. Sizes are in tethers.
 *
 * <p>A motion's key is (path · spins + spin) · starts + start. Keys that say an earlier motion
 * again, seen from elsewhere (turned, mirrored, lagging), are no motions of the space. A motion
 * turned, mirrored or lagging is the same motion; run backwards it is another, as it is in the
 * hands. How that comes out for each hand path:
 *
 * <ul>
 *   <li>still hand: one even turn (more are the same at another tempo), no start angle
 *   <li>circle, k hand turns: turns without a common divisor with k; the start angle counts only
 *       where the poi keeps with the hand, n = k (isolations about any point of the tether), or
 *       turns unevenly
 *   <li>ellipse of radii a ≥ b, loop of turns k1, k2: turn and lag that leave the path as it is, d
 *       = |k2 − k1| of them, move the start angle by (n − k1)/d turns, so only a share of the
 *       angles is kept; a line's mirror also swaps n and −n
 *   <li>arcs: mirror and half a lag together leave the path as it is and swap n and −n
 * </ul>
 *
 * <p>The grid is all there is to know about a space: keys mean the same motion in every process
 * that makes the space with the same grid.
 */
public final class Space {
    private static final int[][] LOOPS = {
        {1, 2}, {1, -2}, {1, 3}, {1, -3}, {1, 4}, {1, -4}, {1, 5}, {1, -5}, {2, 3}, {2, -3}
    };

    /**
     * How finely motions are laid out.
     *
     * @param circleSteps radii of hand circles a tether
     * @param pairSteps radii a tether of the terms of ellipses and loops, and of arcs; 2 or more,
     *     so that halves are among them
     * @param most greatest radius of a hand path's term, in tethers
     * @param turns most poi turns a cycle either way
     * @param starts start angles round a circle, a multiple of 4
     * @param arcs half sweeps of arcs from 30 degrees to 180, and amplitudes of pendulums from 30
     *     to 150
     * @param stretches whether poi that turn in stretches are among the spin laws
     */
    public record Grid(
            int circleSteps,
            int pairSteps,
            int most,
            int turns,
            int starts,
            int arcs,
            boolean stretches) {
        public Grid {
            Refusal.within(circleSteps, 1, 10_000_000, "circle radii a tether", "radii");
            Refusal.within(pairSteps, 1, 2_000, "radii a tether", "radii");
            Refusal.within(most, 1, 4, "greatest radius", "tethers");
            Refusal.within(turns, 0, 6, "poi turns a cycle", "turns");
            Refusal.within(starts, 4, 360, "start angles", "angles");
            Refusal.within(arcs, 0, 61, "arcs", "arcs");
            if (starts % 4 != 0) {
                throw new Refusal("is " + starts, "start angles", "give a multiple of 4");
            }
        }

        /** A few thousand motions: what a brute force can still compare. */
        public static final Grid SMALL = new Grid(4, 2, 2, 3, 8, 3, false);

        /**
         * What the studio seeks in when nothing else is said: some two hundred thousand motions.
         */
        public static final Grid USUAL = new Grid(60, 4, 2, 6, 24, 9, true);
    }

    private static final Paths NO_PATHS =
            new Paths(HandShape.Kind.STILL, new int[2], 1, 0, 0, new Starts[0], new Starts[0]);

    private final Grid grid;
    private final List<SpinLaw> spins = new ArrayList<>();
    private final List<Paths> kinds = new ArrayList<>();
    private final SeriesTerms[] spinTerms;
    private final SeriesTerms[] arcTerms;
    private final SeriesTerms[] pendulumTerms;
    private final double[] cos;
    private final double[] sin;

    /**
     * Hand paths of one kind and the same turns, numbered on from {@code first}: nothing of them is
     * kept but how they are laid out, so that a space of any size costs the same.
     *
     * @param turns of the two terms, 0 where there is none
     * @param steps radii a tether
     * @param starts the start angles of each spin law
     * @param lines the same for the lines among ellipses
     */
    private record Paths(
            HandShape.Kind kind,
            int[] turns,
            int steps,
            int first,
            int count,
            Starts[] starts,
            Starts[] lines) {
        static int motions(Starts[] starts) {
            int sum = 0;
            for (Starts each : starts) {
                sum += each.size();
            }
            return sum;
        }

        /** How many of these motions there are; a radius in {@code most} tethers makes one line. */
        long motions(int most) {
            int straight = kind == HandShape.Kind.ELLIPSE ? most * steps : 0;
            return (count - straight) * (long) motions(starts) + straight * (long) motions(lines);
        }
    }

    private Space(Grid grid, boolean termed) {
        this.grid = grid;
        addSpins();
        addPaths();
        spinTerms =
                (termed ? spins : List.<SpinLaw>of())
                        .stream()
                                .map(
                                        law ->
                                                law.match(
                                                        even ->
                                                                new SeriesTerms(
                                                                        new int[] {even.turns()},
                                                                        new double[] {1},
                                                                        new double[] {0},
                                                                        0),
                                                        s -> SeriesTerms.ofSpin(s, 4096),
                                                        swing -> SeriesTerms.ofSpin(swing, 4096)))
                                .toArray(SeriesTerms[]::new);
        int arcs = termed ? grid.arcs() : 0;
        arcTerms = new SeriesTerms[arcs];
        pendulumTerms = new SeriesTerms[arcs];
        for (int j = 0; j < arcs; j++) {
            arcTerms[j] = HandShape.arc(1, among(j, 30, 180)).terms();
            pendulumTerms[j] = HandShape.pendulumArc(1, among(j, 30, 150)).terms();
        }
        cos = new double[grid.starts()];
        sin = new double[grid.starts()];
        for (int j = 0; j < grid.starts(); j++) {
            // quarter turns exactly, so that an isolation's head circle is as round as its hand's
            int quarter = 4 * j / grid.starts();
            boolean exact = 4 * j % grid.starts() == 0;
            cos[j] = exact ? new int[] {1, 0, -1, 0}[quarter] : Math.cos(start(j));
            sin[j] = exact ? new int[] {0, 1, 0, -1}[quarter] : Math.sin(start(j));
        }
    }

    public static Space of(Grid grid) {
        return new Space(grid, true);
    }

    /**
     * A space of close to {@code motions} motions (10,000 to 10,000,000,000): about a twentieth of
     * them circles, whose radii make up the count. What costs memory is not the space but what is
     * built of it.
     */
    public static Space about(long motions) {
        if (motions < 10_000 || motions > 10_000_000_000L) {
            throw new Refusal("is " + motions, "motions", "give 10,000 to 10,000,000,000 motions");
        }
        int pair = 1;
        while (pair < 2_000 && count(1, pair + 1, 2) < 0.93 * motions) {
            pair++;
        }
        int arcs = 2;
        while (arcs < 61 && count(1, pair, arcs + 1) < 0.93 * motions) {
            arcs++;
        }
        long others = count(1, pair, arcs);
        long each = count(2, pair, arcs) - others;
        long steps = Math.max(1, 1 + (motions - others) / each);
        return of(new Grid((int) steps, pair, 2, 6, 24, arcs, pair > 1));
    }

    private static long count(int circles, int pair, int arcs) {
        return new Space(new Grid(circles, pair, 2, 6, 24, arcs, pair > 1), false).count();
    }

    private void addPaths() {
        add(HandShape.Kind.STILL, new int[] {1, 0}, 1, 1);
        int most = grid.most();
        for (int rounds = 1; rounds <= Math.max(1, grid.turns()); rounds++) {
            // a hand that goes round more often than the poi is drawn on the coarser grid
            int steps = rounds == 1 ? grid.circleSteps() : 12 * grid.pairSteps();
            add(HandShape.Kind.CIRCLE, new int[] {rounds, 0}, steps, most * steps);
        }
        int steps = grid.pairSteps();
        int radii = most * steps;
        add(HandShape.Kind.ELLIPSE, new int[] {1, -1}, steps, radii * (radii + 1) / 2);
        for (int[] k : LOOPS) {
            add(HandShape.Kind.LOOP, k, steps, radii * radii);
        }
        add(HandShape.Kind.ARC, new int[] {1, 0}, steps, radii * grid.arcs());
        add(HandShape.Kind.PENDULUM_ARC, new int[] {1, 0}, steps, radii * grid.arcs());
    }

    private void add(HandShape.Kind kind, int[] turns, int steps, int count) {
        kinds.add(
                new Paths(
                        kind,
                        turns,
                        steps,
                        paths(),
                        count,
                        distinct(new HandShape(kind, turns[0], turns[1], 2, 1)),
                        distinct(new HandShape(kind, turns[0], turns[1], 1, 1))));
    }

    private Starts[] distinct(HandShape hand) {
        return spins.stream().map(law -> distinct(hand, law)).toArray(Starts[]::new);
    }

    private double among(int j, int least, int most) {
        return Math.toRadians(
                grid.arcs() == 1 ? 90 : least + (most - least) * (double) j / (grid.arcs() - 1));
    }

    private void addSpins() {
        for (int n = -grid.turns(); n <= grid.turns(); n++) {
            spins.add(new Turns(n, 0));
        }
        for (int j = 0; j < grid.arcs(); j++) {
            spins.add(new Swing(among(j, 30, 150), Swing.DOWN));
        }
        if (!grid.stretches()) {
            return;
        }
        double[] halves = {0.5, 1, 1.5, 2, 2.5};
        for (double out : halves) {
            for (double back : halves) {
                if (out != back && (out + back) % 1 == 0) {
                    spins.add(halved(out, back, Ease.EVEN));
                    spins.add(halved(-out, -back, Ease.EVEN));
                }
            }
        }
        for (double sweep : new double[] {0.25, 0.5, 1}) {
            spins.add(halved(sweep, -sweep, Ease.RESTING));
        }
        // half-and-half flowers of two to four petals, stalling between their halves
        for (int petals = 2; petals <= 4; petals++) {
            spins.add(halved((1 + petals) / 2.0, (1 - petals) / 2.0, Ease.RESTING));
        }
    }

    private static Stretches halved(double out, double back, Ease ease) {
        return new Stretches(0, List.of(new Stretch(0.5, out, ease), new Stretch(0.5, back, ease)));
    }

    public Grid grid() {
        return grid;
    }

    /** Keys run from 0 to below this; not every one is a motion. */
    public long keys() {
        return paths() * block();
    }

    private long block() {
        return (long) spins.size() * grid.starts();
    }

    /** How many motions the space holds. */
    public long count() {
        long sum = 0;
        for (Paths kind : kinds) {
            sum += kind.motions(grid.most());
        }
        return sum;
    }

    /** How many motions have this hand path. */
    int count(int path) {
        return Paths.motions(starts(path));
    }

    /** Whether a key is a motion of its own. */
    public boolean holds(long key) {
        return key >= 0
                && key < keys()
                && starts(path(key))[spin(key)].holds((int) (key % grid.starts()));
    }

    /** Build: the motions among the keys from {@code from} to below {@code to}, by rising key. */
    public long[] build(long from, long to) {
        long[] found = new long[64];
        int count = 0;
        int starts = grid.starts();
        for (int path = (int) (from / block()); path < paths() && path * block() < to; path++) {
            Starts[] distinct = starts(path);
            for (int spin = 0; spin < distinct.length; spin++) {
                long first = path * block() + (long) spin * starts;
                for (int j = 0; j < starts && distinct[spin].size() > 0; j++) {
                    if (distinct[spin].holds(j) && first + j >= from && first + j < to) {
                        if (count == found.length) {
                            found = Arrays.copyOf(found, 2 * count);
                        }
                        found[count++] = first + j;
                    }
                }
            }
        }
        return Arrays.copyOf(found, count);
    }

    /** What is shown a space's motions in their order. */
    interface Visitor {
        /** Whether the head's path is wanted of a motion whose head path has about this size. */
        boolean wants(double size);

        /** The head's path in tethers. */
        void motion(long key, SeriesCurve head);
    }

    /**
     * Shows the motions among the keys from {@code from} to below {@code to}. A head's size is
     * known before its path is worked out: the power of hand path and poi, and what they have in
     * common once the poi is turned to its start.
     */
    void motions(long from, long to, Visitor visitor) {
        int starts = grid.starts();
        for (int path = (int) (from / block()); path < paths() && path * block() < to; path++) {
            Starts[] distinct = starts(path);
            SeriesTerms hand = terms(path);
            for (int spin = 0; spin < distinct.length; spin++) {
                long first = path * block() + (long) spin * starts;
                if (distinct[spin].size() == 0 || first >= to || first + starts <= from) {
                    continue;
                }
                SeriesTerms poi = spinTerms[spin];
                double power = hand.power() + poi.power();
                double[] common = hand.common(poi);
                for (int j = 0; j < starts; j++) {
                    if (!distinct[spin].holds(j) || first + j < from || first + j >= to) {
                        continue;
                    }
                    double squared = power + 2 * (cos[j] * common[0] + sin[j] * common[1]);
                    if (visitor.wants(Math.sqrt(Math.max(0, squared)))) {
                        visitor.motion(first + j, hand.plus(poi, cos[j], sin[j], 1));
                    }
                }
            }
        }
    }

    /** The size of a hand path, in tethers, but for what its terms leave out. */
    double handSize(int path) {
        HandShape shape = shape(path);
        return switch (shape.kind()) {
            case STILL -> 0;
            case CIRCLE -> shape.size();
            case ELLIPSE, LOOP ->
                    Math.sqrt(shape.size() * shape.size() + shape.other() * shape.other());
            case ARC, PENDULUM_ARC -> Math.sqrt(terms(path).power());
        };
    }

    /** All keys of motions whose hand path is number {@code path}. */
    long[] riders(int path) {
        return build(path * block(), (path + 1) * block());
    }

    int paths() {
        Paths last = kinds.isEmpty() ? NO_PATHS : kinds.get(kinds.size() - 1);
        return last.first + last.count;
    }

    int path(long key) {
        return (int) (key / block());
    }

    int spin(long key) {
        return (int) (key / grid.starts() % spins.size());
    }

    private Paths kind(int path) {
        int at = kinds.size() - 1;
        while (kinds.get(at).first > path) {
            at--;
        }
        return kinds.get(at);
    }

    private Starts[] starts(int path) {
        Paths kind = kind(path);
        return kind.kind == HandShape.Kind.ELLIPSE && shape(path).line() ? kind.lines : kind.starts;
    }

    /** The key of this hand path, law and start angle (radians), if the grid has it as a motion. */
    OptionalLong find(HandShape hand, SpinLaw law, double start) {
        int path = 0;
        while (path < paths() && !shape(path).equals(hand)) {
            path++;
        }
        int spin = spins.indexOf(law);
        double steps = start / (2 * Math.PI) * grid.starts();
        long key =
                path * block()
                        + (long) spin * grid.starts()
                        + Math.floorMod(Math.round(steps), grid.starts());
        return spin >= 0 && Math.abs(steps - Math.rint(steps)) < 1e-9 && holds(key)
                ? OptionalLong.of(key)
                : OptionalLong.empty();
    }

    HandShape handShape(long key) {
        return shape(path(key));
    }

    HandShape shape(int path) {
        Paths kind = kind(path);
        int at = path - kind.first;
        int radii = grid.most() * kind.steps;
        double steps = kind.steps;
        return switch (kind.kind) {
            case STILL -> HandShape.POINT;
            case CIRCLE -> HandShape.circle(kind.turns[0], (at + 1) / steps);
            case ELLIPSE -> {
                // rows of 1, 2, 3, … : the root may round either way next to a row's first
                int row = (int) ((Math.sqrt(8.0 * at + 1) - 1) / 2);
                row += row * (row + 1L) / 2 > at ? -1 : (row + 1) * (row + 2L) / 2 <= at ? 1 : 0;
                int back = (int) (at - row * (row + 1L) / 2);
                yield HandShape.ellipse((row + 1) / steps, (back + 1) / steps);
            }
            case LOOP ->
                    HandShape.loop(
                            kind.turns[0],
                            kind.turns[1],
                            (at / radii + 1) / steps,
                            (at % radii + 1) / steps);
            case ARC ->
                    HandShape.arc((at / grid.arcs() + 1) / steps, among(at % grid.arcs(), 30, 180));
            case PENDULUM_ARC ->
                    HandShape.pendulumArc(
                            (at / grid.arcs() + 1) / steps, among(at % grid.arcs(), 30, 150));
        };
    }

    private SeriesTerms terms(int path) {
        Paths kind = kind(path);
        HandShape shape = shape(path);
        if (!shape.swept()) {
            return shape.terms();
        }
        SeriesTerms[] unit = kind.kind == HandShape.Kind.ARC ? arcTerms : pendulumTerms;
        return unit[(path - kind.first) % grid.arcs()].scaled(shape.size());
    }

    SpinLaw law(long key) {
        return spins.get(spin(key));
    }

    private double start(int j) {
        // From degrees, as a phrase says them and reads them back.
        double degrees = 360.0 * j / grid.starts();
        return Math.toRadians(2 * j > grid.starts() ? degrees - 360 : degrees);
    }

    /** The motion of a key with that tether, metres. */
    public Motion motion(long key, double tether) {
        if (!holds(key)) {
            throw new Refusal("is no motion of this space", "key " + key, "take one it built");
        }
        return new Motion(handShape(key).path(tether), spin(key, startOf(key)));
    }

    /** The poi's start angle, (−π, π]. */
    double startOf(long key) {
        return start((int) (key % grid.starts()));
    }

    SpinLaw spin(long key, double start) {
        return start == 0 ? law(key) : law(key).turned(start);
    }

    /** The head's path in tethers. */
    SeriesCurve head(long key) {
        int j = (int) (key % grid.starts());
        return terms(path(key)).plus(spinTerms[spin(key)], cos[j], sin[j], 1);
    }

    /**
     * The head's path with the hand's {@code size} times as large and the tether {@code length}
     * long.
     */
    SeriesCurve head(long key, double size, double length) {
        int j = (int) (key % grid.starts());
        return terms(path(key)).scaled(size).plus(spinTerms[spin(key)], cos[j], sin[j], length);
    }

    SeriesCurve hand(int path) {
        return terms(path).curve();
    }

    /**
     * Where the head's path has its mean, in tethers, sized as {@link #head(int, double, double)}.
     */
    double[] headMean(long key, double size, double length) {
        int j = (int) (key % grid.starts());
        double[] hand = handMean(key);
        double[] poi = spinTerms[spin(key)].mean();
        return new double[] {
            size * hand[0] + length * (cos[j] * poi[0] - sin[j] * poi[1]),
            size * hand[1] + length * (sin[j] * poi[0] + cos[j] * poi[1])
        };
    }

    double[] handMean(long key) {
        return handShape(key).kind() == HandShape.Kind.PENDULUM_ARC
                ? new double[2]
                : terms(path(key)).mean();
    }

    /**
     * Which of the start angles make motions of their own: the first {@code size}, or a mirrored
     * half.
     */
    private record Starts(int size, boolean folded, int mirror, int all) {
        static final Starts NONE = new Starts(0, false, 0, 0);

        static Starts first(int size) {
            return new Starts(size, false, 0, 0);
        }

        // Angle j is also angle mirror − j: the lower of the two is kept.
        static Starts folded(int mirror, int all) {
            int kept = 0;
            for (int j = 0; j < all; j++) {
                kept += j <= Math.floorMod(mirror - j, all) ? 1 : 0;
            }
            return new Starts(kept, true, mirror, all);
        }

        boolean holds(int j) {
            return folded ? j <= Math.floorMod(mirror - j, all) : j < size;
        }
    }

    private Starts distinct(HandShape hand, SpinLaw law) {
        int all = grid.starts();
        if (law.swings()) {
            return hand.kind() == HandShape.Kind.STILL ? Starts.first(1) : Starts.NONE;
        }
        Optional<Stretches> stretches = law.inStretches();
        if (stretches.isPresent()) {
            return stretched(hand, stretches.get(), all);
        }
        int n = law.turns();
        return switch (hand.kind()) {
            case STILL -> n == 1 ? Starts.first(1) : Starts.NONE;
            case CIRCLE ->
                    SeriesCurve.gcd(hand.first(), n) != 1
                            ? Starts.NONE
                            : Starts.first(n == hand.first() ? all : 1);
            case ELLIPSE ->
                    hand.line() && n < 0
                            ? Starts.NONE
                            : hand.line() && n == 0
                                    ? Starts.first(all / 4 + 1)
                                    : Starts.first(period(hand, n, all));
            case LOOP -> Starts.first(period(hand, n, all));
            case ARC, PENDULUM_ARC ->
                    n < 0 ? Starts.NONE : n == 0 ? Starts.folded(all / 2, all) : Starts.first(all);
        };
    }

    private static int period(HandShape hand, int n, int all) {
        int d = Math.abs(hand.second() - hand.first());
        int g = SeriesCurve.gcd(n - hand.first(), d);
        return all * g / SeriesCurve.gcd(all * g, d);
    }

    private static Starts stretched(HandShape hand, Stretches law, int all) {
        double out = law.stretches().get(0).turns();
        double back = law.stretches().get(1).turns();
        boolean toAndFro = out + back == 0;
        boolean halfAndHalf = !toAndFro && out * back < 0;
        if (halfAndHalf && hand.kind() != HandShape.Kind.CIRCLE) {
            return Starts.NONE;
        }
        return switch (hand.kind()) {
            // swung to and fro about the hand: a carrier like a pendulum; round it in uneven
            // halves:
            // one way
            case STILL -> toAndFro || out > back && out > 0 ? Starts.first(1) : Starts.NONE;
            // half a lag swaps the halves
            case CIRCLE ->
                    hand.first() == 1 && !toAndFro && out > back ? Starts.first(all) : Starts.NONE;
            case ARC ->
                    toAndFro
                            ? Starts.folded(all / 2 - (int) Math.rint(all * out), all)
                            : out + back > 0 ? Starts.first(all) : Starts.NONE;
            case ELLIPSE, LOOP, PENDULUM_ARC -> Starts.NONE;
        };
    }

    /** Its size and grid in words. */
    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%,d motions: %,d hand paths, %d spin laws, %d start angles",
                count(),
                paths(),
                spins.size(),
                grid.starts());
    }
}

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
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

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
            Refusal.within(circleSteps, 1, 100_000, "circle radii a tether", "radii");
            Refusal.within(pairSteps, 1, 60, "radii a tether", "radii");
            Refusal.within(most, 1, 4, "greatest radius", "tethers");
            Refusal.within(turns, 0, 6, "poi turns a cycle", "turns");
            Refusal.within(starts, 4, 72, "start angles", "angles");
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
        public static final Grid USUAL = new Grid(100, 4, 2, 6, 24, 9, true);
    }

    private final Grid grid;
    private final List<HandShape> paths = new ArrayList<>();
    private final List<SpinLaw> spins = new ArrayList<>();
    private final SeriesTerms[] pathTerms;
    private final SeriesTerms[] spinTerms;
    private final double[] cos;
    private final double[] sin;

    private Space(Grid grid, boolean termed) {
        this.grid = grid;
        addPaths();
        addSpins();
        if ((long) paths.size() * spins.size() * grid.starts() > Integer.MAX_VALUE) {
            throw new Refusal(
                    "has more keys than a whole number can count", "grid", "make it coarser");
        }
        Map<HandShape, SeriesTerms> swept = new HashMap<>();
        pathTerms = new SeriesTerms[termed ? paths.size() : 0];
        for (int path = 0; path < pathTerms.length; path++) {
            HandShape shape = paths.get(path);
            pathTerms[path] =
                    shape.swept()
                            ? swept.computeIfAbsent(shape.unit(), HandShape::terms)
                                    .scaled(shape.size())
                            : shape.terms();
        }
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
     * A space of close to {@code motions} motions (5,000 to 4,000,000): about a twentieth of them
     * circles, whose radii make up the count.
     */
    public static Space about(int motions) {
        Refusal.within(motions, 10_000, 4_000_000, "motions", "motions");
        int pair = 1;
        while (pair < 24 && count(1, pair + 1, 2) < 0.93 * motions) {
            pair++;
        }
        int arcs = 2;
        while (arcs < 61 && count(1, pair, arcs + 1) < 0.93 * motions) {
            arcs++;
        }
        int others = count(1, pair, arcs);
        int each = count(2, pair, arcs) - others;
        int steps = Math.max(1, 1 + (motions - others) / each);
        return of(new Grid(steps, pair, 2, 6, 24, arcs, pair > 1));
    }

    private static int count(int circles, int pair, int arcs) {
        return new Space(new Grid(circles, pair, 2, 6, 24, arcs, pair > 1), false).count();
    }

    private void addPaths() {
        paths.add(HandShape.POINT);
        int most = grid.most();
        for (int rounds = 1; rounds <= Math.max(1, grid.turns()); rounds++) {
            // a hand that goes round more often than the poi is drawn on the coarser grid
            int steps = rounds == 1 ? grid.circleSteps() : 12 * grid.pairSteps();
            for (int i = 1; i <= most * steps; i++) {
                paths.add(HandShape.circle(rounds, (double) i / steps));
            }
        }
        int steps = grid.pairSteps();
        for (int i = 1; i <= most * steps; i++) {
            for (int j = 1; j <= i; j++) {
                paths.add(HandShape.ellipse((double) i / steps, (double) j / steps));
            }
        }
        for (int[] k : LOOPS) {
            for (int i = 1; i <= most * steps; i++) {
                for (int j = 1; j <= most * steps; j++) {
                    paths.add(HandShape.loop(k[0], k[1], (double) i / steps, (double) j / steps));
                }
            }
        }
        for (int i = 1; i <= most * steps; i++) {
            for (int j = 0; j < grid.arcs(); j++) {
                paths.add(HandShape.arc((double) i / steps, among(j, 30, 180)));
            }
        }
        for (int i = 1; i <= most * steps; i++) {
            for (int j = 0; j < grid.arcs(); j++) {
                paths.add(HandShape.pendulumArc((double) i / steps, among(j, 30, 150)));
            }
        }
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
    }

    private static Stretches halved(double out, double back, Ease ease) {
        return new Stretches(0, List.of(new Stretch(0.5, out, ease), new Stretch(0.5, back, ease)));
    }

    public Grid grid() {
        return grid;
    }

    /** Keys run from 0 to below this; not every one is a motion. */
    public int keys() {
        return paths.size() * spins.size() * grid.starts();
    }

    /** How many motions the space holds. */
    public int count() {
        int sum = 0;
        for (int path = 0; path < paths.size(); path++) {
            sum += count(path);
        }
        return sum;
    }

    int count(int path) {
        int sum = 0;
        for (int spin = 0; spin < spins.size(); spin++) {
            sum += distinct(path, spin).size();
        }
        return sum;
    }

    /** Whether a key is a motion of its own. */
    public boolean holds(int key) {
        return key >= 0
                && key < keys()
                && distinct(path(key), spin(key)).holds(key % grid.starts());
    }

    /** Build: the motions among the keys from {@code from} to below {@code to}, by rising key. */
    public int[] build(int from, int to) {
        int[] found = new int[Math.max(0, to - from)];
        int count = 0;
        int block = grid.starts();
        for (int b = from / block; b * (long) block < to; b++) {
            Starts starts = distinct(b / spins.size(), b % spins.size());
            for (int j = 0; j < block && starts.size() > 0; j++) {
                int key = b * block + j;
                if (key >= from && key < to && starts.holds(j)) {
                    found[count++] = key;
                }
            }
        }
        return Arrays.copyOf(found, count);
    }

    /** All keys of motions whose hand path is number {@code path}. */
    int[] riders(int path) {
        int block = spins.size() * grid.starts();
        return build(path * block, (path + 1) * block);
    }

    int paths() {
        return paths.size();
    }

    int path(int key) {
        return key / (spins.size() * grid.starts());
    }

    int spin(int key) {
        return key / grid.starts() % spins.size();
    }

    /** The key of this hand path, law and start angle (radians), if the grid has it as a motion. */
    OptionalInt find(HandShape hand, SpinLaw law, double start) {
        int path = paths.indexOf(hand);
        int spin = spins.indexOf(law);
        double steps = start / (2 * Math.PI) * grid.starts();
        int key =
                (path * spins.size() + spin) * grid.starts()
                        + Math.floorMod(Math.round(steps), grid.starts());
        return path >= 0 && spin >= 0 && Math.abs(steps - Math.rint(steps)) < 1e-9 && holds(key)
                ? OptionalInt.of(key)
                : OptionalInt.empty();
    }

    HandShape handShape(int key) {
        return paths.get(path(key));
    }

    HandShape shape(int path) {
        return paths.get(path);
    }

    SpinLaw law(int key) {
        return spins.get(spin(key));
    }

    private double start(int j) {
        // From degrees, as a phrase says them and reads them back.
        double degrees = 360.0 * j / grid.starts();
        return Math.toRadians(2 * j > grid.starts() ? degrees - 360 : degrees);
    }

    /** The motion of a key with that tether, metres. */
    public Motion motion(int key, double tether) {
        if (!holds(key)) {
            throw new Refusal("is no motion of this space", "key " + key, "take one it built");
        }
        return new Motion(handShape(key).path(tether), spin(key, startOf(key)));
    }

    /** The poi's start angle, (−π, π]. */
    double startOf(int key) {
        return start(key % grid.starts());
    }

    SpinLaw spin(int key, double start) {
        return start == 0 ? law(key) : law(key).turned(start);
    }

    /** The head's path in tethers. */
    SeriesCurve head(int key) {
        int j = key % grid.starts();
        return pathTerms[path(key)].plus(spinTerms[spin(key)], cos[j], sin[j], 1);
    }

    /**
     * The head's path with the hand's {@code size} times as large and the tether {@code length}
     * long.
     */
    SeriesCurve head(int key, double size, double length) {
        int j = key % grid.starts();
        return pathTerms[path(key)].scaled(size).plus(spinTerms[spin(key)], cos[j], sin[j], length);
    }

    SeriesCurve hand(int path) {
        return pathTerms[path].curve();
    }

    /**
     * Where the head's path has its mean, in tethers, sized as {@link #head(int, double, double)}.
     */
    double[] headMean(int key, double size, double length) {
        int j = key % grid.starts();
        double[] hand = handMean(key);
        double[] poi = spinTerms[spin(key)].mean();
        return new double[] {
            size * hand[0] + length * (cos[j] * poi[0] - sin[j] * poi[1]),
            size * hand[1] + length * (sin[j] * poi[0] + cos[j] * poi[1])
        };
    }

    double[] handMean(int key) {
        return handShape(key).kind() == HandShape.Kind.PENDULUM_ARC
                ? new double[2]
                : pathTerms[path(key)].mean();
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

    private Starts distinct(int path, int spin) {
        HandShape hand = paths.get(path);
        SpinLaw law = spins.get(spin);
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
                paths.size(),
                spins.size(),
                grid.starts());
    }
}

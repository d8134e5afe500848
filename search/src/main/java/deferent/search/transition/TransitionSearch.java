package deferent.search.transition;

import deferent.motion.pairing.Part;
import deferent.motion.shared.Side;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Finds the transitions of one pair.
 *
 * <ol>
 *   <li>Each side by itself: the best passage from every time of the one pattern to every time of
 *       the other ({@link Torus}).
 *   <li>Both together: once it is said how much the joined pattern's clock is ahead, the sides are
 *       independent, and each may leave when it likes within four cycles of the slower pattern. The
 *       cheapest pairs of passages are kept for each share of that lead, and for each side that can
 *       go on as it was. To a song that lead is a whole number of beats, and the cheapest are kept
 *       for each of those and each leaving time.
 *   <li>The best of these are made smoother in continuous time ({@link Refining}) and the results
 *       tried on the whole: reach of both arms, and that cords and body come no nearer to each
 *       other than in the patterns themselves ({@link Clear}).
 * </ol>
 */
final class TransitionSearch {
    /**
     * Waiting for the other hand, a second is worth so much jerk, in thousands of m/s³ (our
     * choice).
     */
    private static final double A_SECOND_APART = 0.1;

    /** The grid of a search. */
    static final Torus.Grid USUAL = new Torus.Grid(12, 3, new Attempt.Fineness(12, 2));

    /** With which what is found is made smooth. */
    private static final Attempt.Fineness FINE = new Attempt.Fineness(24, 4);

    /** Leaving times that are looked at in a cycle where the other hand keeps going. */
    private static final int ONE_HAND = 12;

    private static final int CLOSELY = 4;

    /** From so far past the hardest grade nothing was seen to become possible. */
    private static final double HOPELESS = 12;

    /** Nearer to a beat than that is on it, seconds. */
    private static final double OFF_BEAT = 1e-6;

    /** So many more than are asked for are refined. */
    private static final int SPARE = 6;

    /** So many times as many where nothing was found yet. */
    private static final int LONG_SHOTS = 3;

    private final SpunPattern from;
    private final SpunPattern to;
    private final TransitionRequest request;
    private final Torus left;
    private final Torus right;
    private final double longest;
    private final int cells;

    private TransitionSearch(
            SpunPattern from, SpunPattern to, TransitionRequest request, Torus.Grid grid) {
        this.cells = grid.cells();
        this.from = from;
        this.to = to;
        this.request = request;
        this.left = torus(Side.LEFT, grid);
        this.right = torus(Side.RIGHT, grid);
        this.longest = TransitionRequest.CYCLES * Math.max(from.period(), to.period());
    }

    private Attempt closely(Side side) {
        SpunSide a = from.side(side);
        SpunSide b = to.side(side).toward(a);
        return new Attempt(a, b, Reachable.of(request.performer(), a, b), FINE);
    }

    private Torus torus(Side side, Torus.Grid grid) {
        SpunSide a = from.side(side);
        SpunSide b = to.side(side).toward(a);
        return Torus.of(a, b, Reachable.of(request.performer(), a, b), grid);
    }

    static Transitions of(SpunPattern from, SpunPattern to, TransitionRequest request) {
        return of(from, to, request, USUAL);
    }

    static Transitions of(
            SpunPattern from, SpunPattern to, TransitionRequest request, Torus.Grid grid) {
        Hindrance before = hindrance(from, to);
        if (before != Hindrance.NONE) {
            return new Transitions(from.pairing(), to.pairing(), request, List.of(), before);
        }
        return new TransitionSearch(from, to, request, grid).run();
    }

    private static Hindrance hindrance(SpunPattern from, SpunPattern to) {
        for (SpunPattern pattern : List.of(from, to)) {
            if (pattern.hindrance() != Hindrance.NONE) {
                return pattern.hindrance();
            }
        }
        for (Side side : Side.values()) {
            double by = from.side(side).length() - to.side(side).length();
            if (Math.abs(by) > 1e-6) {
                return Hindrance.TETHERS;
            }
        }
        return Hindrance.NONE;
    }

    private Transitions run() {
        List<Start> starts = starts();
        // One hand alone is what a spinner looks for first.
        starts.sort(
                Comparator.comparing((Start start) -> start.keeps().isEmpty())
                        .thenComparingDouble(Start::cost));
        List<Transition> found = new ArrayList<>();
        boolean any = false;
        int tried = 0;
        Refining refining =
                new Refining(
                        from,
                        to,
                        request,
                        new Attempt[] {left.attempt(), right.attempt()},
                        new Attempt[] {closely(Side.LEFT), closely(Side.RIGHT)});
        for (Start start : starts) {
            if (tried++ >= (found.isEmpty() ? LONG_SHOTS : 1) * (request.most() + SPARE)) {
                break;
            }
            Optional<Transition> better = refining.run(start);
            any |= better.isPresent();
            better.filter(t -> found.stream().noneMatch(o -> alike(o, t)))
                    .filter(t -> Clear.of(t, from, to, request))
                    .ifPresent(found::add);
        }
        found.sort(Comparator.comparingDouble(TransitionSearch::cost));
        return new Transitions(
                from.pairing(),
                to.pairing(),
                request,
                found.subList(0, Math.min(found.size(), request.most())),
                !found.isEmpty()
                        ? Hindrance.NONE
                        : any ? Hindrance.IN_THE_WAY : Hindrance.TOO_HARD);
    }

    static double cost(Transition t) {
        return Torus.HARDNESS * t.hardness() + t.jerk() / 1000 + A_SECOND_APART * t.seconds();
    }

    /** Whether two are told apart by nobody: both hands do the same at about the same time. */
    private boolean alike(Transition one, Transition other) {
        for (Side side : Side.values()) {
            Bridge a = one.bridge(side);
            Bridge b = other.bridge(side);
            if (a.kind() != b.kind()) {
                return false;
            }
            double by = Math.abs(Math.IEEEremainder(a.leaves() - b.leaves(), from.period()));
            if (!a.keeps() && by > from.side(side).beat() / 4) {
                return false;
            }
        }
        return true;
    }

    /**
     * Where refining starts.
     *
     * @param leaves of each side, on the one pattern's clock
     * @param seconds of each side
     * @param turns of each side, as whole turns
     * @param keeps which side goes on as it was, if one does
     */
    record Start(
            double cost,
            double[] leaves,
            double later,
            double[] seconds,
            int[] turns,
            Optional<Side> keeps) {
        boolean moves(Side side) {
            return keeps.filter(side::equals).isEmpty();
        }
    }

    /** The least cost of all pairs of passages on the grid, before any is refined. */
    static double least(
            SpunPattern from, SpunPattern to, TransitionRequest request, Torus.Grid grid) {
        return new TransitionSearch(from, to, request, grid)
                .starts().stream().mapToDouble(Start::cost).min().orElse(Double.POSITIVE_INFINITY);
    }

    private List<Start> starts() {
        List<Start> all = new ArrayList<>();
        both(all);
        for (Side side : Side.values()) {
            for (double later : keeping(side)) {
                oneHand(side, later, all);
            }
        }
        return all;
    }

    /** The leads of the joined clock with which a side goes on as it was, seconds. */
    private List<Double> keeping(Side side) {
        Part a = from.pairing().part(side);
        Part b = to.pairing().part(side);
        double own = from.period() / a.cycles();
        boolean same =
                !a.motion().riding()
                        && a.motion().equals(b.motion())
                        && a.place().equals(b.place())
                        && from.pairing().mirrored(side) == to.pairing().mirrored(side)
                        && Math.abs(own - to.period() / b.cycles()) < 1e-9 * own;
        List<Double> leads = new ArrayList<>();
        if (same) {
            double first = own * (from.pairing().startPhase(side) - to.pairing().startPhase(side));
            for (int k = 0; k < b.cycles(); k++) {
                if (onBeat(first + k * own)) {
                    leads.add(first + k * own);
                }
            }
        }
        return leads;
    }

    private boolean onBeat(double lead) {
        return request.beat().isEmpty()
                || Math.abs(Math.IEEEremainder(lead, request.beat().getAsDouble())) < OFF_BEAT;
    }

    /**
     * One hand goes over while the other keeps going: the lead is given, so it is looked closely.
     */
    private void oneHand(Side keeps, double later, List<Start> all) {
        Attempt attempt = (keeps == Side.LEFT ? right : left).attempt();
        int rounds = Math.min(rounds(), to.pairing().part(keeps).cycles());
        for (double beats : Torus.BEATS) {
            List<Start> found = new ArrayList<>();
            double seconds = beats * attempt.beat();
            for (int i = 0; i < ONE_HAND * rounds; i++) {
                double leaves = from.period() * i / ONE_HAND;
                int turns = attempt.nearestTurns(leaves, later, seconds);
                attempt.run(leaves, later, seconds, turns, CLOSELY);
                if (attempt.outlook() < HOPELESS) {
                    found.add(
                            new Start(
                                    Torus.cost(attempt, beats),
                                    new double[] {leaves, leaves},
                                    later,
                                    new double[] {seconds, seconds},
                                    new int[] {turns, turns},
                                    Optional.of(keeps)));
                }
            }
            found.stream().min(Comparator.comparingDouble(Start::cost)).ifPresent(all::add);
        }
    }

    /** How many cycles of the first pattern fit in the time there is. */
    private int rounds() {
        return Math.max(1, (int) Math.floor(longest / from.period()));
    }

    private boolean bends() {
        return Arrays.stream(Side.values())
                .anyMatch(side -> to.side(side).wellApart(from.side(side)));
    }

    private int cell(double time) {
        return Math.floorMod((int) Math.rint(time / to.period() * cells), cells);
    }

    /**
     * What the joined clock may be ahead by when the left hand leaves at the start of its {@code
     * i}th cell, seconds: each cell's share, or whole beats.
     */
    private double[] leads(int i) {
        double leaves = from.period() / cells * i;
        if (request.beat().isEmpty()) {
            return IntStream.range(0, cells)
                    .mapToDouble(j -> to.period() * j / cells - leaves)
                    .toArray();
        }
        double beat = request.beat().getAsDouble();
        int beats = (int) Math.max(1, Math.ceil(to.period() / beat - 1e-6));
        return IntStream.range(0, beats).mapToDouble(k -> k * beat).toArray();
    }

    /**
     * The cheapest pair of passages for each share of the joined clock's lead; to a song for each
     * of its beats and each time at which the left hand may leave. Where a plane bends, cords
     * easily cross on the way: then the cheapest with the right hand first, with both at about the
     * same time, and with the left hand first.
     */
    private void both(List<Start> all) {
        int most = cells * rounds();
        int orders = bends() ? 3 : 1;
        boolean song = request.beat().isPresent();
        int slots = song ? cells * leads(0).length : cells;
        double[] best = new double[orders * slots];
        Arrays.fill(best, Double.POSITIVE_INFINITY);
        Start[] kept = new Start[best.length];
        double step = from.period() / cells;
        int together = (int) Math.round(from.side(Side.LEFT).beat() / 2 / step);
        for (int i = 0; i < cells; i++) {
            double leaves = step * i;
            double[] leads = leads(i);
            for (int n = 0; n < leads.length; n++) {
                double later = leads[n];
                int j = cell(leaves + later);
                double one = left.cost(i, j);
                int cell = orders * (song ? cells * n + i : cell(later));
                for (int m = -most; m <= most; m++) {
                    int first = Math.abs(m) <= together ? 0 : Integer.signum(m);
                    int slot = cell + (orders == 1 ? 0 : 1 + first);
                    int k = Math.floorMod(i + m, cells);
                    double other = leaves + step * m;
                    int l = cell(other + later);
                    double two = right.cost(k, l);
                    double easier = Math.min(left.outlook(i, j), right.outlook(k, l));
                    double cost =
                            one
                                    + two
                                    - Torus.HARDNESS * easier
                                    + A_SECOND_APART * step * Math.abs(m);
                    if (cost < best[slot]) {
                        double ends =
                                Math.max(left.seconds(i, j), other - leaves + right.seconds(k, l));
                        if (ends - Math.min(0, other - leaves) > longest) {
                            continue;
                        }
                        best[slot] = cost;
                        kept[slot] = start(cost, i, j, k, l, leaves, other, later);
                    }
                }
            }
        }
        for (Start start : kept) {
            if (start != null) {
                all.add(start);
            }
        }
    }

    private Start start(
            double cost, int i, int j, int k, int l, double leaves, double other, double later) {
        double a = left.seconds(i, j);
        double b = right.seconds(k, l);
        return new Start(
                cost,
                new double[] {leaves, other},
                later,
                new double[] {a, b},
                new int[] {
                    left.attempt().nearestTurns(leaves, later, a),
                    right.attempt().nearestTurns(other, later, b)
                },
                Optional.empty());
    }
}

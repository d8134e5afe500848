package deferent.search.transition;

import deferent.motion.pairing.Gravity;
import java.util.Arrays;

/**
 * Works out one passage of one side, from a time on the one pattern's clock to a time on the
 * other's: the smoothest that its beginning leads to.
 *
 * <p>It begins with the plain {@link Blend} of the two. What the head draws fixes where the hand of
 * a cord must be, hand = p + L·b/|b| with b = p″ − g, since the head is a flat output (Sreenath,
 * Lee and Kumar, CDC 2013). Then what {@link Swell} adds to the head is made such that the hand's
 * jerk is least, in the mean of its square, which is what people's reaches come near to (Flash and
 * Hogan, The Journal of Neuroscience 5, 1985): direct transcription to the coefficients of a
 * spline, by Gauss and Newton with Levenberg's damping, since with b the hand's derivatives by them
 * are closed forms, each of which reaches over a few instants. What a {@link Grade} limits is held
 * off by penalties from where it is no longer easy: a hand that strays from where the two patterns'
 * hands would blend or quickens more than theirs, a pull that is lost, greater or quicker.
 *
 * <p>A search looks at few instants, between which a hand may jerk unseen; what it finds is
 * measured at {@value #MEASURED} a beat ({@link #again}). One attempt serves one thread; its
 * numbers are those of the last passage.
 */
final class Attempt {
    /**
     * How fine the spline is, and how closely it is looked at.
     *
     * @param pieces a beat, of which {@value #MEASURED} is a multiple
     * @param looks a piece
     */
    record Fineness(int pieces, int looks) {}

    /**
     * Instants a beat at which a passage is measured: four times as many change no figure by 10 %.
     */
    static final int MEASURED = 384;

    private static final int MOST_BEATS = 8;
    private static final int BESIDE = Blend.BESIDE;
    private static final int REACH = Swell.DEGREE + 1;
    private static final int COLUMNS = 2 * REACH;
    // A difference of four neighbouring instants reaches over so many unknowns.
    private static final int WIDTH = 2 * (REACH + 2);
    private static final double GRAVITY = Gravity.STANDARD;

    /** Jerk is counted in these, m/s³. */
    private static final double A_JERK = 1000;

    /** By so much more pull than is needed at least the search holds, head weights. */
    private static final double HELD = 0.12;

    /** A hand that strays less is let, metres. */
    private static final double NEAR = 0.9 * Grade.EASY.stray();

    /** What it costs to be out of reach, in grades. */
    private static final double BEYOND = 4;

    private static final double PENALTY = 60;
    private static final int TRIES = 8;

    /**
     * What a hand costs that quickens by twice the livelier pattern's most, and a pull likewise.
     */
    private static final double HURRY = 10;

    /**
     * What a hand quickens by at most in an unhurried reach, m/s²: 0.4 m in 0.4 s by least jerk has
     * a peak of 5.77·0.4/0.4² = 14, and a jerk of 26.8·0.4/0.4³ = 168 m/s³ in the root mean square
     * (Flash and Hogan 1985, from their closed form).
     */
    private static final double A_REACH = 14;

    private static final double REACH_JERK = 168;

    private static final double[] SECOND = {1, -2, 1};
    private static final double[] THIRD = {-1, 3, -3, 1};

    private final double length;
    private final Reachable reach;
    private final Fineness fineness;
    private final Blend blend;
    private final double beat;
    private final double live;
    private final double jerky;
    private final double mostPull;
    private final double mostRate;
    private final double[] plain;
    private final double[] head;
    private final double[] force;
    private final double[] u;
    private final double[] v;
    // Force and hand of what was drawn last, as Blend has them; pull and stray over the passage.
    private final double[] pulling;
    private final double[] hand;
    private final double[] pull;
    private final double[] off;
    // The slopes of hand and pull by the unknowns that reach to an instant.
    private final double[] slope;
    private final double[] pullSlope;
    // The unknowns, with as many that stay 0 at either end as reach beyond it.
    private final double[] size;
    private final double[] tried;
    private final NormalEquations normal;
    private final double[] row = new double[WIDTH];
    private final double[][] rows = new double[3][WIDTH];
    private Looks looks;
    private final Looks searching;
    private final Looks measuring;
    private int pieces;
    private int free;
    private int steps;
    private double dt;
    private double seconds;

    private double stray;
    private boolean reached;
    private double least;
    private double greatest;
    private double quickening;
    private double jerk;

    /** The B-splines at the instants of a piece: values and second derivatives. */
    private record Looks(int count, double[][] value, double[][] second) {
        static Looks of(int count) {
            double[][] value = new double[count][REACH];
            double[][] second = new double[count][REACH];
            for (int look = 0; look < count; look++) {
                for (int m = 0; m < REACH; m++) {
                    value[look][m] = Swell.basis(m, 0, (double) look / count);
                    second[look][m] = Swell.basis(m, 2, (double) look / count);
                }
            }
            return new Looks(count, value, second);
        }
    }

    Attempt(SpunSide from, SpunSide to, Reachable reach, Fineness fineness) {
        this.length = from.length();
        this.reach = reach;
        this.fineness = fineness;
        this.beat = (from.beat() + to.beat()) / 2;
        this.live = max(A_REACH, from.handQuick(), to.handQuick());
        this.jerky = max(REACH_JERK, from.handJerk(), to.handJerk());
        this.mostPull = Math.max(from.pull(), to.pull());
        this.mostRate = Math.max(from.quickening(), to.quickening());
        this.searching = Looks.of(fineness.looks());
        this.measuring = Looks.of(MEASURED / fineness.pieces());
        this.looks = searching;
        int most = MOST_BEATS * MEASURED + 1;
        this.blend = new Blend(from, to, most);
        this.plain = blend.hand();
        this.head = blend.head();
        this.force = blend.force();
        this.u = blend.u();
        this.v = blend.v();
        this.pulling = new double[plain.length];
        this.hand = new double[plain.length];
        this.pull = new double[most];
        this.off = new double[most];
        int instants = MOST_BEATS * fineness.pieces() * fineness.looks() + 1;
        this.slope = new double[3 * COLUMNS * instants];
        this.pullSlope = new double[COLUMNS * instants];
        int unknowns = 2 * (MOST_BEATS * fineness.pieces() + Swell.DEGREE);
        this.size = new double[unknowns];
        this.tried = new double[unknowns];
        this.normal = new NormalEquations(unknowns, WIDTH);
    }

    /** Mean of both patterns' poi beats, seconds. */
    double beat() {
        return beat;
    }

    /** How far the hand is at most from the blend of both hands, metres. */
    double stray() {
        return stray;
    }

    /** Least pull, head weights. */
    double least() {
        return least / GRAVITY;
    }

    /** Greatest pull, head weights. */
    double greatest() {
        return greatest / GRAVITY;
    }

    /** By which factor it is livelier than the livelier of the two patterns. */
    double quickening() {
        return quickening;
    }

    /** Root mean square of the hand's jerk, m/s³. */
    double jerk() {
        return jerk;
    }

    double hardness() {
        return reached ? Grade.hardness(stray, least(), quickening) : Double.POSITIVE_INFINITY;
    }

    /** The same, running on past what is possible. */
    double outlook() {
        return Grade.outlook(stray, least(), quickening) + (reached ? 0 : BEYOND);
    }

    Swell swell() {
        return new Swell(
                pieces,
                Arrays.copyOfRange(
                        size, 2 * Swell.DEGREE, 2 * (Swell.DEGREE + Swell.within(pieces))));
    }

    /** Whole turns that bring the next tether's angle nearest to this one's in mid passage. */
    int nearestTurns(double leaves, double later, double length) {
        return blend.nearestTurns(leaves, later, length);
    }

    /**
     * The smoothest passage found from the plain blend, looked at coarsely.
     *
     * @param leaves when it begins on the one pattern's clock, seconds
     * @param later how much the other's clock is ahead, seconds
     * @param takes how long it takes, seconds
     * @param turns whole turns added to the next tether's angle
     * @param rounds of Gauss and Newton
     * @return how hard it is; infinite where it is not possible
     */
    double run(double leaves, double later, double takes, int turns, int rounds) {
        begin(takes, fineness.pieces() * takes / beat, searching);
        blend.run(leaves, later, takes, turns, steps, false);
        beside();
        smooth(rounds);
        return measured();
    }

    /** The numbers of a passage that is known, from the courses themselves, looked at closely. */
    double again(double leaves, double later, double takes, int turns, Swell swell) {
        begin(takes, swell.pieces(), measuring);
        blend.run(leaves, later, takes, turns, steps, true);
        beside();
        System.arraycopy(swell.size(), 0, size, 2 * Swell.DEGREE, swell.size().length);
        hands(size);
        return measured();
    }

    /** What is made least, of the passage that was looked at last with another swell. */
    double cost(Swell swell) {
        Arrays.fill(tried, 0, free, 0);
        System.arraycopy(swell.size(), 0, tried, 2 * Swell.DEGREE, swell.size().length);
        return hands(tried);
    }

    private void begin(double takes, double wanted, Looks at) {
        int most = MOST_BEATS * fineness.pieces();
        seconds = takes;
        looks = at;
        pieces = Math.max(2 * REACH, Math.min(most, (int) Math.ceil(wanted - 1e-9)));
        free = 2 * (pieces + Swell.DEGREE);
        steps = looks.count() * pieces;
        dt = takes / steps;
        Arrays.fill(size, 0, free, 0);
    }

    /** Before and after a passage the hand is the patterns' own. */
    private void beside() {
        int end = 3 * (steps + 1 + BESIDE);
        System.arraycopy(plain, 0, hand, 0, 3 * BESIDE);
        System.arraycopy(plain, end, hand, end, 3 * BESIDE);
    }

    /** Writes the hands that a swell asks for; returns what is to be made least. */
    private double hands(double[] swell) {
        double sum = 0;
        for (int j = 0; j <= steps; j++) {
            drawn(j, swell);
            double lost = Math.max(0, lost(j));
            double far = Math.max(0, off[j] - NEAR);
            double hard = Math.max(0, pull[j] / mostPull - 1);
            double fast = j > 0 ? Math.max(0, Math.abs(faster(j)) - 1) : 0;
            sum +=
                    PENALTY * PENALTY * (lost * lost + far * far)
                            + HURRY * HURRY * (hard * hard + fast * fast);
        }
        for (int j = 0; j < steps + 2 * BESIDE - 1; j++) {
            double over = Math.max(0, quick(j) / live - 1);
            sum += HURRY * HURRY * over * over;
        }
        double third = 1 / (dt * dt * dt * A_JERK);
        for (int i = 0; i < 3 * (steps + 2 * BESIDE - 2); i++) {
            double here = third * third(hand, i);
            sum += here * here;
        }
        return sum;
    }

    /** Hand, pull and stray of one instant. */
    private void drawn(int j, double[] swell) {
        double rates = (double) pieces * pieces / (seconds * seconds);
        int at = 3 * (j + BESIDE);
        int first = first(j);
        int reaches = Math.min(REACH, (free - first) / 2);
        double[] value = looks.value()[j % looks.count()];
        double[] second = looks.second()[j % looks.count()];
        double alongU = 0;
        double alongV = 0;
        double quickU = 0;
        double quickV = 0;
        for (int m = 0; m < reaches; m++) {
            double onU = swell[first + 2 * m];
            double onV = swell[first + 2 * m + 1];
            alongU += onU * value[m];
            alongV += onV * value[m];
            quickU += onU * second[m] * rates;
            quickV += onV * second[m] * rates;
        }
        double square = 0;
        for (int k = 0; k < 3; k++) {
            double here = force[at + k] + quickU * u[k] + quickV * v[k];
            pulling[at + k] = here;
            square += here * here;
        }
        pull[j] = Math.sqrt(square);
        double leads = length / pull[j];
        double strays = 0;
        for (int k = 0; k < 3; k++) {
            double p = head[at + k] + alongU * u[k] + alongV * v[k];
            hand[at + k] = p + leads * pulling[at + k];
            double by = hand[at + k] - plain[at + k];
            strays += by * by;
        }
        off[j] = Math.sqrt(strays);
    }

    /** The first of the unknowns that reach to an instant. */
    private int first(int j) {
        return 2 * (j / looks.count());
    }

    /** By how much pull is wanting, head weights. */
    private double lost(int j) {
        return Grade.EASY.leastPull() + HELD - pull[j] / GRAVITY;
    }

    /** How quickly the pull grows up to an instant, over the livelier pattern's most. */
    private double faster(int j) {
        return (pull[j] - pull[j - 1]) / (dt * mostRate);
    }

    /** The hand's acceleration in the middle of three instants, m/s². */
    private double quick(int j) {
        double square = 0;
        for (int k = 0; k < 3; k++) {
            double two = second(hand, 3 * j + k);
            square += two * two;
        }
        return Math.sqrt(square) / (dt * dt);
    }

    private static double second(double[] of, int i) {
        return of[i + 6] - 2 * of[i + 3] + of[i];
    }

    private static double third(double[] of, int i) {
        return of[i + 9] - 3 * of[i + 6] + 3 * of[i + 3] - of[i];
    }

    /** Leaves the hands as the swell that was found asks for them. */
    private void smooth(int rounds) {
        double cost = hands(size);
        double damping = 1e-3;
        for (int round = 0; round < rounds; round++) {
            equations();
            boolean better = false;
            double before = cost;
            for (int tries = 0; tries < TRIES && !better && solve(damping); tries++) {
                double next = hands(tried);
                better = next < cost;
                if (better) {
                    cost = next;
                    System.arraycopy(tried, 0, size, 0, free);
                    damping = Math.max(1e-6, damping / 10);
                } else {
                    damping *= 20;
                }
            }
            if (!better) {
                hands(size);
                return;
            }
            if (cost > before * (1 - 1e-3)) {
                return;
            }
        }
    }

    /** Writes the next swell to try. */
    private boolean solve(double damping) {
        if (!normal.solve(damping, tried)) {
            return false;
        }
        for (int i = 0; i < free; i++) {
            tried[i] += size[i];
        }
        return true;
    }

    /** The normal equations about the present swell; the hands are those of it. */
    private void equations() {
        normal.clear(free);
        for (int j = 0; j <= steps; j++) {
            slopes(j);
        }
        for (int j = 0; j <= steps; j++) {
            losing(j);
            straying(j);
            hardening(j);
        }
        for (int j = 0; j < steps + 2 * BESIDE - 1; j++) {
            hurrying(j);
        }
        double third = 1 / (dt * dt * dt * A_JERK);
        for (int j = 0; j < steps + 2 * BESIDE - 2; j++) {
            int first = rows(j, THIRD);
            for (int k = 0; k < 3; k++) {
                for (int c = 0; c < WIDTH; c++) {
                    row[c] = third * rows[k][c];
                }
                add(first, WIDTH, third * third(hand, 3 * j + k));
            }
        }
    }

    private void losing(int j) {
        double lost = lost(j);
        if (lost > 0) {
            for (int c = 0; c < COLUMNS; c++) {
                row[c] = -PENALTY * pullSlope[COLUMNS * j + c] / GRAVITY;
            }
            add(first(j), COLUMNS, PENALTY * lost);
        }
    }

    private void straying(int j) {
        double far = off[j] - NEAR;
        if (far > 0) {
            int p = 3 * (j + BESIDE);
            for (int c = 0; c < COLUMNS; c++) {
                int s = 3 * (COLUMNS * j + c);
                double aside = 0;
                for (int k = 0; k < 3; k++) {
                    aside += (hand[p + k] - plain[p + k]) * slope[s + k];
                }
                row[c] = PENALTY * aside / off[j];
            }
            add(first(j), COLUMNS, PENALTY * far);
        }
    }

    private void hardening(int j) {
        double hard = pull[j] / mostPull - 1;
        if (hard > 0) {
            for (int c = 0; c < COLUMNS; c++) {
                row[c] = HURRY * pullSlope[COLUMNS * j + c] / mostPull;
            }
            add(first(j), COLUMNS, HURRY * hard);
        }
        double fast = j > 0 ? Math.abs(faster(j)) - 1 : 0;
        if (fast > 0) {
            double scale = HURRY * Math.signum(faster(j)) / (dt * mostRate);
            int before = first(j - 1);
            Arrays.fill(row, 0);
            for (int c = 0; c < COLUMNS; c++) {
                row[c] -= scale * pullSlope[COLUMNS * (j - 1) + c];
                row[c + first(j) - before] += scale * pullSlope[COLUMNS * j + c];
            }
            add(before, WIDTH, HURRY * fast);
        }
    }

    private void hurrying(int j) {
        double most = quick(j);
        if (most > live) {
            int first = rows(j, SECOND);
            double scale = HURRY / (most * live * dt * dt * dt * dt);
            for (int c = 0; c < WIDTH; c++) {
                double along = 0;
                for (int k = 0; k < 3; k++) {
                    along += second(hand, 3 * j + k) * rows[k][c];
                }
                row[c] = scale * along;
            }
            add(first, WIDTH, HURRY * (most / live - 1));
        }
    }

    private void add(int first, int count, double value) {
        normal.add(first, row, Math.min(count, free - first), value);
    }

    /** A difference's derivatives by the unknowns, from the one that is returned on. */
    private int rows(int j, double[] difference) {
        int first = first(Math.max(0, Math.min(steps, j - BESIDE)));
        for (double[] each : rows) {
            Arrays.fill(each, 0);
        }
        for (int d = 0; d < difference.length; d++) {
            int i = j + d - BESIDE;
            // Beside the passage nothing depends on the swell.
            if (i >= 0 && i <= steps) {
                int offset = first(i) - first;
                for (int c = 0; c < COLUMNS; c++) {
                    int p = 3 * (COLUMNS * i + c);
                    rows[0][offset + c] += difference[d] * slope[p];
                    rows[1][offset + c] += difference[d] * slope[p + 1];
                    rows[2][offset + c] += difference[d] * slope[p + 2];
                }
            }
        }
        return first;
    }

    /** The slopes of hand and pull at an instant by the unknowns that reach there. */
    private void slopes(int j) {
        double rates = (double) pieces * pieces / (seconds * seconds);
        int at = 3 * (j + BESIDE);
        double alongU = along(at, u) / pull[j];
        double alongV = along(at, v) / pull[j];
        double leads = length / pull[j];
        int piece = j / looks.count() - Swell.DEGREE;
        int look = j % looks.count();
        for (int c = 0; c < COLUMNS; c++) {
            int m = c / 2;
            int p = 3 * (COLUMNS * j + c);
            boolean within = piece + m >= 0 && piece + m < Swell.within(pieces);
            double[] e = c % 2 == 0 ? u : v;
            double along = c % 2 == 0 ? alongU : alongV;
            double value = within ? looks.value()[look][m] : 0;
            double second = within ? rates * looks.second()[look][m] : 0;
            for (int k = 0; k < 3; k++) {
                slope[p + k] =
                        value * e[k] + leads * second * (e[k] - along * pulling[at + k] / pull[j]);
            }
            pullSlope[COLUMNS * j + c] = second * along;
        }
    }

    private double along(int at, double[] e) {
        return pulling[at] * e[0] + pulling[at + 1] * e[1] + pulling[at + 2] * e[2];
    }

    private double measured() {
        stray = 0;
        least = Double.POSITIVE_INFINITY;
        greatest = 0;
        double fastest = 0;
        boolean beyond = false;
        for (int j = 0; j <= steps; j++) {
            int at = 3 * (j + BESIDE);
            least = Math.min(least, pull[j]);
            greatest = Math.max(greatest, pull[j]);
            if (j > 0) {
                fastest = Math.max(fastest, Math.abs(faster(j)));
            }
            stray = Math.max(stray, off[j]);
            beyond |= reach.beyond(hand[at], hand[at + 1], hand[at + 2]);
        }
        double quickest = 0;
        double jerks = 0;
        int count = steps + 2 * BESIDE - 2;
        for (int j = 0; j < count; j++) {
            for (int k = 0; k < 3; k++) {
                double three = third(hand, 3 * j + k);
                jerks += three * three;
            }
            quickest = Math.max(quickest, quick(j));
        }
        jerk = Math.sqrt(jerks / count) / (dt * dt * dt);
        quickening = max(greatest / mostPull, fastest, quickest / live, jerk / jerky);
        reached = !beyond;
        return hardness();
    }

    private static double max(double... values) {
        double most = 0;
        for (double v : values) {
            most = Math.max(most, v);
        }
        return most;
    }
}

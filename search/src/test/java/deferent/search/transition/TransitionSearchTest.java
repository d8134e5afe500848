package deferent.search.transition;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import deferent.reading.body.Performer;
import deferent.reading.closest.ClosestFigure;
import deferent.reading.tether.Cord;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class TransitionSearchTest {
    private static final int CELLS = 4;
    private static final Torus.Grid GRID = new Torus.Grid(CELLS, 1, new Attempt.Fineness(12, 2));

    private final SideDrawings drawings = new SideDrawings();

    private SpunPattern spun(String phrase, double tempo) {
        Pairing pairing =
                Phrase.parse(phrase).with(Tether.of(0.40)).withTempo(OptionalDouble.of(tempo));
        return new SpunPattern(pairing, Performer.USUAL, drawings);
    }

    @Test
    void theSearchOnItsGridFindsWhatPlainlyTryingEverythingFinds() {
        SpunPattern from = spun("extension vs triquetra", 50);
        SpunPattern to = spun("isolation vs extension, split time", 75);
        double found = TransitionSearch.least(from, to, TransitionRequest.USUAL, GRID);
        assertEquals(plainly(from, to), found, 1e-9);
    }

    /**
     * Every pair of moments of the left hand, with every moment of the right one, at all durations.
     */
    private static double plainly(SpunPattern from, SpunPattern to) {
        Attempt[] attempts = new Attempt[2];
        for (Side side : Side.values()) {
            SpunSide a = from.side(side);
            SpunSide b = to.side(side);
            attempts[side.ordinal()] =
                    new Attempt(a, b, Reachable.of(Performer.USUAL, a, b), GRID.fineness());
        }
        double longest = 4 * Math.max(from.period(), to.period());
        int rounds = (int) Math.floor(longest / from.period());
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < CELLS; i++) {
            for (int j = 0; j < CELLS; j++) {
                double leaves = from.period() * i / CELLS;
                double later = to.period() * j / CELLS - leaves;
                double[] one = best(attempts[0], leaves, later);
                for (int m = -CELLS * rounds; m <= CELLS * rounds; m++) {
                    double other = leaves + from.period() * m / CELLS;
                    int cell = (int) Math.rint((other + later) / to.period() * CELLS);
                    double joined = to.period() * cell / CELLS - other;
                    double[] two = best(attempts[1], other, joined);
                    double span =
                            Math.max(one[2], other - leaves + two[2]) - Math.min(0, other - leaves);
                    if (span <= longest) {
                        double apart = from.period() / CELLS * Math.abs(m);
                        double cost =
                                100 * Math.max(one[0], two[0]) + one[1] + two[1] + 0.1 * apart;
                        least = Math.min(least, cost);
                    }
                }
            }
        }
        return least;
    }

    /** Hardness, what is left of the cost, and seconds. */
    private static double[] best(Attempt attempt, double leaves, double later) {
        double[] best = {0, Double.POSITIVE_INFINITY, 0};
        for (double beats : Torus.BEATS) {
            double seconds = beats * attempt.beat();
            int turns = attempt.nearestTurns(leaves, later, seconds);
            attempt.run(leaves, later, seconds, turns, GRID.rounds());
            double rest = attempt.jerk() / 1000 + 0.05 * beats;
            if (100 * attempt.outlook() + rest < 100 * best[0] + best[1]) {
                best = new double[] {attempt.outlook(), rest, seconds};
            }
        }
        return best;
    }

    @Test
    void smoothingNeverMakesAHandJerkMoreThanThePlainBlendWhereThatIsPossible() {
        SpunPattern from = spun("extension vs extension", 50);
        SpunPattern to = spun("isolation vs isolation", 75);
        SpunSide a = from.side(Side.LEFT);
        SpunSide b = to.side(Side.LEFT);
        Attempt attempt = new Attempt(a, b, Reachable.of(Performer.USUAL, a, b), GRID.fineness());
        int gentler = 0;
        int possible = 0;
        for (int i = 0; i < 36; i++) {
            double leaves = a.period() * (i % 6) / 6;
            double later = b.period() * Math.floorDiv(i, 6) / 6 - leaves;
            double seconds = 1.5 * attempt.beat();
            int turns = attempt.nearestTurns(leaves, later, seconds);
            if (attempt.run(leaves, later, seconds, turns, 0) <= 2) {
                double plain = attempt.jerk();
                possible++;
                attempt.run(leaves, later, seconds, turns, 20);
                gentler += attempt.jerk() <= plain * 1.02 ? 1 : 0;
            }
        }
        assertTrue(possible >= 5, possible + " possible");
        assertTrue(gentler >= 0.9 * possible, gentler + " of " + possible);
    }

    @Test
    void aHandIsNoLivelierThanWasMeasuredHoweverCloselyItIsLookedAt() {
        noneIsLivelier(
                spun("extension vs triquetra", 50), spun("isolation vs extension, split time", 75));
    }

    /** The plane bends, one of them into one seen from behind, and the hands come forward first. */
    @Test
    void neitherIsOneWhosePlaneBends() {
        noneIsLivelier(spun(BESIDE, 75), spun(BEFORE, 75));
        noneIsLivelier(spun(BEFORE, 75), spun(BESIDE, 75));
    }

    private static final String BESIDE =
            "static spin left side vs static spin right side, reversed, tether 45 cm";
    private static final String BEFORE =
            "static spin at the shoulder vs static spin at the shoulder, opposites, tether 45 cm";

    /** Wheels that turn so that the near half of the bending circle swings outward. */
    @Test
    void wheelsBesideTheBodyBendIntoSpinsBeforeTheShouldersAndBack() {
        for (List<String> way : List.of(List.of(BESIDE, BEFORE), List.of(BEFORE, BESIDE))) {
            Transition best =
                    TransitionSearch.of(
                                    spun(way.get(0), 75),
                                    spun(way.get(1), 75),
                                    TransitionRequest.USUAL)
                            .best()
                            .orElseThrow();
            for (Side side : Side.values()) {
                assertEquals(TransitionKind.PLANE_BEND, best.bridge(side).kind());
            }
            assertEquals(Grade.EASY, Grade.of(best.hardness()));
        }
    }

    /** Turning the other way the near half would swing through the trunk. */
    @Test
    void wheelsThatTurnTheOtherWayWouldBendThroughTheBody() {
        Transitions none =
                TransitionSearch.of(
                        spun(BESIDE.replace(", reversed", ""), 75),
                        spun(BEFORE, 75),
                        TransitionRequest.USUAL);
        assertEquals(Hindrance.IN_THE_WAY, none.why());
    }

    @Test
    void aPlaneSeenFromBehindHoldsTheSameTether() {
        SpunPattern wheels = spun(BESIDE, 75);
        SpunPattern wall = spun(BEFORE, 75);
        int behind = 0;
        for (Side side : Side.values()) {
            SpunSide from = wheels.side(side);
            SpunSide to = wall.side(side);
            SpunSide seen = to.toward(from);
            behind += seen.growth() == to.growth() ? 0 : 1;
            assertEquals(Math.signum(from.growth()), Math.signum(seen.growth()));
            for (double t = -1; t < 2; t += 0.07) {
                Vector3D tether = tether(to, t);
                assertEquals(0, tether.distance(tether(seen, t)), 1e-9);
                assertEquals(0, tether.distance(drawn(wall.trace(), side, t)), 2e-3);
            }
        }
        assertEquals(1, behind);
    }

    private static Vector3D tether(SpunSide side, double time) {
        double[] row = new double[SpunSide.COLUMNS];
        side.at(time, row);
        double lean = row[SpunSide.LEAN];
        double flat = Math.sqrt(1 - lean * lean) * side.length();
        return new Vector3D(
                flat * Math.cos(row[SpunSide.ANGLE]),
                side.u(),
                flat * Math.sin(row[SpunSide.ANGLE]),
                side.v(),
                lean * side.length(),
                side.u().crossProduct(side.v()));
    }

    private static Vector3D drawn(Trace trace, Side side, double time) {
        double t = time - trace.period() * Math.floor(time / trace.period());
        return trace.head(side).position(t).subtract(trace.hand(side).position(t));
    }

    private static void noneIsLivelier(SpunPattern from, SpunPattern to) {
        TransitionRequest request = TransitionRequest.USUAL.with(Grade.HARD);
        Transitions found = TransitionSearch.of(from, to, request);
        assertTrue(found.list().size() >= 2, found.why().name());
        for (Transition transition : found.list()) {
            for (Side side : Side.values()) {
                Bridge bridge = transition.bridge(side);
                if (!bridge.keeps()) {
                    SpunSide a = from.side(side);
                    SpunSide b = to.side(side).toward(a);
                    double beat = (a.beat() + b.beat()) / 2;
                    Course hand = BlendedSide.of(from, to, bridge).hand();
                    Course plain = BlendedSide.of(from, to, bridge).plainHand();
                    int looks = (int) Math.ceil(1500 * bridge.seconds() / beat);
                    double jerks = 0;
                    double quickest = 0;
                    double stray = 0;
                    for (int i = 0; i < looks; i++) {
                        double t = bridge.seconds() * (i + 0.5) / looks;
                        State at = hand.at(t);
                        jerks += at.jerk().getNormSq();
                        quickest = Math.max(quickest, at.acceleration().getNorm());
                        stray = Math.max(stray, at.position().distance(plain.position(t)));
                    }
                    assertEquals(bridge.jerk(), Math.sqrt(jerks / looks), 0.1 * bridge.jerk());
                    double live = Math.max(a.handQuick(), b.handQuick());
                    assertTrue(quickest / live <= 1.03 * bridge.quickening(), quickest + " m/s²");
                    assertEquals(bridge.stray(), stray, 1e-3);
                }
            }
        }
    }

    @Test
    void noSingleBSplineMakesASmoothedPassageMuchSmoother() {
        // Stationary by plain differences, whatever slopes the search went by; hard passages among
        // them, where hands stray, pulls are lost and all are quicker than in either pattern.
        SpunPattern from = spun("isolation vs triquetra", 60);
        SpunPattern to = spun("extension vs isolation, opposites", 75);
        int hard = 0;
        for (Side side : Side.values()) {
            SpunSide a = from.side(side);
            SpunSide b = to.side(side);
            Attempt attempt =
                    new Attempt(a, b, Reachable.of(Performer.USUAL, a, b), GRID.fineness());
            for (int i = 0; i < 9; i++) {
                double leaves = a.period() * (i % 3) / 3;
                double later = b.period() * Math.floorDiv(i, 3) / 3 - leaves;
                double seconds = 1.2 * attempt.beat();
                int turns = attempt.nearestTurns(leaves, later, seconds);
                attempt.run(leaves, later, seconds, turns, 200);
                hard += attempt.outlook() > 0 ? 1 : 0;
                double[] size = attempt.swell().size();
                double[] base = new double[size.length];
                Swell found = attempt.swell();
                double cost = attempt.cost(found);
                for (int n = 0; n < size.length; n++) {
                    base[n] = gain(attempt, found, n, cost);
                    assertTrue(base[n] < 0.02 * cost, n + " would gain " + base[n] / cost);
                }
            }
        }
        assertTrue(hard >= 6, hard + " hard ones");
    }

    /** What Newton's step along one unknown alone would gain. */
    private static double gain(Attempt attempt, Swell found, int n, double cost) {
        double h = 1e-5;
        double up = attempt.cost(with(found, n, h));
        double down = attempt.cost(with(found, n, -h));
        double slope = (up - down) / (2 * h);
        double curve = (up - 2 * cost + down) / (h * h);
        return slope * slope / (2 * curve);
    }

    private static Swell with(Swell swell, int n, double more) {
        double[] size = swell.size().clone();
        size[n] += more;
        return new Swell(swell.pieces(), size);
    }

    @Test
    void aTabledCourseIsTheCourse() {
        SpunPattern from = spun("static spin vs triquetra", 55);
        DrawnSide drawn = DrawnSide.of(Trace.of(from.pairing()), Side.RIGHT);
        var closest =
                ClosestFigure.of(
                        Trace.of(from.pairing()),
                        Side.RIGHT,
                        Cord.of(Trace.of(from.pairing()), Side.RIGHT, DrawnSide.KIT),
                        DrawnSide.LIMITS);
        for (int i = 0; i < 97; i++) {
            double t = 3.1 * i / 97;
            var one = drawn.head().at(t);
            var other = closest.head().at(t);
            assertEquals(0, one.position().distance(other.position()), 1e-8);
            assertEquals(0, one.acceleration().distance(other.acceleration()), 1e-3);
        }
    }

    @Test
    void theGradesLieWithinEachOther() {
        Grade[] all = Grade.values();
        assertTrue(Arrays.asList(all).contains(Grade.USUAL));
        for (int i = 1; i < all.length; i++) {
            assertTrue(all[i].stray() > all[i - 1].stray());
            assertTrue(all[i].quickening() > all[i - 1].quickening());
            assertEquals(i - 1.0, Grade.hardness(all[i - 1].stray(), 0.5, 1), 1e-9);
            assertEquals(i, Math.ceil(Grade.hardness(all[i - 1].stray() + 1e-6, 0.5, 1)), 1e-9);
        }
        assertEquals(Double.POSITIVE_INFINITY, Grade.hardness(0.5, 0.5, 1));
        assertEquals(Double.POSITIVE_INFINITY, Grade.hardness(0, 0.29, 1));
        assertTrue(Grade.outlook(0.5, 0.5, 1) > 2);
    }
}

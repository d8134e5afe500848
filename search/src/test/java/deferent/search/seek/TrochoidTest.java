package deferent.search.seek;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Turns;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

/**
 * Flowers beside the curves of J. D. Lawrence, A Catalog of Special Plane Curves (1972): areas and
 * lengths of deltoid, astroid, cardioid and nephroid in the rolling circle's radius, petals as
 * fixed over rolling circle.
 */
class TrochoidTest {
    private static final double L = 0.6;
    private static final Space SPACE = Space.of(new Space.Grid(12, 2, 3, 6, 8, 0, false));

    private static SeriesCurve head(Trochoid t) {
        return SeriesCurve.of(
                t.rounds() < t.turns()
                        ? new int[] {t.rounds(), t.turns()}
                        : new int[] {t.turns(), t.rounds()},
                t.rounds() < t.turns()
                        ? new double[] {t.hand(), t.tether()}
                        : new double[] {t.tether(), t.hand()},
                new double[2],
                2,
                0);
    }

    private static double area(SeriesCurve curve) {
        double sum = 0;
        double[] p = Sampled.points(curve, 4096);
        for (int i = 0; i < 4096; i++) {
            int j = (i + 1) % 4096;
            sum += (p[2 * i] * p[2 * j + 1] - p[2 * j] * p[2 * i + 1]) / 2;
        }
        return sum;
    }

    private static double length(SeriesCurve curve) {
        double sum = 0;
        double[] p = Sampled.points(curve, 40_000);
        for (int i = 0; i < 40_000; i++) {
            int j = (i + 1) % 40_000;
            sum += Math.hypot(p[2 * i] - p[2 * j], p[2 * i + 1] - p[2 * j + 1]);
        }
        return sum;
    }

    private static Trochoid flower(double ratio, int turns) {
        return Trochoid.of(Motion.flower(ratio * L, turns, 0), Tether.of(L)).orElseThrow();
    }

    @Test
    void cuspedFlowersAreTheHandbooksCurves() {
        cusped(flower(2, -2), "deltoid", 3, 2, 16);
        cusped(flower(3, -3), "astroid", 4, 6, 24);
        cusped(flower(2, 2), "cardioid", 1, 6, 16);
        cusped(flower(3, 3), "nephroid", 2, 12, 24);
    }

    private static void cusped(
            Trochoid t, String name, int petals, double areaOverPi, double lengths) {
        assertThat(t.name()).isEqualTo(name);
        assertThat(t.cusped()).isTrue();
        assertThat(t.petals()).isEqualTo(petals);
        assertThat(t.fixed() / t.rolling()).isCloseTo(petals, within(1e-12));
        assertThat(Math.abs(t.signedArea())).isCloseTo(areaOverPi * Math.PI * L * L, within(1e-12));
        assertThat(Math.abs(area(head(t)))).isCloseTo(Math.abs(t.signedArea()), within(1e-4));
        assertThat(length(head(t))).isCloseTo(lengths * L, within(1e-4));
    }

    @Test
    void everyFlowerOfTheSpaceHasItsFamilysPetalsAndArea() {
        int flowers = 0;
        int[] petals = new int[13];
        for (long key : SPACE.build(0, SPACE.keys())) {
            if (SPACE.handShape(key).kind() != HandShape.Kind.CIRCLE) {
                continue;
            }
            var found = Trochoid.of(SPACE.motion(key, L), Tether.of(L));
            if (found.isEmpty()) {
                continue;
            }
            Trochoid t = found.get();
            SeriesCurve head = SPACE.head(key).scaled(L);
            assertThat(head.symmetry()).isEqualTo(t.petals());
            if (flowers++ % 50 == 0) {
                assertThat(area(head)).isCloseTo(t.signedArea(), within(1e-3));
            }
            petals[t.petals()]++;
        }
        // ten would take hand and poi turns that have a common divisor
        for (int p : new int[] {1, 2, 3, 4, 5, 6, 7, 8, 9, 11}) {
            assertThat(petals[p]).as("%d petals", p).isPositive();
        }
    }

    @Test
    void aFlowerThatComesBackThroughItsCentreIsARose() {
        // R = L: distance from the centre 2L·|cos((n − 1)·turn/2)|, the rhodonea of the handbook
        Trochoid rose = flower(1, -3);
        assertThat(rose.name()).isEqualTo("rose");
        double[] p = Sampled.points(head(rose), 360);
        for (int i = 0; i < 360; i++) {
            assertThat(Math.hypot(p[2 * i], p[2 * i + 1]))
                    .isCloseTo(
                            2 * L * Math.abs(Math.cos(2 * Math.PI * 2 * i / 360)), within(1e-12));
        }
    }

    /**
     * Double generation: Daniel Bernoulli (1725), in Yates, A Handbook on Curves (1952), from
     * memory.
     */
    @Test
    void oneFigureRolledInTwoWaysIsFoundAsTwoMotionsOfOneHeadPath() {
        Look look = new Look(SPACE, Tethers.FREE);
        long[] keys = SPACE.build(0, SPACE.keys());
        HeadClasses classes =
                HeadClasses.of(
                        look,
                        keys,
                        Bands.at(SeekRequest.of(SPACE).with(Tethers.FREE), new double[0])
                                .key(0, SPACE.keys())
                                .signatures());
        int twice = 0;
        for (long key : keys) {
            HandShape hand = SPACE.handShape(key);
            if (hand.kind() != HandShape.Kind.CIRCLE) {
                continue;
            }
            var found = Trochoid.of(SPACE.motion(key, L), Tether.of(L));
            if (found.isEmpty() || found.get().turns() == -found.get().rounds()) {
                continue;
            }
            Trochoid other = found.get().otherGeneration();
            assertThat(other.fixed() / other.rolling())
                    .isNotEqualTo(found.get().fixed() / found.get().rolling());
            assertThat(other.otherGeneration().fixed())
                    .isCloseTo(found.get().fixed(), within(1e-12));
            OptionalLong second =
                    SPACE.find(
                            HandShape.circle(other.rounds(), grid(other.hand() / other.tether())),
                            new Turns(other.turns(), 0),
                            0);
            if (second.isEmpty()) {
                continue;
            }
            twice++;
            assertThat(classes.of(second.getAsLong())).isEqualTo(classes.of(key));
            assertThat(second.getAsLong()).isNotEqualTo(key);
            assertThat(SPACE.motion(second.getAsLong(), L)).isNotEqualTo(SPACE.motion(key, L));
        }
        assertThat(twice).isGreaterThan(50);
    }

    /** The radius of the grid that this is but for rounding, or the ratio itself. */
    private static double grid(double ratio) {
        for (double steps : new double[] {12, 24}) {
            double near = Math.rint(ratio * steps) / steps;
            if (Math.abs(near - ratio) < 1e-9) {
                return near;
            }
        }
        return ratio;
    }
}

package deferent.reading.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class BodyOutlineProperties {
    private static final BodyOutline OUTLINE = BodyOutline.of(Performer.of(1.75));

    @Property
    void aTetherIsAsNearToTheBodyAsItsNearestPoint(Any any) {
        Vector3D p = any.from(BodyOutlineProperties::end);
        Vector3D q = any.from(BodyOutlineProperties::end);
        double brute = Double.POSITIVE_INFINITY;
        int steps = 4000;
        for (int i = 0; i <= steps; i++) {
            double s = (double) i / steps;
            brute = Math.min(brute, OUTLINE.distance(new Vector3D(1 - s, p, s, q)));
        }
        double exact = OUTLINE.distance(p, q);
        assertThat(exact).isLessThanOrEqualTo(brute + 1e-9);
        assertThat(exact).isCloseTo(brute, within(p.distance(q) / steps + 1e-9));
    }

    private static Vector3D end(Any any) {
        return new Vector3D(any.number(-1.5, 1.5), any.number(-1.5, 1.5), any.number(-1.5, 1.5));
    }

    @Test
    void theBreastboneLiesOnTheFrontOfTheTrunk() {
        assertThat(OUTLINE.distance(Vector3D.ZERO)).isCloseTo(0, within(1e-12));
        assertThat(OUTLINE.distance(new Vector3D(0, 0, 0.3))).isCloseTo(0.3, within(1e-12));
    }

    @Test
    void theBodyIsAsTallAsItsStature() {
        double top = Double.NEGATIVE_INFINITY;
        double bottom = Double.POSITIVE_INFINITY;
        for (List<Vector3D> line : drawn()) {
            assertThat(line.get(0)).isEqualTo(line.get(line.size() - 1));
            for (Vector3D p : line) {
                assertThat(p.getZ()).isZero();
                top = Math.max(top, p.getY());
                bottom = Math.min(bottom, p.getY());
            }
        }
        // Crown to ankles: the feet are left out.
        assertThat(top - bottom).isCloseTo((1 - 0.039) * 1.75, within(1e-9));
    }

    @Test
    void whatIsDrawnIsTheBodysRimInView() {
        for (List<Vector3D> line : drawn()) {
            for (Vector3D p : line) {
                // At the depth of the body's middle the drawn rim lies on the solid or within it,
                // where another part covers it.
                Vector3D atMiddle = new Vector3D(p.getX(), p.getY(), -0.06 * 1.75);
                assertThat(OUTLINE.distance(atMiddle)).isLessThan(1e-9);
            }
        }
    }

    /** As in the class's comment, heights and breadths as shares of stature. */
    @Test
    void crownChinHipsAnklesAndSidesStandWhereTheSharesPutThem() {
        double h = 1.75;
        double middle = -0.06 * h;
        assertThat(away(0, (1.000 - 0.769) * h + 0.2, middle)).isCloseTo(0.2, within(1e-9));
        // Before the face, which is as thick as it is high from chin to crown.
        assertThat(away(0, (0.935 - 0.769) * h, 0.3))
                .isCloseTo(0.3 + (0.06 - 0.065) * h, within(1e-9));
        assertThat(away(0, (0.844 - 0.769) * h, -0.025 * h + 0.01)).isCloseTo(0.01, within(1e-9));
        for (int side : new int[] {-1, 1}) {
            assertThat(away(side, -0.1, middle)).isCloseTo(1 - 0.129 * h, within(1e-9));
            assertThat(away(side, (0.3 - 0.769) * h, middle))
                    .isCloseTo(1 - 0.0955 * h, within(1e-9));
        }
        assertThat(away(0, (0.3 - 0.769) * h, 0.3)).isCloseTo(0.3 + 0.01 * h, within(1e-9));
        assertThat(away(0, (0.039 - 0.769) * h - 0.3, middle)).isCloseTo(0.3, within(1e-9));
        // The trunk ends at the hips: below them the body is as broad as the legs.
        assertThat(away(0.3, (0.500 - 0.769) * h, middle)).isGreaterThan(0.3 - 0.129 * h);
    }

    private static double away(double x, double y, double z) {
        return OUTLINE.distance(new Vector3D(x, y, z));
    }

    /** Steiner: a rectangle widened by t is 2πt longer round. */
    @Test
    void whatIsDrawnIsEvenLeftAndRightAndAsLongRoundAsTheBodysParts() {
        double h = 1.75;
        double[] halves = {0.065, 0.035, 0.129, 0.0955};
        double[] heights = {
            0.130, 0.870 - 0.818 + 0.07, 0.769 - 0.530 + 0.06, 0.530 + 0.05 - 0.039
        };
        double[] thick = {0.065, 0.035, 0.06, 0.05};
        for (int part = 0; part < 4; part++) {
            List<Vector3D> line = drawn().get(part);
            double left = 0;
            double right = 0;
            double top = Double.NEGATIVE_INFINITY;
            double bottom = Double.POSITIVE_INFINITY;
            double round = 0;
            for (int i = 0; i < line.size(); i++) {
                Vector3D p = line.get(i);
                left = Math.max(left, p.getX());
                right = Math.min(right, p.getX());
                top = Math.max(top, p.getY());
                bottom = Math.min(bottom, p.getY());
                round += i > 0 ? p.distance(line.get(i - 1)) : 0;
            }
            assertThat(left).isCloseTo(halves[part] * h, within(1e-9));
            assertThat(right).isCloseTo(-halves[part] * h, within(1e-9));
            assertThat(top - bottom).isCloseTo(heights[part] * h, within(1e-9));
            double straight =
                    4 * (halves[part] - thick[part]) + 2 * (heights[part] - 2 * thick[part]);
            double corners = 64 * Math.sin(Math.PI / 32) * thick[part];
            assertThat(round).isCloseTo((straight + corners) * h, within(1e-9));
        }
    }

    /**
     * The body as the audience sees it, drawn at z = 0: one closed line a part (the first point is
     * the last again), from head to legs, metres.
     */
    private static List<List<Vector3D>> drawn() {
        List<List<Vector3D>> lines = new ArrayList<>();
        for (BodyOutline.Part part : BodyOutline.Part.values()) {
            lines.add(rounded(OUTLINE.slab(part)));
        }
        return List.copyOf(lines);
    }

    // A rectangle with rounded corners, eight steps a corner.
    private static List<Vector3D> rounded(BodyOutline.Slab slab) {
        int steps = 8;
        List<Vector3D> line = new ArrayList<>();
        for (int corner = 0; corner < 4; corner++) {
            double x = corner == 0 || corner == 3 ? slab.half() : -slab.half();
            double y = corner < 2 ? slab.high() : slab.low();
            for (int i = 0; i <= steps; i++) {
                double angle = Math.PI / 2 * (corner + (double) i / steps);
                line.add(
                        new Vector3D(
                                x + slab.thick() * Math.cos(angle),
                                y + slab.thick() * Math.sin(angle),
                                0));
            }
        }
        line.add(line.get(0));
        return List.copyOf(line);
    }
}

package deferent.reading.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
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
        for (List<Vector3D> line : OUTLINE.drawn()) {
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
        for (List<Vector3D> line : OUTLINE.drawn()) {
            for (Vector3D p : line) {
                // At the depth of the body's middle the drawn rim lies on the solid or within it,
                // where another part covers it.
                Vector3D atMiddle = new Vector3D(p.getX(), p.getY(), -0.06 * 1.75);
                assertThat(OUTLINE.distance(atMiddle)).isLessThan(1e-9);
            }
        }
    }
}

package deferent.reading.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

/** Head and hand at the same instants. */
class PlacedTest {
    /** 3, 4 in the wall plane and 12 across it: 5 in the plane, 13 in all. */
    @Test
    void distanceIsSplitInThePlaneAndAcrossIt() {
        double[] head = {1, 1, 1, 1, 1, 1};
        double[] hand = {4, 5, 13, 1, 1, 1};
        Placed wall = Placed.of(head, hand, Vector3D.PLUS_K);
        assertThat(wall.gap()).isEqualTo(13);
        assertThat(wall.inPlane()).isEqualTo(5);
        assertThat(wall.depth()).isEqualTo(12);
        assertThat(wall.over()).containsExactly(5, 0);
        assertThat(wall.worst()).isZero();
        assertThat(wall.offset()).isEqualTo(new Vector3D(1.5, 2, 6));
        assertThat(wall.wander()).isEqualTo(6.5);
        assertThat(wall.stretch()).isEqualTo(6.5);
        Placed wheel = Placed.of(head, hand, Vector3D.PLUS_I);
        assertThat(wheel.depth()).isEqualTo(3);
        assertThat(wheel.inPlane()).isCloseTo(Math.hypot(4, 12), within(1e-12));
    }

    @Test
    void acrossATiltedPlaneIsAcrossItInAllThreeDirections() {
        Vector3D across = new Vector3D(1, 2, 2).scalarMultiply(1 / 3.0);
        Vector3D within = new Vector3D(2, 1, -2).scalarMultiply(1 / 3.0);
        double[] hand = new Vector3D(0.5, across, 0.4, within).toArray();
        Placed placed = Placed.of(new double[3], hand, across);
        assertThat(placed.depth()).isCloseTo(0.5, within(1e-12));
        assertThat(placed.inPlane()).isCloseTo(0.4, within(1e-12));
        assertThat(placed.wander()).isZero();
        assertThat(placed.stretch()).isZero();
    }

    @Test
    void theWorstInstantIsTheFirstOfSeveral() {
        double[] hand = {1, 0, 0, 2, 0, 0, 0, 2, 0, 1, 1, 0};
        assertThat(Placed.of(new double[12], hand, Vector3D.PLUS_K).worst()).isEqualTo(1);
    }

    @Test
    void aLatePathIsWhereItWasBefore() {
        double[] points = {0, 0, 0, 1, 0, 0, 2, 4, 0, 3, 0, 8};
        assertThat(Placed.later(points, 0.25)).containsExactly(3, 0, 8, 0, 0, 0, 1, 0, 0, 2, 4, 0);
        assertThat(Placed.later(points, -0.125))
                .containsExactly(0.5, 0, 0, 1.5, 2, 0, 2.5, 2, 4, 1.5, 0, 4);
    }
}

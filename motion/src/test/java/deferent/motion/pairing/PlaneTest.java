package deferent.motion.pairing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.shared.Side;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class PlaneTest {
    private static final Vector3D LEFT = Vector3D.PLUS_I;
    private static final Vector3D UP = Vector3D.PLUS_J;
    private static final Vector3D TO_THE_AUDIENCE = Vector3D.PLUS_K;

    @Test
    void theWallPlaneTurnsFromThePerformersLeftUpward() {
        same(Plane.WALL.u(), LEFT);
        same(Plane.WALL.v(), UP);
        same(Plane.WALL.normal(), TO_THE_AUDIENCE);
    }

    @Test
    void theWheelPlaneTurnsFromTheAudienceUpward() {
        same(Plane.WHEEL.u(), TO_THE_AUDIENCE);
        same(Plane.WHEEL.v(), UP);
        same(Plane.WHEEL.normal(), LEFT.negate());
    }

    @Test
    void theFloorPlaneTurnsFromThePerformersLeftTowardTheAudience() {
        same(Plane.FLOOR.u(), LEFT);
        same(Plane.FLOOR.v(), TO_THE_AUDIENCE);
        same(Plane.FLOOR.normal(), UP.negate());
    }

    @Test
    void aWallPlaneTippedAQuarterTurnIsAFloorPlane() {
        Plane tipped = new Plane(Plane.Kind.WALL, Math.PI / 2, 0);
        same(tipped.u(), Plane.FLOOR.u());
        same(tipped.v(), Plane.FLOOR.v());
    }

    @Test
    void aWheelPlaneSwivelledAQuarterTurnIsAWallPlane() {
        Plane swivelled = new Plane(Plane.Kind.WHEEL, 0, Math.PI / 2);
        same(swivelled.u(), Plane.WALL.u());
        same(swivelled.v(), Plane.WALL.v());
    }

    @Test
    void theHandsPlanesLieAHandsBreadthApart() {
        for (Plane plane : new Plane[] {Plane.WALL, Plane.WHEEL, Plane.FLOOR}) {
            Vector3D between =
                    Place.usual(Side.LEFT, plane)
                            .centre()
                            .subtract(Place.usual(Side.RIGHT, plane).centre());
            assertThat(Math.abs(between.dotProduct(plane.normal())))
                    .isCloseTo(Place.HAND_BREADTH, within(1e-15));
            assertThat(between.getNorm()).isCloseTo(Place.HAND_BREADTH, within(1e-15));
        }
    }

    private static void same(Vector3D a, Vector3D b) {
        assertThat(a.distance(b)).isLessThan(1e-15);
    }
}

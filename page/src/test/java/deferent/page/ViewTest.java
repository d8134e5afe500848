package deferent.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class ViewTest {
    private static final Vector3D LEFT = new Vector3D(1, 0, 0);
    private static final Vector3D FRONT = new Vector3D(0, 0, 1);

    @Test
    void theAudienceSeesThePerformersLeftOnItsRight() {
        assertThat(View.AUDIENCE.see(LEFT).right()).isEqualTo(1);
        assertThat(View.AUDIENCE.see(FRONT).near()).isEqualTo(1);
    }

    @Test
    void thePerformerSeesTheirLeftOnTheLeftAndTheFrontFarAway() {
        assertThat(View.PERFORMER.see(LEFT).right()).isCloseTo(-1, within(1e-12));
        assertThat(View.PERFORMER.see(FRONT).near()).isCloseTo(-1, within(1e-12));
    }

    @Test
    void theMirrorShowsTheLeftOnTheLeftAndTheFrontNear() {
        assertThat(View.MIRROR.see(LEFT).right()).isEqualTo(-1);
        assertThat(View.MIRROR.see(FRONT).near()).isEqualTo(1);
    }

    @Test
    void walkingAQuarterRoundToTheRightShowsTheSideThatWasOnTheRight() {
        View side = new View(View.Stand.AUDIENCE, Math.PI / 2, 0);
        assertThat(side.see(LEFT).near()).isCloseTo(1, within(1e-12));
        View performers = new View(View.Stand.PERFORMER, Math.PI / 2, 0);
        assertThat(performers.see(LEFT).near()).isCloseTo(-1, within(1e-12));
        View mirrored = new View(View.Stand.MIRROR, Math.PI / 2, 0);
        assertThat(mirrored.see(LEFT).near()).isCloseTo(-1, within(1e-12));
    }

    @Test
    void climbingAQuarterTurnLooksStraightDown() {
        View above = new View(View.Stand.AUDIENCE, 0, Math.PI / 2);
        assertThat(above.see(new Vector3D(0, 1, 0)).near()).isCloseTo(1, within(1e-12));
        assertThat(above.see(FRONT).up()).isCloseTo(-1, within(1e-12));
    }

    @Property
    void noViewStretchesAnything(Any any) {
        View.Stand stand = any.of(View.Stand.class);
        double turn = any.number(-7, 7);
        double lift = any.number(-1.57, 1.57);
        double x = any.number(-3, 3);
        double y = any.number(-3, 3);
        double z = any.number(-3, 3);
        View.Seen seen = new View(stand, turn, lift).see(x, y, z);
        double length = Math.sqrt(x * x + y * y + z * z);
        double shown =
                Math.sqrt(
                        seen.right() * seen.right()
                                + seen.up() * seen.up()
                                + seen.near() * seen.near());
        assertThat(shown).isCloseTo(length, within(1e-12));
    }
}

package deferent.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
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
    void noViewStretchesAnything(
            @ForAll View.Stand stand,
            @ForAll @DoubleRange(min = -7, max = 7) double turn,
            @ForAll @DoubleRange(min = -1.57, max = 1.57) double lift,
            @ForAll @DoubleRange(min = -3, max = 3) double x,
            @ForAll @DoubleRange(min = -3, max = 3) double y,
            @ForAll @DoubleRange(min = -3, max = 3) double z) {
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

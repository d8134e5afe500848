package deferent.reading.body;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class PerformerTest {
    /** Drillis and Contini (1966), in Winter: 0.186, 0.146, half of 0.108, and 0.129 of stature. */
    @Test
    void unmeasuredLengthsAreSharesOfStature() {
        Performer performer = Performer.of(1.80);
        assertThat(performer.upperArm()).isCloseTo(0.186 * 1.80, within(1e-12));
        assertThat(performer.elbowToGrip()).isCloseTo((0.146 + 0.054) * 1.80, within(1e-12));
        assertThat(performer.shoulderWidth()).isCloseTo(2 * 0.129 * 1.80, within(1e-12));
        assertThat(performer.arm()).isCloseTo(0.386 * 1.80, within(1e-12));
    }

    @Test
    void anUnsaidStatureIsAssumed() {
        assertThat(Performer.USUAL.stature()).isEqualTo(1.70);
        assertThat(Performer.USUAL.assumed()).isTrue();
        assertThat(Performer.of(1.70).assumed()).isFalse();
    }

    @Test
    void aMeasuredArmIsTakenAndSharedOutAsUsual() {
        Performer performer = Performer.USUAL.withArm(0.70);
        assertThat(performer.arm()).isEqualTo(0.70);
        assertThat(performer.upperArm() / performer.elbowToGrip())
                .isCloseTo(0.186 / 0.200, within(1e-12));
        assertThat(performer.shoulderWidth()).isEqualTo(Performer.USUAL.shoulderWidth());
    }

    @Test
    void shouldersAreApartByTheirWidthAboveAndBehindTheBreastbone() {
        Performer performer = Performer.USUAL.withShoulderWidth(0.40);
        assertThat(performer.shoulder(Side.LEFT).getX()).isCloseTo(0.20, within(1e-12));
        assertThat(performer.shoulder(Side.RIGHT).getX()).isCloseTo(-0.20, within(1e-12));
        assertThat(performer.shoulder(Side.LEFT).getY()).isPositive();
        assertThat(performer.shoulder(Side.LEFT).getZ()).isNegative();
    }

    /** Laid out joint by joint: the elbow 37 degrees from closed, then the wrist bent by 76. */
    @Test
    void aBentArmBringsTheFistToItsShoulderButNotIntoIt() {
        Performer performer = Performer.of(1.70);
        double forearm = Math.toRadians(180 - 37);
        double hand = forearm + Math.toRadians(76);
        double x = performer.upperArm() + performer.forearm() * Math.cos(forearm);
        double y = performer.forearm() * Math.sin(forearm);
        double fist = performer.elbowToGrip() - performer.forearm();
        assertThat(performer.bentArm())
                .isCloseTo(
                        Math.hypot(x + fist * Math.cos(hand), y + fist * Math.sin(hand)),
                        within(1e-12));
        assertThat(performer.bentArm()).isBetween(0.08, 0.12);
    }

    /** However far the grip is, no bone grows and no joint bends further than it does. */
    @Test
    void aFoldedArmKeepsItsBonesAndItsRanges() {
        Performer performer = Performer.of(1.70);
        double fist = performer.elbowToGrip() - performer.forearm();
        for (double d = 0.02; d < 0.80; d += 0.01) {
            Performer.Fold fold = performer.fold(d);
            double forearmAlong = fold.wrist() - fold.elbow();
            double forearmOut = fold.wristOut() - fold.elbowOut();
            double handAlong = fold.grip() - fold.wrist();
            assertThat(Math.hypot(fold.elbow(), fold.elbowOut()))
                    .isCloseTo(performer.upperArm(), within(1e-9));
            assertThat(Math.hypot(forearmAlong, forearmOut))
                    .isCloseTo(performer.forearm(), within(1e-9));
            assertThat(Math.hypot(handAlong, fold.wristOut())).isCloseTo(fist, within(1e-9));
            double elbow = between(fold.elbow(), fold.elbowOut(), forearmAlong, forearmOut);
            double wrist = between(forearmAlong, forearmOut, handAlong, -fold.wristOut());
            assertThat(Math.toDegrees(elbow)).isLessThanOrEqualTo(143 + 1e-6);
            assertThat(Math.toDegrees(wrist)).isLessThanOrEqualTo(76 + 1e-6);
            if (d > 0.21) {
                assertThat(Math.toDegrees(wrist)).as("straight at %s", d).isLessThan(1e-3);
            }
            assertThat(fold.grip())
                    .isCloseTo(
                            Math.max(performer.bentArm(), Math.min(d, performer.arm())),
                            within(1e-9));
        }
    }

    private static double between(double ax, double ay, double bx, double by) {
        return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
    }

    @Test
    void aStatureInCentimetresIsRefused() {
        assertThatThrownBy(() -> Performer.of(172))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("stature")
                .hasMessageContaining("1 m to 2.5 m");
    }

    @Test
    void anArmOrShouldersInCentimetresAreRefused() {
        assertThatThrownBy(() -> Performer.USUAL.withArm(66))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("arm");
        assertThatThrownBy(() -> Performer.USUAL.withShoulderWidth(40))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("shoulder width");
    }

    /** Shoulders at 0.818 and the breastbone at 0.769 of stature, 0.06 apart in depth. */
    @Test
    void theFrameStandsWhereTheBreastboneIs() {
        Performer performer = Performer.of(2.0);
        assertThat(performer.ground()).isCloseTo(-1.538, within(1e-12));
        assertThat(performer.height(0.769)).isZero();
        assertThat(performer.shoulder(Side.RIGHT).distance(new Vector3D(-0.258, 0.098, -0.12)))
                .isLessThan(1e-12);
    }
}

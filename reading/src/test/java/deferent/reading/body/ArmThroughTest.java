package deferent.reading.body;

import static org.assertj.core.api.Assertions.assertThat;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.PlaneTurn;
import deferent.motion.pairing.Tether;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.body.ArmThrough.What;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class ArmThroughTest {
    private static final Performer PERFORMER = Performer.of(1.70);
    private static final Vector3D LEFT = PERFORMER.shoulder(Side.LEFT);
    private static final Vector3D RIGHT = PERFORMER.shoulder(Side.RIGHT);

    private static Part still(Vector3D grip, double tether) {
        return new Part(
                Motion.staticSpin(1, 0),
                Tether.of(tether),
                new Place(Plane.WALL, PlaneTurn.NONE, grip),
                1);
    }

    private static List<ArmThrough> through(Part left, Part right) {
        return through(Trace.of(Pairing.of(left, right)));
    }

    private static List<ArmThrough> through(Trace trace) {
        return ArmThrough.of(trace, Reach.of(trace, PERFORMER));
    }

    private static List<ArmThrough> through(String phrase) {
        return through(Trace.of(Phrase.parse(phrase).pairing()));
    }

    /** A straight arm has no elbow to move: a cord that sweeps over it goes through it. */
    @Test
    void aCordThatSweepsOverAStraightArmGoesThroughIt() {
        Part straight = still(LEFT.add(new Vector3D(0, 0, 0.65)), 0.2);
        Part sweeping = still(RIGHT.add(new Vector3D(0.2, 0, 0.45)), 0.5);
        List<ArmThrough> through = through(straight, sweeping);
        assertThat(through).hasSize(1);
        ArmThrough one = through.get(0);
        assertThat(one.side()).isEqualTo(Side.LEFT);
        assertThat(one.what()).isEqualTo(What.CORD);
        assertThat(one.forearm()).as("45 cm out, beyond an upper arm of 32 cm").isTrue();
    }

    /** It is told when: the cord points from the right hand to the left arm then. */
    @Test
    void theMomentIsThatAtWhichTheCordIsAtTheArm() {
        Part straight = still(LEFT.add(new Vector3D(0, 0, 0.65)), 0.2);
        Part sweeping = still(RIGHT.add(new Vector3D(0.2, 0, 0.45)), 0.5);
        Trace trace = Trace.of(Pairing.of(straight, sweeping));
        double time = through(trace).get(0).time();
        Vector3D head = trace.head(Side.RIGHT).position(time);
        Vector3D hand = trace.hand(Side.RIGHT).position(time);
        Vector3D arm = LEFT.add(new Vector3D(0, 0, 0.45));
        double angle = Vector3D.angle(head.subtract(hand), arm.subtract(hand));
        assertThat(Math.toDegrees(angle)).isLessThan(12);
    }

    @Test
    void aCordThatIsTooShortToComeToTheArmDoesNot() {
        Part straight = still(LEFT.add(new Vector3D(0, 0, 0.65)), 0.2);
        assertThat(through(straight, still(RIGHT.add(new Vector3D(0.2, 0, 0.45)), 0.19))).isEmpty();
    }

    /** A bent arm's elbow, which would hang in the cord's way, moves out of it. */
    @Test
    void anElbowThatCanGetOutOfTheWayDoes() {
        Vector3D grip = LEFT.add(new Vector3D(0, 0, 0.30));
        // Hanging, the elbow is 29 cm below the line from shoulder to grip and 12 cm ahead.
        Vector3D hanging = LEFT.add(new Vector3D(0, -0.291, 0.124));
        Part sweeping = still(hanging.add(new Vector3D(-0.20, 0, 0.03)), 0.22);
        assertThat(through(still(grip, 0.2), sweeping)).noneMatch(one -> one.what() == What.CORD);
        // Where the cord sweeps all round it as well, no elbow is out of its way.
        Part round = still(grip.add(new Vector3D(-0.13, 0, -0.06)), 0.6);
        assertThat(through(still(grip, 0.2), round))
                .anyMatch(one -> one.side() == Side.LEFT && one.what() == What.CORD);
    }

    @Test
    void anArmStraightThroughTheHeadGoesThroughTheBody() {
        Vector3D head = new Vector3D(0, PERFORMER.height(0.935), LEFT.getZ());
        Vector3D grip = LEFT.add(0.65, head.subtract(LEFT).normalize());
        assertThat(through(still(grip, 0.2), still(RIGHT.add(new Vector3D(0, -0.4, 0.2)), 0.2)))
                .anyMatch(one -> one.side() == Side.LEFT && one.what() == What.BODY);
    }

    @Test
    void handsThatGoRoundEachOtherInFrontWindTheirArmsTogether() {
        assertThat(through("isolation vs isolation, tether 40 cm, split time"))
                .anyMatch(one -> one.what() == What.ARM);
    }

    @Test
    void apartNothingIsInTheWay() {
        assertThat(through("static spin at the shoulder vs static spin at the shoulder")).isEmpty();
        assertThat(through("stacked isolations, tether 40 cm")).isEmpty();
    }

    @Test
    void ofAnArmThatIsTooShortNothingIsSaid() {
        assertThat(through("extension vs extension, opposites")).isEmpty();
    }
}

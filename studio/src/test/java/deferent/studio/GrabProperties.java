package deferent.studio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Size;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.motion.trial.Any;
import deferent.motion.trial.Property;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.junit.jupiter.api.Test;

class GrabProperties {
    private static final List<String> PHRASES =
            List.of(
                    "isolation vs triquetra",
                    "static spin vs four-petal antispin, quarter time",
                    "extension vs isolation, opposite direction",
                    "horizontal cat-eye vs CAP, split time, counter-clockwise",
                    "isolation vs triquetra, wheel plane",
                    "static spin vs triquetra, floor plane",
                    "isolation vs CAP turns 1.5 out 0.5 back");
    private static final double[] TIMES = {0, 0.13, 0.42, 0.77};

    @Property
    void aGrabbedPoiPointsAtThePointer(Any any) {
        String phrase = any.of(PHRASES);
        Side side = any.of(Side.class);
        double x = any.number(-1.5, 1.5);
        double y = any.number(-1.5, 1.5);
        Pairing pairing = Phrase.parse(phrase).pairing();
        for (double time : TIMES) {
            Vector3D to = onPlane(pairing, side, x, y);
            Pairing after = grab(side.word() + ".poi", to, time).applied(pairing);
            Vector3D hand = Trace.of(pairing).hand(side).at(time).position();
            if (to.distance(hand) < 0.02) {
                continue;
            }
            Vector3D head = Trace.of(after).head(side).at(time).position();
            double off = Vector3D.angle(head.subtract(hand), to.subtract(hand));
            // Half a degree's step gives at most a quarter; a flower of four petals goes in steps
            // of a tenth of a degree of tilt, four tenths of its poi's angle; one turn clings
            // within two and a half degrees of a quarter turn.
            assertThat(Math.toDegrees(off)).isLessThanOrEqualTo(2.51);
            assertThat(head.distance(hand))
                    .isCloseTo(pairing.part(side).tether().length(), within(1e-9));
        }
    }

    @Property
    void withTheTetherToTheHeadIsWhereThePointerIs(Any any) {
        double x = any.number(-1.5, 1.5);
        double y = any.number(-1.5, 1.5);
        Pairing pairing = Phrase.parse("static spin vs triquetra, quarter time").pairing();
        Vector3D to = onPlane(pairing, Side.LEFT, x, y);
        Vector3D hand = Trace.of(pairing).hand(Side.LEFT).at(0.3).position();
        if (to.distance(hand) < 0.05) {
            return;
        }
        Pairing after = grab("left.tether", to, 0.3).applied(pairing);
        Vector3D head = Trace.of(after).head(Side.LEFT).at(0.3).position();
        assertThat(head.distance(to)).isLessThan(0.0005 + Math.toRadians(2.5) * to.distance(hand));
        assertThat(after.left().tether().length())
                .isEqualTo(Math.rint(to.distance(hand) * 1000) / 1000);
    }

    @Property
    void aGrabbedHandCircleGoesThroughThePointer(Any any) {
        double x = any.number(-1.5, 1.5);
        double y = any.number(-1.5, 1.5);
        Pairing pairing = Phrase.parse("isolation vs triquetra").pairing();
        Pairing after =
                grab("right.circle", onPlane(pairing, Side.RIGHT, x, y), 0).applied(pairing);
        double radius = Size.of(Side.RIGHT, Size.Kind.HAND_RADIUS).read(after).orElseThrow();
        assertThat(radius).isEqualTo(Math.max(0.001, Math.rint(Math.hypot(x, y) * 1000) / 1000));
        assertThat(after.left()).isEqualTo(pairing.left());
    }

    @Property
    void aPointerOffThePlaneCountsWhereItFallsOntoIt(Any any) {
        double depth = any.number(-3, 3);
        Pairing pairing = Phrase.parse("isolation vs triquetra").pairing();
        Pairing near = grab("right.circle", new Vector3D(0.3, 0.4, depth), 0).applied(pairing);
        assertThat(Size.of(Side.RIGHT, Size.Kind.HAND_RADIUS).read(near)).hasValue(0.5);
    }

    @Test
    void aGrabbedCentreMovesInItsPlaneAndKeepsItsDepth() {
        Pairing pairing = Phrase.parse("isolation vs triquetra").pairing();
        Pairing after = grab("left.centre", new Vector3D(0.2, -0.1, 0.9), 0).applied(pairing);
        Vector3D centre = after.left().place().centre();
        assertThat(centre).isEqualTo(new Vector3D(0.2, -0.1, 0.34));
        assertThat(after.right()).isEqualTo(pairing.right());
    }

    @Test
    void bothCentresMoveTogether() {
        Pairing pairing = Phrase.parse("isolation vs triquetra").pairing();
        Pairing after = grab("both.centre", new Vector3D(0.2, 0.1, 0), 0).applied(pairing);
        assertThat(after.left().place().centre()).isEqualTo(new Vector3D(0.2, 0.1, 0.34));
        assertThat(after.right().place().centre()).isEqualTo(new Vector3D(0.2, 0.1, 0.26));
    }

    @Test
    void aGrabbedTiltTurnsTheFigureToThePointer() {
        Pairing pairing = Phrase.parse("isolation vs horizontal cat-eye").pairing();
        // The cat-eye's handle stands at the top; a fortieth of a turn to the left of it.
        double angle = Math.PI / 2 - Math.PI / 20;
        Vector3D to = onPlane(pairing, Side.RIGHT, 2 * Math.cos(angle), 2 * Math.sin(angle));
        Pairing after = grab("right.tilt", to, 0).applied(pairing);
        double tilt = Size.of(Side.RIGHT, Size.Kind.TILT).read(after).orElseThrow();
        assertThat(Math.toDegrees(tilt)).isCloseTo(-9, within(1e-9));
    }

    @Test
    void afterAWholePetalATiltedFlowerIsItselfAgain() {
        Pairing pairing = Phrase.parse("isolation vs four-petal antispin").pairing();
        Vector3D to = onPlane(pairing, Side.RIGHT, 2, 0);
        assertThat(grab("right.tilt", to, 0).applied(pairing)).isEqualTo(pairing);
    }

    @Test
    void aPendulumHasNoTiltToGrab() {
        Pairing pairing = Phrase.parse("pendulum vs triquetra").pairing();
        assertThatThrownBy(() -> grab("left.tilt", Vector3D.PLUS_I, 0).applied(pairing))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("gravity says how a pendulum hangs");
    }

    @Test
    void aFigureThatLooksTheSameHoweverItIsTurnedHasNoTiltToGrab() {
        Pairing pairing = Phrase.parse("isolation vs triquetra").pairing();
        assertThatThrownBy(() -> grab("left.tilt", Vector3D.PLUS_I, 0).applied(pairing))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("has no tilt");
    }

    @Test
    void aStillHandHasNoCircleToGrab() {
        Pairing pairing = Phrase.parse("static spin vs triquetra").pairing();
        assertThatThrownBy(() -> grab("left.circle", Vector3D.PLUS_I, 0).applied(pairing))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("stays where it is");
    }

    @Property
    void aPendulumGrabbedAtItsEndSwingsFromThere(Any any) {
        double degrees = any.number(5, 170);
        Pairing pairing = Phrase.parse("pendulum vs CAP").pairing();
        double angle = -Math.PI / 2 - Math.toRadians(degrees);
        Vector3D to = onPlane(pairing, Side.LEFT, 0.6 * Math.cos(angle), 0.6 * Math.sin(angle));
        Pairing after = grab("left.poi", to, 0).applied(pairing);
        double swing = Size.of(Side.LEFT, Size.Kind.AMPLITUDE).read(after).orElseThrow();
        assertThat(Math.toDegrees(swing)).isCloseTo(degrees, within(0.2501));
        Vector3D head = Trace.of(after).head(Side.LEFT).at(0).position();
        assertThat(head.distance(to)).isLessThan(0.6 * Math.toRadians(0.26));
    }

    @Test
    void aPendulumGrabbedMidSwingPassesThePointerAtThatShareOfItsCycle() {
        Pairing pairing = Phrase.parse("pendulum vs CAP").pairing();
        double share = 0.07;
        double angle = -Math.PI / 2 - Math.toRadians(50);
        Vector3D to = onPlane(pairing, Side.LEFT, 0.6 * Math.cos(angle), 0.6 * Math.sin(angle));
        Pairing after = grab("left.poi", to, share * pairing.period()).applied(pairing);
        assertThat(after.period()).isNotEqualTo(pairing.period());
        Vector3D head = Trace.of(after).head(Side.LEFT).at(share * after.period()).position();
        assertThat(head.distance(to)).isLessThan(0.01);
    }

    @Test
    void twoPendulumsStayInTimeWhenOneIsGrabbed() {
        Pairing pairing = Phrase.parse("pendulum vs pendulum").pairing();
        Vector3D to = onPlane(pairing, Side.LEFT, -0.4, 0);
        Pairing after = grab("left.tether", to, 0).applied(pairing);
        assertThat(after.left().tether().length()).isEqualTo(0.4);
        assertThat(after.right().tether().length()).isEqualTo(0.4);
    }

    @Property
    void aDraggedPairingCanStillBeSaid(Any any) {
        String phrase = any.of(PHRASES);
        double x = any.number(-1.5, 1.5);
        double y = any.number(-1.5, 1.5);
        Pairing pairing = Phrase.parse(phrase).pairing();
        for (String key : new String[] {"left.poi", "right.poi", "left.centre", "right.tether"}) {
            Side side = key.startsWith("left") ? Side.LEFT : Side.RIGHT;
            Pairing after = grab(key, onPlane(pairing, side, x, y), 0.2).applied(pairing);
            Optional<String> said = Phrase.write(after);
            assertThat(said).as("%s of %s", key, phrase).isPresent();
            assertThat(Phrase.parse(said.orElseThrow()).pairing()).isEqualTo(after);
        }
    }

    private static Grab grab(String key, Vector3D to, double time) {
        return Grab.of(key, to, Optional.empty(), time);
    }

    /** The point x along u and y along v from the side's centre, in its plane. */
    private static Vector3D onPlane(Pairing pairing, Side side, double x, double y) {
        var place = pairing.part(side).place();
        return place.centre().add(new Vector3D(x, place.plane().u(), y, place.plane().v()));
    }
}

package deferent.reading.tether;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * One poi as a mechanical thing: a head on a cord under gravity.
 *
 * <p>A cord with mass stays straight and uniform here, which is right to first order in cord over
 * head mass: its bow is left out. With μ the mass a metre, the straight line has first moment M₁ =
 * mL + μL²/2 and second moment M₂ = mL² + μL³/3 about the hand, and its moment equation, e⊥ being
 * the part across the cord,
 *
 * <pre>  M₂·(e″)⊥ = (M₁·(g − h″) + L·D)⊥ </pre>
 *
 * is that of a point mass {@link #swingMass} = M₁/L on a weightless cord of length {@link
 * #swingLength} = M₂/M₁: the centre of oscillation. So one set of equations serves both.
 *
 * @param length hand to head's centre, metres
 * @param kit head, cord and air
 * @param gravity m/s² along −y; 0 for checks without weight
 */
public record Cord(double length, Kit kit, double gravity) {
    public Cord {
        Refusal.positive(length, 5, "tether", "m");
        Refusal.within(gravity, 0, 100, "gravity", "m/s²");
    }

    /** A side's poi under standard gravity. */
    public static Cord of(Trace trace, Side side, Kit kit) {
        return of(trace, side, kit, Gravity.STANDARD);
    }

    /** A side's poi under a gravity of one's own, m/s² along −y. */
    public static Cord of(Trace trace, Side side, Kit kit, double gravity) {
        return new Cord(trace.pairing().part(side).tether().length(), kit, gravity);
    }

    /** Gravity as a vector, m/s². */
    public Vector3D fall() {
        return new Vector3D(0, -gravity, 0);
    }

    /** One head weight in newtons, always under standard gravity, so that pulls compare. */
    public double headWeight() {
        return kit.headMass() * Gravity.STANDARD;
    }

    /**
     * Length of the point pendulum that moves as this one, metres; without cord mass, the length.
     */
    public double swingLength() {
        double cord = kit.cordMass() * length / kit.headMass();
        return length * (1 + cord / 3) / (1 + cord / 2);
    }

    /** The mass that drag works against, kilograms; without cord mass, the head's. */
    public double swingMass() {
        return kit.headMass() + kit.cordMass() * length / 2;
    }

    /** Drag on the head over its speed, N·s/m; 0 where the air does not count. */
    double dragOverSpeed(double speed) {
        return kit.air() ? Drag.overSpeed(speed, kit.headDiameter()) : 0;
    }

    /** Both of them; asked only where the air counts. */
    Drag.Both dragAndSlope(double speed) {
        return Drag.both(speed, kit.headDiameter());
    }

    double dragOverSpeedSlope(double speed) {
        return kit.air() ? Drag.overSpeedSlope(speed, kit.headDiameter()) : 0;
    }

    /** Drag on a head of this velocity, newtons. */
    public Vector3D drag(Vector3D velocity) {
        return kit.air()
                ? velocity.scalarMultiply(-dragOverSpeed(velocity.getNorm()))
                : Vector3D.ZERO;
    }
}

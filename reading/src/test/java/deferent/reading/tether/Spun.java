package deferent.reading.tether;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Tether;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import java.util.OptionalDouble;

/** Pairings these tests spin: the motion in question on the left, the same on the right. */
final class Spun {
    static final double TETHER = 0.60;

    private Spun() {}

    static Trace of(Motion motion, double period) {
        return of(motion, Plane.WALL, period);
    }

    static Trace of(Motion motion, Plane plane, double period) {
        return of(motion, plane, TETHER, period);
    }

    static Trace of(Motion motion, Plane plane, double tether, double period) {
        Part left = new Part(motion, Tether.of(tether), Place.usual(Side.LEFT, plane), 1);
        Part right = new Part(motion, Tether.of(tether), Place.usual(Side.RIGHT, plane), 1);
        int beats = motion.path().still() ? Math.max(1, Math.abs(motion.spin().turns())) : 1;
        return Trace.of(Pairing.of(left, right).withTempo(OptionalDouble.of(60 / period * beats)));
    }

    /** Two motions as said, the left one first, in the wall plane. */
    static Trace pair(Motion left, Motion right, OptionalDouble tempo) {
        return Trace.of(
                Pairing.of(
                                new Part(
                                        left,
                                        Tether.of(TETHER),
                                        Place.usual(Side.LEFT, Plane.WALL),
                                        1),
                                new Part(
                                        right,
                                        Tether.of(TETHER),
                                        Place.usual(Side.RIGHT, Plane.WALL),
                                        1))
                        .withTempo(tempo));
    }

    static Trace triquetra(double period) {
        return of(Motion.flower(TETHER, -2, 0), period);
    }

    static Trace staticSpin(double period) {
        return of(Motion.staticSpin(1, 0), period);
    }

    static Trace isolation(double period) {
        return of(Motion.flower(TETHER / 2, 1, Math.PI), period);
    }

    static Trace extension(double radius, double period) {
        return of(Motion.flower(radius, 1, 0), period);
    }

    /** A pendulum sets its own tempo. */
    static Trace pendulum(double amplitude) {
        Motion motion = Motion.pendulum(amplitude);
        Part left = new Part(motion, Tether.of(TETHER), Place.usual(Side.LEFT, Plane.WALL), 1);
        Part right = new Part(motion, Tether.of(TETHER), Place.usual(Side.RIGHT, Plane.WALL), 1);
        return Trace.of(Pairing.of(left, right));
    }
}

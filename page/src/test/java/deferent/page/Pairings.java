package deferent.page;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Tether;
import deferent.motion.shared.Side;

/** Pairings to draw. */
final class Pairings {
    private Pairings() {}

    /**
     * Left: still hand, poi clockwise round it. Right: triquetra with a hand circle of a tether.
     */
    static Pairing staticSpinWithTriquetra() {
        return pair(Motion.staticSpin(1, 0), Motion.flower(0.6, -2, 0));
    }

    static Pairing isolationWithFourPetals() {
        return pair(Motion.flower(0.3, 1, Math.PI), Motion.flower(0.6, -3, 0));
    }

    static Pairing pair(Motion left, Motion right) {
        return Pairing.of(part(Side.LEFT, left), part(Side.RIGHT, right));
    }

    /** A right hand still beside the middle, its poi on a tether of a length, so many turns. */
    static Part longer(int turns, double tether) {
        return new Part(
                Motion.staticSpin(turns, 0),
                new Tether(tether),
                Place.usual(Side.RIGHT, Plane.WALL),
                1);
    }

    private static Part part(Side side, Motion motion) {
        return new Part(motion, Tether.USUAL, Place.usual(side, Plane.WALL), 1);
    }
}

package deferent.reading.link;

import deferent.motion.pairing.Arc;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Riding;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Turns;
import deferent.motion.shared.Side;

/**
 * The trade's motions with tethers of 60 cm and the usual sizes, put together in the wall plane.
 */
final class Hands {
    static final double L = 0.60;
    static final Motion STATIC_SPIN = Motion.staticSpin(1, 0);
    static final Motion EXTENSION = Motion.flower(L, 1, 0);
    static final Motion ISOLATION = Motion.flower(L / 2, 1, Math.PI);
    static final Motion CAT_EYE = Motion.flower(L / 2, -1, 0);
    static final Motion LINEAR_EXTENSION = Motion.flower(L, -1, 0);
    static final Motion TRIQUETRA = Motion.flower(L, -2, 0);
    static final Motion ONE_PETAL_INSPIN = Motion.flower(L, 2, 0);
    static final Motion PENDULUM = Motion.pendulum(Math.PI / 2);
    static final Motion CAP =
            new Motion(new Arc(L, -Math.PI / 2, Math.PI / 2), new Turns(2, Math.PI));
    static final Motion RIDING_CAP = new Motion(new Riding(), new Turns(2, Math.PI));
    static final Motion RIDING_TRIQUETRA = new Motion(new Riding(), new Turns(-2, 0));
    static final Motion RIDING_INSPIN = new Motion(new Riding(), new Turns(2, 0));

    private Hands() {}

    static Pairing pair(Motion left, Motion right) {
        return Pairing.of(part(Side.LEFT, left), part(Side.RIGHT, right));
    }

    static Part part(Side side, Motion motion) {
        return new Part(motion, Tether.of(L), Place.usual(side, Plane.WALL), 1);
    }
}

package deferent.motion.trade;

import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Side;
import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The slowest tempo at which the drawn motion keeps both cords taut. A cord from head to hand along
 * the unit vector u pulls m(a − g)·u; the ideal head's acceleration a grows with the tempo squared,
 * gravity g does not. At even moments of the cycle, so within a part in a thousand.
 */
final class Taut {
    private static final int MOMENTS = 360;

    private Taut() {}

    /** Cycles a minute; empty where no tempo keeps both taut. */
    static OptionalDouble slowest(Pairing pairing) {
        Trace trace = Trace.of(pairing);
        double worst = 0;
        for (Side side : Side.values()) {
            for (int i = 0; i < MOMENTS; i++) {
                double t = trace.period() * i / MOMENTS;
                State head = trace.head(side).at(t);
                Vector3D cord = trace.hand(side).at(t).position().subtract(head.position());
                double slack = -Gravity.STANDARD * cord.getY() / cord.getNorm();
                double pulled = head.acceleration().dotProduct(cord) / cord.getNorm();
                if (slack > 0) {
                    if (pulled <= 0) {
                        return OptionalDouble.empty();
                    }
                    worst = Math.max(worst, slack / pulled);
                }
            }
        }
        return OptionalDouble.of(pairing.tempo() * Math.sqrt(worst));
    }
}

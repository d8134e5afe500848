package deferent.search.transition;

import deferent.motion.shared.Side;
import deferent.reading.body.Performer;
import deferent.reading.body.Reach;
import deferent.reading.body.TrunkTurn;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * How far one hand may be from its shoulder, the trunk turned toward it: as far as the arm, or as
 * far as the patterns themselves ask, whichever is more. Quick, for searches; {@code
 * deferent.reading.body.Reach} has the last word on what is found.
 */
final class Reachable {
    private final double shoulderY;
    private final double shoulderZ;
    private final double half;
    private final double sign;
    private final double most;

    private Reachable(Performer performer, Side side, double most) {
        Vector3D shoulder = performer.shoulder(side);
        shoulderY = shoulder.getY();
        shoulderZ = shoulder.getZ();
        half = Math.abs(shoulder.getX());
        sign = side == Side.LEFT ? 1 : -1;
        this.most = most;
    }

    /** As far as an arm, or as either pattern, and what a grip gives. */
    static Reachable of(Performer performer, SpunSide from, SpunSide to) {
        Reachable bare = new Reachable(performer, from.side(), 0);
        double most = performer.arm();
        for (SpunSide table : new SpunSide[] {from, to}) {
            for (int i = 0; i < SpunSide.COUNT; i++) {
                int at = SpunSide.COLUMNS * i + SpunSide.HAND;
                double[] r = table.rows();
                most = Math.max(most, Math.sqrt(bare.square(r[at], r[at + 1], r[at + 2])));
            }
        }
        return new Reachable(performer, from.side(), most + Reach.GIVES);
    }

    boolean beyond(double x, double y, double z) {
        return square(x, y, z) > most * most;
    }

    /** Squared distance from the shoulder, the trunk turned toward the hand as far as it turns. */
    private double square(double x, double y, double z) {
        double ry = y - shoulderY;
        double rz = z - shoulderZ;
        double out = Math.hypot(x, rz);
        double facing = Math.atan2(-rz * sign, x * sign);
        double off = Math.max(0, Math.abs(facing) - TrunkTurn.MOST);
        return out * out + ry * ry + half * half - 2 * half * out * Math.cos(off);
    }
}

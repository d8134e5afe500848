package deferent.film.hand;

import deferent.film.cycle.Wave;
import deferent.motion.pairing.Gravity;
import deferent.motion.trace.State;
import deferent.reading.tether.Cord;
import deferent.reading.tether.KeepTheFigure;
import deferent.reading.tether.Kit;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Where the hand must have been for a head to fly as it did: a taut cord pulls along the head's
 * acceleration less gravity, and the hand is its length away on that line (the flatness of a
 * cable-borne load: Sreenath, Lee and Kumar, CDC 2013). Of a mean cycle, whose acceleration is
 * known with an error; that error, turned by the pull and drawn out by the cord, is the hand's.
 */
public final class HandFinder {
    /** Pull, in weights of the head, below which no hand is claimed: the cord may be slack. */
    public static final double SLACK = 0.25;

    // How far the pull's direction may be unsure, radians, before no hand is claimed.
    private static final double UNSURE = 0.4;

    private HandFinder() {}

    /** The hand over one mean cycle, metres and upright as sure as they usually are. */
    public static List<HandSight> of(Wave wave, double tether, Kit kit, int count) {
        return of(wave, tether, kit, count, Doubt.USUAL);
    }

    /**
     * The hand over one mean cycle.
     *
     * @param wave a head's mean cycle, metres in the wall plane
     * @param tether metres
     * @param count even moments
     * @return those moments at which the cord pulls
     */
    public static List<HandSight> of(Wave wave, double tether, Kit kit, int count, Doubt doubt) {
        Cord cord = new Cord(tether, kit, Gravity.STANDARD);
        List<HandSight> sights = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            double time = wave.period() * i / count;
            double[][] at = wave.at(time);
            State head = new State(flat(at[0]), flat(at[1]), flat(at[2]), flat(at[3]));
            double pull = head.acceleration().subtract(cord.fall()).getNorm();
            double weights = pull / cord.fall().getNorm();
            if (weights < SLACK || wave.error(time, 2) > UNSURE * pull) {
                continue;
            }
            Vector3D hand = KeepTheFigure.place(head, cord);
            double error = error(wave, time, head, hand, cord, pull, doubt);
            sights.add(new HandSight(time, hand.getX(), hand.getY(), error, weights));
        }
        return List.copyOf(sights);
    }

    // Along the cord the head's error; across it the head's and the pull's turn together, and what
    // a wrong scale or a wrong upright turns; everywhere what these displace.
    private static double error(
            Wave wave,
            double time,
            State head,
            Vector3D hand,
            Cord cord,
            double pull,
            Doubt doubt) {
        Vector3D along = hand.subtract(head.position()).normalize();
        double down = cord.fall().dotProduct(along);
        double aside = Math.sqrt(Math.max(0, cord.fall().getNormSq() - down * down));
        double drawn = cord.length() / pull;
        double across = wave.error(time, 1, drawn);
        double scaled = doubt.scale() * drawn * aside;
        double leant = doubt.upright() * drawn * down;
        double away = hand.distance(new Vector3D(wave.x()[0], wave.y()[0], 0));
        double displaced = Math.hypot(doubt.scale(), doubt.upright()) * away;
        double both = Math.hypot(across, wave.error(time, 0));
        double turned = Math.hypot(Math.hypot(both, displaced), Math.hypot(scaled, leant));
        return Math.hypot(turned / Math.sqrt(2), doubt.place());
    }

    private static Vector3D flat(double[] xy) {
        return new Vector3D(xy[0], xy[1], 0);
    }
}

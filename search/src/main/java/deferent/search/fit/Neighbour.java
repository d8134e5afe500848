package deferent.search.fit;

import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Size;

/**
 * A motion that a motion falls into as one of its sizes changes.
 *
 * @param into what it becomes
 * @param size the size that changes
 * @param now its value
 * @param at its value there; 0 for a hand circle that has shrunk to a point
 * @param strays how far the hand or head now is from where it would be there, metres
 * @param already whether that is within a hand's breadth, so that an onlooker sees it already
 */
public record Neighbour(
        Into into, Size size, double now, double at, double strays, boolean already) {
    public Neighbour {
        Refusal.numbers("what a motion lies near", now, at, strays);
    }

    /** What a motion can fall into. */
    public enum Into {
        /** A cat-eye's ellipse has collapsed to a line. */
        LINEAR_EXTENSION,
        /** An isolation turns about its own head. */
        STILL_HEAD,
        /** The hand stands still. */
        STATIC_SPIN,
        /** The petals' loops have shrunk to points: cusps. */
        POINTED_PETALS
    }

    /** How much the size has still to change, with its sign. */
    public double away() {
        return at - now;
    }
}

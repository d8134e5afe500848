package deferent.motion.phrase;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.Tether;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** Places that have words of their own. */
final class KnownPlaces {
    private KnownPlaces() {}

    /**
     * Before that shoulder's joint, metres, for the usual stature of 1.70 m: joint 0.129 of stature
     * out, 0.049 above the breastbone and 0.06 behind it, and a fist no nearer to it than 0.20 m
     * (shares as in the performer's reading, which this room does not know).
     */
    static Vector3D atShoulder(Side side) {
        return new Vector3D(side == Side.LEFT ? 0.22 : -0.22, 0.08, 0.10);
    }

    /** Half a tether higher on the left, half a tether lower on the right. */
    static Place stacked(Place place, Side side, Tether tether) {
        return place.withCentre(stacked(place.centre(), side, tether));
    }

    private static Vector3D stacked(Vector3D centre, Side side, Tether tether) {
        double half = tether.length() / 2;
        return centre.add(new Vector3D(0, side == Side.LEFT ? half : -half, 0));
    }

    /** Whether both hands are where "stacked" alone puts them. */
    static boolean stacked(Pairing pairing) {
        for (Side side : Side.values()) {
            Part part = pairing.part(side);
            Vector3D usual = Place.usual(side, part.place().plane()).centre();
            if (!part.place().centre().equals(stacked(usual, side, part.tether()))) {
                return false;
            }
        }
        return true;
    }
}

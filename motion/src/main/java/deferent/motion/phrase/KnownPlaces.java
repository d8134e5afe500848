package deferent.motion.phrase;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Tether;
import deferent.motion.shared.Side;
import deferent.motion.trade.Word;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Places that have words of their own, and the plane that goes with each where none is said. All
 * are for a stature of 1.70 m, and how far off is our choice where no source stands with it.
 */
enum KnownPlaces {
    /**
     * Before that shoulder's joint, metres: joint 0.129 of stature out, 0.049 above the breastbone
     * and 0.06 behind it, and a fist no nearer to it than 0.20 m (shares as in the performer's
     * reading, which this room does not know).
     */
    AT_SHOULDER(Word.AT_SHOULDER, Plane.Kind.WALL) {
        @Override
        Vector3D centre(Side side, double tether) {
            return new Vector3D(side == Side.LEFT ? 0.22 : -0.22, 0.08, 0.10);
        }
    },
    /** Beside the body, an arm's breadth off it; the left hand's plane further left. */
    LEFT_SIDE(Word.LEFT_SIDE, Plane.Kind.WHEEL) {
        @Override
        Vector3D centre(Side side, double tether) {
            return new Vector3D(side == Side.LEFT ? BESIDE + BREADTH : BESIDE, -0.10, 0);
        }
    },
    /** The same on the other side; the right hand's plane further right. */
    RIGHT_SIDE(Word.RIGHT_SIDE, Plane.Kind.WHEEL) {
        @Override
        Vector3D centre(Side side, double tether) {
            return new Vector3D(side == Side.RIGHT ? -BESIDE - BREADTH : -BESIDE, -0.10, 0);
        }
    },
    /** Behind the head, the arm bent over its shoulder. */
    BEHIND(Word.BEHIND, Plane.Kind.WALL) {
        @Override
        Vector3D centre(Side side, double tether) {
            return new Vector3D(0, 0.44, side == Side.LEFT ? -0.36 : -0.36 - BREADTH);
        }
    },
    /** Over the crown, level. */
    OVERHEAD(Word.OVERHEAD, Plane.Kind.FLOOR) {
        @Override
        Vector3D centre(Side side, double tether) {
            return new Vector3D(0, side == Side.LEFT ? 0.58 + BREADTH : 0.58, -0.10);
        }
    },
    /** Straight ahead between the arms, so far off that the head passes the breastbone by 15 cm. */
    BETWEEN_ARMS(Word.BETWEEN_ARMS, Plane.Kind.WHEEL) {
        @Override
        Vector3D centre(Side side, double tether) {
            double ahead = Math.rint((tether + 0.15) * 1e6) / 1e6;
            return new Vector3D(side == Side.LEFT ? BREADTH / 2 : -BREADTH / 2, 0, ahead);
        }
    };

    private static final double BREADTH = Place.HAND_BREADTH;
    private static final double BESIDE = 0.36;

    private final Word word;
    private final Plane.Kind plane;

    KnownPlaces(Word word, Plane.Kind plane) {
        this.word = word;
        this.plane = plane;
    }

    /** Where that hand's centre lies, metres in the frame. */
    abstract Vector3D centre(Side side, double tether);

    Word word() {
        return word;
    }

    Plane.Kind plane() {
        return plane;
    }

    /** The place whose word is said. */
    static Optional<KnownPlaces> said(Predicate<Word> said) {
        return List.of(values()).stream().filter(known -> said.test(known.word)).findFirst();
    }

    /** The place whose word says where a hand's centre lies. */
    static Optional<KnownPlaces> of(Side side, Part part) {
        return List.of(values()).stream()
                .filter(
                        known ->
                                known.centre(side, part.tether().length())
                                        .equals(part.place().centre()))
                .findFirst();
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
            Vector3D usual = Place.usual(side, part.place().plane(), part.motion()).centre();
            if (!part.place().centre().equals(stacked(usual, side, part.tether()))) {
                return false;
            }
        }
        return true;
    }
}

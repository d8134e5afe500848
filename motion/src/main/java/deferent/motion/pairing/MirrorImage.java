package deferent.motion.pairing;

import deferent.motion.shared.Side;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A pairing as a mirror shows it: what the right hand did the left hand does, on the other side of
 * the body. For those who spin the other hand first.
 *
 * <p>Every point (x, y, z) of a hand goes to (−x, y, z) of the other. The left hand's cycle always
 * starts with the common cycle, so where the timing is not together the image starts at another
 * moment of the same movement. The image of an image is the pairing, but for such a shift in time.
 *
 * <p>In the wall and floor planes, leaned or not, the mirror turns u about and leaves v, so it
 * mirrors the motion across v and what the plane's own turn does to it with it; in the wheel plane
 * it leaves both, and only a lean or a turn of the plane goes the other way.
 */
public final class MirrorImage {
    private MirrorImage() {}

    /**
     * The image, at the same pace; refused where that pace, counted by what is now the left hand,
     * is beyond what a pairing's tempo may be.
     */
    public static Pairing of(Pairing pairing) {
        Part left = image(pairing.right());
        Part right = image(pairing.left());
        boolean leftMirrored = pairing.mirrored(Side.RIGHT) ^ flips(pairing.right());
        boolean rightMirrored = pairing.mirrored(Side.LEFT) ^ flips(pairing.left());
        Pairing image =
                new Pairing(
                        left,
                        right,
                        timing(pairing),
                        leftMirrored == rightMirrored ? Direction.SAME : Direction.OPPOSITE,
                        leftMirrored ? Sense.COUNTER_CLOCKWISE : Sense.CLOCKWISE,
                        OptionalDouble.empty(),
                        // Of the old cycle, where the old right hand's own begins.
                        pairing.facing()
                                .mirrored()
                                .startingAt(-pairing.timing().ahead() / pairing.right().cycles()));
        return image.setsOwnTempo() ? image : image.withTempo(tempo(pairing, image));
    }

    // A minute's count is of whichever hand moves first, which may be the other now; the period
    // stays.
    private static OptionalDouble tempo(Pairing pairing, Pairing image) {
        double counted = image.period() * image.tempo() / 60;
        double tempo = 60 * counted / pairing.period();
        return Math.abs(tempo / pairing.tempo() - 1) < 1e-12
                ? pairing.tempoSaid()
                : OptionalDouble.of(tempo);
    }

    // Where the old right hand is at the start of its own cycle, so far on is the old left one.
    private static Timing timing(Pairing pairing) {
        return Timing.of(
                -pairing.timing().ahead() * pairing.left().cycles() / pairing.right().cycles());
    }

    private static boolean flips(Part part) {
        return part.place().plane().kind() != Plane.Kind.WHEEL;
    }

    private static Part image(Part part) {
        Place place = part.place();
        Plane plane = place.plane();
        PlaneTurn turn = place.turn();
        boolean flips = flips(part);
        Vector3D centre = place.centre();
        return part.with(
                new Place(
                        new Plane(
                                plane.kind(),
                                flips ? plane.tip() : 0.0 - plane.tip(),
                                0.0 - plane.swivel()),
                        new PlaneTurn(
                                flips ? turn.turns() : -turn.turns(), turn.axis(), turn.carries()),
                        new Vector3D(0.0 - centre.getX(), centre.getY(), centre.getZ())));
    }
}

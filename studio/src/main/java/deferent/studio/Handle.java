package deferent.studio;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Size;
import deferent.motion.shared.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import deferent.page.Scene;
import deferent.page.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Where something can be taken hold of.
 *
 * @param key what a grab calls it
 * @param name for people
 * @param at where it is at the moment asked about, metres
 * @param follows the moving point it sits on, if it does
 * @param normal across the plane it is dragged in, through {@code at}
 */
record Handle(String key, String name, Vector3D at, Optional<Track> follows, Vector3D normal) {
    /** How far beyond the figure the tilt's handle stands, metres. */
    private static final double BEYOND = 0.10;

    private static final int COUNT = Scene.USUAL_COUNT;

    /** Every handle of a pairing, left before right. */
    static List<Handle> of(Trace trace, double time) {
        Pairing pairing = trace.pairing();
        List<Handle> all = new ArrayList<>();
        for (Side side : Side.values()) {
            Part part = pairing.part(side);
            Vector3D normal = part.place().plane().normal();
            Vector3D centre = part.place().centre();
            String word = side.word();
            if (Size.of(side, Size.Kind.HAND_RADIUS).read(pairing).isPresent()) {
                all.add(
                        new Handle(
                                word + ".circle",
                                word + " hand circle",
                                onPath(trace, side),
                                Optional.empty(),
                                normal));
            }
            all.add(
                    new Handle(
                            word + ".centre", word + " centre", centre, Optional.empty(), normal));
            all.add(
                    new Handle(
                            word + ".poi",
                            word + " poi",
                            trace.head(side).at(time).position(),
                            Optional.of(Track.head(side)),
                            normal));
            OptionalDouble tilt = Size.of(side, Size.Kind.TILT).read(pairing);
            if (tilt.isPresent() && !part.motion().undriven()) {
                all.add(
                        new Handle(
                                word + ".tilt",
                                word + " tilt",
                                aside(trace, side, tilt.getAsDouble()),
                                Optional.empty(),
                                normal));
            }
        }
        return List.copyOf(all);
    }

    /** The point of the hand path furthest up and to the hand's own side. */
    private static Vector3D onPath(Trace trace, Side side) {
        Samples samples = trace.samples(COUNT);
        InPlane plane = InPlane.placed(trace.pairing(), side);
        Vector3D centre = trace.pairing().part(side).place().centre();
        double own = side == Side.LEFT ? 1 : -1;
        Vector3D best = centre;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < samples.count(); i++) {
            Vector3D p = Samples.point(samples.hand(side), i);
            Vector3D d = p.subtract(centre);
            double along = own * plane.along(d) + 0.9 * plane.up(d);
            if (along > most) {
                most = along;
                best = p;
            }
        }
        return best;
    }

    private static Vector3D aside(Trace trace, Side side, double tilt) {
        Samples samples = trace.samples(COUNT);
        InPlane plane = InPlane.placed(trace.pairing(), side);
        Vector3D centre = trace.pairing().part(side).place().centre();
        double out = 0;
        for (int i = 0; i < samples.count(); i++) {
            out =
                    Math.max(
                            out,
                            plane.length(Samples.point(samples.head(side), i).subtract(centre)));
        }
        double angle = Math.PI / 2 + tilt;
        double far = out + BEYOND;
        return centre.add(
                new Vector3D(far * Math.cos(angle), plane.u(), far * Math.sin(angle), plane.v()));
    }
}

package deferent.studio;

import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Trace;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Where each hand and each poi begins and which way it goes first, in words, as the performer sees
 * it: left and right are the performer's own, front is toward the audience.
 */
final class Begin {
    private static final double LITTLE = 0.38;

    // Slower than this on average a head stays where it is, m/s.
    private static final double STILL = 1e-9;

    private Begin() {}

    static List<String> of(Trace trace) {
        List<String> said = new ArrayList<>();
        for (Side side : Side.values()) {
            said.add(hand(trace, side));
            said.add(poi(trace, side));
        }
        return List.copyOf(said);
    }

    private static String hand(Trace trace, Side side) {
        Pairing pairing = trace.pairing();
        Course hand = trace.hand(side);
        Vector3D at = hand.at(trace.interval().start()).position();
        Vector3D centre = pairing.part(side).place().centre();
        String name = capital(side.word()) + " hand: ";
        if (pairing.part(side).motion().riding()) {
            return name
                    + "keep it at the "
                    + side.other().word()
                    + " head, and go where that goes.";
        }
        if (pairing.part(side).still()) {
            return name + "hold it still " + where(at) + ".";
        }
        Vector3D out = at.subtract(centre);
        String place =
                out.getNorm() < 0.01
                        ? "at the middle of its path"
                        : at(out)
                                + " of its path, "
                                + Math.round(100 * out.getNorm())
                                + " cm from the middle";
        return name + "begin " + place + "; go " + first(trace, hand) + " first.";
    }

    private static String poi(Trace trace, Side side) {
        Course hand = trace.hand(side);
        Course head = trace.head(side);
        double start = trace.interval().start();
        Vector3D tether = head.at(start).position().subtract(hand.at(start).position());
        return capital(side.word())
                + " poi: begin with the tether pointing "
                + way(tether)
                + (usualSpeed(trace, head) < STILL
                        ? "; the head stays where it is."
                        : "; the head goes " + first(trace, head) + " first.");
    }

    /** The way a point first goes; from rest, the way it has gone a little later. */
    private static String first(Trace trace, Course course) {
        double start = trace.interval().start();
        Vector3D now = course.at(start).velocity();
        if (now.getNorm() > 0.05 * usualSpeed(trace, course)) {
            return way(now);
        }
        Vector3D later = course.at(start + 0.04 * trace.period()).position();
        Vector3D gone = later.subtract(course.at(start).position());
        return "from rest " + way(gone);
    }

    private static double usualSpeed(Trace trace, Course course) {
        double sum = 0;
        for (int i = 0; i < 16; i++) {
            sum +=
                    course.at(trace.interval().start() + trace.period() * (i + 0.5) / 16)
                            .velocity()
                            .getNorm();
        }
        return sum / 16;
    }

    /** Place in the frame relative to the breastbone, for a still hand. */
    private static String where(Vector3D at) {
        List<String> parts = new ArrayList<>();
        if (Math.abs(at.getY()) < 0.05) {
            parts.add("at breastbone height");
        } else {
            parts.add(
                    Math.round(100 * Math.abs(at.getY()))
                            + " cm "
                            + (at.getY() > 0 ? "above" : "below")
                            + " the breastbone");
        }
        if (Math.abs(at.getX()) >= 0.05) {
            parts.add(
                    Math.round(100 * Math.abs(at.getX()))
                            + " cm to the "
                            + (at.getX() > 0 ? "left" : "right"));
        }
        long away = Math.round(100 * Math.abs(at.getZ()));
        if (away > 0) {
            parts.add(away + " cm " + (at.getZ() > 0 ? "in front of you" : "behind you"));
        }
        return String.join(", ", parts);
    }

    private static String at(Vector3D out) {
        String way = way(out);
        return switch (way) {
            case "up" -> "at the top";
            case "down" -> "at the bottom";
            case "forward" -> "at the front";
            default -> "at the " + way.replace("up and ", "upper ").replace("down and ", "lower ");
        };
    }

    /** "up", "down and left", "forward and right". */
    static String way(Vector3D v) {
        double length = v.getNorm();
        List<String> parts = new ArrayList<>();
        add(parts, v.getY() / length, "up", "down");
        add(parts, v.getZ() / length, "forward", "back");
        add(parts, v.getX() / length, "left", "right");
        return String.join(" and ", parts);
    }

    private static void add(List<String> parts, double share, String plus, String minus) {
        if (share > LITTLE) {
            parts.add(plus);
        } else if (share < -LITTLE) {
            parts.add(minus);
        }
    }

    private static String capital(String word) {
        return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
    }
}

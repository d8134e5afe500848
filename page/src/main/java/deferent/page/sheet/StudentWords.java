package deferent.page.sheet;

import deferent.motion.pairing.Part;
import deferent.motion.pairing.Weave;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.page.View;
import deferent.page.View.Stand;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Says a pattern to a student in six short sentences, without a number that is tuned. Left, right
 * and clockwise are those of the picture beside them, which the first sentence says; seen by the
 * audience the spinner's left hand is on the picture's right, and that too is said.
 */
final class StudentWords {
    private static final int STEPS = 96;

    /** How near to a whole number of turns a tether has to be seen to come, turns. */
    private static final double WHOLE = 0.2;

    /** The cosine within which a tether points straight out from the centre, or in to it. */
    private static final double STRAIGHT = 0.95;

    private final Lesson lesson;
    private final Trace trace;
    private final View view;
    private final String own;

    private StudentWords(Lesson lesson) {
        this.lesson = lesson;
        this.trace = lesson.scene().trace();
        this.view = lesson.outlook().view();
        this.own = view.stand() == Stand.AUDIENCE ? "the" : "your";
    }

    /** At most six. */
    static List<String> of(Lesson lesson) {
        StudentWords words = new StudentWords(lesson);
        return List.of(
                words.care(),
                words.standing(),
                words.hand(Side.LEFT),
                words.hand(Side.RIGHT),
                words.begins(),
                words.together());
    }

    private String standing() {
        boolean flat = view.turn() == 0 && view.lift() == 0;
        String from = flat ? "" : " " + lesson.outlook().place() + ",";
        return switch (view.stand()) {
            case AUDIENCE ->
                    "You see"
                            + from
                            + " a spinner who faces you"
                            + (Math.abs(view.see(Vector3D.PLUS_I).right()) < WHOLE
                                    ? "."
                                    : ", so the left hand is the one on your right side.");
            case MIRROR -> "You see yourself" + from + " as in a mirror: your left is on the left.";
            case PERFORMER ->
                    "You see it" + from + " as with your own eyes: your left is on the left.";
        };
    }

    private String hand(Side side) {
        Part part = trace.pairing().part(side);
        String hand = capital(own) + " " + side.word() + " hand ";
        if (part.motion().path().rides()) {
            return hand + "goes where the " + side.other().word() + " head goes, and " + poi(side);
        }
        Optional<Weave> weave = part.motion().weave();
        if (weave.isPresent()) {
            return hand
                    + switch (weave.get().between()) {
                        case LEFT_AND_RIGHT -> "goes from side to side across " + own + " body";
                        case BEFORE_AND_BEHIND -> "goes over " + own + " head, front to back";
                        case ABOVE_AND_BELOW -> "sinks low and comes up high";
                    }
                    + ", and "
                    + poi(side);
        }
        if (part.still()) {
            return hand + "stays still, and " + poi(side);
        }
        int round = round(side);
        return hand
                + part.motion().path().goes().replace("an ellipse", "an oval")
                + (round == 0 ? "" : round > 0 ? " counter-clockwise" : " clockwise")
                + ", and "
                + poi(side);
    }

    private String poi(Side side) {
        Part part = trace.pairing().part(side);
        int n = part.motion().spin().turns();
        if (part.motion().spin().swings()) {
            return "its poi swings out and back.";
        }
        if (n == 0) {
            return part.motion().spin().even().isPresent()
                    ? "its poi points the same way all the time."
                    : "its poi turns out and back.";
        }
        double seen = turns(side);
        boolean whole = Math.abs(Math.abs(seen) - Math.rint(Math.abs(seen))) < WHOLE;
        int times = (int) Math.rint(Math.abs(seen));
        if (!whole || times == 0) {
            return "its poi turns " + times(Math.abs(n)) + ".";
        }
        if (part.still()) {
            return "its poi goes round it " + clock(seen) + ".";
        }
        int round = round(side);
        if (round == 0) {
            return "its poi turns " + times(times) + " " + clock(seen) + ".";
        }
        double out = out(side);
        String always =
                out > STRAIGHT
                        ? ", so it points out all the time"
                        : out < -STRAIGHT ? ", so it points in all the time" : "";
        return "its poi turns "
                + times(times)
                + (round > 0 == seen > 0 ? " the same way" : " the other way")
                + always
                + ".";
    }

    private static String clock(double turns) {
        return turns > 0 ? "counter-clockwise" : "clockwise";
    }

    private String begins() {
        return "In pose 1 "
                + own
                + " left hand is "
                + start(Side.LEFT)
                + ", and "
                + own
                + " right hand is "
                + start(Side.RIGHT)
                + ".";
    }

    private String start(Side side) {
        return PictureWords.start(lesson.scene(), view, side, trace.interval().start());
    }

    private String together() {
        double ahead = trace.pairing().timing().ahead();
        int left = trace.pairing().left().cycles();
        int right = trace.pairing().right().cycles();
        if (left != right) {
            return "While the left hand goes round "
                    + times(left)
                    + ", the right hand goes round "
                    + times(right)
                    + ".";
        }
        String ways = ways();
        String timing =
                ahead == 0
                        ? "Both start at once"
                        : Math.abs(ahead - 0.5) < 1e-9
                                ? "One is half a round behind the other"
                                : Math.abs(ahead - 0.25) < 1e-9
                                        ? "The right is a quarter of a round ahead of the left"
                                        : "The right is ahead of the left by a part of a round";
        return timing + ways + ".";
    }

    private String ways() {
        double left = turns(Side.LEFT);
        double right = turns(Side.RIGHT);
        return Math.abs(left) < 0.5 || Math.abs(right) < 0.5
                ? ""
                : left > 0 == right > 0
                        ? ", and the two poi turn the same way"
                        : ", and the two poi turn opposite ways";
    }

    private String care() {
        return lesson.danger()
                .map(
                        what ->
                                "Take care: "
                                        + what
                                        + ", so use soft poi and learn it with your teacher by"
                                        + " you.")
                .orElse("Use soft poi, keep clear of people and lamps, and stop if it hurts.");
    }

    // --- what the picture shows

    /** Turns of the tether in one round of its hand, against the clock, as seen. */
    private double turns(Side side) {
        double sum = 0;
        double before = 0;
        for (int i = 0; i <= STEPS; i++) {
            double time = time(side, i);
            View.Seen tether =
                    view.see(
                            trace.head(side)
                                    .position(time)
                                    .subtract(trace.hand(side).position(time)));
            double angle = Math.atan2(tether.up(), tether.right());
            sum += i == 0 ? 0 : Math.IEEEremainder(angle - before, 2 * Math.PI);
            before = angle;
        }
        return sum / (2 * Math.PI);
    }

    private double time(Side side, int step) {
        double round = trace.period() / trace.pairing().part(side).cycles();
        return trace.interval().start() + round * step / STEPS;
    }

    /** Which way a hand that goes round is seen to go: 1 against the clock, −1 with it, else 0. */
    private int round(Side side) {
        if (trace.pairing().part(side).motion().path().sense() == 0) {
            return 0;
        }
        double area = 0;
        double extent = 0;
        View.Seen before = view.see(trace.hand(side).position(time(side, 0)));
        for (int i = 1; i <= STEPS; i++) {
            View.Seen here = view.see(trace.hand(side).position(time(side, i)));
            area += (before.right() * here.up() - here.right() * before.up()) / 2;
            extent += Math.pow(here.right() - before.right(), 2);
            extent += Math.pow(here.up() - before.up(), 2);
            before = here;
        }
        // A path seen from its edge encloses next to nothing of what it runs along.
        return Math.abs(area) < extent ? 0 : area > 0 ? 1 : -1;
    }

    /** How nearly the tether points out from the centre all the time, 1 to −1 for in. */
    private double out(Side side) {
        Vector3D centre = trace.pairing().part(side).place().centre();
        double least = 1;
        double most = -1;
        for (int i = 0; i < STEPS; i++) {
            Vector3D hand = trace.hand(side).position(time(side, i));
            Vector3D tether = trace.head(side).position(time(side, i)).subtract(hand);
            Vector3D from = hand.subtract(centre);
            if (from.getNorm() < 0.02) {
                return 0;
            }
            double cos = from.dotProduct(tether) / from.getNorm() / tether.getNorm();
            least = Math.min(least, cos);
            most = Math.max(most, cos);
        }
        return least > 0 ? least : most < 0 ? most : 0;
    }

    private static String times(int count) {
        return count == 1 ? "once" : count == 2 ? "twice" : count + " times";
    }

    private static String capital(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}

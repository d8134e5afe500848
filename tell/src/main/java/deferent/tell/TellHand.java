package deferent.tell;

import deferent.motion.pairing.Direction;
import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.pairing.Swing;
import deferent.motion.pairing.Weave;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.search.whole.Readings;
import deferent.tell.Told.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Says to somebody who has never seen it what each hand and its poi do, as the performer sees it:
 * where the hand goes, how the poi turns, and how both stand when the cycle begins.
 */
public final class TellHand {
    // Of its greatest extent, from which on an axis is worth a word: the sine of 22.5 degrees.
    private static final double SLANTED = 0.38;
    // A hand this near its centre is at no side of it, metres.
    private static final double HERE = 0.02;
    private static final List<String> PLACES =
            List.of("top", "bottom", "left", "right", "front", "back");
    private static final List<String> POINTING =
            List.of("up", "down", "left", "right", "forward", "back");

    private final Readings readings;
    private final Side side;
    private final Part part;
    private final HandPath path;
    private final SpinLaw spin;

    private TellHand(Readings readings, Side side) {
        this.readings = readings;
        this.side = side;
        this.part = readings.pairing().part(side);
        this.path = part.motion().path();
        this.spin = part.motion().spin();
    }

    /** The left hand, the right hand, then how the two go together. */
    public static List<Told> of(Readings readings) {
        return List.of(
                new TellHand(readings, Side.LEFT).told(),
                new TellHand(readings, Side.RIGHT).told(),
                together(readings.pairing()));
    }

    private Told told() {
        String name = readings.hand(side).motion();
        return new Told(
                "does." + side.word(),
                Tone.NOTE,
                Say.capital(name) + ". " + Say.capital(hand()) + "; " + poi() + ". " + begins(),
                "As the performer sees it; a turn in the floor plane as seen from above.");
    }

    private String hand() {
        if (path.rides()) {
            return "the hand rides: it goes where the " + side.other().word() + " head goes";
        }
        Optional<Weave> weave = part.motion().weave();
        if (weave.isPresent()) {
            return passing(weave.get()) + plane();
        }
        return "the hand "
                + path.goes()
                + (path.sense() == 0 ? "" : " " + way(path.sense()))
                + (path.still() ? "" : plane());
    }

    /** "the hand passes across the body and back: once round on its own side, twice across". */
    private static String passing(Weave weave) {
        String own = Say.times(weave.own());
        String across = Say.times(weave.across());
        return switch (weave.between()) {
            case LEFT_AND_RIGHT ->
                    "the hand passes across the body and back, its poi turning "
                            + own
                            + " on its own side and "
                            + across
                            + " across";
            case BEFORE_AND_BEHIND ->
                    "the hand passes over the head and back, its poi turning "
                            + own
                            + " before the body and "
                            + across
                            + " behind it";
            case ABOVE_AND_BELOW ->
                    "the hand sinks and rises, its poi turning "
                            + own
                            + " over the head and "
                            + across
                            + " low before the body";
        };
    }

    private String plane() {
        String name =
                switch (part.place().plane().kind()) {
                    case WALL -> "";
                    case WHEEL -> " in the wheel plane";
                    case FLOOR -> " in the floor plane";
                };
        boolean leans = part.place().plane().tip() != 0 || part.place().plane().swivel() != 0;
        return name
                + (leans ? ", leaned" : "")
                + (part.place().turn().turns() == 0 ? "" : ", in a plane that itself turns");
    }

    /** Which way a turn of that sign goes round in this part's plane. */
    private String way(int turns) {
        boolean positive = turns > 0 ^ readings.pairing().mirrored(side);
        Plane.Kind kind = part.place().plane().kind();
        if (kind == Plane.Kind.WHEEL) {
            return positive ? "up in front, back over the top" : "forward over the top";
        }
        return positive ? "clockwise" : "counter-clockwise";
    }

    private String poi() {
        Optional<Swing> swing = spin.swing();
        if (swing.isPresent()) {
            return "its poi swings "
                    + Say.degrees(swing.get().amplitude())
                    + " to either side and comes back the same way";
        }
        int n = spin.turns();
        boolean even = spin.even().isPresent();
        if (n == 0) {
            return even ? "its tether keeps pointing one way" : "its poi turns out and back";
        }
        String uneven = even ? "" : ", now faster, now slower";
        if (path.still() || part.motion().weave().isPresent()) {
            return "its poi goes round it "
                    + (Math.abs(n) == 1 ? "" : Say.times(Math.abs(n)) + " ")
                    + way(n)
                    + (path.still() ? plane() : "")
                    + uneven;
        }
        return "its poi turns "
                + Say.times(Math.abs(n))
                + path.circle()
                        .map(
                                circle ->
                                        n > 0 == circle.k() > 0
                                                ? " the same way (in-spin)"
                                                : " against it (antispin)")
                        .orElseGet(() -> " " + way(n))
                + uneven;
    }

    private static String cycles(int n) {
        return n == 1 ? "one cycle" : n + " cycles";
    }

    private String begins() {
        Trace trace = readings.trace();
        double start = trace.interval().start();
        Vector3D hand = trace.hand(side).position(start);
        Vector3D tether = trace.head(side).position(start).subtract(hand);
        Vector3D out = hand.subtract(part.place().centre());
        String pointing = "the tether pointing " + ways(tether, POINTING, " and ");
        return out.getNorm() < HERE
                ? "It begins with " + pointing + "."
                : "It begins with the hand at the "
                        + ways(out, PLACES, " ")
                        + ", "
                        + pointing
                        + ".";
    }

    /** "up", "down and left": the axes along which something mostly lies. */
    private static String ways(Vector3D v, List<String> words, String joint) {
        double[] along = {v.getY(), v.getX(), v.getZ()};
        double most = v.getNormInf();
        List<String> said = new ArrayList<>();
        for (int axis = 0; axis < along.length; axis++) {
            if (Math.abs(along[axis]) >= SLANTED * most) {
                said.add(words.get(2 * axis + (along[axis] > 0 ? 0 : 1)));
            }
        }
        return String.join(joint, said);
    }

    private static Told together(Pairing pairing) {
        double ahead = pairing.timing().ahead();
        String timing =
                ahead == 0
                        ? "together"
                        : Math.abs(ahead - 0.5) < 1e-9
                                ? "in split time"
                                : Math.abs(ahead - 0.25) < 1e-9
                                        ? "in quarter time"
                                        : "the right hand " + Say.share(ahead) + " ahead";
        int left = pairing.left().cycles();
        int right = pairing.right().cycles();
        String rounds =
                left == right
                        ? ""
                        : ", " + cycles(left) + " of the left hand to " + right + " of the right";
        return new Told(
                "does.together",
                Tone.NOTE,
                "The two go "
                        + timing
                        + ", in "
                        + (pairing.direction() == Direction.SAME
                                ? "the same direction"
                                : "opposite directions")
                        + rounds
                        + ". The tempo is "
                        + Say.tempo(pairing.tempo())
                        + ": one cycle takes "
                        + Say.seconds(pairing.period())
                        + ".",
                "The timing says how far the right hand's cycle is ahead of the left hand's. Their planes"
                        + " are "
                        + Say.length(apart(pairing))
                        + " apart where both are parallel; a hand's breadth is "
                        + Say.length(Place.HAND_BREADTH)
                        + ".");
    }

    private static double apart(Pairing pairing) {
        Vector3D between =
                pairing.left().place().centre().subtract(pairing.right().place().centre());
        return Math.abs(between.dotProduct(pairing.left().place().plane().normal()));
    }
}

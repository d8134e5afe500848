package deferent.tell;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Place;
import deferent.motion.shared.Side;
import deferent.reading.body.InTheWay;
import deferent.search.clear.Clearing;
import deferent.search.clear.PlaneChange;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** Says what is in the way in a pattern, and which change of planes clears it. */
public final class TellClear {
    // Less is no change that a spinner makes, metres and radians.
    private static final double NOTHING = 0.0005;
    private static final double UPRIGHT = Math.toRadians(0.05);

    // A hand does not keep to less, metres (our choice; common practice, no source).
    private static final double UNSURE = 0.02;
    private static final String WITHIN_WOBBLE =
            " Hands wander by more than that: it is a close pass either way, so leave more room.";

    private TellClear() {}

    /** One sentence. */
    public static Told of(Clearing clearing) {
        if (clearing.clear()) {
            return told(
                    clearing,
                    Told.Tone.GOOD,
                    "Nothing is in the way"
                            + (clearing.arms()
                                    ? "."
                                    : " as far as was looked: a hand does not get there, so arms"
                                            + " were left out."));
        }
        Pairing pairing = clearing.pairing();
        if (clearing.cleared().isPresent()) {
            return told(
                    clearing,
                    Told.Tone.NOTE,
                    Say.capital(all(pairing, clearing.inTheWay()))
                            + "; "
                            + change(clearing.cleared().get()));
        }
        return told(
                clearing,
                Told.Tone.WARN,
                (clearing.whole()
                                ? "No planes were found that clear it: "
                                : "Nothing was found yet that clears it: ")
                        + all(pairing, clearing.remains())
                        + ".");
    }

    private static Told told(Clearing clearing, Told.Tone tone, String text) {
        String arms =
                clearing.arms()
                        ? ""
                        : " Arms were left out, since a hand is out of reach and nobody knows how its arm"
                                + " would be held.";
        return new Told(
                "clear",
                tone,
                text,
                "Looked at: cords, heads, hands, body, and arms with elbows led out of the way where"
                        + " they can be. Each plane may be shifted by up to "
                        + Say.length(PlaneChange.FARTHEST)
                        + " and leaned by up to "
                        + Say.degrees(PlaneChange.STEEPEST)
                        + "; a change counts by how far it takes the head's path. The search starts from"
                        + " chosen places and some at random, so a smaller change may be missed, and one where few"
                        + " are clear."
                        + arms);
    }

    private static String all(Pairing pairing, List<InTheWay> all) {
        List<String> said =
                all.stream()
                        .map(one -> one(one) + " " + TellTransition.count(pairing, one.time()))
                        .toList();
        return Say.listed(said, "and");
    }

    private static String one(InTheWay one) {
        String side = one.side().map(Side::word).orElse("");
        String other = one.side().map(of -> of.other().word()).orElse("");
        String arm = (one.forearm() ? "forearm" : "upper arm");
        return switch (one.what()) {
            case CORDS -> "the cords go through one another";
            case HEADS -> "the heads hit each other";
            case HAND -> "the " + side + " head hits the " + other + " hand";
            case BODY -> "the " + side + " poi goes through your body";
            case ARM_OF_POI -> "the " + other + " poi goes through the " + side + " " + arm;
            case ARM_OF_ARM -> "the " + side + " " + arm + " goes through the " + other + " arm";
            case BODY_OF_ARM -> "the " + side + " " + arm + " goes through your body";
        };
    }

    private static String change(Clearing.Cleared cleared) {
        List<String> said = new ArrayList<>();
        for (Side side : Side.values()) {
            PlaneChange change = cleared.change(side);
            List<String> how = new ArrayList<>();
            shift(change.shift(), how);
            if (change.lean() > UPRIGHT) {
                how.add(
                        "leaned by "
                                + Math.max(1, Math.round(Math.toDegrees(change.lean())))
                                + "°");
            }
            if (!how.isEmpty()) {
                said.add("the " + side.word() + " hand's plane " + Say.listed(how, "and"));
            }
        }
        return "with "
                + String.join(", and ", said)
                + ", it is clear."
                + (cleared.cost() * Place.HAND_BREADTH < UNSURE ? WITHIN_WOBBLE : "");
    }

    private static void shift(Vector3D shift, List<String> how) {
        add(how, shift.getX(), " further left", " further right");
        add(how, shift.getY(), " higher", " lower");
        add(how, shift.getZ(), " nearer the audience", " nearer to you");
    }

    private static void add(List<String> how, double metres, String plus, String minus) {
        if (Math.abs(metres) >= NOTHING) {
            how.add(Say.length(Math.abs(metres)) + (metres > 0 ? plus : minus));
        }
    }
}

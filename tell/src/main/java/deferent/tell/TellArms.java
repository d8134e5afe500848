package deferent.tell;

import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Side;
import deferent.reading.body.ArmThrough;
import deferent.reading.body.Bend;
import deferent.reading.body.Reach;
import deferent.reading.body.TrunkTurn;
import deferent.search.fit.ArmsFit;
import deferent.search.whole.ReachHelps;
import deferent.tell.Told.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.stream.Collectors;

/** Says how large a version of a pairing the arms reach. */
public final class TellArms {
    private TellArms() {}

    /** One sentence on the fit of a pairing to a performer's arms. */
    public static Told of(Optional<ArmsFit> fit) {
        return fit.map(TellArms::found)
                .orElseGet(
                        () ->
                                new Told(
                                        "arms",
                                        Tone.WARN,
                                        "No tether tried brings it within reach: bring the centres nearer to"
                                                + " the shoulders.",
                                        HOW));
    }

    /** The same beside a fit whose answer is out of reach. */
    public static Told beside(ArmsFit fit) {
        Told told = found(fit);
        return new Told(
                told.key(), told.tone(), "The arms don't reach it so. " + told.text(), told.why());
    }

    private static final String HOW =
            "Hand paths and tethers are made smaller together, so the figures keep their shape. The"
                    + " trunk turns by 45° at most, and no faster than a body does; shoulders come"
                    + " forward or up and the trunk leans only where tethers would be under 30 cm otherwise.";

    private static Told found(ArmsFit fit) {
        String reached =
                "both arms reach it"
                        + (fit.reach().bend().isEmpty()
                                ? onlyTurned(fit.reach())
                                : turned(fit.reach()))
                        + ".";
        if (fit.scale() == 1) {
            return new Told("arms", Tone.GOOD, "As it stands " + reached, HOW);
        }
        return new Told(
                "arms",
                fit.longEnough() ? Tone.GOOD : Tone.WARN,
                "With "
                        + tethers(fit.pairing())
                        + " and hand paths to match "
                        + reached
                        + givenUp(fit),
                "Everything is " + Say.percent(fit.scale()) + " of its size. " + HOW);
    }

    private static String givenUp(ArmsFit fit) {
        if (fit.closedTether().isPresent()) {
            return " It does not link so: to link, it would take tethers as short as "
                    + Say.length(fit.closedTether().getAsDouble())
                    + ".";
        }
        return fit.longEnough()
                ? ""
                : " That is shorter than most tethers are: the arms cross too far in it.";
    }

    private static String onlyTurned(Reach reach) {
        return reach.trunk().turned()
                ? " with nothing but the trunk turned, by up to "
                        + degrees(reach.trunk().greatest())
                : "";
    }

    /** ", with the trunk turned by up to 43° and leaning forward by 6°", where it has to. */
    static String turned(Reach reach) {
        TrunkTurn trunk = reach.turned();
        List<String> how = new ArrayList<>();
        if (trunk.turned()) {
            how.add(
                    "the trunk turned by up to "
                            + Math.round(Math.toDegrees(trunk.greatest()))
                            + "°");
        }
        reach.bend().ifPresent(bend -> bent(bend, trunk.turned(), how));
        return how.isEmpty() ? "" : ", with " + Say.listed(how, "and");
    }

    private static void bent(Bend bend, boolean turned, List<String> how) {
        String the = turned ? "" : "the trunk ";
        if (bend.lean() > 0) {
            how.add(the + "leaning forward by " + degrees(bend.lean()));
            the = "";
        }
        if (bend.aside() != 0) {
            String way = bend.aside() > 0 ? "left" : "right";
            how.add(the + "leaning to the " + way + " by " + degrees(Math.abs(bend.aside())));
        }
        if (bend.forward() > 0) {
            how.add("the shoulders " + Say.length(bend.forward()) + " forward");
        }
        if (bend.raised() > 0) {
            how.add((bend.forward() > 0 ? "" : "the shoulders ") + raised(bend));
        }
    }

    private static String raised(Bend bend) {
        return Say.length(bend.raised()) + " up";
    }

    private static String degrees(double radians) {
        return Math.round(Math.toDegrees(radians)) + "°";
    }

    /**
     * " It is within reach with tethers of 44 cm and hand paths to match. Moved 10 cm nearer to you
     * it is still 3 cm short."
     *
     * @param within "reach", or "easy reach" where it is reached at full stretch
     */
    static String helps(ReachHelps helps, String within) {
        List<String> with = new ArrayList<>();
        List<String> falling = new ArrayList<>();
        helps.smaller()
                .ifPresent(
                        fit ->
                                with.add(
                                        "with "
                                                + tethers(fit.pairing())
                                                + " and hand paths to match"));
        helps.still()
                .ifPresent(
                        still ->
                                help(
                                        "with the still "
                                                + still.side().word()
                                                + " hand held before its own shoulder",
                                        still.left(),
                                        with,
                                        falling));
        helps.move()
                .ifPresent(
                        move ->
                                help(
                                        "moved " + Say.length(move.by()) + " " + way(move.way()),
                                        move.left(),
                                        with,
                                        falling));
        return (with.isEmpty()
                        ? ""
                        : " It is within " + within + " " + String.join(", or ", with) + ".")
                + falling.stream().map(f -> " " + Say.capital(f)).collect(Collectors.joining());
    }

    private static void help(String how, double left, List<String> with, List<String> falling) {
        if (left < Reach.GIVES) {
            with.add(how);
        } else {
            falling.add(how + " it is still " + Say.length(left) + " short.");
        }
    }

    /**
     * "In planes as flat as these the left forearm is in the way of the right cord in the first
     * quarter of the cycle: one plane has to lean a little there."
     *
     * @param through not empty
     * @param when says a time
     */
    static Told through(List<ArmThrough> through, DoubleFunction<String> when) {
        return new Told(
                "room.arms",
                Tone.NOTE,
                "In planes as flat as these "
                        + through.stream()
                                .map(one -> through(one) + " " + when.apply(one.time()))
                                .collect(Collectors.joining(", and "))
                        + ": one plane has to lean a little there.",
                "Arms are two segments from shoulder over elbow to grip, the trunk turned as for reach,"
                        + " planes and timing as they stand, and no way of holding the elbows avoids it. Whatever is within a hand's breadth of a"
                        + " grip is not counted, and no wrist bends out of the way.");
    }

    private static String through(ArmThrough one) {
        String other = "the " + one.side().other().word();
        return "the "
                + one.side().word()
                + (one.forearm() ? " forearm" : " upper arm")
                + switch (one.what()) {
                    case CORD -> " is in the way of " + other + " cord";
                    case ARM -> " is in the way of " + other + " arm";
                    case BODY -> " would pass through your body";
                };
    }

    private static String way(ReachHelps.Way way) {
        return switch (way) {
            case NEARER -> "nearer to you";
            case LOWER -> "lower";
            case HIGHER -> "higher";
            case LEFT -> "to your left";
            case RIGHT -> "to your right";
        };
    }

    private static String tethers(Pairing pairing) {
        String left = Say.length(pairing.part(Side.LEFT).tether().length());
        String right = Say.length(pairing.part(Side.RIGHT).tether().length());
        return left.equals(right)
                ? "tethers of " + left
                : "a left tether of " + left + " and a right one of " + right;
    }
}

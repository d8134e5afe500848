package deferent.tell;

import deferent.motion.pairing.Place;
import deferent.motion.shared.Side;
import deferent.reading.body.HandReach;
import deferent.reading.body.Nearness;
import deferent.reading.body.Passing;
import deferent.reading.body.Performer;
import deferent.reading.body.Reach;
import deferent.reading.body.Room;
import deferent.reading.body.SideRoom;
import deferent.reading.body.TrunkTurn;
import deferent.search.whole.Readings;
import deferent.tell.Told.Tone;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Says reach and room. */
final class TellBody {
    private static final double CLOSE = 0.10;

    // Metres too few to say.
    private static final double NOTHING = 0.0005;

    private final Readings readings;

    TellBody(Readings readings) {
        this.readings = readings;
    }

    List<Told> told() {
        List<Told> all = new ArrayList<>();
        readings.reach().reading().ifPresent(reach -> reach(reach, all));
        all.addAll(TellNot.of("reach.arms", readings.reach()));
        readings.room().reading().ifPresent(room -> room(room, all));
        all.addAll(TellNot.of("room.distances", readings.room()));
        return all;
    }

    private void reach(Reach reach, List<Told> all) {
        boolean turns = reach.turned().turned() || !reach.trunk().reached();
        for (Side side : Side.values()) {
            HandReach hand = reach.hand(side);
            if (hand.near() || (!turns && !readings.pairing().part(side).still())) {
                all.add(reach(hand));
            }
        }
        if (turns) {
            all.add(trunk(reach));
        }
        readings.advice().flatMap(advice -> advice.arms().reading()).stream()
                .filter(through -> !through.isEmpty())
                .map(through -> TellArms.through(through, this::at))
                .forEach(all::add);
        if (reach.handsMeet()) {
            Nearness hands = reach.hands();
            all.add(
                    new Told(
                            "reach.hands",
                            Tone.WARN,
                            (hands.distance() < NOTHING
                                            ? "The two hands meet"
                                            : "The two hands come within "
                                                    + Say.length(hands.distance())
                                                    + " of each other")
                                    + ": choose which passes in front.",
                            "Least distance between the grips, "
                                    + at(hands.time())
                                    + "; a hand's breadth is "
                                    + Say.length(Place.HAND_BREADTH)
                                    + "."));
        }
    }

    private void room(Room room, List<Told> all) {
        all.add(heads(room.headToHead()));
        for (Side side : Side.values()) {
            body(room.side(side), all);
        }
        passings(room.passings(), all);
    }

    private String at(double time) {
        return Say.into(time / readings.trace().period());
    }

    /** "the right hand is up to 15 cm beyond the arm's reach, even with the trunk turned". */
    static Optional<String> outOfReach(Reach reach) {
        Optional<String> near =
                Stream.of(Side.values())
                        .map(reach::hand)
                        .filter(HandReach::near)
                        .max(Comparator.comparingDouble(HandReach::tooNear))
                        .map(hand -> hand.side().hand() + near(hand));
        TrunkTurn trunk = reach.turned();
        return trunk.reached() || reach.atFullStretch()
                ? near
                : Optional.of(
                        trunk.tooFarSide().hand()
                                + " is "
                                + upTo(trunk.tooFar())
                                + " beyond the arm's reach, even with the trunk turned"
                                + (reach.bend().isPresent() ? " and leaning" : ""));
    }

    private static String near(HandReach reach) {
        return " comes " + upTo(reach.tooNear()) + " too near its own shoulder";
    }

    // No arm is told millimetres.
    private static String upTo(double metres) {
        return metres < 0.0095 ? "less than 1 cm" : "up to " + Say.length(metres);
    }

    private Told reach(HandReach reach) {
        String hand = Say.capital(reach.side().hand());
        String key = "reach." + reach.side().word();
        return reach.near()
                ? new Told(
                        key,
                        Tone.WARN,
                        hand + near(reach) + ". Move the centre away from that shoulder.",
                        arm(reach) + " It is nearest " + at(reach.nearestTime()) + ".")
                : new Told(key, Tone.GOOD, hand + " reaches its whole path.", arm(reach));
    }

    private Told trunk(Reach reach) {
        TrunkTurn trunk = reach.turned();
        boolean stretched = reach.atFullStretch();
        String how =
                " The trunk turns by "
                        + Say.degrees(TrunkTurn.MOST)
                        + " to each side at most, one turn for both hands, and no faster than a body does."
                        + " Where that falls short, the shoulders come forward, then up, and then the trunk"
                        + " leans forward or aside, all held over the whole cycle.";
        if (!trunk.reached() && !stretched) {
            return new Told(
                    "reach.trunk",
                    Tone.WARN,
                    Say.capital(outOfReach(reach).orElseThrow()) + "." + helps("reach"),
                    arm(reach.hand(trunk.tooFarSide()))
                            + how
                            + " It is worst "
                            + at(trunk.tooFarTime())
                            + ".");
        }
        return new Told(
                "reach.trunk",
                Tone.NOTE,
                (stretched
                                ? "Both hands just reach their whole paths, at full stretch"
                                : "Both hands reach their whole paths")
                        + TellArms.turned(reach)
                        + (trunk.turned()
                                ? ", furthest to the "
                                        + trunk.toThe().word()
                                        + " "
                                        + at(trunk.greatestTime())
                                : "")
                        + "."
                        + (stretched ? helps("easy reach") : ""),
                arm(reach.hand(Side.LEFT)) + how);
    }

    /** What has been seen to help, where that was looked for. */
    private String helps(String within) {
        return readings.advice().flatMap(advice -> advice.helps().reading()).stream()
                .map(helps -> TellArms.helps(helps, within))
                .collect(Collectors.joining());
    }

    private String arm(HandReach reach) {
        Performer performer = readings.performer();
        return "An arm of "
                + Say.length(reach.arm())
                + " from shoulder to grip, from "
                + (performer.assumed() ? "an assumed " : "")
                + "stature of "
                + Say.length(performer.stature())
                + (reach.largestRadius().isPresent()
                        ? "; with the trunk straight the largest hand circle about this centre is "
                                + Say.length(reach.largestRadius().getAsDouble())
                        : "; with the trunk straight no hand circle about this centre is within reach")
                + ". Joint limits are not counted.";
    }

    private Told heads(Nearness near) {
        boolean close = near.distance() < CLOSE;
        return new Told(
                "room.heads",
                close ? Tone.WARN : Tone.NOTE,
                close
                        ? near.distance() < NOTHING
                                ? "The heads run into each other."
                                : "The heads come within "
                                        + Say.length(near.distance())
                                        + " of each other: they may knock."
                        : "The heads stay at least " + Say.length(near.distance()) + " apart.",
                "Least distance between the heads' centres in space, " + at(near.time()) + ".");
    }

    private void body(SideRoom near, List<Told> all) {
        if (near.tetherToBody().distance() < CLOSE) {
            String what = near.headToBody().distance() < CLOSE ? "poi" : "tether";
            all.add(
                    new Told(
                            "room.body." + near.side().word(),
                            Tone.WARN,
                            near.tetherToBody().distance() <= 0
                                    ? "The "
                                            + near.side().word()
                                            + " "
                                            + what
                                            + " passes through your "
                                            + part(near)
                                            + ": turn out of its way, or move the centre forward."
                                    : "The "
                                            + near.side().word()
                                            + " "
                                            + what
                                            + " comes within "
                                            + Say.length(near.tetherToBody().distance())
                                            + " of your "
                                            + part(near)
                                            + ".",
                            "Least distance to a plain outline of the body, scaled with stature, "
                                    + at(near.tetherToBody().time())
                                    + "."));
        }
    }

    private static String part(SideRoom near) {
        return near.nearestPart().name().toLowerCase(Locale.ROOT);
    }

    private void passings(List<Passing> passings, List<Told> all) {
        if (passings.isEmpty()) {
            return;
        }
        boolean sameFront =
                passings.stream().map(Passing::front).distinct().count() == 1
                        && passings.get(0).front().isPresent();
        double least = passings.stream().mapToDouble(Passing::depthBetween).min().orElseThrow();
        all.add(
                new Told(
                        "room.tethers",
                        least < Place.HAND_BREADTH / 2 ? Tone.WARN : Tone.NOTE,
                        "Seen by the audience, the tethers cross "
                                + Say.times(passings.size())
                                + " a cycle, "
                                + (least < NOTHING
                                        ? "in one plane: they will tangle."
                                        : sameFront
                                                ? "the "
                                                        + passings.get(0).front().get().word()
                                                        + " one "
                                                        + Say.length(least)
                                                        + " or more in front."
                                                : "now one in front, now the other."),
                        least < NOTHING
                                ? "Where they cross there is no depth between them."
                                : "Where they cross, the least depth between them is "
                                        + Say.length(least)
                                        + "."));
    }
}

package deferent.tell;

import deferent.motion.pairing.Place;
import deferent.motion.pairing.Side;
import deferent.motion.trace.Interval;
import deferent.reading.body.HandReach;
import deferent.reading.body.Nearness;
import deferent.reading.body.Passing;
import deferent.reading.body.Performer;
import deferent.reading.body.Reach;
import deferent.reading.body.Room;
import deferent.reading.body.SideRoom;
import deferent.search.whole.Readings;
import deferent.tell.Told.Tone;
import java.util.ArrayList;
import java.util.List;

/** Says reach and room. */
final class TellBody {
    private static final double CLOSE = 0.10;

    /**
     * What turning the trunk by 60° adds to the largest hand circle before the breastbone at a
     * stature of 1.70 m, metres: 0.28 m become 0.48 m. Worked out from the arm alone; a lean counts
     * no further.
     */
    private static final double TRUNK = 0.20;

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
        for (Side side : Side.values()) {
            if (!readings.pairing().part(side).still() || !reach.hand(side).everywhere()) {
                all.add(reach(reach.hand(side)));
            }
        }
        if (reach.handsMeet()) {
            Nearness hands = reach.hands();
            all.add(
                    new Told(
                            "reach.hands",
                            Tone.WARN,
                            "The two hands come within "
                                    + Say.length(hands.distance())
                                    + " of each other: choose which passes in front.",
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
        return Say.percent(time / readings.trace().period()) + " into the cycle";
    }

    /** " is up to 25 cm beyond the arm's reach": how far a hand that does not reach falls short. */
    static String shortOf(HandReach reach) {
        return reach.tooFar() >= reach.tooNear()
                ? " is up to " + Say.length(reach.tooFar()) + " beyond the arm's reach"
                : " comes up to " + Say.length(reach.tooNear()) + " too near its own shoulder";
    }

    private Told reach(HandReach reach) {
        String hand = reach.side().hand();
        Performer performer = readings.performer();
        String arm =
                "An arm of "
                        + Say.length(reach.arm())
                        + " from shoulder to grip, from "
                        + (performer.assumed() ? "an assumed " : "")
                        + "stature of "
                        + Say.length(performer.stature())
                        + (reach.largestRadius().isPresent()
                                ? "; the largest hand circle about this centre is "
                                        + Say.length(reach.largestRadius().getAsDouble())
                                : "; no hand circle about this centre is within reach")
                        + ". Joint limits are not counted.";
        if (reach.everywhere()) {
            return new Told(
                    "reach." + reach.side().word(),
                    Tone.GOOD,
                    Say.capital(hand) + " reaches its whole path.",
                    arm);
        }
        double missing = reach.missing().stream().mapToDouble(Interval::length).sum();
        return new Told(
                "reach." + reach.side().word(),
                Tone.WARN,
                Say.capital(hand)
                        + shortOf(reach)
                        + ", for "
                        + Say.percent(missing / readings.trace().period())
                        + " of the cycle. "
                        + (reach.tooFar() > TRUNK
                                ? "A turn of the trunk alone does not reach so far: make the figure smaller, or bring"
                                        + " its centre nearer."
                                : "Turn or lean the trunk, or make the figure smaller."),
                arm + " It is worst " + at(reach.worstTime()) + ".");
    }

    private Told heads(Nearness near) {
        boolean close = near.distance() < CLOSE;
        return new Told(
                "room.heads",
                close ? Tone.WARN : Tone.NOTE,
                close
                        ? "The heads come within "
                                + Say.length(near.distance())
                                + " of each other: they may knock."
                        : "The heads stay " + Say.length(near.distance()) + " apart or more.",
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
                                            + " passes through the "
                                            + near.nearestPart()
                                                    .name()
                                                    .toLowerCase(java.util.Locale.ROOT)
                                            + ": turn out of its way, or move the centre forward."
                                    : "The "
                                            + near.side().word()
                                            + " "
                                            + what
                                            + " comes within "
                                            + Say.length(near.tetherToBody().distance())
                                            + " of the "
                                            + near.nearestPart()
                                                    .name()
                                                    .toLowerCase(java.util.Locale.ROOT)
                                            + ".",
                            "Least distance to a plain outline of the body, scaled with stature, "
                                    + at(near.tetherToBody().time())
                                    + "."));
        }
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
                        "The tethers cross in view "
                                + times(passings.size())
                                + " a cycle, "
                                + (least < 1e-6
                                        ? "in one plane: they will tangle."
                                        : sameFront
                                                ? "the "
                                                        + passings.get(0).front().get().word()
                                                        + " one in front by "
                                                        + Say.length(least)
                                                        + "."
                                                : "now one in front, now the other."),
                        "Seen by the audience; "
                                + Say.length(least)
                                + " is the least depth between them where they cross."));
    }

    private static String times(int count) {
        return count == 1 ? "once" : count == 2 ? "twice" : count + " times";
    }
}

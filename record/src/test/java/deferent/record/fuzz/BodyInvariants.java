package deferent.record.fuzz;

import deferent.motion.shared.Side;
import deferent.motion.trace.Figure;
import deferent.reading.body.Bend;
import deferent.reading.body.HandReach;
import deferent.reading.body.Pass;
import deferent.reading.body.Passes;
import deferent.reading.body.Passing;
import deferent.reading.body.Posture;
import deferent.reading.body.Reach;
import deferent.reading.body.Room;
import deferent.reading.body.SideRoom;
import deferent.reading.body.TrunkTurn;
import java.util.List;
import java.util.Optional;

/** What holds of figures, of reach and of room. */
final class BodyInvariants {
    /** What a narrowed low point may miss, metres. */
    private static final double NARROWED = 1e-4;

    static final List<Invariant> ALL =
            List.of(
                    new Invariant(
                            "a cord is no further from anything than its ends are",
                            "its ends are points of it",
                            1,
                            BodyInvariants::cords),
                    new Invariant(
                            "a hand is everywhere in reach exactly where it never misses",
                            "both ask whether the path keeps between the two spheres",
                            1,
                            BodyInvariants::reach),
                    new Invariant(
                            "a turned trunk leaves no arm shorter, and turns only for one too short",
                            "straight ahead is one of the turns",
                            1,
                            BodyInvariants::trunk),
                    new Invariant(
                            "a body bends only where turning falls short, and then reaches no less",
                            "upright is one of the bends",
                            1,
                            BodyInvariants::bend),
                    new Invariant(
                            "what passes is apart, and cords pass as the room has them cross",
                            "both look along z at the same two lines",
                            1,
                            BodyInvariants::passes),
                    new Invariant(
                            "a figure fits in its own outer radius and is as long as its extent asks",
                            "every point of it is within that radius of its centre; a closed path goes"
                                    + " out and back; the area it winds round once at least is no more than"
                                    + " its box",
                            1,
                            BodyInvariants::figures));

    private BodyInvariants() {}

    private static void cords(Whole whole, Invariant.Broken broken) {
        Room room = Whole.out(whole.readings().room());
        double cords = room.tetherToTether().distance();
        broken.when(
                cords > room.headToHead().distance() + NARROWED,
                "cords %.6f, heads %.6f",
                cords,
                room.headToHead().distance());
        broken.when(
                cords > Whole.out(whole.readings().reach()).hands().distance() + NARROWED,
                "cords %.6f, hands %.6f",
                cords,
                Whole.out(whole.readings().reach()).hands().distance());
        for (Side side : Whole.sides()) {
            SideRoom one = room.side(side);
            broken.when(
                    cords > one.headToOtherHand().distance() + NARROWED,
                    "cords %.6f, head to hand %.6f",
                    cords,
                    one.headToOtherHand().distance());
            double body = one.tetherToBody().distance();
            broken.when(
                    body > one.headToBody().distance() + NARROWED
                            || body > one.handToBody().distance() + NARROWED,
                    "from the body: cord %.6f, head %.6f, hand %.6f",
                    body,
                    one.headToBody().distance(),
                    one.handToBody().distance());
        }
    }

    private static void passes(Whole whole, Invariant.Broken broken) {
        Passes passes = Whole.out(whole.readings().advice().orElseThrow().passes());
        for (Pass pass : passes.all()) {
            boolean body = pass.one().kind().body() || pass.other().kind().body();
            broken.when(!body && pass.by() < 0, "passes within: %s", pass);
        }
        double period = whole.readings().trace().period();
        for (Passing crossing : Whole.out(whole.readings().room()).passings()) {
            Optional<Side> front = crossing.front();
            broken.when(
                    front.isPresent()
                            && crossing.spell().length() > 1e-3 * period
                            && passes.all().stream()
                                    .noneMatch(pass -> same(pass, crossing, period)),
                    "the room has %s in front at %.6f s",
                    front,
                    crossing.time());
        }
    }

    private static boolean same(Pass pass, Passing crossing, double period) {
        double since = crossing.time() - pass.spell().start();
        return pass.one().kind() == Pass.Kind.POI
                && pass.other().kind() == Pass.Kind.POI
                && pass.one().side().equals(crossing.front())
                && since - period * Math.floor(since / period) <= pass.spell().length() + 1e-6;
    }

    private static void reach(Whole whole, Invariant.Broken broken) {
        for (Side side : Whole.sides()) {
            HandReach hand = Whole.out(whole.readings().reach()).hand(side);
            broken.when(
                    hand.everywhere() != hand.missing().isEmpty(),
                    "everywhere %s, missing %s",
                    hand.everywhere(),
                    hand.missing());
            broken.when(
                    hand.nearest() > hand.farthest() + 1e-9,
                    "nearest %.9f, farthest %.9f",
                    hand.nearest(),
                    hand.farthest());
        }
    }

    private static void trunk(Whole whole, Invariant.Broken broken) {
        Reach reach = Whole.out(whole.readings().reach());
        TrunkTurn trunk = reach.trunk();
        double straight = Math.max(reach.left().tooFar(), reach.right().tooFar());
        broken.when(
                trunk.tooFar() > straight + 1e-4,
                "too far straight %.6f, turned %.6f",
                straight,
                trunk.tooFar());
        broken.when(
                trunk.turned() && straight <= 0,
                "turned by %.6f with nothing too far",
                trunk.greatest());
        broken.when(trunk.greatest() > TrunkTurn.MOST + 1e-9, "turned by %.6f", trunk.greatest());
    }

    private static void bend(Whole whole, Invariant.Broken broken) {
        Reach reach = Whole.out(whole.readings().reach());
        reach.bend().ifPresent(bend -> bend(reach.trunk(), bend, broken));
    }

    private static void bend(TrunkTurn alone, Bend bend, Invariant.Broken broken) {
        broken.when(alone.reached(), "bent though turned it is reached: %s", bend);
        broken.when(
                bend.forward() < 0
                        || bend.raised() < 0
                        || bend.lean() < 0
                        || bend.posture().equals(Posture.UPRIGHT),
                "nothing bent in %s",
                bend);
        broken.when(
                bend.trunk().tooFar() > alone.tooFar() + 1e-4,
                "still too far by %.6f, turned alone %.6f",
                bend.trunk().tooFar(),
                alone.tooFar());
        broken.when(
                bend.trunk().greatest() > TrunkTurn.MOST + 1e-9,
                "bent and turned by %.6f",
                bend.trunk().greatest());
    }

    private static void figures(Whole whole, Invariant.Broken broken) {
        for (Side side : Whole.sides()) {
            Figure figure = Whole.out(whole.readings().hand(side).figure());
            double extent = Math.max(figure.width(), figure.height());
            broken.when(
                    figure.width() < 0
                            || figure.height() < 0
                            || figure.length() < 0
                            || figure.unionArea() < 0,
                    "below 0: %s",
                    figure);
            broken.when(
                    extent > 2 * figure.outerRadius() + 1e-6 * figure.outerRadius() + 1e-9,
                    "%s",
                    figure);
            broken.when(figure.length() < 2 * extent * (1 - 1e-3) - 1e-9, "%s", figure);
        }
    }
}

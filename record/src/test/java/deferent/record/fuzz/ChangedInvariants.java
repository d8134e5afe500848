package deferent.record.fuzz;

import deferent.motion.pairing.Part;
import deferent.motion.pairing.Series;
import deferent.motion.shared.Side;
import deferent.motion.trace.Figure;
import deferent.motion.trace.Trace;
import deferent.reading.body.Room;
import deferent.reading.link.LinkReading;
import deferent.reading.tether.KeepTheFigure;
import deferent.reading.tether.KeepTheHandPath;
import deferent.reading.tether.Pull;
import deferent.reading.tether.SlowestTempo;
import deferent.reading.tether.Steadiness;
import deferent.reading.worked.CordReading;
import deferent.search.whole.Readings;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * What holds between the readings of a pairing and of one that was {@link Changed} in a known way:
 * of what is read while dragging, asked of one phrase in five, and of the kept figure and the kept
 * hand path, which cost a second search, of one in fifty.
 */
final class ChangedInvariants {
    private static final int LIVE = 5;
    private static final int SETTLED = 50;

    /** What a least pull may miss of the one between two samples, of itself and in weights. */
    private static final double NARROWED = 1e-4;

    /**
     * What the growth of a kept figure's slips may miss of itself: the acceleration of its hand is
     * that of a smooth stand-in, which another beginning lays through other points.
     */
    private static final double SMOOTHED = 1e-2;

    /** What pulls behind a kept hand path may miss of their range, and growth of itself. */
    private static final double MARCHED = 1e-3;

    /** Growth a cycle beyond which no digit of it is sure. */
    private static final double GROWN = 1e5;

    static final List<Invariant> ALL =
            Stream.of(
                            twice(
                                    "a mirrored pairing reads mirrored",
                                    "a mirror turns no length, no force and no time about; it only"
                                            + " changes left with right and the starting moment",
                                    Changed::mirrored,
                                    ChangedInvariants::mirrored),
                            twice(
                                    "with the hands' motions swapped each reading goes with its"
                                            + " motion",
                                    "both heads and hands draw what they drew, where they drew it:"
                                            + " only the sides' names and the starting moment change;"
                                            + " the arms that reach there are others",
                                    Changed::swapped,
                                    (here, there, changed, broken) -> {
                                        linked(here, there, changed, broken);
                                        apart(here, there, broken);
                                    }),
                            twice(
                                    "turned about the upright, cords and links read the same",
                                    "gravity and every distance between the two stay; only the body"
                                            + " does not turn with them; links where no more than thirty"
                                            + " turns go to the cycle",
                                    Changed::turned,
                                    (here, there, changed, broken) -> {
                                        linked(here, there, changed, broken);
                                        apart(here, there, broken);
                                    }),
                            twice(
                                    "with all lengths s times and the tempo 1/√s the cord reads the"
                                            + " same in weights",
                                    "accelerations are lengths over squared times, so they stay"
                                            + " beside gravity; said without air, whose drag does not"
                                            + " scale so",
                                    Changed::scaled,
                                    ChangedInvariants::scaled),
                            twice(
                                    "begun at another moment of the cycle it reads the same",
                                    "a periodic motion has no first moment; said of hands on circles"
                                            + " added up behind which the poi turns evenly, whose later"
                                            + " beginning is again such a pairing",
                                    Changed::later,
                                    ChangedInvariants::linked))
                    .flatMap(List::stream)
                    .toList();

    private ChangedInvariants() {}

    private interface Comparison {
        void of(Readings here, Readings there, Changed changed, Invariant.Broken broken);
    }

    private static List<Invariant> twice(
            String name, String why, Function<Whole, Optional<Changed>> change, Comparison live) {
        Function<Whole, Optional<Changed>> changes = Changed.by(change);
        return List.of(
                new Invariant(
                        name,
                        why,
                        LIVE,
                        (whole, broken) ->
                                changes.apply(whole)
                                        .ifPresent(
                                                changed -> {
                                                    Readings there = changed.live(whole);
                                                    cords(whole.live(), there, changed, broken);
                                                    live.of(whole.live(), there, changed, broken);
                                                })),
                new Invariant(
                        name + ", and so do the kept figure and the kept hand path",
                        why,
                        SETTLED,
                        (whole, broken) ->
                                changes.apply(whole)
                                        .ifPresent(changed -> kept(whole, changed, broken))));
    }

    private static void cords(
            Readings here, Readings there, Changed changed, Invariant.Broken broken) {
        for (Side side : Whole.sides()) {
            Pull p = Whole.out(here.cord(side).pull());
            Pull q = Whole.out(there.cord(changed.side(side)).pull());
            // The mean is added up from the samples, of which another beginning takes others: a
            // few thousandths of the range where many turns go to the cycle.
            double hair =
                    2e-3 * (p.greatest() - p.least())
                            + 1e-6 * p.headWeight()
                            + 1e-4 * Math.abs(p.greatest());
            broken.unlessNear(side + " least pull", p.least(), q.least(), 0, hair);
            broken.unlessNear(side + " greatest pull", p.greatest(), q.greatest(), 0, hair);
            broken.unlessNear(side + " mean pull", p.mean(), q.mean(), 0, hair);
            double s = changed.scale();
            broken.unlessNear(
                    side + " speed", Math.sqrt(s) * p.headSpeed(), q.headSpeed(), 1e-3, 1e-9);
            Figure f = Whole.out(here.hand(side).figure());
            Figure g = Whole.out(there.hand(changed.side(side)).figure());
            broken.unlessNear(side + " width", s * f.width(), g.width(), 1e-4, 1e-7);
            broken.unlessNear(side + " height", s * f.height(), g.height(), 1e-4, 1e-7);
            broken.unlessNear(side + " length", s * f.length(), g.length(), 1e-4, 1e-7);
            broken.unlessNear(
                    side + " outer radius", s * f.outerRadius(), g.outerRadius(), 1e-4, 1e-7);
            broken.unlessNear(side + " petals", f.petals(), g.petals(), 0, 0);
        }
    }

    private static void linked(
            Readings here, Readings there, Changed changed, Invariant.Broken broken) {
        // Links are sampled at 720 even times, which see a turn of a thirtieth of the cycle well
        // and a shorter one only roughly.
        if (Whole.sides().stream().anyMatch(side -> brisk(here.pairing().part(side)) > 30)) {
            return;
        }
        for (Side carrier : Whole.sides()) {
            LinkReading a = Whole.out(here.link(carrier));
            LinkReading b = Whole.out(there.link(changed.side(carrier)));
            double hair = 3e-3 * (a.headRadius() + a.handRadius()) + 1e-6;
            broken.unlessNear(carrier + " placed gap", a.placedGap(), b.placedGap(), 0, hair);
            broken.unlessNear(
                    carrier + " gap in the plane", a.inPlaneGap(), b.inPlaneGap(), 0, hair);
            broken.unlessNear(carrier + " depth gap", a.depthGap(), b.depthGap(), 0, hair);
            broken.unlessNear(
                    carrier + " mean offset", a.offset().getNorm(), b.offset().getNorm(), 0, hair);
        }
    }

    private static int brisk(Part part) {
        int hand =
                part.motion().path() instanceof Series series
                        ? series.terms().stream().mapToInt(t -> Math.abs(t.k())).max().orElse(0)
                        : 1;
        return part.cycles() * Math.max(hand, Math.abs(part.motion().spin().turns()));
    }

    /** Least distances are narrowed from samples to a tenth of a millimetre. */
    private static void apart(Readings here, Readings there, Invariant.Broken broken) {
        Room a = Whole.out(here.room());
        Room b = Whole.out(there.room());
        broken.unlessNear(
                "heads", a.headToHead().distance(), b.headToHead().distance(), 1e-4, 1e-4);
        broken.unlessNear(
                "cords", a.tetherToTether().distance(), b.tetherToTether().distance(), 1e-4, 1e-4);
    }

    private static void mirrored(
            Readings here, Readings there, Changed changed, Invariant.Broken broken) {
        broken.unlessNear("period", here.trace().period(), there.trace().period(), 1e-9, 0);
        linked(here, there, changed, broken);
        apart(here, there, broken);
        for (Side side : Whole.sides()) {
            broken.unlessNear(
                    side + " farthest reach",
                    Whole.out(here.reach()).hand(side).farthest(),
                    Whole.out(there.reach()).hand(side.other()).farthest(),
                    1e-6,
                    1e-6);
            broken.unlessNear(
                    side + " cord to body",
                    Whole.out(here.room()).side(side).tetherToBody().distance(),
                    Whole.out(there.room()).side(side.other()).tetherToBody().distance(),
                    1e-4,
                    1e-4);
        }
    }

    private static void scaled(
            Readings here, Readings there, Changed changed, Invariant.Broken broken) {
        for (Side side : Whole.sides()) {
            broken.unlessNear(
                    side + " placed gap",
                    changed.scale() * Whole.out(here.link(side)).placedGap(),
                    Whole.out(there.link(side)).placedGap(),
                    1e-9,
                    1e-9);
        }
    }

    private static void kept(Whole whole, Changed changed, Invariant.Broken broken) {
        Trace there = Trace.of(changed.pairing());
        for (Side side : Whole.sides()) {
            CordReading cord = whole.readings().cord(side);
            // A hand that keeps the figure on a cord with mass is only near the one that would.
            if (whole.asked().kit().cordMass() == 0) {
                cord.figureKept()
                        .reading()
                        .ifPresent(
                                kept ->
                                        keptFigure(
                                                kept,
                                                cord.figureSteadiness()
                                                        .reading()
                                                        .filter(
                                                                s ->
                                                                        CordInvariants.calm(
                                                                                whole, cord)),
                                                KeepTheFigure.of(
                                                        there, changed.side(side), changed.kit()),
                                                broken));
            }
            // Out of an upright plane the search begins at a few directions of the first moment.
            if (!changed.shifted() || CordInvariants.upright(whole, side)) {
                cord.handPathKept()
                        .reading()
                        .flatMap(KeepTheHandPath::best)
                        .ifPresent(best -> handPathKept(best, there, changed, side, broken));
            }
        }
    }

    private static void keptFigure(
            KeepTheFigure kept,
            Optional<Steadiness> steadiness,
            KeepTheFigure other,
            Invariant.Broken broken) {
        Side side = kept.side();
        broken.unlessNear(
                side + " figure kept, least pull in weights",
                kept.leastPullWeights(),
                other.leastPullWeights(),
                NARROWED,
                NARROWED);
        broken.when(
                kept.possible() != other.possible(),
                "%s figure kept, possible %s, then %s",
                side,
                kept.possible(),
                other.possible());
        if (!kept.possible() || !other.possible()) {
            return;
        }
        // In a plane that turns, turns are of a shadow, which depends on where that plane starts.
        if (kept.normal().getNormSq() > 0) {
            broken.when(
                    kept.getsRound() != other.getsRound(),
                    "%s figure kept, gets round %s, then %s",
                    side,
                    kept.getsRound(),
                    other.getsRound());
        }
        steadiness
                .filter(held -> held.growth() < GROWN)
                .ifPresent(
                        held ->
                                broken.unlessNear(
                                        side + " figure kept, growth",
                                        held.growth(),
                                        Steadiness.of(other).growth(),
                                        SMOOTHED,
                                        Steadiness.EVEN));
    }

    private static void handPathKept(
            KeepTheHandPath.Solution best,
            Trace there,
            Changed changed,
            Side side,
            Invariant.Broken broken) {
        Side now = changed.side(side);
        KeepTheHandPath other = KeepTheHandPath.of(there, now, changed.kit());
        if (other.solutions().stream().noneMatch(one -> alike(best, one))) {
            // What one tempo's search misses is found coming down from the fastest.
            other =
                    SlowestTempo.of(changed.pairing(), now, changed.kit())
                            .agreed(there, other)
                            .handPathKept();
        }
        broken.when(
                other.solutions().stream().noneMatch(one -> alike(best, one)),
                "%s hand path kept: %s is none of %s",
                side,
                numbers(best),
                other.solutions().stream().map(ChangedInvariants::numbers).toList());
    }

    // Which of several comes first is settled by centimetres, which may round otherwise.
    private static boolean alike(KeepTheHandPath.Solution a, KeepTheHandPath.Solution b) {
        double range = greatest(a) - a.leastPullWeights();
        double hair = MARCHED * range + NARROWED * NARROWED;
        return Math.abs(a.leastPullWeights() - b.leastPullWeights()) < hair
                && Math.abs(greatest(a) - greatest(b)) < hair
                && Math.abs(a.growth() - b.growth())
                        < MARCHED * Math.max(a.growth(), b.growth()) + Steadiness.EVEN;
    }

    private static double greatest(KeepTheHandPath.Solution one) {
        return one.greatestPull() / one.orbit().cord().headWeight();
    }

    private static String numbers(KeepTheHandPath.Solution one) {
        return String.format(
                Locale.ROOT,
                "%.6g to %.6g weights, growth %.6g",
                one.leastPullWeights(),
                greatest(one),
                one.growth());
    }
}

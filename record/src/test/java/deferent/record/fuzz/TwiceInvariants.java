package deferent.record.fuzz;

import deferent.motion.body.Room;
import deferent.motion.link.LinkReading;
import deferent.motion.pairing.MirrorImage;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Turns;
import deferent.motion.tell.CordReading;
import deferent.motion.tell.Detail;
import deferent.motion.tell.Readings;
import deferent.motion.tether.Floor;
import deferent.motion.tether.Kit;
import deferent.motion.tether.Pull;
import deferent.motion.trace.Figure;
import deferent.record.ReadingsJson;
import java.util.List;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** What holds between one reading and another of a pairing that was changed in a known way. */
final class TwiceInvariants {
    private static final double SCALE = 1.44;
    private static final double TURN = 0.7;

    static final List<Invariant> ALL =
            List.of(
                    new Invariant(
                            "a mirrored pairing reads mirrored",
                            "a mirror turns no length, no force and no time about; it only changes left"
                                    + " with right and the starting moment",
                            5,
                            TwiceInvariants::mirrored),
                    new Invariant(
                            "turned about the upright, cords and links read the same",
                            "gravity and every distance between the two stay; only the body does not"
                                    + " turn with them; links where no more than thirty turns go to the cycle",
                            5,
                            TwiceInvariants::turned),
                    new Invariant(
                            "with all lengths s times and the tempo 1/√s the cord reads the same in"
                                    + " weights",
                            "accelerations are lengths over squared times, so they stay beside gravity;"
                                    + " said without air, whose drag does not scale so",
                            5,
                            TwiceInvariants::scaled),
                    new Invariant(
                            "begun at another moment of the cycle it reads the same",
                            "a periodic motion has no first moment; said of hands on circles added up"
                                    + " behind which the poi turns evenly, whose later beginning is again"
                                    + " such a pairing",
                            5,
                            TwiceInvariants::later),
                    new Invariant(
                            "a heavier head pulls more newtons and the same weights",
                            "without air and with a cord without mass the head's mass cancels",
                            5,
                            TwiceInvariants::heavier),
                    new Invariant(
                            "what is read while dragging is what is read at rest, where it is exact",
                            "placed gaps, reach and room come from the same samples; the pull only from"
                                    + " fewer",
                            1,
                            TwiceInvariants::live),
                    new Invariant(
                            "the slowest tempo does not depend on the tempo asked at",
                            "it is a number of the motion, not of what was asked; to a ten-thousandth",
                            4,
                            TwiceInvariants::slowest),
                    new Invariant(
                            "read twice, it is the same to the last letter",
                            "readings keep nothing from one asking to the next",
                            40,
                            (whole, broken) ->
                                    broken.when(
                                            !ReadingsJson.tree(
                                                            Whole.read(
                                                                    whole.asked(),
                                                                    whole.pairing(),
                                                                    Detail.SETTLED))
                                                    .equals(whole.json()),
                                            "two readings differ")));

    private TwiceInvariants() {}

    private static Readings quick(Whole whole, Pairing pairing) {
        return Whole.read(whole.asked(), pairing, Detail.LIVE);
    }

    private static void mirrored(Whole whole, Invariant.Broken broken) {
        Pairing image;
        try {
            image = MirrorImage.of(whole.pairing());
        } catch (Refusal tooFast) {
            return;
        }
        Readings here = quick(whole, whole.pairing());
        Readings there = quick(whole, image);
        broken.unlessNear("period", here.trace().period(), there.trace().period(), 1e-9, 0);
        for (Side side : Whole.sides()) {
            cord(broken, side + "", here, side, there, side.other(), 1);
            link(broken, side + "", here, side, there, side.other());
            broken.unlessNear(
                    side + " farthest reach",
                    Whole.out(here.reach()).hand(side).farthest(),
                    Whole.out(there.reach()).hand(side.other()).farthest(),
                    1e-6,
                    1e-6);
            Room a = Whole.out(here.room());
            Room b = Whole.out(there.room());
            broken.unlessNear(
                    side + " cord to body",
                    a.side(side).tetherToBody().distance(),
                    b.side(side.other()).tetherToBody().distance(),
                    1e-4,
                    1e-4);
        }
        broken.unlessNear(
                "heads",
                Whole.out(here.room()).headToHead().distance(),
                Whole.out(there.room()).headToHead().distance(),
                1e-4,
                1e-4);
        broken.unlessNear(
                "cords",
                Whole.out(here.room()).tetherToTether().distance(),
                Whole.out(there.room()).tetherToTether().distance(),
                1e-4,
                1e-4);
    }

    private static void turned(Whole whole, Invariant.Broken broken) {
        Pairing about;
        try {
            about = whole.pairing();
            for (Side side : Whole.sides()) {
                Part part = about.part(side);
                Plane plane = part.place().plane();
                Vector3D c = part.place().centre();
                double cos = Math.cos(TURN);
                double sin = Math.sin(TURN);
                about =
                        about.with(
                                side,
                                part.with(
                                        new Place(
                                                new Plane(
                                                        plane.kind(),
                                                        plane.tip(),
                                                        Math.IEEEremainder(
                                                                plane.swivel() + TURN,
                                                                2 * Math.PI)),
                                                part.place().turn(),
                                                new Vector3D(
                                                        cos * c.getX() + sin * c.getZ(),
                                                        c.getY(),
                                                        cos * c.getZ() - sin * c.getX()))));
            }
        } catch (Refusal tooFar) {
            return;
        }
        Readings here = quick(whole, whole.pairing());
        Readings there = quick(whole, about);
        for (Side side : Whole.sides()) {
            cord(broken, side + "", here, side, there, side, 1);
            link(broken, side + "", here, side, there, side);
        }
        broken.unlessNear(
                "heads",
                Whole.out(here.room()).headToHead().distance(),
                Whole.out(there.room()).headToHead().distance(),
                1e-4,
                1e-4);
    }

    private static void scaled(Whole whole, Invariant.Broken broken) {
        Kit kit = whole.asked().kit();
        if (kit.air()) {
            return;
        }
        Pairing larger;
        try {
            larger = whole.pairing().withTempo(OptionalDouble.empty());
            for (Side side : Whole.sides()) {
                Part part = larger.part(side);
                larger =
                        larger.with(
                                side,
                                new Part(
                                        part.motion().withPath(part.motion().path().scaled(SCALE)),
                                        Tether.of(SCALE * part.tether().length()),
                                        part.place()
                                                .withCentre(
                                                        part.place()
                                                                .centre()
                                                                .scalarMultiply(SCALE)),
                                        part.cycles()));
            }
            if (!larger.setsOwnTempo()) {
                larger =
                        larger.withTempo(
                                OptionalDouble.of(whole.pairing().tempo() / Math.sqrt(SCALE)));
            }
        } catch (Refusal beyond) {
            return;
        }
        Readings here = quick(whole, whole.pairing());
        Readings there =
                Readings.of(
                        larger,
                        whole.asked().performer(),
                        kit.withCordMass(kit.cordMass() / SCALE),
                        Detail.LIVE,
                        deferent.motion.phrase.Lexicon.EMPTY);
        for (Side side : Whole.sides()) {
            cord(broken, side + "", here, side, there, side, SCALE);
            broken.unlessNear(
                    side + " placed gap",
                    SCALE * Whole.out(here.link(side)).placedGap(),
                    Whole.out(there.link(side)).placedGap(),
                    1e-9,
                    1e-9);
        }
    }

    private static void later(Whole whole, Invariant.Broken broken) {
        Pairing later = whole.pairing();
        for (Side side : Whole.sides()) {
            Part part = later.part(side);
            if (!(part.motion().path() instanceof Series series)
                    || !(part.motion().spin() instanceof Turns even)
                    || part.place().turn().turns() != 0) {
                return;
            }
            double by = 2 * Math.PI * 0.137 * part.cycles();
            later =
                    later.with(
                            side,
                            part.with(
                                    new Motion(
                                            new Series(
                                                    series.terms().stream()
                                                            .map(
                                                                    t ->
                                                                            new Series.Term(
                                                                                    t.k(),
                                                                                    t.radius(),
                                                                                    t.angle()
                                                                                            + t.k()
                                                                                                    * by))
                                                            .toList()),
                                            new Turns(
                                                    even.turns(),
                                                    even.start() + even.turns() * by))));
        }
        Readings here = quick(whole, whole.pairing());
        Readings there = quick(whole, later);
        for (Side side : Whole.sides()) {
            cord(broken, side + "", here, side, there, side, 1);
            link(broken, side + "", here, side, there, side);
        }
    }

    private static void heavier(Whole whole, Invariant.Broken broken) {
        Kit kit = whole.asked().kit();
        if (kit.air() || kit.cordMass() > 0 || kit.headMass() > 2) {
            return;
        }
        for (Side side : Whole.sides()) {
            Pull light = Whole.out(whole.readings().cord(side).pull());
            Pull heavy =
                    Pull.of(whole.readings().trace(), side, kit.withHeadMass(2 * kit.headMass()));
            broken.unlessNear(
                    side + " least", light.leastWeights(), heavy.leastWeights(), 1e-9, 1e-9);
            broken.unlessNear(
                    side + " greatest", 2 * light.greatest(), heavy.greatest(), 1e-9, 1e-9);
        }
    }

    private static void live(Whole whole, Invariant.Broken broken) {
        Readings rest = whole.readings();
        Readings live = quick(whole, whole.pairing());
        for (Side side : Whole.sides()) {
            LinkReading a = Whole.out(rest.link(side));
            LinkReading b = Whole.out(live.link(side));
            broken.unlessNear(side + " placed gap", a.placedGap(), b.placedGap(), 0, 0);
            broken.unlessNear(side + " gap in the plane", a.inPlaneGap(), b.inPlaneGap(), 0, 0);
            broken.unlessNear(side + " depth gap", a.depthGap(), b.depthGap(), 0, 0);
            Pull p = Whole.out(rest.cord(side).pull());
            Pull q = Whole.out(live.cord(side).pull());
            double range = p.greatest() - p.least() + p.headWeight();
            broken.when(
                    Math.abs(p.least() - q.least()) > 0.02 * range
                            || Math.abs(p.greatest() - q.greatest()) > 0.02 * range,
                    "%s pull %.6g to %.6g at rest, %.6g to %.6g while dragging",
                    side,
                    p.least(),
                    p.greatest(),
                    q.least(),
                    q.greatest());
            Figure f = Whole.out(rest.hand(side).figure());
            Figure g = Whole.out(live.hand(side).figure());
            broken.unlessNear(side + " width", f.width(), g.width(), 1e-6, 1e-9);
            broken.unlessNear(side + " height", f.height(), g.height(), 1e-6, 1e-9);
            broken.unlessNear(side + " length", f.length(), g.length(), 1e-4, 1e-9);
        }
        broken.when(!Whole.out(rest.room()).equals(Whole.out(live.room())), "room differs");
        broken.when(!Whole.out(rest.reach()).equals(Whole.out(live.reach())), "reach differs");
    }

    private static void slowest(Whole whole, Invariant.Broken broken) {
        if (whole.pairing().setsOwnTempo()) {
            return;
        }
        double asked = whole.pairing().tempo();
        double other = asked > 100 ? asked * 0.61 : Math.min(600, asked * 1.53);
        for (Side side : Whole.sides()) {
            whole.readings()
                    .cord(side)
                    .floor()
                    .reading()
                    .ifPresent(
                            here -> {
                                Floor there =
                                        Floor.of(
                                                whole.pairing().withTempo(OptionalDouble.of(other)),
                                                side,
                                                whole.asked().kit());
                                same(broken, side + " ideal", here.ideal(), there.ideal());
                                same(broken, side + " figure kept", here.light(), there.light());
                                same(broken, side + " hand path kept", here.hand(), there.hand());
                            });
        }
    }

    private static void same(Invariant.Broken broken, String what, Floor.Limit a, Floor.Limit b) {
        broken.when(
                a.reason() != b.reason()
                        || a.tempo().isPresent() != b.tempo().isPresent()
                        || Math.abs(a.tempo().orElse(1) / b.tempo().orElse(1) - 1) > 1e-4,
                "%s: %s against %s",
                what,
                a,
                b);
    }

    /** The same cord on another side, its lengths {@code s} times. */
    private static void cord(
            Invariant.Broken broken,
            String what,
            Readings here,
            Side side,
            Readings there,
            Side other,
            double s) {
        CordReading a = here.cord(side);
        CordReading b = there.cord(other);
        Pull p = Whole.out(a.pull());
        Pull q = Whole.out(b.pull());
        double hair =
                2e-3 * (p.greatest() - p.least()) + 1e-6 * p.headWeight() + 1e-4 * p.greatest();
        broken.unlessNear(what + " least pull", p.least(), q.least(), 0, hair);
        broken.unlessNear(what + " greatest pull", p.greatest(), q.greatest(), 0, hair);
        broken.unlessNear(what + " mean pull", p.mean(), q.mean(), 0, hair);
        broken.unlessNear(what + " speed", Math.sqrt(s) * p.headSpeed(), q.headSpeed(), 1e-3, 1e-9);
        Figure f = Whole.out(here.hand(side).figure());
        Figure g = Whole.out(there.hand(other).figure());
        broken.unlessNear(what + " width", s * f.width(), g.width(), 1e-4, 1e-7);
        broken.unlessNear(what + " height", s * f.height(), g.height(), 1e-4, 1e-7);
        broken.unlessNear(what + " length", s * f.length(), g.length(), 1e-4, 1e-7);
        broken.unlessNear(what + " outer radius", s * f.outerRadius(), g.outerRadius(), 1e-4, 1e-7);
        broken.unlessNear(what + " petals", f.petals(), g.petals(), 0, 0);
    }

    private static int brisk(Part part) {
        int hand =
                part.motion().path() instanceof Series series
                        ? series.terms().stream().mapToInt(t -> Math.abs(t.k())).max().orElse(0)
                        : 1;
        return part.cycles() * Math.max(hand, Math.abs(part.motion().spin().turns()));
    }

    private static void link(
            Invariant.Broken broken,
            String what,
            Readings here,
            Side carrier,
            Readings there,
            Side other) {
        LinkReading a = Whole.out(here.link(carrier));
        LinkReading b = Whole.out(there.link(other));
        // Links are sampled at 720 even times, which see a turn of a thirtieth of the cycle well
        // and a shorter one only roughly.
        if (Whole.sides().stream().anyMatch(side -> brisk(here.pairing().part(side)) > 30)) {
            return;
        }
        double hair = 3e-3 * (a.headRadius() + a.handRadius()) + 1e-6;
        broken.unlessNear(what + " placed gap", a.placedGap(), b.placedGap(), 0, hair);
        broken.unlessNear(what + " gap in the plane", a.inPlaneGap(), b.inPlaneGap(), 0, hair);
        broken.unlessNear(what + " depth gap", a.depthGap(), b.depthGap(), 0, hair);
        broken.unlessNear(
                what + " mean offset", a.offset().getNorm(), b.offset().getNorm(), 0, hair);
    }
}

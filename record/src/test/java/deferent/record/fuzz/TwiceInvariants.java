package deferent.record.fuzz;

import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Side;
import deferent.motion.trace.Figure;
import deferent.reading.link.LinkReading;
import deferent.reading.tether.Kit;
import deferent.reading.tether.Pull;
import deferent.reading.tether.SlowestTempo;
import deferent.reading.worked.Detail;
import deferent.record.ReadingsJson;
import deferent.search.whole.Readings;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What holds between two readings of the same pairing, asked for in two ways. */
final class TwiceInvariants {
    /** Asked of one phrase in so many, since they cost half a second and more each. */
    private static final int SELDOM = 50;

    static final List<Invariant> ALL =
            List.of(
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
                            "what comes down from the fastest tempo is of the motion, not of what was"
                                    + " asked; to a ten-thousandth",
                            SELDOM,
                            TwiceInvariants::slowest),
                    new Invariant(
                            "read twice, it is the same to the last letter",
                            "readings keep nothing from one asking to the next",
                            2 * SELDOM,
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
        Readings live = whole.live();
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
        Pairing elsewhere = whole.pairing().withTempo(OptionalDouble.of(other));
        for (Side side : Whole.sides()) {
            Optional<SlowestTempo> told = whole.readings().cord(side).slowest().reading();
            if (told.isPresent()) {
                // What is told of a kept hand path agrees with what this tempo's search found.
                SlowestTempo here = SlowestTempo.of(whole.pairing(), side, whole.asked().kit());
                SlowestTempo there = SlowestTempo.of(elsewhere, side, whole.asked().kit());
                same(broken, side + " ideal", told.get().ideal(), there.ideal());
                same(broken, side + " figure kept", told.get().figureKept(), there.figureKept());
                same(broken, side + " hand path kept", here.handPathKept(), there.handPathKept());
            }
        }
    }

    private static void same(
            Invariant.Broken broken, String what, SlowestTempo.Limit a, SlowestTempo.Limit b) {
        broken.when(
                a.reason() != b.reason()
                        || a.tempo().isPresent() != b.tempo().isPresent()
                        || Math.abs(a.tempo().orElse(1) / b.tempo().orElse(1) - 1) > 1e-4,
                "%s: %s against %s",
                what,
                a,
                b);
    }
}

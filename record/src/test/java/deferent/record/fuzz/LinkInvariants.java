package deferent.record.fuzz;

import deferent.motion.pairing.Timing;
import deferent.motion.shared.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import deferent.reading.link.LinkReading;
import deferent.reading.shared.LinkKind;
import deferent.tell.Told;
import java.util.Arrays;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** What holds of every link: of its gaps, its kind, and the sentence that says it. */
final class LinkInvariants {
    private static final double HAIR = 1e-9;

    /** What sampled paths and least squares may miss, metres. */
    private static final double SAMPLED = 2e-3;

    static final List<Invariant> ALL =
            List.of(
                    new Invariant(
                            "kind and numbers of a link agree",
                            "the kind is defined by the numbers: touching within the tolerance in the"
                                    + " plane, carried by a constant vector, rod by a constant distance and"
                                    + " one shape, followed by what touches or is carried after a lag, each"
                                    + " asked only where the ones before do not hold",
                            1,
                            both(LinkInvariants::kind)),
                    new Invariant(
                            "first line and kind of a link agree",
                            "the sentence says the kind",
                            1,
                            LinkInvariants::firstLine),
                    new Invariant(
                            "a link that touches in split time does",
                            "in split time every hand comes half a cycle later to where it was, and"
                                    + " that is what the sentence says",
                            1,
                            both(LinkInvariants::splitTouches)),
                    new Invariant(
                            "the gaps of a link stand in order",
                            "a distance is no less than its shadow on a plane or a line; the best"
                                    + " motion and shift do not worsen what stays where it is, and a carrier"
                                    + " mean square is no more than the greatest; no motion brings the shape"
                                    + " gap below its own lower bound",
                            1,
                            both(LinkInvariants::order)),
                    new Invariant(
                            "the shape gap is no more than the placed one",
                            "walking both paths by the clock is one way to walk them, and the best"
                                    + " motion is no worse than none; said only where both paths close first"
                                    + " after the same time, since the shape gap walks each path once",
                            1,
                            both(LinkInvariants::shape)),
                    new Invariant(
                            "the gap over the cycle has its greatest where the link says",
                            "they are one list of samples",
                            1,
                            both(LinkInvariants::over)));

    private LinkInvariants() {}

    private interface OfOne {
        void check(Whole whole, LinkReading link, Invariant.Broken broken);
    }

    private static Invariant.Check both(OfOne one) {
        return (whole, broken) ->
                Whole.ofEach(
                        carrier ->
                                one.check(
                                        whole, Whole.out(whole.readings().link(carrier)), broken));
    }

    /** What the samples themselves say, worked out here apart from the reading. */
    private record Seen(double inPlane, double wander, double stretch) {
        static Seen of(Trace trace, LinkReading link) {
            return of(trace, link, 0);
        }

        /** With the hand where it is so many samples later. */
        static Seen of(Trace trace, LinkReading link, int later) {
            Samples samples = trace.samples();
            double[] head = samples.head(link.carrier());
            double[] hand = samples.hand(link.carrier().other());
            Vector3D normal = trace.pairing().part(link.carrier()).place().plane().normal();
            Vector3D mean = Vector3D.ZERO;
            double meanLength = 0;
            int n = samples.count();
            Vector3D[] apart = new Vector3D[n];
            for (int i = 0; i < n; i++) {
                apart[i] =
                        Samples.point(hand, Math.floorMod(i + later, n))
                                .subtract(Samples.point(head, i));
                mean = mean.add(apart[i].scalarMultiply(1.0 / n));
                meanLength += apart[i].getNorm() / n;
            }
            double inPlane = 0;
            double wander = 0;
            double stretch = 0;
            for (Vector3D one : apart) {
                inPlane = Math.max(inPlane, one.crossProduct(normal).getNorm());
                wander = Math.max(wander, one.distance(mean));
                stretch = Math.max(stretch, Math.abs(one.getNorm() - meanLength));
            }
            return new Seen(inPlane, wander, stretch);
        }
    }

    private static void kind(Whole whole, LinkReading link, Invariant.Broken broken) {
        Seen seen = Seen.of(whole.readings().trace(), link);
        double within = link.tolerance();
        if (nearly(seen.inPlane(), within)
                || nearly(seen.wander(), within)
                || nearly(seen.stretch(), within)
                || nearly(link.shapeGap(), within)) {
            return;
        }
        boolean moving = link.headRadius() > within && link.handRadius() > within;
        boolean rod = moving && seen.stretch() <= within && link.shapeGap() <= within;
        boolean right =
                seen.inPlane() <= within
                        ? link.kind() == LinkKind.TOUCHING
                        : seen.wander() <= within
                                ? link.kind() == LinkKind.CARRIED
                                : link.kind() == LinkKind.FOLLOWED
                                        ? follows(whole.readings().trace(), link, 1)
                                        : link.kind() == (rod ? LinkKind.ROD : LinkKind.NONE)
                                                && !follows(whole.readings().trace(), link, -1);
        broken.when(
                !right,
                "%s from the %s: %s, shape %.6f",
                link.kind(),
                link.carrier(),
                seen,
                link.shapeGap());
        broken.unlessNear("in the plane", link.inPlaneGap(), seen.inPlane(), 1e-9, 1e-7);
    }

    /**
     * Whether the hand comes where the head was; a lag is looked at to the nearest sample, so
     * within so many steps of the head.
     */
    private static boolean follows(Trace trace, LinkReading link, int steps) {
        double[] head = trace.samples().head(link.carrier());
        double step = 0;
        for (int i = 1; 3 * i < head.length; i++) {
            step = Math.max(step, Samples.point(head, i).distance(Samples.point(head, i - 1)));
        }
        double within = link.tolerance() + steps * step;
        for (double lag : new double[] {link.lag(), link.unturnedLag()}) {
            Seen late = Seen.of(trace, link, (int) Math.rint(lag * head.length / 3));
            if (Math.min(late.inPlane(), late.wander()) <= within) {
                return true;
            }
        }
        return false;
    }

    private static boolean nearly(double a, double b) {
        return Math.abs(a - b) < 1e-6;
    }

    private static void firstLine(Whole whole, Invariant.Broken broken) {
        for (Side carrier : Whole.sides()) {
            LinkReading link = Whole.out(whole.readings().link(carrier));
            String text = whole.said("link." + carrier.word()).get(0).text();
            Told.Tone tone = whole.said("link." + carrier.word()).get(0).tone();
            boolean right =
                    switch (link.kind()) {
                        case TOUCHING -> text.startsWith("Linked, touching:");
                        case CARRIED -> text.startsWith("Linked, carried:");
                        case FOLLOWED -> text.startsWith("Linked, followed:");
                        case ROD -> text.startsWith("Linked as by a rod:");
                        case NONE ->
                                text.startsWith("No link")
                                        || text.startsWith("Same figure, not together:")
                                        || text.startsWith("The other way round");
                    };
            broken.when(!right, "%s is said \"%s\"", link.kind(), text);
            broken.when(
                    (link.kind() != LinkKind.NONE) != (tone == Told.Tone.GOOD),
                    "%s has the tone %s",
                    link.kind(),
                    tone);
            broken.when(
                    text.contains("exactly")
                            && link.kind() == LinkKind.CARRIED
                            && Seen.of(whole.readings().trace(), link).wander() > 1e-3,
                    "\"%s\" of a hand that strays by %.3f",
                    text,
                    Seen.of(whole.readings().trace(), link).wander());
            broken.when(
                    text.contains("at best 0 cm")
                            || text.startsWith("No link") && link.shapeGap() <= link.tolerance(),
                    "a gap of %.4f is said \"%s\"",
                    link.shapeGap(),
                    text);
        }
        Told leading =
                whole.told().stream()
                        .filter(told -> told.key().startsWith("link."))
                        .findFirst()
                        .orElseThrow();
        boolean one =
                Whole.sides().stream()
                        .anyMatch(s -> Whole.out(whole.readings().link(s)).kind() != LinkKind.NONE);
        broken.when(
                one != (leading.tone() == Told.Tone.GOOD),
                "the first of all is \"%s\"",
                leading.text());
    }

    private static void splitTouches(Whole whole, LinkReading link, Invariant.Broken broken) {
        String text = whole.said("link." + link.carrier().word()).get(0).text();
        if (text.contains("In split time they touch")) {
            LinkReading split =
                    LinkReading.quick(Trace.of(whole.pairing().with(Timing.SPLIT)), link.carrier());
            broken.when(
                    split.inPlaneGap() > link.tolerance() + SAMPLED,
                    "in split time they are %.3f apart",
                    split.inPlaneGap());
        }
    }

    private static void order(Whole whole, LinkReading link, Invariant.Broken broken) {
        broken.when(
                link.inPlaneGap() > link.placedGap() + HAIR,
                "in the plane %.9f, placed %.9f",
                link.inPlaneGap(),
                link.placedGap());
        broken.when(
                link.depthGap() > link.placedGap() + HAIR,
                "depth %.9f, placed %.9f",
                link.depthGap(),
                link.placedGap());
        broken.when(
                link.placedGap() > Math.hypot(link.inPlaneGap(), link.depthGap()) + HAIR,
                "placed %.9f, its parts %.9f and %.9f",
                link.placedGap(),
                link.inPlaneGap(),
                link.depthGap());
        broken.when(
                link.offset().getNorm() > link.placedGap() + HAIR,
                "mean offset %s, placed %.9f",
                link.offset(),
                link.placedGap());
        broken.when(
                link.clockGap() > link.placedGap() + 1e-6,
                "clock %.9f, placed %.9f",
                link.clockGap(),
                link.placedGap());
        broken.when(
                link.shapeGapAtLeast() > link.shapeGap() + HAIR,
                "at least %.9f, shape %.9f",
                link.shapeGapAtLeast(),
                link.shapeGap());
        broken.when(
                link.shapeGapError() < 0 || link.shapeGap() < 0 || link.clockGap() < 0,
                "below 0: %s",
                link);
        broken.when(!(link.lag() >= -0.5 && link.lag() < 0.5), "lag %.9f", link.lag());
    }

    private static void shape(Whole whole, LinkReading link, Invariant.Broken broken) {
        Trace trace = whole.readings().trace();
        Samples samples = trace.samples();
        if (rounds(samples.head(link.carrier())) == rounds(samples.hand(link.carrier().other()))) {
            broken.when(
                    link.shapeGapAtLeast() > link.placedGap() + SAMPLED,
                    "at least %.6f, placed %.6f",
                    link.shapeGapAtLeast(),
                    link.placedGap());
            broken.when(
                    link.shapeGap() > link.placedGap() + link.shapeGapError() + SAMPLED,
                    "from the %s shape %.6f (error %.6f), placed %.6f",
                    link.carrier(),
                    link.shapeGap(),
                    link.shapeGapError(),
                    link.placedGap());
        }
    }

    /** How often a path is passed over in the cycle; 0 for a point. */
    private static int rounds(double[] xyz) {
        int n = xyz.length / 3;
        double size = 0;
        for (int i = 0; i < n; i++) {
            size = Math.max(size, Samples.point(xyz, i).distance(Samples.point(xyz, 0)));
        }
        if (size < 1e-9) {
            return 0;
        }
        for (int rounds = 48; rounds > 1; rounds--) {
            if (n % rounds == 0) {
                double off = 0;
                for (int i = 0; i < n; i++) {
                    off =
                            Math.max(
                                    off,
                                    Samples.point(xyz, i)
                                            .distance(Samples.point(xyz, (i + n / rounds) % n)));
                }
                if (off < 1e-9 * size + 1e-12) {
                    return rounds;
                }
            }
        }
        return 1;
    }

    private static void over(Whole whole, LinkReading link, Invariant.Broken broken) {
        double most = Arrays.stream(link.gapOverCycle()).max().orElse(0);
        broken.unlessNear("greatest", most, link.inPlaneGap(), 1e-12, 1e-12);
        int at =
                (int)
                        Math.rint(
                                link.worstTime()
                                        / whole.readings().trace().period()
                                        * link.gapOverCycle().length);
        broken.when(
                at < 0 || at >= link.gapOverCycle().length || link.gapOverCycle()[at] < most - 1e-8,
                "worst at sample %d",
                at);
    }
}

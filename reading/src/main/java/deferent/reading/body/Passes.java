package deferent.reading.body;

import deferent.motion.shared.Side;
import deferent.motion.trace.Interval;
import deferent.motion.trace.Lowest;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import deferent.reading.body.Pass.Kind;
import deferent.reading.body.Pass.Thing;
import deferent.reading.body.Pass.Way;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * What passes before, behind or over what in a cycle, and when: cords and arms of one side and of
 * the other, and both and the body.
 *
 * <p>Cords are the straight lines from grip to head, arms those from shoulder over elbow to wrist,
 * elbows led as {@link Swivels} has them, and the body is its {@link BodyOutline}. As the audience
 * sees it, all of these are compared; as seen from above, arms with arms, and what passes over the
 * head. Two lines pass where they cross in that view, the ends left out, so that a head in the
 * other hand, as in every link, passes nothing. Where the order turns about while they still cross,
 * one went through the other, and there are two spells.
 *
 * <p>Where the body turns, before and behind it is before and behind itself.
 *
 * <p>Arms are known at even instants and run straight in between. One that is out of reach is left
 * out, because nobody knows how it would be held; a side's own upper arm lies at the body and is
 * not compared with it.
 *
 * @param all by time
 * @param leftArm whether the left arm could be compared
 * @param rightArm whether the right one could
 */
public record Passes(List<Pass> all, boolean leftArm, boolean rightArm) {
    private static final int NARROWED = 24;
    private static final int HALVINGS = 30;

    public Passes {
        all = List.copyOf(all);
    }

    /**
     * Those of a trace.
     *
     * @param reach its reach
     */
    public static Passes of(Trace trace, Reach reach) {
        return of(trace, PoseOver.surely(trace, reach));
    }

    /** Those of a trace with a body in that pose. */
    public static Passes of(Trace trace, PoseOver pose) {
        Search search = new Search(trace, pose);
        search.lines();
        search.body();
        search.found.sort(
                Comparator.comparingDouble((Pass pass) -> pass.spell().start())
                        .thenComparing(pass -> pass.one().kind())
                        .thenComparing(pass -> pass.other().kind()));
        return new Passes(search.found, !pose.stretched(Side.LEFT), !pose.stretched(Side.RIGHT));
    }

    /** A line that moves: both its ends at a time, x, y and z of each. */
    private interface Line {
        void at(double time, double[] into, int from);
    }

    private record Moving(Thing thing, Line line) {}

    /** How two things lie in a view: not over one another, or how far the first is in front. */
    private interface Lies {
        /** Metres, above 0 where the first is in front; NaN where they don't overlap. */
        double ahead(double time);
    }

    private static final class Search {
        private final Trace trace;
        private final Samples samples;
        private final PoseOver pose;
        private final Trace around;
        private final BodyOutline body;
        private final List<Pass> found = new ArrayList<>();

        Search(Trace trace, PoseOver pose) {
            this.trace = trace;
            this.samples = Reach.samples(trace);
            this.pose = pose;
            this.around = pose.performer().around(trace);
            this.body = BodyOutline.of(pose.performer());
        }

        void lines() {
            for (Moving left : moving(Side.LEFT, trace)) {
                for (Moving right : moving(Side.RIGHT, trace)) {
                    for (Way way : Way.values()) {
                        boolean arms = left.thing.kind().arm() && right.thing.kind().arm();
                        if (way == Way.BEFORE || arms) {
                            add(left.thing, right.thing, way, crossing(left, right, way), 0);
                        }
                    }
                }
            }
        }

        void body() {
            for (Side side : Side.values()) {
                for (Moving one : moving(side, around)) {
                    if (one.thing.kind() == Kind.UPPER_ARM) {
                        continue;
                    }
                    for (BodyOutline.Part part : BodyOutline.Part.values()) {
                        Thing of = new Thing(kind(part), Optional.empty());
                        double thick = body.slab(part).thick();
                        add(one.thing, of, Way.BEFORE, against(one, part, Way.BEFORE), thick);
                        if (part == BodyOutline.Part.HEAD) {
                            add(one.thing, of, Way.OVER, over(one, part), thick);
                        }
                    }
                }
            }
        }

        // In the room, or as the turning body has it.
        private List<Moving> moving(Side side, Trace seen) {
            List<Moving> all = new ArrayList<>();
            all.add(
                    new Moving(
                            Thing.of(side, Kind.POI),
                            (time, into, from) -> {
                                put(seen.hand(side).position(time), into, from);
                                put(seen.head(side).position(time), into, from + 3);
                            }));
            if (!pose.stretched(side)) {
                all.add(arm(side, Kind.FOREARM, seen != trace));
                all.add(arm(side, Kind.UPPER_ARM, seen != trace));
            }
            return all;
        }

        private Moving arm(Side side, Kind kind, boolean turnedBack) {
            int count = pose.count();
            double[] ends = new double[6 * count];
            for (int i = 0; i < count; i++) {
                boolean fore = kind == Kind.FOREARM;
                Vector3D near = fore ? pose.elbow(side, i) : pose.shoulder(side, i);
                Vector3D far = fore ? pose.wrist(side, i) : pose.elbow(side, i);
                put(turnedBack ? turnedBack(near, i) : near, ends, 6 * i);
                put(turnedBack ? turnedBack(far, i) : far, ends, 6 * i + 3);
            }
            double step = pose.time(1) - pose.time(0);
            return new Moving(
                    Thing.of(side, kind),
                    (time, into, from) -> {
                        double at = (time - pose.time(0)) / step;
                        int before = (int) Math.floor(at);
                        double share = at - before;
                        int a = 6 * instant(before);
                        int b = 6 * instant(before + 1);
                        for (int k = 0; k < 6; k++) {
                            into[from + k] = (1 - share) * ends[a + k] + share * ends[b + k];
                        }
                    });
        }

        private Vector3D turnedBack(Vector3D point, int i) {
            return pose.performer().axis().turned(point, -pose.heading(i));
        }

        private int instant(int i) {
            int count = pose.count();
            return trace.periodic() ? Math.floorMod(i, count) : Math.max(0, Math.min(count - 1, i));
        }

        private static Lies crossing(Moving one, Moving other, Way way) {
            double[] ends = new double[12];
            return time -> {
                one.line.at(time, ends, 0);
                other.line.at(time, ends, 6);
                if (way == Way.OVER) {
                    fromAbove(ends);
                }
                return TetherSegments.crosses(ends) ? TetherSegments.ahead(ends) : Double.NaN;
            };
        }

        // What is below the head is below chin and shoulders too, and passes nothing.
        private Lies over(Moving one, BodyOutline.Part head) {
            Lies lies = against(one, head, Way.OVER);
            return time -> {
                double above = lies.ahead(time);
                return above > Pass.TOUCHING ? above : Double.NaN;
            };
        }

        private Lies against(Moving one, BodyOutline.Part part, Way way) {
            BodyOutline.Slab upright = body.slab(part);
            // Of the head alone, which is a ball, there is a view from above.
            BodyOutline.Slab slab =
                    way == Way.BEFORE
                            ? upright
                            : new BodyOutline.Slab(
                                    part,
                                    upright.half(),
                                    upright.z(),
                                    upright.z(),
                                    upright.low(),
                                    upright.thick());
            double[] ends = new double[12];
            return time -> {
                one.line.at(time, ends, 0);
                if (way == Way.OVER) {
                    fromAbove(ends);
                }
                return ahead(slab, ends);
            };
        }

        // At the middle of what overlaps, how far before the middle of the body.
        private static double ahead(BodyOutline.Slab slab, double[] e) {
            double z = slab.z();
            if (slab.distance(e[0], e[1], z, e[3], e[4], z) >= 0) {
                return Double.NaN;
            }
            Inside inside =
                    s -> slab.distance(e[0] + s * (e[3] - e[0]), e[1] + s * (e[4] - e[1]), z);
            double within = Lowest.within(inside::at, 0, 1, NARROWED).at();
            double middle = (edge(inside, within, 0) + edge(inside, within, 1)) / 2;
            return e[2] + middle * (e[5] - e[2]) - z;
        }

        private interface Inside {
            double at(double share);
        }

        private static double edge(Inside inside, double within, double end) {
            if (inside.at(end) < 0) {
                return end;
            }
            double in = within;
            double out = end;
            for (int i = 0; i < HALVINGS; i++) {
                double half = (in + out) / 2;
                if (inside.at(half) < 0) {
                    in = half;
                } else {
                    out = half;
                }
            }
            return in;
        }

        // As seen from above, y is what is nearer: (x, y, z) becomes (x, z, y).
        private static void fromAbove(double[] ends) {
            for (int i = 0; i < ends.length; i += 3) {
                double y = ends[i + 1];
                ends[i + 1] = ends[i + 2];
                ends[i + 2] = y;
            }
        }

        private void add(Thing one, Thing other, Way way, Lies lies, double thick) {
            int[] order = new int[samples.count()];
            boolean any = false;
            for (int i = 0; i < order.length; i++) {
                order[i] = order(lies.ahead(samples.time(i)));
                any |= order[i] != APART;
            }
            for (int which = -1; any && which <= 1; which++) {
                int held = which;
                for (Interval spell :
                        Spells.of(
                                trace,
                                samples,
                                i -> order[i] == held,
                                t -> order(lies.ahead(t)) == held)) {
                    double time = Nearness.within(trace, (spell.start() + spell.end()) / 2);
                    double by = Math.abs(lies.ahead(time)) - thick;
                    if (!Double.isNaN(by)) {
                        found.add(
                                held < 0
                                        ? new Pass(other, one, way, spell, time, by)
                                        : new Pass(one, other, way, spell, time, by));
                    }
                }
            }
        }

        private static final int APART = 2;

        private static int order(double ahead) {
            if (Double.isNaN(ahead)) {
                return APART;
            }
            return Math.abs(ahead) < Pass.TOUCHING ? 0 : ahead > 0 ? 1 : -1;
        }

        private static Kind kind(BodyOutline.Part part) {
            return switch (part) {
                case HEAD -> Kind.HEAD;
                case NECK -> Kind.NECK;
                case TRUNK -> Kind.TRUNK;
                case LEGS -> Kind.LEGS;
            };
        }

        private static void put(Vector3D p, double[] into, int from) {
            into[from] = p.getX();
            into[from + 1] = p.getY();
            into[from + 2] = p.getZ();
        }
    }
}

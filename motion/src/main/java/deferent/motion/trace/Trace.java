package deferent.motion.trace;

import deferent.motion.pairing.Jet;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.shared.Side;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Both hands and both heads over an interval of time. An ideal trace covers one common cycle of its
 * pairing and is periodic; other origins may be neither, and may hold slack stretches and gaps.
 *
 * <p>Immutable and safe to share between threads; the sampled arrays are made once a count.
 */
public final class Trace {
    /** Even times that show a cycle of up to twelve turns. */
    public static final int USUAL_SAMPLES = 720;

    private final Pairing pairing;
    private final Origin origin;
    private final Interval interval;
    private final boolean periodic;
    private final Map<Side, Course> hands;
    private final Map<Side, Course> heads;
    private final List<TimedBreak> breaks;
    private final Map<Side, List<Interval>> slack;
    private final List<Interval> gaps;
    private final double uncertainty;
    private final Heading heading;
    private final Map<BodyAxis, Trace> aroundBody = new ConcurrentHashMap<>();
    private final Map<Integer, Samples> samples = new ConcurrentHashMap<>();

    /** With the body turned as the pairing has it. */
    public Trace(
            Pairing pairing,
            Origin origin,
            Interval interval,
            boolean periodic,
            Map<Side, Course> hands,
            Map<Side, Course> heads,
            List<TimedBreak> breaks,
            Map<Side, List<Interval>> slack,
            List<Interval> gaps,
            double uncertainty) {
        this(
                pairing,
                origin,
                interval,
                periodic,
                hands,
                heads,
                breaks,
                slack,
                gaps,
                uncertainty,
                Heading.of(pairing.facing(), pairing.period()));
    }

    /**
     * @param pairing what is traced
     * @param origin where the courses come from
     * @param interval the time they cover, seconds
     * @param periodic whether the end joins the start
     * @param hands a course a side
     * @param heads a course a side
     * @param breaks by time
     * @param slack stretches a side in which its cord does not pull
     * @param gaps stretches without data
     * @param uncertainty standard deviation of positions, metres; 0 where they are exact
     * @param heading how the performer faces
     */
    public Trace(
            Pairing pairing,
            Origin origin,
            Interval interval,
            boolean periodic,
            Map<Side, Course> hands,
            Map<Side, Course> heads,
            List<TimedBreak> breaks,
            Map<Side, List<Interval>> slack,
            List<Interval> gaps,
            double uncertainty,
            Heading heading) {
        this.pairing = pairing;
        this.origin = origin;
        this.interval = interval;
        this.periodic = periodic;
        this.hands = new EnumMap<>(hands);
        this.heads = new EnumMap<>(heads);
        this.breaks = List.copyOf(breaks);
        this.slack = slack.isEmpty() ? Map.of() : new EnumMap<>(slack);
        this.gaps = List.copyOf(gaps);
        this.uncertainty = uncertainty;
        this.heading = heading;
    }

    /** The ideal trace of a pairing over one common cycle, from closed forms. */
    public static Trace of(Pairing pairing) {
        return Ideal.trace(pairing);
    }

    /**
     * The same over the first of a side's own cycles, of which the common one may hold many: all
     * there is to that side's motion. A rider's is as long as the common one, since the other hand
     * leads it.
     */
    public Trace ownCycle(Side side) {
        Part part = pairing.part(side);
        boolean shortened = period() < pairing.period() * (1 - 1e-9);
        if (origin != Origin.IDEAL || shortened || part.cycles() == 1 || part.motion().riding()) {
            return this;
        }
        double end = interval.start() + period() / part.cycles();
        return new Trace(
                pairing,
                origin,
                new Interval(interval.start(), end),
                periodic,
                hands,
                heads,
                breaks.stream().filter(b -> b.time() < end - 1e-9 * period()).toList(),
                slack,
                gaps,
                uncertainty,
                heading);
    }

    public Pairing pairing() {
        return pairing;
    }

    public Origin origin() {
        return origin;
    }

    public Interval interval() {
        return interval;
    }

    /** Seconds from start to end; of a periodic trace, the common cycle. */
    public double period() {
        return interval.length();
    }

    public boolean periodic() {
        return periodic;
    }

    public Course hand(Side side) {
        return course(hands, side);
    }

    public Course head(Side side) {
        return course(heads, side);
    }

    public List<TimedBreak> breaks() {
        return breaks;
    }

    public List<Interval> slack(Side side) {
        return slack.getOrDefault(side, List.of());
    }

    public List<Interval> gaps() {
        return gaps;
    }

    public double uncertainty() {
        return uncertainty;
    }

    /** Whether the performer ever faces anywhere but the audience. */
    public boolean turned() {
        return heading != Heading.AHEAD;
    }

    /**
     * How the performer faces at a time: the angle from the audience, radians, to the performer's
     * left above 0, with its derivatives by seconds.
     */
    public Jet heading(double time) {
        return heading.at(time);
    }

    /**
     * The same as the turning body has it: turned back about an upright axis, so that what follows
     * the body keeps still. Where nobody turns it is this trace.
     *
     * @param axis the body's
     */
    public Trace aroundBody(BodyAxis axis) {
        return turned()
                ? aroundBody.computeIfAbsent(axis, a -> turned(heading, a, -1, Heading.AHEAD))
                : this;
    }

    /**
     * The same with everything in it, the body too, turned about an upright axis.
     *
     * @param by how far, and as time goes on
     * @param axis what it turns about
     */
    public Trace turnedBy(Heading by, BodyAxis axis) {
        return by == Heading.AHEAD ? this : turned(by, axis, 1, heading.plus(by));
    }

    private Trace turned(Heading by, BodyAxis axis, int sign, Heading then) {
        Map<Side, Course> turnedHands = new EnumMap<>(Side.class);
        Map<Side, Course> turnedHeads = new EnumMap<>(Side.class);
        hands.forEach((side, c) -> turnedHands.put(side, new Turned(c, by, axis, sign)));
        heads.forEach((side, c) -> turnedHeads.put(side, new Turned(c, by, axis, sign)));
        return new Trace(
                pairing,
                origin,
                interval,
                periodic,
                turnedHands,
                turnedHeads,
                breaks,
                slack,
                gaps,
                uncertainty,
                then);
    }

    /**
     * Positions at {@code count} evenly spaced times from the start; a periodic trace's end is left
     * out because it is the start again.
     */
    public Samples samples(int count) {
        return samples.computeIfAbsent(count, c -> Samples.of(this, c));
    }

    /**
     * The same at so many times that the fastest poi is seen sixty times a turn: {@value
     * #USUAL_SAMPLES}, or that times a power of two.
     */
    public Samples samples() {
        int turns =
                Math.max(
                        turnsOverAll(pairing.part(Side.LEFT)),
                        turnsOverAll(pairing.part(Side.RIGHT)));
        int count = USUAL_SAMPLES;
        while (count < 60 * turns) {
            count *= 2;
        }
        return samples(count);
    }

    private static int turnsOverAll(Part part) {
        return part.cycles() * Math.max(1, Math.abs(part.motion().spin().turns()));
    }

    private static Course course(Map<Side, Course> courses, Side side) {
        Course course = courses.get(side);
        if (course == null) {
            throw new IllegalStateException("the trace has no " + side.word() + " side");
        }
        return course;
    }
}

package deferent.record.fuzz;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Timing;
import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Course;
import deferent.motion.trace.Interval;
import deferent.motion.trace.State;
import deferent.reading.body.Performer;
import deferent.reading.danger.Level;
import deferent.reading.shared.LinkKind;
import deferent.reading.tether.Correction;
import deferent.reading.tether.KeepTheFigure;
import deferent.reading.tether.KeepTheHandPath;
import deferent.reading.tether.Kit;
import deferent.reading.tether.SlowestTempo;
import deferent.reading.tether.Steadiness;
import deferent.tell.Told;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;
import java.util.function.DoubleUnaryOperator;
import java.util.function.UnaryOperator;
import org.hipparchus.complex.Complex;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import tools.jackson.databind.node.ObjectNode;

/**
 * Answers in which one thing is false, each with the invariant that it breaks. Sentences are taken
 * from answers where they are true, so that an invariant that looks for words which are no longer
 * said is noticed too.
 */
final class Lies {
    /**
     * One lie.
     *
     * @param invariant that it breaks, by name
     * @param says what the invariant then says, or a part of it
     */
    record Lie(String invariant, String says, Whole honest, UnaryOperator<Whole> lie) {
        Whole told() {
            return lie.apply(honest);
        }

        @Override
        public String toString() {
            return "\"" + says + "\" of " + honest.asked();
        }
    }

    private static final Map<String, Whole> READ = new ConcurrentHashMap<>();

    /** What was read of one phrase, once. */
    private static Whole of(String phrase, Kit kit) {
        return READ.computeIfAbsent(
                phrase + kit,
                key ->
                        Whole.of(
                                new Asked(0, 0, phrase, kit, Performer.USUAL),
                                Phrase.parse(phrase).pairing()));
    }

    private static Whole of(String phrase) {
        return of(phrase, Kit.USUAL);
    }

    /** Followed by half a cycle; a split timing would close it; no motion behind a kept hand. */
    static Whole linked() {
        return of("isolation vs isolation");
    }

    /** No link, and a motion behind either kept hand. */
    private static Whole apart() {
        return of("extension vs extension");
    }

    private static Whole inAir() {
        return of("four-petal antispin vs static spin", Kit.USUAL.withAir(true));
    }

    static final List<Lie> ALL = all();

    private Lies() {}

    static List<Lie> about(String invariant) {
        return ALL.stream().filter(lie -> lie.invariant().equals(invariant)).toList();
    }

    /** The same answer with another JSON tree. */
    static Whole json(Whole whole, Consumer<ObjectNode> change) {
        return Falsified.at(
                whole,
                "json",
                tree -> {
                    ObjectNode copy = ((ObjectNode) tree).deepCopy();
                    change.accept(copy);
                    return copy;
                });
    }

    private static UnaryOperator<Whole> at(String path, UnaryOperator<Object> lie) {
        return whole -> Falsified.at(whole, path, lie);
    }

    private static UnaryOperator<Whole> put(String path, Object value) {
        return at(path, old -> value);
    }

    private static UnaryOperator<Whole> number(String path, DoubleUnaryOperator lie) {
        return at(path, old -> lie.applyAsDouble((Double) old));
    }

    private static UnaryOperator<Whole> more(String path, double by) {
        return number(path, old -> old + by);
    }

    private static UnaryOperator<Whole> times(String path, double by) {
        return number(path, old -> old * by);
    }

    private static UnaryOperator<Whole> said(String key, UnaryOperator<String> text) {
        return at(
                "told",
                told -> {
                    List<Object> all = new ArrayList<>();
                    for (Object one : (List<?>) told) {
                        Told old = (Told) one;
                        all.add(
                                old.key().equals(key)
                                        ? new Told(
                                                key, old.tone(), text.apply(old.text()), old.why())
                                        : old);
                    }
                    return List.copyOf(all);
                });
    }

    private static UnaryOperator<Whole> saidAsIn(Whole other, String key) {
        return said(key, old -> other.said(key).get(0).text());
    }

    private static UnaryOperator<Whole> and(UnaryOperator<Whole> a, UnaryOperator<Whole> b) {
        return whole -> b.apply(a.apply(whole));
    }

    private static List<Lie> all() {
        List<Lie> all = new ArrayList<>();
        words(all);
        links(all);
        body(all);
        dangers(all);
        cords(all);
        slowest(all);
        fits(all);
        twice(all);
        changed(all);
        return List.copyOf(all);
    }

    private static void words(List<Lie> all) {
        Whole linked = linked();
        String finite = "every number is finite";
        all.add(
                new Lie(
                        finite,
                        "links[].offset_m[] is NaN",
                        linked,
                        whole ->
                                json(
                                        whole,
                                        tree ->
                                                tree.withArray("links")
                                                        .get(1)
                                                        .withArray("offset_m")
                                                        .insert(2, Double.NaN))));
        all.add(
                new Lie(
                        finite,
                        "gapLeft is Infinity",
                        linked,
                        put("readings.advice.fit.answers.0.gapLeft", Double.POSITIVE_INFINITY)));
        String plain = "every sentence is words and plain numbers";
        for (String bad :
                List.of(
                        "NaN cm",
                        "1.8E308 m",
                        "null hands",
                        "2e-7 m",
                        "two  blanks",
                        "-0 m",
                        " ")) {
            all.add(new Lie(plain, bad, linked, said("figure.left", old -> bad)));
        }
        all.add(new Lie(plain, "Infinity", linked, put("told.0.why", "It is off by Infinity m.")));
        all.add(
                new Lie(
                        "no answer takes over two seconds of a processor",
                        "it took 2.01 s",
                        linked,
                        put("cpuSeconds", 2.01)));
        all.add(
                new Lie(
                        "a phrase written back is the same pairing",
                        "isolation",
                        linked,
                        at("pairing", old -> ((Pairing) old).with(Timing.QUARTER))));
        all.add(
                new Lie(
                        "the JSON says the sentences that the page says",
                        "another tale",
                        linked,
                        said("figure.left", old -> "another tale")));
    }

    private static void links(List<Lie> all) {
        String kind = "kind and numbers of a link agree";
        for (LinkKind other : LinkKind.values()) {
            if (other != LinkKind.FOLLOWED) {
                all.add(
                        new Lie(
                                kind,
                                other + " from the LEFT",
                                linked(),
                                put("readings.leftLeads.kind", other)));
            }
        }
        all.add(
                new Lie(
                        kind,
                        "FOLLOWED from the LEFT",
                        apart(),
                        put("readings.leftLeads.kind", LinkKind.FOLLOWED)));
        all.add(
                new Lie(
                        kind,
                        "NONE from the RIGHT",
                        inAir(),
                        put("readings.rightLeads.kind", LinkKind.NONE)));
        all.add(
                new Lie(
                        kind,
                        "in the plane",
                        linked(),
                        more("readings.leftLeads.inPlaneGap", 1e-3)));
        String line = "first line and kind of a link agree";
        all.add(
                new Lie(
                        line,
                        "FOLLOWED is said \"No link",
                        linked(),
                        saidAsIn(apart(), "link.left")));
        all.add(
                new Lie(
                        line,
                        "NONE is said \"Linked, followed",
                        apart(),
                        saidAsIn(linked(), "link.left")));
        all.add(new Lie(line, "has the tone WARN", linked(), put("told.1.tone", Told.Tone.WARN)));
        all.add(
                new Lie(
                        line,
                        "of a hand that strays by",
                        linked(),
                        and(
                                put("readings.leftLeads.kind", LinkKind.CARRIED),
                                said(
                                        "link.left",
                                        old -> "Linked, carried: it goes exactly as that goes."))));
        all.add(new Lie(line, "a gap of 0.0000", apart(), put("readings.leftLeads.shapeGap", 0.0)));
        all.add(
                new Lie(
                        "a link that touches in split time does",
                        "in split time they are",
                        apart(),
                        saidAsIn(linked(), "link.left")));
        String order = "the gaps of a link stand in order";
        String left = "readings.leftLeads.";
        all.add(new Lie(order, "in the plane", linked(), more(left + "inPlaneGap", 1)));
        all.add(new Lie(order, "depth", linked(), more(left + "depthGap", 1)));
        all.add(new Lie(order, "its parts", linked(), more(left + "placedGap", 1)));
        all.add(
                new Lie(
                        order,
                        "mean offset",
                        linked(),
                        put(left + "offset", new Vector3D(3, 0, 0))));
        all.add(new Lie(order, "clock", linked(), more(left + "clockGap", 1)));
        all.add(new Lie(order, "at least", linked(), more(left + "shapeGapAtLeast", 1)));
        all.add(new Lie(order, "below 0", linked(), put(left + "shapeGapError", -1e-3)));
        all.add(new Lie(order, "lag 0.5", linked(), put(left + "lag", 0.5)));
        String shape = "the shape gap is no more than the placed one";
        all.add(new Lie(shape, "shape", linked(), more(left + "shapeGap", 1)));
        all.add(new Lie(shape, "at least", linked(), more(left + "shapeGapAtLeast", 1)));
        String over = "the gap over the cycle has its greatest where the link says";
        all.add(new Lie(over, "greatest", inAir(), more("readings.leftLeads.inPlaneGap", 0.01)));
        all.add(
                new Lie(
                        over,
                        "worst at sample",
                        of("linear extension vs static spin turns 2"),
                        more("readings.leftLeads.worstTime", 0.1)));
    }

    private static void dangers(List<Lie> all) {
        Whole fast = of("static spin vs triquetra, tempo 180");
        String dangers = "readings.dangers.";
        String levels = "a level is the table's for the heads that are spun";
        all.add(new Lie(levels, "level=CARE", fast, put(dangers + "all.0.level", Level.CARE)));
        all.add(new Lie(levels, "limit=1.0", fast, put(dangers + "all.0.limit", 1.0)));
        all.add(
                new Lie(
                        levels,
                        "heads=FIRE",
                        fast,
                        put("asked.kit", Kit.USUAL.withHeads(Kit.Heads.FIRE))));
        String complete = "no force, speed or nearness beyond its limit is left out";
        all.add(
                new Lie(
                        complete,
                        "HEAD_SPEED of the RIGHT",
                        fast,
                        put(dangers + "all", List.of())));
        all.add(
                new Lie(
                        complete,
                        "PULL of the RIGHT",
                        fast,
                        times("readings.rightCord.pull.handForce", 2)));
        all.add(
                new Lie(
                        complete,
                        "BODY of the LEFT",
                        fast,
                        put("readings.room.left.tetherToBody.distance", -0.1)));
        all.add(new Lie(complete, "GRIP told", fast, more(dangers + "all.0.value", 0.1)));
        all.add(
                new Lie(
                        "a level is gone at the tempo at which it is said to end",
                        "and there DANGER",
                        fast,
                        put(dangers + "all.0.end.value", 170.0)));
        String first = "the first sentence begins with danger exactly where there is one";
        all.add(new Lie(first, "It links", fast, said("first", old -> "It links.")));
        all.add(new Lie(first, "false", linked(), said("first", old -> "Danger: " + old)));
    }

    private static void body(List<Lie> all) {
        String cords = "a cord is no further from anything than its ends are";
        String room = "readings.room.";
        Whole whole = apart();
        all.add(new Lie(cords, "heads", whole, more(room + "tetherToTether.distance", 9)));
        all.add(new Lie(cords, "hands", whole, more("readings.reach.hands.distance", -9)));
        all.add(
                new Lie(
                        cords,
                        "head to hand",
                        whole,
                        more(room + "right.headToOtherHand.distance", -9)));
        all.add(
                new Lie(
                        cords,
                        "from the body",
                        whole,
                        more(room + "left.headToBody.distance", -9)));
        all.add(
                new Lie(
                        cords,
                        "from the body",
                        whole,
                        more(room + "left.handToBody.distance", -9)));
        String passes = "what passes is apart, and cords pass as the room has them cross";
        Whole crossing = of("isolation vs isolation, opposites");
        all.add(
                new Lie(
                        passes,
                        "passes within",
                        crossing,
                        put("readings.advice.passes.all.2.by", -0.1)));
        all.add(
                new Lie(
                        passes,
                        "the room has",
                        crossing,
                        put("readings.advice.passes.all", List.of())));
        String reach = "a hand is everywhere in reach exactly where it never misses";
        all.add(
                new Lie(
                        reach,
                        "everywhere false, missing []",
                        whole,
                        put("readings.reach.left.missing", List.of())));
        all.add(
                new Lie(
                        reach,
                        "everywhere true",
                        linked(),
                        put("readings.reach.right.missing", List.of(new Interval(0, 0.1)))));
        all.add(new Lie(reach, "nearest", whole, more("readings.reach.left.nearest", 9)));
        String trunk = "a turned trunk leaves no arm shorter, and turns only for one too short";
        String turn = "readings.reach.trunk.greatest";
        Whole inReach = of("static spin vs static spin");
        all.add(new Lie(trunk, "too far straight", whole, more("readings.reach.trunk.tooFar", 9)));
        all.add(new Lie(trunk, "with nothing too far", inReach, more(turn, 0.5)));
        all.add(new Lie(trunk, "turned by 9", inReach, more(turn, 9)));
        String bend = "a body bends only where turning falls short, and then reaches no less";
        all.add(new Lie(bend, "though turned", whole, put("readings.reach.trunk.tooFar", 0.0)));
        all.add(
                new Lie(
                        bend,
                        "nothing bent",
                        whole,
                        put("readings.reach.bend.posture.forward", -0.01)));
        all.add(new Lie(bend, "still too far", whole, more("readings.reach.bend.trunk.tooFar", 9)));
        all.add(new Lie(bend, "turned by", whole, more("readings.reach.bend.trunk.greatest", 9)));
        String figure = "a figure fits in its own outer radius and is as long as its extent asks";
        String drawn = "readings.left.figure.";
        all.add(new Lie(figure, "below 0", whole, put(drawn + "unionArea", -1.0)));
        all.add(new Lie(figure, "Figure", whole, times(drawn + "outerRadius", 0.9)));
        all.add(new Lie(figure, "Figure", whole, times(drawn + "length", 0.6)));
    }

    private static void cords(List<Lie> all) {
        Whole whole = apart();
        String pull = "readings.leftCord.pull.";
        String order = "the pull's numbers stand in order";
        all.add(new Lie(order, "mean", whole, times(pull + "mean", 2)));
        all.add(new Lie(order, "mean", whole, times(pull + "mean", 0.5)));
        all.add(
                new Lie(
                        order,
                        "a sample",
                        whole,
                        at(
                                pull + "newtons",
                                old -> {
                                    double[] copy = ((double[]) old).clone();
                                    copy[17] *= 3;
                                    return copy;
                                })));
        all.add(new Lie(order, "Pull", whole, put(pull + "sideways", -1.0)));
        String slack = "a cord is told slack exactly where it would have to push";
        all.add(new Lie(slack, "least -1", whole, put(pull + "least", -1.0)));
        all.add(new Lie(slack, "least", whole, put(pull + "slack", List.of(new Interval(0, 0.1)))));
        Whole slow = of("isolation vs isolation, tempo 40");
        all.add(new Lie(slack, "slack", whole, saidAsIn(slow, "pull.left")));
        all.add(
                new Lie(
                        slack,
                        "the JSON and the reading",
                        slow,
                        lying ->
                                json(
                                        lying,
                                        tree ->
                                                tree.withObject("pull")
                                                        .withObject("left")
                                                        .withArray("slack")
                                                        .removeAll())));
        String energy = "hand and gravity give what the head's energy rises by";
        all.add(new Lie(energy, "hand's work", whole, times(pull + "handWork", 1.1)));
        all.add(new Lie(energy, "gravity's work", whole, times(pull + "gravityWork", 1.1)));
        String length = "a cord is as long as its tether at every instant";
        all.add(
                new Lie(
                        length,
                        "ideal",
                        whole,
                        at(
                                "pairing",
                                old -> {
                                    Pairing p = (Pairing) old;
                                    return new Pairing(
                                            p.left().with(Tether.of(0.61)),
                                            p.right(),
                                            p.timing(),
                                            p.direction(),
                                            p.sense(),
                                            p.tempoSaid());
                                })));
        all.add(
                new Lie(
                        length,
                        "figure kept",
                        whole,
                        at("readings.leftCord.figureKept.hand", Lies::aside)));
        all.add(
                new Lie(
                        length,
                        "hand path kept",
                        whole,
                        at("readings.leftCord.handPathKept.solutions.0.head", Lies::aside)));
        String pulls = "a hand that keeps the figure pulls at every instant";
        all.add(
                new Lie(
                        pulls,
                        "slack",
                        whole,
                        at(
                                "readings.leftCord.figureKept",
                                old -> {
                                    KeepTheFigure kept = (KeepTheFigure) old;
                                    Course beyond = t -> beyond(kept, t);
                                    return Falsified.at(kept, "hand", hand -> beyond);
                                })));
        all.add(
                new Lie(
                        pulls,
                        "least pull",
                        whole,
                        put("readings.leftCord.figureKept.leastPull", -1.0)));
        String falls = "a pull that a kept figure loses is told as a free fall";
        all.add(
                new Lie(
                        falls,
                        "free falls []",
                        whole,
                        put("readings.leftCord.figureKept.leastPull", 1e-6)));
        all.add(
                new Lie(
                        falls,
                        "FreeFall",
                        whole,
                        put(
                                "readings.leftCord.figureKept.freeFalls",
                                List.of(new KeepTheFigure.FreeFall(0.1, 0)))));
        String closest = "a closest figure's hand goes as is said of it";
        Whole near = linked();
        String drawn = "readings.leftCord.closestFigure.";
        all.add(new Lie(closest, "closest", near, at(drawn + "hand", Lies::aside)));
        all.add(new Lie(closest, "hand's speed", near, times(drawn + "handSpeed", 0.99)));
        all.add(
                new Lie(
                        closest,
                        "hand's acceleration",
                        near,
                        times(drawn + "handAcceleration", 0.99)));
        all.add(new Lie(closest, "departs", near, put(drawn + "figure.greatest", 1e-9)));
        all.add(new Lie(closest, "bounds kept?", near, times(drawn + "handSpeed", 9)));
        String slips = "without air no slip dies";
        String steadiness = "readings.leftCord.figureSteadiness.";
        all.add(
                new Lie(
                        slips,
                        "steadies itself",
                        whole,
                        put(steadiness + "verdict", Steadiness.Verdict.STEADIES)));
        UnaryOperator<Object> greater =
                old -> {
                    List<Complex> more = new ArrayList<>();
                    ((List<?>) old).forEach(one -> more.add(((Complex) one).multiply(1.1)));
                    return more;
                };
        all.add(new Lie(slips, "multipliers", whole, at(steadiness + "multipliers", greater)));
        all.add(
                new Lie(
                        slips,
                        "in air slips grow",
                        inAir(),
                        at(
                                steadiness + "multipliers",
                                old -> List.of(new Complex(3), new Complex(3)))));
        String held = "what a correction holds comes back";
        String correction = "readings.leftCord.correction.";
        Whole flower = of("triquetra vs static spin");
        all.add(new Lie(held, "m comes back", flower, put(correction + "recovers", 0.0)));
        all.add(new Lie(held, "held up to", flower, put(correction + "longest", 0.1)));
        all.add(
                new Lie(
                        held,
                        "a stroke holds",
                        flower,
                        put(correction + "once", new Correction.Once(0.1, 1.2, true))));
    }

    private static Object aside(Object course) {
        Course old = (Course) course;
        return (Course)
                t -> {
                    State state = old.at(t);
                    return new State(
                            state.position().add(new Vector3D(0, 0, 0.03)),
                            state.velocity(),
                            state.acceleration(),
                            state.jerk());
                };
    }

    /** The hand on the other side of its head, from where a cord would have to push. */
    private static State beyond(KeepTheFigure kept, double t) {
        State hand = kept.hand().at(t);
        State head = kept.head().at(t);
        return new State(
                head.position().scalarMultiply(2).subtract(hand.position()),
                head.velocity().scalarMultiply(2).subtract(hand.velocity()),
                head.acceleration().scalarMultiply(2).subtract(hand.acceleration()),
                head.jerk().scalarMultiply(2).subtract(hand.jerk()));
    }

    private static void slowest(List<Lie> all) {
        Whole whole = apart();
        String works = "at a tempo no slower than the slowest, it works";
        String cord = "readings.leftCord.";
        all.add(new Lie(works, "the least pull is", whole, put(cord + "pull.least", -1.0)));
        all.add(
                new Lie(
                        works,
                        "free falls",
                        whole,
                        put(
                                cord + "figureKept.freeFalls",
                                List.of(new KeepTheFigure.FreeFall(0.1, 0)))));
        all.add(new Lie(works, "turns", whole, put(cord + "figureKept.turns", 0)));
        all.add(
                new Lie(
                        works,
                        "but no motion there",
                        whole,
                        put(cord + "handPathKept.solutions", List.of())));
        all.add(
                new Lie(
                        works,
                        "no tempo, but a motion",
                        whole,
                        put(cord + "slowest.handPathKept.reason", SlowestTempo.Reason.NEVER)));
        Whole any = of("extension floor vs isolation");
        all.add(
                new Lie(
                        "any tempo never stands beside no steady motion",
                        "beside",
                        linked(),
                        saidAsIn(any, "slowest.left")));
        KeepTheHandPath.Solution found =
                whole.readings()
                        .leftCord()
                        .handPathKept()
                        .reading()
                        .orElseThrow()
                        .best()
                        .orElseThrow();
        all.add(
                new Lie(
                        "slower than the slowest tempo of a kept hand path there is no motion",
                        "but a motion at 60",
                        linked(),
                        put(cord + "handPathKept.solutions", List.of(found))));
    }

    private static void fits(List<Lie> all) {
        String fit = "readings.advice.fit.";
        String anew = "a fit's gap is the gap of the pairing it gives";
        all.add(new Lie(anew, "PLACED gap", linked(), more(fit + "answers.0.gapLeft", 1e-6)));
        all.add(
                new Lie(
                        anew,
                        "PLACED gap",
                        linked(),
                        at(
                                fit + "answers.0.pairing",
                                old -> ((Pairing) old).with(Timing.QUARTER))));
        Whole shape = of("triquetra vs 5-petal antispin, tempo 60");
        all.add(new Lie(anew, "SHAPE gap", shape, more(fit + "nearest.gapLeft", 1e-6)));
        String closes = "a fit closes where it leaves no gap, and nowhere else";
        all.add(new Lie(closes, "leaves 0.001", linked(), put(fit + "answers.0.gapLeft", 1e-3)));
        all.add(new Lie(closes, "leaves but 0.0009", shape, put(fit + "nearest.gapLeft", 9e-4)));
    }

    private static void twice(List<Lie> all) {
        Whole whole = apart();
        String heavier = "a heavier head pulls more newtons and the same weights";
        all.add(
                new Lie(
                        heavier,
                        "LEFT least",
                        whole,
                        times("readings.leftCord.pull.least", 1.001)));
        all.add(
                new Lie(
                        heavier,
                        "RIGHT greatest",
                        whole,
                        times("readings.rightCord.pull.greatest", 1.001)));
        String live = "what is read while dragging is what is read at rest, where it is exact";
        for (String path :
                List.of(
                        "leftLeads.placedGap:LEFT placed gap",
                        "leftLeads.inPlaneGap:LEFT gap in the plane",
                        "rightLeads.depthGap:RIGHT depth gap",
                        "leftCord.pull.least:LEFT pull",
                        "rightCord.pull.greatest:RIGHT pull",
                        "left.figure.width:LEFT width",
                        "left.figure.height:LEFT height",
                        "right.figure.length:RIGHT length",
                        "room.headToHead.distance:room differs",
                        "reach.hands.distance:reach differs")) {
            String[] parts = path.split(":");
            all.add(new Lie(live, parts[1], whole, times("live." + parts[0], 1.1)));
        }
        String slowest = "the slowest tempo does not depend on the tempo asked at";
        for (String path : List.of("ideal:ideal", "figureKept:figure kept")) {
            String[] parts = path.split(":");
            all.add(
                    new Lie(
                            slowest,
                            "LEFT " + parts[1],
                            whole,
                            at(
                                    "readings.leftCord.slowest." + parts[0] + ".tempo",
                                    old ->
                                            OptionalDouble.of(
                                                    1.001
                                                            * ((OptionalDouble) old)
                                                                    .getAsDouble()))));
        }
        all.add(
                new Lie(
                        slowest,
                        "RIGHT ideal",
                        whole,
                        put(
                                "readings.rightCord.slowest.ideal.reason",
                                SlowestTempo.Reason.VANISHES)));
        all.add(
                new Lie(
                        "read twice, it is the same to the last letter",
                        "two readings differ",
                        whole,
                        lying -> json(lying, tree -> tree.put("tempo", 1))));
    }

    private static void changed(List<Lie> all) {
        Whole whole = apart();
        for (Invariant invariant : ChangedInvariants.ALL) {
            String name = invariant.name();
            if (name.contains("kept figure")) {
                String cord = "readings.leftCord.";
                String figure = "LEFT figure kept, ";
                all.add(
                        new Lie(
                                name,
                                figure + "least",
                                whole,
                                times(cord + "figureKept.leastPull", 1.01)));
                all.add(
                        new Lie(
                                name,
                                figure + "possible",
                                whole,
                                put(
                                        cord + "figureKept.freeFalls",
                                        List.of(new KeepTheFigure.FreeFall(0.1, 0)))));
                all.add(
                        new Lie(
                                name,
                                figure + "gets round",
                                whole,
                                put(cord + "figureKept.turns", 0)));
                all.add(
                        new Lie(
                                name,
                                figure + "growth",
                                whole,
                                times(cord + "figureSteadiness.growth", 1.05)));
                for (String number : List.of("leastPull", "greatestPull", "growth")) {
                    all.add(
                            new Lie(
                                    name,
                                    "LEFT hand path kept: ",
                                    whole,
                                    times(cord + "handPathKept.solutions.0." + number, 1.05)));
                }
                continue;
            }
            for (String path :
                    List.of(
                            "leftCord.pull.least:LEFT least pull",
                            "rightCord.pull.greatest:RIGHT greatest pull",
                            "leftCord.pull.mean:LEFT mean pull",
                            "rightCord.pull.headSpeed:RIGHT speed",
                            "left.figure.width:LEFT width",
                            "right.figure.height:RIGHT height",
                            "left.figure.length:LEFT length",
                            "right.figure.outerRadius:RIGHT outer radius",
                            "leftLeads.placedGap:LEFT placed gap")) {
                String[] parts = path.split(":");
                all.add(new Lie(name, parts[1], whole, times("live." + parts[0], 1.05)));
            }
            all.add(new Lie(name, "RIGHT petals", whole, put("live.right.figure.petals", 3)));
            if (!name.contains("lengths")) {
                all.add(
                        new Lie(
                                name,
                                "LEFT gap in the plane",
                                whole,
                                times("live.leftLeads.inPlaneGap", 1.05)));
                all.add(
                        new Lie(
                                name,
                                "RIGHT depth gap",
                                whole,
                                more("live.rightLeads.depthGap", 0.05)));
                all.add(
                        new Lie(
                                name,
                                "LEFT mean offset",
                                whole,
                                put("live.leftLeads.offset", new Vector3D(1, 1, 1))));
            }
            if (name.contains("mirrored") || name.contains("swapped") || name.contains("turned")) {
                all.add(new Lie(name, "heads", whole, more("live.room.headToHead.distance", 0.01)));
                all.add(
                        new Lie(
                                name,
                                "cords",
                                whole,
                                more("live.room.tetherToTether.distance", 0.01)));
            }
            if (name.contains("mirrored")) {
                all.add(
                        new Lie(
                                name,
                                "LEFT farthest reach",
                                whole,
                                more("live.reach.left.farthest", 0.01)));
                all.add(
                        new Lie(
                                name,
                                "RIGHT cord to body",
                                whole,
                                more("live.room.right.tetherToBody.distance", 0.01)));
            }
        }
    }
}

package deferent.search.seek;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.pairing.Stretches;
import deferent.motion.shared.Side;
import java.util.List;
import java.util.Optional;

/**
 * What a person takes one motion of a space for, whatever its sizes, its start and its count of
 * petals: two motions of one kind are one thing to try. How far each is from what spinners practise
 * is common practice, no source.
 */
enum MotionKind {
    STATIC_SPIN(0, "static spin"),
    EXTENSION(0, "tether leaning outward"),
    ISOLATION(0, "tether pointing inward"),
    /** A linear extension among them. */
    CAT_EYE(0, "cat-eye"),
    TRIQUETRA(0, "triquetra"),
    ANTISPIN_FLOWER(1, "antispin flower"),
    IN_SPIN_FLOWER(1, "in-spin flower"),
    HALF_AND_HALF_FLOWER(2, "half-and-half flower"),
    PENDULUM(0, "pendulum"),
    /** On an arc, in stretches or riding a pendulum. */
    CAP(0, "CAP"),
    CAT_EYE_CAP(1, "cat-eye CAP"),
    STALL(2, "stall"),
    /** A linear isolation among them. */
    LINE(2, "hand on a line"),
    /** More often round its circle than once a cycle. */
    STAR(2, "hand round several times"),
    ONE_WAY(3, "tether pointing one way"),
    /** Gone over with even time. */
    ARC(3, "hand on an arc"),
    ELLIPSE(3, "hand on an ellipse"),
    UNEVEN_SPIN(3, "poi turning unevenly"),
    LOOP(6, "hand on a looped path");

    private final int strangeness;
    private final String words;

    MotionKind(int strangeness, String words) {
        this.strangeness = strangeness;
        this.words = words;
    }

    /** 0 for what every spinner practises; the higher, the further from it. */
    int strangeness() {
        return strangeness;
    }

    /** What it is called where the trade has no word for the very motion. */
    String words() {
        return words;
    }

    /**
     * What a hand does by itself goes beyond a circle, a line or an arc: it walks a figure that a
     * head draws with less.
     */
    boolean walksAFigure() {
        return this == ELLIPSE || this == LOOP;
    }

    static MotionKind of(Space space, long key) {
        HandShape hand = space.handShape(key);
        SpinLaw law = space.law(key);
        return switch (hand.kind()) {
            case STILL -> still(law);
            case CIRCLE -> hand.first() == 1 ? circling(law, space.startOf(key)) : STAR;
            case ELLIPSE -> hand.line() ? LINE : ELLIPSE;
            case LOOP -> LOOP;
            case ARC -> onAnArc(law);
            case PENDULUM_ARC -> riding(law);
        };
    }

    /** The same of a hand of any pairing; a path that no space has counts as {@link #LOOP}. */
    static MotionKind of(Pairing pairing, Side side) {
        Motion motion = pairing.part(side).motion();
        SpinLaw law = motion.spin();
        if (motion.riding()) {
            return riding(law);
        }
        if (motion.still()) {
            return still(law);
        }
        Optional<Series.Term> circle = motion.path().circle();
        if (circle.isPresent()) {
            return Math.abs(circle.get().k()) == 1
                    ? circling(law, law.starts().orElse(0) - circle.get().angle())
                    : STAR;
        }
        return switch (motion.path().noun()) {
            case "line" -> LINE;
            case "ellipse" -> ELLIPSE;
            case "arc" -> onAnArc(law);
            default -> LOOP;
        };
    }

    private static MotionKind onAnArc(SpinLaw law) {
        return law.turns() == 0 && law.inStretches().isEmpty() ? ARC : CAP;
    }

    private static MotionKind riding(SpinLaw law) {
        return switch (law.turns()) {
            case 0 -> ARC;
            case -1, 1 -> CAT_EYE_CAP;
            default -> CAP;
        };
    }

    private static MotionKind still(SpinLaw law) {
        return law.match(
                even -> STATIC_SPIN,
                s ->
                        s.stretches().get(0).turns() + s.stretches().get(1).turns() == 0
                                ? STALL
                                : UNEVEN_SPIN,
                swing -> PENDULUM);
    }

    private static MotionKind circling(SpinLaw law, double start) {
        if (law.inStretches().isPresent()) {
            List<Stretches.Stretch> both = law.inStretches().get().stretches();
            return both.stream().anyMatch(s -> s.turns() > 0)
                            && both.stream().anyMatch(s -> s.turns() < 0)
                    ? HALF_AND_HALF_FLOWER
                    : UNEVEN_SPIN;
        }
        return switch (law.turns()) {
            case 1 ->
                    Math.abs(Math.IEEEremainder(start, 2 * Math.PI)) <= Math.PI / 2
                            ? EXTENSION
                            : ISOLATION;
            case 0 -> ONE_WAY;
            case -1 -> CAT_EYE;
            case -2 -> TRIQUETRA;
            default -> law.turns() > 0 ? IN_SPIN_FLOWER : ANTISPIN_FLOWER;
        };
    }
}

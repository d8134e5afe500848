package deferent.motion.phrase;

import static deferent.motion.phrase.Word.*;

import deferent.motion.pairing.Arc;
import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Polygon;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Riding;
import deferent.motion.pairing.Series;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.pairing.Stretches;
import deferent.motion.pairing.Stretches.Ease;
import deferent.motion.pairing.Stretches.Stretch;
import deferent.motion.pairing.Swing;
import deferent.motion.pairing.Tilt;
import deferent.motion.pairing.Turns;
import java.util.List;
import java.util.Optional;

/**
 * One hand's motion from its words: each trade word is a hand path and a spin law, with the sizes
 * said, and for those unsaid the trade's usual ones for this tether.
 *
 * <p>With n poi turns to a hand turn a flower has |n − 1| petals, so p petals are n = 1 + p in-spin
 * and n = 1 − p antispin.
 */
final class Making {
    private static final int USUAL_PETALS = 4;
    private static final double QUARTER_TURN = Math.PI / 2;

    private final Said said;
    private final Sizes sizes;
    private final double tether;
    private final boolean mirrored;

    /**
     * @param tether metres
     * @param mirrored whether the motion is mirrored before it is placed, which turns a tilt as
     *     placed round
     */
    Making(Said said, double tether, boolean mirrored) {
        this.said = said;
        this.sizes = new Sizes(said.remarks());
        this.tether = tether;
        this.mirrored = mirrored;
    }

    Motion motion() {
        Motion motion = said.own().map(this::own).orElseGet(this::trade);
        if (sizes.has(TILT) || sizes.has(VERTICAL)) {
            double tilt = sizes.angle(TILT, QUARTER_TURN);
            motion = Tilt.set(motion, mirrored ? 0.0 - tilt : tilt);
        }
        if (sizes.has(HAND_START) && !(motion.path() instanceof Polygon)) {
            motion = motion.turned(sizes.angle(HAND_START, 0));
        }
        if (sizes.has(RIDING)) {
            if (sizes.has(HAND_RADIUS)) {
                throw new Refusal(
                        "is said of a hand that rides",
                        "hand radius",
                        "leave it out: a rider's hand goes where the other head goes");
            }
            motion = motion.withPath(new Riding());
        }
        return motion;
    }

    private Motion own(Lexicon.Own own) {
        HandPath path = own.motion().path();
        double size = path.radius();
        double factor =
                sizes.has(HAND_RADIUS) && size > 0
                        ? radius(1) / size
                        : tether / own.tether().length();
        return factor == 1 || size == 0 ? own.motion() : own.motion().withPath(path.scaled(factor));
    }

    private Motion trade() {
        Word word = said.motion().orElse(FLOWER);
        return switch (word) {
            case STATIC_SPIN, POINT -> new Motion(Series.STILL, spin(1, 0));
            case EXTENSION -> Motion.flower(radius(1), 1, 0);
            case ISOLATION -> isolation();
            case CAT_EYE -> Motion.flower(radius(0.5), -1, sizes.angle(START, 0));
            case LINEAR_EXTENSION -> Motion.flower(tether, -1, sizes.angle(START, 0));
            case LINEAR_ISOLATION -> new Motion(Series.line(tether, 0), new Turns(1, Math.PI));
            case FLOWER, TOROID -> new Motion(circle(), spin(flowerTurns(1 - USUAL_PETALS), box()));
            case TRIQUETRA -> new Motion(circle(), spin(-2, box()));
            case HALF_AND_HALF -> new Motion(circle(), rested(halfAndHalf()));
            case PENDULUM -> new Motion(Series.STILL, swing());
            case CAP -> new Motion(arc(), spin(2, 0));
            case STALL -> new Motion(Series.STILL, stall());
            case CIRCLE -> new Motion(circle(), spin(flowerTurns(1), 0));
            case ELLIPSE -> new Motion(ellipse(), spin(1, 0));
            case LINE -> new Motion(Series.line(radius(1), 0), spin(1, 0));
            case ARC -> new Motion(arc(), spin(1, 0));
            case LOOPS -> new Motion(loops(), spin(1, 0));
            case POLYGON -> polygon(4);
            case TRIANGLE -> polygon(3);
            case SQUARE -> polygon(4);
            case PENTAGON -> polygon(5);
            case HEXAGON -> polygon(6);
            case OCTAGON -> polygon(8);
            default -> throw new IllegalStateException(word + " names no motion");
        };
    }

    private Motion isolation() {
        double radius = radius(0.5);
        if (!(radius < tether)) {
            throw new Refusal(
                    "of an isolation is " + Amounts.length(radius),
                    "hand radius",
                    "give less than its tether of " + Amounts.length(tether));
        }
        return Motion.flower(radius, 1, Math.PI);
    }

    private double radius(double tethers) {
        double radius = sizes.length(HAND_RADIUS, tether, tethers * tether);
        if (sizes.has(HAND_RADIUS)) {
            Refusal.positive(radius, 10, "hand radius", "m");
        }
        return radius;
    }

    private Series circle() {
        return Series.circle(radius(1));
    }

    private Arc arc() {
        return new Arc(
                radius(1), sizes.angle(MIDDLE, Swing.DOWN), sizes.angle(SWEEP, QUARTER_TURN));
    }

    private Series ellipse() {
        if (sizes.amount(AXES).orElse(null) instanceof Said.Pair axes) {
            double along = axes.along().metres(tether);
            double across = axes.across().metres(tether);
            for (double axis : new double[] {along, across}) {
                Refusal.within(axis, -10, 10, "half axis", "m");
            }
            return Series.ellipse(along, across, 0);
        }
        return Series.ellipse(tether, tether / 2, 0);
    }

    private Series loops() {
        return sizes.amount(LOOPS).orElse(null) instanceof Said.Sum sum
                ? new Series(sum.terms())
                : Series.STILL;
    }

    private Motion polygon(int corners) {
        return new Motion(
                new Polygon(sizes.whole(CORNERS, corners), radius(1), sizes.angle(HAND_START, 0)),
                spin(1, 0));
    }

    // Half a petal's turn of the figure is π of the poi's start, whatever the count.
    private double box() {
        return sizes.has(BOX) ? Math.PI : 0;
    }

    private int petals() {
        int petals = sizes.whole(PETALS, USUAL_PETALS);
        if (petals < 1 || petals > 25) {
            throw new Refusal("are " + petals, "petals", "give 1 to 25");
        }
        return petals;
    }

    private int flowerTurns(int unsaid) {
        if (sizes.has(TURNS)) {
            return sizes.amount(TURNS).orElse(null) instanceof Said.Count
                    ? ofItsSense(sizes.whole(TURNS, unsaid))
                    : unsaid;
        }
        if (!sizes.has(PETALS) && !sizes.has(IN_SPIN) && !sizes.has(ANTISPIN)) {
            return unsaid;
        }
        return sizes.has(IN_SPIN) ? 1 + petals() : 1 - petals();
    }

    private int ofItsSense(int turns) {
        if ((turns > 0 && sizes.has(ANTISPIN)) || (turns < 0 && sizes.has(IN_SPIN))) {
            throw new Refusal(
                    "are " + turns,
                    "poi turns",
                    "give them above 0 for in-spin and below 0 for antispin");
        }
        return turns;
    }

    private SpinLaw spin(int turns, double start) {
        double from = sizes.angle(START, start);
        if (sizes.has(SWINGING) || sizes.has(AMPLITUDE) || sizes.has(REST)) {
            return swing();
        }
        if (sizes.amount(STRETCHES).orElse(null) instanceof Said.InStretches said) {
            return rested(new Stretches(from, said.stretches()));
        }
        if (sizes.amount(TURNS).orElse(null) instanceof Said.OutAndBack ways) {
            return rested(outAndBack(from, ways));
        }
        boolean flower = sizes.has(PETALS) || sizes.has(IN_SPIN) || sizes.has(ANTISPIN);
        int n = flower ? turns : sizes.whole(TURNS, turns);
        return sizes.has(STALLING)
                ? new Stretches(from, List.of(new Stretch(1, n, Ease.RESTING)))
                : new Turns(n, from);
    }

    private Stretches outAndBack(double from, Said.OutAndBack ways) {
        if (said.motion().equals(Optional.of(CAP))
                && (Math.signum(ways.out()) * Math.signum(ways.back()) < 0
                        || ways.out() + ways.back() == 0)) {
            throw new Refusal(
                    "of a CAP are "
                            + Amounts.number(ways.out())
                            + " out and "
                            + Amounts.number(ways.back())
                            + " back",
                    "poi turns",
                    "keep the poi turning one way, both numbers of one sign");
        }
        return new Stretches(
                from,
                List.of(
                        new Stretch(0.5, ways.out(), Ease.EVEN),
                        new Stretch(0.5, ways.back(), Ease.EVEN)));
    }

    private Stretches halfAndHalf() {
        int p = petals();
        return new Stretches(
                sizes.angle(START, 0),
                List.of(
                        new Stretch(0.5, (1 + p) / 2.0, Ease.EVEN),
                        new Stretch(0.5, (1 - p) / 2.0, Ease.EVEN)));
    }

    private SpinLaw rested(Stretches law) {
        return sizes.has(STALLING)
                ? new Stretches(
                        law.start(),
                        law.stretches().stream()
                                .map(s -> new Stretch(s.share(), s.turns(), Ease.RESTING))
                                .toList())
                : law;
    }

    private Swing swing() {
        return new Swing(sizes.angle(AMPLITUDE, QUARTER_TURN), sizes.angle(REST, Swing.DOWN));
    }

    private Stretches stall() {
        double amplitude = sizes.angle(AMPLITUDE, QUARTER_TURN);
        Refusal.positive(amplitude, 2 * Math.PI, "amplitude of a stall", "rad");
        return new Stretches(
                sizes.angle(START, Swing.DOWN - amplitude),
                List.of(
                        new Stretch(0.5, amplitude / Math.PI, Ease.RESTING),
                        new Stretch(0.5, -(amplitude / Math.PI), Ease.RESTING)));
    }
}

package deferent.reading.danger;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Tether;
import deferent.motion.shared.Side;
import deferent.motion.trace.Samples;
import deferent.motion.trace.Trace;
import deferent.reading.body.Nearness;
import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import deferent.reading.tether.Pull;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.AllowedSolution;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * At which tempo, or at which size, a hazard is back at its limit: the same quantity is read again
 * at slower tempos, or of a smaller figure where a pendulum sets the tempo.
 *
 * <p>Positions are functions of the phase, so speeds go with the tempo and need no search. The
 * greatest force does not: it is that of m·(s²·a − g) at some instant, which is convex in s², and
 * at the slowest tempo the weight alone; where that is below the limit, there is one tempo between.
 */
final class Slower {
    static final List<Hazard> OF_THE_PULL =
            List.of(
                    Hazard.PULL,
                    Hazard.GRIP,
                    Hazard.SHOULDER,
                    Hazard.HEAD_SPEED,
                    Hazard.HEAD_ENERGY);

    /** The slowest tempo that a pairing takes, cycles a minute. */
    private static final double SLOWEST = 1;

    /** No figure is made smaller than that share of itself. */
    private static final double SMALLEST = 0.1;

    /** How exactly a tempo or a share is found, of itself, on the side where the level is gone. */
    private static final double EXACT = 1e-7;

    private final Pairing pairing;
    private final Kit kit;
    private final ShoulderForce shoulder;

    Slower(Pairing pairing, Performer performer, Kit kit) {
        this.pairing = pairing;
        this.kit = kit;
        this.shoulder = ShoulderForce.of(performer);
    }

    /** How much of it one cord's pull says there is. */
    double of(Hazard hazard, Pull pull) {
        return switch (hazard) {
            case PULL -> pull.handForce();
            case GRIP -> pull.mean();
            case SHOULDER -> shoulder.at(pull.handForce(), pull.handAcceleration());
            case HEAD_SPEED -> pull.headSpeed();
            case HEAD_ENERGY -> pull.energy();
            default -> throw new IllegalArgumentException(hazard + " is none of the pull's");
        };
    }

    DangerEnd end(Hazard hazard, Side side, double value, double limit) {
        return pairing.setsOwnTempo()
                ? size(share -> read(hazard, side, smaller(share)), limit)
                : switch (hazard) {
                    case HEAD_SPEED -> inStep(limit / value);
                    case HEAD_ENERGY -> inStep(Math.sqrt(limit / value));
                    default ->
                            found(
                                    DangerEnd.Kind.TEMPO,
                                    tempo -> read(hazard, side, at(tempo)),
                                    SLOWEST,
                                    pairing.tempo(),
                                    limit);
                };
    }

    /** What goes with the tempo itself. */
    private DangerEnd inStep(double share) {
        double tempo = pairing.tempo() * share * (1 - EXACT);
        return tempo < SLOWEST ? DangerEnd.NONE : new DangerEnd(DangerEnd.Kind.TEMPO, tempo);
    }

    private double read(Hazard hazard, Side side, Pairing changed) {
        return of(hazard, Pull.of(Trace.of(changed), side, kit));
    }

    DangerEnd turnsEnd(double turns, double limit) {
        return pairing.setsOwnTempo() ? DangerEnd.NONE : inStep(limit / turns);
    }

    DangerEnd audienceEnd(Side side, double limit) {
        double radius = kit.headDiameter() / 2;
        return size(share -> farthest(Trace.of(smaller(share)), side).distance() + radius, limit);
    }

    /** How far from the breastbone a head's centre comes, measured level, and when. */
    static Nearness farthest(Trace trace, Side side) {
        Samples samples = trace.samples();
        double[] head = samples.head(side);
        int best = 0;
        double most = 0;
        for (int i = 0; i < samples.count(); i++) {
            double far = Math.hypot(head[3 * i], head[3 * i + 2]);
            if (far > most) {
                most = far;
                best = i;
            }
        }
        return new Nearness(most, samples.time(best));
    }

    private Pairing at(double tempo) {
        return pairing.withTempo(OptionalDouble.of(tempo));
    }

    private Pairing smaller(double share) {
        return new Pairing(
                smaller(pairing.left(), share),
                smaller(pairing.right(), share),
                pairing.timing(),
                pairing.direction(),
                pairing.sense(),
                pairing.setsOwnTempo() ? OptionalDouble.empty() : pairing.tempoSaid(),
                pairing.facing());
    }

    private static Part smaller(Part part, double share) {
        Motion motion = part.motion();
        Motion smaller =
                motion.riding() || part.still()
                        ? motion
                        : motion.withPath(motion.path().resized(share * motion.path().radius()));
        return part.with(Tether.of(share * part.tether().length())).with(smaller);
    }

    private static DangerEnd size(DoubleUnaryOperator value, double limit) {
        return found(DangerEnd.Kind.SIZE, value, SMALLEST, 1, limit);
    }

    private static DangerEnd found(
            DangerEnd.Kind kind, DoubleUnaryOperator value, double from, double to, double limit) {
        DoubleUnaryOperator over = x -> value.applyAsDouble(x) - limit;
        if (from >= to || over.applyAsDouble(from) > 0) {
            return DangerEnd.NONE;
        }
        // Read with fewer samples it may have been a hair over what it is.
        return over.applyAsDouble(to) <= 0
                ? new DangerEnd(kind, to)
                : new DangerEnd(
                        kind,
                        new BracketingNthOrderBrentSolver(EXACT, EXACT, EXACT, 5)
                                .solve(
                                        200,
                                        over::applyAsDouble,
                                        from,
                                        to,
                                        AllowedSolution.BELOW_SIDE));
    }
}

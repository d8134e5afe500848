package deferent.record.fuzz;

import deferent.motion.pairing.Part;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.State;
import deferent.motion.trace.Trace;
import deferent.reading.closest.ClosestFigure;
import deferent.reading.tether.Cord;
import deferent.reading.tether.Correction;
import deferent.reading.tether.Drag;
import deferent.reading.tether.KeepTheFigure;
import deferent.reading.tether.KeepTheHandPath;
import deferent.reading.tether.Pull;
import deferent.reading.tether.SlowestTempo;
import deferent.reading.tether.Steadiness;
import deferent.reading.worked.CordReading;
import deferent.tell.Told;
import java.util.List;
import java.util.Optional;
import org.hipparchus.complex.Complex;

/** What holds of what a cord makes of a motion. */
final class CordInvariants {
    static final List<Invariant> ALL =
            List.of(
                    new Invariant(
                            "the pull's numbers stand in order",
                            "a mean lies between the least and the greatest, and so does every sample",
                            1,
                            each(CordInvariants::order)),
                    new Invariant(
                            "a cord is told slack exactly where it would have to push",
                            "a slack stretch is where the pull is below nothing",
                            1,
                            each(CordInvariants::slack)),
                    new Invariant(
                            "hand and gravity give what the head's energy rises by",
                            "power is the rate of energy: over a cycle the hand's giving adds up to"
                                    + " every rise of kinetic and potential energy together, and gravity's to"
                                    + " weight times every way down; said without air, and where no corner"
                                    + " takes an impulse",
                            1,
                            each(CordInvariants::energy)),
                    new Invariant(
                            "a cord is as long as its tether at every instant",
                            "it does not stretch, whatever is kept; to a hundredth where a cord with mass keeps"
                                    + " the figure, whose hand stands between points worked out one by one",
                            1,
                            each(CordInvariants::length)),
                    new Invariant(
                            "a hand that keeps the figure pulls at every instant",
                            "it stands where the cord pulls: of the two directions of the force the one"
                                    + " with a pull; said of a cord without mass",
                            1,
                            each(CordInvariants::keptFigurePulls)),
                    new Invariant(
                            "a pull that a kept figure loses is told as a free fall",
                            "where the least pull is below what counts as lost, the cord has no"
                                    + " direction; that instant is a free fall, and there is no other",
                            1,
                            each(CordInvariants::freeFalls)),
                    new Invariant(
                            "a closest figure's hand goes as is said of it",
                            "speed, acceleration and departure are the greatest over the cycle, so"
                                    + " none of it is past them, and bounds said to be kept are",
                            1,
                            each(CordInvariants::closest)),
                    new Invariant(
                            "without air no slip dies",
                            "a poi without friction is a Hamiltonian system: its multipliers come in"
                                    + " pairs of product 1, so all four multiply to 1 and the greatest is no"
                                    + " less than 1; a cord with mass that keeps the figure is left out: its"
                                    + " hand is only near the one that would, so that its cycle does not"
                                    + " quite close",
                            1,
                            each(CordInvariants::slips)),
                    new Invariant(
                            "what a correction holds comes back",
                            "held is what dies away at the reaction time and from where enough of a slip"
                                    + " comes back; then the longest delay is no shorter",
                            1,
                            each(CordInvariants::corrections)),
                    new Invariant(
                            "at a tempo no slower than the slowest, it works",
                            "the slowest tempo is the slowest at which it works, going down from the"
                                    + " fastest; of a kept hand path said in planes that are upright and stay"
                                    + " so, of a kept figure with a cord without mass, whose turning the"
                                    + " slowest tempo leaves out",
                            1,
                            each(CordInvariants::slowest)),
                    new Invariant(
                            "any tempo never stands beside no steady motion",
                            "what works at any tempo works at this one",
                            1,
                            each(CordInvariants::anyTempo)),
                    new Invariant(
                            "slower than the slowest tempo of a kept hand path there is no motion",
                            "just below the slowest none was found; said of planes that are upright and stay"
                                    + " so: out of them the slowest tempo is looked for from one start alone,"
                                    + " which may miss what many starts find",
                            1,
                            each(CordInvariants::belowSlowest)));

    /** Head weights below which a pull is lost for sure; about where it begins to be, either. */
    private static final double NEARLY = 0.5 * KeepTheFigure.LOST;

    private CordInvariants() {}

    private interface OfOne {
        void check(Whole whole, CordReading cord, Invariant.Broken broken);
    }

    private static Invariant.Check each(OfOne one) {
        return (whole, broken) ->
                Whole.ofEach(side -> one.check(whole, whole.readings().cord(side), broken));
    }

    private static void order(Whole whole, CordReading cord, Invariant.Broken broken) {
        Pull pull = Whole.out(cord.pull());
        double hair =
                2e-3 * (pull.greatest() - pull.least())
                        + 1e-7 * (Math.abs(pull.greatest()) + pull.headWeight());
        broken.when(
                pull.least() > pull.mean() + hair || pull.mean() > pull.greatest() + hair,
                "%s: least %.6g mean %.6g greatest %.6g",
                cord.side(),
                pull.least(),
                pull.mean(),
                pull.greatest());
        for (double one : pull.newtons()) {
            if (one < pull.least() - hair || one > pull.greatest() + hair) {
                broken.when(
                        true,
                        "%s: a sample %.6g outside %.6g to %.6g",
                        cord.side(),
                        one,
                        pull.least(),
                        pull.greatest());
                return;
            }
        }
        broken.when(pull.headSpeedLeast() > pull.headSpeed() || pull.sideways() < 0, "%s", pull);
    }

    private static void slack(Whole whole, CordReading cord, Invariant.Broken broken) {
        Pull pull = Whole.out(cord.pull());
        double weight = pull.headWeight();
        boolean pushes = pull.least() < 0;
        if (Math.abs(pull.least()) > 1e-6 * weight) {
            broken.when(
                    pushes == pull.slack().isEmpty(),
                    "%s: least %.3g N, slack %s",
                    cord.side(),
                    pull.least(),
                    pull.slack());
        }
        Told told = whole.said("pull." + cord.side().word()).get(0);
        broken.when(
                told.text().contains("slack") == pull.slack().isEmpty(),
                "\"%s\" of %s",
                told.text(),
                pull.slack());
        broken.when(
                whole.json().get("pull").get(cord.side().word()).get("slack").isEmpty()
                        != pull.slack().isEmpty(),
                "the JSON and the reading differ on slack");
    }

    private static void energy(Whole whole, CordReading cord, Invariant.Broken broken) {
        Trace trace = whole.readings().trace();
        Side side = cord.side();
        if (whole.asked().kit().air()
                || trace.breaks().stream().anyMatch(b -> b.side() == side && b.order() <= 1)) {
            return;
        }
        double mass = whole.asked().kit().headMass();
        double g = Cord.of(trace, side, whole.asked().kit()).gravity();
        int count = 7200;
        double rises = 0;
        double down = 0;
        double speedSquared = 0;
        State last = trace.head(side).at(trace.interval().start());
        for (int i = 1; i <= count; i++) {
            State now =
                    trace.head(side).before(trace.interval().start() + trace.period() * i / count);
            double fallen = last.position().getY() - now.position().getY();
            double gained =
                    mass * (now.velocity().getNormSq() - last.velocity().getNormSq()) / 2
                            - mass * g * fallen;
            rises += Math.max(gained, 0);
            down += Math.max(mass * g * fallen, 0);
            speedSquared = Math.max(speedSquared, now.velocity().getNormSq());
            last = now;
        }
        double scale = 1e-3 * mass * (speedSquared + g * 0.01);
        broken.unlessNear(
                side + " hand's work", Whole.out(cord.pull()).handWork(), rises, 2e-2, scale);
        broken.unlessNear(
                side + " gravity's work", Whole.out(cord.pull()).gravityWork(), down, 2e-2, scale);
    }

    private static void length(Whole whole, CordReading cord, Invariant.Broken broken) {
        Trace trace = whole.readings().trace();
        double length = whole.pairing().part(cord.side()).tether().length();
        asLong(
                broken,
                "ideal",
                trace,
                trace.hand(cord.side()),
                trace.head(cord.side()),
                length,
                false);
        cord.figureKept()
                .reading()
                .filter(KeepTheFigure::possible)
                .ifPresent(
                        l ->
                                asLong(
                                        broken,
                                        "figure kept",
                                        trace,
                                        l.hand(),
                                        l.head(),
                                        length,
                                        whole.asked().kit().cordMass() > 0));
        cord.handPathKept()
                .reading()
                .flatMap(KeepTheHandPath::best)
                .ifPresent(
                        s ->
                                asLong(
                                        broken,
                                        "hand path kept",
                                        trace,
                                        s.orbit().hand(),
                                        s.head(),
                                        length,
                                        false));
    }

    private static void asLong(
            Invariant.Broken broken,
            String what,
            Trace trace,
            Course hand,
            Course head,
            double length,
            boolean heavy) {
        double off = 0;
        for (int i = 0; i < 97; i++) {
            double t = trace.interval().start() + trace.period() * (i + 0.31) / 97;
            double here = head.at(t).position().distance(hand.at(t).position());
            off = Math.max(off, Math.abs(here - length));
        }
        double hair = heavy ? 1e-2 : 1e-7;
        broken.when(off > hair * length + 1e-12, "%s: %.3g m off %.6g m", what, off, length);
    }

    private static void keptFigurePulls(Whole whole, CordReading cord, Invariant.Broken broken) {
        if (whole.asked().kit().cordMass() > 0) {
            return;
        }
        cord.figureKept()
                .reading()
                .filter(KeepTheFigure::possible)
                .ifPresent(
                        figure -> {
                            Trace kept = figure.in(whole.readings().trace());
                            Pull pull = Pull.of(kept, cord.side(), figure.cord(), 120);
                            broken.when(
                                    !pull.slack().isEmpty()
                                            || pull.least() < -1e-9 * pull.headWeight(),
                                    "%s: least %.3g N, slack %s",
                                    cord.side(),
                                    pull.least(),
                                    pull.slack());
                            broken.when(
                                    figure.leastPull() < 0,
                                    "%s: least pull %.3g N",
                                    cord.side(),
                                    figure.leastPull());
                        });
    }

    private static void closest(Whole whole, CordReading cord, Invariant.Broken broken) {
        cord.closestFigure().reading().ifPresent(c -> closest(whole.readings().trace(), c, broken));
    }

    private static void closest(Trace trace, ClosestFigure closest, Invariant.Broken broken) {
        asLong(
                broken,
                "closest",
                trace,
                closest.hand(),
                closest.head(),
                closest.cord().length(),
                false);
        double speed = 0;
        double acceleration = 0;
        double off = 0;
        for (int i = 0; i < 397; i++) {
            double t = trace.interval().start() + trace.period() * (i + 0.31) / 397;
            State hand = closest.hand().at(t);
            speed = Math.max(speed, hand.velocity().getNorm());
            acceleration = Math.max(acceleration, hand.acceleration().getNorm());
            Course ideal = trace.head(closest.side());
            off = Math.max(off, closest.head().position(t).distance(ideal.position(t)));
        }
        double hair = 1 + 1e-3;
        // Where no bound is kept the hand may jerk between any two instants that were looked at.
        broken.when(
                closest.met() && speed > hair * closest.handSpeed() + 1e-9,
                "hand's speed %.6g m/s, said %.6g",
                speed,
                closest.handSpeed());
        broken.when(
                closest.met() && acceleration > hair * closest.handAcceleration() + 1e-9,
                "hand's acceleration %.6g m/s², said %.6g",
                acceleration,
                closest.handAcceleration());
        broken.when(
                off > hair * closest.figure().greatest() + 1e-6,
                "departs by %.6g m, said %.6g",
                off,
                closest.figure().greatest());
        broken.when(
                closest.met()
                        && (closest.handSpeed() > 1.01 * closest.limits().speed()
                                || closest.handAcceleration()
                                        > 1.01 * closest.limits().acceleration()),
                "bounds kept? %.6g m/s, %.6g m/s²",
                closest.handSpeed(),
                closest.handAcceleration());
    }

    private static void freeFalls(Whole whole, CordReading cord, Invariant.Broken broken) {
        cord.figureKept()
                .reading()
                .ifPresent(
                        figure ->
                                broken.when(
                                        figure.leastPullWeights() < KeepTheFigure.LOST
                                                == figure.freeFalls().isEmpty(),
                                        "%s: least pull %.3g weights, free falls %s",
                                        cord.side(),
                                        figure.leastPullWeights(),
                                        figure.freeFalls()));
    }

    /**
     * Whether a head stays below the drag crisis. Past a Reynolds number of 3.38e5 a sphere's drag
     * falls as it gets faster, and at 4e5 the standard curve jumps (Clift, Grace and Weber,
     * Bubbles, Drops and Particles, 1978): what grows is fed by it, and no step of time meets the
     * jump.
     */
    static boolean calm(Whole whole, CordReading cord) {
        return Whole.out(cord.pull()).headSpeed() * whole.asked().kit().headDiameter()
                < 0.8 * 3.38e5 * Drag.AIR_VISCOSITY;
    }

    private static void corrections(Whole whole, CordReading cord, Invariant.Broken broken) {
        cord.correction()
                .reading()
                .ifPresent(
                        correction -> {
                            boolean lost = correction.verdict() == Correction.Verdict.LOST;
                            broken.when(
                                    lost == correction.recovers() >= Correction.ENOUGH,
                                    "%s: %s, and %.3g m comes back",
                                    cord.side(),
                                    correction.verdict(),
                                    correction.recovers());
                            broken.when(
                                    lost == correction.longest() >= correction.reaction(),
                                    "%s: %s, and held up to a delay of %.3g s",
                                    cord.side(),
                                    correction.verdict(),
                                    correction.longest());
                            correction
                                    .once()
                                    .ifPresent(
                                            once ->
                                                    broken.when(
                                                            once.holds() && once.left() >= 1,
                                                            "%s: a stroke holds and leaves %.3g",
                                                            cord.side(),
                                                            once.left()));
                        });
    }

    private static void slips(Whole whole, CordReading cord, Invariant.Broken broken) {
        Optional<Steadiness> figureKept =
                cord.figureSteadiness().reading().filter(h -> whole.asked().kit().cordMass() == 0);
        boolean calm = calm(whole, cord);
        for (Optional<Steadiness> maybe :
                List.of(figureKept, cord.handPathSteadiness().reading())) {
            maybe.ifPresent(
                    steadiness -> {
                        boolean air = whole.asked().kit().air();
                        broken.when(
                                steadiness.verdict() == Steadiness.Verdict.STEADIES && !air,
                                "%s steadies itself: growth %.9g",
                                cord.side(),
                                steadiness.growth());
                        double sum = 0;
                        for (Complex one : steadiness.multipliers()) {
                            sum += Math.log(one.norm());
                        }
                        // What rounding leaves of the least multiplier beside a great one is not
                        // asked.
                        if (!air && steadiness.growth() < 1e5) {
                            broken.when(
                                    !(Math.abs(sum) < 1e-2),
                                    "%s: multipliers %s",
                                    cord.side(),
                                    steadiness.multipliers());
                        }
                        broken.when(
                                air && calm && sum > 1e-2 && steadiness.growth() < 1e5,
                                "%s: in air slips grow in sum: %s",
                                cord.side(),
                                steadiness.multipliers());
                    });
        }
    }

    private static void slowest(Whole whole, CordReading cord, Invariant.Broken broken) {
        double tempo = whole.pairing().tempo();
        cord.slowest()
                .reading()
                .ifPresent(
                        slowest -> {
                            SlowestTempo.Limit ideal = slowest.ideal();
                            if (surely(ideal, tempo)) {
                                broken.when(
                                        Whole.out(cord.pull()).least()
                                                < -1e-6 * Whole.out(cord.pull()).headWeight(),
                                        "%s: ideal %s, but the least pull is %.3g N",
                                        cord.side(),
                                        ideal,
                                        Whole.out(cord.pull()).least());
                            }
                            cord.figureKept()
                                    .reading()
                                    .ifPresent(
                                            figure -> {
                                                // A heavy cord's own turning is left out of the
                                                // slowest
                                                // tempo, so it is asked of a light one.
                                                if (surely(slowest.figureKept(), tempo)
                                                        && whole.asked().kit().cordMass() == 0) {
                                                    broken.when(
                                                            figure.freeFalls().stream()
                                                                            .anyMatch(
                                                                                    f ->
                                                                                            f
                                                                                                            .weights()
                                                                                                    < NEARLY)
                                                                    || figure.turns()
                                                                                    != figure
                                                                                            .idealTurns()
                                                                            && whole.pairing()
                                                                                            .part(
                                                                                                    cord
                                                                                                            .side())
                                                                                            .place()
                                                                                            .turn()
                                                                                            .turns()
                                                                                    == 0,
                                                            "%s: figure kept %s, but free falls %s and turns %d of %d",
                                                            cord.side(),
                                                            slowest.figureKept(),
                                                            figure.freeFalls(),
                                                            figure.turns(),
                                                            figure.idealTurns());
                                                }
                                            });
                            if (upright(whole, cord.side())
                                    && cord.handPathKept().reading().isPresent()
                                    && surely(slowest.handPathKept(), tempo)) {
                                broken.when(
                                        Whole.out(cord.handPathKept()).best().isEmpty(),
                                        "%s: hand path kept %s, but no motion there",
                                        cord.side(),
                                        slowest.handPathKept());
                            }
                            if (upright(whole, cord.side())
                                    && cord.handPathKept().reading().isPresent()
                                    && slowest.handPathKept().reason()
                                            == SlowestTempo.Reason.NEVER) {
                                broken.when(
                                        Whole.out(cord.handPathKept()).best().isPresent(),
                                        "%s: no tempo, but a motion at this one",
                                        cord.side());
                            }
                        });
    }

    private static void belowSlowest(Whole whole, CordReading cord, Invariant.Broken broken) {
        if (!upright(whole, cord.side())) {
            return;
        }
        cord.slowest()
                .reading()
                .map(SlowestTempo::handPathKept)
                .filter(hand -> hand.reason() != SlowestTempo.Reason.OWN_TEMPO)
                .filter(hand -> !hand.met(whole.pairing().tempo() * (1 + 1e-6)))
                .filter(hand -> !hand.met(whole.pairing().tempo() * (1 - 1e-6)))
                .ifPresent(
                        hand ->
                                broken.when(
                                        Whole.out(cord.handPathKept()).best().isPresent(),
                                        "%s: %s, but a motion at %.3f",
                                        cord.side(),
                                        hand,
                                        whole.pairing().tempo()));
    }

    /** Whether a side's hand, cord and gravity stay in one plane. */
    static boolean upright(Whole whole, Side side) {
        Part part = whole.pairing().part(side);
        boolean rides = part.motion().riding();
        return Math.abs(part.place().plane().normal().getY()) < 1e-9
                && part.place().turn().turns() == 0
                && !rides;
    }

    // At the slowest itself either is right; and where a pull counts as lost before it is nothing,
    // a thousandth about it.
    private static boolean surely(SlowestTempo.Limit limit, double tempo) {
        return limit.met(tempo)
                && (limit.tempo().isEmpty() || tempo > limit.tempo().getAsDouble() * (1 + 1e-3))
                && (limit.fastest().isEmpty()
                        || tempo < limit.fastest().getAsDouble() * (1 - 1e-3));
    }

    private static void anyTempo(Whole whole, CordReading cord, Invariant.Broken broken) {
        List<Told> said = whole.said("slowest." + cord.side().word());
        List<Told> hand = whole.said("hand_path_kept." + cord.side().word());
        if (!said.isEmpty() && !hand.isEmpty()) {
            String slowest = said.get(0).text();
            boolean any =
                    slowest.contains("any tempo with the hand") || slowest.contains("however slow");
            broken.when(
                    any
                            && (hand.get(0).text().contains("no steady motion")
                                    || hand.get(0).text().contains("another motion")
                                    || hand.get(0).text().contains("goes slack")),
                    "\"%s\" beside \"%s\"",
                    slowest,
                    hand.get(0).text());
        }
    }
}

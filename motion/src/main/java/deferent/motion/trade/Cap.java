package deferent.motion.trade;

import static deferent.motion.trade.Word.*;

import deferent.motion.pairing.Arc;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Riding;
import deferent.motion.pairing.SpinLaw;
import deferent.motion.pairing.Swing;
import deferent.motion.pairing.Turns;
import java.util.Map;
import java.util.Optional;

/**
 * The trade's CAP: hand to and fro on an arc, poi turning evenly one way, the whole the same in a
 * mirror on the line through the arc's middle.
 *
 * <p>One way along the arc goes in extension: there the poi turns by as much as the hand sweeps. Of
 * n turns a cycle an arc of half sweep h takes h/(πn) of the cycle for it, and the rest for the way
 * in antispin. So a plain CAP, two turns and half a circle, is out in a quarter of the cycle; one
 * of N petals sweeps 720°/N, out in 1/N; one turn on half a circle, the cat-eye's, is out in half.
 * The tether points straight away from the centre in the middle of the way in extension, which
 * makes the mirror image, and so at both ends and, of an even number of turns, in the middle of the
 * way back.
 *
 * <p>On a pendulum's head out and back take half the cycle each; there the tether hangs straight
 * down in the middle of the way out.
 */
final class Cap {
    private static final double HALF_CIRCLE = Math.PI / 2;
    private static final int USUAL_TURNS = 2;

    private Cap() {}

    /** The CAP of the sizes said, of so many petals where neither petals nor sweep are. */
    static Motion of(Sizes sizes, int petals) {
        if (sizes.has(PETALS)) {
            petals = sizes.whole(PETALS, petals);
            if (petals < 2 || petals > 25) {
                throw new Refusal("of a CAP are " + petals, "petals", "give 2 to 25");
            }
        }
        return swept(sizes, 2 * Math.PI / petals, USUAL_TURNS);
    }

    /** Half a turn out and half a turn back. */
    static Motion catEye(Sizes sizes) {
        return swept(sizes, HALF_CIRCLE, 1);
    }

    private static Motion swept(Sizes sizes, double sweep, int turnsUnsaid) {
        Optional<Amount.OutAndBack> ways = sizes.outAndBack();
        ways.ifPresent(Cap::refuseTurningBack);
        Arc even = arc(sizes, sweep, Arc.OUT.unsaid());
        if (sizes.has(RIDING)) {
            if (sizes.has(PETALS)) {
                throw new Refusal(
                        "are said of a CAP that rides",
                        "petals",
                        "leave them out: a rider's hand goes where the other head goes");
            }
            double out =
                    ways.map(Amount.OutAndBack::out).orElse(sizes.whole(TURNS, turnsUnsaid) / 2.0);
            return new Motion(even, sizes.spin(turnsUnsaid, Swing.DOWN - Math.PI * out));
        }
        double half = even.halfSweep();
        if (sizes.has(STRETCHES) || sizes.has(STALLING)) {
            return new Motion(even, sizes.spin(turnsUnsaid, even.middle() - half));
        }
        if (sizes.has(EASE)) {
            throw Sizes.oneRate();
        }
        double all =
                ways.map(w -> w.out() + w.back()).orElse((double) sizes.whole(TURNS, turnsUnsaid));
        int turns = (int) Math.rint(all);
        if (Math.abs(all - turns) > 1e-9) {
            throw new Refusal(
                    "of a CAP sum to " + Amounts.number(all),
                    "poi turns",
                    "give turns out and back that sum to a whole number");
        }
        double out = ways.map(w -> w.out() / all).orElse(unsaidOut(half, turns));
        boolean said = ways.isPresent() || sizes.has(Word.of(Arc.OUT));
        if (!said && !(Math.min(out, 1 - out) >= Arc.LEAST_WAY)) {
            throw new Refusal(
                    "of a CAP that turns " + Names.times(Math.abs(turns)) + " leaves no way back",
                    "sweep",
                    "give a smaller arc, or more turns");
        }
        Arc arc = arc(sizes, sweep, out);
        double start = arc.middle() - (said ? extension(turns, arc.out()) : half);
        return new Motion(arc, new Turns(turns, sizes.angle(START, start)));
    }

    private static Arc arc(Sizes sizes, double sweep, double out) {
        return sizes.path(Arc.FORM, Map.of("sweep", sweep, Arc.OUT.word(), out))
                .arc()
                .orElseThrow();
    }

    private static void refuseTurningBack(Amount.OutAndBack ways) {
        if (Math.signum(ways.out()) * Math.signum(ways.back()) < 0
                || ways.out() + ways.back() == 0) {
            throw new Refusal(
                    "of a CAP are "
                            + Amounts.number(ways.out())
                            + " out and "
                            + Amounts.number(ways.back())
                            + " back",
                    "poi turns",
                    "keep the poi turning one way, both numbers of one sign");
        }
    }

    /** Share of the cycle that the way out takes where nothing is said of it. */
    private static double unsaidOut(double half, int turns) {
        double extension = half / (Math.PI * turns);
        return turns == 0 ? 0.5 : turns > 0 ? extension : 1 + extension;
    }

    /** Half the angle by which the poi turns on the way in extension. */
    private static double extension(int turns, double out) {
        return Math.PI * Math.abs(turns) * (turns < 0 ? 1 - out : out);
    }

    private static boolean hangsInMidSwing(Turns even) {
        return Math.abs(Math.IEEEremainder(even.start() - hanging(even.turns()), 2 * Math.PI))
                < 1e-9;
    }

    /** On a head that goes along an arc, a CAP's tether hangs straight down in mid-swing. */
    static Motion riding(Seen seen) {
        Motion rides = seen.motion().withPath(new Riding());
        int turns = seen.spin().turns();
        return seen.onArc() && turns > 0 && arc(seen).isPresent()
                ? rides.withSpin(new Turns(turns, hanging(turns)))
                : rides;
    }

    /** Where the poi starts that turns evenly and points straight down in mid-swing. */
    private static double hanging(int turns) {
        return Swing.DOWN - Math.PI * turns / 2;
    }

    /** What the trade calls it: a CAP, by its petals where its arc is that of so many. */
    static Optional<Call> called(Seen seen) {
        SpinLaw spin = seen.spin();
        if (seen.motion().riding()) {
            if (!seen.onArc() || spin.turns() <= 0) {
                return Optional.empty();
            }
            return spin.even().isPresent() && spin.turns() == USUAL_TURNS
                    ? spin.even().filter(Cap::hangsInMidSwing).map(even -> Call.of("CAP"))
                    : Optional.of(seen.described("CAP", "CAP"));
        }
        boolean stretched =
                spin.inStretches()
                        .filter(
                                s ->
                                        s.stretches().stream()
                                                .allMatch(w -> w.turns() * s.turns() > 0))
                        .isPresent();
        if (stretched && seen.motion().path().arc().isPresent()) {
            String turning = SpinWords.of(spin.from(0), new Turns(USUAL_TURNS, 0));
            return Optional.of(new Call("CAP", "CAP" + turning));
        }
        return arc(seen).map(arc -> called(arc, spin.turns()));
    }

    private static Call called(Arc arc, int turns) {
        double usual = unsaidOut(arc.halfSweep(), turns);
        double petals = Math.rint(2 * Math.PI / arc.halfSweep());
        boolean ofPetals = near(2 * Math.PI / petals, arc.halfSweep()) && petals <= 25;
        if (turns == USUAL_TURNS && near(arc.out(), usual)) {
            return !ofPetals || petals == Sizes.USUAL_PETALS
                    ? Call.of("CAP")
                    : Call.of("CAP with " + (int) petals + " petals");
        }
        double out = arc.out() * turns;
        double back = turns - out;
        boolean told = !near(arc.out(), usual) && out / (out + back) == arc.out();
        return new Call(
                "CAP",
                "CAP"
                        + (near(arc.halfSweep(), HALF_CIRCLE)
                                ? ""
                                : " sweep " + Amounts.angle(arc.halfSweep()))
                        + (told
                                ? " turns "
                                        + Amounts.number(out)
                                        + " out "
                                        + Amounts.number(back)
                                        + " back"
                                : turns == USUAL_TURNS ? "" : " turns " + turns));
    }

    /** That with half a turn out and half a turn back, or else nothing. */
    static Optional<Call> catEyeCalled(Seen seen) {
        if (seen.motion().riding()) {
            return seen.onArc() && seen.spin().even().isPresent() && seen.spin().turns() == 1
                    ? Optional.of(Call.of("cat-eye CAP"))
                    : Optional.empty();
        }
        return arc(seen)
                .filter(arc -> seen.spin().turns() == 1 && near(arc.out(), 0.5))
                .filter(arc -> near(arc.halfSweep(), HALF_CIRCLE))
                .map(arc -> Call.of("cat-eye CAP"));
    }

    // Of three petals, which has a name of its own.
    static Optional<Call> triquetraCalled(Seen seen) {
        return called(seen)
                .filter(call -> call.name().equals("CAP with 3 petals"))
                .map(call -> Call.of("triquetra CAP"));
    }

    /** The arc of an evenly turning poi whose figure is its own mirror image. */
    private static Optional<Arc> arc(Seen seen) {
        return seen.motion()
                .path()
                .arc()
                .filter(
                        arc ->
                                seen.spin()
                                        .even()
                                        .filter(even -> even.turns() != 0)
                                        .filter(even -> mirrored(arc, even))
                                        .isPresent());
    }

    private static boolean mirrored(Arc arc, Turns even) {
        double inTheMiddle = even.start() + Math.PI * even.turns() * arc.out() - arc.middle();
        return Math.abs(Math.IEEEremainder(inTheMiddle, Math.PI)) < Seen.NEAR;
    }

    private static boolean near(double a, double b) {
        return Math.abs(a - b) < Seen.NEAR;
    }
}

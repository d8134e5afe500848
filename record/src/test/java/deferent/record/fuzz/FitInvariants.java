package deferent.record.fuzz;

import deferent.motion.trace.Trace;
import deferent.reading.link.LinkReading;
import deferent.search.fit.FitReading;
import deferent.search.fit.Goal;
import deferent.search.fit.Remedy;
import java.util.ArrayList;
import java.util.List;

/** What holds of the fit that would close a link. */
final class FitInvariants {
    /** Below this a gap counts as closed, metres. */
    private static final double CLOSED = 1e-3;

    static final List<Invariant> ALL =
            List.of(
                    new Invariant(
                            "a fit's gap is the gap of the pairing it gives",
                            "it is read of that pairing and not promised by a formula; read anew it"
                                    + " is the same samples, so the same to rounding",
                            20,
                            FitInvariants::readAnew),
                    new Invariant(
                            "a fit closes where it leaves no gap, and nowhere else",
                            "below a millimetre a gap counts as closed, and an answer is what"
                                    + " closes; what is nearest does not",
                            1,
                            FitInvariants::closes));

    private FitInvariants() {}

    private static List<Remedy> given(FitReading fit) {
        List<Remedy> given = new ArrayList<>(fit.answers());
        if (given.isEmpty()) {
            given.add(fit.nearest());
        }
        return given;
    }

    private static void readAnew(Whole whole, Invariant.Broken broken) {
        FitReading fit = Whole.out(whole.readings().advice().orElseThrow().fit());
        for (Remedy answer : given(fit)) {
            Trace trace = Trace.of(answer.pairing());
            broken.unlessNear(
                    fit.goal() + " gap of " + answer.changes(),
                    answer.gapLeft(),
                    fit.goal() == Goal.PLACED
                            ? LinkReading.quick(trace, fit.carrier()).inPlaneGap()
                            : LinkReading.of(trace, fit.carrier()).shapeGap(),
                    1e-9,
                    1e-9);
        }
    }

    private static void closes(Whole whole, Invariant.Broken broken) {
        FitReading fit = Whole.out(whole.readings().advice().orElseThrow().fit());
        for (Remedy answer : fit.answers()) {
            broken.when(answer.gapLeft() >= CLOSED, "%s leaves %.6f", answer, answer.gapLeft());
        }
        double left = fit.nearest().gapLeft();
        broken.when(!fit.closes() && left < CLOSED, "%s leaves but %.6f", fit.nearest(), left);
    }
}

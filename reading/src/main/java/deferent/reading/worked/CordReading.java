package deferent.reading.worked;

import deferent.motion.pairing.HandLimits;
import deferent.motion.shared.Side;
import deferent.motion.trace.Course;
import deferent.motion.trace.Trace;
import deferent.reading.closest.Closely;
import deferent.reading.closest.ClosestFigure;
import deferent.reading.tether.Cord;
import deferent.reading.tether.Correction;
import deferent.reading.tether.KeepTheFigure;
import deferent.reading.tether.KeepTheHandPath;
import deferent.reading.tether.Kit;
import deferent.reading.tether.Pull;
import deferent.reading.tether.SlowestTempo;
import deferent.reading.tether.Steadiness;
import java.util.List;
import java.util.Optional;

/**
 * What becomes of one hand's motion when its tether is a cord.
 *
 * @param pull of the ideal figure; asked for at once, the rest only when settled
 * @param figureKept the hand path that keeps the figure; unasked for a pendulum that nobody drives,
 *     whose still hand does
 * @param handPathKept what the head does behind a hand that keeps its path
 * @param figureSteadiness how a slip grows while the figure is kept; unasked where no hand can keep
 *     it
 * @param handPathSteadiness how a slip grows in the best of the motions behind the kept hand path;
 *     unasked where none is
 * @param slowest the slowest tempo, when settled
 * @param closestFigure the closest figure that a real hand can draw; unasked where the figure kept
 *     is
 * @param correction what becomes of a slip from that figure when it is answered; unasked where a
 *     slip of it does not grow
 */
public record CordReading(
        Side side,
        Worked<Pull> pull,
        Worked<KeepTheFigure> figureKept,
        Worked<KeepTheHandPath> handPathKept,
        Worked<Steadiness> figureSteadiness,
        Worked<Steadiness> handPathSteadiness,
        Worked<SlowestTempo> slowest,
        Worked<ClosestFigure> closestFigure,
        Worked<Correction> correction) {

    /** Pull samples while something is dragged: enough for the ribbon. */
    public static final int LIVE_COUNT = 120;

    /**
     * All that is read of one cord.
     *
     * @param closely how the closest figure is looked for
     */
    public static CordReading of(Trace ideal, Side side, Kit kit, Detail detail, Closely closely) {
        String cord = "the " + side.word() + " cord";
        String pull = "the pull of " + cord;
        if (detail == Detail.LIVE) {
            return new CordReading(
                    side,
                    Worked.of(
                            pull,
                            () -> Pull.of(ideal, side, Cord.of(ideal, side, kit), LIVE_COUNT)),
                    Worked.unasked(),
                    Worked.unasked(),
                    Worked.unasked(),
                    Worked.unasked(),
                    Worked.unasked(),
                    Worked.unasked(),
                    Worked.unasked());
        }
        // A pendulum that nobody drives keeps hand path and figure at once: nothing to work out.
        Worked<KeepTheFigure> figureKept =
                ideal.pairing().part(side).motion().undriven()
                        ? Worked.unasked()
                        : Worked.of(keepingFigure(side), () -> KeepTheFigure.of(ideal, side, kit));
        Worked<SlowestTempo> slowestAlone =
                detail == Detail.SETTLED
                        ? Worked.of(
                                "the slowest tempo of " + cord,
                                () -> SlowestTempo.of(ideal.pairing(), side, kit))
                        : Worked.unasked();
        Worked<KeepTheHandPath> searched =
                Worked.of(keepingHandPath(side), () -> KeepTheHandPath.of(ideal, side, kit));
        String both = "whether they agree";
        Optional<SlowestTempo.Agreed> agreed =
                slowestAlone.then(both, f -> searched.as(both, h -> f.agreed(ideal, h))).reading();
        Worked<SlowestTempo> slowest =
                agreed.<Worked<SlowestTempo>>map(a -> new Worked.Out<>(a.slowest()))
                        .orElse(slowestAlone);
        Worked<KeepTheHandPath> handPathKept =
                agreed.<Worked<KeepTheHandPath>>map(a -> new Worked.Out<>(a.handPathKept()))
                        .orElse(searched);
        String slips = "what becomes of a slip of the " + side.word() + " poi, its ";
        String figureSlips = slips + "figure kept";
        String handPathSlips = slips + "hand path kept";
        Worked<Steadiness> figureSteadiness =
                figureKept.then(
                        figureSlips,
                        kept ->
                                kept.possible()
                                        ? Worked.of(figureSlips, () -> Steadiness.of(kept))
                                        : Worked.unasked());
        Worked<Steadiness> handPathSteadiness =
                handPathKept.then(
                        handPathSlips,
                        kept ->
                                kept.best()
                                        .map(
                                                best ->
                                                        Worked.of(
                                                                handPathSlips,
                                                                () -> Steadiness.of(best)))
                                        .orElseGet(Worked::unasked));
        Worked<ClosestFigure> closestFigure = closest(ideal, side, kit, closely, handPathKept);
        return new CordReading(
                side,
                Worked.of(pull, () -> Pull.of(ideal, side, kit)),
                figureKept,
                handPathKept,
                figureSteadiness,
                handPathSteadiness,
                slowest,
                closestFigure,
                correction(side, closestFigure, closely.limits()));
    }

    /**
     * The closest figure, begun from what the poi does behind its hand too, where that is known.
     * Unasked for a pendulum that nobody drives: its still hand draws the figure itself.
     */
    public static Worked<ClosestFigure> closest(
            Trace ideal,
            Side side,
            Kit kit,
            Closely closely,
            Worked<KeepTheHandPath> handPathKept) {
        if (ideal.pairing().part(side).motion().undriven()) {
            return Worked.unasked();
        }
        List<Course> starts =
                handPathKept.reading().flatMap(KeepTheHandPath::best).stream()
                        .map(KeepTheHandPath.Solution::head)
                        .toList();
        return Worked.of(
                drawingClosest(side),
                () -> ClosestFigure.of(ideal, side, Cord.of(ideal, side, kit), closely, starts));
    }

    public static String drawingClosest(Side side) {
        return "the closest " + side.word() + " figure that a hand draws";
    }

    private static Worked<Correction> correction(
            Side side, Worked<ClosestFigure> closest, HandLimits limits) {
        String what = "what a correction does to the " + side.word() + " poi";
        // Where there is no closest figure, that says why; this would say it twice.
        return closest.reading()
                .filter(ClosestFigure::met)
                .map(ClosestFigure::orbit)
                .map(
                        orbit ->
                                Worked.of(what, () -> Steadiness.of(orbit))
                                        .then(
                                                what,
                                                s ->
                                                        Correction.asked(orbit, s)
                                                                ? Worked.of(
                                                                        what,
                                                                        () ->
                                                                                Correction.of(
                                                                                        orbit,
                                                                                        s
                                                                                                .reaction(),
                                                                                        limits))
                                                                : Worked.unasked()))
                .orElseGet(Worked::unasked);
    }

    public static String keepingFigure(Side side) {
        return "keeping the " + side.word() + " figure on a cord";
    }

    public static String keepingHandPath(Side side) {
        return "the " + side.word() + " poi behind a hand that keeps its path";
    }
}

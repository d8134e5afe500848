package deferent.search.whole;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.closest.Closely;
import deferent.reading.closest.ClosestFigure;
import deferent.reading.tether.Cord;
import deferent.reading.tether.KeepTheFigure;
import deferent.reading.tether.KeepTheHandPath;
import deferent.reading.tether.Kit;
import deferent.reading.tether.Pull;
import deferent.reading.worked.CordReading;
import deferent.reading.worked.Worked;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * What is on the stage: the pairing as it was said, or what a cord makes of it when the figure is
 * kept or the hand. A side for which that does not exist stays as it was said, and the reason is
 * told.
 *
 * @param keep what was asked to be kept
 * @param carrier the carrier whose link is drawn
 * @param trace what is shown
 * @param why what stands in the way, a side that stays ideal though a cord was asked for
 * @param pulls of what is shown; none for a side whose pull was not worked out
 * @param closest the closest figures shown, to begin the next search from; none where another is
 *     kept
 */
public record Staged(
        Keep keep,
        Side carrier,
        Trace trace,
        Map<Side, String> why,
        Map<Side, Pull> pulls,
        Map<Side, ClosestFigure> closest) {

    public static Staged of(Readings readings, Keep keep, Kit kit) {
        return of(readings, keep, kit, side -> Closely.USUAL);
    }

    /**
     * What is on the stage.
     *
     * @param closely how a side's closest figure is looked for where it was not read; arms and
     *     hands are the performer's
     */
    public static Staged of(
            Readings readings, Keep keep, Kit kit, Function<Side, Closely> closely) {
        Trace ideal = readings.trace();
        Trace trace = ideal;
        Map<Side, String> why = new EnumMap<>(Side.class);
        Map<Side, Pull> pulls = new EnumMap<>(Side.class);
        Map<Side, ClosestFigure> closest = new EnumMap<>(Side.class);
        for (Side side : Side.values()) {
            CordReading cord = readings.cord(side);
            Worked<Pull> pull = cord.pull();
            Trace before = trace;
            Worked<Trace> corded =
                    switch (keep) {
                        case IDEAL -> Worked.unasked();
                        case FIGURE -> figureKept(before, ideal, cord, kit);
                        case HAND_PATH -> handPathKept(before, ideal, cord, kit);
                        case CLOSEST ->
                                closest(
                                        closest,
                                        before,
                                        ideal,
                                        cord,
                                        kit,
                                        closely.apply(side)
                                                .held(readings.performer().hands())
                                                .within(
                                                        Readings.arm(
                                                                ideal, readings.reach(), side)));
                    };
            if (corded.reading().isPresent()) {
                Trace shown = corded.reading().get();
                trace = shown;
                int count =
                        pull.reading().map(p -> p.newtons().length).orElse(CordReading.LIVE_COUNT);
                pull =
                        Worked.of(
                                "the pull of what is shown",
                                () -> Pull.of(shown, side, Cord.of(shown, side, kit), count));
            }
            corded.failure().ifPresent(not -> why.put(side, not.reason()));
            pull.reading().ifPresent(p -> pulls.put(side, p));
        }
        return new Staged(keep, readings.carrier(), trace, why, pulls, closest);
    }

    private static Worked<Trace> figureKept(Trace trace, Trace ideal, CordReading cord, Kit kit) {
        Side side = cord.side();
        String what = CordReading.keepingFigure(side);
        // A pendulum that nobody drives does by itself what a cord does: nothing to keep.
        if (ideal.pairing().part(side).motion().undriven()) {
            return Worked.of(what, () -> trace);
        }
        return cord.figureKept()
                .orNow(what, () -> KeepTheFigure.of(ideal, side, kit))
                .as(what, kept -> figureKept(trace, kept));
    }

    private static Trace figureKept(Trace trace, KeepTheFigure kept) {
        if (!kept.possible()) {
            throw new Refusal(
                    kept.freeFalls().isEmpty()
                            ? "would have to jump"
                            : "has nowhere to be: the figure asks the head to fall freely",
                    kept.side().hand(),
                    "change the tempo or the sizes");
        }
        return kept.in(trace);
    }

    private static Worked<Trace> closest(
            Map<Side, ClosestFigure> found,
            Trace trace,
            Trace ideal,
            CordReading cord,
            Kit kit,
            Closely closely) {
        String what = CordReading.drawingClosest(cord.side());
        // A pendulum that nobody drives draws its figure by itself.
        if (ideal.pairing().part(cord.side()).motion().undriven()) {
            return Worked.of(what, () -> trace);
        }
        Worked<ClosestFigure> closest =
                cord.closestFigure() instanceof Worked.Unasked
                        ? CordReading.closest(ideal, cord.side(), kit, closely, cord.handPathKept())
                        : cord.closestFigure();
        closest.reading().ifPresent(c -> found.put(c.side(), c));
        return closest.as(what, c -> c.in(trace));
    }

    private static Worked<Trace> handPathKept(Trace trace, Trace ideal, CordReading cord, Kit kit) {
        Side side = cord.side();
        String what = CordReading.keepingHandPath(side);
        return cord.handPathKept()
                .orNow(what, () -> KeepTheHandPath.of(ideal, side, kit))
                .as(what, kept -> handPathKept(trace, kept));
    }

    private static Trace handPathKept(Trace trace, KeepTheHandPath kept) {
        return kept.in(
                trace,
                kept.best()
                        .orElseThrow(
                                () ->
                                        new Refusal(
                                                kept.solutions().stream()
                                                                .anyMatch(
                                                                        KeepTheHandPath.Solution
                                                                                ::pulls)
                                                        ? "settles only on another motion than the"
                                                                + " one meant"
                                                        : kept.solutions().isEmpty()
                                                                ? "settles on no motion with these"
                                                                        + " turns at this tempo"
                                                                : "would have to be pushed at this"
                                                                        + " tempo",
                                                "the " + kept.side().word() + " poi",
                                                "spin faster, or keep the figure")));
    }

    /** Whether a side is shown as a cord makes it. */
    public boolean corded(Side side) {
        return keep != Keep.IDEAL && !why.containsKey(side);
    }

    public List<Side> cordedSides() {
        List<Side> all = new ArrayList<>();
        for (Side side : Side.values()) {
            if (corded(side)) {
                all.add(side);
            }
        }
        return all;
    }
}

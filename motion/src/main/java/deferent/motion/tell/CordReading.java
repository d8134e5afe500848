package deferent.motion.tell;

import deferent.motion.pairing.Side;
import deferent.motion.tether.Cord;
import deferent.motion.tether.Floor;
import deferent.motion.tether.Hold;
import deferent.motion.tether.KeepTheHand;
import deferent.motion.tether.KeepTheLight;
import deferent.motion.tether.Kit;
import deferent.motion.tether.Pull;
import deferent.motion.trace.Trace;
import java.util.Optional;

/**
 * What becomes of one hand's motion when its tether is a cord.
 *
 * @param pull of the ideal figure; asked for at once, the rest only when settled
 * @param light the hand path that keeps the light; unasked for a pendulum that nobody drives, whose
 *     still hand does
 * @param hand what the head does behind a hand that keeps its path
 * @param lightHold how a slip grows while the light is kept; unasked where no hand can keep it
 * @param handHold how a slip grows in the best of the kept hand's motions; unasked where none is
 * @param floor the slowest tempo, when settled
 */
public record CordReading(
        Side side,
        Worked<Pull> pull,
        Worked<KeepTheLight> light,
        Worked<KeepTheHand> hand,
        Worked<Hold> lightHold,
        Worked<Hold> handHold,
        Worked<Floor> floor) {

    /** Pull samples while something is dragged: enough for the ribbon. */
    static final int LIVE_COUNT = 120;

    static CordReading of(Trace ideal, Side side, Kit kit, Detail detail) {
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
                    Worked.unasked());
        }
        // A pendulum that nobody drives keeps hand and light at once: nothing to work out.
        Worked<KeepTheLight> light =
                ideal.pairing().part(side).motion().undriven()
                        ? Worked.unasked()
                        : Worked.of(keptLight(side), () -> KeepTheLight.of(ideal, side, kit));
        Worked<Floor> slowest =
                detail == Detail.SETTLED
                        ? Worked.of(
                                "the slowest tempo of " + cord,
                                () -> Floor.of(ideal.pairing(), side, kit))
                        : Worked.unasked();
        Worked<KeepTheHand> searched =
                Worked.of(keptHand(side), () -> KeepTheHand.of(ideal, side, kit));
        String both = "whether they agree";
        Optional<Floor.Agreed> agreed =
                slowest.then(both, f -> searched.as(both, h -> f.agreed(ideal, h))).reading();
        Worked<Floor> floor =
                agreed.<Worked<Floor>>map(a -> new Worked.Out<>(a.floor())).orElse(slowest);
        Worked<KeepTheHand> hand =
                agreed.<Worked<KeepTheHand>>map(a -> new Worked.Out<>(a.hand())).orElse(searched);
        String slips = "what becomes of a slip of the " + side.word() + " poi, its ";
        String lightSlips = slips + "figure kept";
        String handSlips = slips + "hand path kept";
        return new CordReading(
                side,
                Worked.of(pull, () -> Pull.of(ideal, side, kit)),
                light,
                hand,
                light.then(
                        lightSlips,
                        kept ->
                                kept.possible()
                                        ? Worked.of(lightSlips, () -> Hold.of(kept))
                                        : Worked.unasked()),
                hand.then(
                        handSlips,
                        kept ->
                                kept.best()
                                        .map(best -> Worked.of(handSlips, () -> Hold.of(best)))
                                        .orElseGet(Worked::unasked)),
                floor);
    }

    static String keptLight(Side side) {
        return "keeping the " + side.word() + " figure on a cord";
    }

    static String keptHand(Side side) {
        return "the " + side.word() + " poi behind a hand that keeps its path";
    }
}

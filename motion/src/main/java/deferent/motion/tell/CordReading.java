package deferent.motion.tell;

import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Side;
import deferent.motion.tether.Cord;
import deferent.motion.tether.Floor;
import deferent.motion.tether.Hold;
import deferent.motion.tether.KeepTheHand;
import deferent.motion.tether.KeepTheLight;
import deferent.motion.tether.Kit;
import deferent.motion.tether.Pull;
import deferent.motion.trace.Trace;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * What becomes of one hand's motion when its tether is a cord.
 *
 * @param pull of the ideal figure; worked out at once, the rest only when settled
 * @param light the hand path that keeps the light; empty for a pendulum that nobody drives, whose
 *     still hand does
 * @param hand what the head does behind a hand that keeps its path
 * @param lightHold how a slip grows while the light is kept
 * @param handHold how a slip grows in the best of the kept hand's motions
 * @param floor the slowest tempo, when settled
 * @param refused why a reading could not be made, each once
 */
public record CordReading(
        Side side,
        Pull pull,
        Optional<KeepTheLight> light,
        Optional<KeepTheHand> hand,
        Optional<Hold> lightHold,
        Optional<Hold> handHold,
        Optional<Floor> floor,
        List<Refusal> refused) {
    public CordReading {
        refused = List.copyOf(refused);
    }

    // Pull samples while something is dragged: enough for the ribbon.
    private static final int LIVE_COUNT = 120;

    static CordReading of(Trace ideal, Side side, Kit kit, Detail detail) {
        if (detail == Detail.LIVE) {
            return new CordReading(
                    side,
                    Pull.of(ideal, side, Cord.of(ideal, side, kit), LIVE_COUNT),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    List.of());
        }
        List<Refusal> refused = new ArrayList<>();
        // A pendulum that nobody drives keeps hand and light at once: nothing to work out.
        Optional<KeepTheLight> light =
                ideal.pairing().part(side).motion().undriven()
                        ? Optional.empty()
                        : tried(refused, () -> KeepTheLight.of(ideal, side, kit));
        Optional<KeepTheHand> hand = tried(refused, () -> KeepTheHand.of(ideal, side, kit));
        return new CordReading(
                side,
                Pull.of(ideal, side, kit),
                light,
                hand,
                light.filter(l -> l.freeFalls().isEmpty() && l.jumps().isEmpty())
                        .flatMap(l -> tried(refused, () -> Hold.of(l))),
                hand.flatMap(KeepTheHand::best)
                        .flatMap(best -> tried(refused, () -> Hold.of(best))),
                detail == Detail.SETTLED
                        ? tried(refused, () -> Floor.of(ideal.pairing(), side, kit))
                        : Optional.empty(),
                refused);
    }

    private static <T> Optional<T> tried(List<Refusal> refused, Supplier<T> reading) {
        try {
            return Optional.of(reading.get());
        } catch (Refusal refusal) {
            if (refused.stream()
                    .noneMatch(r -> Objects.equals(r.getMessage(), refusal.getMessage()))) {
                refused.add(refusal);
            }
            return Optional.empty();
        }
    }
}

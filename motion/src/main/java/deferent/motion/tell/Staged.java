package deferent.motion.tell;

import deferent.motion.pairing.Refusal;
import deferent.motion.pairing.Side;
import deferent.motion.tether.Cord;
import deferent.motion.tether.KeepTheHand;
import deferent.motion.tether.KeepTheLight;
import deferent.motion.tether.Kit;
import deferent.motion.tether.Pull;
import deferent.motion.trace.Trace;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What is on the stage: the pairing as it was said, or what a cord makes of it when the light is
 * kept or the hand. A side for which that does not exist stays as it was said, and the reason is
 * told.
 *
 * @param keep what was asked to be kept
 * @param leader the root whose tie is drawn
 * @param trace what is shown
 * @param why what stands in the way, a side that stays ideal though a cord was asked for
 * @param pulls of what is shown
 */
public record Staged(
        Keep keep, Side leader, Trace trace, Map<Side, String> why, Map<Side, Pull> pulls) {

    public static Staged of(Readings readings, Keep keep, Kit kit) {
        Trace ideal = readings.trace();
        Trace trace = ideal;
        Map<Side, String> why = new EnumMap<>(Side.class);
        Map<Side, Pull> pulls = new EnumMap<>(Side.class);
        for (Side side : Side.values()) {
            CordReading cord = readings.cord(side);
            pulls.put(side, cord.pull());
            if (keep == Keep.IDEAL) {
                continue;
            }
            try {
                trace =
                        keep == Keep.LIGHT
                                ? light(trace, ideal, cord, kit)
                                : hand(trace, ideal, cord, kit, readings.detail());
                int count = cord.pull().newtons().length;
                pulls.put(side, Pull.of(trace, side, Cord.of(trace, side, kit), count));
            } catch (Refusal refusal) {
                why.put(side, refusal.where() + " " + refusal.what());
            }
        }
        return new Staged(keep, readings.leader(), trace, why, pulls);
    }

    private static Trace light(Trace trace, Trace ideal, CordReading cord, Kit kit) {
        Side side = cord.side();
        // A pendulum that nobody drives does by itself what a cord does: nothing to keep.
        if (ideal.pairing().part(side).motion().undriven()) {
            return trace;
        }
        KeepTheLight light = cord.light().orElseGet(() -> KeepTheLight.of(ideal, side, kit));
        if (!light.possible()) {
            throw new Refusal(
                    light.freeFalls().isEmpty()
                            ? "would have to jump"
                            : "has nowhere to be: the light asks the head to fall freely",
                    "the " + side.word() + " hand",
                    "change the tempo or the sizes");
        }
        return light.in(trace);
    }

    private static Trace hand(Trace trace, Trace ideal, CordReading cord, Kit kit, Detail detail) {
        Side side = cord.side();
        Optional<KeepTheHand> known = cord.hand();
        if (known.isEmpty() && detail == Detail.SETTLED && !cord.refused().isEmpty()) {
            throw cord.refused().get(0);
        }
        KeepTheHand hand = known.orElseGet(() -> KeepTheHand.of(ideal, side, kit));
        return hand.in(
                trace,
                hand.best()
                        .orElseThrow(
                                () ->
                                        new Refusal(
                                                hand.solutions().stream()
                                                                .anyMatch(
                                                                        KeepTheHand.Solution::pulls)
                                                        ? "settles only on another motion than the"
                                                                + " one meant"
                                                        : hand.solutions().isEmpty()
                                                                ? "settles on no motion with these"
                                                                        + " turns at this tempo"
                                                                : "would have to be pushed at this"
                                                                        + " tempo",
                                                "the " + side.word() + " poi",
                                                "spin faster, or keep the light")));
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

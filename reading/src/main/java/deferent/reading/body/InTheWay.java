package deferent.reading.body;

import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Something in the way of something else as a pattern is placed: what {@link Clash}, {@link Tender}
 * and {@link ArmThrough} find at full sampling, put together.
 *
 * @param what what is in the way of what
 * @param side whose head or cord, or whose arm; of both sides together none
 * @param forearm of arms, whether it is the forearm
 * @param time when first, or when it is worst, seconds
 */
public record InTheWay(What what, Optional<Side> side, boolean forearm, double time) {
    /** What is in the way of what. */
    public enum What {
        /** The cords of one another. */
        CORDS,
        /** The heads. */
        HEADS,
        /** The other hand of a side's head. */
        HAND,
        /** The body of a side's head or cord. */
        BODY,
        /** A side's arm of the other's poi. */
        ARM_OF_POI,
        /** A side's arm of the other arm. */
        ARM_OF_ARM,
        /** The body of a side's arm. */
        BODY_OF_ARM
    }

    public InTheWay {
        Refusal.numbers("what is in the way", time);
        boolean both = what == What.CORDS || what == What.HEADS;
        if (both == side.isPresent()) {
            throw new Refusal(
                    both ? "has a side" : "has no side",
                    "what is in the way",
                    "name a side of all but cords and heads together");
        }
    }

    /**
     * All of it, by time.
     *
     * @param reach the trace's reach
     */
    public static List<InTheWay> of(Trace trace, Reach reach, KeptClear kept) {
        List<InTheWay> all = new ArrayList<>();
        Clash clash = new Clash(trace, kept.headRadius());
        Nearness cords = clash.cords();
        if (cords.distance() < kept.cords()) {
            all.add(new InTheWay(What.CORDS, Optional.empty(), false, cords.time()));
        }
        clash.heads()
                .filter(met -> met.speed() > kept.knock())
                .ifPresent(
                        met ->
                                all.add(
                                        new InTheWay(
                                                What.HEADS, Optional.empty(), false, met.time())));
        Tender tender = new Tender(trace, reach.performer(), kept.headRadius());
        for (Side side : Side.values()) {
            clash.handStruck(side)
                    .filter(met -> met.speed() > kept.knock())
                    .ifPresent(
                            met ->
                                    all.add(
                                            new InTheWay(
                                                    What.HAND,
                                                    Optional.of(side),
                                                    false,
                                                    met.time())));
            Nearness body = tender.nearest(side);
            if (body.distance() < kept.body()) {
                all.add(new InTheWay(What.BODY, Optional.of(side), false, body.time()));
            }
        }
        if (armsJudged(reach)) {
            arms(trace, reach, kept, all);
        }
        all.sort(Comparator.comparingDouble(InTheWay::time).thenComparing(InTheWay::what));
        return List.copyOf(all);
    }

    /** Whether both hands are reached, so that it is known how arms are held. */
    public static boolean armsJudged(Reach reach) {
        return reach.reached() || reach.atFullStretch();
    }

    private static void arms(Trace trace, Reach reach, KeptClear kept, List<InTheWay> all) {
        PoseOver pose = PoseOver.surely(trace, reach, kept.headRadius());
        for (ArmThrough through : ArmThrough.of(pose)) {
            What what =
                    switch (through.what()) {
                        case CORD -> What.ARM_OF_POI;
                        case ARM -> What.ARM_OF_ARM;
                        case BODY -> What.BODY_OF_ARM;
                    };
            all.add(
                    new InTheWay(
                            what, Optional.of(through.side()), through.forearm(), through.time()));
        }
    }
}

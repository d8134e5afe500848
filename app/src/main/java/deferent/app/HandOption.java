package deferent.app;

import deferent.motion.pairing.HandLimits;
import deferent.reading.body.Performer;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What a hand can do turn after turn, which bounds the closest figure it draws. */
final class HandOption {
    @Option(
            names = "--hand-speed",
            paramLabel = "SPEED",
            converter = Quantity.Speed.class,
            description = "What a practised hand goes at most, such as 6m/s; 5 m/s unsaid.")
    private @Nullable Double speed;

    @Option(
            names = "--hand-acceleration",
            paramLabel = "ACCELERATION",
            converter = Quantity.Acceleration.class,
            description = "What it quickens by at most, such as 80m/s2; 60 m/s² unsaid.")
    private @Nullable Double acceleration;

    @Option(
            names = "--hand-leave",
            paramLabel = "LENGTH",
            converter = Quantity.Length.class,
            description = "How far it may be from where its ideal is; as far as it takes unsaid.")
    private @Nullable Double leave;

    /** The performer said so far, with what the options say. */
    Performer of(Performer said) {
        HandLimits hands = said.hands();
        HandLimits paced =
                hands.withPace(
                        speed == null ? hands.speed() : speed,
                        acceleration == null ? hands.acceleration() : acceleration);
        return said.withHands(leave == null ? paced : paced.withLeave(leave));
    }
}

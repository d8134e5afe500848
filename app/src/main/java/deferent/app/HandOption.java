package deferent.app;

import deferent.reading.closest.HandLimits;
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

    /** The usual limits, with what the options say. */
    HandLimits limits() {
        HandLimits usual = HandLimits.USUAL;
        return usual.withPace(
                speed == null ? usual.speed() : speed,
                acceleration == null ? usual.acceleration() : acceleration);
    }
}

package deferent.app;

import deferent.reading.body.Performer;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Who spins: the lengths of a body that reach is read for. */
final class PerformerOption {
    @Option(
            names = "--stature",
            paramLabel = "LENGTH",
            converter = Quantity.Length.class,
            description = "The performer's, such as 172cm.")
    private @Nullable Double stature;

    @Option(
            names = "--arm",
            paramLabel = "LENGTH",
            converter = Quantity.Length.class,
            description = "Shoulder joint to the middle of the closed fist, where measured.")
    private @Nullable Double arm;

    @Option(
            names = "--shoulders",
            paramLabel = "LENGTH",
            converter = Quantity.Length.class,
            description = "Shoulder joint to shoulder joint, where measured.")
    private @Nullable Double shoulders;

    /** The performer said so far, with what the options say. */
    Performer of(Performer said) {
        return new Performer(
                stature == null ? said.statureSaid() : OptionalDouble.of(stature),
                arm == null ? said.armSaid() : OptionalDouble.of(arm),
                shoulders == null ? said.shoulderWidthSaid() : OptionalDouble.of(shoulders),
                said.hands());
    }
}

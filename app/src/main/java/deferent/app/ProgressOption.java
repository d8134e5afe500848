package deferent.app;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Whether it is told how far long work is. */
final class ProgressOption {
    @Option(
            names = "--progress",
            description =
                    "Tell more often how far it is where nobody watches; on a terminal it is told anyway.")
    private boolean asked;

    @Spec(Spec.Target.MIXEE)
    private @Nullable CommandSpec command;

    Progress line() {
        return new Progress(Manners.of(Objects.requireNonNull(command, "picocli sets it")), asked);
    }
}

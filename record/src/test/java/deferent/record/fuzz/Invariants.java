package deferent.record.fuzz;

import java.util.List;
import java.util.stream.Stream;

/** The written list: what holds of every reading, whatever was asked. */
final class Invariants {
    static final List<Invariant> ALL =
            Stream.of(
                            SaidInvariants.ALL,
                            LinkInvariants.ALL,
                            BodyInvariants.ALL,
                            DangerInvariants.ALL,
                            CordInvariants.ALL,
                            FitInvariants.ALL,
                            ChangedInvariants.ALL,
                            TwiceInvariants.ALL)
                    .flatMap(List::stream)
                    .toList();

    /**
     * By name, those that some phrase still breaks, each with what was seen of it: goals, not yet
     * promises. Whoever cures one takes it off.
     */
    static final List<String> SOUGHT =
            List.of(
                    // Up to some five seconds, where many turns go to the cycle or a motion forks.
                    "no answer takes over two seconds of a processor");

    private Invariants() {}
}

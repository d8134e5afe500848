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
                            CordInvariants.ALL,
                            TwiceInvariants.ALL)
                    .flatMap(List::stream)
                    .toList();

    /**
     * By name, those that some phrase still breaks, each with what was seen of it: goals, not yet
     * promises. Whoever cures one takes it off.
     */
    static final List<String> SOUGHT =
            List.of(
                    // The slowest tempi of fast flowers behind a kept hand, up to some three
                    // seconds.
                    "no answer takes over two seconds of a processor");

    private Invariants() {}
}

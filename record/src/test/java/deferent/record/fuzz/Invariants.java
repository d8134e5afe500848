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

    private Invariants() {}
}

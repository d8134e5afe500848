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
                    // Up to some three seconds, for slowest tempi behind a kept hand of fast
                    // flowers.
                    "no answer takes over two seconds of a processor",
                    // By half its length and more, where a cord with mass keeps a figure in a
                    // turning or tipped plane.
                    "a cord is as long as its tether at every instant",
                    // A twentieth off, seen on two phrases of two hundred.
                    "hand and gravity give what the head's energy rises by",
                    // Where a cycle holds many swings, a fall between two samples is missed.
                    "a pull that a kept figure loses is told as a free fall",
                    // A least pull half a hundredth off where it has two dips, and what rests on a
                    // fall
                    // that is missed: seen on three phrases of eight hundred.
                    "a mirrored pairing reads mirrored, and so do the kept figure",
                    "with the hands' motions swapped each reading goes with its motion, and so do",
                    // A ten-thousandth to a thousandth off, where a cycle holds two dozen turns.
                    "begun at another moment of the cycle it reads the same",
                    "with all lengths s times and the tempo 1/√s the cord reads the same in weights");

    private Invariants() {}
}

package deferent.search.seek;

import deferent.motion.pairing.Refusal;
import java.util.Arrays;
import java.util.List;

/**
 * What a band's head paths have found: one row a class match, in plain arrays under stable keys.
 * Carrier and rider are the least of their classes, so a match has one name however the work was
 * cut.
 *
 * @param carriers the least key of those that draw the head path
 * @param leads how many motions draw it
 * @param simplest of those the simplest to say, then the least
 * @param riders the least number of a hand path of the hand class
 * @param follows how many motions have such a hand path
 * @param gaps clock gap, in tethers, or shares of the size where tethers are free
 * @param heads head classes that asked
 * @param hands hand classes in the band's reach
 * @param compared full comparisons of two curves
 */
public record BandMatches(
        long[] carriers,
        int[] leads,
        long[] simplest,
        int[] riders,
        int[] follows,
        double[] gaps,
        long heads,
        long hands,
        long compared) {
    public BandMatches {
        for (int length :
                new int[] {
                    leads.length, simplest.length, riders.length, follows.length, gaps.length
                }) {
            if (length != carriers.length) {
                throw new Refusal("has arrays of different lengths", "matches", "give one a match");
            }
        }
    }

    public int count() {
        return carriers.length;
    }

    /** Whether a match links without changing a size. */
    public boolean exact(int match) {
        return gaps[match] <= Answers.EXACT;
    }

    static BandMatches of(Space space, HeadClasses heads, HandClasses hands, List<Matches> parts) {
        int count = parts.stream().mapToInt(Matches::count).sum();
        BandMatches out =
                new BandMatches(
                        new long[count],
                        new int[count],
                        new long[count],
                        new int[count],
                        new int[count],
                        new double[count],
                        heads.count(),
                        hands.count(),
                        parts.stream().mapToLong(Matches::comparisons).sum());
        int at = 0;
        int before = -1;
        for (Matches part : parts) {
            for (int i = 0; i < part.count(); i++) {
                int head = part.head(i);
                out.carriers[at] = heads.key(head, 0);
                out.leads[at] = heads.size(head);
                out.simplest[at] =
                        head == before
                                ? out.simplest[at - 1]
                                : Sight.simplest(space, heads.members(head));
                out.riders[at] = hands.path(part.hand(i));
                out.follows[at] = hands.riders(part.hand(i));
                out.gaps[at++] = part.gap(i);
                before = head;
            }
        }
        return out;
    }

    /** The matches of several bands as one. */
    public static BandMatches all(List<BandMatches> bands) {
        int count = bands.stream().mapToInt(BandMatches::count).sum();
        long[] carriers = new long[count];
        int[] leads = new int[count];
        long[] simplest = new long[count];
        int[] riders = new int[count];
        int[] follows = new int[count];
        double[] gaps = new double[count];
        int at = 0;
        for (BandMatches band : bands) {
            int more = band.count();
            System.arraycopy(band.carriers, 0, carriers, at, more);
            System.arraycopy(band.leads, 0, leads, at, more);
            System.arraycopy(band.simplest, 0, simplest, at, more);
            System.arraycopy(band.riders, 0, riders, at, more);
            System.arraycopy(band.follows, 0, follows, at, more);
            System.arraycopy(band.gaps, 0, gaps, at, more);
            at += more;
        }
        return new BandMatches(
                carriers,
                leads,
                simplest,
                riders,
                follows,
                gaps,
                bands.stream().mapToLong(BandMatches::heads).sum(),
                bands.stream().mapToLong(BandMatches::hands).sum(),
                bands.stream().mapToLong(BandMatches::compared).sum());
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof BandMatches that
                && Arrays.equals(carriers, that.carriers)
                && Arrays.equals(leads, that.leads)
                && Arrays.equals(simplest, that.simplest)
                && Arrays.equals(riders, that.riders)
                && Arrays.equals(follows, that.follows)
                && Arrays.equals(gaps, that.gaps);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(carriers) + Arrays.hashCode(riders);
    }
}

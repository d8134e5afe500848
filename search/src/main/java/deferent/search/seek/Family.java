package deferent.search.seek;

import deferent.motion.pairing.Pairing;
import java.util.List;

/**
 * What one answer stands for beside itself: the same thing to try in other sizes, from other
 * starts, with other petals.
 *
 * @param name what stays, as the search names it
 * @param sizes in how many sizes it links
 * @param pairs of carrier and rider in all of them
 * @param members those that are called otherwise, plainest first, {@value #MOST} at the most
 */
public record Family(String name, int sizes, long pairs, List<Member> members) {
    static final int MOST = 8;

    public Family {
        members = List.copyOf(members);
    }

    /** One that is told by its name alone. */
    static Family of(String name, long pairs) {
        return new Family(name, 1, pairs, List.of());
    }

    /**
     * Another of the family.
     *
     * @param idea what it is called
     * @param pairing in sizes that a hand can learn
     * @param said its phrase, or a description
     * @param phrase whether {@code said} is a phrase
     */
    public record Member(Idea idea, Pairing pairing, String said, boolean phrase) {}
}

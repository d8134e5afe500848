package deferent.search.seek;

import deferent.motion.pairing.Pairing;

/**
 * A pairing like a given one.
 *
 * @param answer the class it stands in, with this pairing as its representative
 * @param distance how far hands and heads are from the given one's, metres, however the two are
 *     placed
 */
public record Like(Answer answer, double distance) {
    public Pairing pairing() {
        return answer.pairing();
    }
}

package deferent.page.sheet;

import deferent.motion.phrase.Lexicon;
import deferent.page.View;

/**
 * What pages are printed for: a paper, an onlooker and a hand.
 *
 * @param size of the paper
 * @param stand who looks
 * @param mirrored whether every pairing is mirrored, for those who spin the other hand first
 * @param lexicon the user's own names for motions
 */
public record Edition(PageSize size, View.Stand stand, boolean mirrored, Lexicon lexicon) {
    /** A4, as the audience sees it, not mirrored. */
    public static final Edition USUAL =
            new Edition(PageSize.A4, View.Stand.AUDIENCE, false, Lexicon.EMPTY);

    public Edition with(PageSize other) {
        return new Edition(other, stand, mirrored, lexicon);
    }

    public Edition with(View.Stand other) {
        return new Edition(size, other, mirrored, lexicon);
    }

    public Edition with(Lexicon other) {
        return new Edition(size, stand, mirrored, other);
    }

    /** With every pairing mirrored, or not. */
    public Edition mirrored(boolean other) {
        return new Edition(size, stand, other, lexicon);
    }
}

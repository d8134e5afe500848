package deferent.page.sheet;

import deferent.search.transition.Hindrance;
import deferent.search.transition.Transition;
import java.util.Optional;

/**
 * What leads from one pattern to another, to be told on a sheet.
 *
 * @param from the name of the pattern that is left
 * @param to the name of the one that is joined
 * @param way the best transition and its drawing; none where nothing leads over
 * @param why why nothing does
 */
record Onward(String from, String to, Optional<Way> way, Hindrance why) {
    /**
     * A transition as it is printed.
     *
     * @param outlook from where it is seen
     */
    record Way(Transition transition, Passage passage, Outlook outlook) {}
}

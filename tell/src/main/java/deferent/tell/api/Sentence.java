package deferent.tell.api;

import deferent.motion.api.TwoPoi;
import deferent.motion.api.opened.Opened;
import deferent.reading.body.Performer;
import deferent.reading.worked.Detail;
import deferent.search.whole.Readings;
import deferent.tell.Telling;
import java.util.List;

/**
 * Something that is told of a pairing.
 *
 * @param about the key of what it tells of, such as "link"; the same as in readings as JSON
 * @param text the sentence, in English
 * @param why where it comes from, with its numbers; may be empty
 */
public record Sentence(String about, String text, String why) {
    /**
     * All that is told of a pairing, for a performer and poi of usual sizes. Takes a second or
     * more.
     *
     * <p>Dangers are among it. That none is told is no permission.
     *
     * @param pairing what is spun
     * @return the sentences, in the order in which they are told
     */
    public static List<Sentence> of(TwoPoi pairing) {
        return Telling.of(Readings.of(Opened.pairing(pairing), Performer.USUAL, Detail.SETTLED))
                .stream()
                .map(told -> new Sentence(told.key(), told.text(), told.why()))
                .toList();
    }

    /**
     * What to mind whatever is spun; shown wherever sentences are.
     *
     * @return sentences in English
     */
    public static List<String> cautions() {
        return Telling.cautions();
    }
}

package deferent.studio;

import deferent.motion.pairing.Pairing;
import deferent.motion.phrase.Completion;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.motion.phrase.Words;
import deferent.motion.shared.Refused;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.page.web.SceneJson;
import java.util.List;
import java.util.Optional;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** What the small moving pictures of the page move through, wherever something is picked. */
final class SmallPictures {
    /** Even times of a cycle: enough for a picture of a hundred pixels. */
    static final int USUAL = 96;

    private static final int MOST_PHRASES = 120;
    private static final int MOST_COMPLETIONS = 8;

    static final AskKey<List<String>> PHRASES =
            AskKey.texts("phrases", "what they show; unsaid is the gallery", MOST_PHRASES);
    static final AskKey<Integer> SAMPLES =
            AskKey.whole("samples", "how many even times of the cycle", 24, 720);
    static final AskKey<String> TEXT = AskKey.text("text", "the phrase as far as it is written");
    static final AskKey<Integer> AT =
            AskKey.whole("at", "how much of it stands before the place; unsaid is all", 0, 2000);

    private SmallPictures() {}

    /** What phrases show; one that cannot be read comes without. */
    static ObjectNode moves(Question asked, Lexicon lexicon) {
        int samples = asked.or(SAMPLES, USUAL);
        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        ArrayNode list = answer.putArray("shown");
        for (String phrase : asked.or(PHRASES, Gallery.PHRASES)) {
            ObjectNode node = list.addObject().put("phrase", phrase);
            read(phrase, lexicon).ifPresent(p -> node.set("moves", of(p, samples)));
        }
        return answer;
    }

    /** What could be written at a place of a phrase, each with its picture. */
    static ObjectNode complete(Question asked, Lexicon lexicon) {
        String text = asked.get(TEXT);
        int at = Math.min(text.length(), asked.or(AT, text.length()));
        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        ArrayNode list = answer.putArray("completions");
        for (Completion one : Completion.at(text, at, lexicon, MOST_COMPLETIONS)) {
            ObjectNode node = list.addObject();
            node.put("says", one.says());
            node.put("means", one.means());
            node.put("start", one.start());
            node.put("end", one.end());
            node.put("text", one.text());
            node.put("caret", one.caret());
            node.put("alone", one.alone());
            read(one.shows(), lexicon).ifPresent(p -> node.set("moves", of(p, USUAL)));
        }
        return answer;
    }

    /** Where a word goes in a phrase, and the phrase that shows it. */
    static void word(ObjectNode node, Words.Entry entry, Lexicon lexicon) {
        node.put("goes", entry.goes().name().toLowerCase(java.util.Locale.ROOT));
        entry.shown(lexicon).ifPresent(s -> node.put("shows", s.phrase()).put("alone", s.alone()));
    }

    private static Optional<Pairing> read(String phrase, Lexicon lexicon) {
        try {
            return Optional.of(Phrase.parse(phrase, lexicon).pairing());
        } catch (Refused unreadable) {
            return Optional.empty();
        }
    }

    /** Both hands and heads over one cycle. */
    static ObjectNode of(Pairing pairing, int samples) {
        Trace trace = Trace.of(pairing);
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("period_s", trace.period());
        node.put("count", samples);
        node.set("samples", SceneJson.samples(trace, samples, List.of(Side.values())));
        return node;
    }
}

package deferent.record;

import static java.time.temporal.ChronoUnit.MILLIS;

import deferent.motion.phrase.Lexicon;
import java.util.List;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** What stands on a shelf, as {@code shelf list --json} and the studio answer it. */
public final class ShelfJson {
    private ShelfJson() {}

    public static String write(Shelf shelf) {
        return PrettyJson.text(tree(shelf));
    }

    public static ObjectNode tree(Shelf shelf) {
        Shelf.Listing listing = shelf.look();
        Lexicon words = listing.words().lexicon();
        ObjectNode answer = JsonNodeFactory.instance.objectNode();
        answer.put("folder", shelf.folder().toString());
        List.of("patterns", "motions", "sets", "songs").forEach(answer::putArray);
        for (Kept kept : listing.kept()) {
            Document document = kept.document();
            ObjectNode node = answer.withArray("/" + document.kind() + "s").addObject();
            node.put("id", kept.id());
            node.put("name", document.name());
            node.put("note", document.note());
            node.put("revision", kept.revision());
            shelf.changed(kept.id())
                    .ifPresent(at -> node.put("changed", at.truncatedTo(MILLIS).toString()));
            ArrayNode tags = node.putArray("tags");
            document.tags().forEach(tags::add);
            if (document instanceof PatternDocument p) {
                node.put("phrase", p.phrase().orElse(""));
                node.put("tempo_cycles_per_min", p.pairing().tempo());
                p.disagreement(words).ifPresent(told -> node.put("disagrees", told));
            }
            if (document instanceof SetDocument set) {
                node.set("steps", StepsJson.write(set.steps()));
            }
            if (document instanceof SongDocument song) {
                node.put("seconds", song.sound().seconds());
                node.put("beats_per_min", song.beats().tempo());
            }
        }
        ArrayNode others = answer.putArray("not_listed");
        listing.notListed()
                .forEach(n -> others.addObject().put("file", n.file()).put("why", n.why()));
        return answer;
    }
}

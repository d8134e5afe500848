package deferent.sound.words;

import static deferent.record.number.Written.rounded;

import deferent.record.PrettyJson;
import deferent.record.SongJson;
import deferent.record.ToldJson;
import deferent.sound.SongReading;
import java.util.Locale;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** What was found in a song, as JSON. */
public final class SongTree {
    private SongTree() {}

    /** As text. */
    public static String write(SongReading song, String name) {
        return PrettyJson.text(tree(song, name));
    }

    /** As a tree; {@code name} is the file's. */
    public static ObjectNode tree(SongReading song, String name) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("name", name);
        ToldJson.put(node.putArray("told"), TellSong.of(song));
        node.put("seconds", rounded(song.seconds()));
        node.put("beats_per_min", rounded(song.beats().tempo()));
        node.put("slowest_beats_per_min", rounded(song.slowest()));
        node.put("quickest_beats_per_min", rounded(song.quickest()));
        node.put("level", word(song.level()));
        node.put("bars", word(song.bars()));
        node.put("clear", rounded(song.clear()));
        SongJson.put(node, song.beats());
        ArrayNode loud = node.putArray("loud");
        song.loud().forEach(one -> loud.add(Math.round(1000 * one) / 1000.0));
        node.put("loud_per_s", SongReading.LOUD_RATE);
        return node;
    }

    private static String word(SongReading.Sure sure) {
        return sure.name().toLowerCase(Locale.ROOT);
    }
}

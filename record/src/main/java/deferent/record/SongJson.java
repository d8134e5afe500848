package deferent.record;

import deferent.motion.song.Beats;
import java.util.ArrayList;
import java.util.List;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** What a song's document holds beside its name, and what is told of its beats. */
public final class SongJson {
    private SongJson() {}

    static void write(ObjectNode node, SongDocument song) {
        node.putObject("sound")
                .put("file", song.sound().file())
                .put("sha256", song.sound().sha256())
                .put("seconds", song.sound().seconds());
        put(node, song.beats());
        if (song.mended()) {
            node.put("mended", true);
        }
    }

    /** Beats under the keys that a document has for them. */
    public static void put(ObjectNode node, Beats beats) {
        node.put("beats_a_bar", beats.beatsABar());
        node.put("first_bar", beats.firstBar());
        ArrayNode times = node.putArray("beats_s");
        beats.times().forEach(times::add);
    }

    static SongSound sound(Keys keys) {
        String file = keys.text("file", SongSound.PATH);
        String hash = keys.plainText("sha256", 64);
        double seconds = keys.positive("seconds", SongSound.LONGEST, "s");
        keys.done();
        return keys.madeOf("sha256", () -> new SongSound(file, hash, seconds));
    }

    /** The beats under those keys. */
    public static Beats beats(Keys keys) {
        int aBar = keys.whole("beats_a_bar", 1, Beats.LONGEST_BAR);
        int firstBar = keys.whole("first_bar", 0, Beats.LONGEST_BAR - 1);
        List<Double> times = new ArrayList<>();
        for (Keys.Item item : keys.items("beats_s", 2, SongDocument.MOST_BEATS)) {
            times.add(item.number(0, SongSound.LONGEST, "s"));
        }
        return keys.madeOf(
                firstBar < aBar ? "beats_s" : "first_bar", () -> new Beats(times, aBar, firstBar));
    }
}

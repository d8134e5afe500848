package deferent.record;

import deferent.motion.pairing.Side;
import deferent.reading.photo.Blinks;
import deferent.reading.photo.FigureTime;
import deferent.reading.photo.HeadLight;
import deferent.reading.photo.Persistence;
import deferent.reading.photo.PhotoReading;
import deferent.reading.photo.Shutter;
import deferent.reading.photo.Spread;
import deferent.tell.TellPhoto;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * A photo reading as JSON, in the manner of {@link ReadingsJson}: lengths end in _m, times in _s.
 */
public final class PhotoJson {
    private PhotoJson() {}

    public static String write(PhotoReading photo) {
        return PrettyJson.text(tree(photo));
    }

    /** The reading as a tree, to be part of a larger answer. */
    public static ObjectNode tree(PhotoReading photo) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        ReadingsJson.put(node, "tempo_cycles_per_min", photo.tempo());
        ReadingsJson.put(node, "light_diameter_m", photo.diameter());
        figure(node.putObject("common"), photo.common());
        ReadingsJson.put(node, "frames_per_s", photo.frames());
        photo.shutter().ifPresent(s -> ReadingsJson.put(node, "shutter_s", s));
        ObjectNode persistence = node.putObject("persistence");
        ReadingsJson.put(persistence, "shortest_s", Persistence.SHORTEST);
        ReadingsJson.put(persistence, "about_s", Persistence.ABOUT);
        ReadingsJson.put(persistence, "longest_s", Persistence.LONGEST);
        photo.led()
                .ifPresent(
                        led -> {
                            ObjectNode blinking = node.putObject("led");
                            ReadingsJson.put(blinking, "rate_hz", led.hertz());
                            ReadingsJson.put(blinking, "duty", led.duty());
                        });
        ObjectNode lights = node.putObject("lights");
        for (Side side : Side.values()) {
            photo.light(side).ifPresent(l -> light(lights.putObject(side.word()), l, photo));
        }
        ToldJson.put(node.putArray("told"), TellPhoto.of(photo));
        ArrayNode cautions = node.putArray("cautions");
        TellPhoto.cautions(photo).forEach(cautions::add);
        return node;
    }

    private static void light(ObjectNode node, HeadLight light, PhotoReading photo) {
        figure(node.putObject("figure"), light.figure());
        ReadingsJson.put(node, "length_m", light.length());
        ReadingsJson.put(node, "speed_m_per_s", light.speed());
        ReadingsJson.put(node, "frames_per_s", light.frames());
        ReadingsJson.put(node, "frames_mean_per_s", light.framesMean());
        ReadingsJson.put(node, "turns_per_s", light.turns());
        photo.shutter()
                .ifPresent(
                        s ->
                                ReadingsJson.put(
                                        node, "figures_in_shutter", light.figure().figures(s)));
        ObjectNode seen = node.putObject("seen_at_once");
        seen.put("whole", Keys.word(light.seen().whole()));
        ReadingsJson.put(seen, "least_share", light.seen().least());
        ReadingsJson.put(seen, "usual_share", light.seen().usual());
        ReadingsJson.put(seen, "greatest_share", light.seen().most());
        light.blinks().ifPresent(b -> blinks(node.putObject("blinks"), b));
    }

    private static void blinks(ObjectNode node, Blinks blinks) {
        ReadingsJson.put(node, "a_figure", blinks.figure());
        node.put("stands", blinks.stands());
        spread(node.putObject("pitch"), blinks.pitch());
        spread(node.putObject("dash"), blinks.dash());
        spread(node.putObject("dark"), blinks.dark());
        ReadingsJson.put(node, "unbroken_share", blinks.unbroken());
    }

    private static void spread(ObjectNode node, Spread spread) {
        ReadingsJson.put(node, "least_m", spread.least());
        ReadingsJson.put(node, "mean_m", spread.mean());
        ReadingsJson.put(node, "greatest_m", spread.greatest());
    }

    private static void figure(ObjectNode node, FigureTime figure) {
        ReadingsJson.put(node, "time_s", figure.time());
        shutter(node.putObject("nearest_full_stop"), figure.full(), figure);
        shutter(node.putObject("nearest_third_stop"), figure.third(), figure);
        figure.closes().ifPresent(s -> shutter(node.putObject("shortest_that_closes"), s, figure));
    }

    private static void shutter(ObjectNode node, Shutter shutter, FigureTime figure) {
        node.put("mark", shutter.mark());
        ReadingsJson.put(node, "marked_s", shutter.marked());
        ReadingsJson.put(node, "time_s", shutter.seconds());
        ReadingsJson.put(node, "figures", figure.figures(shutter.seconds()));
    }
}

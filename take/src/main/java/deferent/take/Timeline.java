package deferent.take;

import deferent.motion.trace.Rate;
import deferent.record.cue.SetCue;
import deferent.record.cue.SetCues;
import deferent.record.cue.SungSet;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * Cues as markers on a timeline with the song, for programs that cut films: OpenTimelineIO's JSON
 * (Academy Software Foundation, serialized data, schema versions Timeline.1, Stack.1, Track.1,
 * Clip.2, Marker.2). Of the formats that such programs share it alone is open, says its frame rate
 * as an exact number and keeps a name, a length and a colour with each marker; older edit lists cut
 * names off and have no field for a marker.
 *
 * @param cues of the set, by the song's clock
 * @param sung the set with its song; empty for one without
 * @param rate frames a second of the timeline; a marker stands on the frame nearest to its cue
 */
record Timeline(SetCues cues, Optional<SungSet> sung, Rate rate) {
    private static final Map<SetCue.Kind, String> COLOURS =
            Map.of(
                    SetCue.Kind.PATTERN, "GREEN",
                    SetCue.Kind.TRANSITION, "CYAN",
                    SetCue.Kind.TURN, "YELLOW",
                    SetCue.Kind.END, "WHITE");

    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    String json() {
        ObjectNode timeline = schema("Timeline.1", cues.name());
        timeline.putNull("global_start_time");
        timeline.set("tracks", stack());
        return MAPPER.writerWithDefaultPrettyPrinter().writeValueAsString(timeline) + "\n";
    }

    private static ObjectNode schema(String schema, String name) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("OTIO_SCHEMA", schema);
        node.putObject("metadata");
        node.put("name", name);
        return node;
    }

    private ObjectNode stack() {
        ObjectNode stack = item("Stack.1", "tracks");
        ArrayNode markers = stack.putArray("markers");
        for (int i = 0; i < cues.cues().size(); i++) {
            SetCue cue = cues.cues().get(i);
            double until = i + 1 < cues.cues().size() ? cues.cues().get(i + 1).time() : cue.time();
            markers.add(marker(cue, until));
        }
        ObjectNode track = item("Track.1", cues.song().orElse(cues.name()));
        track.putArray("markers");
        track.put("kind", "Audio");
        track.putArray("children").add(clip());
        stack.putArray("children").add(track);
        return stack;
    }

    private static ObjectNode item(String schema, String name) {
        ObjectNode item = schema(schema, name);
        item.putNull("source_range");
        item.putArray("effects");
        item.put("enabled", true);
        return item;
    }

    private ObjectNode clip() {
        double ends = cues.cues().get(cues.cues().size() - 1).time();
        ObjectNode clip = item("Clip.2", cues.song().orElse(cues.name()));
        clip.putArray("markers");
        clip.set("source_range", range(0, ends));
        Optional<Path> sound = sung.flatMap(SungSet::sound);
        ObjectNode media =
                schema(
                        sound.isPresent() ? "ExternalReference.1" : "MissingReference.1",
                        cues.song().orElse(""));
        media.putNull("available_range");
        media.putNull("available_image_bounds");
        // By its name alone: whoever cuts keeps it beside.
        sound.ifPresent(file -> media.put("target_url", url(String.valueOf(file.getFileName()))));
        clip.putObject("media_references").set("DEFAULT_MEDIA", media);
        clip.put("active_media_reference_key", "DEFAULT_MEDIA");
        return clip;
    }

    private static String url(String name) {
        try {
            return new URI(null, null, name, null).toASCIIString();
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    private ObjectNode marker(SetCue cue, double until) {
        ObjectNode marker = schema("Marker.2", cue.call());
        marker.put("color", cue.cautions().isEmpty() ? COLOURS.get(cue.kind()) : "RED");
        marker.put(
                "comment",
                String.join(
                        " ", Stream.concat(cue.cautions().stream(), cue.more().stream()).toList()));
        // What is called is short; how long a pattern is kept shows as the marker's length.
        marker.set("marked_range", range(cue.time(), Math.max(until, cue.time())));
        return marker;
    }

    private ObjectNode range(double from, double to) {
        ObjectNode range = JsonNodeFactory.instance.objectNode();
        range.put("OTIO_SCHEMA", "TimeRange.1");
        range.set("start_time", time(frame(from)));
        range.set("duration", time(frame(to) - frame(from)));
        return range;
    }

    private long frame(double seconds) {
        return Math.round(seconds * rate.num() / rate.den());
    }

    private ObjectNode time(long frames) {
        ObjectNode time = JsonNodeFactory.instance.objectNode();
        time.put("OTIO_SCHEMA", "RationalTime.1");
        time.put("rate", rate.perSecond());
        time.put("value", (double) frames);
        return time;
    }
}

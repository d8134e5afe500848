package deferent.studio;

import deferent.motion.link.LinkReading;
import deferent.motion.pairing.Side;
import deferent.motion.trace.Trace;
import java.util.Locale;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** The readings of a trace as the page takes them. */
final class Reader {
    private Reader() {}

    static ObjectNode readings(Trace trace, Matter matter, boolean settled) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("phrase", matter.document().phrase().orElse(matter.said()));
        node.put("tempo_bpm", matter.pairing().tempo());
        node.put("period_s", trace.period());
        ArrayNode links = node.putArray("links");
        for (Side side : Side.values()) {
            LinkReading link =
                    settled ? LinkReading.of(trace, side) : LinkReading.quick(trace, side);
            links.addObject()
                    .put("head", side.word())
                    .put("hand", side.other().word())
                    .put("kind", link.kind().name().toLowerCase(Locale.ROOT))
                    .put("shape_gap_m", link.shapeGap())
                    .put("placed_gap_m", link.placedGap())
                    .put("inplane_gap_m", link.inPlaneGap());
        }
        node.putArray("told");
        return node;
    }
}

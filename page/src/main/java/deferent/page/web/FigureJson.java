package deferent.page.web;

import deferent.motion.shared.Side;
import deferent.motion.trace.Count;
import deferent.motion.trace.Counts;
import deferent.motion.trace.Trace;
import deferent.page.Scene;
import deferent.page.sheet.Taught;
import deferent.reading.body.Performer;
import deferent.reading.body.Person;
import deferent.reading.body.PoseOver;
import deferent.search.set.Stay;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** What the player of pages takes: patterns, sets and the passages between. */
final class FigureJson {
    private static final int PARTS = 4;

    private FigureJson() {}

    /**
     * How finely moving points are given.
     *
     * @param samples of hands and heads over a cycle
     * @param instants of the performer over one hand cycle; 0 for no performer
     */
    record Grain(int samples, int instants) {}

    /** How a pattern is played: its tempo, its counts, and from where it is seen. */
    static ObjectNode played(ObjectNode node, Taught taught) {
        Trace trace = taught.trace();
        node.put("tempo", taught.pattern().pairing().tempo());
        node.put("period_s", trace.period());
        node.put("stand", taught.side().name().toLowerCase(Locale.ROOT));
        counts(node.putArray("counts"), trace, Counts.of(trace));
        counts(node.putArray("parts"), trace, Counts.moments(trace, PARTS));
        return node;
    }

    private static void counts(ArrayNode into, Trace trace, List<Count> counts) {
        for (Count count : counts) {
            into.addObject()
                    .put("share", (count.time() - trace.interval().start()) / trace.period())
                    .put("said", count.said());
        }
    }

    /** A pattern's moving points. */
    static ObjectNode scene(Taught taught, Grain grain) {
        int cycles =
                Stream.of(Side.values())
                        .mapToInt(side -> taught.trace().pairing().part(side).cycles())
                        .max()
                        .orElse(1);
        return scene(taught.trace(), taught.pattern().performer(), grain, cycles);
    }

    /** The moving points of a trace that is as long as so many cycles. */
    private static ObjectNode scene(Trace trace, Performer performer, Grain grain, double cycles) {
        Optional<Person> body =
                grain.instants() == 0
                        ? Optional.empty()
                        : Optional.of(Person.of(PoseOver.of(trace, performer)));
        return SceneJson.of(
                Scene.of(trace, grain.samples(), Scene.nearer(trace), body),
                Math.max(1, (int) Math.ceil(grain.instants() * cycles)));
    }

    /**
     * What a step of a set needs to be played: its tempo there, for how many counts, where in its
     * cycle it is entered, and the passage behind it.
     */
    static void step(ObjectNode node, TaughtSet set, int step, Grain grain) {
        Optional<Stay> stay = set.reading().plan().stays().get(step);
        node.put("tempo", stay.map(s -> s.wanted().pairing().tempo()).orElse(0.0));
        node.put("period_s", stay.map(s -> s.wanted().pairing().period()).orElse(1.0));
        node.put("counts", stay.map(Stay::counts).orElse(0.0));
        node.put("starts_s", stay.map(Stay::starts).orElse(0.0));
        node.put("one_s", stay.map(Stay::one).orElse(0.0));
        node.put("count_s", stay.map(s -> s.wanted().count()).orElse(1.0));
        double cycles = stay.map(s -> s.entered() / s.wanted().pairing().period()).orElse(0.0);
        node.put("enters", cycles - Math.floor(cycles));
        Optional<Trace> passage = set.passage(step);
        node.put("wait_s", passage.map(Trace::period).orElse(0.0));
        if (passage.isPresent() && stay.isPresent()) {
            Trace trace = passage.get();
            double lasts = trace.period() / stay.get().wanted().pairing().period();
            // Seen for a moment: half as fine as what comes round again.
            Grain half =
                    new Grain(
                            (int) Math.ceil(grain.samples() * Math.max(1, lasts / 2)),
                            grain.instants() / 2);
            node.set("passage", scene(trace, set.book().performer(), half, lasts));
        } else {
            node.putNull("passage");
        }
    }

    /** A new node. */
    static ObjectNode node() {
        return JsonNodeFactory.instance.objectNode();
    }
}

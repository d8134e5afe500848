package deferent.record;

import deferent.motion.pairing.SpinLaw;
import deferent.motion.pairing.Stretches;
import deferent.motion.pairing.Swing;
import deferent.motion.pairing.Turns;
import java.util.ArrayList;
import java.util.List;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Spin laws as JSON. */
final class SpinJson {
    static final List<String> WORDS = List.of("turns", "stretches", "swing");

    private SpinJson() {}

    static ObjectNode write(SpinLaw spin) {
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        return spin.match(
                even -> {
                    node.put("law", "turns").put("turns", even.turns());
                    Angles.put(node, "start", even.start());
                    return node;
                },
                stretches -> {
                    node.put("law", "stretches");
                    Angles.put(node, "start", stretches.start());
                    node.put("ease_share", stretches.ease());
                    ArrayNode list = node.putArray("stretches");
                    for (Stretches.Stretch s : stretches.stretches()) {
                        list.addObject()
                                .put("share", s.share())
                                .put("turns", s.turns())
                                .put("ease", Keys.word(s.ease()));
                    }
                    return node;
                },
                swing -> {
                    node.put("law", "swing");
                    Angles.put(node, "amplitude", swing.amplitude());
                    Angles.put(node, "rest", swing.rest());
                    return node;
                });
    }

    static SpinLaw read(Keys keys) {
        SpinLaw spin =
                switch (keys.word("law", WORDS)) {
                    case "turns" -> turns(keys);
                    case "stretches" -> stretches(keys);
                    default -> swing(keys);
                };
        keys.done();
        return spin;
    }

    private static SpinLaw turns(Keys keys) {
        int turns = keys.whole("turns", -24, 24);
        double start = keys.angle("start", 0);
        return keys.made(() -> new Turns(turns, start));
    }

    private static SpinLaw stretches(Keys keys) {
        double start = keys.angle("start", 0);
        double eased = keys.number("ease_share", 0, 1, "of the cycle", Stretches.USUAL_EASE);
        List<Stretches.Stretch> list = new ArrayList<>();
        for (Keys.Item item : keys.items("stretches", 1, 48)) {
            Keys one = item.keys();
            double share = one.positive("share", 1, "of the cycle");
            double turns = one.number("turns", -24, 24, "turns");
            Stretches.Ease ease = one.word("ease", Stretches.Ease.class, Stretches.Ease.EVEN);
            one.done();
            list.add(one.made(() -> new Stretches.Stretch(share, turns, ease)));
        }
        boolean narrow = eased > 0 && eased < Stretches.LEAST_EASE;
        return keys.madeOf(
                narrow ? "ease_share" : "stretches", () -> new Stretches(start, list, eased));
    }

    private static SpinLaw swing(Keys keys) {
        double amplitude = keys.angle("amplitude");
        double rest = keys.angle("rest", Swing.DOWN);
        return keys.madeAt(keys.pointerOfAngle("amplitude"), () -> new Swing(amplitude, rest));
    }
}

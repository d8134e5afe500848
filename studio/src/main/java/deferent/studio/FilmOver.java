package deferent.studio;

import deferent.film.over.Overlay;
import deferent.motion.shared.Side;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** What is drawn over a film, as the page takes it: pixels to a tenth. */
final class FilmOver {
    private FilmOver() {}

    static ObjectNode of(Overlay overlay) {
        ObjectNode over = JsonNodeFactory.instance.objectNode();
        over.put("period_s", overlay.period());
        ArrayNode drift = over.putArray("drift");
        for (int i = 0; i < overlay.drift().knots().length; i++) {
            drift.addObject()
                    .put("time_s", overlay.drift().knots()[i])
                    .put("ahead_s", overlay.drift().ahead()[i]);
        }
        ObjectNode sides = over.putObject("sides");
        for (Side side : Side.values()) {
            Overlay.Laid one = overlay.side(side);
            ObjectNode node = sides.putObject(side.word());
            line(node, "head", one.light());
            line(node, "meant", one.meant());
            line(node, "meant_hand", one.meantHand());
            ArrayNode hands = node.putArray("hands");
            for (Overlay.HandAt hand : one.hands()) {
                hands.addObject()
                        .put("share", Math.rint(1e4 * hand.share()) / 1e4)
                        .put("x", tenth(hand.x()))
                        .put("y", tenth(hand.y()))
                        .put("error", tenth(hand.error()));
            }
        }
        return over;
    }

    private static void line(ObjectNode node, String what, double[][] pixels) {
        ArrayNode line = node.putArray(what);
        for (int i = 0; i < pixels[0].length; i++) {
            line.addArray().add(tenth(pixels[0][i])).add(tenth(pixels[1][i]));
        }
    }

    private static double tenth(double pixels) {
        return Math.rint(10 * pixels) / 10;
    }
}

package deferent.studio;

import deferent.film.FilmReading;
import deferent.film.hand.HandSight;
import deferent.film.hand.PixelScale;
import deferent.film.measured.Measured;
import deferent.film.measured.MeasuredSide;
import deferent.motion.pairing.Side;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * What is drawn over a film, in pixels of its upright picture: over one cycle at even moments where
 * each head was and was meant to be and where its hand was, with the clock that turns a moment of
 * the film into one of the cycle.
 */
final class FilmOver {
    private final FilmReading film;
    private final PixelScale scale;

    private FilmOver(FilmReading film) {
        this.film = film;
        this.scale = film.measured().scale();
    }

    static ObjectNode of(FilmReading film) {
        return new FilmOver(film).tree();
    }

    private ObjectNode tree() {
        Measured measured = film.measured();
        ObjectNode over = JsonNodeFactory.instance.objectNode();
        over.put("period_s", measured.period());
        ArrayNode drift = over.putArray("drift");
        for (int i = 0; i < measured.drift().knots().length; i++) {
            drift.addObject()
                    .put("time_s", measured.drift().knots()[i])
                    .put("ahead_s", measured.drift().ahead()[i]);
        }
        ObjectNode sides = over.putObject("sides");
        for (Side side : Side.values()) {
            MeasuredSide one = measured.side(side);
            ObjectNode node = sides.putObject(side.word());
            line(node, "head", one.light());
            line(node, "meant", film.held().meantOver(side, true));
            line(node, "meant_hand", film.held().meantOver(side, false));
            hands(node.putArray("hands"), one);
        }
        return over;
    }

    private void line(ObjectNode node, String what, double[][] metres) {
        ArrayNode line = node.putArray(what);
        for (int i = 0; i < metres[0].length; i++) {
            double[] at = scale.picture(metres[0][i], metres[1][i]);
            line.addArray().add(tenth(at[0])).add(tenth(at[1]));
        }
    }

    private void hands(ArrayNode hands, MeasuredSide side) {
        for (HandSight hand : side.hands()) {
            double[] at = scale.picture(hand.x(), hand.y());
            hands.addObject()
                    .put("share", Math.rint(1e4 * hand.time() / side.head().period()) / 1e4)
                    .put("x", tenth(at[0]))
                    .put("y", tenth(at[1]))
                    .put("error", tenth(hand.error() / scale.metres()));
        }
    }

    private static double tenth(double pixels) {
        return Math.rint(10 * pixels) / 10;
    }
}

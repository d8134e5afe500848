package deferent.film.words;

import deferent.film.FilmReading;
import deferent.film.hand.HandSight;
import deferent.film.held.Held;
import deferent.film.measured.MeasuredSide;
import deferent.motion.shared.Side;
import java.util.List;
import java.util.Locale;

/**
 * The meant figure laid over the measured light, as the camera sees it: bold what the heads drew,
 * dashed what was meant, dotted where the hands were, as broad as they are known. Which hand's is
 * told by colour, and by a letter that stands beside it.
 */
public final class OverlaySvg {
    private static final int EDGE = 900;
    private static final double MARGIN = 0.08;
    private static final List<String> COLOURS = List.of("#4aa3ff", "#ff8a3c");

    private final FilmReading film;
    private final double scale;
    private final double midX;
    private final double midY;

    private OverlaySvg(FilmReading film) {
        this.film = film;
        double[] box = {1e9, -1e9, 1e9, -1e9};
        for (Side side : Side.values()) {
            widen(box, film.measured().side(side).light());
            widen(box, film.held().meantOver(side, true));
        }
        double size = Math.max(0.1, Math.max(box[1] - box[0], box[3] - box[2]));
        this.scale = EDGE * (1 - 2 * MARGIN) / size;
        this.midX = (box[0] + box[1]) / 2;
        this.midY = (box[2] + box[3]) / 2;
    }

    /** The picture as an SVG document. */
    public static String of(FilmReading film) {
        return new OverlaySvg(film).svg();
    }

    private String svg() {
        StringBuilder out = new StringBuilder();
        out.append(
                String.format(
                        Locale.ROOT,
                        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\""
                                + " role=\"img\" font-family=\"sans-serif\" font-size=\"22\">%n",
                        EDGE,
                        EDGE));
        out.append("<title>Bold: what the poi drew. Dashed: what was meant. Dots: the hands.");
        out.append("</title>\n");
        out.append("<rect width=\"100%\" height=\"100%\" fill=\"#101218\"/>\n");
        Held held = film.held();
        for (Side side : Side.values()) {
            String colour = COLOURS.get(side.ordinal());
            MeasuredSide one = film.measured().side(side);
            for (HandSight hand : one.hands()) {
                out.append(
                        String.format(
                                Locale.ROOT,
                                "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"%.1f\" fill=\"%s\""
                                        + " fill-opacity=\"0.12\"/>%n",
                                x(hand.x()),
                                y(hand.y()),
                                Math.max(2, hand.error() * scale),
                                colour));
            }
            double[][] light = one.light();
            line(out, light, colour, "stroke-width=\"5\"");
            line(
                    out,
                    held.meantOver(side, true),
                    colour,
                    "stroke-width=\"2\" stroke-dasharray=\"9 7\"");
            out.append(
                    String.format(
                            Locale.ROOT,
                            "<text x=\"%.1f\" y=\"%.1f\" fill=\"%s\">%s</text>%n",
                            x(light[0][0]) + 8,
                            y(light[1][0]) - 8,
                            colour,
                            side == Side.LEFT ? "L" : "R"));
        }
        return out.append("</svg>\n").toString();
    }

    private void line(StringBuilder out, double[][] at, String colour, String how) {
        out.append("<path fill=\"none\" stroke=\"").append(colour).append("\" ").append(how);
        out.append(" d=\"");
        for (int i = 0; i < at[0].length; i++) {
            out.append(
                    String.format(
                            Locale.ROOT,
                            "%s%.1f %.1f",
                            i == 0 ? "M" : "L",
                            x(at[0][i]),
                            y(at[1][i])));
        }
        out.append("Z\"/>\n");
    }

    private static void widen(double[] box, double[][] at) {
        for (int i = 0; i < at[0].length; i++) {
            box[0] = Math.min(box[0], at[0][i]);
            box[1] = Math.max(box[1], at[0][i]);
            box[2] = Math.min(box[2], at[1][i]);
            box[3] = Math.max(box[3], at[1][i]);
        }
    }

    // The performer faces the camera: their left is the picture's right.
    private double x(double metres) {
        return EDGE / 2.0 + (metres - midX) * scale;
    }

    private double y(double metres) {
        return EDGE / 2.0 - (metres - midY) * scale;
    }
}

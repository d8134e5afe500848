package deferent.film.practice;

import deferent.motion.shared.Side;
import deferent.page.Palette;
import deferent.page.Palette.Ink;
import java.util.Locale;
import java.util.Optional;

/** Draws as SVG. */
final class SvgPen implements Pen {
    private static final double MARK = 5;

    private final StringBuilder out = new StringBuilder();
    private final Palette.Theme theme;

    SvgPen(Palette.Theme theme) {
        this.theme = theme;
    }

    String drawn(double width, double height, String title) {
        return format(
                        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%.0f\" height=\"%.0f\""
                                + " viewBox=\"0 0 %.0f %.0f\" role=\"img\""
                                + " font-family=\"Roboto, sans-serif\">%n",
                        width, height, width, height)
                + "<title>"
                + plain(title)
                + "</title>\n<rect width=\"100%\" height=\"100%\" fill=\""
                + hex(Ink.PAPER)
                + "\"/>\n"
                + out
                + "</svg>\n";
    }

    @Override
    public void line(double[][] points, Ink ink, double width, boolean dashed, boolean closed) {
        out.append("<path fill=\"none\" stroke-linejoin=\"round\" d=\"");
        for (int i = 0; i < points.length; i++) {
            out.append(format("%s%.1f %.1f", i == 0 ? "M" : "L", points[i][0], points[i][1]));
        }
        out.append(closed ? "Z\"" : "\"");
        out.append(format(" stroke=\"%s\" stroke-width=\"%.1f\"", hex(ink), width));
        out.append(dashed ? " stroke-dasharray=\"6 5\"/>\n" : "/>\n");
    }

    @Override
    public void mark(double x, double y, Optional<Side> side, Ink ink, boolean full) {
        String look =
                format(
                        " fill=\"%s\" stroke=\"%s\" stroke-width=\"2\"/>%n",
                        full ? hex(ink) : hex(Ink.PAPER), hex(ink));
        if (side.filter(s -> s == Side.LEFT).isPresent()) {
            out.append(format("<circle cx=\"%.1f\" cy=\"%.1f\" r=\"%.0f\"", x, y, MARK));
        } else {
            String turned =
                    side.isPresent() ? "" : format(" transform=\"rotate(45 %.1f %.1f)\"", x, y);
            out.append(
                    format(
                            "<rect x=\"%.1f\" y=\"%.1f\" width=\"9\" height=\"9\"%s",
                            x - 4.5, y - 4.5, turned));
        }
        out.append(look);
    }

    @Override
    public void words(double x, double y, double size, Ink ink, double along, String words) {
        String anchor = along < 0.25 ? "start" : along > 0.75 ? "end" : "middle";
        out.append(
                format(
                        "<text x=\"%.1f\" y=\"%.1f\" font-size=\"%.0f\" text-anchor=\"%s\""
                                + " fill=\"%s\">%s</text>%n",
                        x, y, size, anchor, hex(ink), plain(words)));
    }

    private String hex(Ink ink) {
        return Palette.hex(ink.on(theme));
    }

    private static String plain(String words) {
        return words.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }

    private static String format(String how, Object... what) {
        return String.format(Locale.ROOT, how, what);
    }
}

package deferent.page;

import deferent.motion.shared.Side;
import java.awt.Color;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * How everything looks, in one place, for paper and browser alike.
 *
 * <p>The colours of hands, heads and link are Okabe and Ito's set, told apart by people with any
 * common kind of colour vision: M. Okabe and K. Ito, Color Universal Design (2008): blue 0072B2,
 * vermilion D55E00, bluish green 009E73 on a light ground; sky blue 56B4E9, orange E69F00, bluish
 * green on a dark one. Colour is never the only sign: the left hand is a ring and its head a disc,
 * the right hand a square and its head a diamond; the left's lines are unbroken, the right's
 * dashed; the link is dotted. Every mark stands off its ground by 3 to 1 and text by 4.5 to 1 (WCAG
 * 2.2, 1.4.11 and 1.4.3).
 */
public final class Palette {
    private Palette() {}

    /** Light or dark ground. */
    public enum Theme {
        LIGHT,
        DARK;

        public String key() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** What a point is marked with. */
    public enum Marker {
        NONE,
        RING,
        DISC,
        SQUARE,
        DIAMOND,
        CROSS;

        public String key() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** A named colour of the page. */
    public enum Ink {
        /** The ground. */
        PAPER(0xFBFAF7, 0x11141A),
        /** What lies on the ground: cards, fields. */
        CARD(0xFFFFFF, 0x1A1F27),
        /** Text. */
        TEXT(0x1C2026, 0xECEAE4),
        /** Text of less weight. */
        QUIET(0x565D68, 0xA4ACB8),
        /** Rules, grids, outlines of the body. */
        FAINT(0xC9C6BE, 0x3A414C),
        LEFT(0x0072B2, 0x56B4E9),
        RIGHT(0xD55E00, 0xE69F00),
        LINK(0x009E73, 0x009E73),
        /** Said of what is as it should be; of what to know; of what to beware. */
        GOOD(0x007355, 0x35C79E),
        NOTE(0x0B5E8E, 0x7CC5EE),
        WARN(0xA84300, 0xF2B233),
        /** Said of what can hurt. */
        DANGER(0xB3001B, 0xFF8A8A);

        private final int light;
        private final int dark;

        Ink(int light, int dark) {
            this.light = light;
            this.dark = dark;
        }

        public Color on(Theme theme) {
            return new Color(theme == Theme.LIGHT ? light : dark);
        }

        public String key() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * How an item is drawn.
     *
     * @param ink its colour
     * @param width of its line, in thousandths of the picture's shorter edge
     * @param dash lengths on and off, in widths of the line; empty for unbroken
     * @param marker what a point of it is marked with
     * @param markerSize across, in thousandths of the picture's shorter edge
     * @param strength opacity, 0 to 1
     */
    public record Look(
            Ink ink,
            double width,
            List<Double> dash,
            Marker marker,
            double markerSize,
            double strength) {
        public Look {
            dash = List.copyOf(dash);
        }
    }

    /** The look of a role on a side; nobody's things look as the left's but quiet. */
    public static Look of(Role role, Optional<Side> side) {
        boolean right = side.isPresent() && side.get() == Side.RIGHT;
        Ink own = side.isEmpty() ? Ink.QUIET : right ? Ink.RIGHT : Ink.LEFT;
        return switch (role) {
            case BODY -> line(Ink.FAINT, 1.6, 1);
            case CENTRE -> new Look(own, 1.2, List.of(), Marker.CROSS, 9, 0.75);
            case HAND_PATH ->
                    right ? line(own, 1.5, 0.8, 5, 2.5, 1, 2.5) : line(own, 1.5, 0.8, 1, 3);
            case HEAD_TRAIL -> right ? line(own, 4.6, 1, 4.5, 1.5) : line(own, 4.6, 1);
            case SLACK -> line(own, 5, 0.6, 0.5, 1.5);
            case LINK -> line(Ink.LINK, 4, 1, 0.1, 2);
            case TETHER -> right ? line(own, 2, 0.95, 7, 2) : line(own, 2, 0.95);
            case HAND -> new Look(own, 3, List.of(), right ? Marker.SQUARE : Marker.RING, 20, 1);
            case HEAD -> new Look(own, 2, List.of(), right ? Marker.DIAMOND : Marker.DISC, 26, 1);
        };
    }

    private static Look line(Ink ink, double width, double strength, double... dash) {
        List<Double> parts = new ArrayList<>();
        for (double part : dash) {
            parts.add(part);
        }
        return new Look(ink, width, parts, Marker.NONE, 0, strength);
    }

    /** "#0072B2". */
    public static String hex(Color colour) {
        return String.format(Locale.ROOT, "#%06X", colour.getRGB() & 0xFFFFFF);
    }

    /** The palette as CSS variables, {@code --ink-left} and so on, following the reader's theme. */
    public static String css() {
        StringBuilder css = new StringBuilder();
        css.append("/* Colours: Okabe and Ito, Color Universal Design (2008). */\n");
        css.append(":root, :root[data-theme=\"light\"] {\n  color-scheme: light;\n");
        variables(css, Theme.LIGHT, "  ");
        css.append(
                "}\n@media screen and (prefers-color-scheme: dark) {\n  :root:not([data-theme]) {\n");
        css.append("    color-scheme: dark;\n");
        variables(css, Theme.DARK, "    ");
        css.append("  }\n}\n:root[data-theme=\"dark\"] {\n  color-scheme: dark;\n");
        variables(css, Theme.DARK, "  ");
        return css.append("}\n").toString();
    }

    private static void variables(StringBuilder css, Theme theme, String indent) {
        for (Ink ink : Ink.values()) {
            css.append(indent)
                    .append("--ink-")
                    .append(ink.key())
                    .append(": ")
                    .append(hex(ink.on(theme)))
                    .append(";\n");
        }
    }

    /** The palette as plain lists, maps, numbers and words, to be written as JSON. */
    public static Map<String, Object> plain() {
        Map<String, Object> inks = new LinkedHashMap<>();
        for (Ink ink : Ink.values()) {
            Map<String, Object> both = new LinkedHashMap<>();
            for (Theme theme : Theme.values()) {
                both.put(theme.key(), hex(ink.on(theme)));
            }
            inks.put(ink.key(), both);
        }
        Map<String, Object> looks = new LinkedHashMap<>();
        for (Role role : Role.values()) {
            if (role == Role.BODY) {
                looks.put(role.key(), plain(of(role, Optional.empty())));
                continue;
            }
            for (Side side : Side.values()) {
                looks.put(side.word() + "-" + role.key(), plain(of(role, Optional.of(side))));
            }
        }
        Map<String, Object> all = new LinkedHashMap<>();
        all.put("source", "Okabe and Ito, Color Universal Design (2008)");
        all.put("inks", inks);
        all.put("looks", looks);
        return all;
    }

    private static Map<String, Object> plain(Look look) {
        Map<String, Object> out = new LinkedHashMap<>();
        out.put("ink", look.ink().key());
        out.put("width", look.width());
        out.put("dash", look.dash());
        out.put("marker", look.marker().key());
        out.put("marker_size", look.markerSize());
        out.put("strength", look.strength());
        return out;
    }
}

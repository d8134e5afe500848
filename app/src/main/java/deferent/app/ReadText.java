package deferent.app;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Side;
import deferent.motion.pairing.Size;
import deferent.motion.trace.Figure;
import deferent.reading.link.LinkReading;
import deferent.record.PatternDocument;
import deferent.search.whole.Readings;
import deferent.tell.Telling;
import deferent.tell.Told;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.Function;

/** Readings as a page of text: what is told, then the numbers side by side, cautions last. */
final class ReadText {
    private static final int FIRST = 24;
    private static final int COLUMN = 28;

    private final Readings readings;
    private final PatternDocument pattern;
    private final boolean why;
    private final int width = Paragraphs.width();
    private final List<String> lines = new ArrayList<>();

    ReadText(Readings readings, PatternDocument pattern, boolean why) {
        this.readings = readings;
        this.pattern = pattern;
        this.why = why;
    }

    List<String> lines() {
        head();
        told();
        hands();
        links();
        lines.add("");
        lines.add("Take care");
        for (String caution : Telling.cautions(readings)) {
            lines.addAll(Paragraphs.wrapped("  - ", caution, width));
        }
        return lines;
    }

    private void head() {
        lines.add(pattern.name());
        readings.phrase()
                .filter(phrase -> !phrase.equals(pattern.name()))
                .ifPresent(phrase -> lines.addAll(Paragraphs.wrapped("  ", phrase, width)));
        pattern.author().ifPresent(author -> lines.add("  (" + author + ")"));
        if (!pattern.note().isEmpty()) {
            pattern.note()
                    .lines()
                    .forEach(line -> lines.addAll(Paragraphs.wrapped("  ", line, width)));
        }
        lines.add("");
    }

    private void told() {
        String under = "";
        for (Told one : Telling.of(readings)) {
            String heading = heading(one.key());
            if (!heading.equals(under)) {
                if (!under.isEmpty()) {
                    lines.add("");
                }
                lines.add(heading);
                under = heading;
            }
            String mark =
                    switch (one.tone()) {
                        case GOOD -> "+ ";
                        case NOTE -> "  ";
                        case WARN -> "! ";
                    };
            lines.addAll(Paragraphs.wrapped(mark, one.text(), width));
            if (why) {
                lines.addAll(Paragraphs.wrapped("      why: ", one.why(), width));
            }
        }
        lines.add("");
    }

    /** What a sentence is about, from the first word of its key. */
    private static String heading(String key) {
        String first = key.contains(".") ? key.substring(0, key.indexOf('.')) : key;
        return switch (first) {
            case "link", "linked", "truth", "fit", "cost" -> "Link";
            case "figure", "tempo", "rod" -> "Figures and tempo";
            case "reach", "room" -> "Reach and room";
            default -> "On a cord";
        };
    }

    private void hands() {
        Pairing pairing = readings.pairing();
        lines.add(
                String.format(
                        Locale.ROOT,
                        "Tempo %s a minute, one cycle %.3f s",
                        trimmed(pairing.tempo(), 2),
                        pairing.period()));
        row("", side -> side.word() + " hand");
        row("  tether", side -> centimetres(pairing.part(side).tether().length()));
        row("  hand radius", side -> radius(pairing.part(side), side));
        row("  poi turns a cycle", side -> turns(pairing.part(side)));
        row("  start", side -> angle(Size.of(side, Size.Kind.START).read(pairing)));
        row("  tilt", side -> angle(Size.of(side, Size.Kind.TILT).read(pairing)));
        figure(
                "  figure",
                figure -> centimetres(figure.width()) + " x " + centimetres(figure.height()));
        figure("  farthest out", figure -> centimetres(figure.outerRadius()));
        figure("  figure's length", figure -> centimetres(figure.length()));
        lines.add("");
    }

    private void links() {
        row("", side -> side.word() + " head, " + side.other().word() + " hand");
        link("  kind", link -> link.kind().word());
        link("  apart now, in plane", link -> gap(link.inPlaneGap()));
        link("  apart now, across it", link -> gap(link.depthGap()));
        link("  at best, as shapes", link -> gap(link.shapeGap()) + " (" + within(link) + ")");
        link("  at best, in time", link -> gap(link.clockGap()));
        link("  lag", link -> trimmed(link.lag() + 0.0, 3) + " of a cycle");
    }

    private void figure(String name, Function<Figure, String> cell) {
        row(name, side -> readings.hand(side).figure().said(cell));
    }

    private void link(String name, Function<LinkReading, String> cell) {
        row(name, side -> readings.link(side).said(cell));
    }

    private String radius(Part part, Side side) {
        return part.motion().riding()
                ? "rides, "
                        + readings.link(side.other()).said(link -> centimetres(link.handRadius()))
                : centimetres(part.motion().path().radius());
    }

    private static String turns(Part part) {
        int turns = part.motion().spin().turns();
        return turns == 0 ? "0, swings or points" : Integer.toString(turns);
    }

    private void row(String name, Function<Side, String> cell) {
        String left = cell.apply(Side.LEFT);
        String right = cell.apply(Side.RIGHT);
        if (left.isEmpty() && right.isEmpty()) {
            return;
        }
        String line =
                String.format(
                        Locale.ROOT,
                        "%-" + FIRST + "s%-" + COLUMN + "s%s",
                        name,
                        left.isEmpty() ? "-" : left,
                        right.isEmpty() ? "-" : right);
        lines.add(line.stripTrailing());
    }

    private static String angle(OptionalDouble radians) {
        return radians.isPresent()
                ? trimmed(Math.toDegrees(radians.getAsDouble()), 2) + " deg"
                : "";
    }

    private static String within(LinkReading link) {
        return Double.isFinite(link.shapeGapError())
                ? link.shapeGapError() < 1e-4
                        ? "within 0.1 mm"
                        : "within " + gap(link.shapeGapError())
                : "an estimate";
    }

    static String centimetres(double metres) {
        return trimmed(100 * metres, 1) + " cm";
    }

    static String gap(double metres) {
        return trimmed(100 * metres, Math.abs(metres) < 0.01 ? 2 : 1) + " cm";
    }

    static String trimmed(double value, int places) {
        String text = String.format(Locale.ROOT, "%." + places + "f", value);
        String cut = text.contains(".") ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text;
        return cut.equals("-0") ? "0" : cut;
    }
}

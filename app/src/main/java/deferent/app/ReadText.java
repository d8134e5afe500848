package deferent.app;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Size;
import deferent.motion.shared.Side;
import deferent.record.PatternDocument;
import deferent.record.number.Scale;
import deferent.record.number.SideTable;
import deferent.search.whole.Readings;
import deferent.tell.Telling;
import deferent.tell.Told;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import picocli.CommandLine.Help.Ansi;

/**
 * Readings as text: a few lines that hold what is asked first, or a page of all that is told, then
 * the numbers side by side, cautions last.
 */
final class ReadText {
    /** As many lines as are taken in at a glance, and left on a small screen. */
    static final int FEW = 15;

    private static final int FIRST = 24;
    private static final int COLUMN = 28;

    // Bold and red, and back (ECMA-48, select graphic rendition).
    private static final String RED = "\u001B[1;31m";
    private static final String PLAIN = "\u001B[0m";

    private final Readings readings;
    private final PatternDocument pattern;
    private final boolean why;
    private final Ansi ansi;
    private final int width = Paragraphs.width();
    private final List<String> lines = new ArrayList<>();

    /**
     * @param ansi whether what can hurt may be red, which a terminal shows and a file would not
     */
    ReadText(Readings readings, PatternDocument pattern, boolean why, Ansi ansi) {
        this.readings = readings;
        this.pattern = pattern;
        this.why = why;
        this.ansi = ansi;
    }

    List<String> few() {
        head();
        List<String> last = new ArrayList<>();
        last.add("");
        last.addAll(Paragraphs.wrapped("", Telling.care(), width));
        last.addAll(
                Paragraphs.wrapped(
                        "", "--all tells the rest, with all numbers and cautions.", width));
        List<Told> told = new ArrayList<>(Telling.of(readings));
        for (String about : asked()) {
            for (Told one : List.copyOf(told)) {
                List<String> said = said(one);
                boolean room = lines.size() + said.size() + last.size() <= FEW;
                // Whatever a pattern's own note takes, the first sentence is told.
                if ((one.key() + ".").startsWith(about + ".") && (room || about.equals("first"))) {
                    lines.addAll(said);
                    told.remove(one);
                }
            }
        }
        lines.addAll(last);
        return lines;
    }

    /** What is told of in a few lines, in this order, as far as there is room. */
    private List<String> asked() {
        String link = "link." + readings.carrier().word();
        return List.of(
                "first",
                "danger",
                "rod",
                link,
                "fit",
                "truth",
                "reach",
                "care",
                "closest_figure",
                "steadiness",
                "slowest",
                "room",
                "link");
    }

    List<String> all() {
        head();
        told();
        numbers();
        lines.add("");
        lines.add("Take care");
        for (String caution : Telling.cautions()) {
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
            lines.addAll(said(one));
            if (why) {
                lines.addAll(Paragraphs.wrapped("      why: ", one.why(), width));
            }
        }
        lines.add("");
    }

    /** Wrapped first, so that what makes it red takes no room. */
    private List<String> said(Told one) {
        List<String> said = Paragraphs.wrapped(mark(one), one.text(), width);
        return one.tone() == Told.Tone.DANGER && ansi.enabled()
                ? said.stream().map(line -> RED + line + PLAIN).toList()
                : said;
    }

    private static String mark(Told one) {
        return switch (one.tone()) {
            case GOOD -> "+ ";
            case NOTE -> "  ";
            case WARN -> "! ";
            case DANGER -> "!! ";
        };
    }

    /** The first word of a key. */
    private static String about(String key) {
        return key.contains(".") ? key.substring(0, key.indexOf('.')) : key;
    }

    private static String heading(String key) {
        return switch (about(key)) {
            case "first" -> "In short";
            case "danger" -> "Danger";
            case "care" -> "What can hurt";
            case "link", "hands", "truth", "fit", "cost", "advice" -> "Link";
            case "figure", "tempo", "rod", "neighbour" -> "Figures and tempo";
            case "reach", "room", "passes" -> "Reach and room";
            case "pull",
                    "figure_kept",
                    "closest_figure",
                    "hand_path_kept",
                    "slowest",
                    "steadiness",
                    "cord" ->
                    "On a cord";
            default -> throw new IllegalStateException("no heading for " + key);
        };
    }

    private void numbers() {
        Pairing pairing = readings.pairing();
        lines.add("Numbers");
        lines.add(
                "  tempo "
                        + Scale.TEMPO.said(pairing.tempo())
                        + ", one cycle "
                        + Scale.TIME.said(pairing.period()));
        table(SideTable.hands(readings));
        row("  poi turns a cycle", turns(pairing.part(Side.LEFT)), turns(pairing.part(Side.RIGHT)));
        angles("  start", Size.Kind.START);
        angles("  tilt", Size.Kind.TILT);
        lines.add("");
        table(SideTable.links(readings));
    }

    private void table(SideTable table) {
        row("", table.columns().get(0), table.columns().get(1));
        table.lines().forEach(line -> row("  " + line.name(), line.left(), line.right()));
    }

    private void angles(String name, Size.Kind kind) {
        row(name, angle(Size.of(Side.LEFT, kind)), angle(Size.of(Side.RIGHT, kind)));
    }

    private String angle(Size size) {
        OptionalDouble radians = size.read(readings.pairing());
        return radians.isPresent() ? Scale.ANGLE.said(Math.toDegrees(radians.getAsDouble())) : "";
    }

    private static String turns(Part part) {
        int turns = part.motion().spin().turns();
        return turns == 0 ? "0, swings or points" : Integer.toString(turns);
    }

    private void row(String name, String left, String right) {
        if (left.isEmpty() && right.isEmpty()) {
            return;
        }
        String line =
                String.format(
                        Locale.ROOT,
                        "%-" + FIRST + "s%-" + COLUMN + "s%s",
                        name,
                        (left.isEmpty() ? "-" : left) + "  ",
                        right.isEmpty() ? "-" : right);
        lines.add(line.stripTrailing());
    }
}

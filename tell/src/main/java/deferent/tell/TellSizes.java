package deferent.tell;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Size;
import deferent.motion.shared.Side;
import deferent.reading.body.Performer;
import deferent.search.whole.Readings;
import deferent.tell.Told.Tone;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Says the sizes to set up for one performer: a row a size, and whose body they are for. */
public final class TellSizes {
    private TellSizes() {}

    /**
     * One size of both hands.
     *
     * @param name such as "Hand radius"
     * @param left its value for the left hand, empty where that has none
     * @param right the same for the right hand
     */
    public record Row(String name, String left, String right) {}

    /** Tether, hand path, and where the centres are, from the breastbone. */
    public static List<Row> rows(Pairing pairing) {
        List<Row> rows = new ArrayList<>();
        add(rows, pairing, Size.Kind.TETHER, "Tether");
        rows.add(new Row("Hand radius", radius(pairing, Side.LEFT), radius(pairing, Side.RIGHT)));
        add(rows, pairing, Size.Kind.AMPLITUDE, "Swing to each side");
        centre(rows, pairing, Size.Kind.CENTRE_X, "Centre, to the left", 0);
        centre(rows, pairing, Size.Kind.CENTRE_Y, "Centre, height", 0);
        centre(rows, pairing, Size.Kind.CENTRE_Z, "Centre, in front", Double.NaN);
        rows.removeIf(row -> row.left().isEmpty() && row.right().isEmpty());
        return List.copyOf(rows);
    }

    private static void add(List<Row> rows, Pairing pairing, Size.Kind kind, String name) {
        rows.add(new Row(name, value(pairing, Side.LEFT, kind), value(pairing, Side.RIGHT, kind)));
    }

    private static String value(Pairing pairing, Side side, Size.Kind kind) {
        Size size = Size.of(side, kind);
        OptionalDouble value = size.read(pairing);
        return value.isPresent()
                ? TellFit.value(size, value.getAsDouble()).replace(" degrees", "°")
                : "";
    }

    private static String radius(Pairing pairing, Side side) {
        if (pairing.part(side).motion().riding()) {
            return "rides";
        }
        String radius = value(pairing, side, Size.Kind.HAND_RADIUS);
        return radius.isEmpty() ? "still" : radius;
    }

    // A centre where centres usually are needs no word.
    private static void centre(
            List<Row> rows, Pairing pairing, Size.Kind kind, String name, double usual) {
        boolean told = false;
        for (Side side : Side.values()) {
            double at = Size.of(side, kind).read(pairing).orElse(usual);
            told |= !(Math.abs(at - usual) < 0.0005);
        }
        if (told) {
            add(rows, pairing, kind, name);
        }
    }

    /** The sizes of both hands in one line a hand, where there is little room. */
    public static List<String> brief(Pairing pairing) {
        String left = brief(pairing, Side.LEFT);
        String right = brief(pairing, Side.RIGHT);
        List<String> lines = new ArrayList<>();
        if (left.equals(right)) {
            lines.add("Both: " + left);
        } else {
            lines.add("Left: " + left);
            lines.add("Right: " + right);
        }
        lines.add(Say.tempo(pairing.tempo()) + ", " + Say.seconds(pairing.period()) + " a cycle");
        return List.copyOf(lines);
    }

    private static String brief(Pairing pairing, Side side) {
        String radius = value(pairing, side, Size.Kind.HAND_RADIUS);
        String hand =
                pairing.part(side).motion().riding()
                        ? "hand rides"
                        : radius.isEmpty() ? "hand still" : "hand " + radius;
        return hand + ", tether " + value(pairing, side, Size.Kind.TETHER);
    }

    /** Whose body the sizes are for. */
    public static Told performer(Readings readings) {
        Performer performer = readings.performer();
        return new Told(
                "performer",
                Tone.NOTE,
                "For a performer of "
                        + Say.length(performer.stature())
                        + (performer.assumed() ? " (assumed)" : "")
                        + ", arm "
                        + Say.length(performer.arm())
                        + (performer.armSaid().isPresent() ? " (measured)" : "")
                        + " from shoulder to grip.",
                "An arm that is not measured is a share of stature (Drillis and Contini, 1966).");
    }
}

package deferent.film.practice;

import deferent.motion.shared.Side;
import deferent.record.Practice;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * One kind of thing that may be off, over all times a pattern was practised.
 *
 * @param key what kind
 * @param side whose; empty for both
 * @param noun what it is of, such as "right circle"
 * @param unit of values and errors: "m" or "s"
 * @param values by date, with the standard deviation of each
 */
public record OffKind(
        String key, Optional<Side> side, String noun, String unit, List<Value> values) {
    /** A deviation of 90 % lies within so many standard deviations. */
    public static final double NINETY = 1.645;

    /** What spoils less than this is not worth saying: metres, or seconds. Our choice. */
    private static final double WORTH = 0.03;

    /** One kind's row: how it is said when its value is below zero, and above. */
    private record Words(String key, String less, String more) {}

    private static final List<Words> WORDS =
            List.of(
                    new Words("size", "too small", "too large"),
                    new Words("late", "late", "early"),
                    new Words("centre_up", "too low", "too high"),
                    new Words("centre_across", "too far right", "too far left"),
                    new Words("link", "closed", "open"),
                    new Words("uneven", "uneven", "uneven"),
                    new Words("drift", "of wandering", "of wandering"));

    /**
     * A value on one day.
     *
     * @param practice which it is from
     */
    public record Value(Practice practice, double value, double error) {}

    public OffKind {
        values = List.copyOf(values);
    }

    /** Those of which something is known in more than none of the times, in the order of rows. */
    static List<OffKind> of(List<Practice> practised) {
        List<OffKind> all = new ArrayList<>();
        for (Words row : WORDS) {
            for (Optional<Side> side :
                    List.of(
                            Optional.of(Side.LEFT),
                            Optional.of(Side.RIGHT),
                            Optional.<Side>empty())) {
                List<Value> values = new ArrayList<>();
                for (Practice practice : practised) {
                    practice.size(row.key(), side)
                            .ifPresent(s -> values.add(new Value(practice, s.value(), s.error())));
                }
                if (!values.isEmpty()) {
                    Practice any = values.get(0).practice();
                    String unit = any.size(row.key(), side).map(Practice.Size::unit).orElse("m");
                    all.add(new OffKind(row.key(), side, noun(row.key(), side, any), unit, values));
                }
            }
        }
        return List.copyOf(all);
    }

    private static String noun(String key, Optional<Side> side, Practice any) {
        String hand = side.map(Side::word).orElse("right");
        return switch (key) {
            case "size" ->
                    hand
                            + " "
                            + side.map(s -> any.pairing().part(s).motion().path().noun())
                                    .orElse("path");
            case "late" -> "right hand";
            case "centre_up", "centre_across" -> "right centre";
            case "link" -> "link to the " + hand + " hand";
            case "uneven" -> hand + " poi";
            case "drift" -> "tempo";
            default -> key;
        };
    }

    public Value first() {
        return values.get(0);
    }

    public Value last() {
        return values.get(values.size() - 1);
    }

    /** How much nearer the last is to nothing than the first; below 0 where it is further. */
    public double closer() {
        return Math.abs(first().value()) - Math.abs(last().value());
    }

    /** Whether first and last differ by more than their errors leave open. */
    public boolean told() {
        double unsure = NINETY * Math.hypot(first().error(), last().error());
        return Math.abs(first().value() - last().value()) > unsure
                && Math.abs(closer()) > unsure / 2;
    }

    /** Whether it was ever worth saying. */
    public boolean worthSaying() {
        return values.stream().anyMatch(v -> Math.abs(v.value()) >= WORTH);
    }

    /** "12 cm too small", "0.05 s late". */
    public String said(double value) {
        return measured(value) + " " + way(value);
    }

    /** The same, without the way where it is the other's: "4 cm". */
    String saidAfter(double other, double value) {
        return way(value).equals(way(other)) ? measured(value) : said(value);
    }

    private String measured(double value) {
        return number(value) + (unit.equals("s") ? " s" : " cm");
    }

    /** "12 ± 2 cm too small", by 90 %. */
    public String table(Value value) {
        return number(value.value())
                + " ± "
                + number(NINETY * value.error())
                + (unit.equals("s") ? " s " : " cm ")
                + way(value.value());
    }

    private String number(double value) {
        if (unit.equals("s")) {
            double size = Math.abs(value);
            return String.format(Locale.ROOT, size > 0 && size < 0.01 ? "%.3f" : "%.2f", size);
        }
        double cm = 100 * Math.abs(value);
        return cm < 0.95 ? String.format(Locale.ROOT, "%.1f", cm) : "" + Math.round(cm);
    }

    private String way(double value) {
        Words words = WORDS.stream().filter(w -> w.key().equals(key)).findFirst().orElseThrow();
        return value < 0 ? words.less() : words.more();
    }
}

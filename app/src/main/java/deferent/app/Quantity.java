package deferent.app;

import deferent.motion.pairing.Range;
import deferent.motion.pairing.Refusal;
import deferent.motion.trade.Unit;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * Numbers with units as the command line takes them: "60cm", "0.6 m", "24in", "90deg", "120g".
 * Decimal shifts are exact, so 60cm is the same double as 0.6 m.
 */
final class Quantity {
    private static final Pattern SAID =
            Pattern.compile("\\s*([-+−]?[0-9]*[.,]?[0-9]+)\\s*(.*?)\\s*");

    private static final Map<String, String> KILOGRAMS =
            Map.of("kg", "1", "g", "0.001", "oz", "0.028349523125");

    private static final Map<String, String> METRES_A_SECOND = Map.of("m/s", "1", "cm/s", "0.01");
    private static final Map<String, String> METRES_A_SECOND_SQUARED =
            Map.of("m/s²", "1", "m/s2", "1", "m/s^2", "1");
    private static final Map<String, String> SECONDS = Map.of("s", "1", "ms", "0.001");

    private Quantity() {}

    /** Metres. */
    static double length(String text) {
        return length(text, OptionalDouble.empty());
    }

    /**
     * Metres.
     *
     * @param tether how long a tether is, where a length may be said in tethers
     */
    static double length(String text, OptionalDouble tether) {
        String suchAs = "60cm, 0.6m, 600mm or 24in" + (tether.isPresent() ? ", or 0.5tethers" : "");
        Matcher said = said(text, "length", suchAs);
        Optional<Unit> unit = Unit.spelt(said.group(2));
        if (unit.equals(Optional.of(Unit.TETHERS)) && tether.isPresent()) {
            return number(said).doubleValue() * tether.getAsDouble();
        }
        return unit.filter(Unit::length)
                .orElseThrow(() -> unit(said, "length", suchAs))
                .metres(new Unit.Figure(Double.NaN, Optional.of(number(said))));
    }

    /** Kilograms. */
    static double mass(String text) {
        return metric(text, KILOGRAMS, "mass", "120g or 0.12kg");
    }

    /** Radians. */
    static double angle(String text) {
        String suchAs = "30deg, 0.5rad or 0.25turn";
        Matcher said = said(text, "angle", suchAs);
        double number = number(said).doubleValue();
        return Unit.spelt(said.group(2))
                .map(u -> u.radians(number))
                .orElse(OptionalDouble.empty())
                .orElseThrow(() -> unit(said, "angle", suchAs));
    }

    /**
     * Hand cycles a minute, or poi beats of a weave or where both hands are still; "60" and
     * "60/min" are the same.
     */
    static double tempo(String text) {
        Matcher said = said(text, "tempo", "60 or 60/min");
        if (!List.of("", "/min", "a minute").contains(said.group(2).toLowerCase(Locale.ROOT))) {
            throw unit(said, "tempo", "60 or 60/min");
        }
        return number(said).doubleValue();
    }

    /** A share of a cycle: "0.5", "1/4" or "25%". */
    static double share(String text) {
        Matcher part = Pattern.compile("\\s*([0-9]+)\\s*/\\s*([1-9][0-9]*)\\s*").matcher(text);
        if (part.matches()) {
            return Double.parseDouble(part.group(1)) / Double.parseDouble(part.group(2));
        }
        Matcher said = said(text, "share of a cycle", "0.5, 1/4 or 25%");
        return switch (said.group(2)) {
            case "", "cycles", "cycle" -> number(said).doubleValue();
            case "%" -> number(said).movePointLeft(2).doubleValue();
            default -> throw unit(said, "share of a cycle", "0.5, 1/4 or 25%");
        };
    }

    private static double metric(
            String text, Map<String, String> units, String what, String suchAs) {
        Matcher said = said(text, what, suchAs);
        String factor = units.get(said.group(2).toLowerCase(Locale.ROOT));
        if (factor == null) {
            throw unit(said, what, suchAs);
        }
        return number(said).multiply(new BigDecimal(factor)).doubleValue();
    }

    /** Metres a second; "any" for no bound. */
    static double speed(String text) {
        return text.strip().equalsIgnoreCase("any")
                ? Double.POSITIVE_INFINITY
                : metric(text, METRES_A_SECOND, "speed", "1m/s, 80cm/s or any");
    }

    /** Metres a second squared. */
    static double acceleration(String text) {
        return metric(text, METRES_A_SECOND_SQUARED, "acceleration", "60m/s2");
    }

    /** Seconds. */
    static double time(String text) {
        return metric(text, SECONDS, "time", "0.25s or 250ms");
    }

    /** Seconds a shutter is open: "1/2", "0.5", "0.5s" or "500ms". */
    static double exposure(String text) {
        Matcher part =
                Pattern.compile("\\s*([0-9]+)\\s*/\\s*([1-9][0-9]*)\\s*s?\\s*").matcher(text);
        if (part.matches()) {
            return Double.parseDouble(part.group(1)) / Double.parseDouble(part.group(2));
        }
        String unit = text.strip().matches("[0-9]*[.,]?[0-9]+") ? "s" : "";
        return metric(text.strip() + unit, SECONDS, "exposure", "1/2, 0.5s or 500ms");
    }

    /**
     * A refusal of a number in the unit that was typed for it, where it was typed as "9000cm" is.
     */
    static Refusal typed(Refusal refusal, String text) {
        Matcher said = SAID.matcher(text);
        String of = refusal.range().map(Range::unit).orElse("");
        if (!said.matches() || of.isEmpty()) {
            return refusal;
        }
        Map<String, String> units =
                switch (of) {
                    case "kg" -> KILOGRAMS;
                    case "s" -> SECONDS;
                    default -> Map.of();
                };
        String factor = units.get(said.group(2).toLowerCase(Locale.ROOT));
        return factor != null
                ? refusal.in(said.group(2), Double.parseDouble(factor))
                : Unit.spelt(said.group(2)).map(u -> u.said(refusal, 1)).orElse(refusal);
    }

    private static Matcher said(String text, String what, String suchAs) {
        Matcher said = SAID.matcher(text);
        if (!said.matches()) {
            OptionalInt spelt = SpeltNumber.of(text);
            throw new TypeConversionException(
                    "\""
                            + text
                            + "\" is no "
                            + what
                            + "; "
                            + (spelt.isPresent()
                                    ? asked(Integer.toString(spelt.getAsInt()), what)
                                    : "give one such as " + suchAs));
        }
        return said;
    }

    private static BigDecimal number(Matcher said) {
        return new BigDecimal(said.group(1).replace(',', '.').replace('−', '-'));
    }

    private static TypeConversionException unit(Matcher said, String what, String suchAs) {
        String number = said.group(1);
        return new TypeConversionException(
                said.group(2).isEmpty()
                        ? "\""
                                + number
                                + "\" has no unit; "
                                + (UNITS.containsKey(what)
                                        ? asked(number, what)
                                        : "give a " + what + " such as " + suchAs)
                        : "\""
                                + said.group(2)
                                + "\" is no unit of "
                                + what
                                + " known here; "
                                + near(said.group(2), what)
                                        .map(unit -> "is " + number + unit + " meant?")
                                        .orElse("give one such as " + suchAs));
    }

    /** Units of what is said, that of the smallest numbers first. */
    private static final Map<String, List<String>> UNITS =
            Map.of(
                    "length", List.of("m", "cm", "mm"),
                    "mass", List.of("kg", "g"),
                    "angle", List.of("deg"),
                    "speed", List.of("m/s"),
                    "time", List.of("s", "ms"),
                    "acceleration", List.of("m/s2"),
                    "tempo", List.of(""));

    /** Of what such numbers are usually said: from there on a number is of the next unit. */
    private static final Map<String, List<Double>> NEXT =
            Map.of("length", List.of(3.0, 300.0), "mass", List.of(3.0), "time", List.of(60.0));

    /** The unit that is likeliest meant with a number that has none. */
    private static String asked(String number, String what) {
        List<String> units = UNITS.getOrDefault(what, List.of(""));
        double size =
                Math.abs(new BigDecimal(number.replace(',', '.').replace('−', '-')).doubleValue());
        int at = 0;
        for (double next : NEXT.getOrDefault(what, List.of())) {
            at += size >= next ? 1 : 0;
        }
        return "is " + number + units.get(at) + " meant?";
    }

    /** A unit that is spelt nearly so; one of another kind is none. */
    private static Optional<String> near(String unit, String what) {
        if (what.equals("tempo")) {
            return unit.matches("(?i)bpm|per minute|min|/m|cpm|rpm")
                    ? Optional.of("")
                    : Optional.empty();
        }
        if (Unit.spelt(unit).isPresent()) {
            return Optional.empty();
        }
        return UNITS.getOrDefault(what, List.of()).stream()
                .filter(known -> known.length() > 1 && known.length() == unit.length())
                .filter(known -> known.charAt(0) == unit.charAt(0))
                .findFirst();
    }

    /** For options that take a whole number. */
    static final class Whole implements ITypeConverter<Integer> {
        @Override
        public Integer convert(String text) {
            try {
                return Integer.valueOf(text.strip());
            } catch (NumberFormatException none) {
                OptionalInt spelt = SpeltNumber.of(text);
                throw new TypeConversionException(
                        "\""
                                + text
                                + "\" is no whole number; "
                                + (spelt.isPresent()
                                        ? "is " + spelt.getAsInt() + " meant?"
                                        : "give one such as 6"));
            }
        }
    }

    /** For options that take a length. */
    static final class Length implements ITypeConverter<Double> {
        @Override
        public Double convert(String text) {
            return length(text);
        }
    }

    /** For options that take an angle. */
    static final class Angle implements ITypeConverter<Double> {
        @Override
        public Double convert(String text) {
            return angle(text);
        }
    }

    /** For options that take a speed. */
    static final class Speed implements ITypeConverter<Double> {
        @Override
        public Double convert(String text) {
            return speed(text);
        }
    }

    /** For options that take an acceleration. */
    static final class Acceleration implements ITypeConverter<Double> {
        @Override
        public Double convert(String text) {
            return acceleration(text);
        }
    }

    /** For options that take a time. */
    static final class Time implements ITypeConverter<Double> {
        @Override
        public Double convert(String text) {
            return time(text);
        }
    }

    /** For options that take a shutter time. */
    static final class Exposure implements ITypeConverter<Double> {
        @Override
        public Double convert(String text) {
            return exposure(text);
        }
    }

    /** For options that take a share. */
    static final class Share implements ITypeConverter<Double> {
        @Override
        public Double convert(String text) {
            return share(text);
        }
    }

    /** For options that take a mass. */
    static final class Mass implements ITypeConverter<Double> {
        @Override
        public Double convert(String text) {
            return mass(text);
        }
    }

    /** For options that take a tempo. */
    static final class Tempo implements ITypeConverter<Double> {
        @Override
        public Double convert(String text) {
            return tempo(text);
        }
    }
}

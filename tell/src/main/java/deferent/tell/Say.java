package deferent.tell;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Numbers as a spinner says them: centimetres, degrees, shares of a cycle. */
final class Say {
    private Say() {}

    /** Metres as "0 cm", "4 mm", "4.1 cm", "30 cm" or "1.2 m". */
    static String length(double metres) {
        double size = Math.abs(metres);
        if (size < 0.0005) {
            return "0 cm";
        }
        if (size < 0.0095) {
            return Math.round(metres * 1000) + " mm";
        }
        if (size < 0.0995) {
            return trimmed(metres * 100, 1) + " cm";
        }
        if (size < 0.995) {
            return Math.round(metres * 100) + " cm";
        }
        return trimmed(metres, 2) + " m";
    }

    /** A length to the millimetre, for sizes that somebody will cut or tie: "61.3 cm". */
    static String size(double metres) {
        return size(metres, 0);
    }

    /** The same with {@code finer} decimals more. */
    static String size(double metres, int finer) {
        return trimmed(metres * 100, 1 + finer) + " cm";
    }

    static String degrees(double radians) {
        return degrees(radians, 0);
    }

    static String degrees(double radians, int finer) {
        return trimmed(Math.toDegrees(radians), 1 + finer) + " degrees";
    }

    static String seconds(double seconds) {
        return trimmed(seconds, 2) + " s";
    }

    static String tempo(double perMinute) {
        return tempo(perMinute, 0);
    }

    static String tempo(double perMinute, int finer) {
        return trimmed(perMinute, 1 + finer) + " a minute";
    }

    /** A share of a cycle, 0 to 1, as words where spinners have them. */
    static String share(double cycles) {
        double size = Math.abs(cycles);
        if (Math.abs(size - 0.5) < 0.005) {
            return "half a cycle";
        }
        if (Math.abs(size - 0.25) < 0.005) {
            return "a quarter of a cycle";
        }
        return trimmed(size * 100, 0) + "% of a cycle";
    }

    /**
     * Where in a cycle, as nearly as somebody who spins can tell: "at the start of the cycle",
     * "just past half way through the cycle", "in the last quarter of the cycle".
     */
    static String into(double share) {
        double quarters = 4 * (share - Math.floor(share));
        int nearest = (int) Math.round(quarters);
        double off = quarters - nearest;
        String whole = nearest == 4 ? "the end of the cycle" : "the start of the cycle";
        boolean end = nearest % 4 == 0;
        if (Math.abs(off) < 0.08) {
            return end ? "at the start of the cycle" : QUARTERS.get(nearest) + THROUGH;
        }
        if (Math.abs(off) < 0.3) {
            String side = off < 0 ? "just before " : end ? "just after " : "just past ";
            return side + (end ? whole : QUARTERS.get(nearest) + THROUGH);
        }
        return "in the " + QUARTER.get((int) Math.floor(quarters)) + " quarter of the cycle";
    }

    private static final List<String> QUARTER = List.of("first", "second", "third", "last");
    private static final String THROUGH = " through the cycle";
    private static final List<String> QUARTERS =
            List.of(
                    "the start",
                    "a quarter of the way",
                    "half way",
                    "three quarters of the way",
                    "the end");

    /** How long in each cycle: "28% of the cycle". */
    static String lasting(double share) {
        String percent = percent(share);
        return percent.equals("0%") ? "a moment of the cycle" : percent + " of the cycle";
    }

    /** "once", "twice", "5 times". */
    static String times(int count) {
        return count == 1 ? "once" : count == 2 ? "twice" : count + " times";
    }

    static String percent(double share) {
        return trimmed(share * 100, 0) + "%";
    }

    /** "30 cm to the left and 8 cm further from the audience". */
    static String offset(double x, double y, double z) {
        List<String> said = new ArrayList<>();
        add(said, x, "to the left", "to the right");
        add(said, y, "higher", "lower");
        add(said, z, "nearer the audience", "further from the audience");
        return said.isEmpty() ? "in the same place" : listed(said, "and");
    }

    private static void add(List<String> said, double metres, String plus, String minus) {
        if (Math.abs(metres) >= 0.005) {
            said.add(length(Math.abs(metres)) + " " + (metres > 0 ? plus : minus));
        }
    }

    /** "this", "this and that", "this, that and another". */
    static String listed(List<String> names, String last) {
        int before = names.size() - 1;
        return before == 0
                ? names.get(0)
                : String.join(", ", names.subList(0, before))
                        + " "
                        + last
                        + " "
                        + names.get(before);
    }

    static String trimmed(double value, int decimals) {
        String s = String.format(Locale.ROOT, "%." + decimals + "f", value);
        if (s.indexOf('.') >= 0) {
            s = s.replaceAll("0+$", "").replaceAll("\\.$", "");
        }
        return s.equals("-0") ? "0" : s;
    }

    static String capital(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    static String small(String text) {
        return Character.toLowerCase(text.charAt(0)) + text.substring(1);
    }

    /** "an isolation", "a triquetra", "a one-petal in-spin". */
    static String a(String noun) {
        boolean vowel = "aeio".indexOf(Character.toLowerCase(noun.charAt(0))) >= 0;
        return (vowel && !noun.startsWith("one-") ? "an " : "a ") + noun;
    }
}

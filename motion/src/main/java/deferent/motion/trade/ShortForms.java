package deferent.motion.trade;

import java.util.Map;

/**
 * Short forms that spinners type for a word: "iso", "tri", "4p". Each stands for its word wherever
 * that may stand, so that "lin isos" needs no row of its own. Common practice, no source.
 */
final class ShortForms {
    private static final Map<String, String> FORMS =
            Map.ofEntries(
                    Map.entry("iso", "isolation"),
                    Map.entry("isol", "isolation"),
                    Map.entry("ext", "extension"),
                    Map.entry("exten", "extension"),
                    Map.entry("tri", "triquetra"),
                    Map.entry("triq", "triquetra"),
                    Map.entry("trique", "triquetra"),
                    Map.entry("pend", "pendulum"),
                    Map.entry("pendo", "pendulum"),
                    Map.entry("stat", "static"),
                    Map.entry("lin", "linear"),
                    Map.entry("anti", "antispin"),
                    Map.entry("insp", "inspin"),
                    Map.entry("fig", "figure"),
                    Map.entry("inf", "infinity"),
                    Map.entry("vert", "vertical"),
                    Map.entry("horiz", "horizontal"),
                    Map.entry("hor", "horizontal"),
                    Map.entry("h", "horizontal"),
                    Map.entry("diag", "diagonal"),
                    Map.entry("p", "petals"),
                    Map.entry("pt", "petals"),
                    Map.entry("pet", "petals"),
                    Map.entry("petalled", "petals"),
                    Map.entry("petaled", "petals"),
                    Map.entry("amp", "amplitude"),
                    Map.entry("teth", "tether"),
                    Map.entry("opp", "opposite"),
                    Map.entry("oppo", "opposite"),
                    Map.entry("tog", "together"),
                    Map.entry("quart", "quarter"),
                    Map.entry("qtr", "quarter"),
                    Map.entry("dir", "direction"));

    private ShortForms() {}

    /** The word that a {@link Spelling#key} is short for, a plural ending forgiven, or the key. */
    static String full(String key) {
        String whole = FORMS.get(key);
        if (whole == null && key.length() > 2 && key.endsWith("s")) {
            whole = FORMS.get(key.substring(0, key.length() - 1));
        }
        return whole == null ? key : whole;
    }
}

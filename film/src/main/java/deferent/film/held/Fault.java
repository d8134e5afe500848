package deferent.film.held;

import deferent.motion.shared.Side;
import java.util.Locale;
import java.util.function.Function;

/**
 * What can be off, one row a kind: its key in JSON, the unit of its value, how it is said and what
 * usually mends it. All that is said to mend it is common practice, no source.
 */
public enum Fault {
    /** The hand's path is too small or too large; value and meant are its radius, metres. */
    SIZE(
            "size",
            "m",
            f ->
                    "The "
                            + f.hand()
                            + " hand's "
                            + f.what()
                            + " is "
                            + cm(f.value())
                            + " too "
                            + (f.less() ? "small" : "large")
                            + ": its radius is "
                            + cm(f.meant() + f.value())
                            + " instead of "
                            + bare(f.meant())
                            + ".",
            f ->
                    f.less()
                            ? "Draw it with the empty hand first, as large as it should be, then put"
                                    + " the poi back in."
                            : "Keep the elbow in and let the wrist do more."),
    /** One side comes behind the other; value is seconds, below 0. */
    LATE(
            "late",
            "s",
            f ->
                    "The "
                            + f.hand()
                            + " "
                            + f.what()
                            + " is "
                            + seconds(f.value())
                            + " late against the "
                            + f.side().map(Side::other).map(Side::word).orElse("other")
                            + ".",
            f -> "Count aloud, and let each hand be at its own place on the count."),
    /** One centre lies too high or too low against the other; value is metres up, the right's. */
    CENTRE_UP(
            "centre_up",
            "m",
            f ->
                    "The right "
                            + f.what()
                            + " is "
                            + cm(f.value())
                            + " too "
                            + (f.less() ? "low" : "high")
                            + " against the left.",
            f -> "Bring both hands to the breastbone before you begin, and come back there."),
    /** The same sideways; value is metres to the performer's left, the right's. */
    CENTRE_ACROSS(
            "centre_across",
            "m",
            f ->
                    "The right "
                            + f.what()
                            + " is "
                            + cm(f.value())
                            + " too far to the "
                            + (f.less() ? "right" : "left")
                            + " against the left.",
            f -> "Bring both hands to the breastbone before you begin, and come back there."),
    /** The figure leans; value is radians, from the performer's left toward up. */
    TILT(
            "tilt",
            "rad",
            f ->
                    "The "
                            + f.hand()
                            + " figure leans by "
                            + Math.round(Math.abs(Math.toDegrees(f.value())))
                            + "°, "
                            // The camera has the performer's left on its right, and up is up.
                            + (f.less() ? "clockwise" : "counter-clockwise")
                            + " as the camera sees it.",
            f -> "Point the first petal at a mark, and come back to that mark every turn."),
    /** Lower than meant, or higher; value is metres of the figure's height. */
    HEIGHT(
            "height",
            "m",
            f ->
                    "The "
                            + f.hand()
                            + " "
                            + f.what()
                            + " is "
                            + (f.less() ? "flattened: " : "drawn out: ")
                            + cm(f.value())
                            + (f.less() ? " too low" : " too high")
                            + " for its width.",
            f -> "Go slower, and reach as far at top and bottom as at the sides."),
    /** Too small or too large all over, where nothing of it is free; value is metres across. */
    ALL_OVER(
            "all_over",
            "m",
            f ->
                    "The "
                            + f.hand()
                            + " figure is "
                            + cm(f.value())
                            + " too "
                            + (f.less() ? "narrow" : "wide")
                            + " all over.",
            f -> "Check tether and scale first; then keep the hand where it should be."),
    /** Late or early at one place of the cycle; value is seconds, above 0 when late. */
    LATE_THERE(
            "late_there",
            "s",
            f ->
                    "The "
                            + f.hand()
                            + " poi comes "
                            + seconds(f.value())
                            + (f.less() ? " early " : " late ")
                            + f.what()
                            + ".",
            f -> "Loop that moment slowly, and let the hand lead through it."),
    /** Off its line at one place of the cycle; value is metres, above 0 when too far out. */
    OFF_THERE(
            "off_there",
            "m",
            f ->
                    "The "
                            + f.hand()
                            + " poi runs "
                            + cm(f.value())
                            + " too far "
                            + (f.less() ? "in " : "out ")
                            + f.what()
                            + ".",
            f -> "Loop that moment slowly, and watch where the hand is."),
    /** It does not come back the same way; value is a sight's scatter, metres. */
    UNEVEN(
            "uneven",
            "m",
            f ->
                    "The "
                            + f.hand()
                            + " poi does not come back the same way: its turns lie "
                            + cm(f.value())
                            + " apart.",
            f -> "Take it slower, until each turn lies on the last."),
    /**
     * A link of the meant pairing stands open; value is how much further than cords alone would
     * make it, metres, the side is the rider's, what says where.
     */
    LINK(
            "link",
            "m",
            f ->
                    "The link stands open "
                            + cm(f.value())
                            + " more than cords alone make it: the "
                            + f.hand()
                            + " hand is "
                            + f.what()
                            + ".",
            f -> "Let the empty hand go with the other poi's head first, then add its own."),
    /** The tempo wanders; value is seconds from the most behind to the most ahead. */
    DRIFT(
            "drift",
            "s",
            f -> "The tempo wanders by " + seconds(f.value()) + " over the film.",
            f -> "Spin to a click or to a song of that tempo.");

    private final String key;
    private final String unit;
    private final Function<Finding, String> said;
    private final Function<Finding, String> mend;

    Fault(String key, String unit, Function<Finding, String> said, Function<Finding, String> mend) {
        this.key = key;
        this.unit = unit;
        this.said = said;
        this.mend = mend;
    }

    /** In JSON. */
    public String key() {
        return key;
    }

    /** Of a finding's value: m, s or rad. */
    public String unit() {
        return unit;
    }

    String said(Finding finding) {
        return said.apply(finding);
    }

    String mend(Finding finding) {
        return mend.apply(finding);
    }

    private static String bare(double metres) {
        return String.valueOf(Math.round(100 * Math.abs(metres)));
    }

    private static String cm(double metres) {
        return bare(metres) + " cm";
    }

    private static String seconds(double seconds) {
        return String.format(Locale.ROOT, "%.2f s", Math.abs(seconds));
    }
}

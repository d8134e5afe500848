package deferent.film.words;

import deferent.film.hand.FreeSwing;
import deferent.record.PrettyJson;
import deferent.tell.Told;
import deferent.tell.Told.Tone;
import java.util.Locale;
import java.util.OptionalDouble;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** What a film of a swinging bob tells, in a sentence and as JSON. */
public final class TellSwing {
    private static final double SURE = 2; // standard deviations that "within" covers

    private TellSwing() {}

    /**
     * In one sentence.
     *
     * @param said how long the tether is said to be, metres
     */
    public static Told of(FreeSwing swing, OptionalDouble said) {
        String text =
                String.format(
                        Locale.ROOT,
                        "It swings to and fro in %.3f s, %.0f° to either side: it hangs %.1f cm"
                                + " below a still hand, within %.1f cm%s, and loses %.1f %% of its"
                                + " swing each time.",
                        swing.period(),
                        Math.toDegrees(swing.amplitude()),
                        100 * swing.length(),
                        100 * SURE * swing.lengthError(),
                        said.isPresent() ? against(swing, said.getAsDouble()) : "",
                        100 * Math.max(0, swing.lost()));
        return new Told(
                "film.swing",
                Tone.NOTE,
                text,
                String.format(
                        Locale.ROOT,
                        "a pendulum's period, 2π√(L/g) times 2K(sin(a/2))/π for its width (DLMF"
                                + " 19.2(ii)); the loss is sure to %.1f %%, and a pixel there is"
                                + " %.2f mm",
                        100 * SURE * swing.lostError(),
                        1000 * swing.metres()));
    }

    private static String against(FreeSwing swing, double said) {
        double off = swing.length() - said;
        return Math.abs(off) < SURE * swing.lengthError()
                ? String.format(Locale.ROOT, ", as the %.0f cm said", 100 * said)
                : String.format(
                        Locale.ROOT,
                        ", %.1f cm %s than the %.0f cm said",
                        100 * Math.abs(off),
                        off < 0 ? "shorter" : "longer",
                        100 * said);
    }

    /** As JSON. */
    public static String json(FreeSwing swing) {
        ObjectNode all = JsonNodeFactory.instance.objectNode();
        all.put("period_s", swing.period());
        all.put("amplitude_deg", Math.toDegrees(swing.amplitude()));
        all.put("length_m", swing.length());
        all.put("length_error_m", swing.lengthError());
        all.put("pixel_m", swing.metres());
        all.put("pixel_error_share", swing.metresError());
        all.put("lost_share", swing.lost());
        all.put("lost_error_share", swing.lostError());
        all.put("drag_over_mass_per_m", swing.dragOverMass());
        return PrettyJson.text(all);
    }
}

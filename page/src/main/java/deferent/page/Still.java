package deferent.page;

import deferent.motion.pairing.Refusal;
import java.util.List;

/**
 * What a still shows and on what: a scene's moment, from a view, on a paper of some size.
 *
 * @param view from where
 * @param time the moment, seconds
 * @param width of the paper, pixels or points, 48 to 8192
 * @param height the same
 * @param theme light or dark
 * @param transparent whether the ground is left out
 * @param caption lines below the picture, the first in heavier type; without any, there is no scale
 *     bar either
 */
public record Still(
        View view,
        double time,
        int width,
        int height,
        Palette.Theme theme,
        boolean transparent,
        List<String> caption) {
    public Still {
        Refusal.within(width, 48, 8192, "width of a still", "pixels");
        Refusal.within(height, 48, 8192, "height of a still", "pixels");
        Refusal.finite(time, "time of a still");
        caption = List.copyOf(caption);
    }

    /** A square picture for an audience, on a light ground, at the start of the cycle. */
    public static Still square(int edge) {
        return new Still(View.AUDIENCE, 0, edge, edge, Palette.Theme.LIGHT, false, List.of());
    }

    public Still with(View other) {
        return new Still(other, time, width, height, theme, transparent, caption);
    }

    public Still with(Palette.Theme other) {
        return new Still(view, time, width, height, other, transparent, caption);
    }

    public Still at(double seconds) {
        return new Still(view, seconds, width, height, theme, transparent, caption);
    }

    public Still with(List<String> lines) {
        return new Still(view, time, width, height, theme, transparent, lines);
    }

    public Still clear() {
        return new Still(view, time, width, height, theme, true, caption);
    }
}

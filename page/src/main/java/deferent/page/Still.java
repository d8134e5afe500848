package deferent.page;

import deferent.motion.pairing.Refusal;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * What a still shows and on what: a scene in some form, from a view, on a paper of some size.
 *
 * @param view from where
 * @param time the moment, seconds; of an exposure, when the shutter opens
 * @param width of the paper, pixels or points, 48 to 16384
 * @param height the same
 * @param theme light or dark
 * @param transparent whether the ground is left out
 * @param caption lines below the picture, the first in heavier type; without any, there is no scale
 *     bar either
 * @param form what kind of picture
 * @param moments of poses and strips, seconds, at most 64; none for {@link Counts#moments}
 * @param layers what is on, of that which the form shows
 */
public record Still(
        View view,
        double time,
        int width,
        int height,
        Palette.Theme theme,
        boolean transparent,
        List<String> caption,
        StillForm form,
        List<Double> moments,
        Set<Layer> layers) {
    /** The longest edge a still may have, pixels. */
    public static final int LARGEST = 16384;

    private static final int MOST_MOMENTS = 64;

    public Still {
        Refusal.within(width, 48, LARGEST, "width of a still", "pixels");
        Refusal.within(height, 48, LARGEST, "height of a still", "pixels");
        Refusal.finite(time, "time of a still");
        caption = List.copyOf(caption);
        moments = List.copyOf(moments);
        moments.forEach(moment -> Refusal.finite(moment, "moment of a still"));
        if (moments.size() > MOST_MOMENTS) {
            throw new Refusal(
                    "are " + moments.size(),
                    "moments of a still",
                    "give at most " + MOST_MOMENTS + ", or make more stills of them");
        }
        layers = Set.copyOf(layers);
    }

    /** A moment with the usual layers. */
    public Still(
            View view,
            double time,
            int width,
            int height,
            Palette.Theme theme,
            boolean transparent,
            List<String> caption) {
        this(
                view,
                time,
                width,
                height,
                theme,
                transparent,
                caption,
                StillForm.MOMENT,
                List.of(),
                Layer.usual());
    }

    /** A square picture for an audience, on a light ground, at the start of the cycle. */
    public static Still square(int edge) {
        return of(edge, edge);
    }

    /** As {@link #square}, of any shape. */
    public static Still of(int width, int height) {
        return new Still(View.AUDIENCE, 0, width, height, Palette.Theme.LIGHT, false, List.of());
    }

    /** Whether something is to be seen. */
    public boolean shows(Layer layer) {
        return layers.contains(layer);
    }

    public Still with(View other) {
        return new Still(
                other, time, width, height, theme, transparent, caption, form, moments, layers);
    }

    public Still with(Palette.Theme other) {
        return new Still(
                view, time, width, height, other, transparent, caption, form, moments, layers);
    }

    public Still at(double seconds) {
        return new Still(
                view, seconds, width, height, theme, transparent, caption, form, moments, layers);
    }

    public Still with(List<String> lines) {
        return new Still(
                view, time, width, height, theme, transparent, lines, form, moments, layers);
    }

    /** Without a ground. */
    public Still clear() {
        return new Still(view, time, width, height, theme, true, caption, form, moments, layers);
    }

    public Still with(StillForm other) {
        return new Still(
                view, time, width, height, theme, transparent, caption, other, moments, layers);
    }

    /** In a form that shows moments. */
    public Still with(StillForm other, List<Double> seconds) {
        return new Still(
                view, time, width, height, theme, transparent, caption, other, seconds, layers);
    }

    public Still with(Set<Layer> other) {
        return new Still(
                view, time, width, height, theme, transparent, caption, form, moments, other);
    }

    public Still with(Layer layer) {
        EnumSet<Layer> more = EnumSet.of(layer);
        more.addAll(layers);
        return with(more);
    }

    public Still without(Layer layer) {
        EnumSet<Layer> fewer = EnumSet.allOf(Layer.class);
        fewer.retainAll(layers);
        fewer.remove(layer);
        return with(fewer);
    }

    public Still sized(int across, int up) {
        return new Still(
                view, time, across, up, theme, transparent, caption, form, moments, layers);
    }
}

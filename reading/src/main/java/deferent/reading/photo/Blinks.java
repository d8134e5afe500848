package deferent.reading.photo;

/**
 * What a blinking light leaves over one figure: dashes, or dots where it is lit for so short that
 * they are no longer than the light is wide. Lengths run along the figure.
 *
 * @param led the light
 * @param figure how many blinks go into one figure; where that is no whole number they fall
 *     elsewhere the next time round
 * @param pitch from one blink's start to the next one's
 * @param dash travelled while lit; the light's own width comes on top of it
 * @param dark travelled while not lit; a gap is seen where that is more than the light's width
 * @param unbroken share of the figure on which the next dash begins before the last one ends, since
 *     the light is wider than the way it travels unlit
 */
public record Blinks(
        Led led, double figure, Spread pitch, Spread dash, Spread dark, double unbroken) {
    // A blink off by less than this share of a blink falls on the last round's.
    private static final double SAME = 0.02;

    /** Whether the blinks of the next round fall where those of this one fell. */
    public boolean stands() {
        return figure >= 1 - SAME && Math.abs(figure - Math.rint(figure)) < SAME;
    }

    static Blinks of(Led led, Way way, double diameter) {
        double blink = 1 / led.hertz();
        double lit = led.duty() * blink;
        Extent pitch = new Extent();
        Extent dash = new Extent();
        Extent dark = new Extent();
        int count = way.count();
        int merged = 0;
        for (int i = 0; i < count; i++) {
            double start = way.period() * i / count;
            double whole = way.between(start, start + blink);
            double bright = way.between(start, start + lit);
            double unlit = way.between(start + lit, start + blink);
            pitch.take(whole);
            dash.take(bright);
            dark.take(unlit);
            merged += unlit <= diameter ? 1 : 0;
        }
        double each = way.length() * blink / way.period();
        return new Blinks(
                led,
                led.hertz() * way.period(),
                pitch.with(each),
                dash.with(each * led.duty()),
                dark.with(each * (1 - led.duty())),
                (double) merged / count);
    }

    private static final class Extent {
        private double least = Double.POSITIVE_INFINITY;
        private double most;

        void take(double value) {
            least = Math.min(least, value);
            most = Math.max(most, value);
        }

        Spread with(double mean) {
            return new Spread(Math.min(least, mean), mean, Math.max(most, mean));
        }
    }
}

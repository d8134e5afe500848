package deferent.page;

import deferent.motion.pairing.Part;
import java.awt.Graphics2D;

/**
 * The light behind a head: the whole figure faintly, and over it what is younger, the stronger and
 * the broader the younger. Its dashes lie still on the figure, as many as fit it, and the light
 * runs over them.
 *
 * <p>On pixels every age has a strength of its own ({@link TrailPixels}). In strokes, for papers
 * that know nothing else, coats lie over ever younger parts; each covers the next, so that no end
 * shows, and many thin coats come near the same law.
 */
final class Trail {
    /** How much of the cycle a trail takes to fade. */
    static final double FADE = 0.72;

    /** How strong the figure is where all light has faded. */
    static final double OLD = 0.26;

    /** How broad that faint figure is, in widths of the trail. */
    static final double OLD_WIDTH = 0.55;

    /** What still shines through all the coats at the head. */
    private static final double THROUGH = 0.044;

    /** Coats a thousand pixels of the picture's shorter edge, from fewest to most. */
    private static final double COATS = 18;

    private static final int FEWEST = 8;
    private static final int MOST = 20;

    private final PaperRun lane;
    private final Palette.Look look;
    private final Brush brush;
    private final double[] dash;

    private Trail(PaperRun lane, Palette.Look look, Brush brush, double[] dash) {
        this.lane = lane;
        this.look = look;
        this.brush = brush;
        this.dash = dash;
    }

    static Trail of(Scene scene, Framing framing, Brush brush, Item item, Item.Shape.Run run) {
        PaperRun lane = PaperRun.of(scene, framing, run);
        Palette.Look look = Brush.look(item);
        Part part = scene.trace().pairing().part(run.track().side());
        int laps =
                part.cycles()
                        * (part.still() ? Math.max(1, Math.abs(part.motion().spin().turns())) : 1);
        return new Trail(lane, look, brush, lane.fitted(brush.dash(look), laps));
    }

    PaperRun lane() {
        return lane;
    }

    Palette.Look look() {
        return look;
    }

    /** On and off, pixels; empty for unbroken. A stroke's middle is where the lane starts. */
    double[] dash() {
        return dash;
    }

    /** How broad a coat is that reaches back over a share of the fade, pixels. */
    double width(double share) {
        return look.width() * brush.unit() * (1.05 - 0.5 * share);
    }

    /** How broad the faint figure is, pixels. */
    double oldWidth() {
        return look.width() * brush.unit() * OLD_WIDTH;
    }

    /** What shines through coats over so large a share of the fade. */
    static double through(double share) {
        return Math.pow(THROUGH, share);
    }

    /** The figure alone, evenly. */
    void even(Graphics2D g, double strength) {
        double phase = dash.length == 0 ? 0 : dash[0] / 2;
        brush.draw(g, lane.whole(), look, look.width(), strength, dash, phase);
    }

    /** Faint: how the figure looks where no light is left. */
    void old(Graphics2D g) {
        brush.draw(
                g,
                lane.whole(),
                Brush.unbroken(look),
                look.width() * OLD_WIDTH,
                OLD,
                new double[0],
                0);
    }

    /** In strokes. */
    void strokes(Graphics2D g, double time, double edge) {
        old(g);
        int coats = (int) Math.max(FEWEST, Math.min(MOST, COATS * edge / 1000));
        double strength = 1 - through(1.0 / coats);
        double head = lane.share(time);
        double phase = phase(lane.comeAt(head));
        for (int coat = coats; coat >= 1; coat--) {
            double share = (coat - 0.5) / coats;
            brush.draw(
                    g,
                    lane.back(head, share * FADE),
                    look,
                    look.width() * (1.05 - 0.5 * share),
                    strength,
                    dash,
                    phase);
        }
    }

    /** How far into the dash a line begins that runs back from {@code come} pixels on. */
    private double phase(double come) {
        if (dash.length == 0) {
            return 0;
        }
        double whole = dash[0] + dash[1];
        double phase = (dash[0] / 2 - come) % whole;
        return phase < 0 ? phase + whole : phase;
    }
}

package deferent.page;

import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Count;
import deferent.motion.trace.Counts;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Paints a scene's moments one after another, for clips: each the picture {@link Png} would give of
 * that moment, but that labels go with the heads and over lines. What never moves is painted once,
 * each trail is rasterised once and then looked up, and only link, tethers, hands and heads are
 * drawn anew. A clip begins and ends alike where its moments are a cycle apart, for a moment's
 * picture depends on nothing before it.
 *
 * <p>For one thread at a time; {@link #fork} gives another its own.
 */
public final class Frames {
    /** The longest edge of a frame, pixels. */
    public static final int LARGEST = 3840;

    private final Scene scene;
    private final Still still;
    private final Layout layout;
    private final MomentPainter painter;
    private final List<Count> counts;
    private final int[] behind;
    private final Optional<Chapters.Opened> chapters;
    private final Optional<Outline> outline;
    private final List<Trail> trails = new ArrayList<>();
    private final List<TrailPixels> lights = new ArrayList<>();

    private Frames(Scene scene, Still still) {
        this(scene, still, Optional.empty(), Optional.empty());
    }

    /** Of a part of something longer: in its framing, and what is said below is not painted yet. */
    Frames(Scene scene, Still still, Framing whole) {
        this(scene, still, Optional.of(whole), Optional.empty());
    }

    private Frames(
            Scene scene, Still still, Optional<Framing> whole, Optional<Chapters.Opened> chapters) {
        this.chapters = chapters;
        this.outline = Optional.empty();
        this.scene = scene;
        this.still = still;
        layout = Layout.of(still);
        counts =
                still.form() instanceof StillForm.Moment && still.shows(Layer.COUNTS)
                        ? Counts.of(scene.trace())
                        : List.of();
        Framing framing = whole.orElseGet(() -> Framing.of(scene, still.view(), layout.room()));
        painter = new MomentPainter(scene, framing, layout.brush(), still.layers(), layout.paper());
        BufferedImage image =
                new BufferedImage(still.width(), still.height(), BufferedImage.TYPE_INT_ARGB_PRE);
        Paper paper = Pixels.paper(image, 0);
        Pixels pixels = Pixels.of(image, 0);
        if (still.form() instanceof StillForm.Moment) {
            layout.ground(paper);
            if (!painter.stirs()) {
                painter.behind(paper, "", still.time());
            }
            if (whole.isEmpty()) {
                layout.caption(paper, framing.scale());
            }
            for (Trail trail : painter.trails().values()) {
                trails.add(trail);
                lights.add(painter.pixels(trail, pixels));
            }
        } else {
            Painter.paint(scene, still, paper);
        }
        behind = pixels.argb();
    }

    private Frames(Frames other, Optional<Outline> outline) {
        this.outline = outline;
        scene = other.scene;
        still = other.still;
        layout = other.layout;
        painter = other.painter;
        counts = other.counts;
        behind = other.behind;
        chapters = other.chapters;
        trails.addAll(other.trails);
        lights.addAll(other.lights);
    }

    /**
     * Of any form: a moment moves with the time, the others stand still, an exposure as from the
     * still's own time.
     */
    public static Frames of(Scene scene, Still still) {
        bounded(still);
        return new Frames(scene, still);
    }

    private static void bounded(Still still) {
        Refusal.within(still.width(), 48, LARGEST, "width of a clip", "pixels");
        Refusal.within(still.height(), 48, LARGEST, "height of a clip", "pixels");
    }

    /**
     * Of chapters, one after the other.
     *
     * @param whole all of it, for the framing
     * @param still how it looks; its caption is that of the chapters
     */
    public static Frames of(Scene whole, Chapters chapters, Still still) {
        Still lined = still.with(chapters.lines(0));
        bounded(lined);
        Framing framing = Framing.of(whole, still.view(), Layout.of(lined).room());
        return new Frames(
                chapters.parts().get(0).scene(),
                lined,
                Optional.of(framing),
                Optional.of(new Chapters.Opened(chapters, lined, framing)));
    }

    /** Another painter of the same frames, for another thread; what never changes is shared. */
    public Frames fork() {
        return new Frames(this, outline);
    }

    /**
     * The same with an outline round all that is drawn, which stands on any footage.
     *
     * @param width thousandths of the shorter edge; 0 for none
     */
    public Frames outlined(double width) {
        double pixels = width * Math.min(still.width(), still.height()) / 1000;
        return new Frames(
                this,
                width == 0
                        ? Optional.empty()
                        : Optional.of(
                                new Outline(still.width(), still.height(), pixels, still.theme())));
    }

    /**
     * Paints a moment over whatever the image held.
     *
     * @param time seconds
     * @param into as large as the still, of type INT_ARGB_PRE, or INT_RGB where the still is not
     *     transparent
     */
    public void paint(double time, BufferedImage into) {
        drawn(time, into);
        outline.ifPresent(round -> round.under(Pixels.of(into, 0).argb()));
    }

    private void drawn(double time, BufferedImage into) {
        boolean fits =
                into.getWidth() == still.width()
                        && into.getHeight() == still.height()
                        && (into.getType() == BufferedImage.TYPE_INT_ARGB_PRE
                                || into.getType() == BufferedImage.TYPE_INT_RGB
                                        && !still.transparent())
                        && into.getRaster().getDataBuffer() instanceof DataBufferInt;
        if (!fits) {
            throw new Refusal(
                    "is of another size or kind than the still",
                    "image for a frame",
                    "give one of "
                            + still.width()
                            + " by "
                            + still.height()
                            + " pixels, INT_ARGB_PRE, or INT_RGB on a ground");
        }
        if (chapters.isPresent()) {
            Chapters.Opened opened = chapters.get();
            opened.frames(time).paint(time + opened.ahead(time), into);
            Still said = still.with(opened.lines(time));
            Layout.of(said).caption(Pixels.paper(into, 0), 0);
            return;
        }
        int[] argb = Pixels.of(into, 0).argb();
        System.arraycopy(behind, 0, argb, 0, behind.length);
        if (!(still.form() instanceof StillForm.Moment)) {
            return;
        }
        Optional<Silhouette> body = painter.body(time);
        if (painter.stirs()) {
            Graphics2D g = into.createGraphics();
            try {
                painter.behind(Brush.smooth(g), body);
            } finally {
                g.dispose();
            }
        }
        if (into.getType() == BufferedImage.TYPE_INT_RGB) {
            opaque(argb);
        }
        for (int i = 0; i < lights.size(); i++) {
            Trail trail = trails.get(i);
            lights.get(i).paint(trail.lane().share(time), argb, MomentPainter.seen(trail, body));
        }
        Graphics2D g = into.createGraphics();
        try {
            Brush.smooth(g);
            painter.moving(g, time, body);
            painter.labels(g, time, layout.labels());
            if (!counts.isEmpty()) {
                layout.counts(g, counts, Counts.at(scene.trace(), counts, time));
            }
        } finally {
            g.dispose();
        }
    }

    // Where an image has no alpha, what is painted on it softly leaves none, and light that is laid
    // over colours multiplied by alpha would darken there.
    private static void opaque(int[] argb) {
        for (int i = 0; i < argb.length; i++) {
            argb[i] |= 0xFF000000;
        }
    }
}

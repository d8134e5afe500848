package deferent.take;

import deferent.film.FilmReading;
import deferent.film.over.Overlay;
import deferent.motion.pairing.Pairing;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.page.Caption;
import deferent.page.Frames;
import deferent.page.OverFilm;
import deferent.page.Palette;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.page.View;
import deferent.reel.Reprint;
import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What is made of a film's frames: a row a form. */
enum FilmForm {
    /** What was meant, the light and the hands over it. */
    OVER("the film with what was meant over it") {
        @Override
        Reprint.Page page(Take take) {
            return new LaidOver(
                    take.filmed().reading(), take.wishes().number(Wish.OUTLINE).orElse(0));
        }
    },
    /** What a camera whose shutter stays open would have kept. */
    EXPOSURE("the light as one long exposure") {
        @Override
        Reprint.Page page(Take take) {
            return new LongExposure(take.filmed().reading());
        }
    },
    /** The film on the left, what was meant on the right, in time. */
    BESIDE("the film, and beside it what was meant") {
        @Override
        Reprint.Page page(Take take) {
            return new Beside(take);
        }

        @Override
        Dimension size(Dimension film) {
            return new Dimension(film.width + Beside.room(film), film.height);
        }
    };

    private final String words;

    FilmForm(String words) {
        this.words = words;
    }

    /** Paints it, frame by frame from the first. */
    abstract Reprint.Page page(Take take);

    /** Of the print, from that of the film, pixels. */
    Dimension size(Dimension film) {
        return film;
    }

    /** As it is wished for. */
    String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    Offer.Choice choice() {
        return new Offer.Choice(key(), words);
    }

    static List<Offer.Choice> choices() {
        return Stream.of(values()).map(FilmForm::choice).toList();
    }

    /** What may be wished in a form, the first that can be chosen where none is said. */
    static List<Offer> offers(List<Offer> all, String form) {
        String meant =
                form.isEmpty()
                        ? all.stream()
                                .filter(o -> o.wish() == Wish.FORM)
                                .findFirst()
                                .orElseThrow()
                                .unsaid()
                        : form;
        return all.stream().filter(o -> o.forms().isEmpty() || o.forms().contains(meant)).toList();
    }

    static FilmForm wished(Take take) {
        return valueOf(take.wishes().word(Wish.FORM).toUpperCase(Locale.ROOT));
    }

    private static void film(Graphics2D g, BufferedImage frame, double by) {
        if (by == 1) {
            g.drawImage(frame, 0, 0, null);
            return;
        }
        g.setRenderingHint(
                RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        g.drawImage(
                frame,
                0,
                0,
                (int) Math.ceil(by * frame.getWidth()),
                (int) Math.ceil(by * frame.getHeight()),
                null);
    }

    // A print may lack a row or a column of the film, to be even; that is no other scale.
    private static double scale(double print, double film) {
        return film - print < 2 ? 1 : print / film;
    }

    /** What lies over the film. */
    private static final class LaidOver implements Reprint.Page {
        private final Overlay overlay;
        private final double outline;
        private @Nullable OverFilm lines;

        LaidOver(FilmReading film, double outline) {
            overlay = Overlay.of(film);
            this.outline = outline;
        }

        @Override
        public void paint(BufferedImage frame, double time, BufferedImage print) {
            OverFilm over = lines;
            if (over == null) {
                over = lines(overlay, frame);
                lines = over;
            }
            double by = scale(print.getWidth(), frame.getWidth());
            Graphics2D g = print.createGraphics();
            try {
                film(g, frame, by);
            } finally {
                g.dispose();
            }
            over.paint(print, by, overlay.share(time), outline);
        }

        static OverFilm lines(Overlay overlay, BufferedImage frame) {
            Map<Side, OverFilm.Lines> sides = new EnumMap<>(Side.class);
            for (Side side : Side.values()) {
                sides.put(side, lines(overlay.side(side)));
            }
            return new OverFilm(sides, frame.getWidth(), frame.getHeight());
        }

        private static OverFilm.Lines lines(Overlay.Laid side) {
            return new OverFilm.Lines(
                    side.light(),
                    side.meant(),
                    side.meantHand(),
                    side.hands().stream()
                            .map(h -> new OverFilm.Disc(h.share(), h.x(), h.y(), h.error()))
                            .toList());
        }
    }

    /**
     * The brightest that each pixel was so far, each colour by itself; and since a camera is blind
     * between its frames, the way of each head from one to the next in its hand's colour.
     */
    private static final class LongExposure implements Reprint.Page {
        private final Overlay overlay;
        private @Nullable OverFilm lines;
        private @Nullable BufferedImage kept;
        private double last;

        LongExposure(FilmReading film) {
            overlay = Overlay.of(film);
        }

        @Override
        public void paint(BufferedImage frame, double time, BufferedImage print) {
            OverFilm over = lines;
            BufferedImage all = kept;
            if (over == null || all == null) {
                over = LaidOver.lines(overlay, frame);
                all =
                        new BufferedImage(
                                frame.getWidth(), frame.getHeight(), BufferedImage.TYPE_INT_RGB);
                lines = over;
                kept = all;
                last = time;
            }
            Graphics2D g = all.createGraphics();
            double gone = Math.min(1, (time - last) / overlay.period());
            double share = overlay.share(time);
            over.expose(g, share - gone, share);
            g.dispose();
            last = time;
            lighten(pixels(all), pixels(frame));
            Graphics2D to = print.createGraphics();
            double by = scale(print.getWidth(), frame.getWidth());
            film(to, all, by);
            to.scale(by, by);
            over.letters(to, share);
            to.dispose();
        }

        private static void lighten(int[] kept, int[] now) {
            for (int i = 0; i < kept.length; i++) {
                int a = kept[i];
                int b = now[i];
                kept[i] =
                        Math.max(a & 0xFF0000, b & 0xFF0000)
                                | Math.max(a & 0xFF00, b & 0xFF00)
                                | Math.max(a & 0xFF, b & 0xFF);
            }
        }

        private static int[] pixels(BufferedImage image) {
            return ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
        }
    }

    /** The film, and what was meant beside it at the same moment of its cycle. */
    private static final class Beside implements Reprint.Page {
        private final Overlay overlay;
        private final Pairing meant;
        private final String said;
        private final double ahead;
        private final View view;
        private final Scene scene;
        private @Nullable Frames frames;
        private @Nullable BufferedImage right;

        Beside(Take take) {
            FilmReading film = take.filmed().reading();
            overlay = Overlay.of(film);
            meant = film.held().meant();
            ahead = film.held().ahead();
            said = take.title();
            view = film.measured().scale().mirrored() ? View.MIRROR : View.AUDIENCE;
            scene = Scene.of(Trace.of(meant));
        }

        /** How wide what was meant is drawn, pixels: a square, or as wide as an upright film. */
        static int room(Dimension film) {
            return Math.min(film.width, film.height);
        }

        @Override
        public void paint(BufferedImage frame, double time, BufferedImage print) {
            double whole = frame.getWidth() + room(size(frame));
            double by = scale(print.getWidth(), whole);
            int left = (int) Math.floor(by * frame.getWidth());
            Frames painter = frames;
            BufferedImage panel = right;
            if (painter == null || panel == null) {
                Still still =
                        Still.of(print.getWidth() - left, print.getHeight())
                                .with(view)
                                .with(Palette.Theme.DARK)
                                .with(Caption.of(said, meant, view));
                painter = Frames.of(scene, still);
                panel =
                        new BufferedImage(
                                still.width(), still.height(), BufferedImage.TYPE_INT_RGB);
                frames = painter;
                right = panel;
            }
            Trace trace = scene.trace();
            double share = overlay.share(time) + ahead;
            painter.paint(
                    trace.interval().start() + (share - Math.floor(share)) * trace.period(), panel);
            Graphics2D g = print.createGraphics();
            try {
                film(g, frame, by);
                g.drawImage(panel, left, 0, null);
            } finally {
                g.dispose();
            }
        }

        private static Dimension size(BufferedImage frame) {
            return new Dimension(frame.getWidth(), frame.getHeight());
        }
    }
}

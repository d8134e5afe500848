package deferent.film.light;

import deferent.motion.pairing.Refusal;
import deferent.reel.Footage;
import deferent.reel.Shot;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;

/**
 * What stands still in a film by day, and what moves before it: of each pixel the middle one of
 * some frames spread over the film is the background, and by how much a frame differs from it is
 * looked at as a frame in the dark, in which what moves is lit. The camera must not move.
 */
public final class Background {
    private static final int COLOURED = 3; // times a colour's difference counts as brightness does

    private static final int CORDS = 400; // half a cord's thickness in a picture's width

    private final byte[] luma;
    private final byte[] blue;
    private final byte[] red;

    private Background(byte[] luma, byte[] blue, byte[] red) {
        this.luma = luma;
        this.blue = blue;
        this.red = red;
    }

    /** What is looked at. */
    public enum By {
        /** Whatever moves, brighter or darker than what lies behind it, or of another colour. */
        ANY,
        /** What is of another colour than what lies behind it: heads, hardly arms or clothes. */
        COLOUR
    }

    /**
     * Gathers frames spread over a film whose length is not known, no more than a score of them.
     */
    public static final class Samples {
        private static final int MOST = 22;

        private final List<Shot> kept = new ArrayList<>();
        private double step = 0.1; // seconds
        private double next;

        /** Looks at a frame, and keeps a copy of it where it is time for one. */
        public void add(Shot shot) {
            if (shot.time() < next) {
                return;
            }
            Shot last = kept.isEmpty() ? shot : kept.get(0);
            if (last.width() != shot.width() || last.height() != shot.height()) {
                return;
            }
            kept.add(
                    new Shot(
                            shot.time(),
                            shot.width(),
                            shot.height(),
                            shot.luma().clone(),
                            shot.blue().clone(),
                            shot.red().clone()));
            if (kept.size() == MOST) {
                for (int i = MOST - 1; i > 0; i -= 2) {
                    kept.remove(i);
                }
                step *= 2;
            }
            // No multiple of a usual period, or a bob would be met at one place.
            next = shot.time() + step * (kept.size() % 2 == 0 ? 0.87 : 1.13);
        }

        /** Their background; empty where there is no frame. */
        public Optional<Background> background() {
            return kept.isEmpty() ? Optional.empty() : Optional.of(of(kept));
        }
    }

    /** Of frames of one size. */
    static Background of(List<Shot> shots) {
        return new Background(
                middle(shots.stream().map(Shot::luma).toList()),
                middle(shots.stream().map(Shot::blue).toList()),
                middle(shots.stream().map(Shot::red).toList()));
    }

    private static byte[] middle(List<byte[]> planes) {
        int n = planes.size();
        byte[] middle = new byte[planes.get(0).length];
        int[] column = new int[n];
        for (int i = 0; i < middle.length; i++) {
            for (int k = 0; k < n; k++) {
                column[k] = planes.get(k)[i] & 255;
            }
            Arrays.sort(column);
            middle[i] = (byte) column[n / 2];
        }
        return middle;
    }

    /**
     * What moves in a film, frame by frame, whether lit or not.
     *
     * @param progress hears the share that was gone through, 0 to 1
     * @param stop asked at every frame
     * @return upright; empty where it was stopped
     * @throws Refusal where the file is no film
     */
    public static Optional<List<List<LitSpot>>> moving(
            Path film, DoubleConsumer progress, BooleanSupplier stop) throws IOException {
        Samples samples = new Samples();
        try (Footage footage = Footage.open(film)) {
            double length = Math.max(1e-3, footage.seconds());
            for (Optional<Shot> shot = footage.next(); shot.isPresent(); shot = footage.next()) {
                if (stop.getAsBoolean()) {
                    return Optional.empty();
                }
                samples.add(shot.get());
                progress.accept(Math.min(1, shot.get().time() / length) / 2);
            }
        }
        Optional<Background> background = samples.background();
        return background.isEmpty()
                ? Optional.of(List.of())
                : background.get().moving(film, By.ANY, p -> progress.accept((1 + p) / 2), stop);
    }

    /**
     * What moves before it in its film, frame by frame.
     *
     * @param progress hears the share that was gone through, 0 to 1
     * @param stop asked at every frame
     * @return upright; empty where it was stopped
     */
    public Optional<List<List<LitSpot>>> moving(
            Path film, By by, DoubleConsumer progress, BooleanSupplier stop) throws IOException {
        List<List<LitSpot>> frames = new ArrayList<>();
        SpotFinder finder = SpotFinder.ofChanges();
        try (Footage footage = Footage.open(film)) {
            double length = Math.max(1e-3, footage.seconds());
            int turned = footage.turned();
            for (Optional<Shot> shot = footage.next(); shot.isPresent(); shot = footage.next()) {
                if (stop.getAsBoolean()) {
                    return Optional.empty();
                }
                Shot one = shot.get();
                if (one.luma().length == luma.length) {
                    frames.add(
                            finder.find(before(one, by)).stream()
                                    .map(s -> s.upright(turned, one.width(), one.height()))
                                    .toList());
                }
                progress.accept(Math.min(1, one.time() / length));
            }
        }
        return Optional.of(frames);
    }

    /** A frame in which what differs from the background is lit. */
    Shot before(Shot shot, By by) {
        byte[] differs = new byte[luma.length];
        int width = shot.width();
        int half = (width + 1) / 2;
        for (int row = 0; row < shot.height(); row++) {
            for (int x = 0; x < width; x++) {
                int i = row * width + x;
                int c = row / 2 * half + x / 2;
                int off =
                        COLOURED
                                * Math.max(
                                        apart(shot.blue()[c], blue[c]),
                                        apart(shot.red()[c], red[c]));
                if (by == By.ANY) {
                    off = Math.max(off, apart(shot.luma()[i], luma[i]));
                }
                differs[i] = (byte) Math.min(255, off);
            }
        }
        int reach = Math.max(1, width / CORDS);
        byte[] thick = thin(differs, width, shot.height(), reach, 1, width);
        thick = thin(thick, width, shot.height(), reach, width, 1);
        return new Shot(shot.time(), width, shot.height(), thick, shot.blue(), shot.red());
    }

    // What is no thicker than twice the reach, as a cord is, goes: each pixel becomes the least of
    // those about it (erosion: Serra, Image Analysis and Mathematical Morphology (1982)). A round
    // bob's middle stays where it was.
    private static byte[] thin(
            byte[] from, int width, int height, int reach, int step, int across) {
        byte[] to = new byte[from.length];
        int along = step == 1 ? width : height;
        for (int line = 0; line < from.length / along; line++) {
            int base = line * across;
            for (int i = 0; i < along; i++) {
                int least = 255;
                int last = Math.min(along - 1, i + reach);
                for (int k = Math.max(0, i - reach); k <= last && least > 0; k++) {
                    least = Math.min(least, from[base + k * step] & 255);
                }
                to[base + i * step] = (byte) least;
            }
        }
        return to;
    }

    private static int apart(byte a, byte b) {
        return Math.abs((a & 255) - (b & 255));
    }
}

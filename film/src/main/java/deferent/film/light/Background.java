package deferent.film.light;

import deferent.reel.Footage;
import deferent.reel.Shot;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/**
 * What stands still in a film by day, and what moves before it: of each pixel the middle one of
 * some frames spread over the film is the background, and by how much a frame differs from it is
 * looked at as a frame in the dark, in which what moves is lit. The camera must not move.
 */
public final class Background {
    private static final int SAMPLES = 21;

    private final byte[] middle;

    private Background(byte[] middle) {
        this.middle = middle;
    }

    /** Of frames of one size. */
    static Background of(List<byte[]> lumas) {
        int n = lumas.size();
        byte[] middle = new byte[lumas.get(0).length];
        int[] column = new int[n];
        for (int i = 0; i < middle.length; i++) {
            for (int k = 0; k < n; k++) {
                column[k] = lumas.get(k)[i] & 255;
            }
            Arrays.sort(column);
            middle[i] = (byte) column[n / 2];
        }
        return new Background(middle);
    }

    /**
     * What moves in a film, frame by frame, whether lit or not.
     *
     * @param stop asked at every frame
     * @return empty where it was stopped
     * @throws deferent.motion.pairing.Refusal where the file is no film
     */
    public static Optional<List<List<LitSpot>>> moving(Path film, BooleanSupplier stop)
            throws IOException {
        double seconds = 0;
        try (Footage footage = Footage.open(film)) {
            seconds = footage.seconds();
        }
        List<byte[]> samples = new ArrayList<>();
        try (Footage footage = Footage.open(film)) {
            double step = Math.max(0.1, seconds / SAMPLES);
            for (Optional<Shot> shot = footage.next(); shot.isPresent(); shot = footage.next()) {
                if (stop.getAsBoolean()) {
                    return Optional.empty();
                }
                if (shot.get().time() >= samples.size() * step && samples.size() < SAMPLES) {
                    samples.add(shot.get().luma().clone());
                }
            }
        }
        List<List<LitSpot>> frames = new ArrayList<>();
        if (samples.isEmpty()) {
            return Optional.of(frames);
        }
        Background background = of(samples);
        SpotFinder finder = new SpotFinder();
        try (Footage footage = Footage.open(film)) {
            for (Optional<Shot> shot = footage.next(); shot.isPresent(); shot = footage.next()) {
                if (stop.getAsBoolean()) {
                    return Optional.empty();
                }
                frames.add(finder.find(background.before(shot.get())));
            }
        }
        return Optional.of(frames);
    }

    /** A frame in which what differs from the background is lit. */
    Shot before(Shot shot) {
        byte[] differs = new byte[middle.length];
        for (int i = 0; i < differs.length; i++) {
            differs[i] = (byte) Math.abs((shot.luma()[i] & 255) - (middle[i] & 255));
        }
        return new Shot(shot.time(), shot.width(), shot.height(), differs, shot.blue(), shot.red());
    }
}

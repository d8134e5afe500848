package deferent.reel;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/**
 * What was written.
 *
 * @param frames how many
 * @param seconds how long the clip is
 * @param bytes size of the clip's file
 * @param cycles how many common cycles it shows
 * @param tempoOff by which share it spins faster than the pairing, so as to be a whole number of
 *     frames long; below 0, slower
 * @param files the clip, and its captions where they stand beside it
 */
public record ClipReport(
        int frames, double seconds, long bytes, int cycles, double tempoOff, List<Path> files) {
    public ClipReport {
        files = List.copyOf(files);
    }

    /** Bits a second. */
    public double bitRate() {
        return 8 * bytes / seconds;
    }

    /** "120 frames, 2 cycles, 2.000 s, 0.3 MB; spins 0.12 % faster than the pairing". */
    public String said() {
        String off =
                Math.abs(tempoOff) < 5e-7
                        ? ""
                        : String.format(
                                Locale.ROOT,
                                "; spins %.2g %% %s than the pairing, to be a whole number of"
                                        + " frames",
                                100 * Math.abs(tempoOff),
                                tempoOff > 0 ? "faster" : "slower");
        return String.format(
                Locale.ROOT,
                "%d frames, %d %s, %.3f s, %s%s",
                frames,
                cycles,
                cycles == 1 ? "cycle" : "cycles",
                seconds,
                size(bytes),
                off);
    }

    private static String size(long bytes) {
        return bytes < 100_000
                ? String.format(Locale.ROOT, "%.1f kB", bytes / 1e3)
                : String.format(Locale.ROOT, "%.1f MB", bytes / 1e6);
    }
}

package deferent.reel;

import java.io.IOException;
import java.nio.file.Path;

/**
 * A sound file by the sample, from its first on: two channels at 48 000 samples a second, whatever
 * it is stored as.
 */
final class Listening implements AutoCloseable {
    /** Samples a second of each channel. */
    static final int RATE = 48_000;

    static final int CHANNELS = 2;

    private final Hearing hearing;
    private float[] waiting = {};
    private int taken;

    private Listening(Hearing hearing) {
        this.hearing = hearing;
    }

    static Listening open(Path file) throws IOException {
        return new Listening(Hearing.open(file, RATE, CHANNELS));
    }

    /**
     * The next samples, left and right in turn.
     *
     * @param count pairs wanted
     * @return pairs put into {@code into}; fewer than wanted at the end alone
     */
    int read(float[] into, int count) {
        int got = 0;
        while (got < count && more()) {
            int now = Math.min((waiting.length - taken) / CHANNELS, count - got);
            System.arraycopy(waiting, taken, into, got * CHANNELS, now * CHANNELS);
            taken += now * CHANNELS;
            got += now;
        }
        return got;
    }

    /** Passes over so many pairs; those that are not there are passed over too. */
    void skip(long count) {
        long left = count;
        while (left > 0 && more()) {
            int now = (int) Math.min(left, (waiting.length - taken) / CHANNELS);
            taken += now * CHANNELS;
            left -= now;
        }
    }

    private boolean more() {
        if (taken >= waiting.length) {
            waiting = hearing.next();
            taken = 0;
        }
        return waiting.length > 0;
    }

    @Override
    public void close() {
        hearing.close();
    }
}

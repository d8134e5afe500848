package deferent.take;

import deferent.motion.pairing.Refusal;
import deferent.motion.song.Beats;
import deferent.record.cue.SetCues;
import deferent.record.cue.SungSet;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;

/**
 * Clicks on a song's beats for a set, to the sample: a bar of them before it begins and then one on
 * each beat until it is over, higher where a bar begins. The beats are those that are kept, as they
 * are heard, not their smooth course.
 *
 * @param beats of the song
 * @param first the number of the beat that clicks first
 * @param last the number of the beat that clicks last
 * @param ends when it is over, seconds from the start of the song's sound
 */
record ClickTrack(Beats beats, int first, int last, double ends) {
    /** Samples a second. */
    static final int RATE = 48_000;

    private static final int BYTES = 2;

    /** Of a click, seconds; it is loudest at its first sample. */
    private static final double LENGTH = 0.045;

    private static final double BAR_HERTZ = 1600;
    private static final double BEAT_HERTZ = 1000;
    private static final double LOUD = 0.9;

    /** Wave files count their bytes in 32 bits; ten hours fit. */
    private static final double LONGEST = 36_000;

    static ClickTrack of(SungSet sung) {
        double from = sung.clock().fromBeat();
        int begins = (int) Math.ceil(from - 1e-9);
        double ends = sung.ends();
        int last = (int) Math.ceil(sung.beats().beat(ends) - 1e-9) - 1;
        ClickTrack track =
                new ClickTrack(sung.beats(), begins - sung.beats().beatsABar(), last, ends);
        if (!(track.seconds() <= LONGEST)) {
            throw new Refusal(
                    String.format(Locale.ROOT, "is %.1f hours long", track.seconds() / 3600),
                    "click track",
                    "give a set of at most ten hours");
        }
        return track;
    }

    /** When its first sample is, seconds from the start of the song's sound; may be before that. */
    double begins() {
        return beats.time(first);
    }

    double seconds() {
        return ends - begins();
    }

    /** The sample on which a beat clicks. */
    long sample(int beat) {
        return Math.round((beats.time(beat) - begins()) * RATE);
    }

    /** 16 bits, one channel, as a wave file. */
    void write(OutputStream out) throws IOException {
        long frames = Math.max(sample(last) + (long) (LENGTH * RATE), Math.round(seconds() * RATE));
        AudioFormat format = new AudioFormat(RATE, 8 * BYTES, 1, true, false);
        AudioSystem.write(
                new AudioInputStream(new Samples(frames), format, frames),
                AudioFileFormat.Type.WAVE,
                out);
    }

    /** One click, as it sounds in the hall file too. */
    private static short[] click(double hertz) {
        int length = (int) Math.ceil(LENGTH * RATE);
        short[] wave = new short[length];
        for (int i = 0; i < length; i++) {
            wave[i] =
                    (short)
                            Math.round(
                                    32767
                                            * LOUD
                                            * Math.cos(2 * Math.PI * hertz * i / RATE)
                                            * Math.exp(-7.0 * i / length));
        }
        return wave;
    }

    /** The samples one after another, so that no track is held whole. */
    private final class Samples extends InputStream {
        private final short[] bar = click(BAR_HERTZ);
        private final short[] beat = click(BEAT_HERTZ);
        private final long bytes;
        private long at;
        private int on = first;

        Samples(long frames) {
            bytes = frames * BYTES;
        }

        @Override
        public int read() {
            if (at >= bytes) {
                return -1;
            }
            long frame = at / BYTES;
            while (on < last && sample(on + 1) <= frame) {
                on++;
            }
            long into = frame - sample(on);
            short[] sound = beats.beginsBar(on) ? bar : beat;
            int value = into >= 0 && into < sound.length ? sound[(int) into] : 0;
            return (at++ % BYTES == 0 ? value : value >> 8) & 0xFF;
        }

        @Override
        public int read(byte[] into, int from, int count) {
            int got = 0;
            for (int one; got < count && (one = read()) >= 0; got++) {
                into[from + got] = (byte) one;
            }
            return got == 0 && count > 0 ? -1 : got;
        }
    }

    /** "click track of 68 beats after a bar of 4, first click at 0:03.250 of the song". */
    String told() {
        int counted = beats.beatsABar();
        return "click track of "
                + (last - first + 1 - counted)
                + " beats after a bar of "
                + counted
                + ", first click at "
                + SetCues.clock(begins())
                + " of the song";
    }

    /** The samples on which it clicks. */
    List<Long> samples() {
        return IntStream.rangeClosed(first, last).mapToObj(this::sample).toList();
    }
}

package deferent.reel;

import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_FLAG_GLOBAL_HEADER;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_alloc;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_free;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_rescale_ts;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_unref;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_alloc_context3;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_find_encoder_by_name;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_free_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_open2;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_parameters_from_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_receive_packet;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_send_frame;
import static org.bytedeco.ffmpeg.global.avformat.AVFMT_GLOBALHEADER;
import static org.bytedeco.ffmpeg.global.avformat.avformat_new_stream;
import static org.bytedeco.ffmpeg.global.avutil.AV_SAMPLE_FMT_FLT;
import static org.bytedeco.ffmpeg.global.avutil.AV_SAMPLE_FMT_FLTP;
import static org.bytedeco.ffmpeg.global.avutil.AV_SAMPLE_FMT_S16;
import static org.bytedeco.ffmpeg.global.avutil.av_channel_layout_default;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_alloc;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_free;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_get_buffer;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_make_writable;
import static org.bytedeco.ffmpeg.global.avutil.av_make_q;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.javacpp.FloatPointer;
import org.bytedeco.javacpp.ShortPointer;

/**
 * The part of a song that goes along with a film, to the sample: before the song begins and after
 * it ends there is silence, and the first and last hundredth of a second are faded, so that a cut
 * does not crack.
 */
final class SoundTrack implements AutoCloseable {
    /** What takes its packets, their times in its own units. */
    interface Packets {
        void write(AVPacket packet) throws IOException;
    }

    /** How a song is coded. */
    enum Coding {
        NONE("", 0, 0),
        AAC("aac", AV_SAMPLE_FMT_FLTP, 192_000),
        OPUS("libopus", AV_SAMPLE_FMT_FLT, 160_000),
        /** As it is, for an editing timeline. */
        PCM("pcm_s16le", AV_SAMPLE_FMT_S16, 0);

        private final String encoder;
        private final int format;
        private final int bits;

        /** Bits a second, as usual. */
        int bits() {
            return bits;
        }

        Coding(String encoder, int format, int bits) {
            this.encoder = encoder;
            this.format = format;
            this.bits = bits;
        }
    }

    /** Samples at a time where the encoder takes any number. */
    private static final int USUAL = 1024;

    private static final int FADE = Listening.RATE / 100;

    private final Coding coding;
    private final Listening listening;
    private final AVCodecContext encoder;
    private final AVStream stream;
    private final AVFrame frame = av_frame_alloc();
    private final AVPacket packet = av_packet_alloc();
    private final int each;
    private final float[] pairs;
    private final long all;
    private long silence;
    private long done;
    private boolean finished;

    /**
     * A track in a container that has not begun.
     *
     * @param bits a second, where it is not coded as it is
     * @param begins at which second of the file the film begins
     * @param seconds how long the film is
     */
    static SoundTrack open(
            AVFormatContext container,
            Coding coding,
            int bits,
            Path file,
            double begins,
            double seconds)
            throws IOException {
        Listening listening = Listening.open(file);
        try {
            return new SoundTrack(container, coding, bits, listening, begins, seconds);
        } catch (IOException | RuntimeException | Error e) {
            listening.close();
            throw e;
        }
    }

    private SoundTrack(
            AVFormatContext container,
            Coding coding,
            int bits,
            Listening listening,
            double begins,
            double seconds)
            throws IOException {
        this.coding = coding;
        this.listening = listening;
        AVCodec codec = avcodec_find_encoder_by_name(coding.encoder);
        if (codec == null || codec.isNull()) {
            throw new IllegalStateException("these natives have no encoder " + coding.encoder);
        }
        encoder = avcodec_alloc_context3(codec);
        encoder.sample_rate(Listening.RATE);
        encoder.sample_fmt(coding.format);
        encoder.bit_rate(bits);
        encoder.time_base(av_make_q(1, Listening.RATE));
        av_channel_layout_default(encoder.ch_layout(), Listening.CHANNELS);
        if ((container.oformat().flags() & AVFMT_GLOBALHEADER) != 0) {
            encoder.flags(encoder.flags() | AV_CODEC_FLAG_GLOBAL_HEADER);
        }
        if (avcodec_open2(encoder, codec, (AVDictionary) null) < 0) {
            throw new IOException("starting " + coding.encoder);
        }
        stream = avformat_new_stream(container, null);
        stream.time_base(encoder.time_base());
        if (avcodec_parameters_from_context(stream.codecpar(), encoder) < 0) {
            throw new IOException("describing the sound");
        }
        each = encoder.frame_size() > 0 ? encoder.frame_size() : USUAL;
        pairs = new float[each * Listening.CHANNELS];
        frame.format(coding.format);
        frame.nb_samples(each);
        frame.sample_rate(Listening.RATE);
        av_channel_layout_default(frame.ch_layout(), Listening.CHANNELS);
        if (av_frame_get_buffer(frame, 0) < 0) {
            throw new OutOfMemoryError("no native memory for a sound");
        }
        all = Math.round(seconds * Listening.RATE);
        long from = Math.round(begins * Listening.RATE);
        silence = Math.max(0, -from);
        listening.skip(Math.max(0, from));
    }

    /** Writes what is heard up to a time, seconds of the film, so that the file stays in order. */
    void until(double time, Packets into) throws IOException {
        while (done < all && done <= time * Listening.RATE) {
            int count = (int) Math.min(each, all - done);
            fill(count);
            if (av_frame_make_writable(frame) < 0) {
                throw new OutOfMemoryError("no native memory for a sound");
            }
            put(count);
            frame.nb_samples(count);
            frame.pts(done);
            done += count;
            encoded(avcodec_send_frame(encoder, frame), into);
        }
        if (done >= all && !finished) {
            finished = true;
            encoded(avcodec_send_frame(encoder, null), into);
        }
    }

    private void encoded(int sent, Packets into) throws IOException {
        if (sent < 0) {
            throw new IOException("encoding the sound");
        }
        while (avcodec_receive_packet(encoder, packet) >= 0) {
            av_packet_rescale_ts(packet, encoder.time_base(), stream.time_base());
            packet.stream_index(stream.index());
            into.write(packet);
            av_packet_unref(packet);
        }
    }

    private void fill(int count) {
        int quiet = (int) Math.min(silence, count);
        Arrays.fill(pairs, 0);
        silence -= quiet;
        if (quiet < count) {
            float[] heard = new float[(count - quiet) * Listening.CHANNELS];
            listening.read(heard, count - quiet);
            System.arraycopy(heard, 0, pairs, quiet * Listening.CHANNELS, heard.length);
        }
        for (int i = 0; i < count; i++) {
            long at = done + i;
            double loud = Math.min(1, Math.min((at + 0.5) / FADE, (all - at - 0.5) / FADE));
            for (int c = 0; c < Listening.CHANNELS && loud < 1; c++) {
                pairs[i * Listening.CHANNELS + c] *= (float) loud;
            }
        }
    }

    private void put(int count) {
        int channels = Listening.CHANNELS;
        switch (coding) {
            case AAC -> {
                for (int c = 0; c < channels; c++) {
                    float[] one = new float[count];
                    for (int i = 0; i < count; i++) {
                        one[i] = pairs[i * channels + c];
                    }
                    new FloatPointer(frame.data(c)).put(one);
                }
            }
            case OPUS -> new FloatPointer(frame.data(0)).put(pairs, 0, count * channels);
            default -> {
                short[] whole = new short[count * channels];
                for (int i = 0; i < whole.length; i++) {
                    whole[i] =
                            (short) Math.max(-32768, Math.min(32767, Math.round(32767 * pairs[i])));
                }
                new ShortPointer(frame.data(0)).put(whole);
            }
        }
    }

    @Override
    public void close() {
        avcodec_free_context(encoder);
        av_frame_free(frame);
        av_packet_free(packet);
        listening.close();
    }
}

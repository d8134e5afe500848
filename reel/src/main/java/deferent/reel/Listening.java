package deferent.reel;

import static org.bytedeco.ffmpeg.global.avcodec.av_packet_alloc;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_free;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_unref;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_alloc_context3;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_find_decoder;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_free_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_open2;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_parameters_to_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_receive_frame;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_send_packet;
import static org.bytedeco.ffmpeg.global.avformat.av_find_best_stream;
import static org.bytedeco.ffmpeg.global.avformat.av_read_frame;
import static org.bytedeco.ffmpeg.global.avformat.avformat_close_input;
import static org.bytedeco.ffmpeg.global.avformat.avformat_find_stream_info;
import static org.bytedeco.ffmpeg.global.avformat.avformat_open_input;
import static org.bytedeco.ffmpeg.global.avutil.AVERROR_EAGAIN;
import static org.bytedeco.ffmpeg.global.avutil.AVERROR_EOF;
import static org.bytedeco.ffmpeg.global.avutil.AVMEDIA_TYPE_AUDIO;
import static org.bytedeco.ffmpeg.global.avutil.AV_CHANNEL_ORDER_UNSPEC;
import static org.bytedeco.ffmpeg.global.avutil.AV_SAMPLE_FMT_FLT;
import static org.bytedeco.ffmpeg.global.avutil.av_channel_layout_default;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_alloc;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_free;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_unref;
import static org.bytedeco.ffmpeg.global.swresample.swr_alloc;
import static org.bytedeco.ffmpeg.global.swresample.swr_convert_frame;
import static org.bytedeco.ffmpeg.global.swresample.swr_free;

import deferent.motion.pairing.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.swresample.SwrContext;
import org.bytedeco.javacpp.FloatPointer;
import org.jspecify.annotations.Nullable;

/**
 * A sound file as it is heard, from its first sample on: two channels at 48 000 samples a second,
 * whatever it is stored as. No more than one of its packets is held, however long it is. Where one
 * is broken it is left out.
 */
final class Listening implements AutoCloseable {
    /** Samples a second of each channel. */
    static final int RATE = 48_000;

    static final int CHANNELS = 2;

    private final Path file;
    private final AVFormatContext container = new AVFormatContext(null);
    private final AVPacket packet = av_packet_alloc();
    private final AVFrame stored = av_frame_alloc();
    private final AVFrame heard = av_frame_alloc();
    private final SwrContext converter = swr_alloc();
    private @Nullable AVCodecContext decoder;
    private int stream;
    private boolean fed;
    private boolean ended;
    private float[] waiting = {};
    private int taken;

    private Listening(Path file) {
        this.file = file;
    }

    /**
     * Opens a sound file, or a film for its sound.
     *
     * @throws Refusal where there is no sound in it that can be decoded, with the reason
     */
    static Listening open(Path file) throws IOException {
        if (!Files.isReadable(file) || Files.isDirectory(file)) {
            throw new Refusal("cannot be read", file.toString(), "give a sound file");
        }
        Natives.need();
        Listening listening = new Listening(file);
        try {
            listening.begin();
            return listening;
        } catch (RuntimeException | Error e) {
            listening.close();
            throw e;
        }
    }

    private void begin() {
        AVDictionary none = new AVDictionary(null);
        if (avformat_open_input(container, "file:" + file.toAbsolutePath(), null, none) < 0
                || avformat_find_stream_info(container, (AVDictionary) null) < 0) {
            throw refused("is not a sound");
        }
        stream = av_find_best_stream(container, AVMEDIA_TYPE_AUDIO, -1, -1, (AVCodec) null, 0);
        if (stream < 0) {
            throw refused("has no sound in it");
        }
        AVCodec codec = avcodec_find_decoder(container.streams(stream).codecpar().codec_id());
        if (codec == null || codec.isNull()) {
            throw refused("is coded in a way that cannot be read here");
        }
        AVCodecContext made = avcodec_alloc_context3(codec);
        decoder = made;
        avcodec_parameters_to_context(made, container.streams(stream).codecpar());
        made.pkt_timebase(container.streams(stream).time_base());
        if (avcodec_open2(made, codec, none) < 0) {
            throw refused("is coded in a way that cannot be read here");
        }
        wanted();
    }

    private Refusal refused(String what) {
        return new Refusal(what, file.getFileName().toString(), "give a song's sound file");
    }

    /**
     * The next samples, left and right in turn.
     *
     * @param count pairs wanted
     * @return pairs put into {@code into}; fewer than wanted at the end alone
     */
    int read(float[] into, int count) {
        int got = 0;
        while (got < count) {
            int left = (waiting.length - taken) / CHANNELS;
            if (left == 0) {
                if (!more()) {
                    return got;
                }
                continue;
            }
            int now = Math.min(left, count - got);
            System.arraycopy(waiting, taken, into, got * CHANNELS, now * CHANNELS);
            taken += now * CHANNELS;
            got += now;
        }
        return got;
    }

    /** Passes over so many pairs; those that are not there are passed over too. */
    void skip(long count) {
        long left = count;
        while (left > 0 && (taken < waiting.length || more())) {
            int now = (int) Math.min(left, (waiting.length - taken) / CHANNELS);
            taken += now * CHANNELS;
            left -= now;
        }
    }

    /** Decodes on; false at the end. */
    private boolean more() {
        AVCodecContext with = decoder;
        if (with == null || ended) {
            return false;
        }
        while (true) {
            int answer = avcodec_receive_frame(with, stored);
            if (answer == 0) {
                plain(stored);
                return true;
            }
            if (answer == AVERROR_EOF() || fed && answer != AVERROR_EAGAIN()) {
                ended = true;
                // What the converter still holds back.
                plain(null);
                return waiting.length > 0;
            }
            feed(with);
        }
    }

    private void feed(AVCodecContext with) {
        while (!fed) {
            if (av_read_frame(container, packet) < 0) {
                fed = true;
                avcodec_send_packet(with, null);
                return;
            }
            boolean ours = packet.stream_index() == stream;
            int answer = ours ? avcodec_send_packet(with, packet) : -1;
            av_packet_unref(packet);
            if (answer >= 0) {
                return;
            }
        }
    }

    /** As two channels of floats; the converter learns what is stored from the first frame. */
    private void plain(@Nullable AVFrame from) {
        taken = 0;
        waiting = new float[0];
        if (from != null && from.ch_layout().order() == AV_CHANNEL_ORDER_UNSPEC) {
            int channels = from.ch_layout().nb_channels();
            av_channel_layout_default(from.ch_layout(), channels);
        }
        if (swr_convert_frame(converter, heard, from) >= 0 && heard.nb_samples() > 0) {
            waiting = new float[heard.nb_samples() * CHANNELS];
            new FloatPointer(heard.data(0)).get(waiting);
        }
        av_frame_unref(heard);
        wanted();
    }

    private void wanted() {
        heard.format(AV_SAMPLE_FMT_FLT);
        heard.sample_rate(RATE);
        av_channel_layout_default(heard.ch_layout(), CHANNELS);
    }

    @Override
    public void close() {
        AVCodecContext made = decoder;
        if (made != null) {
            avcodec_free_context(made);
            decoder = null;
        }
        swr_free(converter);
        av_frame_free(stored);
        av_frame_free(heard);
        av_packet_free(packet);
        if (!container.isNull()) {
            avformat_close_input(container);
        }
    }
}

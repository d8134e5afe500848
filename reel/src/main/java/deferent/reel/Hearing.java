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
import static org.bytedeco.ffmpeg.global.avutil.AV_NOPTS_VALUE;
import static org.bytedeco.ffmpeg.global.avutil.AV_SAMPLE_FMT_FLT;
import static org.bytedeco.ffmpeg.global.avutil.av_channel_layout_default;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_alloc;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_free;
import static org.bytedeco.ffmpeg.global.avutil.av_opt_set_double;
import static org.bytedeco.ffmpeg.global.swresample.swr_alloc_set_opts2;
import static org.bytedeco.ffmpeg.global.swresample.swr_convert;
import static org.bytedeco.ffmpeg.global.swresample.swr_free;
import static org.bytedeco.ffmpeg.global.swresample.swr_get_out_samples;
import static org.bytedeco.ffmpeg.global.swresample.swr_init;

import deferent.motion.pairing.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avutil.AVChannelLayout;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.swresample.SwrContext;
import org.bytedeco.javacpp.FloatPointer;
import org.bytedeco.javacpp.PointerPointer;
import org.jspecify.annotations.Nullable;

/**
 * A file's sound, piece after piece, as FFmpeg's decoders give it: of one channel, at the rate that
 * was asked for, from the first sample that players play. The sound of a film is heard too. No more
 * than a piece is held, however long it is; where one is broken it is left out.
 */
public final class Hearing implements AutoCloseable {
    private final Path file;
    private final int rate;
    private final AVFormatContext container = new AVFormatContext(null);
    private final AVPacket packet = av_packet_alloc();
    private final AVFrame frame = av_frame_alloc();
    private final AVChannelLayout wanted = new AVChannelLayout();
    private FloatPointer piece = new FloatPointer(1 << 14);
    private @Nullable AVCodecContext decoder;
    private @Nullable SwrContext converter;
    private int format = -1;
    private int channels;
    private int given;
    private int stream;
    private boolean read;
    private boolean ended;

    private Hearing(Path file, int rate, int channels) {
        this.file = file;
        this.rate = rate;
        av_channel_layout_default(wanted, channels);
    }

    /**
     * Opens a file.
     *
     * @param rate samples a second that are wanted
     * @throws Refusal where it has no sound that can be read, with the reason
     * @throws IOException where the file cannot be read at all
     */
    public static Hearing open(Path file, int rate) throws IOException {
        return open(file, rate, 1);
    }

    /** The same with so many channels, whose samples come in turn. */
    static Hearing open(Path file, int rate, int channels) throws IOException {
        if (!Files.exists(file)) {
            throw new Refusal("is not there", file.toString(), "give a sound's file");
        }
        if (!Files.isReadable(file) || Files.isDirectory(file)) {
            throw new Refusal("cannot be read", file.toString(), "give a sound's file");
        }
        Natives.needToHear(
                String.valueOf(file.getFileName()),
                "find its beats on a machine where they load; a song that is kept works here too");
        Hearing hearing = new Hearing(file, rate, channels);
        try {
            hearing.begin();
            return hearing;
        } catch (IOException | RuntimeException | Error e) {
            hearing.close();
            throw e;
        }
    }

    private void begin() throws IOException {
        AVDictionary none = new AVDictionary(null);
        if (avformat_open_input(container, "file:" + file.toAbsolutePath(), null, none) < 0
                || avformat_find_stream_info(container, (AVDictionary) null) < 0) {
            throw refused("is no sound file");
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
    }

    private Refusal refused(String what) {
        return new Refusal(
                what,
                String.valueOf(file.getFileName()),
                "give a song as WAV, FLAC, MP3, AAC, Ogg or Opus, or a film with sound");
    }

    /** How long it says it is, seconds; 0 where it does not say. */
    public double seconds() {
        long ticks = container.duration();
        return ticks == AV_NOPTS_VALUE || ticks < 0 ? 0 : ticks / 1e6;
    }

    /** The next samples, within 1 either way; none after the last. */
    public float[] next() {
        AVCodecContext with = decoder;
        if (with == null) {
            throw new IllegalStateException("the sound was not opened");
        }
        while (!ended) {
            int answer = avcodec_receive_frame(with, frame);
            float[] some;
            if (answer == 0) {
                some = converted(false);
            } else if (answer == AVERROR_EOF() || read && answer != AVERROR_EAGAIN()) {
                ended = true;
                some = converted(true);
            } else {
                feed(with);
                continue;
            }
            if (some.length > 0) {
                return some;
            }
        }
        return new float[0];
    }

    private void feed(AVCodecContext with) {
        while (!read) {
            if (av_read_frame(container, packet) < 0) {
                read = true;
                avcodec_send_packet(with, null);
                return;
            }
            boolean ours = packet.stream_index() == stream;
            int answer = ours ? avcodec_send_packet(with, packet) : 0;
            av_packet_unref(packet);
            if (ours && answer >= 0) {
                return;
            }
        }
    }

    /** The frame in the form that was asked for, or what the converter still holds at the end. */
    private float[] converted(boolean last) {
        if (last ? converter == null : !suited()) {
            return new float[0];
        }
        int each = wanted.nb_channels();
        int most = swr_get_out_samples(converter, last ? 0 : frame.nb_samples()) + 32;
        if ((long) most * each > piece.capacity()) {
            piece.close();
            piece = new FloatPointer(2L * most * each);
        }
        try (PointerPointer<FloatPointer> out = new PointerPointer<>(1)) {
            out.put(piece);
            int made =
                    last
                            ? swr_convert(converter, out, most, new PointerPointer<>(), 0)
                            : swr_convert(
                                    converter,
                                    out,
                                    most,
                                    frame.extended_data(),
                                    frame.nb_samples());
            float[] some = new float[Math.max(0, made) * each];
            piece.get(some);
            return some;
        }
    }

    /** Whether there is a converter for frames of this make; a stream may change in the middle. */
    private boolean suited() {
        AVChannelLayout layout = frame.ch_layout();
        if (converter != null
                && frame.format() == format
                && frame.sample_rate() == given
                && layout.nb_channels() == channels) {
            return true;
        }
        freeConverter();
        SwrContext made = new SwrContext(null);
        int answer =
                swr_alloc_set_opts2(
                        made,
                        wanted,
                        AV_SAMPLE_FMT_FLT,
                        rate,
                        layout,
                        frame.format(),
                        frame.sample_rate(),
                        0,
                        null);
        if (answer < 0) {
            return false;
        }
        // Channels are averaged, not added up.
        av_opt_set_double(made, "rematrix_maxval", 1, 0);
        converter = made;
        format = frame.format();
        given = frame.sample_rate();
        channels = layout.nb_channels();
        return swr_init(made) >= 0;
    }

    private void freeConverter() {
        SwrContext made = converter;
        if (made != null) {
            swr_free(made);
            converter = null;
        }
    }

    @Override
    public void close() {
        freeConverter();
        AVCodecContext made = decoder;
        if (made != null) {
            avcodec_free_context(made);
            decoder = null;
        }
        piece.close();
        av_frame_free(frame);
        av_packet_free(packet);
        if (!container.isNull()) {
            avformat_close_input(container);
        }
    }
}

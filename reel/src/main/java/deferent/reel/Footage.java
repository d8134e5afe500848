package deferent.reel;

import static org.bytedeco.ffmpeg.global.avcodec.AV_PKT_DATA_DISPLAYMATRIX;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_alloc;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_free;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_side_data_get;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_unref;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_alloc_context3;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_find_decoder;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_free_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_get_name;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_open2;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_parameters_to_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_receive_frame;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_send_packet;
import static org.bytedeco.ffmpeg.global.avformat.av_find_best_stream;
import static org.bytedeco.ffmpeg.global.avformat.av_read_frame;
import static org.bytedeco.ffmpeg.global.avformat.avformat_close_input;
import static org.bytedeco.ffmpeg.global.avformat.avformat_find_stream_info;
import static org.bytedeco.ffmpeg.global.avformat.avformat_open_input;
import static org.bytedeco.ffmpeg.global.avutil.AVERROR_DECODER_NOT_FOUND;
import static org.bytedeco.ffmpeg.global.avutil.AVERROR_EAGAIN;
import static org.bytedeco.ffmpeg.global.avutil.AVERROR_EOF;
import static org.bytedeco.ffmpeg.global.avutil.AVMEDIA_TYPE_AUDIO;
import static org.bytedeco.ffmpeg.global.avutil.AVMEDIA_TYPE_VIDEO;
import static org.bytedeco.ffmpeg.global.avutil.AV_NOPTS_VALUE;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_YUV420P;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_YUVJ420P;
import static org.bytedeco.ffmpeg.global.avutil.av_dict_get;
import static org.bytedeco.ffmpeg.global.avutil.av_display_rotation_get;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_alloc;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_free;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_get_buffer;
import static org.bytedeco.ffmpeg.global.swscale.SWS_FAST_BILINEAR;
import static org.bytedeco.ffmpeg.global.swscale.sws_freeContext;
import static org.bytedeco.ffmpeg.global.swscale.sws_getContext;
import static org.bytedeco.ffmpeg.global.swscale.sws_scale;

import deferent.motion.pairing.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Consumer;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avcodec.AVPacketSideData;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVDictionaryEntry;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.DoublePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.PointerPointer;
import org.jspecify.annotations.Nullable;

/**
 * A film's pictures, one after another, as FFmpeg's decoders give them: each with its own time, as
 * phones do not keep to even rates. No more than one frame is held, however long the film is. Where
 * a frame is broken it is left out.
 *
 * <p>Frames come as they are stored; {@link #turned()} says how they lie.
 */
public final class Footage implements AutoCloseable {
    private static final Instant FIRST_CAMERAS = Instant.parse("1990-01-01T00:00:00Z");

    private final Path file;
    private final AVFormatContext container = new AVFormatContext(null);
    private final AVPacket packet = av_packet_alloc();
    private final AVFrame frame = av_frame_alloc();
    private @Nullable AVFrame plain;
    private @Nullable SwsContext converter;
    private @Nullable AVCodecContext decoder;
    private @Nullable AVStream stream;
    private boolean ended;
    private double first = Double.NaN;
    private double last = Double.NEGATIVE_INFINITY;
    private @Nullable Shot buffers;
    private Consumer<AVPacket> listener = packet -> {};
    private int heard = -1;

    private Footage(Path file) {
        this.file = file;
    }

    /**
     * Opens a film.
     *
     * @throws Refusal where the file is no film that can be read, with the reason
     * @throws IOException where the file cannot be read at all
     */
    public static Footage open(Path file) throws IOException {
        if (!Files.isReadable(file) || Files.isDirectory(file)) {
            throw new Refusal("cannot be read", file.toString(), "give a film's file");
        }
        Natives.need();
        Footage footage = new Footage(file);
        try {
            footage.begin();
            return footage;
        } catch (IOException | RuntimeException | Error e) {
            footage.close();
            throw e;
        }
    }

    /** When a film says it was made; empty where it does not say. */
    public static Optional<Instant> made(Path file) throws IOException {
        try (Footage footage = open(file)) {
            AVDictionaryEntry said =
                    av_dict_get(footage.container.metadata(), "creation_time", null, 0);
            if (said == null || said.isNull()) {
                return Optional.empty();
            }
            Instant made = Instant.parse(said.value().getString());
            // A camera whose clock was never set begins in 1904 or 1970.
            return made.isBefore(FIRST_CAMERAS) ? Optional.empty() : Optional.of(made);
        } catch (DateTimeException unreadable) {
            return Optional.empty();
        }
    }

    private void begin() throws IOException {
        AVDictionary none = new AVDictionary(null);
        if (avformat_open_input(container, "file:" + file.toAbsolutePath(), null, none) < 0
                || avformat_find_stream_info(container, (AVDictionary) null) < 0) {
            throw refused("is not a film");
        }
        AVCodec given = new AVCodec(null);
        int index = av_find_best_stream(container, AVMEDIA_TYPE_VIDEO, -1, -1, given, 0);
        if (index == AVERROR_DECODER_NOT_FOUND()) {
            throw refused("is coded in a way that cannot be read here");
        }
        if (index < 0) {
            throw refused("has no pictures in it");
        }
        AVStream pictures = container.streams(index);
        stream = pictures;
        AVCodec codec = avcodec_find_decoder(pictures.codecpar().codec_id());
        if (codec == null || codec.isNull()) {
            throw refused("is coded as " + codec() + ", which cannot be read here");
        }
        AVCodecContext made = avcodec_alloc_context3(codec);
        decoder = made;
        avcodec_parameters_to_context(made, pictures.codecpar());
        made.thread_count(0);
        made.pkt_timebase(pictures.time_base());
        if (avcodec_open2(made, codec, none) < 0) {
            throw refused("is coded as " + codec() + ", which cannot be read here");
        }
    }

    private Refusal refused(String what) {
        return new Refusal(
                what, file.getFileName().toString(), "give a film as a phone or a camera makes it");
    }

    /** How the pictures are coded, as FFmpeg calls it. */
    public String codec() {
        try (BytePointer name = avcodec_get_name(pictures().codecpar().codec_id())) {
            return name.getString();
        }
    }

    /** Pixels a row, as stored. */
    public int width() {
        return pictures().codecpar().width();
    }

    /** Rows, as stored. */
    public int height() {
        return pictures().codecpar().height();
    }

    /** How long it says it is, seconds; 0 where it does not say. */
    public double seconds() {
        long ticks = container.duration();
        return ticks == AV_NOPTS_VALUE || ticks < 0 ? 0 : ticks / 1e6;
    }

    /** Quarter turns clockwise that bring a stored picture upright, 0 to 3. */
    public int turned() {
        AVPacketSideData side =
                av_packet_side_data_get(
                        pictures().codecpar().coded_side_data(),
                        pictures().codecpar().nb_coded_side_data(),
                        AV_PKT_DATA_DISPLAYMATRIX);
        if (side == null || side.isNull()) {
            return 0;
        }
        double counterClockwise = av_display_rotation_get(new IntPointer(side.data()));
        return Double.isFinite(counterClockwise)
                ? Math.floorMod(Math.round(-counterClockwise / 90), 4)
                : 0;
    }

    /** Its sound, where it has one. */
    Optional<AVStream> sound() {
        int index = av_find_best_stream(container, AVMEDIA_TYPE_AUDIO, -1, -1, (AVCodec) null, 0);
        return index < 0 ? Optional.empty() : Optional.of(container.streams(index));
    }

    /** From now on, packets of a stream beside the pictures, as they come; they are lent. */
    void hear(AVStream stream, Consumer<AVPacket> taker) {
        heard = stream.index();
        listener = taker;
    }

    /** Frames a second as the container says on the whole; 0 where it does not. */
    double rate() {
        AVRational rate = pictures().avg_frame_rate();
        return rate.num() > 0 && rate.den() > 0 ? (double) rate.num() / rate.den() : 0;
    }

    /** How many frames it says there are; 0 where it does not say. */
    long frames() {
        return Math.max(0, pictures().nb_frames());
    }

    /** The frame last given, as it was decoded; lent until the next. */
    AVFrame frame() {
        return frame;
    }

    /** At which of the container's own seconds the first frame stands. */
    double begins() {
        return first;
    }

    private AVStream pictures() {
        AVStream opened = stream;
        if (opened == null) {
            throw new IllegalStateException("the film was not opened");
        }
        return opened;
    }

    /** The next frame, or nothing after the last one. Times go up. */
    public Optional<Shot> next() {
        AVCodecContext with = decoder;
        if (with == null) {
            throw new IllegalStateException("the film was not opened");
        }
        while (true) {
            int answer = avcodec_receive_frame(with, frame);
            if (answer == 0) {
                Optional<Shot> shot = shot();
                if (shot.isPresent()) {
                    return shot;
                }
            } else if (answer == AVERROR_EOF() || ended && answer != AVERROR_EAGAIN()) {
                return Optional.empty();
            } else {
                feed(with);
            }
        }
    }

    private void feed(AVCodecContext with) {
        while (!ended) {
            if (av_read_frame(container, packet) < 0) {
                ended = true;
                avcodec_send_packet(with, null);
                return;
            }
            boolean ours = packet.stream_index() == pictures().index();
            if (packet.stream_index() == heard) {
                listener.accept(packet);
            }
            int answer = ours ? avcodec_send_packet(with, packet) : 0;
            av_packet_unref(packet);
            if (ours && answer >= 0) {
                return;
            }
        }
    }

    private Optional<Shot> shot() {
        long ticks = frame.best_effort_timestamp();
        if (ticks == AV_NOPTS_VALUE) {
            return Optional.empty();
        }
        double time = ticks * (double) pictures().time_base().num() / pictures().time_base().den();
        if (Double.isNaN(first)) {
            first = time;
        }
        time -= first;
        if (time <= last) {
            return Optional.empty();
        }
        last = time;
        AVFrame from = planar();
        int width = from.width();
        int height = from.height();
        int half = (width + 1) / 2;
        int rows = (height + 1) / 2;
        Shot held = buffers;
        if (held == null || held.width() != width || held.height() != height) {
            held =
                    new Shot(
                            0,
                            width,
                            height,
                            new byte[width * height],
                            new byte[half * rows],
                            new byte[half * rows]);
            buffers = held;
        }
        copy(from, 0, held.luma(), width, height);
        copy(from, 1, held.blue(), half, rows);
        copy(from, 2, held.red(), half, rows);
        return Optional.of(new Shot(time, width, height, held.luma(), held.blue(), held.red()));
    }

    /** The decoded frame in three planes of eight bits, turned into that where it is not. */
    private AVFrame planar() {
        int pixels = frame.format();
        if (pixels == AV_PIX_FMT_YUV420P || pixels == AV_PIX_FMT_YUVJ420P) {
            return frame;
        }
        AVFrame to = plain;
        if (to == null || to.width() != frame.width() || to.height() != frame.height()) {
            freePlain();
            to = av_frame_alloc();
            to.format(AV_PIX_FMT_YUV420P);
            to.width(frame.width());
            to.height(frame.height());
            av_frame_get_buffer(to, 0);
            plain = to;
            converter =
                    sws_getContext(
                            frame.width(),
                            frame.height(),
                            pixels,
                            frame.width(),
                            frame.height(),
                            AV_PIX_FMT_YUV420P,
                            SWS_FAST_BILINEAR,
                            null,
                            null,
                            (DoublePointer) null);
        }
        sws_scale(
                converter,
                new PointerPointer<>(frame),
                frame.linesize(),
                0,
                frame.height(),
                new PointerPointer<>(to),
                to.linesize());
        return to;
    }

    private static void copy(AVFrame from, int plane, byte[] to, int width, int height) {
        BytePointer data = from.data(plane);
        int stride = from.linesize(plane);
        for (int row = 0; row < height; row++) {
            data.position((long) row * stride).get(to, row * width, width);
        }
    }

    private void freePlain() {
        AVFrame made = plain;
        if (made != null) {
            av_frame_free(made);
            plain = null;
        }
        SwsContext with = converter;
        if (with != null) {
            sws_freeContext(with);
            converter = null;
        }
    }

    @Override
    public void close() {
        freePlain();
        AVCodecContext made = decoder;
        if (made != null) {
            avcodec_free_context(made);
            decoder = null;
        }
        av_frame_free(frame);
        av_packet_free(packet);
        if (!container.isNull()) {
            avformat_close_input(container);
        }
    }
}

package deferent.reel;

import static org.bytedeco.ffmpeg.avformat.AVFormatContext.AVFMT_FLAG_CUSTOM_IO;
import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_FLAG_GLOBAL_HEADER;
import static org.bytedeco.ffmpeg.global.avcodec.AV_PKT_FLAG_KEY;
import static org.bytedeco.ffmpeg.global.avcodec.av_new_packet;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_alloc;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_free;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_rescale_ts;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_unref;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_alloc_context3;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_find_encoder_by_name;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_free_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_open2;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_parameters_copy;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_parameters_from_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_receive_packet;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_send_frame;
import static org.bytedeco.ffmpeg.global.avformat.AVFMT_GLOBALHEADER;
import static org.bytedeco.ffmpeg.global.avformat.av_write_frame;
import static org.bytedeco.ffmpeg.global.avformat.av_write_trailer;
import static org.bytedeco.ffmpeg.global.avformat.avformat_alloc_output_context2;
import static org.bytedeco.ffmpeg.global.avformat.avformat_free_context;
import static org.bytedeco.ffmpeg.global.avformat.avformat_new_stream;
import static org.bytedeco.ffmpeg.global.avformat.avformat_write_header;
import static org.bytedeco.ffmpeg.global.avformat.avio_flush;
import static org.bytedeco.ffmpeg.global.avutil.AVCHROMA_LOC_LEFT;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_PRI_BT709;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_RANGE_MPEG;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_SPC_BT709;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_TRC_BT709;
import static org.bytedeco.ffmpeg.global.avutil.AVERROR_EAGAIN;
import static org.bytedeco.ffmpeg.global.avutil.AVERROR_EOF;
import static org.bytedeco.ffmpeg.global.avutil.av_dict_free;
import static org.bytedeco.ffmpeg.global.avutil.av_dict_get;
import static org.bytedeco.ffmpeg.global.avutil.av_dict_parse_string;
import static org.bytedeco.ffmpeg.global.avutil.av_dict_set;
import static org.bytedeco.ffmpeg.global.avutil.av_make_q;
import static org.bytedeco.ffmpeg.global.avutil.av_strerror;

import deferent.page.Frames;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVDictionaryEntry;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.javacpp.BytePointer;
import org.jspecify.annotations.Nullable;

/**
 * A film: frames through one of FFmpeg's encoders into one of its containers. The encoder counts
 * time in frames, {@code den/num} of a second each, and the container is given those times turned
 * into its own units one by one, so nothing adds up.
 */
final class Film implements Spool<FrameCel> {
    private final Format format;
    private final Recipe recipe;
    private final ChannelIo io;
    private final AVFormatContext container = new AVFormatContext(null);
    private final AVRational tick;
    private final AVPacket packet = av_packet_alloc();
    private @Nullable AVCodecContext encoder;
    private @Nullable AVStream pictures;
    private @Nullable AVStream sound;
    private @Nullable CaptionTrack track;
    private @Nullable SoundTrack song;
    private @Nullable GifPalette palette;

    private static AVRational rational(long top, long bottom) {
        return av_make_q(Math.toIntExact(top), Math.toIntExact(bottom));
    }

    private Film(Format format, Recipe recipe, FileChannel channel) {
        this.format = format;
        this.recipe = recipe;
        this.io = new ChannelIo(channel);
        this.tick = format.tick();
    }

    /**
     * @param frames for looking the clip over beforehand, where its recipe asks for that
     */
    static Film open(
            Clip clip, Recipe recipe, Loop loop, List<Cue> cues, Frames frames, FileChannel channel)
            throws IOException {
        Film film = new Film(Format.of(clip), recipe, channel);
        try {
            if (recipe.palette()) {
                film.palette = GifPalette.of(clip, recipe, loop, frames);
            }
            Marked marked = new Marked(cues, ChapterMarks.of(clip, loop));
            film.begin(marked, clip.song(), loop.seconds(), Optional.empty());
            return film;
        } catch (IOException | RuntimeException | Error e) {
            film.close();
            throw e;
        }
    }

    /**
     * Opens a film whose frames come at times of their own.
     *
     * @param sound that goes along as it is
     */
    static Film open(Format format, Recipe recipe, Optional<AVStream> sound, FileChannel channel)
            throws IOException {
        Film film = new Film(format, recipe, channel);
        try {
            film.begin(new Marked(List.of(), List.of()), Optional.empty(), 0, sound);
            return film;
        } catch (IOException | RuntimeException | Error e) {
            film.close();
            throw e;
        }
    }

    /** What is said at times of a film, and what is jumped to. */
    private record Marked(List<Cue> captions, List<Cue> chapters) {}

    /**
     * @param seconds how long it is, where a song goes along
     * @param heard sound that goes along as it is
     */
    private void begin(
            Marked marked, Optional<Accompaniment> to, double seconds, Optional<AVStream> heard)
            throws IOException {
        done(
                avformat_alloc_output_context2(container, null, recipe.container(), null),
                "opening the " + recipe.container() + " container");
        container.pb(io.context());
        container.flags(container.flags() | AVFMT_FLAG_CUSTOM_IO);
        AVCodec codec = avcodec_find_encoder_by_name(recipe.encoder());
        if (codec == null || codec.isNull()) {
            throw new IllegalStateException("these natives have no encoder " + recipe.encoder());
        }
        AVCodecContext made = avcodec_alloc_context3(codec);
        encoder = made;
        made.width(format.width());
        made.height(format.height());
        made.pix_fmt(recipe.pixels());
        made.time_base(tick);
        made.framerate(rational(format.rate().num(), format.rate().den()));
        made.sample_aspect_ratio(av_make_q(1, 1));
        if (format.kind().has(Kind.Trait.FILM)) {
            made.color_range(AVCOL_RANGE_MPEG);
            made.colorspace(AVCOL_SPC_BT709);
            made.color_primaries(AVCOL_PRI_BT709);
            made.color_trc(AVCOL_TRC_BT709);
            if (format.kind().has(Kind.Trait.EVEN_SIZES)) {
                made.chroma_sample_location(AVCHROMA_LOC_LEFT);
            }
        }
        if ((container.oformat().flags() & AVFMT_GLOBALHEADER) != 0) {
            made.flags(made.flags() | AV_CODEC_FLAG_GLOBAL_HEADER);
        }
        AVDictionary settings = settings(recipe.encoding());
        try {
            done(avcodec_open2(made, codec, settings), "starting " + recipe.encoder());
            allTaken(settings);
        } finally {
            av_dict_free(settings);
        }
        AVStream stream = avformat_new_stream(container, null);
        pictures = stream;
        done(avcodec_parameters_from_context(stream.codecpar(), made), "describing the pictures");
        stream.time_base(tick);
        stream.avg_frame_rate(made.framerate());
        List<Cue> cues = marked.captions();
        if (!cues.isEmpty() && recipe.captions() != Recipe.Captions.NONE) {
            boolean timedText = recipe.captions() == Recipe.Captions.TIMED_TEXT;
            track = new CaptionTrack(container, timedText, cues);
        }
        Optional<Path> played =
                to.flatMap(Accompaniment::sound)
                        .filter(file -> recipe.sound() != SoundTrack.Coding.NONE);
        if (played.isPresent()) {
            song =
                    SoundTrack.open(
                            container,
                            recipe.sound(),
                            recipe.sound().bits(),
                            played.get(),
                            to.orElseThrow().begins(),
                            seconds);
        }
        if (format.kind().has(Kind.Trait.FILM) && !marked.chapters().isEmpty()) {
            ChapterMarks.into(container, marked.chapters());
        }
        if (heard.isPresent()) {
            AVStream noise = avformat_new_stream(container, null);
            sound = noise;
            done(
                    avcodec_parameters_copy(noise.codecpar(), heard.get().codecpar()),
                    "describing the sound");
            noise.codecpar().codec_tag(0);
            noise.time_base(heard.get().time_base());
        }
        if (format.kind().has(Kind.Trait.FILM) && !format.title().isEmpty()) {
            AVDictionary about = new AVDictionary(null);
            set(about, "title", format.title());
            container.metadata(about);
        }
        AVDictionary containing = settings(recipe.containing());
        try {
            done(avformat_write_header(container, containing), "beginning the file");
            allTaken(containing);
        } finally {
            av_dict_free(containing);
        }
    }

    private AVDictionary settings(String said) throws IOException {
        AVDictionary settings = new AVDictionary(null);
        done(av_dict_parse_string(settings, said, "=", ":", 0), "reading the settings " + said);
        return settings;
    }

    private static void set(AVDictionary dictionary, String key, String value) {
        try (BytePointer name = new BytePointer(key);
                BytePointer text = utf8(value)) {
            av_dict_set(dictionary, name, text, 0);
        }
    }

    private static BytePointer utf8(String text) {
        byte[] bytes = (text + "\0").getBytes(StandardCharsets.UTF_8);
        return new BytePointer(bytes);
    }

    /** Settings that nobody took are a fault of ours. */
    private static void allTaken(AVDictionary settings) {
        AVDictionaryEntry left =
                av_dict_get(
                        settings,
                        "",
                        null,
                        org.bytedeco.ffmpeg.global.avutil.AV_DICT_IGNORE_SUFFIX);
        if (left != null && !left.isNull()) {
            throw new IllegalStateException("no such setting: " + left.key().getString());
        }
    }

    /** Of what FFmpeg answered: nothing if well, else what was being done. */
    private int done(int answer, String what) throws IOException {
        io.check();
        if (answer < 0) {
            try (BytePointer text = new BytePointer(256)) {
                av_strerror(answer, text, 256);
                // Else all 256 are read.
                text.limit(BytePointer.strlen(text));
                throw new IOException(what + ": " + text.getString());
            }
        }
        return answer;
    }

    @Override
    public FrameCel cel() {
        return FrameCel.of(format, recipe);
    }

    @Override
    public void add(FrameCel cel, int frame) throws IOException {
        add(cel, frame, 1);
    }

    /**
     * A frame at a time of its own.
     *
     * @param at ticks from the beginning
     * @param length ticks
     */
    void add(FrameCel cel, long at, long length) throws IOException {
        AVFrame picture = cel.frame();
        picture.pts(at);
        picture.duration(length);
        if (palette == null) {
            encode(picture);
        } else {
            palette.add(picture, this::encode);
        }
    }

    private void encode(@Nullable AVFrame picture) throws IOException {
        AVCodecContext with = present(encoder);
        done(avcodec_send_frame(with, picture), "encoding");
        AVStream stream = present(pictures);
        while (true) {
            int answer = avcodec_receive_packet(with, packet);
            if (answer == AVERROR_EAGAIN() || answer == AVERROR_EOF) {
                return;
            }
            done(answer, "encoding");
            if (packet.duration() == 0) {
                packet.duration(1);
            }
            if (track != null) {
                track.until(format.seconds(packet.pts()), this);
            }
            if (song != null) {
                song.until(format.seconds(packet.pts()), this::write);
            }
            packet.stream_index(stream.index());
            av_packet_rescale_ts(packet, tick, stream.time_base());
            write(packet);
        }
    }

    /** A packet of a track of the film's own. */
    void write(byte[] bytes, int stream, long from, long length) throws IOException {
        AVPacket text = av_packet_alloc();
        try {
            done(av_new_packet(text, bytes.length), "making a caption");
            text.data().put(bytes, 0, bytes.length);
            text.stream_index(stream);
            text.pts(from);
            text.dts(from);
            text.duration(length);
            text.flags(text.flags() | AV_PKT_FLAG_KEY);
            write(text);
        } finally {
            av_packet_free(text);
        }
    }

    /**
     * A packet of the sound that goes along, its times as in the film that it comes from.
     *
     * @param base of its times, seconds
     * @param begins seconds of those at which this film begins
     */
    void sound(AVPacket heard, AVRational base, double begins) throws IOException {
        AVStream to = present(sound);
        long shift = Math.round(begins * base.den() / base.num());
        heard.pts(heard.pts() - shift);
        heard.dts(heard.dts() - shift);
        heard.pos(-1);
        heard.stream_index(to.index());
        av_packet_rescale_ts(heard, base, to.time_base());
        write(heard);
    }

    private void write(AVPacket full) throws IOException {
        int answer = av_write_frame(container, full);
        av_packet_unref(full);
        done(answer, "writing");
    }

    @Override
    public void finish() throws IOException {
        if (palette != null) {
            palette.finish(this::encode);
        }
        encode(null);
        if (track != null) {
            track.until(Double.POSITIVE_INFINITY, this);
        }
        if (song != null) {
            song.until(Double.POSITIVE_INFINITY, this::write);
        }
        done(av_write_trailer(container), "ending the file");
        avio_flush(io.context());
        io.check();
    }

    private static <T> T present(@Nullable T made) {
        if (made == null) {
            throw new IllegalStateException("the film was not begun");
        }
        return made;
    }

    @Override
    public void close() {
        if (palette != null) {
            palette.close();
        }
        if (song != null) {
            song.close();
        }
        if (encoder != null) {
            avcodec_free_context(encoder);
        }
        av_packet_free(packet);
        if (!container.isNull()) {
            avformat_free_context(container);
        }
        io.close();
    }
}

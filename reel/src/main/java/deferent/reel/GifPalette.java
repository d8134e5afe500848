package deferent.reel;

import static org.bytedeco.ffmpeg.global.avfilter.AV_BUFFERSRC_FLAG_KEEP_REF;
import static org.bytedeco.ffmpeg.global.avfilter.av_buffersink_get_frame;
import static org.bytedeco.ffmpeg.global.avfilter.av_buffersrc_add_frame_flags;
import static org.bytedeco.ffmpeg.global.avfilter.avfilter_get_by_name;
import static org.bytedeco.ffmpeg.global.avfilter.avfilter_graph_alloc;
import static org.bytedeco.ffmpeg.global.avfilter.avfilter_graph_config;
import static org.bytedeco.ffmpeg.global.avfilter.avfilter_graph_create_filter;
import static org.bytedeco.ffmpeg.global.avfilter.avfilter_graph_free;
import static org.bytedeco.ffmpeg.global.avfilter.avfilter_link;
import static org.bytedeco.ffmpeg.global.avutil.AVERROR_EAGAIN;
import static org.bytedeco.ffmpeg.global.avutil.AVERROR_EOF;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_BGRA;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_alloc;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_free;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_unref;

import deferent.page.Frames;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.Locale;
import org.bytedeco.ffmpeg.avfilter.AVFilterContext;
import org.bytedeco.ffmpeg.avfilter.AVFilterGraph;
import org.bytedeco.ffmpeg.avutil.AVFrame;

/**
 * The 255 colours of a GIF, chosen from frames all over the clip, and every frame in them. One
 * palette for the whole clip, and no dots to feign others: the pictures are flat, what stands still
 * stays the same from frame to frame, and the file stays small.
 */
final class GifPalette implements AutoCloseable {
    /** Frames that the colours are chosen from. */
    private static final int LOOKED_AT = 32;

    /** Takes a frame in the palette's colours. */
    interface Taker {
        void take(AVFrame frame) throws IOException;
    }

    private final AVFilterGraph graph = avfilter_graph_alloc();
    private final AVFilterContext pictures;
    private final AVFilterContext end;
    private final AVFrame out = av_frame_alloc();

    private GifPalette(Clip clip, AVFrame palette) throws IOException {
        try {
            pictures = source(graph, clip, "pictures", clip.still().width(), clip.still().height());
            AVFilterContext colours =
                    source(graph, clip, "colours", palette.width(), palette.height());
            AVFilterContext use = filter(graph, "paletteuse", "dither=none:diff_mode=rectangle");
            end = filter(graph, "buffersink", "");
            link(pictures, use, 0);
            link(colours, use, 1);
            link(use, end, 0);
            done(avfilter_graph_config(graph, null));
            palette.pts(0);
            done(av_buffersrc_add_frame_flags(colours, palette, AV_BUFFERSRC_FLAG_KEEP_REF));
            done(av_buffersrc_add_frame_flags(colours, null, 0));
        } catch (IOException | RuntimeException | Error e) {
            close();
            throw e;
        }
    }

    /** Looks the clip over and chooses its colours. */
    static GifPalette of(Clip clip, Recipe recipe, Loop loop, Frames frames) throws IOException {
        AVFilterGraph graph = avfilter_graph_alloc();
        AVFrame palette = av_frame_alloc();
        try (FrameCel cel = FrameCel.of(Format.of(clip), recipe)) {
            AVFilterContext pictures =
                    source(graph, clip, "pictures", clip.still().width(), clip.still().height());
            AVFilterContext choose =
                    filter(graph, "palettegen", "max_colors=255:reserve_transparent=0");
            AVFilterContext end = filter(graph, "buffersink", "");
            link(pictures, choose, 0);
            link(choose, end, 0);
            done(avfilter_graph_config(graph, null));
            BufferedImage picture = Clips.picture(clip);
            double start = clip.scene().trace().interval().start();
            int looks = Math.min(LOOKED_AT, loop.frames());
            for (int i = 0; i < looks; i++) {
                int frame = (int) ((long) i * loop.frames() / looks);
                frames.paint(start + loop.moment(frame), picture);
                cel.take(picture);
                cel.frame().pts(i);
                done(
                        av_buffersrc_add_frame_flags(
                                pictures, cel.frame(), AV_BUFFERSRC_FLAG_KEEP_REF));
            }
            done(av_buffersrc_add_frame_flags(pictures, null, 0));
            done(av_buffersink_get_frame(end, palette));
            return new GifPalette(clip, palette);
        } finally {
            av_frame_free(palette);
            avfilter_graph_free(graph);
        }
    }

    private static AVFilterContext source(
            AVFilterGraph graph, Clip clip, String name, int width, int height) throws IOException {
        AVFilterContext source = new AVFilterContext(null);
        done(
                avfilter_graph_create_filter(
                        source,
                        avfilter_get_by_name("buffer"),
                        name,
                        String.format(
                                Locale.ROOT,
                                "width=%d:height=%d:pix_fmt=%d:time_base=%d/%d",
                                width,
                                height,
                                AV_PIX_FMT_BGRA,
                                clip.rate().den(),
                                clip.rate().num()),
                        null,
                        graph));
        return source;
    }

    private static AVFilterContext filter(AVFilterGraph graph, String kind, String settings)
            throws IOException {
        AVFilterContext filter = new AVFilterContext(null);
        done(
                avfilter_graph_create_filter(
                        filter, avfilter_get_by_name(kind), kind, settings, null, graph));
        return filter;
    }

    private static void link(AVFilterContext from, AVFilterContext to, int input)
            throws IOException {
        done(avfilter_link(from, 0, to, input));
    }

    private static void done(int answer) throws IOException {
        if (answer < 0) {
            throw new IOException("choosing the colours of a GIF failed, FFmpeg says " + answer);
        }
    }

    void add(AVFrame frame, Taker taker) throws IOException {
        done(av_buffersrc_add_frame_flags(pictures, frame, AV_BUFFERSRC_FLAG_KEEP_REF));
        drain(taker);
    }

    void finish(Taker taker) throws IOException {
        done(av_buffersrc_add_frame_flags(pictures, null, 0));
        drain(taker);
    }

    private void drain(Taker taker) throws IOException {
        while (true) {
            int answer = av_buffersink_get_frame(end, out);
            if (answer == AVERROR_EAGAIN() || answer == AVERROR_EOF) {
                return;
            }
            done(answer);
            out.duration(1);
            try {
                taker.take(out);
            } finally {
                av_frame_unref(out);
            }
        }
    }

    @Override
    public void close() {
        av_frame_free(out);
        avfilter_graph_free(graph);
    }
}

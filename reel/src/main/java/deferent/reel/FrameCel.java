package deferent.reel;

import static org.bytedeco.ffmpeg.global.avutil.AVCHROMA_LOC_LEFT;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_PRI_BT709;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_RANGE_MPEG;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_SPC_BT709;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_TRC_BT709;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_BGRA;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_alloc;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_free;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_get_buffer;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_make_writable;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.javacpp.BytePointer;
import org.jspecify.annotations.Nullable;

/** A frame as an encoder takes it, in native memory: luma and chroma, or red, green and blue. */
final class FrameCel implements Cel {
    private final AVFrame frame;
    private final @Nullable Yuv yuv;
    private final boolean alpha;

    private FrameCel(AVFrame frame, @Nullable Yuv yuv, boolean alpha) {
        this.frame = frame;
        this.yuv = yuv;
        this.alpha = alpha;
    }

    static FrameCel of(Format format, Recipe recipe) {
        int width = format.width();
        int height = format.height();
        boolean alpha = format.alpha();
        boolean film = format.kind().has(Kind.Trait.FILM);
        boolean halved = format.kind().has(Kind.Trait.EVEN_SIZES);
        AVFrame frame = av_frame_alloc();
        frame.width(width);
        frame.height(height);
        frame.format(film ? recipe.pixels() : AV_PIX_FMT_BGRA);
        if (film) {
            frame.color_range(AVCOL_RANGE_MPEG);
            frame.colorspace(AVCOL_SPC_BT709);
            frame.color_primaries(AVCOL_PRI_BT709);
            frame.color_trc(AVCOL_TRC_BT709);
            if (halved) {
                frame.chroma_location(AVCHROMA_LOC_LEFT);
            }
        }
        if (av_frame_get_buffer(frame, 0) < 0) {
            av_frame_free(frame);
            throw new OutOfMemoryError("no native memory for a frame");
        }
        Yuv yuv = film ? new Yuv(width, height, halved, alpha, halved ? 8 : 10) : null;
        return new FrameCel(frame, yuv, alpha);
    }

    AVFrame frame() {
        return frame;
    }

    @Override
    public void take(BufferedImage painted) {
        // The encoder may still hold the last picture; then this gives another.
        if (av_frame_make_writable(frame) < 0) {
            throw new OutOfMemoryError("no native memory for a frame");
        }
        int[] pixels = ((DataBufferInt) painted.getRaster().getDataBuffer()).getData();
        if (yuv == null) {
            straight(pixels, painted.getWidth(), painted.getHeight());
            return;
        }
        yuv.take(pixels);
        for (int p = 0; p < yuv.count(); p++) {
            ByteBuffer to = buffer(p, yuv.rows(p));
            if (frame.linesize(p) == yuv.stride(p)) {
                to.put(0, yuv.plane(p));
            } else {
                for (int y = 0; y < yuv.rows(p); y++) {
                    to.put(y * frame.linesize(p), yuv.plane(p), y * yuv.stride(p), yuv.stride(p));
                }
            }
        }
    }

    private ByteBuffer buffer(int plane, int rows) {
        return new BytePointer(frame.data(plane))
                .capacity((long) frame.linesize(plane) * rows)
                .asByteBuffer();
    }

    /** Blue, green, red, alpha, no longer multiplied by it. */
    private void straight(int[] pixels, int width, int height) {
        ByteBuffer to = buffer(0, height).order(ByteOrder.LITTLE_ENDIAN);
        int[] row = new int[width];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int pixel = pixels[y * width + x];
                row[x] = alpha ? Yuv.straight(pixel) : pixel | 0xFF000000;
            }
            to.position(y * frame.linesize(0)).slice().order(to.order()).asIntBuffer().put(row);
        }
    }

    @Override
    public void close() {
        av_frame_free(frame);
    }
}

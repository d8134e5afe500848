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
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.IntBuffer;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.javacpp.BytePointer;
import org.jspecify.annotations.Nullable;

/** A frame as an encoder takes it, in native memory: luma and chroma, or red, green and blue. */
final class FrameCel implements Cel {
    private final AVFrame frame;
    private final @Nullable Yuv yuv;
    private final int planes;
    private final boolean alpha;
    private final int halved;

    private FrameCel(AVFrame frame, @Nullable Yuv yuv, int planes, boolean alpha, boolean halved) {
        this.frame = frame;
        this.yuv = yuv;
        this.planes = planes;
        this.alpha = alpha;
        this.halved = halved ? 2 : 1;
    }

    static FrameCel of(Clip clip, Recipe recipe) {
        int width = clip.still().width();
        int height = clip.still().height();
        boolean alpha = clip.still().transparent();
        boolean film = clip.kind().film();
        boolean halved = clip.kind().evenSizes();
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
        return new FrameCel(frame, yuv, film ? alpha ? 4 : 3 : 1, alpha, halved);
    }

    AVFrame frame() {
        return frame;
    }

    @Override
    public void take(BufferedImage painted) throws IOException {
        // The encoder may still hold the last picture; then this gives another with the same
        // content.
        if (av_frame_make_writable(frame) < 0) {
            throw new OutOfMemoryError("no native memory for a frame");
        }
        int[] pixels = ((DataBufferInt) painted.getRaster().getDataBuffer()).getData();
        ByteBuffer[] to = new ByteBuffer[planes];
        int[] strides = new int[planes];
        for (int p = 0; p < planes; p++) {
            strides[p] = frame.linesize(p);
            int rows = p == 1 || p == 2 ? frame.height() / halved : frame.height();
            to[p] =
                    new BytePointer(frame.data(p))
                            .capacity((long) strides[p] * rows)
                            .asByteBuffer();
        }
        if (yuv != null) {
            yuv.write(pixels, to, strides);
        } else {
            straight(pixels, to[0].order(ByteOrder.LITTLE_ENDIAN), strides[0], painted.getWidth());
        }
    }

    /** Blue, green, red, alpha, no longer multiplied by it. */
    private void straight(int[] pixels, ByteBuffer to, int stride, int width) {
        int[] row = new int[width];
        for (int y = 0; y * width < pixels.length; y++) {
            for (int x = 0; x < width; x++) {
                int pixel = pixels[y * width + x];
                row[x] = alpha ? straight(pixel) : pixel | 0xFF000000;
            }
            IntBuffer ints = to.position(y * stride).slice().order(to.order()).asIntBuffer();
            ints.put(row);
        }
    }

    private static int straight(int pixel) {
        int a = pixel >>> 24;
        if (a == 0 || a == 255) {
            return pixel;
        }
        return a << 24
                | straight(pixel >> 16 & 255, a) << 16
                | straight(pixel >> 8 & 255, a) << 8
                | straight(pixel & 255, a);
    }

    private static int straight(int part, int a) {
        return Math.min(255, (part * 255 + a / 2) / a);
    }

    @Override
    public void close() {
        av_frame_free(frame);
    }
}

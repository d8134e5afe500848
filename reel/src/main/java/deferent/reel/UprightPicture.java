package deferent.reel;

import static org.bytedeco.ffmpeg.global.avutil.AVCOL_RANGE_JPEG;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_SPC_BT2020_NCL;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_SPC_BT709;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_SPC_UNSPECIFIED;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_BGRA;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_YUVJ420P;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_alloc;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_free;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_get_buffer;
import static org.bytedeco.ffmpeg.global.swscale.SWS_BILINEAR;
import static org.bytedeco.ffmpeg.global.swscale.SWS_CS_BT2020;
import static org.bytedeco.ffmpeg.global.swscale.SWS_CS_ITU601;
import static org.bytedeco.ffmpeg.global.swscale.SWS_CS_ITU709;
import static org.bytedeco.ffmpeg.global.swscale.sws_freeContext;
import static org.bytedeco.ffmpeg.global.swscale.sws_getCoefficients;
import static org.bytedeco.ffmpeg.global.swscale.sws_getContext;
import static org.bytedeco.ffmpeg.global.swscale.sws_scale;
import static org.bytedeco.ffmpeg.global.swscale.sws_setColorspaceDetails;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.nio.ByteOrder;
import java.nio.IntBuffer;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.DoublePointer;
import org.bytedeco.javacpp.PointerPointer;
import org.jspecify.annotations.Nullable;

/**
 * The frame that a {@link Footage} holds, in red, green and blue and upright. What is not said of a
 * film's colours is taken as players do: the matrix of ITU-R BT.709 from 720 rows on, that of
 * BT.601 below (common practice).
 */
final class UprightPicture implements AutoCloseable {
    private static final int HIGH_DEFINITION = 720; // rows
    private static final int ONE = 1 << 16;

    private final int turned;
    private final int width;
    private final int height;
    private final AVFrame colours = av_frame_alloc();
    private final SwsContext converter;
    private final int[] stored;
    private final BufferedImage upright;

    /** For frames like the one that the footage holds now. */
    UprightPicture(Footage footage) {
        AVFrame frame = footage.frame();
        width = frame.width();
        height = frame.height();
        turned = footage.turned();
        boolean lying = turned % 2 == 1;
        upright =
                new BufferedImage(
                        lying ? height : width, lying ? width : height, BufferedImage.TYPE_INT_RGB);
        stored = new int[width * height];
        colours.format(AV_PIX_FMT_BGRA);
        colours.width(width);
        colours.height(height);
        av_frame_get_buffer(colours, 0);
        converter =
                sws_getContext(
                        width,
                        height,
                        frame.format(),
                        width,
                        height,
                        AV_PIX_FMT_BGRA,
                        SWS_BILINEAR,
                        null,
                        null,
                        (DoublePointer) null);
        boolean full =
                frame.color_range() == AVCOL_RANGE_JPEG || frame.format() == AV_PIX_FMT_YUVJ420P;
        sws_setColorspaceDetails(
                converter,
                sws_getCoefficients(matrix(frame)),
                full ? 1 : 0,
                sws_getCoefficients(SWS_CS_ITU709),
                1,
                0,
                ONE,
                ONE);
    }

    private static int matrix(AVFrame frame) {
        int said = frame.colorspace();
        if (said == AVCOL_SPC_BT2020_NCL) {
            return SWS_CS_BT2020;
        }
        boolean high =
                said == AVCOL_SPC_BT709
                        || said == AVCOL_SPC_UNSPECIFIED
                                && Math.min(frame.width(), frame.height()) >= HIGH_DEFINITION;
        return high ? SWS_CS_ITU709 : SWS_CS_ITU601;
    }

    /** The frame last given; empty where its size is another than that of those before. */
    @Nullable BufferedImage of(Footage footage) {
        AVFrame frame = footage.frame();
        if (frame.width() != width || frame.height() != height) {
            return null;
        }
        try (PointerPointer<AVFrame> from = new PointerPointer<>(frame);
                PointerPointer<AVFrame> to = new PointerPointer<>(colours)) {
            sws_scale(converter, from, frame.linesize(), 0, height, to, colours.linesize());
        }
        int[] pixels = ((DataBufferInt) upright.getRaster().getDataBuffer()).getData();
        int[] into = turned == 0 ? pixels : stored;
        int stride = colours.linesize(0);
        IntBuffer rows =
                new BytePointer(colours.data(0))
                        .capacity((long) stride * height)
                        .asByteBuffer()
                        .order(ByteOrder.LITTLE_ENDIAN)
                        .asIntBuffer();
        for (int y = 0; y < height; y++) {
            rows.position(y * (stride / Integer.BYTES)).get(into, y * width, width);
        }
        if (turned != 0) {
            turn(pixels);
        }
        return upright;
    }

    private void turn(int[] to) {
        for (int y = 0; y < height; y++) {
            int from = y * width;
            for (int x = 0; x < width; x++) {
                int at =
                        switch (turned) {
                            case 1 -> x * height + height - 1 - y;
                            case 2 -> (height - 1 - y) * width + width - 1 - x;
                            default -> (width - 1 - x) * height + y;
                        };
                to[at] = stored[from + x];
            }
        }
    }

    @Override
    public void close() {
        sws_freeContext(converter);
        av_frame_free(colours);
    }
}

package deferent.reel;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Painted pixels as luma and chroma: the matrix of ITU-R BT.709-6 (items 3.2 to 3.4) in the narrow
 * range, which is what players take untold film of this size for, so that colours survive.
 *
 * <p>Chroma shared by two by two pixels lies, as H.264 and VP9 have it, on the left column and
 * between the rows: it is the mean of six pixels weighted 1, 2, 1 across. On a transparent ground a
 * pixel counts by its alpha, and where all is clear the colour is the mean of its neighbourhood, so
 * that no edge gets a fringe of the ground's colour.
 *
 * <p>A frame differs little from the one before. The picture is taken in tiles, and a tile whose
 * pixels are what they were last time is left as it is.
 */
final class Yuv {
    private static final int TILE = 32;
    private static final double RED = 0.2126;
    private static final double BLUE = 0.0722;
    private static final int ONE = 1 << 16;

    private final int width;
    private final int height;
    private final boolean halved;
    private final boolean alpha;
    private final int bits;
    private final int[] last;
    private boolean fresh = true;

    private final int[] luma;
    private final int[] blue;
    private final int[] red;
    private final int lumaZero;
    private final int chromaZero;

    /** A tile and the column left of it: red, green, blue, alpha of each pixel. */
    private final int[][] rgba = new int[4][(TILE + 1) * TILE];

    private final byte[] row = new byte[2 * TILE];

    /**
     * @param halved whether two by two pixels share their chroma
     * @param alpha whether there is a fourth plane for it
     * @param bits a sample: 8, or 10 in two bytes, the lower first
     */
    Yuv(int width, int height, boolean halved, boolean alpha, int bits) {
        this.width = width;
        this.height = height;
        this.halved = halved;
        this.alpha = alpha;
        this.bits = bits;
        this.last = new int[width * height];
        int step = 1 << (bits - 8);
        double y = 219.0 * step / 255 * ONE;
        double c = 224.0 * step / 255 * ONE;
        double green = 1 - RED - BLUE;
        this.luma = rounded(y * RED, y * green, y * BLUE);
        double b = c / (2 * (1 - BLUE));
        this.blue = rounded(-b * RED, -b * green, b * (1 - BLUE));
        double r = c / (2 * (1 - RED));
        this.red = rounded(r * (1 - RED), -r * green, -r * BLUE);
        this.lumaZero = 16 * step * ONE + ONE / 2;
        this.chromaZero = 128 * step * ONE + ONE / 2;
    }

    private static int[] rounded(double... parts) {
        return Arrays.stream(parts).mapToInt(part -> (int) Math.rint(part)).toArray();
    }

    /**
     * @param pixels red, green and blue, premultiplied by the alpha before them where that counts
     * @param planes luma, blue and red difference, alpha
     * @param strides bytes from row to row of each
     */
    void write(int[] pixels, ByteBuffer[] planes, int[] strides) {
        for (ByteBuffer plane : planes) {
            plane.order(ByteOrder.LITTLE_ENDIAN);
        }
        for (int y = 0; y < height; y += TILE) {
            int down = Math.min(TILE, height - y);
            for (int x = 0; x < width; x += TILE) {
                int across = Math.min(TILE, width - x);
                if (fresh || changed(pixels, x, y, across, down)) {
                    tile(pixels, x, y, across, down, planes, strides);
                }
            }
        }
        System.arraycopy(pixels, 0, last, 0, last.length);
        fresh = false;
    }

    private boolean changed(int[] pixels, int x, int y, int across, int down) {
        int from = Math.max(0, x - 1);
        for (int j = y; j < y + down; j++) {
            int start = j * width + from;
            int end = j * width + x + across;
            if (!Arrays.equals(pixels, start, end, last, start, end)) {
                return true;
            }
        }
        return false;
    }

    private void tile(
            int[] pixels, int x, int y, int across, int down, ByteBuffer[] planes, int[] strides) {
        int[] clear = load(pixels, x, y, across, down);
        for (int j = 0; j < down; j++) {
            for (int i = 0; i < across; i++) {
                int at = at(i, j);
                put(i, clear == null || rgba[3][at] > 0 ? lumaOf(at) : lumaOf(clear));
            }
            store(planes[0], strides[0], x, y + j, across);
            if (alpha) {
                for (int i = 0; i < across; i++) {
                    int a = rgba[3][at(i, j)];
                    put(i, bits == 8 ? a : (a * 1023 + 127) / 255);
                }
                store(planes[3], strides[3], x, y + j, across);
            }
        }
        int share = halved ? 2 : 1;
        for (int c = 1; c <= 2; c++) {
            int[] matrix = c == 1 ? blue : red;
            for (int j = 0; j < down / share; j++) {
                for (int i = 0; i < across / share; i++) {
                    put(i, chroma(matrix, i, j, clear));
                }
                store(planes[c], strides[c], x / share, y / share + j, across / share);
            }
        }
    }

    private static int at(int i, int j) {
        return j * (TILE + 1) + i + 1;
    }

    /** Fills the tile; the colour to give to its clear pixels, or nothing where none is clear. */
    private int @Nullable [] load(int[] pixels, int x, int y, int across, int down) {
        long r = 0;
        long g = 0;
        long b = 0;
        long all = 0;
        boolean clear = false;
        for (int j = 0; j < down; j++) {
            for (int i = -1; i < across; i++) {
                int pixel = pixels[(y + j) * width + Math.max(0, x + i)];
                int a = alpha ? pixel >>> 24 : 255;
                int at = at(i, j);
                int half = a / 2;
                boolean whole = a == 255 || a == 0;
                rgba[0][at] = whole ? pixel >> 16 & 255 : straight(pixel >> 16 & 255, a, half);
                rgba[1][at] = whole ? pixel >> 8 & 255 : straight(pixel >> 8 & 255, a, half);
                rgba[2][at] = whole ? pixel & 255 : straight(pixel & 255, a, half);
                rgba[3][at] = a;
                r += pixel >> 16 & 255;
                g += pixel >> 8 & 255;
                b += pixel & 255;
                all += a;
                clear |= a == 0;
            }
        }
        if (!clear) {
            return null;
        }
        return all == 0
                ? new int[] {128, 128, 128}
                : new int[] {(int) (255 * r / all), (int) (255 * g / all), (int) (255 * b / all)};
    }

    private static int straight(int part, int a, int half) {
        return Math.min(255, (part * 255 + half) / a);
    }

    private int lumaOf(int at) {
        return (lumaZero + luma[0] * rgba[0][at] + luma[1] * rgba[1][at] + luma[2] * rgba[2][at])
                >> 16;
    }

    private int lumaOf(int[] colour) {
        return (lumaZero + luma[0] * colour[0] + luma[1] * colour[1] + luma[2] * colour[2]) >> 16;
    }

    private int chroma(int[] matrix, int i, int j, int @Nullable [] clear) {
        long r = 0;
        long g = 0;
        long b = 0;
        long weights = 0;
        if (halved) {
            for (int dj = 0; dj < 2; dj++) {
                for (int di = -1; di < 2; di++) {
                    int at = at(2 * i + di, 2 * j + dj);
                    int weight = (di == 0 ? 2 : 1) * rgba[3][at];
                    r += weight * rgba[0][at];
                    g += weight * rgba[1][at];
                    b += weight * rgba[2][at];
                    weights += weight;
                }
            }
        } else {
            int at = at(i, j);
            weights = rgba[3][at];
            r = weights * rgba[0][at];
            g = weights * rgba[1][at];
            b = weights * rgba[2][at];
        }
        if (weights == 0) {
            if (clear == null) {
                return chromaZero >> 16;
            }
            return (chromaZero + matrix[0] * clear[0] + matrix[1] * clear[1] + matrix[2] * clear[2])
                    >> 16;
        }
        return (int)
                ((chromaZero + (matrix[0] * r + matrix[1] * g + matrix[2] * b) / weights) >> 16);
    }

    private void put(int i, int sample) {
        if (bits == 8) {
            row[i] = (byte) sample;
        } else {
            row[2 * i] = (byte) sample;
            row[2 * i + 1] = (byte) (sample >> 8);
        }
    }

    private void store(ByteBuffer plane, int stride, int x, int y, int samples) {
        int bytes = bits == 8 ? 1 : 2;
        plane.put(y * stride + x * bytes, row, 0, samples * bytes);
    }
}

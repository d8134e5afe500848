package deferent.reel;

import java.util.Arrays;

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
    private static final int TILE = 16;
    private static final double RED = 0.2126;
    private static final double BLUE = 0.0722;
    private static final int SHIFT = 16;
    private static final int ONE = 1 << SHIFT;

    private final int width;
    private final int height;
    private final boolean halved;
    private final boolean alpha;
    private final int bits;
    private final byte[][] planes;
    private final int[] last;
    private final boolean[] changed;
    private boolean fresh = true;

    private final Matrix luma;
    private final Matrix blue;
    private final Matrix red;

    /** A tile of straight colours, with the column left of it. */
    private final int[] straight = new int[(TILE + 1) * TILE];

    /** One row of a matrix, in 65536ths: a sample is (zero + r·red + g·green + b·blue) >> 16. */
    private record Matrix(int zero, int r, int g, int b) {
        static Matrix of(double zero, double r, double g, double b) {
            return new Matrix(
                    (int) Math.rint(zero * ONE) + ONE / 2,
                    (int) Math.rint(r * ONE),
                    (int) Math.rint(g * ONE),
                    (int) Math.rint(b * ONE));
        }

        int of(int rgb) {
            return (zero + r * (rgb >> 16 & 255) + g * (rgb >> 8 & 255) + b * (rgb & 255)) >> SHIFT;
        }
    }

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
        last = new int[width * height];
        changed = new boolean[(width + TILE - 1) / TILE];
        planes = new byte[alpha ? 4 : 3][];
        for (int p = 0; p < planes.length; p++) {
            planes[p] = new byte[stride(p) * rows(p)];
        }
        int step = 1 << (bits - 8);
        double y = 219.0 * step / 255;
        double c = 224.0 * step / 255;
        double green = 1 - RED - BLUE;
        double b = c / (2 * (1 - BLUE));
        double r = c / (2 * (1 - RED));
        luma = Matrix.of(16 * step, y * RED, y * green, y * BLUE);
        blue = Matrix.of(128 * step, -b * RED, -b * green, b * (1 - BLUE));
        red = Matrix.of(128 * step, r * (1 - RED), -r * green, -r * BLUE);
    }

    /** Luma, blue difference, red difference, alpha where there is one; row by row without gaps. */
    byte[] plane(int p) {
        return planes[p];
    }

    int count() {
        return planes.length;
    }

    /** Bytes of a row of a plane. */
    int stride(int p) {
        return (shared(p) ? width / 2 : width) * (bits == 8 ? 1 : 2);
    }

    int rows(int p) {
        return shared(p) ? height / 2 : height;
    }

    private boolean shared(int p) {
        return halved && (p == 1 || p == 2);
    }

    /**
     * @param pixels red, green and blue, multiplied by the alpha before them where that counts
     */
    void take(int[] pixels) {
        for (int y = 0; y < height; y += TILE) {
            int down = Math.min(TILE, height - y);
            look(pixels, y, down);
            for (int t = 0; t < changed.length; t++) {
                if (changed[t]) {
                    tile(pixels, t * TILE, y, Math.min(TILE, width - t * TILE), down);
                }
            }
        }
        fresh = false;
    }

    /**
     * Which tiles of a row of tiles changed. A pixel on a tile's right edge counts for the chroma
     * of the next one too.
     */
    private void look(int[] pixels, int y, int down) {
        Arrays.fill(changed, fresh);
        if (fresh) {
            return;
        }
        for (int j = y; j < y + down; j++) {
            int row = j * width;
            int x = 0;
            while (x < width) {
                int next =
                        Arrays.mismatch(pixels, row + x, row + width, last, row + x, row + width);
                if (next < 0) {
                    break;
                }
                int t = (x + next) / TILE;
                changed[t] = true;
                x = (t + 1) * TILE;
                if (x < width && pixels[row + x - 1] != last[row + x - 1]) {
                    changed[t + 1] = true;
                }
            }
        }
    }

    private void tile(int[] pixels, int x, int y, int across, int down) {
        for (int j = y; j < y + down; j++) {
            System.arraycopy(pixels, j * width + x, last, j * width + x, across);
        }
        if (alpha) {
            straighten(pixels, x, y, across, down);
            samples(straight, 1, TILE + 1, x, y, across, down);
            opacity(x, y, across, down);
        } else {
            samples(pixels, y * width + x, width, x, y, across, down);
        }
    }

    /**
     * @param from colours, the tile's first at {@code start}, {@code step} apart from row to row
     */
    private void samples(int[] from, int start, int step, int x, int y, int across, int down) {
        every(luma, 0, from, start, step, x, y, across, down);
        if (!halved) {
            every(blue, 1, from, start, step, x, y, across, down);
            every(red, 2, from, start, step, x, y, across, down);
        } else if (alpha) {
            weighted(x, y, across, down);
        } else {
            shared(from, start, step, x, y, across, down);
        }
    }

    private void every(
            Matrix matrix,
            int p,
            int[] from,
            int start,
            int step,
            int x,
            int y,
            int across,
            int down) {
        byte[] plane = planes[p];
        for (int j = 0; j < down; j++) {
            int at = start + j * step;
            int to = (y + j) * width + x;
            if (bits == 8) {
                for (int i = 0; i < across; i++) {
                    plane[to + i] = (byte) matrix.of(from[at + i]);
                }
            } else {
                for (int i = 0; i < across; i++) {
                    put(plane, to + i, matrix.of(from[at + i]));
                }
            }
        }
    }

    private static void put(byte[] plane, int sample, int value) {
        plane[2 * sample] = (byte) value;
        plane[2 * sample + 1] = (byte) (value >> 8);
    }

    /** Six pixels to a chroma, weighing eight together; red and blue are added up side by side. */
    private void shared(int[] from, int start, int step, int x, int y, int across, int down) {
        for (int j = 0; j < down; j += 2) {
            int to = (y + j) / 2 * (width / 2) + x / 2;
            int at = start + j * step;
            for (int i = 0; i < across; i += 2) {
                int here = at + i;
                int left = x + i == 0 ? here : here - 1;
                int a = from[left];
                int b = from[here];
                int c = from[here + 1];
                int d = from[left + step];
                int e = from[here + step];
                int f = from[here + 1 + step];
                int both =
                        (a & 0xFF00FF)
                                + (c & 0xFF00FF)
                                + (d & 0xFF00FF)
                                + (f & 0xFF00FF)
                                + 2 * ((b & 0xFF00FF) + (e & 0xFF00FF));
                int g =
                        (a >> 8 & 255)
                                + (c >> 8 & 255)
                                + (d >> 8 & 255)
                                + (f >> 8 & 255)
                                + 2 * ((b >> 8 & 255) + (e >> 8 & 255));
                store(to + i / 2, both >> 16 & 0xFFFF, g, both & 0xFFFF, 8);
            }
        }
    }

    /** As {@link #shared}, each pixel by its alpha; of the straightened tile. */
    private void weighted(int x, int y, int across, int down) {
        for (int j = 0; j < down; j += 2) {
            int to = (y + j) / 2 * (width / 2) + x / 2;
            for (int i = 0; i < across; i += 2) {
                int r = 0;
                int g = 0;
                int b = 0;
                int weights = 0;
                for (int k = 0; k < 6; k++) {
                    int at = (j + k / 3) * (TILE + 1) + i + k % 3;
                    int pixel = straight[at];
                    int weight = (k % 3 == 1 ? 2 : 1) * (pixel >>> 24);
                    r += weight * (pixel >> 16 & 255);
                    g += weight * (pixel >> 8 & 255);
                    b += weight * (pixel & 255);
                    weights += weight;
                }
                if (weights == 0) {
                    int pixel = straight[j * (TILE + 1) + i + 1];
                    store(to + i / 2, pixel >> 16 & 255, pixel >> 8 & 255, pixel & 255, 1);
                } else {
                    store(to + i / 2, r, g, b, weights);
                }
            }
        }
    }

    private void store(int to, int r, int g, int b, int weights) {
        planes[1][to] = (byte) mean(blue, r, g, b, weights);
        planes[2][to] = (byte) mean(red, r, g, b, weights);
    }

    private static int mean(Matrix m, int r, int g, int b, int weights) {
        if (weights == 8) {
            return (m.zero() + ((m.r() * r + m.g() * g + m.b() * b) >> 3)) >> SHIFT;
        }
        long sum = (long) m.r() * r + (long) m.g() * g + (long) m.b() * b;
        return (int) ((m.zero() + sum / weights) >> SHIFT);
    }

    /** Takes the tile's alpha out of its colours, and gives clear pixels the tile's mean colour. */
    private void straighten(int[] pixels, int x, int y, int across, int down) {
        long r = 0;
        long g = 0;
        long b = 0;
        long all = 0;
        boolean clear = false;
        for (int j = 0; j < down; j++) {
            for (int i = -1; i < across; i++) {
                int pixel = pixels[(y + j) * width + Math.max(0, x + i)];
                r += pixel >> 16 & 255;
                g += pixel >> 8 & 255;
                b += pixel & 255;
                all += pixel >>> 24;
                clear |= pixel >>> 24 == 0;
                straight[j * (TILE + 1) + i + 1] = straight(pixel);
            }
        }
        if (!clear) {
            return;
        }
        int mean =
                all == 0
                        ? 0x808080
                        : (int) (255 * r / all) << 16
                                | (int) (255 * g / all) << 8
                                | (int) (255 * b / all);
        for (int k = 0; k < straight.length; k++) {
            if (straight[k] >>> 24 == 0) {
                straight[k] = mean;
            }
        }
    }

    /** A pixel no longer multiplied by its alpha. */
    static int straight(int pixel) {
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

    private void opacity(int x, int y, int across, int down) {
        for (int j = 0; j < down; j++) {
            for (int i = 0; i < across; i++) {
                int a = straight[j * (TILE + 1) + i + 1] >>> 24;
                int to = (y + j) * width + x + i;
                if (bits == 8) {
                    planes[3][to] = (byte) a;
                } else {
                    put(planes[3], to, (a * 1023 + 127) / 255);
                }
            }
        }
    }
}

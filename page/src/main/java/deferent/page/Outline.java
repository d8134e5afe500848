package deferent.page;

import java.awt.Color;

/**
 * An outline round all that is drawn on a clear ground, for laying it over footage. It has the
 * colour of the theme's ground, from which every ink stands off by 3 to 1; that colour is near
 * white or near black, so that on any footage either the ink or its outline stands off by as much
 * (WCAG 2.2, 1.4.11).
 */
final class Outline {
    private final int across;
    private final int up;
    private final int[] half;
    private final int red;
    private final int green;
    private final int blue;

    /**
     * @param across of the picture, pixels
     * @param up the same
     * @param radius how far it reaches, pixels
     */
    Outline(int across, int up, double radius, Palette.Theme theme) {
        this.across = across;
        this.up = up;
        int r = Math.max(1, (int) Math.round(radius));
        half = new int[2 * r + 1];
        for (int dy = -r; dy <= r; dy++) {
            half[dy + r] = (int) Math.round(Math.sqrt(r * r - dy * dy));
        }
        Color ground = Palette.Ink.PAPER.on(theme);
        red = ground.getRed();
        green = ground.getGreen();
        blue = ground.getBlue();
    }

    /**
     * Puts it under a picture.
     *
     * @param argb its pixels, colours multiplied by alpha
     */
    void under(int[] argb) {
        byte[] most = widened(argb);
        for (int i = 0; i < argb.length; i++) {
            int alpha = argb[i] >>> 24;
            int wide = most[i] & 255;
            if (wide > alpha) {
                // What shows of the outline: as much as the picture lets through.
                int shown = wide * (255 - alpha) / 255;
                argb[i] +=
                        shown << 24
                                | red * shown / 255 << 16
                                | green * shown / 255 << 8
                                | blue * shown / 255;
            }
        }
    }

    /** Of each pixel the greatest alpha within reach. */
    private byte[] widened(int[] argb) {
        byte[] most = new byte[argb.length];
        int r = half.length / 2;
        for (int y = 0; y < up; y++) {
            for (int x = 0; x < across; x++) {
                int alpha = argb[y * across + x] >>> 24;
                if (alpha > 0 && edge(argb, x, y, alpha)) {
                    for (int dy = Math.max(-r, -y); dy <= Math.min(r, up - 1 - y); dy++) {
                        int row = (y + dy) * across;
                        int to = Math.min(across - 1, x + half[dy + r]);
                        for (int at = Math.max(0, x - half[dy + r]); at <= to; at++) {
                            if ((most[row + at] & 255) < alpha) {
                                most[row + at] = (byte) alpha;
                            }
                        }
                    }
                }
            }
        }
        return most;
    }

    /** Whether a neighbour is fainter; within what is evenly strong nothing has to be widened. */
    private boolean edge(int[] argb, int x, int y, int alpha) {
        return x > 0 && argb[y * across + x - 1] >>> 24 < alpha
                || x < across - 1 && argb[y * across + x + 1] >>> 24 < alpha
                || y > 0 && argb[(y - 1) * across + x] >>> 24 < alpha
                || y < up - 1 && argb[(y + 1) * across + x] >>> 24 < alpha;
    }
}

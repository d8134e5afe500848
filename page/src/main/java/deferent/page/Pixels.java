package deferent.page;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Some rows of a picture as pixels.
 *
 * @param argb one int a pixel, alpha highest; colours multiplied by alpha
 * @param width of a row
 * @param top the first row's place in the picture
 * @param rows how many
 */
record Pixels(int[] argb, int width, int top, int rows) {
    /** Rows of an image that holds the whole width. */
    static Pixels of(BufferedImage image, int top) {
        int[] argb = ((DataBufferInt) image.getRaster().getDataBuffer()).getData();
        return new Pixels(argb, image.getWidth(), top, image.getHeight());
    }

    /** A paper of an image which shows the rows of a picture from {@code top} on. */
    static Paper paper(BufferedImage image, int top) {
        Pixels pixels = of(image, top);
        return new Paper() {
            @Override
            public void group(String id, String name, Consumer<Graphics2D> strokes) {
                Graphics2D g = image.createGraphics();
                try {
                    g.translate(0, -top);
                    strokes.accept(g);
                } finally {
                    g.dispose();
                }
            }

            @Override
            public Optional<Pixels> pixels() {
                return Optional.of(pixels);
            }
        };
    }

    /**
     * A colour laid over a pixel.
     *
     * @param rgb the colour
     * @param alpha how much of it, 0 to 256
     */
    static int over(int below, int rgb, int alpha) {
        int rest = 256 - alpha;
        int a = (alpha * 255 + rest * (below >>> 24) + 128) >> 8;
        int r = (alpha * (rgb >> 16 & 255) + rest * (below >> 16 & 255) + 128) >> 8;
        int g = (alpha * (rgb >> 8 & 255) + rest * (below >> 8 & 255) + 128) >> 8;
        int b = (alpha * (rgb & 255) + rest * (below & 255) + 128) >> 8;
        return a << 24 | Math.min(r, a) << 16 | Math.min(g, a) << 8 | Math.min(b, a);
    }
}

package deferent.page;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.CRC32;
import java.util.zip.Deflater;

/**
 * A PNG file written row by row, 8 bits a channel, with or without alpha. Source: Portable Network
 * Graphics (PNG) Specification, third edition, W3C: chunks in section 5, filters in section 9.
 */
final class PngFile implements AutoCloseable {
    private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
    private static final int CHUNK = 1 << 16;
    private static final int KINDS = 3;

    private final OutputStream out;
    private final int channels;
    private final Deflater deflater = new Deflater(6);
    private final byte[] packed = new byte[CHUNK];
    private byte[] row;
    private byte[] above;
    private final byte[][] filtered;
    private final byte[] same;

    PngFile(int width, int height, boolean alpha, OutputStream out) throws IOException {
        this.out = out;
        channels = alpha ? 4 : 3;
        row = new byte[width * channels];
        above = new byte[width * channels];
        filtered = new byte[KINDS][width * channels + 1];
        same = new byte[width * channels + 1];
        same[0] = 2;
        out.write(SIGNATURE);
        ByteBuffer head = ByteBuffer.allocate(13);
        head.putInt(width).putInt(height);
        head.put((byte) 8).put((byte) (alpha ? 6 : 2)).put((byte) 0).put((byte) 0).put((byte) 0);
        chunk("IHDR", head.array(), 13);
        ByteBuffer intent = ByteBuffer.allocate(1);
        chunk("sRGB", intent.array(), 1);
    }

    /** The next rows, of type INT_ARGB_PRE. */
    void rows(BufferedImage band) throws IOException {
        int[] argb = ((DataBufferInt) band.getRaster().getDataBuffer()).getData();
        for (int y = 0; y < band.getHeight(); y++) {
            unpack(argb, y * band.getWidth(), band.getWidth());
            byte[] best = filter();
            deflater.setInput(best);
            flush();
            byte[] swap = above;
            above = row;
            row = swap;
        }
    }

    private void unpack(int[] argb, int from, int width) {
        int at = 0;
        for (int x = 0; x < width; x++) {
            int pixel = argb[from + x];
            int alpha = pixel >>> 24;
            if (alpha == 255 || alpha == 0) {
                row[at] = (byte) (pixel >> 16);
                row[at + 1] = (byte) (pixel >> 8);
                row[at + 2] = (byte) pixel;
            } else {
                for (int c = 0; c < 3; c++) {
                    int colour = pixel >> (16 - 8 * c) & 255;
                    row[at + c] = (byte) Math.min(255, (colour * 255 + alpha / 2) / alpha);
                }
            }
            if (channels == 4) {
                row[at + 3] = (byte) alpha;
            }
            at += channels;
        }
    }

    // As is, by the pixel before, or by the pixel above: whichever leaves least (section 12.7).
    private byte[] filter() {
        if (Arrays.equals(row, above)) {
            return same;
        }
        byte[] none = filtered[0];
        byte[] sub = filtered[1];
        byte[] up = filtered[2];
        sub[0] = 1;
        up[0] = 2;
        long[] left = new long[KINDS];
        for (int i = 0; i < row.length; i++) {
            byte before = i < channels ? 0 : row[i - channels];
            none[i + 1] = row[i];
            sub[i + 1] = (byte) (row[i] - before);
            up[i + 1] = (byte) (row[i] - above[i]);
            left[0] += Math.abs(none[i + 1]);
            left[1] += Math.abs(sub[i + 1]);
            left[2] += Math.abs(up[i + 1]);
        }
        return left[2] <= left[1] && left[2] <= left[0] ? up : left[1] <= left[0] ? sub : none;
    }

    void end() throws IOException {
        deflater.finish();
        flush();
        chunk("IEND", new byte[0], 0);
        out.flush();
    }

    /** Gives up what packing took; the stream stays open. */
    @Override
    public void close() {
        deflater.end();
    }

    private void flush() throws IOException {
        while (true) {
            int length = deflater.deflate(packed);
            if (length == 0) {
                return;
            }
            chunk("IDAT", packed, length);
        }
    }

    private void chunk(String kind, byte[] content, int length) throws IOException {
        byte[] name = kind.getBytes(StandardCharsets.US_ASCII);
        CRC32 check = new CRC32();
        check.update(name);
        check.update(content, 0, length);
        out.write(ByteBuffer.allocate(4).putInt(length).array());
        out.write(name);
        out.write(content, 0, length);
        out.write(ByteBuffer.allocate(4).putInt((int) check.getValue()).array());
    }
}

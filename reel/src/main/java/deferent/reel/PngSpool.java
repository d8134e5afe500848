package deferent.reel;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import javax.imageio.ImageIO;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/**
 * Numbered PNG files, in one zip file: like every other clip it is one file that is there whole or
 * not at all, can be sent and downloaded, and takes the place of an older one at a stroke, which a
 * folder of files cannot. Unpacked, it is what editing programs take in as a sequence of images.
 * The files lie in it as they are, since a PNG does not shrink any more.
 */
final class PngSpool implements Spool<PngSpool.PngCel> {
    private final ZipOutputStream zip;
    private final String name;
    private final int digits;
    private final boolean transparent;

    PngSpool(Clip clip, Loop loop, List<Cue> cues, Path target, FileChannel channel)
            throws IOException {
        String file = String.valueOf(target.getFileName());
        int dot = file.lastIndexOf('.');
        this.name = dot > 0 ? file.substring(0, dot) : file;
        this.digits = Math.max(4, Integer.toString(loop.frames()).length());
        this.transparent = clip.still().transparent();
        OutputStream out = Channels.newOutputStream(channel);
        this.zip = new ZipOutputStream(out, StandardCharsets.UTF_8);
        zip.setMethod(ZipOutputStream.STORED);
        String comment = clip.rate().said() + " frames a second";
        zip.setComment(clip.title().isEmpty() ? comment : clip.title() + ", " + comment);
        if (!cues.isEmpty()) {
            store(name + ".vtt", WebVtt.of(clip.title(), cues).getBytes(StandardCharsets.UTF_8));
        }
    }

    @Override
    public PngCel cel() {
        return new PngCel(transparent);
    }

    @Override
    public void add(PngCel cel, int frame) throws IOException {
        store(String.format(Locale.ROOT, "%s-%0" + digits + "d.png", name, frame + 1), cel.png);
    }

    private void store(String entryName, byte[] bytes) throws IOException {
        CRC32 sum = new CRC32();
        sum.update(bytes);
        ZipEntry entry = new ZipEntry(entryName);
        entry.setSize(bytes.length);
        entry.setCompressedSize(bytes.length);
        entry.setCrc(sum.getValue());
        zip.putNextEntry(entry);
        zip.write(bytes);
        zip.closeEntry();
    }

    @Override
    public void finish() throws IOException {
        zip.finish();
    }

    @Override
    public void close() {
        // The channel is the landing's.
    }

    /** A frame as a PNG file. */
    static final class PngCel implements Cel {
        private final boolean transparent;
        private final ByteArrayOutputStream out = new ByteArrayOutputStream();
        private byte[] png = {};

        PngCel(boolean transparent) {
            this.transparent = transparent;
        }

        @Override
        public void take(BufferedImage painted) throws IOException {
            out.reset();
            try (MemoryCacheImageOutputStream into = new MemoryCacheImageOutputStream(out)) {
                ImageIO.write(transparent ? straight(painted) : painted, "png", into);
            }
            png = out.toByteArray();
        }

        /** The picture with its colours no longer multiplied by their alpha, as PNG has them. */
        private static BufferedImage straight(BufferedImage painted) {
            BufferedImage straight =
                    new BufferedImage(
                            painted.getWidth(), painted.getHeight(), BufferedImage.TYPE_INT_ARGB);
            int[] from = ((DataBufferInt) painted.getRaster().getDataBuffer()).getData();
            int[] to = ((DataBufferInt) straight.getRaster().getDataBuffer()).getData();
            for (int i = 0; i < from.length; i++) {
                to[i] = Yuv.straight(from[i]);
            }
            return straight;
        }

        @Override
        public void close() {
            png = new byte[0];
        }
    }
}

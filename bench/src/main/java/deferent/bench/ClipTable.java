package deferent.bench;

import deferent.motion.phrase.Phrase;
import deferent.motion.trace.Rate;
import deferent.motion.trace.Trace;
import deferent.page.Frames;
import deferent.page.Png;
import deferent.page.Scene;
import deferent.page.Still;
import deferent.reel.Clip;
import deferent.reel.ClipReport;
import deferent.reel.Clips;
import deferent.reel.Kind;
import java.awt.image.BufferedImage;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleConsumer;

/**
 * How fast clips are written, how large they become and how near they come to what was painted:
 * 1920 by 1080, every frame painted with its trails, converted and encoded, with the painting alone
 * as baseline in the same run, as stills and as a clip's frames. Wall-clock time of single runs
 * after one to warm up, and the processors' time a frame, which other work on the machine does not
 * stretch. Structural similarity is that of luma, by {@link Similarity}, mean over frames all over
 * the clip, against the painting, everywhere and where something is drawn; the clip is decoded by
 * the machine's own ffmpeg, another build than the one that wrote it. Last, the resident memory of
 * a short and a long clip, to see that length costs none.
 *
 * <p>Run with <code>
 * java -XX:ActiveProcessorCount=2 -cp 'bench/target/classes:bench/target/lib/*'
 * deferent.bench.ClipTable [phrase]</code>.
 */
public final class ClipTable {
    private static final int WIDTH = 1920;
    private static final int HEIGHT = 1080;
    private static final int COMPARED = 12;

    private ClipTable() {}

    public static void main(String[] args) throws IOException {
        String phrase = args.length > 0 ? args[0] : "isolation vs four-petal antispin";
        Scene scene = Scene.of(Trace.of(Phrase.parse(phrase).pairing()));
        System.out.printf(
                Locale.ROOT,
                "%s, %d by %d, %d processors%n",
                phrase,
                WIDTH,
                HEIGHT,
                Runtime.getRuntime().availableProcessors());
        Path folder = Files.createTempDirectory("clips");
        Clips.write(Clip.of(scene, still(), Kind.MP4).cycles(4), folder.resolve("warm.mp4"));
        painting(scene);
        System.out.printf(
                "%-22s %7s %8s %8s %9s %9s %10s %8s %8s%n",
                "kind",
                "a second",
                "frames",
                "seconds",
                "frames/s",
                "cpu ms",
                "kbit/s",
                "SSIM",
                "drawn");
        row(folder, Clip.of(scene, still(), Kind.MP4).cycles(10), "H.264");
        row(folder, Clip.of(scene, still(), Kind.WEBM).cycles(4), "VP9");
        row(folder, Clip.of(scene, still().clear(), Kind.WEBM).cycles(2), "VP9, alpha");
        row(folder, Clip.of(scene, still(), Kind.MOV).cycles(2), "ProRes 4444");
        row(folder, Clip.of(scene, still().clear(), Kind.MOV).cycles(2), "ProRes 4444, alpha");
        row(folder, Clip.of(scene, still(), Kind.WEBP).at(Rate.THIRTY), "animated WebP");
        row(folder, Clip.of(scene, still(), Kind.GIF).at(Rate.PAL), "GIF");
        row(folder, Clip.of(scene, still().clear(), Kind.PNGS), "PNG files, alpha");
        System.out.printf("%-22s %8s %14s%n", "H.264", "frames", "resident MiB");
        for (int cycles : new int[] {4, 60}) {
            Clip clip = Clip.of(scene, still(), Kind.MP4).cycles(cycles);
            Clips.write(clip, folder.resolve("long.mp4"));
            System.out.printf("%-22s %8d %14d%n", "", clip.frames(), resident());
        }
        try (var files = Files.list(folder)) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
        }
        Files.delete(folder);
    }

    private static Still still() {
        return Still.of(WIDTH, HEIGHT);
    }

    private static void painting(Scene scene) {
        Frames frames = Frames.of(scene, still());
        BufferedImage into = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
        painting(scene, "stills", 60, time -> Png.image(scene, still().at(time)));
        painting(scene, "frames", 240, time -> frames.paint(time, into));
    }

    private static void painting(Scene scene, String name, int count, DoubleConsumer paint) {
        for (int round = 0; round < 2; round++) {
            double used = processor();
            long start = System.nanoTime();
            for (int i = 0; i < count; i++) {
                paint.accept(scene.period() * i / count);
            }
            if (round == 1) {
                System.out.printf(
                        Locale.ROOT,
                        "painting alone as %s, one thread: %.1f frames/s, cpu %.2f ms a frame%n",
                        name,
                        count / seconds(start),
                        (processor() - used) / count);
            }
        }
    }

    private static void row(Path folder, Clip clip, String name) throws IOException {
        Path file = folder.resolve("clip." + clip.kind().ending());
        double used = processor();
        long start = System.nanoTime();
        ClipReport report = Clips.write(clip, file);
        double took = seconds(start);
        System.out.printf(
                Locale.ROOT,
                "%-22s %7s %8d %8.2f %9.1f %9.2f %10.0f %s%n",
                name,
                clip.rate().said(),
                report.frames(),
                took,
                report.frames() / took,
                (processor() - used) / report.frames(),
                report.bitRate() / 1000,
                similarity(clip, file));
    }

    private static String similarity(Clip clip, Path file) throws IOException {
        if (clip.still().transparent() || clip.kind() == Kind.WEBP || clip.kind() == Kind.PNGS) {
            return String.format("%8s %8s", "-", "-");
        }
        Process decoder;
        try {
            decoder =
                    new ProcessBuilder(
                                    "ffmpeg",
                                    "-v",
                                    "error",
                                    "-i",
                                    file.toString(),
                                    "-map",
                                    "0:v",
                                    "-fps_mode",
                                    "passthrough",
                                    "-f",
                                    "rawvideo",
                                    "-pix_fmt",
                                    "rgb24",
                                    "-")
                            .redirectError(ProcessBuilder.Redirect.INHERIT)
                            .start();
        } catch (IOException none) {
            return "no ffmpeg";
        }
        int every = Math.max(1, clip.frames() / COMPARED);
        byte[] rgb = new byte[3 * WIDTH * HEIGHT];
        List<Similarity> all = new ArrayList<>();
        try (DataInputStream in = new DataInputStream(decoder.getInputStream())) {
            for (int frame = 0; ; frame++) {
                in.readFully(rgb);
                if (frame % every == 0) {
                    all.add(Similarity.of(luma(rgb), luma(painted(clip, frame)), WIDTH, HEIGHT));
                }
            }
        } catch (EOFException end) {
            if (all.isEmpty()) {
                return "ffmpeg fails";
            }
            return String.format(
                    Locale.ROOT,
                    "%8.4f %8.4f",
                    all.stream().mapToDouble(Similarity::all).average().orElse(Double.NaN),
                    all.stream().mapToDouble(Similarity::drawn).average().orElse(Double.NaN));
        }
    }

    private static BufferedImage painted(Clip clip, int frame) {
        double moment = clip.scene().period() * ((long) frame * clip.cycles() % clip.frames());
        return Png.image(clip.scene(), clip.still().at(moment / clip.frames()));
    }

    private static double[] luma(byte[] rgb) {
        double[] luma = new double[rgb.length / 3];
        for (int i = 0; i < luma.length; i++) {
            luma[i] = luma(rgb[3 * i] & 255, rgb[3 * i + 1] & 255, rgb[3 * i + 2] & 255);
        }
        return luma;
    }

    private static double[] luma(BufferedImage image) {
        int[] pixels = image.getRGB(0, 0, WIDTH, HEIGHT, null, 0, WIDTH);
        double[] luma = new double[pixels.length];
        for (int i = 0; i < luma.length; i++) {
            luma[i] = luma(pixels[i] >> 16 & 255, pixels[i] >> 8 & 255, pixels[i] & 255);
        }
        return luma;
    }

    /** ITU-R BT.709. */
    private static double luma(int red, int green, int blue) {
        return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
    }

    private static long resident() throws IOException {
        Path status = Path.of("/proc/self/status");
        if (!Files.isReadable(status)) {
            return -1;
        }
        return Files.readAllLines(status).stream()
                .filter(line -> line.startsWith("VmRSS"))
                .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")) / 1024)
                .findFirst()
                .orElse(-1);
    }

    /** What all threads have taken of the processors so far, milliseconds. */
    private static double processor() {
        return ManagementFactory.getOperatingSystemMXBean()
                        instanceof com.sun.management.OperatingSystemMXBean all
                ? all.getProcessCpuTime() / 1e6
                : Double.NaN;
    }

    private static double seconds(long since) {
        return (System.nanoTime() - since) / 1e9;
    }
}

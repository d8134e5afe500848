package deferent.reel;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;

/**
 * Clips seen by somebody else's eyes: the ffmpeg and ffprobe that are installed on this machine,
 * another build than the one that wrote them. Where there are none these tests are skipped, saying
 * so; but where {@code CI=true} they fail, so that nobody takes an unseen clip for a good one.
 */
abstract class Outside {
    @BeforeAll
    static void lookForTheDecoder() {
        if (found("ffmpeg").isEmpty() || found("ffprobe").isEmpty()) {
            String told =
                    "no ffmpeg and ffprobe are installed, so clips are not looked at: install"
                            + " ffmpeg";
            if ("true".equals(System.getenv("CI"))) {
                throw new AssertionError(told);
            }
            Assumptions.abort(told);
        }
        assertThat(Natives.available()).as("films can be written here").isEmpty();
    }

    static Optional<Path> found(String name) {
        List<String> folders = new ArrayList<>(List.of("/usr/bin", "/usr/local/bin"));
        String path = System.getenv("PATH");
        if (path != null) {
            folders.addAll(Arrays.asList(path.split(File.pathSeparator)));
        }
        return folders.stream()
                .map(folder -> Path.of(folder, name))
                .filter(Files::isExecutable)
                .findFirst();
    }

    /** What ffprobe says of one thing: its entries by key. */
    static Map<String, String> asked(Path file, String stream, String entries) {
        Map<String, String> all = new HashMap<>();
        List<String> words = new ArrayList<>(List.of("ffprobe", "-v", "error"));
        if (!stream.isEmpty()) {
            words.addAll(List.of("-select_streams", stream));
        }
        words.addAll(List.of("-count_frames", "-show_entries", entries, "-of", "default=nw=1"));
        words.add(file.toString());
        for (String line : text(run(words)).split("\n")) {
            int equals = line.indexOf('=');
            if (equals > 0) {
                all.put(line.substring(0, equals), line.substring(equals + 1).strip());
            }
        }
        return all;
    }

    /** What ffprobe says of every frame or packet, one line each. */
    static List<String> listed(Path file, String entries) {
        return text(run(
                        List.of(
                                "ffprobe",
                                "-v",
                                "error",
                                "-select_streams",
                                "v:0",
                                "-show_entries",
                                entries,
                                "-of",
                                "csv=p=0",
                                file.toString())))
                .lines()
                .map(line -> line.endsWith(",") ? line.substring(0, line.length() - 1) : line)
                .filter(line -> !line.isBlank())
                .toList();
    }

    static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.UTF_8);
    }

    /** All frames, four bytes a pixel: red, green, blue, alpha. */
    static List<byte[]> frames(Path file, int width, int height, String... decoder) {
        List<String> words = new ArrayList<>(List.of("ffmpeg", "-v", "error"));
        words.addAll(Arrays.asList(decoder));
        words.addAll(List.of("-i", file.toString(), "-map", "0:v:0"));
        words.addAll(
                List.of(
                        "-vf",
                        "scale=sws_flags=bilinear+accurate_rnd+full_chroma_int",
                        "-fps_mode",
                        "passthrough",
                        "-f",
                        "rawvideo",
                        "-pix_fmt",
                        "rgba",
                        "-"));
        byte[] all = run(words);
        int size = 4 * width * height;
        assertThat(all.length % size).isZero();
        List<byte[]> frames = new ArrayList<>();
        for (int at = 0; at < all.length; at += size) {
            frames.add(Arrays.copyOfRange(all, at, at + size));
        }
        return frames;
    }

    static byte[] run(List<String> words) {
        List<String> command = new ArrayList<>(words);
        command.set(0, found(words.get(0)).orElseThrow().toString());
        try {
            Path heard = Files.createTempFile("deferent", ".log");
            Process process =
                    new ProcessBuilder(command)
                            .redirectError(heard.toFile())
                            .redirectInput(ProcessBuilder.Redirect.from(new File("/dev/null")))
                            .start();
            byte[] out = process.getInputStream().readAllBytes();
            boolean ended = process.waitFor(2, TimeUnit.MINUTES);
            String complaint = Files.readString(heard);
            Files.delete(heard);
            assertThat(ended).as("%s ended", command).isTrue();
            assertThat(process.exitValue()).as("%s: %s", command, complaint).isZero();
            return out;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AssertionError(e);
        }
    }
}

package deferent.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.song.Beats;
import deferent.record.DemoShelf;
import deferent.record.Document;
import deferent.record.SongDocument;
import java.io.File;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.Track;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The demo's three sets to its three songs, written whole by the commands that {@code docs/} names
 * and read by other programs. A short set is taken away in every run, by {@code SungSetTest} of
 * {@code take}; these take minutes.
 */
@EnabledIfSystemProperty(named = "deferent.deep", matches = "true")
class DemoSetsTakenTest {
    private static final int RATE = 48_000;

    /** A smooth clock passes single beats by so much at most, seconds. */
    private static final double SMOOTH = 0.035;

    @TempDir Path folder;

    private static byte[] run(String... command) throws IOException {
        Process process =
                new ProcessBuilder(command)
                        .redirectError(ProcessBuilder.Redirect.DISCARD)
                        .redirectInput(new File("/dev/null"))
                        .start();
        return process.getInputStream().readAllBytes();
    }

    private static String text(String... command) throws IOException {
        return new String(run(command), StandardCharsets.UTF_8);
    }

    /** One channel as another build of FFmpeg decodes it. */
    private static float[] heard(Path file) throws IOException {
        byte[] bytes =
                run(
                        "ffmpeg",
                        "-v",
                        "error",
                        "-i",
                        file.toString(),
                        "-vn",
                        "-ac",
                        "1",
                        "-ar",
                        "" + RATE,
                        "-f",
                        "f32le",
                        "-");
        float[] samples = new float[bytes.length / 4];
        ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).asFloatBuffer().get(samples);
        return samples;
    }

    /** By how many seconds a part of a song comes later in the clip than it should. */
    private static double late(float[] song, float[] clip, double begins) {
        int most = RATE / 20;
        int length = 8 * RATE;
        int at = 10 * RATE;
        int from = (int) Math.round(begins * RATE) + at;
        double best = Double.NEGATIVE_INFINITY;
        int off = 0;
        for (int shift = -most; shift <= most; shift++) {
            double sum = 0;
            for (int i = 0; i < length; i += 3) {
                sum += song[from + i] * clip[at + i + shift];
            }
            if (sum > best) {
                best = sum;
                off = shift;
            }
        }
        return (double) off / RATE;
    }

    private static List<Double> numbers(String text, String pattern) {
        Matcher found = Pattern.compile(pattern).matcher(text);
        List<Double> all = new ArrayList<>();
        while (found.find()) {
            all.add(Double.parseDouble(found.group(1)));
        }
        return all;
    }

    private static Beats beats(String song) {
        for (Document document : DemoShelf.documents()) {
            if (document instanceof SongDocument kept && kept.name().equals(song)) {
                return kept.beats();
            }
        }
        throw new IllegalStateException("no song " + song);
    }

    @ParameterizedTest
    @CsvSource({
        "Snow in threes,Snow on the awning,snow-on-the-awning,4",
        "The long way round,The long way to the market,the-long-way-to-the-market,5",
        "Sparks at closing time,Sparks from the brazier,sparks-from-the-brazier,5"
    })
    void everyFileOfASetAgreesWithItsCueSheet(String set, String song, String slug, int patterns)
            throws Exception {
        Desk desk = new Desk(folder);
        desk.good("shelf", "demo");
        assertThat(Desk.asked("song", "demo", "--out", folder.resolve("shelf").toString()).code())
                .isZero();
        Path csv = folder.resolve("cue.csv");
        desk.good("set", set, "--out", csv.toString());
        List<String> lines = Files.readAllLines(csv);
        List<Double> called = new ArrayList<>();
        List<Integer> counts = new ArrayList<>();
        for (String line : lines) {
            if (line.contains(",pattern,\"")) {
                assertThat(line.split(",")[3]).as("beat of the bar").isEqualTo("1");
                called.add(Double.parseDouble(line.split(",")[1]));
                counts.addAll(
                        numbers(line, ", (\\d+) counts\"").stream().map(Double::intValue).toList());
            }
        }
        assertThat(called).hasSize(patterns);
        assertThat(counts).hasSize(patterns);
        double ends = Double.parseDouble(lines.get(lines.size() - 1).split(",")[1]);
        Beats beats = beats(song);
        for (double time : called) {
            assertThat(beats.times())
                    .anySatisfy(b -> assertThat(b).isCloseTo(time, within(SMOOTH)));
        }

        float[] original = heard(folder.resolve("shelf").resolve(slug + "-invented.wav"));
        for (String key : List.of("mp4", "webm")) {
            Path clip = folder.resolve("clip." + key);
            desk.good("set", set, "--out", clip.toString(), "--size", "320", "--fps", "25");
            String probed =
                    text(
                            "ffprobe",
                            "-v",
                            "error",
                            "-show_streams",
                            "-show_format",
                            "-show_chapters",
                            clip.toString());
            assertThat(probed)
                    .contains(key.equals("mp4") ? "codec_name=h264" : "codec_name=vp9")
                    .contains(key.equals("mp4") ? "codec_name=aac" : "codec_name=opus");
            List<Double> lasts = numbers(probed, "\nduration=([0-9.]+)");
            assertThat(lasts.get(lasts.size() - 1)).isCloseTo(ends - called.get(0), within(0.1));
            List<Double> chapters = numbers(probed, "\nstart_time=([0-9.]+)\nend=");
            assertThat(chapters).hasSize(patterns);
            // A chapter begins as a pattern is entered, at most a count before its 1.
            for (int i = 0; i < patterns; i++) {
                assertThat(called.get(i) - called.get(0) - chapters.get(i)).isBetween(-0.02, 1.3);
            }
            String beside = Files.readString(folder.resolve("clip.vtt"));
            assertThat(beside).contains("1 of " + counts.get(0)).contains(", then ");
            for (int all : counts) {
                assertThat(beside).contains(all + " of " + all);
            }
            assertThat(late(original, heard(clip), called.get(0)))
                    .as("the song in ." + key)
                    .isCloseTo(0, within(0.005));
        }

        Path clicks = folder.resolve("clicks.wav");
        desk.good("set", set, "--out", clicks.toString());
        float[] track = heard(clicks);
        int first =
                IntStream.range(0, beats.times().size())
                        .filter(i -> Math.abs(beats.time(i) - called.get(0)) < SMOOTH)
                        .findFirst()
                        .orElseThrow();
        double starts = beats.time(first - beats.beatsABar());
        int last =
                (int)
                        IntStream.range(0, beats.times().size())
                                .filter(i -> beats.time(i) < ends - SMOOTH)
                                .count();
        for (int beat = first; beat < last; beat++) {
            int at = (int) Math.round((beats.time(beat) - starts) * RATE);
            assertThat(track[at]).as("click on beat " + beat).isGreaterThan(0.8f);
            assertThat(Math.abs(track[at - 5])).as("before beat " + beat).isLessThan(0.01f);
        }

        Path midi = folder.resolve("counts.mid");
        desk.good("set", set, "--out", midi.toString());
        assertThat(counted(midi)).isEqualTo(counts.stream().mapToInt(c -> c).sum());
        for (double time : called) {
            assertThat(markers(midi))
                    .anySatisfy(m -> assertThat(m).isCloseTo(time, within(SMOOTH)));
        }

        Path captions = folder.resolve("cues.vtt");
        desk.good("set", set, "--out", captions.toString());
        List<Double> shown =
                numbers(
                        text("ffprobe", "-v", "error", "-show_packets", captions.toString()),
                        "\npts_time=([0-9.]+)");
        for (double time : called) {
            assertThat(shown).anySatisfy(s -> assertThat(s).isCloseTo(time, within(0.001)));
        }

        Path sheet = folder.resolve("cue.pdf");
        desk.good("set", set, "--out", sheet.toString(), "--form", "cue");
        String printed = text("pdftotext", "-layout", sheet.toString(), "-");
        for (String line : lines) {
            if (line.contains(",pattern,\"")) {
                assertThat(printed).contains(line.split(",")[7]);
            }
        }
        Path page = folder.resolve("set.html");
        desk.good("set", set, "--out", page.toString());
        assertThat(Files.readString(page)).contains("data:audio/mp4;base64,").contains(song);
        assertThat(Files.size(page)).isLessThan(5_000_000);
    }

    /** How many counts are said. */
    private static int counted(Path file) throws Exception {
        Track track = MidiSystem.getSequence(file.toFile()).getTracks()[1];
        return (int)
                IntStream.range(0, track.size())
                        .mapToObj(track::get)
                        .filter(e -> e.getMessage() instanceof MetaMessage m && m.getType() == 0x05)
                        .count();
    }

    /** When the markers of the first track are, by the tempi that stand there: seconds. */
    private static List<Double> markers(Path file) throws Exception {
        Sequence sequence = MidiSystem.getSequence(file.toFile());
        Track track = sequence.getTracks()[0];
        List<Double> times = new ArrayList<>();
        double seconds = 0;
        long before = 0;
        double each = 0.5;
        for (int i = 0; i < track.size(); i++) {
            MidiEvent event = track.get(i);
            seconds += each * (event.getTick() - before) / sequence.getResolution();
            before = event.getTick();
            if (event.getMessage() instanceof MetaMessage meta) {
                byte[] data = meta.getData();
                if (meta.getType() == 0x51) {
                    each = ((data[0] & 0xFF) << 16 | (data[1] & 0xFF) << 8 | data[2] & 0xFF) / 1e6;
                } else if (meta.getType() == 0x06) {
                    times.add(seconds);
                }
            }
        }
        return times;
    }
}

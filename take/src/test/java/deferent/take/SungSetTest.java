package deferent.take;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Refusal;
import deferent.motion.phrase.Lexicon;
import deferent.motion.phrase.Phrase;
import deferent.motion.song.Beats;
import deferent.motion.song.SongClock;
import deferent.reading.body.Performer;
import deferent.reading.tether.Kit;
import deferent.record.PatternDocument;
import deferent.record.SetPlaces;
import deferent.record.SetReading;
import deferent.record.SetStep;
import deferent.record.Shelf;
import deferent.record.cue.SetCue;
import deferent.record.cue.SetCues;
import deferent.record.cue.SungSet;
import deferent.search.set.BodyTurn;
import deferent.search.set.PairBook;
import deferent.search.transition.Grade;
import java.io.ByteArrayInputStream;
import java.io.File;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A set to a song of clicks that drifts, taken away and looked at with other programs. */
class SungSetTest {
    private static final int RATE = 44_100;
    private static final int FRAMES = 30;
    private static final int SIZE = 256;

    /** From 120 to 132 beats a minute, the third begins the first bar. */
    private static final Beats BEATS = beats();

    /** The set begins on the seventh beat. */
    private static final int FROM = 6;

    @TempDir static Path folder;

    private static SungSet sung;
    private static PairBook book;

    private static Beats beats() {
        List<Double> times = new ArrayList<>();
        double time = 0.73;
        for (int i = 0; i < 30; i++) {
            times.add(time);
            time += 60 / (120 + 12.0 * i / 29);
        }
        return new Beats(times, 4, 2);
    }

    @BeforeAll
    static void make() throws IOException {
        PatternDocument rings =
                PatternDocument.of(
                        "Rings, \"small\"",
                        Phrase.parse("static spin vs static spin")
                                .pairing()
                                .withTempo(OptionalDouble.of(120)),
                        Performer.USUAL);
        List<SetStep> steps =
                List.of(
                        SetStep.of(rings, 6),
                        SetStep.of(rings.withName("Wheels"), 6).with(new BodyTurn(1, 2)));
        book = new PairBook(Grade.USUAL, Performer.USUAL, Kit.USUAL);
        SetReading reading =
                SetReading.of(
                                "Evening",
                                SetPlaces.on(Shelf.at(folder).look()).of(steps),
                                book,
                                false,
                                p -> {},
                                () -> false)
                        .orElseThrow();
        SongClock clock = SongClock.of(BEATS, FROM, 120);
        Path song = folder.resolve("Clicks & more.wav");
        clicks(song);
        sung = new SungSet(reading, "Clicks", clock, Optional.of(song));
    }

    /** A click that is loudest at once on each beat. */
    private static void clicks(Path file) throws IOException {
        short[] samples = new short[18 * RATE];
        for (double time : BEATS.times()) {
            int at = (int) Math.round(time * RATE);
            for (int i = 0; i < 900; i++) {
                samples[at + i] = (short) (28_000 * Math.cos(0.2 * i) * Math.exp(-i / 150.0));
            }
        }
        ByteBuffer bytes = ByteBuffer.allocate(2 * samples.length).order(ByteOrder.LITTLE_ENDIAN);
        bytes.asShortBuffer().put(samples);
        AudioSystem.write(
                new AudioInputStream(
                        new ByteArrayInputStream(bytes.array()),
                        new AudioFormat(RATE, 16, 1, true, false),
                        samples.length),
                AudioFileFormat.Type.WAVE,
                file.toFile());
    }

    private static SetTake take(String key, Map<String, String> wishes) {
        return new SetTake(
                sung.reading(),
                Optional.of(sung),
                book,
                Wishes.of(SetEndings.of(key).ending(), wishes),
                Lexicon.EMPTY);
    }

    private static Path written(String key, Map<String, String> wishes) {
        Path file = folder.resolve("evening." + key);
        assertThat(take(key, wishes).write(file, p -> {}, () -> false)).isPresent();
        return file;
    }

    private static String text(String key) throws IOException {
        return Files.readString(written(key, Map.of()));
    }

    private static byte[] run(String... command) throws IOException {
        Process process =
                new ProcessBuilder(command)
                        .redirectError(ProcessBuilder.Redirect.DISCARD)
                        .redirectInput(new File("/dev/null"))
                        .start();
        return process.getInputStream().readAllBytes();
    }

    /** As another build of FFmpeg decodes it: one channel. */
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

    /** When clicks begin, seconds: where it is loud after it was quiet. */
    private static List<Double> onsets(float[] samples) {
        List<Double> onsets = new ArrayList<>();
        double last = -1;
        for (int i = 0; i < samples.length; i++) {
            double time = (double) i / RATE;
            if (Math.abs(samples[i]) > 0.25 && time - last > 0.2) {
                onsets.add(time);
            }
            last = Math.abs(samples[i]) > 0.25 ? time : last;
        }
        return onsets;
    }

    /** When the line below the figure, which says the count, changes: seconds of the clip. */
    private static List<Double> counted(Path clip) throws IOException {
        byte[] all =
                run(
                        "ffmpeg",
                        "-v",
                        "error",
                        "-i",
                        clip.toString(),
                        "-map",
                        "0:v:0",
                        "-fps_mode",
                        "passthrough",
                        "-f",
                        "rawvideo",
                        "-pix_fmt",
                        "gray",
                        "-");
        int size = SIZE * SIZE;
        List<Double> changes = new ArrayList<>();
        for (int frame = 1; frame < all.length / size; frame++) {
            int differ = 0;
            for (int i = 9 * size / 10; i < size; i++) {
                int now = all[frame * size + i] & 0xFF;
                int before = all[(frame - 1) * size + i] & 0xFF;
                differ += Math.abs(now - before) > 30 ? 1 : 0;
            }
            if (differ > 1) {
                changes.add((double) frame / FRAMES);
            }
        }
        return changes;
    }

    @ParameterizedTest
    @CsvSource({"mp4,h264,aac", "webm,vp9,opus"})
    void countsAreSeenWhenTheirBeatsAreHeard(String key, String pictures, String sound)
            throws IOException {
        Path clip = written(key, Map.of("size", "" + SIZE, "fps", "" + FRAMES, "without", "trail"));
        String probed =
                new String(
                        run(
                                "ffprobe",
                                "-v",
                                "error",
                                "-show_entries",
                                "stream=codec_name,channels,sample_rate:format=duration",
                                "-of",
                                "compact",
                                "-show_chapters",
                                clip.toString()),
                        StandardCharsets.UTF_8);
        assertThat(probed)
                .contains("codec_name=" + pictures)
                .contains("codec_name=" + sound)
                .contains("sample_rate=48000|channels=2")
                .contains("tag:title=Rings, \"small\"")
                .contains("tag:title=Wheels");
        List<Double> onsets = onsets(heard(clip));
        List<Double> changes = counted(clip);
        double begins = sung.begins();
        List<Double> beats =
                IntStream.range(FROM, FROM + 12).mapToObj(i -> BEATS.time(i) - begins).toList();
        // The first beat is the cut itself, and the first count stands there from the first frame.
        assertThat(onsets).hasSizeBetween(11, 12);
        assertThat(changes).hasSize(11);
        for (int k = 1; k < 12; k++) {
            double beat = beats.get(k);
            double click =
                    onsets.stream()
                            .min((a, b) -> Double.compare(Math.abs(a - beat), Math.abs(b - beat)))
                            .orElseThrow();
            assertThat(click).isCloseTo(beat, within(0.003));
            assertThat(changes.get(k - 1)).isCloseTo(click, within(1.0 / FRAMES + 0.003));
        }
    }

    @Test
    void theClickTrackCountsInABarAndClicksOnEachBeatToTheSample() throws Exception {
        Path file = written("wav", Map.of());
        try (AudioInputStream in = AudioSystem.getAudioInputStream(file.toFile())) {
            assertThat(in.getFormat().getSampleSizeInBits()).isEqualTo(16);
            assertThat(in.getFormat().getChannels()).isEqualTo(1);
            assertThat(in.getFormat().getSampleRate()).isEqualTo(48_000);
            byte[] bytes = in.readAllBytes();
            short[] samples = new short[bytes.length / 2];
            ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).asShortBuffer().get(samples);
            double from = BEATS.time(FROM - 4);
            for (int beat = FROM - 4; beat < FROM + 12; beat++) {
                int at = (int) Math.round((BEATS.time(beat) - from) * 48_000);
                assertThat(samples[at]).as("beat " + beat).isGreaterThan((short) 29_000);
                if (at > 0) {
                    assertThat(samples[at - 1]).as("before beat " + beat).isZero();
                }
                // Half a turn of the lower tone is 24 samples, of a bar's higher one 15.
                boolean higher = samples[at + 15] < -20_000;
                assertThat(higher).as("beat " + beat).isEqualTo((beat - 2) % 4 == 0);
            }
            assertThat(samples.length / 48_000.0).isCloseTo(sung.ends() - from, within(0.05));
        }
        assertThatThrownBy(
                        () ->
                                new SetTake(
                                        sung.reading(),
                                        book,
                                        Wishes.of(SetEndings.of("wav").ending(), Map.of()),
                                        Lexicon.EMPTY))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("wants a song, and the set has none");
    }

    @Test
    void theMidiFileKeepsTheBeatsTheBarsTheCountsAndTheMarkers() throws Exception {
        Sequence sequence = MidiSystem.getSequence(written("mid", Map.of()).toFile());
        assertThat(MidiSystem.getMidiFileFormat(folder.resolve("evening.mid").toFile()).getType())
                .isEqualTo(1);
        assertThat(sequence.getTracks()).hasSize(2);
        Track clock = sequence.getTracks()[0];
        int lead = 1;
        for (int beat = 0; beat < BEATS.times().size(); beat++) {
            assertThat(seconds(clock, sequence, (long) (beat + lead) * sequence.getResolution()))
                    .isCloseTo(BEATS.time(beat), within(1e-5));
        }
        assertThat(metas(clock, 0x58)).hasSize(2);
        MidiEvent bars = metas(clock, 0x58).get(1);
        assertThat(((MetaMessage) bars.getMessage()).getData()[0]).isEqualTo((byte) 4);
        assertThat(seconds(clock, sequence, bars.getTick())).isCloseTo(BEATS.time(2), within(1e-5));
        assertThat(metas(clock, 0x06))
                .extracting(SungSetTest::words)
                .containsExactly(
                        "Rings, \"small\", 6 counts",
                        "Wheels, 6 counts",
                        "Quarter turn to the left",
                        "End");
        Track counts = sequence.getTracks()[1];
        assertThat(metas(counts, 0x05))
                .extracting(SungSetTest::words)
                .containsExactly("1", "2", "3", "4", "5", "6", "1", "2", "3", "4", "5", "6");
        List<MidiEvent> strokes = new ArrayList<>();
        for (int i = 0; i < counts.size(); i++) {
            if (counts.get(i).getMessage() instanceof ShortMessage note
                    && note.getCommand() == ShortMessage.NOTE_ON
                    && note.getData2() > 0) {
                assertThat(note.getChannel()).isEqualTo(9);
                strokes.add(counts.get(i));
            }
        }
        assertThat(strokes).hasSize(12);
        for (int k = 0; k < 12; k++) {
            assertThat(seconds(clock, sequence, strokes.get(k).getTick()))
                    .isCloseTo(sung.clock().time(k * 0.5), within(0.001));
        }
    }

    /** When a tick is, by the tempi that were written. */
    private static double seconds(Track clock, Sequence sequence, long tick) {
        double seconds = 0;
        long at = 0;
        double each = 0.5;
        for (MidiEvent event : metas(clock, 0x51)) {
            long until = Math.min(event.getTick(), tick);
            seconds += each * (until - at) / sequence.getResolution();
            at = until;
            byte[] data = ((MetaMessage) event.getMessage()).getData();
            each = ((data[0] & 0xFF) << 16 | (data[1] & 0xFF) << 8 | data[2] & 0xFF) / 1e6;
            if (event.getTick() >= tick) {
                return seconds;
            }
        }
        return seconds + each * (tick - at) / sequence.getResolution();
    }

    private static List<MidiEvent> metas(Track track, int type) {
        return IntStream.range(0, track.size())
                .mapToObj(track::get)
                .filter(e -> e.getMessage() instanceof MetaMessage m && m.getType() == type)
                .toList();
    }

    private static String words(MidiEvent event) {
        return new String(((MetaMessage) event.getMessage()).getData(), StandardCharsets.UTF_8);
    }

    @Test
    void cuesSayWhenWhereInTheBarsAndWhat() throws IOException {
        List<SetCue> cues = SetCues.of(sung).cues();
        assertThat(cues)
                .extracting(SetCue::kind)
                .containsExactly(
                        SetCue.Kind.PATTERN,
                        SetCue.Kind.PATTERN,
                        SetCue.Kind.TURN,
                        SetCue.Kind.END);
        assertThat(cues.get(0).place()).contains(new SetCue.Place(2, 1));
        assertThat(cues.get(1).place()).contains(new SetCue.Place(3, 3));
        assertThat(SetCues.place(BEATS, 1.5)).isEqualTo(new SetCue.Place(0, 4.5));
        String csv = text("csv");
        assertThat(csv).startsWith("time,time_s,bar,beat,kind,cue,pattern,counts,more,caution\r\n");
        List<String> lines = csv.lines().toList();
        assertThat(lines).hasSize(5);
        assertThat(lines.get(1))
                .startsWith(SetCues.clock(sung.begins()) + ",")
                .contains(
                        ",2,1,pattern,\"Rings, \"\"small\"\", 6 counts\",\"Rings, \"\"small\"\"\",6,");
        assertThat(lines.get(3)).contains(",body turn,Quarter turn to the left,Wheels,,");
        assertThat(SetCues.clock(62.3454)).isEqualTo("1:02.345");
        assertThat(SetCues.clock(-0.25)).isEqualTo("-0:00.250");
    }

    @Test
    void captionsAreReadByAnotherProgramAtTheSongsTimes() throws IOException {
        String read =
                new String(
                        run(
                                "ffmpeg",
                                "-v",
                                "error",
                                "-i",
                                written("vtt", Map.of()).toString(),
                                "-f",
                                "srt",
                                "-"),
                        StandardCharsets.UTF_8);
        long millis = Math.round(1000 * sung.begins());
        assertThat(read)
                .contains(String.format("00:00:%02d,%03d -->", millis / 1000, millis % 1000))
                .contains("Rings, \"small\", 6 counts", "Wheels, 6 counts");
    }

    @Test
    void markersStandOnTheNearestFrames() throws IOException {
        JsonNode timeline = JsonMapper.shared().readTree(text("otio"));
        assertThat(timeline.get("OTIO_SCHEMA").asString()).isEqualTo("Timeline.1");
        JsonNode markers = timeline.at("/tracks/markers");
        assertThat(markers).hasSize(4);
        JsonNode start = markers.get(1).at("/marked_range/start_time");
        assertThat(start.get("rate").doubleValue()).isEqualTo(25);
        assertThat(start.get("value").doubleValue())
                .isEqualTo(Math.rint(25 * sung.clock().time(3)));
        assertThat(markers.get(2).get("color").asString()).isEqualTo("YELLOW");
        assertThat(
                        timeline.at("/tracks/children/0/children/0/media_references/DEFAULT_MEDIA")
                                .get("target_url")
                                .asString())
                .isEqualTo("Clicks%20&%20more.wav");
    }

    @Test
    void whatNoSetIsWrittenAsIsSaidInOneSentence() {
        assertThatThrownBy(() -> SetEndings.of("glb"))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("which no set is written as")
                .hasMessageContaining(".mid");
        assertThat(Arrays.stream(SetEndings.all().toArray())).hasSizeGreaterThan(10);
    }
}

package deferent.bench;

import deferent.reel.Hearing;
import deferent.sound.Onsets;
import deferent.sound.SaidLevel;
import deferent.sound.SongReading;
import deferent.sound.WaveFile;
import deferent.sound.tune.Pieces;
import deferent.sound.tune.Tune;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalInt;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * What it costs to read the beats of a song of three minutes from its file, wanted under 3.6 s,
 * fifty times faster than it plays; baseline in the same run: the file decoded and nothing read.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 2, time = 5)
@Measurement(iterations = 4, time = 5)
@Fork(1)
public class SongBench {
    private static final double SECONDS = 180;
    private static final int RATE = 44_100;

    private Path file = Path.of("");
    private Onsets onsets = new Onsets();

    @Setup
    public void render() throws IOException {
        Tune tune = Pieces.forTuning(SECONDS).get(20);
        file = Files.createTempFile("deferent-song", ".wav");
        Files.write(file, WaveFile.bytes(tune.sound(RATE), RATE));
        onsets = new Onsets();
        float[] sound = tune.sound(Onsets.SAMPLES);
        onsets.take(sound, sound.length);
    }

    @TearDown
    public void sweep() throws IOException {
        Files.delete(file);
    }

    @Benchmark
    public SongReading readFromItsFile() throws IOException {
        return SongReading.of(file, SaidLevel.UNSAID, OptionalInt.empty(), share -> {}, () -> false)
                .orElseThrow();
    }

    /** What a tap or another level pays, the sound having been taken in. */
    @Benchmark
    public SongReading beatsAndBars() {
        return SongReading.of(onsets, SaidLevel.UNSAID, OptionalInt.empty(), "tune");
    }

    /** Baseline. */
    @Benchmark
    public int decoded() throws IOException {
        int samples = 0;
        try (Hearing hearing = Hearing.open(file, Onsets.SAMPLES)) {
            for (float[] some = hearing.next(); some.length > 0; some = hearing.next()) {
                samples += some.length;
            }
        }
        return samples;
    }
}

package deferent.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import deferent.motion.pairing.Refusal;
import deferent.motion.song.Beats;
import deferent.record.DemoShelf;
import deferent.record.SongDocument;
import deferent.sound.SongReading.Sure;
import deferent.sound.tune.Agreement;
import deferent.sound.tune.DemoTune;
import deferent.sound.tune.Manner;
import deferent.sound.tune.Tune;
import deferent.sound.words.TellSong;
import deferent.tell.Told;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class SongReadingTest {
    private static SongReading read(float[] sound, SaidLevel level) {
        Onsets onsets = new Onsets();
        onsets.take(sound, sound.length);
        return SongReading.of(onsets, level, OptionalInt.empty(), "song");
    }

    private static float[] noise(double seconds, double loud) {
        SplittableRandom random = new SplittableRandom(5);
        float[] noise = new float[(int) (seconds * Onsets.SAMPLES)];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = (float) (loud * random.nextDouble(-1, 1));
        }
        return noise;
    }

    private static float[] tone(double seconds) {
        float[] tone = new float[(int) (seconds * Onsets.SAMPLES)];
        for (int i = 0; i < tone.length; i++) {
            tone[i] = (float) (0.5 * Math.sin(2 * Math.PI * 440 * i / Onsets.SAMPLES));
        }
        return tone;
    }

    @Test
    void silenceNoiseAToneAndASnippetAreRefusedInASentence() {
        assertThatThrownBy(() -> read(noise(20, 1e-4), SaidLevel.UNSAID))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("is silent");
        for (float[] dull : List.of(noise(20, 0.3), tone(20))) {
            assertThatThrownBy(() -> read(dull, SaidLevel.UNSAID))
                    .isInstanceOf(Refusal.class)
                    .hasMessageContaining("has no pulse that can be heard; tap its beats");
        }
        assertThatThrownBy(() -> read(tone(5), SaidLevel.UNSAID))
                .hasMessageContaining("plays for 5.0 s; give a sound of 8 s or more");
    }

    /** Whoever taps knows better than what is heard. */
    @Test
    void tapsAreTakenEvenWhereNoPulseIsHeard() {
        SongReading song = read(noise(20, 0.3), SaidLevel.taps(List.of(5.0, 5.5, 6.0)));
        assertThat(song.beats().tempo()).isCloseTo(120, within(8.0));
        for (double tap : List.of(5.0, 5.5, 6.0)) {
            assertThat(song.beats().times())
                    .anySatisfy(beat -> assertThat(beat).isCloseTo(tap, within(0.03)));
        }
        assertThat(song.level()).isEqualTo(Sure.SAID);
    }

    @Test
    void itIsTheSameHoweverTheSoundComesInPieces() {
        float[] sound = Tune.of(Manner.plain(96, 3, 12), 8).sound(Onsets.SAMPLES);
        Onsets pieces = new Onsets();
        int size = 1;
        for (int at = 0; at < sound.length; at += size) {
            size = Math.min(1 + 7 * size % 4099, sound.length - at);
            // What stands behind the piece is not meant.
            pieces.take(Arrays.copyOfRange(sound, at, at + size + 3), size);
        }
        assertThat(SongReading.of(pieces, SaidLevel.UNSAID, OptionalInt.empty(), "song"))
                .isEqualTo(read(sound, SaidLevel.UNSAID));
        assertThat(pieces.seconds()).isEqualTo(12);
    }

    /** The demo's tunes are read as they were composed, and said so. */
    @ParameterizedTest
    @EnumSource
    void theTunesOfTheDemoAreReadAsTheyWereComposed(DemoTune demo) {
        Tune tune = demo.tune();
        SongReading song = read(tune.sound(Onsets.SAMPLES), SaidLevel.UNSAID);
        assertThat(Agreement.of(song.beats().times(), tune.beats().times()).f())
                .isGreaterThan(0.98);
        assertThat(song.beats().beatsABar()).isEqualTo(tune.manner().beatsABar());
        double first = song.beats().time(song.beats().firstBar());
        assertThat(tune.beats().beginsBar((int) Math.round(tune.beats().beat(first)))).isTrue();
        assertThat(song.loud()).hasSize((int) (10 * song.seconds()));
        List<Told> told = TellSong.of(song);
        assertThat(told.get(0).text())
                .contains(
                        switch (demo) {
                            case WALTZ -> "84 beats a minute all along; ";
                            case WALK ->
                                    "104 beats a minute, drifting from 99 at its slowest to 109";
                            case SPARKS -> "144 beats a minute, drifting from 139 at its slowest";
                        })
                .endsWith("cycles a minute.");
        assertThat(told.get(1).text())
                .startsWith(demo == DemoTune.WALTZ ? "Bars of three beats" : "Bars of four beats");
    }

    /** What the demo's shelf keeps of them is so, and its sound is the one that is rendered. */
    @ParameterizedTest
    @EnumSource
    void theDemosShelfKnowsItsTunesAgain(DemoTune demo, @TempDir Path folder) throws IOException {
        SongDocument kept =
                DemoShelf.documents().stream()
                        .filter(SongDocument.class::isInstance)
                        .map(SongDocument.class::cast)
                        .filter(song -> song.name().equals(demo.title()))
                        .findFirst()
                        .orElseThrow();
        Tune tune = demo.tune();
        Path file = folder.resolve(demo.file());
        Files.write(file, WaveFile.bytes(tune.sound(DemoTune.RATE), DemoTune.RATE));
        assertThat(kept.sound().find(folder).file()).contains(file);
        assertThat(kept.sound().seconds()).isEqualTo(tune.manner().seconds());
        assertThat(Agreement.of(kept.beats().times(), tune.beats().times()).f())
                .isGreaterThan(0.98);
        assertThat(kept.beats().beatsABar()).isEqualTo(tune.manner().beatsABar());
        assertThat(kept.beats().firstBar()).isZero();
        assertThat(kept.author()).contains("invented demo data");
        assertThat(demo.file()).contains("invented");
        // As the command would keep it today.
        SongReading now =
                SongReading.of(
                                file,
                                SaidLevel.UNSAID,
                                OptionalInt.empty(),
                                share -> assertThat(share).isBetween(0.0, 1.0),
                                () -> false)
                        .orElseThrow();
        assertThat(now.beats().firstBar()).isZero();
        assertThat(now.beats().times()).hasSameSizeAs(kept.beats().times());
        for (int i = 0; i < kept.beats().times().size(); i++) {
            assertThat(now.beats().time(i)).isCloseTo(kept.beats().time(i), within(0.002));
        }
        assertThat(
                        SongReading.of(
                                file,
                                SaidLevel.UNSAID,
                                OptionalInt.empty(),
                                share -> {},
                                () -> true))
                .isEmpty();
    }

    @Test
    void whatIsOpenIsSaidToBe() {
        SongReading sure = read(DemoTune.WALK.tune().sound(Onsets.SAMPLES), SaidLevel.UNSAID);
        Beats beats = Beats.even(0.5, 100, 40, 4);
        SongReading open = sure.with(beats, Sure.GUESSED, Sure.GUESSED);
        assertThat(TellSong.of(open))
                .extracting(Told::text)
                .contains(
                        "It might as well be 50 or 200 beats a minute: tap two beats, or say double or"
                                + " half.",
                        "Bars of four beats, the first at 0.50 s, but that is a guess: listen, and set"
                                + " it right.");
    }
}

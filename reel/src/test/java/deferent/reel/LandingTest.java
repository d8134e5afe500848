package deferent.reel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import deferent.motion.pairing.Refusal;
import deferent.motion.trace.Rate;
import deferent.page.Scene;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.bytedeco.ffmpeg.global.avutil;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What becomes of a clip that cannot be finished, and of the good one that stood there before. */
class LandingTest {
    private static final Scene SCENE = Scenes.isolationWithFourPetals();

    @TempDir Path folder = Path.of("");

    private Path older(Kind kind) throws IOException {
        return Files.writeString(folder.resolve("clip." + kind.ending()), "an older good clip");
    }

    private void isUntouched(Path file) throws IOException {
        assertThat(file).hasContent("an older good clip");
        try (Stream<Path> all = Files.list(folder)) {
            assertThat(all).containsExactly(file);
        }
    }

    private static Clip clip(Kind kind) {
        return Clip.of(SCENE, Scenes.still(320, 240), kind).at(Rate.PAL).cycles(2);
    }

    @ParameterizedTest
    @EnumSource(Kind.class)
    void aStoppedClipLeavesTheOlderOne(Kind kind) throws IOException {
        Path file = older(kind);
        int[] heard = {0};
        assertThat(
                        Clips.write(
                                clip(kind),
                                file,
                                progress -> heard[0] = progress.done(),
                                () -> heard[0] >= 20))
                .isEmpty();
        assertThat(heard[0]).isEqualTo(20);
        isUntouched(file);
    }

    /** A device of Linux that has no room for anything: man 4 full. */
    @EnabledOnOs(OS.LINUX)
    @ParameterizedTest
    @EnumSource(Kind.class)
    void aFullDiskLeavesTheOlderOneAndIsSaid(Kind kind) throws IOException {
        Path file = older(kind);
        assertThatThrownBy(
                        () ->
                                Clips.write(
                                        clip(kind),
                                        file,
                                        progress -> {},
                                        () -> false,
                                        beside ->
                                                FileChannel.open(
                                                        Path.of("/dev/full"),
                                                        StandardOpenOption.WRITE)))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("No space left on device")
                .hasMessageContaining("make room");
        isUntouched(file);
        // And the next clip is written as if nothing had happened.
        assertThat(Clips.write(clip(kind), file).bytes()).isEqualTo(Files.size(file));
    }

    @Test
    void aFileThatCannotBeWrittenIsSaidBeforeAnyFrameIsPainted() throws IOException {
        List<Integer> heard = new ArrayList<>();
        Path nowhere = folder.resolve("no/such/folder/clip.mp4");
        assertThatThrownBy(
                        () ->
                                Clips.write(
                                        clip(Kind.MP4),
                                        nowhere,
                                        progress -> heard.add(progress.done()),
                                        () -> false))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("there is no folder");
        Path below = older(Kind.GIF).resolve("clip.mp4");
        assertThatThrownBy(() -> Clips.write(clip(Kind.MP4), below)).isInstanceOf(Refusal.class);
        assertThatThrownBy(() -> Clips.write(clip(Kind.MP4), folder))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("is a folder");
        assertThat(heard).isEmpty();
    }

    /** The kernel's own folder takes no files, not even from the superuser. */
    @EnabledOnOs(OS.LINUX)
    @Test
    void aFolderThatTakesNoFilesIsSaid() {
        assertThatThrownBy(() -> Clips.write(clip(Kind.MP4), Path.of("/proc/clip.mp4")))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("/proc/clip.mp4: cannot be written");
    }

    @Test
    void aPainterThatFailsLeavesTheOlderOne() throws IOException {
        Path file = older(Kind.MP4);
        assertThatThrownBy(
                        () ->
                                Clips.write(
                                        clip(Kind.MP4),
                                        file,
                                        progress -> {
                                            throw new IllegalStateException("the listener fell");
                                        },
                                        () -> false))
                .hasMessage("the listener fell");
        isUntouched(file);
    }

    @Test
    void progressCountsEveryFrameOnce() {
        List<ClipProgress> heard = new ArrayList<>();
        Clip clip = clip(Kind.MP4);
        Clips.write(clip, folder.resolve("clip.mp4"), heard::add, () -> false);
        assertThat(heard).hasSize(clip.frames());
        for (int i = 0; i < heard.size(); i++) {
            assertThat(heard.get(i)).isEqualTo(new ClipProgress(i + 1, clip.frames()));
        }
    }

    @EnabledOnOs(OS.LINUX)
    @Test
    void theNativesAreFreeOnesAndTheDevicesStayOut() throws IOException {
        Clips.write(clip(Kind.GIF), folder.resolve("clip.gif"));
        assertThat(avutil.avutil_license().getString()).startsWith("LGPL");
        assertThat(avutil.avutil_configuration().getString()).doesNotContain("--enable-gpl");
        List<String> loaded = Files.readAllLines(Path.of("/proc/self/maps"));
        assertThat(loaded).anyMatch(line -> line.contains("libavcodec"));
        assertThat(loaded)
                .noneMatch(line -> line.contains("libavdevice") || line.contains("libpulse"));
    }
}

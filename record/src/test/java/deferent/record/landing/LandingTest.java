package deferent.record.landing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assumptions.assumeThat;

import deferent.motion.pairing.Refusal;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** A file lands whole or not at all, and where it may. */
class LandingTest {
    @TempDir Path folder = Path.of("");

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private List<String> names() throws IOException {
        try (Stream<Path> all = Files.list(folder)) {
            return all.map(f -> f.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void untilItLandsTheOldFileStandsThere() throws IOException {
        Path file = Files.writeString(folder.resolve("route.pdf"), "old");
        try (Landing landing = Landing.at(file)) {
            landing.write(bytes("new"));
            assertThat(file).hasContent("old");
            landing.land();
        }
        assertThat(file).hasContent("new");
        assertThat(names()).containsExactly("route.pdf");
    }

    @Test
    void whatDoesNotLandIsThrownAway() throws IOException {
        Path file = Files.writeString(folder.resolve("route.pdf"), "old");
        try (Landing landing = Landing.at(file)) {
            landing.write(bytes("new"));
        }
        assertThat(file).hasContent("old");
        assertThat(names()).containsExactly("route.pdf");
    }

    @Test
    void onAFullDiskTheOldFileStaysAndNothingLiesAbout() throws IOException {
        Path small = folder.resolve("small");
        Optional<FullDisk> disk = FullDisk.of(small, 64);
        assumeThat(disk).as("only the superuser mounts a small disk").isPresent();
        try (FullDisk full = disk.get()) {
            Path file = Files.writeString(small.resolve("backup.json"), "old");
            full.fill();
            assertThatThrownBy(() -> Landing.write(file, new byte[100_000]))
                    .isInstanceOf(Refusal.class)
                    .hasMessageContaining("No space left on device")
                    .hasMessageContaining("what stood there before is untouched");
            assertThat(file).hasContent("old");
            assertThat(small.toFile().list()).containsExactlyInAnyOrder("backup.json", "ballast");
        }
    }

    @Test
    void aLinkStaysAndWhatItLeadsToIsReplaced() throws IOException {
        Path file = Files.writeString(folder.resolve("backup.json"), "old");
        Path link = Files.createSymbolicLink(folder.resolve("link.json"), file);
        Landing.write(link, bytes("new"));
        assertThat(link).isSymbolicLink();
        assertThat(file).hasContent("new");
        Path lost = Files.createSymbolicLink(folder.resolve("lost"), folder.resolve("nowhere"));
        assertThatThrownBy(() -> Landing.write(lost, bytes("new")))
                .hasMessageContaining("leads nowhere");
        assertThat(lost).isSymbolicLink();
    }

    @EnabledOnOs(OS.LINUX)
    @Test
    void aDeviceIsNeverReplaced() {
        assertThatThrownBy(() -> Landing.write(Path.of("/dev/null"), bytes("new")))
                .isInstanceOf(Refusal.class)
                .hasMessageContaining("is a device or a pipe");
        assertThat(Files.isRegularFile(Path.of("/dev/null"))).isFalse();
    }

    @EnabledOnOs({OS.LINUX, OS.MAC})
    @Test
    void aFileKeptToOneselfStaysSoAndAPrivateOneBeginsSo() throws IOException {
        Path file = Files.writeString(folder.resolve("backup.json"), "old");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-------"));
        Landing.write(file, bytes("new"));
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-------");
        Path fresh = folder.resolve("key");
        try (Landing landing = Landing.at(fresh, Landing.PRIVATE)) {
            landing.write(bytes("new"));
            landing.land();
        }
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(fresh)))
                .isEqualTo("rw-------");
    }

    @Test
    void severalLandTogether() throws IOException {
        Path clip = Files.writeString(folder.resolve("clip.mp4"), "old clip");
        Path captions = folder.resolve("clip.vtt");
        try (Landing first = Landing.at(clip);
                Landing second = Landing.at(captions)) {
            first.write(bytes("new clip"));
            second.write(bytes("new captions"));
            Landing.landTogether(List.of(first, second));
        }
        assertThat(clip).hasContent("new clip");
        assertThat(captions).hasContent("new captions");
        assertThat(names()).containsExactly("clip.mp4", "clip.vtt");
    }

    /** A folder comes to stand where the second was to land, after it was looked at. */
    @Test
    void whereTheSecondCannotLandTheFirstIsPutBack() throws IOException {
        Path clip = Files.writeString(folder.resolve("clip.mp4"), "old clip");
        Path captions = folder.resolve("clip.vtt");
        try (Landing first = Landing.at(clip);
                Landing second = Landing.at(captions)) {
            first.write(bytes("new clip"));
            second.write(bytes("new captions"));
            Files.createDirectories(captions.resolve("in the way"));
            assertThatThrownBy(() -> Landing.landTogether(List.of(first, second)))
                    .isInstanceOf(IOException.class);
        }
        assertThat(clip).hasContent("old clip");
        assertThat(names()).containsExactly("clip.mp4", "clip.vtt");
    }

    @Test
    void whereTheSecondCannotLandANewFirstIsTakenAwayAgain() throws IOException {
        Path clip = folder.resolve("clip.mp4");
        Path captions = folder.resolve("clip.vtt");
        try (Landing first = Landing.at(clip);
                Landing second = Landing.at(captions)) {
            Files.createDirectories(captions.resolve("in the way"));
            assertThatThrownBy(() -> Landing.landTogether(List.of(first, second)))
                    .isInstanceOf(IOException.class);
        }
        assertThat(names()).containsExactly("clip.vtt");
    }

    @Test
    void aNameAsLongAsTheSystemTakesIsWritten() throws IOException {
        Path file = folder.resolve("x".repeat(250) + ".json");
        Landing.write(file, bytes("new"));
        assertThat(file).hasContent("new");
    }
}

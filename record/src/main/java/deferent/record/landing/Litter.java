package deferent.record.landing;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a run that was killed left in a folder. Only files whose names carry a {@link Claim} that
 * nobody who lives holds are swept; all else is somebody's.
 *
 * @param folder where it lay
 * @param swept how many files were removed
 * @param saved files that hold what stood in a place before, and are left for the user to judge
 */
public record Litter(Path folder, int swept, List<Path> saved) {
    public Litter {
        saved = List.copyOf(saved);
    }

    /** Sweeps a folder that is about to be written to; what cannot be removed stays. */
    public static Litter sweep(Path folder) {
        int swept = 0;
        List<Path> saved = new ArrayList<>();
        try (DirectoryStream<Path> files =
                Files.newDirectoryStream(folder, Landing.BEFORE + "deferent-*")) {
            for (Path file : files) {
                String name = String.valueOf(file.getFileName());
                if (abandoned(file, Claim.in(name, Landing.BEFORE, Landing.PART))
                        && Files.deleteIfExists(file)) {
                    swept++;
                } else if (abandoned(file, Claim.in(name, Landing.BEFORE, Landing.OLD))) {
                    saved.add(file);
                }
            }
        } catch (IOException | java.nio.file.DirectoryIteratorException notOurs) {
            // A folder that cannot be read or written is told by whoever wants to use it.
            return new Litter(folder, swept, saved);
        }
        return new Litter(folder, swept, saved);
    }

    private static boolean abandoned(Path file, Optional<Claim> claim) {
        return claim.isPresent()
                && Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
                && claim.get().abandoned(file);
    }

    /** What to tell of it, in one line; empty for a clean folder. */
    public Optional<String> told() {
        List<String> parts = new ArrayList<>();
        if (swept > 0) {
            parts.add(
                    "Swept from "
                            + folder
                            + ": "
                            + (swept == 1 ? "one unfinished file" : swept + " unfinished files")
                            + " of a run that was cut short.");
        }
        for (Path old : saved) {
            parts.add(
                    old
                            + " holds what a run that was cut short was about to replace; rename or"
                            + " remove it.");
        }
        return parts.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", parts));
    }
}

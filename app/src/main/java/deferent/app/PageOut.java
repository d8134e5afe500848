package deferent.app;

import deferent.motion.pairing.Refusal;
import deferent.page.sheet.Leaf;
import deferent.page.sheet.LeafPicture;
import deferent.page.sheet.Print;
import deferent.record.landing.Landing;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/**
 * Writes printed pages as what the ending of a file's name says: .pdf all, .svg and .png the first.
 */
final class PageOut {
    private static final List<String> ENDINGS = List.of("pdf", "svg", "png");

    private PageOut() {}

    /** The ending of a file's name in small letters; empty where it has none. */
    static String ending(Path file) {
        String name = file.getFileName() == null ? "" : file.getFileName().toString();
        return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    }

    /** Refuses a file whose ending is none of these, before anything is worked out. */
    static void mayBe(Path file) {
        if (!ENDINGS.contains(ending(file))) {
            throw new Refusal(
                    "has no ending that is known here",
                    "--out " + file,
                    "give one that ends in .pdf, .svg or .png");
        }
    }

    static void write(Path file, Print print) {
        mayBe(file);
        Landing.write(file, bytes(ending(file), print));
    }

    private static byte[] bytes(String ending, Print print) {
        if (ending.equals("pdf")) {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            try {
                print.write(out);
            } catch (IOException inMemory) {
                throw new UncheckedIOException(inMemory);
            }
            return out.toByteArray();
        }
        Leaf first = print.leaves(progress -> {}, () -> false).orElseThrow().get(0);
        return ending.equals("png")
                ? LeafPicture.png(first)
                : LeafPicture.svg(first).getBytes(StandardCharsets.UTF_8);
    }
}

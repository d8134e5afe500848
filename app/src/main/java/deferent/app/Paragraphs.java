package deferent.app;

import java.util.ArrayList;
import java.util.List;

/** Running text in lines of a readable width, continued lines indented under the first. */
final class Paragraphs {
    private static final int USUAL = 88;

    private Paragraphs() {}

    /** Columns of the terminal where it says, between 60 and 100. */
    static int width() {
        String said = System.getenv("COLUMNS");
        if (said == null || !said.matches("[0-9]{1,4}")) {
            return USUAL;
        }
        return Math.max(60, Math.min(100, Integer.parseInt(said)));
    }

    /**
     * The text with {@code first} before it.
     *
     * @param first stands before the first line; the others are indented as far
     */
    static List<String> wrapped(String first, String text, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder(first);
        String indent = " ".repeat(first.length());
        boolean fresh = true;
        for (String word : text.strip().split("\\s+", -1)) {
            if (!fresh && line.length() + 1 + word.length() > width) {
                lines.add(line.toString());
                line = new StringBuilder(indent);
                fresh = true;
            }
            line.append(fresh ? "" : " ").append(word);
            fresh = false;
        }
        lines.add(line.toString());
        return lines;
    }
}

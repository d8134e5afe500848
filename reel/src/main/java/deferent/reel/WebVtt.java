package deferent.reel;

import java.util.List;
import java.util.Locale;

/** Captions as a WebVTT file (W3C, WebVTT: The Web Video Text Tracks Format, section 4). */
public final class WebVtt {
    private WebVtt() {}

    /**
     * A file of them.
     *
     * @param title said in the header; empty for none
     */
    public static String of(String title, List<Cue> cues) {
        StringBuilder out = new StringBuilder("WEBVTT");
        if (!title.isEmpty()) {
            out.append(" - ").append(header(title));
        }
        out.append("\n\n");
        for (Cue cue : cues) {
            out.append(time(cue.fromMillis()))
                    .append(" --> ")
                    .append(time(cue.toMillis()))
                    .append('\n')
                    .append(text(cue.text()))
                    .append("\n\n");
        }
        return out.toString();
    }

    private static String header(String title) {
        return title.replaceAll("\\s+", " ").replace("-->", "->");
    }

    /** A cue's text with what WebVTT would take for markup written out. */
    static String text(String plain) {
        return plain.replaceAll("\\s+", " ")
                .strip()
                .replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;");
    }

    private static String time(long millis) {
        return String.format(
                Locale.ROOT,
                "%02d:%02d:%02d.%03d",
                millis / 3_600_000,
                millis / 60_000 % 60,
                millis / 1000 % 60,
                millis % 1000);
    }
}

package deferent.reel;

import deferent.motion.pairing.Refusal;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/** What a clip is written as. */
public enum Kind {
    /** H.264 by OpenH264: plays everywhere, knows no transparency. */
    MP4("mp4", "H.264", true, false, true),
    /** VP9 by libvpx; on a transparent ground with a second picture for the alpha. */
    WEBM("webm", "VP9", true, true, true),
    /** ProRes 4444, for an editing timeline; alpha where the ground is transparent. */
    MOV("mov", "ProRes 4444", false, true, true),
    /** Animated WebP by libwebp. */
    WEBP("webp", "animated WebP", false, true, true),
    /** GIF, 256 colours chosen from the whole clip. */
    GIF("gif", "GIF", false, false, true),
    /** Numbered PNG files in one zip file; needs no natives. */
    PNGS("zip", "PNG files", false, true, false);

    private final String ending;
    private final String words;
    private final boolean halved;
    private final boolean alpha;
    private final boolean natives;

    Kind(String ending, String words, boolean halved, boolean alpha, boolean natives) {
        this.ending = ending;
        this.words = words;
        this.halved = halved;
        this.alpha = alpha;
        this.natives = natives;
    }

    /** Without the dot: "mp4". */
    public String ending() {
        return ending;
    }

    /** For people: "H.264". */
    public String words() {
        return words;
    }

    /** Whether two by two pixels share one colour, so that both sizes must be even. */
    public boolean evenSizes() {
        return halved;
    }

    /** Whether the ground may be transparent. */
    public boolean alpha() {
        return alpha;
    }

    /** Whether it can be written only where {@link Natives} load. */
    public boolean needsNatives() {
        return natives;
    }

    /** Whether it can hold a title and a captions track. */
    public boolean film() {
        return this == MP4 || this == WEBM || this == MOV;
    }

    /** By a file's ending. */
    public static Kind of(String fileName) {
        String ending = fileName.substring(fileName.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
        return Arrays.stream(values())
                .filter(kind -> kind.ending.equals(ending))
                .findFirst()
                .orElseThrow(
                        () ->
                                new Refusal(
                                        "does not end as a clip does",
                                        fileName,
                                        "end it in "
                                                + Arrays.stream(values())
                                                        .map(kind -> "." + kind.ending)
                                                        .collect(Collectors.joining(", "))));
    }
}

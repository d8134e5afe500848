package deferent.take;

import deferent.motion.pairing.Refusal;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/** How the name of a file ends that patterns can be taken away in. */
public enum Ending {
    SVG(Family.PICTURE, "image/svg+xml", "picture that any vector program edits"),
    PNG(Family.PICTURE, "image/png", "picture in pixels"),
    PDF(Family.PRINT, "application/pdf", "sheet, booklet, cards or picture to print"),
    MP4(Family.CLIP, "video/mp4", "H.264 clip that plays everywhere"),
    WEBM(Family.CLIP, "video/webm", "VP9 clip, with alpha if transparent"),
    MOV(Family.CLIP, "video/quicktime", "ProRes 4444 clip for an editing timeline"),
    WEBP(Family.CLIP, "image/webp", "animated picture, with alpha if transparent"),
    GIF(Family.CLIP, "image/gif", "animated picture of few colours"),
    ZIP(Family.CLIP, "application/zip", "numbered PNG files of a clip"),
    HTML(Family.PAGE, "text/html", "page that plays by itself, without a network"),
    GLTF(Family.SPACE, "model/gltf+json", "moving model for 3-D programs"),
    GLB(Family.SPACE, "model/gltf-binary", "the same in one binary file"),
    CSV(Family.TIMING, "text/csv", "table of hands, heads, angles and pulls"),
    JSON(Family.TIMING, "application/json", "the same as JSON");

    /** Endings to which the same wishes apply. */
    public enum Family {
        PICTURE("Picture", "for posts, slides and drawing programs"),
        PRINT("Paper", "for students to hold"),
        CLIP("Clip", "for films and posts"),
        PAGE("Lesson page", "to play and scrub without a network"),
        SPACE("Model", "for 3-D programs"),
        TIMING("Table", "for music, lights and other programs");

        private final String title;
        private final String words;

        Family(String title, String words) {
            this.title = title;
            this.words = words;
        }

        public String key() {
            return name().toLowerCase(Locale.ROOT);
        }

        /** In a word or two: "Picture". */
        public String title() {
            return title;
        }

        /** What it is for: "for posts, slides and drawing programs". */
        public String words() {
            return words;
        }
    }

    private final Family family;
    private final String mediaType;
    private final String words;

    Ending(Family family, String mediaType, String words) {
        this.family = family;
        this.mediaType = mediaType;
        this.words = words;
    }

    public Family family() {
        return family;
    }

    public String mediaType() {
        return mediaType;
    }

    /** For people: "picture in pixels". */
    public String words() {
        return words;
    }

    /** Without the dot: "svg". */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** By a file's name. */
    public static Ending of(Path file) {
        String name = String.valueOf(file.getFileName());
        int dot = name.lastIndexOf('.');
        if (dot <= 0) {
            throw unknown("has no ending", file.toString());
        }
        return of(name.substring(dot + 1), file.toString());
    }

    /** By its {@link #key}. */
    public static Ending of(String key) {
        return of(key, key);
    }

    private static Ending of(String key, String where) {
        return Arrays.stream(values())
                .filter(ending -> ending.key().equals(key.toLowerCase(Locale.ROOT)))
                .findFirst()
                .orElseThrow(() -> unknown("ends in ." + key, where));
    }

    private static Refusal unknown(String what, String where) {
        return new Refusal(
                what + ", which nothing here writes",
                "file " + where,
                "end it in "
                        + Arrays.stream(values())
                                .map(ending -> "." + ending.key())
                                .collect(Collectors.joining(", ")));
    }
}

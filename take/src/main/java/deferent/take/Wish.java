package deferent.take;

import static deferent.take.Ending.Family.CLIP;
import static deferent.take.Ending.Family.PAGE;
import static deferent.take.Ending.Family.PICTURE;
import static deferent.take.Ending.Family.PRINT;
import static deferent.take.Ending.Family.SPACE;
import static deferent.take.Ending.Family.TIMING;

import deferent.motion.pairing.Refusal;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/** Something that may be wished of what is taken away, and the files it has a meaning for. */
public enum Wish {
    FORM(
            Kind.WORD,
            "Form",
            "moment, figure, poses, strip or exposure; of a PDF also sheet, booklet or cards",
            PICTURE,
            PRINT),
    CORD(
            Kind.WORD,
            "Tether",
            "ideal, figure or hand-path: as said, or what a cord makes of it with the figure or the hand"
                    + " path kept",
            PICTURE,
            CLIP,
            PAGE,
            SPACE,
            TIMING),
    VIEW(
            Kind.WORD,
            "Seen by",
            "from where: audience, performer or mirror",
            PICTURE,
            PRINT,
            CLIP,
            PAGE),
    TURN(Kind.NUMBER, "View turned by", "degrees the viewer has walked round", PICTURE, CLIP),
    LIFT(Kind.NUMBER, "View lifted by", "degrees the viewer has climbed", PICTURE, CLIP),
    AT(
            Kind.TEXT,
            "Moments",
            "moments as shares of the cycle, such as 0, 1/4 or 0,1/4,1/2",
            PICTURE),
    SIZE(Kind.WORD, "Size", "pixels: 1200, 1920x1080, or square, wide or tall", PICTURE, CLIP),
    DARK(Kind.YES, "Dark ground", "yes for a dark ground", PICTURE, CLIP),
    TRANSPARENT(Kind.YES, "Transparent", "yes for no ground at all", PICTURE, CLIP),
    CAPTION(Kind.YES, "Caption below", "no for nothing written below", PICTURE, CLIP),
    WITH(
            Kind.LAYERS,
            "Show besides",
            "what to show besides: body, labels, counts",
            PICTURE,
            CLIP,
            PAGE),
    WITHOUT(
            Kind.LAYERS,
            "Leave out",
            "what to leave out: trail, link, tether, hand, hand-path, centre",
            PICTURE,
            CLIP),
    SHUTTER(
            Kind.NUMBER,
            "Shutter",
            "seconds an exposure lasts, such as 1/2; unsaid, one cycle",
            PICTURE),
    LED(
            Kind.TEXT,
            "Blinking light",
            "flashes a second of a blinking light, with its share on: 200 or 200,30%",
            PICTURE),
    MOVING(Kind.YES, "Moving", "yes for an SVG that moves", PICTURE),
    FPS(
            Kind.WORD,
            "Frames a second",
            "frames a second: 23.976, 24, 25, 29.97, 30, 50, 59.94 or 60",
            CLIP),
    CYCLES(Kind.NUMBER, "Cycles", "how many cycles; unsaid, one", CLIP, TIMING),
    SECONDS(Kind.NUMBER, "Or seconds", "how long; as many cycles as fill it", CLIP),
    SLOW(Kind.WORD, "Speed", "speed: 1/2 is half as fast as spun", CLIP),
    CAPTIONS(Kind.YES, "Counts as captions", "no for no track with the counts", CLIP),
    PAPER(Kind.WORD, "Paper", "a4 or letter", PRINT),
    MIRRORED(Kind.YES, "Left-handed mirror", "yes for the left-handed mirror image", PRINT),
    CROSSINGS(Kind.YES, "What leads where", "no for no looking what leads where", PRINT),
    RATE(Kind.NUMBER, "Rows a second", "rows a second; unsaid, 100", TIMING);

    /** What is said for a wish. */
    public enum Kind {
        /** Yes or no. */
        YES,
        /** One of some words. */
        WORD,
        /** A number, or a fraction such as 1/2. */
        NUMBER,
        /** Anything it can read. */
        TEXT,
        /** Any of some words, with commas between. */
        LAYERS;

        public String key() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    private final Kind kind;
    private final String title;
    private final String means;
    private final Set<Ending.Family> families;

    Wish(Kind kind, String title, String means, Ending.Family... families) {
        this.kind = kind;
        this.title = title;
        this.means = means;
        this.families = Set.of(families);
    }

    public Kind kind() {
        return kind;
    }

    /** In a word or two: "Frames a second". */
    public String title() {
        return title;
    }

    /** For people. */
    public String means() {
        return means;
    }

    public boolean fits(Ending.Family family) {
        return families.contains(family);
    }

    /** As options and requests spell it: "fps". */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Those that have a meaning for a family of endings. */
    public static List<Wish> of(Ending.Family family) {
        return Arrays.stream(values()).filter(wish -> wish.fits(family)).toList();
    }

    static Wish named(String key) {
        return Arrays.stream(values())
                .filter(wish -> wish.key().equals(key))
                .findFirst()
                .orElseThrow(
                        () ->
                                new Refusal(
                                        "is nothing that can be wished",
                                        "\"" + key + "\"",
                                        "wish "
                                                + Arrays.stream(values())
                                                        .map(Wish::key)
                                                        .collect(Collectors.joining(", "))));
    }
}

package deferent.studio.take;

import static deferent.studio.take.Ending.Family.CLIP;
import static deferent.studio.take.Ending.Family.PAGE;
import static deferent.studio.take.Ending.Family.PICTURE;
import static deferent.studio.take.Ending.Family.PRINT;
import static deferent.studio.take.Ending.Family.SPACE;
import static deferent.studio.take.Ending.Family.TIMING;

import deferent.motion.pairing.Refusal;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/** Something that may be wished of what is taken away, and the files it has a meaning for. */
public enum Wish {
    FORM(
            "moment, figure, poses, strip or exposure; of a PDF also sheet, booklet or cards",
            PICTURE,
            PRINT),
    CORD(
            "ideal, light or hand: as said, or what a cord makes of it with the light or the hand's"
                    + " path kept",
            PICTURE,
            CLIP,
            PAGE,
            SPACE,
            TIMING),
    VIEW("from where: audience, performer or mirror", PICTURE, PRINT, CLIP, PAGE),
    TURN("degrees the viewer has walked round", PICTURE, CLIP),
    LIFT("degrees the viewer has climbed", PICTURE, CLIP),
    AT("moments as shares of the cycle, such as 0, 1/4 or 0,1/4,1/2", PICTURE),
    SIZE("pixels: 1200, 1920x1080, or square, wide or tall", PICTURE, CLIP),
    DARK("yes for a dark ground", PICTURE, CLIP),
    TRANSPARENT("yes for no ground at all", PICTURE, CLIP),
    CAPTION("no for nothing written below", PICTURE, CLIP),
    WITH("what to show besides: body, labels, counts", PICTURE, CLIP, PAGE),
    WITHOUT("what to leave out: trail, tie, tether, hand, hand-path, centre", PICTURE, CLIP),
    SHUTTER("seconds an exposure lasts, such as 1/2; unsaid, one cycle", PICTURE),
    LED("flashes a second of a blinking light, with its share on: 200 or 200,30%", PICTURE),
    MOVING("yes for an SVG that moves", PICTURE),
    FPS("frames a second: 23.976, 24, 25, 29.97, 30, 50, 59.94 or 60", CLIP),
    CYCLES("how many cycles; unsaid, one", CLIP, TIMING),
    SECONDS("how long; as many cycles as fill it", CLIP),
    SLOW("speed: 1/2 is half as fast as spun", CLIP),
    CAPTIONS("no for no track with the counts", CLIP),
    PAPER("a4 or letter", PRINT),
    MIRRORED("yes for the left-handed mirror image", PRINT),
    CROSSINGS("no for no looking what leads where", PRINT),
    RATE("rows a second; unsaid, 100", TIMING);

    private final String means;
    private final Set<Ending.Family> families;

    Wish(String means, Ending.Family... families) {
        this.means = means;
        this.families = Set.of(families);
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

package deferent.take;

import deferent.motion.pairing.Refusal;
import deferent.page.Layer;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Something that may be wished of what is taken away; an {@link Ending} says which it takes. */
public enum Wish {
    FORM(
            true,
            "Form",
            "moment, figure, poses, strip or exposure; of a PDF also sheet, booklet,"
                    + " cards, student or teacher",
            "moment",
            """
            moment    one moment
            figure    the figure alone
            poses     the figure with poses
            strip     moments side by side
            exposure  a long exposure
            """),
    CORD(
            false,
            "Tether",
            "ideal, figure, hand-path or closest: as said, or what a cord makes of it with the figure or"
                    + " the hand path kept, or as near as a practised hand comes",
            "ideal",
            """
            ideal      a rod, as said
            figure     a cord that keeps the figure
            hand-path  a cord that keeps the hand path
            closest    the closest figure that a practised hand draws
            """),
    VIEW(
            false,
            "Seen by",
            "from where: audience, performer or mirror",
            "audience",
            """
            audience   the audience
            performer  the performer
            mirror     a mirror
            """),
    TURN(Kind.NUMBER, false, "View turned by", "degrees the viewer has walked round", "0"),
    LIFT(Kind.NUMBER, false, "View lifted by", "degrees the viewer has climbed", "0"),
    AT(
            Kind.TEXT,
            true,
            "Moments",
            "moments as shares of the cycle, such as 0, 1/4 or 0,1/4,1/2",
            "",
            List.of(),
            "moment",
            "poses",
            "strip",
            "exposure"),
    SIZE(
            true,
            "Size",
            "pixels: 1200, 1920x1080, or square, wide or tall",
            "square",
            """
            square     square, 1080 pixels
            wide       wide, 1920 by 1080
            tall       tall, 1080 by 1920
            2160       square, 2160 pixels
            3840x2160  wide, 3840 by 2160
            """),
    DARK(Kind.YES, false, "Dark ground", "yes for a dark ground", "no"),
    TRANSPARENT(Kind.YES, true, "Transparent", "yes for no ground at all", "no"),
    OUTLINE(
            Kind.NUMBER,
            false,
            "Outline",
            "width of the outline that stands on any footage, thousandths of the shorter edge; 0 for"
                    + " none",
            "3"),
    CAPTION(Kind.YES, false, "Caption below", "no leaves out the words below", "yes"),
    WITH("Show besides", "what to show besides", Layer.BODY, Layer.LABELS, Layer.COUNTS),
    WITHOUT(
            "Leave out",
            "what to leave out",
            Layer.TRAIL,
            Layer.LINK,
            Layer.TETHER,
            Layer.HAND,
            Layer.HEAD,
            Layer.HAND_PATH,
            Layer.CENTRE),
    SHUTTER(
            Kind.NUMBER,
            true,
            "Shutter",
            "seconds an exposure lasts, such as 1/2; unsaid, one cycle",
            "",
            List.of(),
            "exposure"),
    LED(
            Kind.TEXT,
            true,
            "Blinking light",
            "flashes a second of a blinking light, with its share on: 200 or 200,30%",
            "",
            List.of(),
            "exposure"),
    MOVING(Kind.YES, true, "Moving", "yes for an SVG that moves", "no", List.of(), "moment"),
    FPS(Kind.WORD, true, "Frames a second", "frames a second, such as 23.976, 25 or 60", "60"),
    CYCLES(Kind.NUMBER, true, "Cycles", "how many cycles; unsaid, one", "1"),
    SECONDS(Kind.NUMBER, true, "Or seconds", "how long, by the nearest whole number of cycles", ""),
    SLOW(
            true,
            "Speed",
            "speed: 1/2 is half as fast as spun",
            "1",
            """
            1    as spun
            1/2  half
            1/4  a quarter
            1/8  an eighth
            2    twice
            """),
    CAPTIONS(
            Kind.YES,
            false,
            "Counts as captions",
            "no leaves out the track with the counts",
            "yes"),
    PAPER(true, "Paper", "a4 or letter", "a4", "a4 A4\nletter Letter"),
    LEFT_HANDED(
            Kind.YES,
            true,
            "Left-handed",
            "yes for the left-handed version: each hand does what the other did, mirrored",
            "no"),
    TRANSITIONS(
            Kind.YES,
            true,
            "What leads where",
            "no leaves out what leads where",
            "yes",
            List.of(),
            "sheet",
            "booklet"),
    RATE(Kind.NUMBER, true, "Rows a second", "rows a second; unsaid, 100", "100");

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
    private final boolean often;
    private final String title;
    private final String means;
    private final Offer usual;

    Wish(Kind kind, boolean often, String title, String means, String unsaid) {
        this(kind, often, title, means, unsaid, List.of());
    }

    /** Of one of the words in a table. */
    Wish(boolean often, String title, String means, String unsaid, String table, String... forms) {
        this(Kind.WORD, often, title, means, unsaid, Offer.Choice.table(table), forms);
    }

    Wish(String title, String means, Layer... layers) {
        this(
                Kind.LAYERS,
                false,
                title,
                means + ": " + Stream.of(layers).map(Layer::key).collect(Collectors.joining(", ")),
                "",
                Offer.Choice.layers(layers));
    }

    Wish(
            Kind kind,
            boolean often,
            String title,
            String means,
            String unsaid,
            List<Offer.Choice> choices,
            String... forms) {
        this.kind = kind;
        this.often = often;
        this.title = title;
        this.means = means;
        this.usual = new Offer(this, choices, unsaid, List.of(forms), List.of());
    }

    public Kind kind() {
        return kind;
    }

    /** Whether it is looked for often, or only now and then. */
    public boolean often() {
        return often;
    }

    /** In a word or two: "Frames a second". */
    public String title() {
        return title;
    }

    /** For people. */
    public String means() {
        return means;
    }

    /** As most endings take it. */
    public Offer usual() {
        return usual;
    }

    /** Whether something else than its choices may be said as well. */
    public boolean open() {
        return this == SIZE;
    }

    /** Another wish that it takes the place of. */
    public Optional<Wish> insteadOf() {
        return this == SECONDS ? Optional.of(CYCLES) : Optional.empty();
    }

    /** As options and requests spell it: "fps". */
    public String key() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
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

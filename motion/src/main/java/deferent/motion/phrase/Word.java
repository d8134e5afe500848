package deferent.motion.phrase;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The one list of words: how each is spelt, what it means, and what it takes when no size is said.
 * Hyphens, spaces, capitals and plural endings are not written here; {@link Spelling} forgives
 * them.
 */
enum Word {
    // Motions: hand path and spin law together.
    STATIC_SPIN(
            Kind.MOTION,
            "static spin",
            "the hand is still and the poi goes round it",
            "one turn a cycle, starting straight to the performer's left"),
    EXTENSION(
            Kind.MOTION,
            "extension",
            "hand and head go round together with the tether pointing outward",
            "hand radius one tether",
            "long-arm"),
    ISOLATION(
            Kind.MOTION,
            "isolation",
            "hand and head go round together on opposite sides of a centre that lies on the tether",
            "hand radius half a tether, so that hand and head share one circle; any other below the"
                    + " tether puts the centre elsewhere on the tether"),
    CAT_EYE(
            Kind.MOTION,
            "cat-eye",
            "one antispin turn to each turn of the hand: the head draws an ellipse",
            "hand radius half a tether, horizontal",
            "cateye",
            "cat eye"),
    LINEAR_EXTENSION(
            Kind.MOTION,
            "linear extension",
            "the cat-eye whose ellipse has collapsed to a line",
            "horizontal; its hand radius is always its tether"),
    LINEAR_ISOLATION(
            Kind.MOTION,
            "linear isolation",
            "the hand goes to and fro on a line and the poi turns once, so that the head runs on"
                    + " the line across",
            "hand line horizontal; it reaches one tether to either side always"),
    FLOWER(
            Kind.MOTION,
            "flower",
            "the hand goes round a circle while the poi turns a whole number of times; each loop"
                    + " is a petal",
            "four petals, antispin, diamond, hand radius one tether"),
    TRIQUETRA(
            Kind.MOTION,
            "triquetra",
            "the three-petal antispin flower",
            "hand radius one tether, a petal straight to the performer's left",
            "three-petal antispin"),
    HALF_AND_HALF(
            Kind.MOTION,
            "half-and-half flower",
            "a flower that is in-spin for half the cycle and antispin for the other half",
            "four petals, hand radius one tether",
            "half-and-half",
            "half and half"),
    PENDULUM(
            Kind.MOTION,
            "pendulum",
            "the hand is still; the head swings under gravity and comes back the same way",
            "amplitude a quarter turn to each side, about straight down"),
    CAP(
            Kind.MOTION,
            "CAP",
            "continuous assembly pattern: the hand comes and goes along an arc while the poi keeps"
                    + " turning one way, in-spin on the way out and antispin on the way back",
            "the lower half of a circle, hand radius one tether, the hand swinging as a raised"
                    + " cosine, the poi turning evenly two whole turns out and back",
            "continuous assembly pattern"),
    STALL(
            Kind.MOTION,
            "stall",
            "the head stops for an instant at the end of a swing; here the hand is still and the"
                    + " poi swings from stall to stall at the tempo of the phrase",
            "amplitude a quarter turn to each side, about straight down"),
    TOROID(
            Kind.MOTION,
            "toroid",
            "a flower whose plane itself turns",
            "the flower's own sizes, or a four-petal antispin; one turn of the plane a cycle, about"
                    + " upright, hand and poi together"),

    // Hand paths with the poi turning as said.
    POINT(Kind.MOTION, "point", "a still hand", "the poi turns once a cycle", "still hand"),
    CIRCLE(
            Kind.MOTION,
            "circle",
            "the hand goes round a circle, the poi turns as said",
            "hand radius one tether, the poi turns once"),
    ELLIPSE(
            Kind.MOTION,
            "ellipse",
            "the hand goes round an ellipse, the poi turns as said",
            "axes of one tether and half a tether from the centre, the poi turns once"),
    LINE(
            Kind.MOTION,
            "line",
            "the hand goes to and fro on a line, the poi turns as said",
            "one tether to either side, horizontal, the poi turns once"),
    ARC(
            Kind.MOTION,
            "arc",
            "the hand goes to and fro on an arc of a circle, the poi turns as said",
            "the lower half, hand radius one tether, the poi turns once"),
    POLYGON(
            Kind.MOTION,
            "polygon",
            "the hand walks a regular polygon, the poi turns as said",
            "four corners, one tether from the centre to each, the poi turns once"),
    TRIANGLE(Kind.MOTION, "triangle", "a polygon of three corners", "as a polygon"),
    SQUARE(Kind.MOTION, "square", "a polygon of four corners", "as a polygon"),
    PENTAGON(Kind.MOTION, "pentagon", "a polygon of five corners", "as a polygon"),
    HEXAGON(Kind.MOTION, "hexagon", "a polygon of six corners", "as a polygon"),
    OCTAGON(Kind.MOTION, "octagon", "a polygon of eight corners", "as a polygon"),
    LOOPS(
            Kind.MOTION,
            "loops",
            "a hand path given as circles added up: \"loops 1 of 30 cm plus -2 of 10 cm 45°\" goes"
                    + " round 30 cm once while it goes round 10 cm twice the other way, begun at"
                    + " 45°",
            "angles 0; the poi turns once"),

    // What kind of flower, and which way it stands.
    IN_SPIN(
            Kind.FLAG,
            "in-spin",
            "the poi turns the same way as the hand goes round",
            "",
            "inspin"),
    ANTISPIN(
            Kind.FLAG,
            "antispin",
            "the poi turns against the way the hand goes round",
            "",
            "anti-spin",
            "anti spin"),
    HORIZONTAL(Kind.FLAG, "horizontal", "lying along the plane's level axis: tilt 0", ""),
    VERTICAL(Kind.FLAG, "vertical", "standing along the plane's upright axis: tilt 90°", ""),
    DIAMOND(
            Kind.FLAG,
            "diamond",
            "a flower that reaches furthest straight to the performer's left, and so with four"
                    + " petals along the axes",
            ""),
    BOX(
            Kind.FLAG,
            "box",
            "a flower turned by half a petal, so that four petals stand on the diagonals",
            ""),
    PETALS(Kind.SIZE, "petals", "how many loops a flower has", "four", "petal"),
    TURNS(
            Kind.SIZE,
            "turns",
            "poi turns a cycle, below 0 against the hand; of a CAP also \"turns 1.5 out 0.5"
                    + " back\"",
            "what the motion's word says",
            "poi turns"),
    START(
            Kind.SIZE,
            "start",
            "which way the tether points when the cycle starts, in the motion's"
                    + " own plane, from the performer's left in the wall and floor planes and from the"
                    + " audience in the wheel plane",
            "what the motion's word says",
            "start angle"),
    STRETCHES(
            Kind.SIZE,
            "stretches",
            "poi turns by shares of the cycle: \"stretches 0.75 of 2.5 turns then 0.25 of -0.5"
                    + " turns\"; the turns sum to a whole number",
            ""),
    STALLING(
            Kind.FLAG,
            "stalling",
            "the poi comes to rest at the end of every stretch",
            "",
            "with stalls"),
    SWINGING(
            Kind.FLAG,
            "swinging",
            "the poi swings as a pendulum while the hand goes its way",
            "amplitude a quarter turn"),
    AMPLITUDE(
            Kind.SIZE,
            "amplitude",
            "how far a pendulum or stall swings to each side",
            "a quarter turn"),
    REST(Kind.SIZE, "rest", "where a swing hangs", "straight down, -90°"),
    TILT(
            Kind.SIZE,
            "tilt",
            "how far the figure as placed is turned from the way its word draws it,"
                    + " from the plane's level axis toward its upright one",
            "0"),
    HAND_RADIUS(
            Kind.SIZE,
            "hand radius",
            "from the centre to the hand: of a circle or arc its radius, of a polygon its corners,"
                    + " of a line its half length",
            "what the motion's word says",
            "radius",
            "hand circle"),
    HAND_START(
            Kind.SIZE,
            "hand start",
            "where the hand begins, with its poi turned along",
            "0: straight to the performer's left (wheel: to the audience)"),
    AXES(
            Kind.SIZE,
            "axes",
            "of an ellipse, from the centre along its tilt and across it:"
                    + " \"axes 50 cm by 20 cm\"; below 0 goes the other way round",
            ""),
    MIDDLE(
            Kind.SIZE,
            "middle",
            "direction of an arc's middle from its centre",
            "-90°, straight" + " down"),
    SWEEP(Kind.SIZE, "sweep", "of an arc, from the middle to either end", "90°"),
    CORNERS(Kind.SIZE, "corners", "how many corners a polygon has", "four", "corner", "sided"),

    // Where it is.
    TETHER(
            Kind.SIZE,
            "tether",
            "hand to head; before \"vs\" the first hand's, after it the"
                    + " second's, after a comma at the end both hands'",
            "60 cm"),
    WALL(Kind.FLAG, "wall", "the plane that is upright and faces the audience", "", "wall plane"),
    WHEEL(
            Kind.FLAG,
            "wheel",
            "the plane that is upright and runs front to back",
            "",
            "wheel plane"),
    FLOOR(Kind.FLAG, "floor", "the level plane", "", "floor plane"),
    TIP(Kind.SIZE, "tip", "how far the plane leans about its own level axis", "0", "tipped"),
    SWIVEL(
            Kind.SIZE,
            "swivel",
            "how far the plane is turned about the upright, positive to the performer's left",
            "0",
            "swivelled"),
    CENTRE(
            Kind.SIZE,
            "centre",
            "where the motion's centre lies: \"centre 10 cm left 20 cm up\""
                    + " moves it from where it usually is; \"centre at 0 cm 10 cm 34 cm\" puts it left, up"
                    + " and forward of the breastbone",
            "breastbone height, 30 cm before the body, in planes a hand's breadth apart",
            "center"),
    DEPTH(
            Kind.SIZE,
            "depth",
            "how far before the breastbone the centre lies",
            "30 cm, in the wall plane a hand's breadth apart"),
    PLANE_TURNS(
            Kind.SIZE,
            "plane turns",
            "whole turns of a toroid's plane a cycle",
            "one",
            "plane turn"),
    UPRIGHT(
            Kind.FLAG,
            "about upright",
            "a toroid's plane turns about its upright axis",
            "",
            "upright"),
    LEVEL(Kind.FLAG, "about level", "a toroid's plane turns about its level axis", "", "level"),
    POI_ALONE(Kind.FLAG, "poi alone", "the poi's plane turns while the hand keeps to its own", ""),
    CYCLES(Kind.SIZE, "cycles", "cycles of this hand in one common cycle", "one", "cycle"),
    RIDING(
            Kind.FLAG,
            "riding",
            "the hand goes where the other hand's head goes: \"CAP riding"
                    + " pendulum\", or \"pendulum vs CAP riding\"",
            "",
            "rides"),

    // Of the whole pairing.
    VS(
            Kind.JOIN,
            "vs",
            "left or first hand does what stands before it while the other does what"
                    + " stands after it",
            "",
            "vs.",
            "versus",
            "against"),
    TOGETHER(Kind.SHARED, "together", "the two cycles are in phase", "unsaid", "together time"),
    SPLIT(Kind.SHARED, "split", "the two cycles are half a turn apart", "", "split-time"),
    QUARTER(Kind.SHARED, "quarter", "the two cycles are a quarter turn apart", "", "quarter-time"),
    SAME(Kind.SHARED, "same direction", "both props turn the same way", "unsaid", "same"),
    OPPOSITE(
            Kind.SHARED, "opposite direction", "the props turn against each other", "", "opposite"),
    SAME_TIME(Kind.SHARED, "same time", "together, same direction", ""),
    OPPOSITES(Kind.SHARED, "opposites", "together, opposite direction", ""),
    TIMING(
            Kind.SHARED,
            "timing",
            "how far the right hand's cycle is ahead, as a share of its" + " cycle: \"timing 1/3\"",
            "0, together"),
    CLOCKWISE(
            Kind.SHARED,
            "clockwise",
            "the left hand goes clockwise as the performer sees it",
            "unsaid"),
    COUNTER_CLOCKWISE(
            Kind.SHARED,
            "counter-clockwise",
            "the left hand goes counter-clockwise as the performer sees it",
            "",
            "anticlockwise",
            "anti-clockwise"),
    TEMPO(
            Kind.SHARED,
            "tempo",
            "hand cycles a minute, or poi beats where both hands are still",
            "60, or what a pendulum that nobody drives asks"),

    // Words that say whose a size is.
    LEFT(Kind.OWNER, "left", "what follows is said of the first hand", "", "left hand"),
    RIGHT(Kind.OWNER, "right", "what follows is said of the second hand", "", "right hand"),
    BOTH(Kind.OWNER, "both", "what follows is said of both hands", "", "both hands"),

    // Words that carry no meaning of their own.
    AND(Kind.FILLER, "and", "", ""),
    WITH(Kind.FILLER, "with", "", ""),
    OF(Kind.FILLER, "of", "", ""),
    IN(Kind.FILLER, "in", "", ""),
    ON(Kind.FILLER, "on", "", ""),
    AT(Kind.FILLER, "at", "", ""),
    A(Kind.FILLER, "a", "", ""),
    AN(Kind.FILLER, "an", "", ""),
    THE(Kind.FILLER, "the", "", ""),

    // Words that are explained, and said some other way.
    WEAVE(
            Kind.EXPLAINED,
            "weave",
            "a pattern that passes from one side of the body to the other;"
                    + " it carries the hand across its own plane, which no one motion in one plane does, so"
                    + " it is not one phrase: say each side's beats as a static spin in the wheel plane"
                    + " with its centre to the left or to the right",
            ""),
    HYBRID(Kind.EXPLAINED, "hybrid", "two hands that do different motions; said as \"A vs B\"", ""),
    HEAD_ORBITING(
            Kind.EXPLAINED,
            "head-orbiting hybrid",
            "one poi's head path has the size and"
                    + " shape of the other hand's path, so one seems to drive the other; said as \"A vs"
                    + " B\" and shown by the link reading",
            ""),
    TRANSITION(
            Kind.EXPLAINED,
            "transition",
            "passing from one pattern to another without breaking"
                    + " the flow; it takes two phrases",
            ""),
    POI(Kind.EXPLAINED, "poi", "the prop: a weight on a tether", ""),
    HEAD(Kind.EXPLAINED, "head", "the weight at the tether's end", ""),
    HANDLE(Kind.EXPLAINED, "handle", "where the hand holds the tether", ""),
    BEAT(Kind.EXPLAINED, "beat", "one full turn of a poi", ""),
    PLANE(Kind.EXPLAINED, "plane", "where a motion lies: wall, wheel or floor", ""),
    DIRECTION(
            Kind.EXPLAINED,
            "direction",
            "same, both props turn the same way; opposite, against" + " each other",
            "same"),
    MOTION(Kind.EXPLAINED, "motion", "what one hand and its poi do over one cycle", ""),
    PAIRING(
            Kind.EXPLAINED,
            "pairing",
            "two motions with their timing, direction and placement",
            ""),
    PHRASE(Kind.EXPLAINED, "phrase", "a pairing written in trade words, on one line", ""),
    ROOT(Kind.EXPLAINED, "root", "in a linked pairing, the hand whose head leads", ""),
    RIDER(
            Kind.EXPLAINED,
            "rider",
            "in a linked pairing, the hand that goes where the root's head" + " goes",
            ""),
    LINK(
            Kind.EXPLAINED,
            "link",
            "the tie between the root's head path and the rider's hand path",
            "");

    /** What a word does in a phrase. */
    enum Kind {
        /** Names a motion. */
        MOTION,
        /** Qualifies one hand's motion; no number. */
        FLAG,
        /** Takes a number and belongs to one hand. */
        SIZE,
        /** Belongs to the whole pairing. */
        SHARED,
        JOIN,
        OWNER,
        FILLER,
        /** Explained, but not said in a phrase. */
        EXPLAINED
    }

    private static final Map<String, Word> BY_KEY = new LinkedHashMap<>();

    static {
        for (Word word : values()) {
            for (String spelling : word.spellings()) {
                BY_KEY.putIfAbsent(Spelling.key(spelling), word);
            }
        }
    }

    private final Kind kind;
    private final String said;
    private final String means;
    private final String sizesUnsaid;
    private final List<String> also;

    Word(Kind kind, String said, String means, String sizesUnsaid, String... also) {
        this.kind = kind;
        this.said = said;
        this.means = means;
        this.sizesUnsaid = sizesUnsaid;
        this.also = List.of(also);
    }

    Kind kind() {
        return kind;
    }

    /** As it is written. */
    String said() {
        return said;
    }

    String means() {
        return means;
    }

    /** What it takes when nothing else is said; may be empty. */
    String sizesUnsaid() {
        return sizesUnsaid;
    }

    List<String> also() {
        return also;
    }

    List<String> spellings() {
        List<String> all = new ArrayList<>();
        all.add(said);
        all.addAll(also);
        return all;
    }

    /** The word of that {@link Spelling#key}, a plural ending forgiven. */
    static Optional<Word> spelt(String key) {
        Word word = BY_KEY.get(key);
        if (word == null && key.endsWith("s")) {
            word = BY_KEY.get(key.substring(0, key.length() - 1));
        }
        if (word == null && key.endsWith("es")) {
            word = BY_KEY.get(key.substring(0, key.length() - 2));
        }
        return Optional.ofNullable(word);
    }

    /** Whether it names a hand path alone, with the poi turning as said. */
    boolean path() {
        return EnumSet.range(POINT, LOOPS).contains(this);
    }

    /** Whether it names a polygon. */
    boolean polygon() {
        return EnumSet.range(POLYGON, OCTAGON).contains(this);
    }

    // Sizes and qualifiers that every hand takes.
    static final Set<Word> PLACED =
            EnumSet.of(
                    TETHER,
                    WALL,
                    WHEEL,
                    FLOOR,
                    TIP,
                    SWIVEL,
                    CENTRE,
                    DEPTH,
                    PLANE_TURNS,
                    UPRIGHT,
                    LEVEL,
                    POI_ALONE,
                    CYCLES,
                    RIDING);
    private static final Set<Word> SPUN =
            EnumSet.of(TURNS, START, STRETCHES, STALLING, SWINGING, AMPLITUDE, REST);

    /** The sizes and qualifiers that can be said with this motion. */
    Set<Word> takes() {
        Set<Word> all = EnumSet.copyOf(PLACED);
        if (path()) {
            all.addAll(SPUN);
        }
        if (polygon()) {
            all.add(CORNERS);
        }
        all.addAll(
                switch (this) {
                    case STATIC_SPIN -> List.of(TURNS, START, STRETCHES, STALLING);
                    case EXTENSION, ISOLATION -> List.of(HAND_RADIUS, HAND_START);
                    case CAT_EYE ->
                            List.of(
                                    HAND_RADIUS,
                                    HORIZONTAL,
                                    VERTICAL,
                                    TILT,
                                    START,
                                    ANTISPIN,
                                    HAND_START);
                    case LINEAR_EXTENSION -> List.of(HORIZONTAL, VERTICAL, TILT, START, HAND_START);
                    case LINEAR_ISOLATION -> List.of(HORIZONTAL, VERTICAL, TILT);
                    case FLOWER, TOROID ->
                            List.of(
                                    HAND_RADIUS,
                                    PETALS,
                                    TURNS,
                                    IN_SPIN,
                                    ANTISPIN,
                                    BOX,
                                    DIAMOND,
                                    TILT,
                                    START,
                                    STALLING,
                                    HAND_START);
                    case TRIQUETRA ->
                            List.of(
                                    HAND_RADIUS,
                                    ANTISPIN,
                                    BOX,
                                    DIAMOND,
                                    TILT,
                                    START,
                                    STALLING,
                                    HAND_START);
                    case HALF_AND_HALF ->
                            List.of(HAND_RADIUS, PETALS, TILT, START, STALLING, HAND_START);
                    case PENDULUM -> List.of(AMPLITUDE, REST, TILT);
                    case STALL -> List.of(AMPLITUDE, START, TILT);
                    case CAP ->
                            List.of(
                                    HAND_RADIUS,
                                    TURNS,
                                    START,
                                    STRETCHES,
                                    STALLING,
                                    TILT,
                                    MIDDLE,
                                    SWEEP);
                    case ARC -> List.of(HAND_RADIUS, TILT, MIDDLE, SWEEP);
                    case POINT -> List.<Word>of();
                    case CIRCLE -> List.of(HAND_RADIUS, HAND_START, PETALS, IN_SPIN, ANTISPIN);
                    case ELLIPSE -> List.of(AXES, HORIZONTAL, VERTICAL, TILT);
                    case LINE -> List.of(HAND_RADIUS, HORIZONTAL, VERTICAL, TILT);
                    case POLYGON, TRIANGLE, SQUARE, PENTAGON, HEXAGON, OCTAGON ->
                            List.of(HAND_RADIUS, HAND_START, TILT);
                    default -> List.<Word>of();
                });
        return all;
    }

    /** Every spelling of the words of these kinds, for offering near ones. */
    static List<String> spellingsOf(Set<Kind> kinds) {
        return Arrays.stream(values())
                .filter(w -> kinds.contains(w.kind))
                .flatMap(w -> w.spellings().stream())
                .toList();
    }
}

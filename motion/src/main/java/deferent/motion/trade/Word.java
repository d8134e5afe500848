package deferent.motion.trade;

import deferent.motion.pairing.Form;
import deferent.motion.pairing.HandPath;
import deferent.motion.pairing.Measure;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * The words of a phrase that name no motion, one row each: how it is spelt, what it means, what
 * stands with it, and what it takes when unsaid. Hyphens, spaces, capitals and plural endings are
 * not written here; {@link Spelling} forgives them.
 */
public final class Word implements Comparable<Word> {
    /** What a word does in a phrase. */
    public enum Kind {
        /** Qualifies one hand's motion; no number. */
        FLAG,
        /** Takes a number and belongs to one hand. */
        SIZE,
        /** What stands after a motion's own word. */
        OWN,
        /** Belongs to the whole pairing. */
        SHARED,
        JOIN,
        OWNER,
        /** Joins the hands where nothing else does, and else parts words. */
        AND,
        FILLER,
        /** Explained, and passed over in a phrase. */
        ASIDE,
        /** Explained, but not said in a phrase; what is offered instead stands in its row. */
        EXPLAINED
    }

    /** What stands with a word. */
    public enum Measured {
        NOTHING,
        COUNT,
        LENGTH,
        /** A length, or a share of the hand's own tether. */
        TETHERS,
        ANGLE,
        TURNS,
        STRETCHES,
        CENTRE,
        AXES,
        LOOPS,
        TEMPO;

        private static Measured of(Measure.Unit unit) {
            return switch (unit) {
                case LENGTH -> TETHERS;
                case ANGLE -> ANGLE;
                case WHOLE, SHARE -> COUNT;
            };
        }
    }

    private static final List<Word> ALL = new ArrayList<>();
    private static final Map<String, Word> BY_KEY = new HashMap<>();

    public static final Word TOROID =
            new Word(
                    Kind.FLAG,
                    "toroid",
                    "a flower whose plane itself turns",
                    "the flower's own sizes, or a four-petal antispin; one turn of the plane a cycle, about"
                            + " upright, hand and poi together");
    // What kind of flower, and which way it stands.
    public static final Word IN_SPIN =
            flag("in-spin", "the poi turns the same way as the hand goes round", "inspin");
    public static final Word ANTISPIN =
            flag(
                    "antispin",
                    "the poi turns against the way the hand goes round",
                    "anti-spin",
                    "anti spin");
    public static final Word HORIZONTAL =
            flag("horizontal", "lying along the plane's level axis: tilt 0");
    public static final Word VERTICAL =
            flag("vertical", "standing along the plane's upright axis: tilt 90°");
    public static final Word DIAGONAL = flag("diagonal", "halfway between the two: tilt 45°");
    public static final Word DIAMOND =
            flag(
                    "diamond",
                    "a flower that reaches furthest straight to the performer's left, and so with "
                            + "four petals along the axes",
                    "diamond mode");
    public static final Word BOX =
            flag(
                    "box",
                    "a flower turned by half a petal, so that four petals stand on the diagonals",
                    "box mode",
                    "square mode");
    public static final Word PETALS =
            new Word(
                    Measured.COUNT,
                    "petals",
                    "how many loops a flower has; of a CAP those of the flower that it goes along"
                            + " a part of, so that it sweeps 720° over their number",
                    "four",
                    "petal");
    public static final Word TURNS =
            new Word(
                    Measured.TURNS,
                    "turns",
                    "poi turns a cycle, below 0 against the hand; of a CAP also \"turns 0.5 out "
                            + "1.5 back\"",
                    "what the motion's word says",
                    "poi turns");
    public static final Word START =
            new Word(
                    Measured.ANGLE,
                    "start",
                    "which way the tether points when the cycle starts, or would if a rate that is "
                            + "eased there changed at once, in the motion's own plane, from the "
                            + "performer's left in the wall and floor planes and from the audience in "
                            + "the wheel plane",
                    "what the motion's word says",
                    "start angle");
    public static final Word STRETCHES =
            new Word(
                    Measured.STRETCHES,
                    "stretches",
                    "poi turns by shares of the cycle: \"stretches 0.75 of 2.5 turns then 0.25 of "
                            + "-0.5 turns\"; the turns sum to a whole number",
                    "");
    public static final Word STALLING =
            flag("stalling", "the poi comes to rest at the end of every stretch", "with stalls");
    public static final Word EASE =
            new Word(
                    Measured.COUNT,
                    "ease",
                    "share of the cycle over which a poi that turns in stretches goes from one rate"
                            + " into the next, no longer than either stretch: \"ease 1/8\"; \"ease 0\""
                            + " changes at once, which no cord can do",
                    "1/8",
                    "easing");
    public static final Word SWINGING =
            new Word(
                    Kind.FLAG,
                    "swinging",
                    "the poi swings as a pendulum while the hand goes its way",
                    "amplitude a quarter turn");
    public static final Word AMPLITUDE =
            new Word(
                    Measured.ANGLE,
                    "amplitude",
                    "how far a pendulum or stall swings to each side",
                    "a quarter turn");
    public static final Word REST =
            new Word(
                    Measured.ANGLE,
                    "rest",
                    "where a swing hangs; one about a still hand hangs straight down",
                    "straight down, -90°");
    public static final Word TILT =
            new Word(
                    Measured.ANGLE,
                    "tilt",
                    "how far the figure as placed is turned from the way its word draws it, from "
                            + "the plane's level axis toward its upright one",
                    "0",
                    "tilted",
                    "rotated",
                    "rotated by");
    public static final Word HAND_RADIUS =
            new Word(
                    Measured.TETHERS,
                    "hand radius",
                    "from the centre to the hand: of a circle or arc its radius, of a polygon its "
                            + "corners, of a line its half length",
                    "what the motion's word says",
                    "radius",
                    "hand circle");
    public static final Word HAND_START =
            new Word(
                    Measured.ANGLE,
                    "hand start",
                    "where the hand begins, with its poi turned along",
                    "0: straight to the performer's left (wheel: to the audience)");
    public static final Word AXES =
            new Word(
                    Measured.AXES,
                    "axes",
                    "of an ellipse, from the centre along its tilt and across it: \"axes 50 cm by "
                            + "20 cm\"; below 0 goes the other way round",
                    "");

    // Sizes that only one form of hand path has come with that form.
    static {
        for (Form form : HandPath.forms()) {
            for (Measure m : form.sizes()) {
                if (!m.means().isEmpty()) {
                    new Word(
                            Measured.of(m.unit()),
                            m.word(),
                            m.means(),
                            m.unsaidInWords(),
                            m.also().toArray(String[]::new));
                }
            }
        }
    }

    /** How far an arc goes to either side. */
    public static final Word SWEEP = spelt("sweep").orElseThrow();

    // Where it is.
    public static final Word TETHER =
            new Word(
                    Measured.LENGTH,
                    "tether",
                    "hand to head; before \"vs\" the first hand's, after it the second's, after a "
                            + "comma at the end both hands'",
                    "60 cm");
    public static final Word WALL =
            flag("wall", "the plane that is upright and faces the audience", "wall plane");
    public static final Word WHEEL =
            flag("wheel", "the plane that is upright and runs front to back", "wheel plane");
    public static final Word FLOOR =
            flag("floor", "the level plane", "floor plane", "horizontal plane", "level plane");
    public static final Word TIP =
            new Word(
                    Measured.ANGLE,
                    "tip",
                    "how far the plane leans about its own level axis",
                    "0",
                    "tipped");
    public static final Word SWIVEL =
            new Word(
                    Measured.ANGLE,
                    "swivel",
                    "how far the plane is turned about the upright, positive to the performer's left",
                    "0",
                    "swivelled");
    public static final Word CENTRE =
            new Word(
                    Measured.CENTRE,
                    "centre",
                    "where the motion's centre lies: \"centre 10 cm left 20 cm up\" moves it from "
                            + "where it usually is; \"centre at 0 cm 10 cm 34 cm\" puts it left, up and "
                            + "forward of the breastbone",
                    "breastbone height, 30 cm before the body, in planes a hand's breadth apart",
                    "center");
    public static final Word DEPTH =
            new Word(
                    Measured.LENGTH,
                    "depth",
                    "how far before the breastbone the centre lies",
                    "30 cm, in the wall plane a hand's breadth apart");
    public static final Word AT_SHOULDER =
            flag(
                    "at the shoulder",
                    "the centre lies straight before the performer's own shoulder joint, as near "
                            + "as a bent arm holds a fist: 22 cm to that hand's side of the "
                            + "breastbone, 8 cm above it and 10 cm forward, for a stature of 170 cm",
                    "at shoulder",
                    "by the shoulder",
                    "shoulder");
    public static final Word LEFT_SIDE =
            flag(
                    "left side",
                    "beside the body on the performer's left, in the wheel plane unless another is"
                            + " said: 36 cm off the middle, the left hand's plane 8 cm further",
                    "on the left side",
                    "left of the body",
                    "left of",
                    "to the left");
    public static final Word RIGHT_SIDE =
            flag(
                    "right side",
                    "beside the body on the performer's right, in the wheel plane unless another is"
                            + " said: 36 cm off the middle, the right hand's plane 8 cm further",
                    "on the right side",
                    "right of the body",
                    "right of",
                    "to the right");
    public static final Word BEHIND =
            flag(
                    "behind",
                    "behind the head, in the wall plane unless another is said, the arm bent over"
                            + " its shoulder: 44 cm above the breastbone and 36 cm behind it");
    public static final Word OVERHEAD =
            flag(
                    "overhead",
                    "over the crown, in the floor plane unless another is said: 58 cm above the"
                            + " breastbone, the left hand's plane 8 cm higher",
                    "over the head",
                    "above the head");
    public static final Word BETWEEN_ARMS =
            flag(
                    "between the arms",
                    "straight ahead, in the wheel plane unless another is said, so far off that the"
                            + " head passes the breastbone by 15 cm; arms reach that far only where the"
                            + " tether is shorter than they are",
                    "between arms");
    public static final Word BESIDE =
            new Word(
                    Measured.LENGTH,
                    "beside",
                    "how far from the middle a weave's plane is on the hand's own side; across it"
                            + " goes a hand's breadth further, outside the other hand",
                    "28 cm");
    public static final Word PLANE_TURNS =
            new Word(
                    Measured.COUNT,
                    "plane turns",
                    "whole turns of a toroid's plane a cycle",
                    "one",
                    "plane turn");
    public static final Word UPRIGHT =
            flag("about upright", "a toroid's plane turns about its upright axis", "upright");
    public static final Word LEVEL =
            flag("about level", "a toroid's plane turns about its level axis", "level");
    public static final Word POI_ALONE =
            flag("poi alone", "the poi's plane turns while the hand keeps to its own");
    public static final Word CYCLES =
            new Word(
                    Measured.COUNT,
                    "cycles",
                    "cycles of this hand in one common cycle",
                    "one",
                    "cycle");
    public static final Word RIDING =
            flag(
                    "riding",
                    "the hand goes where the other hand's head goes: \"CAP riding pendulum\", or "
                            + "\"pendulum vs CAP riding\"",
                    "rides");

    // Of the whole pairing.
    public static final Word VS =
            new Word(
                    Kind.JOIN,
                    "vs",
                    "left or first hand does what stands before it while the other does what "
                            + "stands after it",
                    "",
                    "v",
                    "versus",
                    "against",
                    "x");
    public static final Word AND =
            new Word(
                    Kind.AND,
                    "and",
                    "between two motions the same as \"vs\", and so are \"with\", \"&\", \"/\" and "
                            + "a comma; elsewhere it says nothing",
                    "",
                    "with",
                    "w");
    public static final Word TOGETHER =
            new Word(
                    Kind.SHARED,
                    "together",
                    "the two cycles are in phase",
                    "unsaid",
                    "together time",
                    "in phase",
                    "in sync");
    public static final Word SPLIT =
            shared(
                    "split",
                    "the two cycles are half a turn apart",
                    "split-time",
                    "out of phase",
                    "out of sync");
    public static final Word QUARTER =
            shared("quarter", "the two cycles are a quarter turn apart", "quarter-time");
    public static final Word SAME =
            new Word(
                    Kind.SHARED,
                    "same direction",
                    "both props turn the same way",
                    "unsaid",
                    "same",
                    "same way");
    public static final Word OPPOSITE =
            shared(
                    "opposite direction",
                    "the props turn against each other",
                    "opposite",
                    "opposing",
                    "opposite way");

    // Words that stand for two others; what they leave unsaid may be said beside them.
    static {
        both("same time", "together; and same direction, unless opposite is said", TOGETHER);
        both("parallel", "together, same direction", TOGETHER, SAME);
        both("opposites", "opposite direction; and together, unless a timing is said", OPPOSITE);
        both("TS", "together, same direction", TOGETHER, SAME);
        both("TO", "together, opposite direction", TOGETHER, OPPOSITE);
        both("SS", "split time, same direction", SPLIT, SAME);
        both("SO", "split time, opposite direction", SPLIT, OPPOSITE);
        both("QS", "quarter time, same direction", QUARTER, SAME);
        both("QO", "quarter time, opposite direction", QUARTER, OPPOSITE);
    }

    public static final Word TIMING =
            new Word(
                    Kind.SHARED,
                    Measured.COUNT,
                    "timing",
                    "how far the right hand's cycle is ahead, as a share of its cycle: \"timing 1/3\"",
                    "0, together");
    public static final Word CLOCKWISE =
            new Word(
                    Kind.SHARED,
                    "clockwise",
                    "the hand it stands with goes clockwise as the performer sees it; after a "
                            + "comma at the end, the left hand does",
                    "unsaid",
                    "cw");
    public static final Word COUNTER_CLOCKWISE =
            shared(
                    "counter-clockwise",
                    "as clockwise, the other way round",
                    "ccw",
                    "acw",
                    "anticlockwise",
                    "anti-clockwise");
    public static final Word TEMPO =
            new Word(
                    Kind.SHARED,
                    Measured.TEMPO,
                    "tempo",
                    "hand cycles a minute, or poi beats of a weave or where both hands are still",
                    "60, or what a pendulum that nobody drives asks",
                    "cycles a minute",
                    "cycles per minute");

    public static final Word STACKED =
            shared(
                    "stacked",
                    "one centre above the other: the left hand's half its tether higher, the right "
                            + "hand's half its tether lower; with no motion said, both do a static spin",
                    "stack");
    public static final Word MIRRORED =
            shared(
                    "mirrored",
                    "all of it as a mirror shows it: what the left hand did the right one does, on "
                            + "the other side of the body",
                    "mirror",
                    "mirror image");
    public static final Word TURNING_ABOUT =
            shared(
                    "turning about",
                    "the performer turns half round to the left in the second quarter of the common"
                            + " cycle and back in the last, while the poi go on where they are in the"
                            + " room");
    public static final Word REVERSED =
            shared(
                    "reversed",
                    "both props go the other way round: counter-clockwise where it was clockwise",
                    "reverse",
                    "backwards",
                    "in reverse");

    // Words that say whose a motion or a size is.
    public static final Word LEFT =
            owner("left", "the left hand does it, or has that size", "left hand", "lh", "l");
    public static final Word RIGHT =
            owner("right", "the right hand does it, or has that size", "right hand", "rh", "r");
    public static final Word BOTH = owner("both", "both hands do it", "both hands");

    // Words that are explained, and said some other way. What each means goes on after "is".
    public static final Word TRANSITION =
            explained(
                    "transition",
                    "passing from one pattern to another without breaking the flow; it takes two "
                            + "phrases, one for each pattern",
                    Instead.of("vs", ""),
                    "transitioning to",
                    "into");
    public static final Word THEN =
            explained(
                    "then",
                    "the word between two patterns of a set; a phrase is one pattern",
                    Instead.of(""),
                    "followed by",
                    "and then");
    public static final Word LASTING =
            explained(
                    "for",
                    "said of how long a pattern is kept, which belongs to a set; a phrase is one "
                            + "pattern without an end",
                    Instead.of(""));
    public static final Word PHASE =
            explained(
                    "phase",
                    "an angle at which a tether starts; between the hands it is their timing",
                    (number, rest) ->
                            number.isPresent()
                                    ? List.of(
                                            "start " + Amounts.number(number.getAsDouble()) + "°",
                                            "")
                                    : List.of("start 90°", "split time", ""));
    public static final Word HIGHER =
            explained(
                    "above",
                    "higher than the other or than usual; say by how much its centre lies up",
                    Instead.of("centre 30 cm up", ""),
                    "higher",
                    "high",
                    "at head height",
                    "head height",
                    "over");
    public static final Word LOWER =
            explained(
                    "below",
                    "lower than the other or than usual; say by how much its centre lies down",
                    Instead.of("centre 30 cm down", ""),
                    "lower",
                    "low",
                    "under",
                    "underneath",
                    "waist",
                    "at the waist",
                    "waist height",
                    "hip",
                    "hips",
                    "hip height");
    public static final Word FLOWERS =
            explained(
                    "any flower",
                    "a kind of motion of many petals, in-spin or antispin; which one is not said",
                    Instead.of("four-petal antispin", "triquetra", "four-petal in-spin"));

    static {
        explained(
                "meteor",
                "two heads on one cord; here each hand holds a cord of its own",
                Instead.of("static spin vs static spin, split time", "static spin"),
                "meteor hammer");
        explained(
                "orbital",
                "a tangle, two cords that wrap about each other, which is not modelled",
                Instead.of("isolation vs isolation, split time", "isolation"),
                "tangle",
                "hyperloop",
                "tethered orbital");
        explained(
                "airwrap",
                "a wrap in the air, two cords that wrap about each other and unwind, which is not "
                        + "modelled",
                Instead.of("extension vs extension, opposites", "extension"));
        explained(
                "wrap",
                "a cord that winds itself about an arm, a leg or the body, which is not modelled",
                Instead.of("stall vs stall", "stall"),
                "body wrap",
                "arm wrap",
                "leg wrap",
                "neck wrap",
                "wraparound");
        explained(
                "toss",
                "a thrown poi, which is not modelled: here a hand always holds its poi",
                Instead.of("stall vs stall", "stall"),
                "throw",
                "release",
                "juggle",
                "juggling");
        explained(
                "contact",
                "rolling the poi on the body, which is not modelled",
                Instead.of("pendulum vs pendulum", "pendulum"),
                "contact roll",
                "body roll",
                "chest roll");
        explained(
                "body turn",
                "a turn of the performer, which belongs to a set; a phrase is one pattern, faced one "
                        + "way",
                Instead.of(""),
                "with a turn",
                "with turns",
                "turning",
                "while turning",
                "turning around",
                "turnaround",
                "pirouette",
                "walking",
                "while walking");
        explained(
                "behind the head",
                "not in front of the body: the arm is bent over its shoulder and the poi turns behind"
                        + " the back, in the wall plane, which is said as \"behind\"; a windmill"
                        + " passes from before the head to behind it",
                Instead.of("behind", ""),
                "behind the back",
                "behind your back",
                "behind the body");
        explained(
                "half time",
                "two things: half of a cycle apart is split time, half as fast is a tempo",
                Instead.of("split time", "tempo 30"),
                "half timing");
        explained(
                "Hz",
                "turns a second, which is said as a tempo, a minute",
                (number, rest) ->
                        Instead.turnsAMinute(
                                number.stream().map(hertz -> 60 * hertz).findFirst(), rest),
                "hertz");
        explained(
                "half speed",
                "half as fast, which is said as a tempo; unsaid it is 60",
                Instead.of("tempo 30"));
        explained(
                "double time",
                "twice as fast, which is said as a tempo; unsaid it is 60",
                Instead.of("tempo 120"),
                "double speed");
        explained(
                "slow",
                "no number; what is offered is the slowest at which its cords stay taut as drawn, "
                        + "or 30 where none does, and for a free pendulum a longer tether",
                Instead::slowest,
                "slowly",
                "slower",
                "slow motion");
        explained(
                "fast",
                "no number; say a tempo in cycles a minute",
                Instead.of("tempo 90", ""),
                "quick",
                "faster");
        explained(
                "big",
                "no number; say a hand radius or a tether",
                Instead.of("hand radius 80 cm", "tether 80 cm", ""),
                "large",
                "wide",
                "huge",
                "bigger");
        explained(
                "small",
                "no number; say a hand radius or a tether",
                Instead.of("hand radius 20 cm", "tether 40 cm", ""),
                "little",
                "tiny",
                "tight",
                "smaller");
        explained(
                "choked up",
                "held shorter on the cord, which is said as a tether",
                Instead.of("tether 40 cm"),
                "choke up",
                "choked",
                "short",
                "shorter",
                "shortened",
                "short tether",
                "short cord");
        explained(
                "long",
                "no number; say a tether",
                Instead.of("tether 80 cm"),
                "longer",
                "long tether",
                "long cord");
        explained(
                "rpm",
                "a number of turns a minute, and it is not said whose: of the hands, which is the "
                        + "tempo, or of a poi",
                Instead::turnsAMinute,
                "turns a minute",
                "revs");
        explained(
                "bpm",
                "a number of beats of music a minute; a tempo counts hand cycles, and a cycle may "
                        + "take one beat, two or four",
                Instead::beatsAMinute,
                "beats a minute",
                "beats per minute");
        explained("n", "a number you choose; so many petals", Instead.of("3", "4", "5", "6"));
        explained(
                "full pendulum",
                "a swing of half a turn to each side, which would stop upside down and stay there; "
                        + "a free swing goes up to 179° each side, and beyond 90° its cord goes slack "
                        + "on the way up, from 179° at 132°",
                Instead.of("pendulum amplitude 179°", "pendulum amplitude 90°"),
                "full swing",
                "full circle pendulum");
        explained(
                "upside down pendulum",
                "a swing about straight up, which gravity does not make; an arc that the hand "
                        + "drives can stand so",
                Instead.of("stall tilt 180°", "pendulum"),
                "inverted pendulum");
        explained(
                "upside down",
                "half a turn round in its plane, which is said as a tilt",
                Instead.of("tilt 180°", ""),
                "inverted");
        explained(
                "fire",
                "what the poi carry, which belongs to the performer's kit, not to the pattern",
                Instead.of(""),
                "fire poi",
                "glow",
                "glow poi",
                "led",
                "leds",
                "led poi",
                "lights");
        explained(
                "still",
                "a hand that stays where it is while its poi goes round it",
                Instead.of("static spin", ""),
                "hand still",
                "nothing");
        explained(
                "starting",
                "said as the angle at which the tether starts: 0° to the performer's left, 90° up",
                Instead.of("start 90°", "start 0°", "start -90°", ""),
                "starting at",
                "starting from",
                "from the top",
                "starting up",
                "starting down",
                "starting from the top",
                "pointing",
                "pointing up",
                "pointing down");
        explained(
                "deltoid",
                "the figure of a triquetra whose hand circle is twice its tether",
                Instead.of("triquetra hand radius 2 tethers", "triquetra"));
        explained(
                "astroid",
                "the figure of a four-petal antispin whose hand circle is three tethers wide on each"
                        + " side",
                Instead.of("four-petal antispin hand radius 3 tethers", "four-petal antispin"));
        explained(
                "nephroid",
                "the figure of a two-petal in-spin whose hand circle is three tethers wide on each"
                        + " side",
                Instead.of("two-petal in-spin hand radius 3 tethers", "two-petal in-spin"));
        explained(
                "vertical plane",
                "either of two: the wall plane faces the audience, the wheel plane runs front to back",
                Instead.of("wall plane", "wheel plane"),
                "upright plane");
        explained("poi", "the prop: a weight on a tether", Instead.of(""));
        explained("head", "the weight at the tether's end", Instead.of(""));
        explained("handle", "where the hand holds the tether", Instead.of(""));
        explained("beat", "one full turn of a poi", Instead.of(""));
        explained("plane", "where a motion lies: wall, wheel or floor", Instead.of(""));
        new Word(
                Kind.EXPLAINED,
                "direction",
                "same, both props turn the same way; opposite, against each other",
                "same");
        explained("carrier", "in a linked pairing, the hand whose head leads", Instead.of(""));
        explained(
                "rider",
                "in a linked pairing, the hand that goes where the carrier's head goes",
                Instead.of("riding", ""));
        explained(
                "link",
                "the relation between the carrier's head path and the rider's hand path",
                Instead.of(""));
    }

    // Words that name what a phrase is anyway.
    public static final Word HYBRID =
            new Word(
                    Kind.ASIDE,
                    "hybrid",
                    "two hands that do different motions; said as \"A vs B\"",
                    "",
                    "head-orbiting hybrid",
                    "orbiting hybrid",
                    "combo");
    public static final Word POLYRHYTHM =
            new Word(
                    Kind.ASIDE,
                    "polyrhythm",
                    "two hands whose cycles differ: \"polyrhythm 3:2 static spin vs extension\" is "
                            + "three cycles of the first hand to two of the second",
                    "");

    static {
        aside("motion", "what one hand and its poi do over one cycle");
        aside("pairing", "two motions with their timing, direction and placement");
        aside("phrase", "a pairing written in trade words, on one line");
        aside("pattern", "a pairing kept under a name");
    }

    /** What stands after "loops". */
    public static final Word LOOPS = new Word(Kind.OWN, Measured.LOOPS, "loops", "", "");

    static {
        for (String filler :
                List.of(
                        "of",
                        "in",
                        "on",
                        "at",
                        "a",
                        "an",
                        "the",
                        "my",
                        "do",
                        "does",
                        "doing",
                        "while",
                        "before the body",
                        "in front of the body",
                        "please",
                        "show me",
                        "what about",
                        "how about")) {
            new Word(Kind.FILLER, filler, "", "");
        }
    }

    // Sizes and qualifiers that every hand takes.
    private static final List<Word> PLACED =
            List.of(
                    TETHER,
                    WALL,
                    WHEEL,
                    FLOOR,
                    TIP,
                    SWIVEL,
                    CENTRE,
                    DEPTH,
                    AT_SHOULDER,
                    LEFT_SIDE,
                    RIGHT_SIDE,
                    BEHIND,
                    OVERHEAD,
                    BETWEEN_ARMS,
                    PLANE_TURNS,
                    UPRIGHT,
                    LEVEL,
                    POI_ALONE,
                    CYCLES,
                    RIDING);

    private final int order = ALL.size();
    private final Kind kind;
    private final Measured measured;
    private final String said;
    private final String means;
    private final String sizesUnsaid;
    private final List<String> also;
    private final List<Word> both;
    private final Instead instead;

    private Word(
            Kind kind,
            Measured measured,
            String said,
            String means,
            String sizesUnsaid,
            String... also) {
        this(kind, measured, said, means, sizesUnsaid, List.of(), Instead.of(""), also);
    }

    private Word(
            Kind kind,
            Measured measured,
            String said,
            String means,
            String sizesUnsaid,
            List<Word> both,
            Instead instead,
            String... also) {
        this.both = both;
        this.instead = instead;
        this.kind = kind;
        this.measured = measured;
        this.said = said;
        this.means = means;
        this.sizesUnsaid = sizesUnsaid;
        this.also = List.of(also);
        ALL.add(this);
        if (kind != Kind.OWN) {
            spellings().forEach(s -> BY_KEY.putIfAbsent(Spelling.key(s), this));
        }
    }

    private Word(Kind kind, String said, String means, String sizesUnsaid, String... also) {
        this(kind, Measured.NOTHING, said, means, sizesUnsaid, also);
    }

    private Word(Measured measured, String said, String means, String sizesUnsaid, String... also) {
        this(Kind.SIZE, measured, said, means, sizesUnsaid, also);
    }

    private static Word flag(String said, String means, String... also) {
        return new Word(Kind.FLAG, said, means, "", also);
    }

    private static Word shared(String said, String means, String... also) {
        return new Word(Kind.SHARED, said, means, "", also);
    }

    private static Word owner(String said, String means, String... also) {
        return new Word(Kind.OWNER, said, means, "", also);
    }

    private static void both(String said, String means, Word... words) {
        new Word(Kind.SHARED, Measured.NOTHING, said, means, "", List.of(words), Instead.of(""));
    }

    private static Word explained(String said, String means, Instead instead, String... also) {
        return new Word(
                Kind.EXPLAINED, Measured.NOTHING, said, means, "", List.of(), instead, also);
    }

    private static void aside(String said, String means, String... also) {
        new Word(Kind.ASIDE, said, means, "", also);
    }

    public Kind kind() {
        return kind;
    }

    public Measured measured() {
        return measured;
    }

    /** As it is written. */
    public String said() {
        return said;
    }

    public String means() {
        return means;
    }

    /** What it takes when nothing else is said; may be empty. */
    public String sizesUnsaid() {
        return sizesUnsaid;
    }

    public List<String> also() {
        return also;
    }

    /** The words it stands for; empty where it says something of its own. */
    public List<Word> both() {
        return both;
    }

    /** What is offered in its place, where it is explained and not said. */
    public Instead instead() {
        return instead;
    }

    public List<String> spellings() {
        List<String> all = new ArrayList<>(List.of(said));
        all.addAll(also);
        return all;
    }

    /** Whether every hand takes it, whatever its motion. */
    public boolean placed() {
        return PLACED.contains(this);
    }

    /** Whether it is a size that only one form of hand path has. */
    public boolean ofForm() {
        return HandPath.forms().stream()
                .flatMap(form -> form.sizes().stream())
                .anyMatch(size -> !size.means().isEmpty() && size.word().equals(said));
    }

    /** Every word, in the order of the list. */
    public static List<Word> all() {
        return List.copyOf(ALL);
    }

    /** The word of that {@link Spelling#key}, a plural ending forgiven. */
    public static Optional<Word> spelt(String key) {
        return Spelling.find(BY_KEY, key);
    }

    /** The word of a size of a path's form. */
    static Word of(Measure measure) {
        return spelt(Spelling.key(measure.word())).orElseThrow();
    }

    /** These words and those that every hand takes, in the order of the list. */
    public static SortedSet<Word> and(Word... words) {
        SortedSet<Word> all = new TreeSet<>(PLACED);
        all.addAll(Arrays.asList(words));
        return all;
    }

    @Override
    public int compareTo(Word other) {
        return Integer.compare(order, other.order);
    }

    @Override
    public String toString() {
        return said;
    }
}

package deferent.sound.tune;

/**
 * The three tunes of the demo's invented duo: made by arithmetic, played by nobody. Each has a
 * character that a set to it has to answer.
 */
public enum DemoTune {
    WALTZ(
            "Snow on the awning",
            "snow-on-the-awning",
            "a slow waltz that keeps its tempo",
            new Manner(
                    84,
                    3,
                    72,
                    Manner.Drift.STEADY,
                    0,
                    0.5,
                    Manner.Band.BASS_STRINGS,
                    0.004,
                    0,
                    0.04,
                    0,
                    0,
                    0.8),
            11),
    WALK(
            "The long way to the market",
            "the-long-way-to-the-market",
            "a walking tune that dawdles and hurries by turns",
            new Manner(
                    104,
                    4,
                    80,
                    Manner.Drift.WANDERS,
                    0.05,
                    0.6,
                    Manner.Band.DRUMS_BASS_STRINGS,
                    0.006,
                    0.04,
                    0.03,
                    0.02,
                    4,
                    0.6),
            12),
    SPARKS(
            "Sparks from the brazier",
            "sparks-from-the-brazier",
            "a quick one that gets quicker",
            new Manner(
                    144,
                    4,
                    64,
                    Manner.Drift.QUICKENS,
                    0.04,
                    0.5,
                    Manner.Band.DRUMS_BASS_STRINGS,
                    0.003,
                    0.02,
                    0.02,
                    0,
                    0,
                    0.5),
            13);

    /** Samples a second of their files. */
    public static final int RATE = 44_100;

    private final String title;
    private final String slug;
    private final String character;
    private final Manner manner;
    private final long seed;

    DemoTune(String title, String slug, String character, Manner manner, long seed) {
        this.title = title;
        this.slug = slug;
        this.character = character;
        this.manner = manner;
        this.seed = seed;
    }

    public String title() {
        return title;
    }

    /** Its file's name: says that it is invented. */
    public String file() {
        return slug + "-invented.wav";
    }

    /** In a few words: "a slow waltz that keeps its tempo". */
    public String character() {
        return character;
    }

    public Tune tune() {
        return Tune.of(manner, seed);
    }
}

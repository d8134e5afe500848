package deferent.search.transition;

/**
 * How hard a transition is: the one definition of what is possible, for every face. What no grade
 * allows is not called possible.
 *
 * <p>That hands straying under 15 cm and a pull that changes gently is easy is common practice, no
 * source; the other figures are our choice. A practised hand goes up to 5 m/s and quickens by up to
 * 60 m/s² ({@link deferent.motion.pairing.HandLimits#USUAL}), or as much as the patterns themselves
 * ask.
 */
public enum Grade {
    /** Anyone who spins both patterns. */
    EASY(0.15, 0.3, 1.25),
    /** With practice. */
    PRACTISED(0.25, 0.3, 1.5),
    /** For those who like it hard. */
    HARD(0.40, 0.3, 2.0);

    /** What counts as possible where nothing else is said. */
    public static final Grade USUAL = PRACTISED;

    private final double stray;
    private final double leastPull;
    private final double quickening;

    Grade(double stray, double leastPull, double quickening) {
        this.stray = stray;
        this.leastPull = leastPull;
        this.quickening = quickening;
    }

    /** How far a hand may be from where the two patterns' own hands blend, metres. */
    public double stray() {
        return stray;
    }

    /** The least pull in the cord, head weights. */
    public double leastPull() {
        return leastPull;
    }

    /**
     * By which factor the pull may be greater, and it and the hand change quicker, than in the
     * livelier of the two patterns.
     */
    public double quickening() {
        return quickening;
    }

    /**
     * How hard that is, on a scale that runs on between the grades: 0 where the gentlest allows it,
     * up to 1 where the next does, and so on; infinite where none does.
     */
    static double hardness(double stray, double leastPull, double quickening) {
        double outlook = outlook(stray, leastPull, quickening);
        boolean slack = leastPull < EASY.leastPull;
        return slack || outlook > HARD.ordinal() ? Double.POSITIVE_INFINITY : outlook;
    }

    private static double share(double value, double low, double high) {
        return Math.max(0, (value - low) / (high - low));
    }

    /** The same, running on past what any grade allows, to rank what may yet become possible. */
    static double outlook(double stray, double leastPull, double quickening) {
        double slack = Math.max(0, EASY.leastPull - leastPull) / 0.05;
        return slack
                + Math.max(
                        onward(stray, EASY.stray, PRACTISED.stray, HARD.stray),
                        onward(quickening, EASY.quickening, PRACTISED.quickening, HARD.quickening));
    }

    private static double onward(double value, double easy, double practised, double hard) {
        return value <= practised
                ? share(value, easy, practised)
                : value <= hard
                        ? 1 + share(value, practised, hard)
                        : 2 + (value - hard) / (hard - practised);
    }

    /** The grade of a hardness that is not infinite. */
    static Grade of(double hardness) {
        return values()[(int) Math.ceil(hardness)];
    }
}

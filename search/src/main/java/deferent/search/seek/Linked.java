package deferent.search.seek;

/**
 * A link that was found, with the pair that stands for it, before it is placed and judged.
 *
 * @param headClass the carriers' class
 * @param handClass the riders' class
 * @param carriers how many motions may lead
 * @param riders how many may follow
 * @param gap in tethers, or shares of the size where tethers are free
 * @param carrier key of the pair's carrier
 * @param rider key of its rider
 * @param seen their two figures
 * @param family what it stands for
 */
record Linked(
        int headClass,
        int handClass,
        int carriers,
        int riders,
        double gap,
        long carrier,
        long rider,
        BothFigures seen,
        Family family) {
    boolean exact() {
        return gap <= Answers.EXACT;
    }
}

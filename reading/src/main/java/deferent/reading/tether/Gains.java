package deferent.reading.tether;

/**
 * How much of a slip a hand goes against.
 *
 * @param place metres of the hand a metre of slip
 * @param speed metres of the hand for each metre a second at which the slip grows, seconds
 */
record Gains(double place, double speed) {
    static final Gains NONE = new Gains(0, 0);

    /**
     * As far as a person goes: four times a slip; and for its speed as far as it goes in 0.6 s.
     * Pilots lead by up to about a second (McRuer and Jex, IEEE Trans. HFE-8 (1967), from memory);
     * the sizes are our choice.
     */
    static final Gains MOST = new Gains(4, 0.6);

    Gains times(double by) {
        return times(by, by);
    }

    Gains times(double byPlace, double bySpeed) {
        return new Gains(place * byPlace, speed * bySpeed);
    }

    boolean within(Gains most) {
        return Math.abs(place) <= most.place && Math.abs(speed) <= most.speed;
    }
}

package deferent.search.set;

/**
 * The bars of a song, from the beat on which patterns begin.
 *
 * @param beats how many make a bar; 1 where no song counts
 * @param first on which of them, from 0, the first pattern begins
 * @param beat seconds of one
 */
record SongBars(int beats, int first, double beat) {
    /** How many counts off a pattern that does not begin with a bar is worth; our choice. */
    static final double OFF = 2;

    static final SongBars NONE = new SongBars(1, 0, 1);

    /** By how many beats of the bar something of so many seconds goes on. */
    int on(double seconds) {
        return Math.floorMod((int) Math.rint(seconds / beat), beats);
    }

    /** How much it is shunned to begin so many beats after the first pattern did. */
    double weight(int after) {
        return (first + after) % beats == 0 ? 0 : OFF;
    }
}

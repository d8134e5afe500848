package deferent.film.held;

/**
 * How far a head or a hand is from where it was meant to be, at one moment.
 *
 * @param x metres to the performer's left
 * @param y metres up
 * @param error standard deviation on either axis, metres: of the sight, and of the picture's scale
 * @param way which way that is, seen along its path
 */
public record Off(double x, double y, double error, Way way) {
    /** Which way something is off. */
    public enum Way {
        IN("in"),
        OUT("out"),
        BEHIND("behind"),
        AHEAD("ahead"),
        UP("up"),
        DOWN("down"),
        LEFT("to your left"),
        RIGHT("to your right");

        private final String words;

        Way(String words) {
            this.words = words;
        }

        /** For people. */
        public String words() {
            return words;
        }
    }

    private static final double ALONG = 0.7; // of the distance, for it to be one of time
    private static final double MOVES = 0.3; // metres a second, for a path to have a direction
    private static final double ROUND = 0.1; // metres from the middle, for in and out to be told

    /** Metres. */
    public double far() {
        return Math.hypot(x, y);
    }

    /**
     * Of a place against the meant one.
     *
     * @param speed metres a second of the meant one, to the performer's left and up
     * @param arm from the middle of the meant path to the meant place, metres
     */
    static Off of(double x, double y, double error, double[] speed, double[] arm) {
        double far = Math.hypot(x, y);
        double pace = Math.hypot(speed[0], speed[1]);
        double along = pace > MOVES ? (x * speed[0] + y * speed[1]) / pace : 0;
        double radius = Math.hypot(arm[0], arm[1]);
        Way way;
        if (Math.abs(along) > ALONG * far) {
            way = along < 0 ? Way.BEHIND : Way.AHEAD;
        } else if (radius > ROUND) {
            way = x * arm[0] + y * arm[1] < 0 ? Way.IN : Way.OUT;
        } else if (Math.abs(y) > Math.abs(x)) {
            way = y < 0 ? Way.DOWN : Way.UP;
        } else {
            way = x < 0 ? Way.RIGHT : Way.LEFT;
        }
        return new Off(x, y, error, way);
    }
}

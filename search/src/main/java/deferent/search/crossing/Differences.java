package deferent.search.crossing;

/**
 * What two states differ by at most.
 *
 * @param place metres
 * @param speed metres a second
 * @param roughness what it takes to take both up
 */
record Differences(double place, double speed, Roughness roughness) {
    static Differences of(double[] x, double[] y, CrossingRequest request) {
        double place = 0;
        double speed = 0;
        double[] rough = new double[2];
        for (int p = 0; p < State24.POINTS; p++) {
            if (request.compares(p)) {
                double off = apart(x, y, 3 * p);
                double faster = apart(x, y, State24.VELOCITY + 3 * p);
                place = Math.max(place, off);
                speed = Math.max(speed, faster);
                rough[p / 2] =
                        Math.max(rough[p / 2], Roughness.least(off, faster, request.blend()));
            }
        }
        return new Differences(place, speed, new Roughness(rough[0], rough[1]));
    }

    boolean within(CrossingRequest request) {
        return place <= request.place() && speed <= request.speed();
    }

    private static double apart(double[] x, double[] y, int at) {
        double dx = x[at] - y[at];
        double dy = x[at + 1] - y[at + 1];
        double dz = x[at + 2] - y[at + 2];
        return Math.sqrt(dx * dx + dy * dy + dz * dz);
    }
}

package deferent.film;

import java.util.List;
import java.util.Random;

/**
 * What goes wrong in a film.
 *
 * @param rate frames a second
 * @param shutter seconds it is open
 * @param noise standard deviation of a pixel, of 255
 * @param megabits a second the film is coded at; 0 for pictures as they are
 * @param shake pixels, standard size of the slowest of six ways of shaking on either axis
 * @param roll radians the camera is turned about its line of sight
 * @param pitch radians it looks up or down
 * @param lamps shares of width and height at which other lamps stand
 * @param blinks share of frames in which a head is dark
 * @param dropped share of frames that are missing
 * @param doubled share of frames that show the one before
 * @param hidden share of a cycle in which a head is not seen
 * @param coloured whether the heads have two colours
 * @param readout seconds from the first row to the last
 */
record Spoilt(
        double rate,
        double shutter,
        double noise,
        double megabits,
        double shake,
        double roll,
        double pitch,
        List<double[]> lamps,
        double blinks,
        double dropped,
        double doubled,
        double hidden,
        boolean coloured,
        double readout) {
    static final List<double[]> TWO_LAMPS =
            List.of(new double[] {0.04, 0.06}, new double[] {0.95, 0.93});

    static Spoilt not(double rate) {
        return new Spoilt(rate, 1 / 120.0, 2, 0, 0, 0, 0, List.of(), 0, 0, 0, 0, true, 0);
    }

    /** Each fault by a throw of its own, so that they come together as they like. */
    static Spoilt of(Random random, double rate) {
        return new Spoilt(
                rate,
                random.nextBoolean() ? 1 / 120.0 : 0.9 / rate,
                2 + 6 * random.nextDouble(),
                random.nextDouble() < 0.5 ? 6 + 6 * random.nextDouble() : 0,
                random.nextDouble() < 0.4 ? 1 + 3 * random.nextDouble() : 0,
                random.nextDouble() < 0.5 ? Math.toRadians(random.nextGaussian()) : 0,
                random.nextDouble() < 0.5 ? Math.toRadians(2 * random.nextGaussian()) : 0,
                random.nextDouble() < 0.7 ? TWO_LAMPS : List.of(),
                random.nextDouble() < 0.4 ? 0.03 : 0,
                random.nextDouble() < 0.4 ? 0.02 : 0,
                random.nextDouble() < 0.4 ? 0.02 : 0,
                random.nextDouble() < 0.4 ? 0.1 : 0,
                random.nextDouble() < 0.4,
                random.nextDouble() < 0.4 ? 0.004 + 0.012 * random.nextDouble() : 0);
    }

    /** Coded at so many megabits a second. */
    Spoilt coded(double rateOfBits) {
        return new Spoilt(
                rate,
                shutter,
                noise,
                rateOfBits,
                shake,
                roll,
                pitch,
                lamps,
                blinks,
                dropped,
                doubled,
                hidden,
                coloured,
                readout);
    }

    /** What was done, in short. */
    String said() {
        StringBuilder said = new StringBuilder(Math.round(rate) + "/s");
        add(said, shutter > 0.01, "long exposure");
        add(said, megabits > 0, "H.264");
        add(said, shake > 0, Math.round(10 * shake) / 10.0 + " px shake");
        add(said, roll != 0, Math.round(10 * Math.toDegrees(roll)) / 10.0 + "° roll");
        add(said, pitch != 0, Math.round(10 * Math.toDegrees(pitch)) / 10.0 + "° pitch");
        add(said, !lamps.isEmpty(), "lamps");
        add(said, blinks > 0, "blinks");
        add(said, dropped > 0, "dropped");
        add(said, doubled > 0, "doubled");
        add(said, hidden > 0, "hidden");
        add(said, !coloured, "one colour");
        add(said, readout > 0, Math.round(1000 * readout) + " ms readout");
        return said.toString();
    }

    private static void add(StringBuilder said, boolean done, String what) {
        if (done) {
            said.append(", ").append(what);
        }
    }
}

package deferent.film.cycle;

import org.hipparchus.linear.RealMatrix;

/**
 * What comes back once a cycle, in the plane: a mean and its turns, x and y by themselves, as
 * cosines and sines, with how sure they are.
 *
 * @param period seconds
 * @param x mean, then cosine and sine of each order
 * @param y likewise
 * @param spread covariance of either's coefficients
 * @param scatter standard deviation of one sight about it, in the unit of x and y
 */
public record Wave(double period, double[] x, double[] y, RealMatrix spread, double scatter) {
    /** Highest order of a turn in it. */
    public int order() {
        return (x.length - 1) / 2;
    }

    /**
     * Place and its derivatives by time.
     *
     * @param time seconds
     * @return place, velocity, acceleration and jerk, each x and y
     */
    public double[][] at(double time) {
        double[][] all = new double[4][2];
        for (int d = 0; d < 4; d++) {
            double[] row = row(time, d);
            for (int i = 0; i < row.length; i++) {
                all[d][0] += row[i] * x[i];
                all[d][1] += row[i] * y[i];
            }
        }
        return all;
    }

    /** Standard deviation, on either axis, of place (0), velocity (1) or acceleration (2). */
    public double error(double time, int derivative) {
        double[] row = row(time, derivative);
        return Math.sqrt(Math.max(0, quadratic(row)));
    }

    private double quadratic(double[] row) {
        double[] with = spread.operate(row);
        double sum = 0;
        for (int i = 0; i < row.length; i++) {
            sum += row[i] * with[i];
        }
        return sum;
    }

    private double[] row(double time, int derivative) {
        return row(2 * Math.PI * time / period, 2 * Math.PI / period, x.length, derivative);
    }

    /** The functions' values at an angle, differentiated by time so many times. */
    static double[] row(double angle, double rate, int length, int derivative) {
        double[] row = new double[length];
        row[0] = derivative == 0 ? 1 : 0;
        for (int k = 1; 2 * k < length; k++) {
            double scale = Math.pow(k * rate, derivative);
            double at = k * angle + derivative * Math.PI / 2;
            row[2 * k - 1] = scale * Math.cos(at);
            row[2 * k] = scale * Math.sin(at);
        }
        return row;
    }

    /**
     * The same in other units: x and y each through a straight line.
     *
     * @param x0 what x = 0 becomes
     * @param sx what one of x is
     * @param y0 what y = 0 becomes
     * @param sy what one of y is; as large as sx but for its sign
     */
    public Wave through(double x0, double sx, double y0, double sy) {
        double[] nx = new double[x.length];
        double[] ny = new double[y.length];
        for (int i = 0; i < nx.length; i++) {
            nx[i] = sx * x[i] + (i == 0 ? x0 : 0);
            ny[i] = sy * y[i] + (i == 0 ? y0 : 0);
        }
        return new Wave(period, nx, ny, spread.scalarMultiply(sx * sx), Math.abs(sx) * scatter);
    }
}

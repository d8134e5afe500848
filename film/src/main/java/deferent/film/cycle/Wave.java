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

    /**
     * Standard deviation, on either axis, of place and so many times the acceleration: their errors
     * go together.
     *
     * @param pull seconds², how much of the acceleration is added to the place
     */
    public double error(double time, double place, double pull) {
        double[] row = row(time, 2);
        double[] at = row(time, 0);
        for (int i = 0; i < row.length; i++) {
            row[i] = place * at[i] + pull * row[i];
        }
        return Math.sqrt(Math.max(0, quadratic(row)));
    }

    /**
     * The same where each sight was the mean over a while of what it is of: the mean over a time e
     * makes a turn at a rate w smaller by sin(we/2)/(we/2).
     *
     * @param exposure seconds
     */
    Wave sharpened(double exposure) {
        double[] by = new double[x.length];
        by[0] = 1;
        for (int k = 1; 2 * k < x.length; k++) {
            double half = Math.PI * k / period * exposure;
            double grown = half < 1e-6 ? 1 : half / Math.sin(Math.min(half, 2));
            by[2 * k - 1] = grown;
            by[2 * k] = grown;
        }
        RealMatrix wide = spread.copy();
        double[] nx = x.clone();
        double[] ny = y.clone();
        for (int i = 0; i < by.length; i++) {
            nx[i] *= by[i];
            ny[i] *= by[i];
            for (int j = 0; j < by.length; j++) {
                wide.multiplyEntry(i, j, by[i] * by[j]);
            }
        }
        return new Wave(period, nx, ny, wide, scatter);
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
        double cos = Math.cos(angle);
        double sin = Math.sin(angle);
        double c = 1;
        double s = 0;
        for (int k = 1; 2 * k < length; k++) {
            // Each turn from the one before; over thirty of them this loses one part in 1e14.
            double next = c * cos - s * sin;
            s = s * cos + c * sin;
            c = next;
            double pace = k * rate;
            switch (derivative) {
                case 0 -> {
                    row[2 * k - 1] = c;
                    row[2 * k] = s;
                }
                case 1 -> {
                    row[2 * k - 1] = -pace * s;
                    row[2 * k] = pace * c;
                }
                case 2 -> {
                    row[2 * k - 1] = -pace * pace * c;
                    row[2 * k] = -pace * pace * s;
                }
                case 3 -> {
                    row[2 * k - 1] = pace * pace * pace * s;
                    row[2 * k] = -pace * pace * pace * c;
                }
                default -> throw new IllegalArgumentException("derivative " + derivative);
            }
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

    /**
     * Of a picture whose y goes downward, what it is where the picture is turned back about a
     * place.
     *
     * @param x0 pixels
     * @param y0 pixels downward
     * @param angle radians by which what is upright is turned counter-clockwise in the picture
     */
    public Wave turned(double x0, double y0, double angle) {
        double c = Math.cos(angle);
        double s = Math.sin(angle);
        double[] nx = new double[x.length];
        double[] ny = new double[y.length];
        for (int i = 0; i < nx.length; i++) {
            double dx = x[i] - (i == 0 ? x0 : 0);
            double dy = y[i] - (i == 0 ? y0 : 0);
            nx[i] = c * dx - s * dy + (i == 0 ? x0 : 0);
            ny[i] = s * dx + c * dy + (i == 0 ? y0 : 0);
        }
        return new Wave(period, nx, ny, spread, scatter);
    }
}

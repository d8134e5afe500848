package deferent.reading.link;

/**
 * Nuclear norm of a 3 × 3 matrix: the sum of its singular values, which is the greatest correlation
 * that an orthogonal motion can reach. From the eigenvalues of AᵀA in closed form (Smith,
 * Eigenvalues of a symmetric 3 × 3 matrix, Communications of the ACM 4, 1961), because it is asked
 * for at every lag.
 */
final class Nuclear {
    private Nuclear() {}

    /** The three singular values, greatest first, of the matrix given row by row. */
    static double[] singular(double[] a) {
        double b00 = a[0] * a[0] + a[3] * a[3] + a[6] * a[6];
        double b11 = a[1] * a[1] + a[4] * a[4] + a[7] * a[7];
        double b22 = a[2] * a[2] + a[5] * a[5] + a[8] * a[8];
        double b01 = a[0] * a[1] + a[3] * a[4] + a[6] * a[7];
        double b02 = a[0] * a[2] + a[3] * a[5] + a[6] * a[8];
        double b12 = a[1] * a[2] + a[4] * a[5] + a[7] * a[8];
        double q = (b00 + b11 + b22) / 3;
        double off = b01 * b01 + b02 * b02 + b12 * b12;
        double c0 = b00 - q;
        double c1 = b11 - q;
        double c2 = b22 - q;
        double p = Math.sqrt((c0 * c0 + c1 * c1 + c2 * c2 + 2 * off) / 6);
        if (p == 0) {
            double each = Math.sqrt(Math.max(q, 0));
            return new double[] {each, each, each};
        }
        double det =
                c0 * (c1 * c2 - b12 * b12)
                        - b01 * (b01 * c2 - b12 * b02)
                        + b02 * (b01 * b12 - c1 * b02);
        double angle = Math.acos(Math.max(-1, Math.min(1, det / (2 * p * p * p)))) / 3;
        double most = q + 2 * p * Math.cos(angle);
        double least = q + 2 * p * Math.cos(angle + 2 * Math.PI / 3);
        double middle = 3 * q - most - least;
        return new double[] {
            Math.sqrt(Math.max(most, 0)),
            Math.sqrt(Math.max(middle, 0)),
            Math.sqrt(Math.max(least, 0))
        };
    }

    static double norm(double[] a) {
        double[] s = singular(a);
        return s[0] + s[1] + s[2];
    }

    static double determinant(double[] a) {
        return a[0] * (a[4] * a[8] - a[5] * a[7])
                - a[1] * (a[3] * a[8] - a[5] * a[6])
                + a[2] * (a[3] * a[7] - a[4] * a[6]);
    }
}

package deferent.film.held;

/**
 * How a measured track lies on a meant one, by weighted least squares: a shift in time found over
 * the whole cycle, and in closed form for each shift the size of the hand's path, where it is free,
 * a turn, where it is free, and the centre.
 *
 * @param shift cycles by which the measured is ahead of the meant
 * @param factor size of the hand's path against the meant one's
 * @param turned radians from the performer's left toward up
 * @param x where the meant one's origin lies in the measured, metres
 * @param y likewise, up
 * @param off root mean square distance that is left, metres
 */
record Lie(double shift, double factor, double turned, double x, double y, double off) {
    private static final double LEAST = 0.05; // of the meant size; smaller would be another motion
    private static final double MOST = 3;
    private static final double UNLIKELY = 0.02; // metres, for a size e times as large
    private static final int ROUNDS = 12;

    /** A head on the meant figure. */
    static Lie head(MeanTrack track, Shape shape, boolean turns) {
        return best(track, shape, true, turns);
    }

    /** A hand on the meant hand path. */
    static Lie hand(MeanTrack track, Shape shape, boolean turns) {
        return best(track, shape, false, turns);
    }

    private static Lie best(MeanTrack track, Shape shape, boolean head, boolean turns) {
        int n = Shape.COUNT;
        Lie[] all = new Lie[n];
        int best = 0;
        for (int s = 0; s < n; s++) {
            all[s] = at(track, shape, s, head, turns);
            if (all[s].score() < all[best].score()) {
                best = s;
            }
        }
        // A parabola through the squares about the best shift: finer than the moments.
        double before = square(all[Math.floorMod(best - 1, n)].off);
        double here = square(all[best].off);
        double after = square(all[(best + 1) % n].off);
        double bend = before - 2 * here + after;
        double finer = bend > 0 ? Math.max(-0.5, Math.min(0.5, (before - after) / 2 / bend)) : 0;
        Lie lie = all[best];
        double shift = (best + finer) / n;
        double off = Math.sqrt(Math.max(0, here - bend * finer * finer / 2));
        return new Lie(shift, lie.factor, lie.turned, lie.x, lie.y, off);
    }

    // Where a figure is drawn alike at two sizes (an isolation's circle is, half a turn later), the
    // one nearer to what was meant.
    private double score() {
        return off + UNLIKELY * Math.abs(Math.log(factor));
    }

    private static double square(double a) {
        return a * a;
    }

    /** At one shift, in moments. */
    static Lie at(MeanTrack track, Shape shape, int shift, boolean head, boolean turns) {
        Sums sums = new Sums(track, shape, shift, head);
        double turned = 0;
        double factor = 1;
        for (int round = 0; round < (turns ? ROUNDS : 1); round++) {
            if (turns) {
                turned =
                        Math.atan2(
                                factor * sums.sizedIm + sums.fixedIm,
                                factor * sums.sizedRe + sums.fixedRe);
            }
            if (!shape.sized()) {
                continue;
            }
            double along = Math.cos(turned) * sums.sizedRe + Math.sin(turned) * sums.sizedIm;
            factor =
                    Math.max(
                            LEAST,
                            Math.min(MOST, (along - sums.both) / Math.max(1e-9, sums.sized)));
        }
        double re = factor * sums.sizedRe + sums.fixedRe;
        double im = factor * sums.sizedIm + sums.fixedIm;
        double left =
                sums.seen
                        - 2 * (Math.cos(turned) * re + Math.sin(turned) * im)
                        + factor * factor * sums.sized
                        + 2 * factor * sums.both
                        + sums.fixed;
        double mx = factor * sums.meanSizedX + sums.meanFixedX;
        double my = factor * sums.meanSizedY + sums.meanFixedY;
        return new Lie(
                (double) shift / Shape.COUNT,
                factor,
                turned,
                sums.meanX - (Math.cos(turned) * mx - Math.sin(turned) * my),
                sums.meanY - (Math.sin(turned) * mx + Math.cos(turned) * my),
                Math.sqrt(Math.max(0, left / Math.max(1e-9, sums.all))));
    }

    /**
     * How many of the shape's metres are one of the track's own units.
     *
     * @param metres a unit
     * @param left share of the track's squares that is left
     */
    record Unit(double metres, double left) {}

    /**
     * The unit of a track that has one of its own: by least squares over every shift, tether and
     * hand path each free where the figure tells them apart, else both alike.
     */
    static Unit unit(MeanTrack track, Shape shape) {
        double least = Double.POSITIVE_INFINITY;
        Unit best = new Unit(1, Double.POSITIVE_INFINITY);
        for (int shift = 0; shift < Shape.COUNT; shift++) {
            Sums s = new Sums(track, shape, shift, true);
            double alike =
                    (s.sizedRe + s.fixedRe) / Math.max(1e-12, s.sized + 2 * s.both + s.fixed);
            double tether = alike;
            double path = alike;
            double apart = s.sized * s.fixed - s.both * s.both;
            if (shape.sized() && apart > 0.05 * s.sized * s.fixed) {
                path = (s.sizedRe * s.fixed - s.fixedRe * s.both) / apart;
                tether = (s.fixedRe * s.sized - s.sizedRe * s.both) / apart;
            }
            if (tether <= 0 || path < LEAST * tether) {
                continue;
            }
            double left =
                    s.seen
                            - 2 * (path * s.sizedRe + tether * s.fixedRe)
                            + path * path * s.sized
                            + 2 * path * tether * s.both
                            + tether * tether * s.fixed;
            if (left < least) {
                least = left;
                best = new Unit(1 / tether, left / Math.max(1e-12, s.seen));
            }
        }
        return best;
    }

    /** The sums of least squares, about the weighted means. */
    private static final class Sums {
        double all;
        double seen;
        double sized;
        double fixed;
        double both;
        double sizedRe;
        double sizedIm;
        double fixedRe;
        double fixedIm;
        double meanX;
        double meanY;
        double meanSizedX;
        double meanSizedY;
        double meanFixedX;
        double meanFixedY;

        Sums(MeanTrack track, Shape shape, int shift, boolean head) {
            int n = Shape.COUNT;
            double[] w = track.weight();
            for (int pass = 0; pass < 2; pass++) {
                for (int i = 0; i < n; i++) {
                    if (w[i] == 0) {
                        continue;
                    }
                    int j = Math.floorMod(i + shift, n);
                    double sx = shape.sized() ? shape.handX()[j] : 0;
                    double sy = shape.sized() ? shape.handY()[j] : 0;
                    double fx =
                            (shape.sized() ? 0 : shape.handX()[j])
                                    + (head ? shape.tetherX()[j] : 0);
                    double fy =
                            (shape.sized() ? 0 : shape.handY()[j])
                                    + (head ? shape.tetherY()[j] : 0);
                    if (pass == 0) {
                        all += w[i];
                        meanX += w[i] * track.x()[i];
                        meanY += w[i] * track.y()[i];
                        meanSizedX += w[i] * sx;
                        meanSizedY += w[i] * sy;
                        meanFixedX += w[i] * fx;
                        meanFixedY += w[i] * fy;
                    } else {
                        add(
                                w[i],
                                track.x()[i] - meanX,
                                track.y()[i] - meanY,
                                new double[] {sx - meanSizedX, sy - meanSizedY},
                                new double[] {fx - meanFixedX, fy - meanFixedY});
                    }
                }
                if (pass == 0) {
                    double by = Math.max(1e-9, all);
                    meanX /= by;
                    meanY /= by;
                    meanSizedX /= by;
                    meanSizedY /= by;
                    meanFixedX /= by;
                    meanFixedY /= by;
                }
            }
        }

        private void add(double w, double dx, double dy, double[] s, double[] f) {
            seen += w * (dx * dx + dy * dy);
            sized += w * (s[0] * s[0] + s[1] * s[1]);
            fixed += w * (f[0] * f[0] + f[1] * f[1]);
            both += w * (s[0] * f[0] + s[1] * f[1]);
            // Of the conjugate of the meant times the seen.
            sizedRe += w * (s[0] * dx + s[1] * dy);
            sizedIm += w * (s[0] * dy - s[1] * dx);
            fixedRe += w * (f[0] * dx + f[1] * dy);
            fixedIm += w * (f[0] * dy - f[1] * dx);
        }
    }
}

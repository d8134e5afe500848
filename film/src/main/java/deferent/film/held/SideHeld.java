package deferent.film.held;

import deferent.film.hand.HandSight;
import deferent.film.measured.MeasuredSide;

/**
 * One side of a film held against a meant shape, both ways: its head against the figure, its hand
 * against the hand path. The nearer is taken.
 *
 * @param kept which that is
 * @param shape what was meant
 * @param track the head's or the hand's, by what was kept
 * @param lie how it lies
 * @param extra metres that count as off beside that, for comparing: a hand is known less well than
 *     a head, and its poi should point the meant way
 */
record SideHeld(KeptAs kept, Shape shape, MeanTrack track, Lie lie, double extra) {
    private static final double MUST_KNOW = 0.6; // of the cycle, for a hand to be held at all
    private static final double ASTRAY = 0.1; // metres that a poi which points elsewhere counts as
    private static final double HAND_HARDER = 0.01; // metres: a hand is known less well than a head
    private static final double SIGHT = 0.02; // metres, up to which hands count alike

    /** The head's track. */
    static MeanTrack head(MeasuredSide side) {
        int n = Shape.COUNT;
        double[] x = new double[n];
        double[] y = new double[n];
        double[] w = new double[n];
        for (int i = 0; i < n; i++) {
            double[] at = side.head().at(side.head().period() * i / n)[0];
            x[i] = at[0];
            y[i] = at[1];
            w[i] = 1;
        }
        return new MeanTrack(x, y, w);
    }

    /** The hand's track. */
    static MeanTrack hand(MeasuredSide side) {
        int n = Shape.COUNT;
        double[] x = new double[n];
        double[] y = new double[n];
        double[] w = new double[n];
        for (HandSight sight : side.hands()) {
            int i = Math.floorMod(Math.round(sight.time() / side.head().period() * n), n);
            x[i] = sight.x();
            y[i] = sight.y();
            w[i] = 1 / (1 + (sight.error() / SIGHT) * (sight.error() / SIGHT));
        }
        return new MeanTrack(x, y, w);
    }

    /** Both tracks of a side, made once. */
    record Tracks(MeanTrack head, MeanTrack hand) {
        static Tracks of(MeasuredSide side) {
            return new Tracks(SideHeld.head(side), SideHeld.hand(side));
        }
    }

    /** The nearer way in which a side lies on a shape. */
    static SideHeld of(Tracks tracks, Shape shape, boolean turns) {
        SideHeld figure = figure(tracks, shape, turns);
        if (tracks.hand().known() < MUST_KNOW) {
            return figure;
        }
        SideHeld hand = handPath(tracks, shape, turns);
        return hand.cost() < figure.cost() ? hand : figure;
    }

    static SideHeld figure(Tracks tracks, Shape shape, boolean turns) {
        return new SideHeld(
                KeptAs.FIGURE, shape, tracks.head(), Lie.head(tracks.head(), shape, turns), 0);
    }

    static SideHeld handPath(Tracks tracks, Shape shape, boolean turns) {
        MeanTrack hand = tracks.hand();
        double[] px = new double[Shape.COUNT];
        double[] py = new double[Shape.COUNT];
        int last = -1;
        for (int i = 0; i < 2 * Shape.COUNT; i++) {
            int k = i % Shape.COUNT;
            if (hand.weight()[k] > 0) {
                last = k;
            }
            if (last >= 0) {
                px[k] = hand.weight()[k] > 0 ? tracks.head().x()[k] - hand.x()[k] : px[last];
                py[k] = hand.weight()[k] > 0 ? tracks.head().y()[k] - hand.y()[k] : py[last];
            }
        }
        MeanTrack tether = new MeanTrack(px, py, hand.weight());
        boolean still =
                !shape.sized()
                        && new MeanTrack(shape.handX(), shape.handY(), hand.weight()).spread()
                                < 1e-9;
        Lie lie = still ? pointing(hand, tether, shape) : Lie.hand(hand, shape, turns);
        double astray = astray(tether, shape, lie);
        boolean winds = Shape.winding(px, py) == shape.winding();
        return new SideHeld(
                KeptAs.HAND_PATH, shape, hand, lie, HAND_HARDER + (winds ? ASTRAY * astray : 1));
    }

    // A still hand tells no time: its poi does.
    private static Lie pointing(MeanTrack hand, MeanTrack tether, Shape shape) {
        Lie best = new Lie(0, 1, 0, 0, 0, Double.POSITIVE_INFINITY);
        for (int s = 0; s < Shape.COUNT; s++) {
            Lie tried = new Lie((double) s / Shape.COUNT, 1, 0, 0, 0, 0);
            double astray = astray(tether, shape, tried);
            if (astray < best.off()) {
                best = new Lie(tried.shift(), 1, 0, 0, 0, astray);
            }
        }
        return new Lie(best.shift(), 1, 0, hand.mean(hand.x()), hand.mean(hand.y()), hand.spread());
    }

    /** Root mean square of how far the poi points astray, as a share of the tether; 0 to 2. */
    private static double astray(MeanTrack tether, Shape shape, Lie lie) {
        int n = Shape.COUNT;
        int shift = (int) Math.round(lie.shift() * n);
        double c = Math.cos(lie.turned());
        double s = Math.sin(lie.turned());
        double sum = 0;
        double all = 0;
        for (int i = 0; i < n; i++) {
            double w = tether.weight()[i];
            if (w == 0) {
                continue;
            }
            int j = Math.floorMod(i + shift, n);
            double mx = c * shape.tetherX()[j] - s * shape.tetherY()[j];
            double my = s * shape.tetherX()[j] + c * shape.tetherY()[j];
            double size = Math.hypot(mx, my) * Math.hypot(tether.x()[i], tether.y()[i]);
            double dot = (mx * tether.x()[i] + my * tether.y()[i]) / Math.max(1e-9, size);
            sum += w * (2 - 2 * dot);
            all += w;
        }
        return all > 0 ? Math.sqrt(sum / all) : 2;
    }

    /** How far it is from what was meant, metres; for comparing. */
    double cost() {
        return lie.off() + extra;
    }
}

package deferent.search.crossing;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Side;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * Measures how far a state of one pairing is from a state of another, after the best that the
 * freedoms allow has been done to the other: {@link #square} is the sum, over the compared points,
 * of the squares of distance and velocity difference, each in its tolerance; {@link #worst} is the
 * greatest of them, and the state is within tolerance where that is at most 1.
 *
 * <p>What is best is taken in the sense of {@link #square}, in turns, each of which has a closed
 * form: tempo by regression of one set of velocities on the other, turn by the angle of their
 * complex correlation (Procrustes in the plane), shift by the mean, each brought to the nearer end
 * of what is allowed. One gauge serves one thread.
 */
final class Gauge {
    private static final int ROUNDS = 30;

    private final CrossingRequest request;
    private final boolean[] points = new boolean[State24.POINTS];
    private final double placeWeight;
    private final double speedWeight;
    private final double most;
    private final double turnMost;
    private final double tempoMost;
    private final double slowest;
    private final double fastest;
    private final double[] pivot = new double[3];
    private final double[] u = new double[3];
    private final double[] v = new double[3];
    private final int compared;

    private final double[] moved = new double[State24.SIZE];
    private final double[] shift = new double[3];
    private double turn;
    private double tempo = 1;
    private double square;
    private double worst;

    /**
     * @param to the pairing that may be changed
     */
    Gauge(CrossingRequest request, States to) {
        this.request = request;
        placeWeight = 1 / (request.place() * request.place());
        speedWeight = 1 / (request.speed() * request.speed());
        Freedom freedom = request.freedom();
        most = freedom.shift();
        turnMost = turns(to.pairing(), request.who()) ? freedom.turn() : 0;
        tempoMost = to.pairing().setsOwnTempo() ? 1 : freedom.tempo();
        // A pairing's tempo is 1 to 600 a minute.
        slowest = Math.max(1 / tempoMost, Math.min(1, 1 / to.pairing().tempo()));
        fastest = Math.min(tempoMost, Math.max(1, 600 / to.pairing().tempo()));
        State24.put(to.middle(request.who()), pivot, 0);
        Place place = to.pairing().part(request.who().sides().get(0)).place();
        State24.put(place.plane().u(), u, 0);
        State24.put(place.plane().v(), v, 0);
        int n = 0;
        for (int p = 0; p < State24.POINTS; p++) {
            points[p] = request.compares(p);
            n += points[p] ? 1 : 0;
        }
        compared = n;
    }

    /** Whether a pairing can be turned as a whole in its plane. */
    static boolean turns(Pairing pairing, Who who) {
        if (pairing.setsOwnTempo()) {
            return false;
        }
        Vector3D normal = pairing.part(who.sides().get(0)).place().plane().normal();
        for (Side side : Side.values()) {
            Place place = pairing.part(side).place();
            if (place.turn().turns() != 0
                    || place.plane().normal().crossProduct(normal).getNorm() > 1e-9) {
                return false;
            }
        }
        return true;
    }

    boolean turnsOrShifts() {
        return turnMost > 0 || most > 0;
    }

    boolean turns() {
        return turnMost > 0;
    }

    boolean shifts() {
        return most > 0;
    }

    double tempoMost() {
        return tempoMost;
    }

    CrossingRequest request() {
        return request;
    }

    /** Compares the state that starts at {@code i} of {@code a} with that at {@code j} of b. */
    void measure(double[] a, int i, double[] b, int j) {
        turn = 0;
        tempo = 1;
        shift[0] = 0;
        shift[1] = 0;
        shift[2] = 0;
        System.arraycopy(b, j, moved, 0, State24.SIZE);
        if (turnMost > 0 || tempoMost > 1) {
            alternate(a, i, b, j);
        } else if (most > 0) {
            setShift(a, i);
        }
        sum(a, i);
    }

    private void alternate(double[] a, int i, double[] b, int j) {
        if (turnMost > 0 && most > 0) {
            // Turn first about the means, which is best where no limit of the shift binds.
            turn = bestTurn(a, i, b, j, true);
        }
        for (int round = 0; round < ROUNDS; round++) {
            double turnWas = turn;
            double tempoWas = tempo;
            if (round > 0 && turnMost > 0) {
                turn = bestTurn(a, i, b, j, false);
            } else if (turnMost > 0 && most == 0) {
                turn = bestTurn(a, i, b, j, false);
            }
            place(b, j);
            setTempo(a, i, b, j);
            if (most > 0) {
                setShift(a, i);
            }
            if (round > 0
                    && Math.abs(turn - turnWas) < 1e-10
                    && Math.abs(tempo - tempoWas) < 1e-10) {
                return;
            }
        }
    }

    // b turned and re-timed, not yet shifted.
    private void place(double[] b, int j) {
        double c = Math.cos(turn);
        double s = Math.sin(turn);
        for (int p = 0; p < 2 * State24.POINTS; p++) {
            boolean velocity = p >= State24.POINTS;
            double x = b[j + 3 * p];
            double y = b[j + 3 * p + 1];
            double z = b[j + 3 * p + 2];
            if (!velocity) {
                x -= pivot[0];
                y -= pivot[1];
                z -= pivot[2];
            }
            double along = x * u[0] + y * u[1] + z * u[2];
            double across = x * v[0] + y * v[1] + z * v[2];
            double du = (c - 1) * along - s * across;
            double dv = s * along + (c - 1) * across;
            double k = velocity ? tempo : 1;
            moved[3 * p] = k * (x + du * u[0] + dv * v[0]) + (velocity ? 0 : pivot[0]);
            moved[3 * p + 1] = k * (y + du * u[1] + dv * v[1]) + (velocity ? 0 : pivot[1]);
            moved[3 * p + 2] = k * (z + du * u[2] + dv * v[2]) + (velocity ? 0 : pivot[2]);
        }
        shift[0] = 0;
        shift[1] = 0;
        shift[2] = 0;
    }

    private void setTempo(double[] a, int i, double[] b, int j) {
        if (tempoMost <= 1 || speedWeight == 0) {
            return;
        }
        double both = 0;
        double own = 0;
        for (int p = 0; p < State24.POINTS; p++) {
            if (points[p]) {
                for (int k = 0; k < 3; k++) {
                    int at = State24.VELOCITY + 3 * p + k;
                    both += a[i + at] * moved[at];
                    own += moved[at] * moved[at];
                }
            }
        }
        double best = own > 0 ? tempo * both / own : 1;
        tempo = Math.max(slowest, Math.min(fastest, best));
        place(b, j);
    }

    private void setShift(double[] a, int i) {
        double[] mean = new double[3];
        for (int p = 0; p < State24.POINTS; p++) {
            if (points[p]) {
                for (int k = 0; k < 3; k++) {
                    mean[k] += (a[i + 3 * p + k] - moved[3 * p + k]) / compared;
                }
            }
        }
        double size = Math.sqrt(mean[0] * mean[0] + mean[1] * mean[1] + mean[2] * mean[2]);
        double share = size > most ? most / size : 1;
        for (int k = 0; k < 3; k++) {
            shift[k] = share * mean[k];
        }
        for (int p = 0; p < State24.POINTS; p++) {
            for (int k = 0; k < 3; k++) {
                moved[3 * p + k] += shift[k];
            }
        }
    }

    // The angle of Σ w·a·conj(b) over places (from the pivot, or from their means) and velocities.
    private double bestTurn(double[] a, int i, double[] b, int j, boolean fromMeans) {
        double cos = 0;
        double sin = 0;
        double[] ma = new double[3];
        double[] mb = new double[3];
        for (int k = 0; k < 3; k++) {
            ma[k] = pivot[k] + shift[k];
            mb[k] = pivot[k];
        }
        if (fromMeans) {
            for (int k = 0; k < 3; k++) {
                ma[k] = 0;
                mb[k] = 0;
                for (int p = 0; p < State24.POINTS; p++) {
                    if (points[p]) {
                        ma[k] += a[i + 3 * p + k] / compared;
                        mb[k] += b[j + 3 * p + k] / compared;
                    }
                }
            }
        }
        for (int p = 0; p < 2 * State24.POINTS; p++) {
            boolean velocity = p >= State24.POINTS;
            if (!points[p % State24.POINTS]) {
                continue;
            }
            double w = velocity ? speedWeight * tempo : placeWeight;
            double ax = a[i + 3 * p] - (velocity ? 0 : ma[0]);
            double ay = a[i + 3 * p + 1] - (velocity ? 0 : ma[1]);
            double az = a[i + 3 * p + 2] - (velocity ? 0 : ma[2]);
            double bx = b[j + 3 * p] - (velocity ? 0 : mb[0]);
            double by = b[j + 3 * p + 1] - (velocity ? 0 : mb[1]);
            double bz = b[j + 3 * p + 2] - (velocity ? 0 : mb[2]);
            double au = ax * u[0] + ay * u[1] + az * u[2];
            double av = ax * v[0] + ay * v[1] + az * v[2];
            double bu = bx * u[0] + by * u[1] + bz * u[2];
            double bv = bx * v[0] + by * v[1] + bz * v[2];
            cos += w * (au * bu + av * bv);
            sin += w * (av * bu - au * bv);
        }
        double best = cos == 0 && sin == 0 ? 0 : Math.atan2(sin, cos);
        return Math.max(-turnMost, Math.min(turnMost, best));
    }

    private void sum(double[] a, int i) {
        double total = 0;
        double greatest = 0;
        for (int p = 0; p < State24.POINTS; p++) {
            if (!points[p]) {
                continue;
            }
            double place = apart(a, i, 3 * p) * placeWeight;
            double speed =
                    speedWeight == 0 ? 0 : apart(a, i, State24.VELOCITY + 3 * p) * speedWeight;
            total += place + speed;
            greatest = Math.max(greatest, Math.max(place, speed));
        }
        square = total;
        worst = Math.sqrt(greatest);
    }

    private double apart(double[] a, int i, int at) {
        double x = a[i + at] - moved[at];
        double y = a[i + at + 1] - moved[at + 1];
        double z = a[i + at + 2] - moved[at + 2];
        return x * x + y * y + z * z;
    }

    /** Writes what remains, in tolerances, 24 numbers; 0 where nothing is compared. */
    void residuals(double[] a, double[] out) {
        for (int k = 0; k < State24.SIZE; k++) {
            double w = Math.sqrt(k < State24.VELOCITY ? placeWeight : speedWeight);
            out[k] = points[k / 3 % State24.POINTS] && w > 0 ? w * (a[k] - moved[k]) : 0;
        }
    }

    /** The other state as it was moved last. */
    double[] moved() {
        return moved;
    }

    double square() {
        return square;
    }

    double worst() {
        return worst;
    }

    double turn() {
        return turn;
    }

    double tempo() {
        return tempo;
    }

    Vector3D shift() {
        return new Vector3D(shift[0], shift[1], shift[2]);
    }

    Vector3D pivot() {
        return new Vector3D(pivot[0], pivot[1], pivot[2]);
    }
}

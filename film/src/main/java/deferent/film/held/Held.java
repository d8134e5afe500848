package deferent.film.held;

import deferent.film.measured.Measured;
import deferent.film.measured.Measured.HowSided;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Refusal;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** A film held against a meant pairing: what is off, what matters most first. */
public final class Held {
    /** What spoils less of the picture than this is not said, metres: our choice. */
    public static final double WORTH_SAYING = 0.03;

    private static final double NO_DIFFERENCE = 0.003; // metres, in which way round hands lie
    private static final double SURE_HANDS = 0.03; // metres, where the hands' places tell
    private static final double ELSE_OFF = 0.1; // metres, with size, time and centre fitted
    private static final double ELSE_SMALL = 0.5; // of the meant size
    private static final double TIMED = 0.3; // metres that a whole cycle out of time counts as
    private static final double TILT_BETTER = 0.7; // of what is left level
    private static final double LEAST_BETTER = 0.015; // metres
    private static final double LEAST_TILT = Math.toRadians(5);
    private static final double STANDS_OUT = 1.8; // times the mean, for one place to be told
    private static final double ONE_PLACE = 0.08; // metres, a hand's breadth
    private static final double UNEVEN = 0.035; // metres of scatter, more than a film's own
    private static final double WANDERS = 0.06; // of a cycle
    private static final double SURE = 2; // standard deviations, for a link to be called open
    private static final double ROUGHLY = 0.15; // of a scatter, by which it differs between films
    private static final double TAKEN = 2;
    private static final double LESS = 0.5; // weight of what is seen at one place alone

    private final Measured measured;
    private final Pairing meant;
    private final Map<Side, SideHeld> sides;
    private final WorkedOnce<Trace> corded = new WorkedOnce<>(this::corded);
    private final WorkedOnce<List<OpenLink>> links = new WorkedOnce<>(() -> OpenLink.of(this));
    private final WorkedOnce<List<Finding>> findings = new WorkedOnce<>(this::found);

    private Held(Measured measured, Pairing meant, Map<Side, SideHeld> sides) {
        this.measured = measured;
        this.meant = meant;
        this.sides = sides;
    }

    /**
     * A film against a pairing. Where it is not settled which head is which hand's, or which sense
     * is meant, what lies better is taken.
     *
     * @param anySense whether the phrase leaves the sense open
     */
    public static Held of(Measured measured, Pairing pairing, boolean anySense) {
        for (Side side : Side.values()) {
            if (!pairing.part(side).place().plane().equals(Plane.WALL)
                    || pairing.part(side).place().turn().turns() != 0) {
                throw new Refusal(
                        "is not in the wall plane",
                        "the " + side.word() + " hand's motion",
                        "film what faces the camera: other planes cannot be told from one film");
            }
        }
        Pairing meant = NearestPairing.inTempo(pairing, measured.period());
        Held best = once(measured, meant);
        if (anySense) {
            best = better(best, once(measured, meant.with(meant.sense().reversed())), 0);
        }
        if (measured.sides() != HowSided.SAID) {
            double sure = measured.sides() == HowSided.HANDS ? SURE_HANDS : NO_DIFFERENCE;
            Measured swapped = measured.swapped(HowSided.PHRASE);
            Held other = once(swapped, meant);
            if (anySense) {
                other = better(other, once(swapped, meant.with(meant.sense().reversed())), 0);
            }
            boolean tells = Math.abs(best.cost() - other.cost()) > sure;
            best = better(best, other, sure);
            if (tells) {
                best = new Held(best.measured.sided(HowSided.PHRASE), best.meant, best.sides);
            }
        }
        return best;
    }

    private static Held better(Held one, Held other, double by) {
        return other.cost() < one.cost() - by ? other : one;
    }

    private static Held once(Measured measured, Pairing meant) {
        Trace trace = Trace.of(meant);
        Map<Side, SideHeld> sides = new EnumMap<>(Side.class);
        for (Side side : Side.values()) {
            sides.put(
                    side,
                    SideHeld.of(
                            SideHeld.Tracks.of(measured.side(side)), Shape.of(trace, side), false));
        }
        return new Held(measured, meant, sides);
    }

    /**
     * How many metres one of a film's own units is, for its heads to draw the meant figure: by the
     * tether where the figure tells it from the hand's path, else by the whole.
     *
     * @param raw the film in units of its own
     */
    public static double metresAPixel(Measured raw, Pairing pairing) {
        Pairing meant = NearestPairing.inTempo(pairing, raw.period());
        double least = Double.POSITIVE_INFINITY;
        double best = Double.NaN;
        for (Pairing sense : List.of(meant, meant.with(meant.sense().reversed()))) {
            Trace trace = Trace.of(sense);
            for (Side first : Side.values()) {
                double left = 0;
                double log = 0;
                for (Side side : Side.values()) {
                    Side other = first == Side.LEFT ? side : side.other();
                    Lie.Unit unit = Lie.unit(SideHeld.head(raw.side(side)), Shape.of(trace, other));
                    left += unit.left();
                    log += Math.log(unit.metres()) / 2;
                }
                if (left < least) {
                    least = left;
                    best = Math.exp(log);
                }
            }
        }
        if (Double.isNaN(best)) {
            throw new Refusal(
                    "do not draw anything like that",
                    "the film's lights",
                    "give another phrase, or --scale");
        }
        return best;
    }

    public Measured measured() {
        return measured;
    }

    /** At the film's tempo, and in the sense in which it lies better. */
    public Pairing meant() {
        return meant;
    }

    /** What is off by more than is worth saying, what matters most first. */
    public List<Finding> findings() {
        return findings.get();
    }

    /** What is off on each count. */
    public List<Beat> beats() {
        return BeatByBeat.of(this);
    }

    /** How far the meant pairing's links stand open; only those of which something can be told. */
    public List<OpenLink> links() {
        return links.get();
    }

    /** The meant pairing as cords let it be spun, each side keeping what it kept in the film. */
    Trace asCordsLet() {
        return corded.get();
    }

    private Trace corded() {
        Map<Side, KeptAs> kept = new EnumMap<>(Side.class);
        sides.forEach((side, held) -> kept.put(side, held.kept()));
        return AsCordsLet.of(meant, kept);
    }

    /** Where the meant pairing's origin lies in the film, both sides together: x and y, metres. */
    double[] origin() {
        return new double[] {
            (held(Side.LEFT).lie().x() + held(Side.RIGHT).lie().x()) / 2,
            (held(Side.LEFT).lie().y() + held(Side.RIGHT).lie().y()) / 2
        };
    }

    /** What a side's spinner kept. */
    public KeptAs kept(Side side) {
        return held(side).kept();
    }

    /** How far its head or hand is from the meant one, size, time and centre fitted, metres. */
    public double off(Side side) {
        return held(side).lie().off();
    }

    /** Whether a side lies so far from what was meant that it is rather another motion. */
    public boolean isSomethingElse() {
        for (Side side : Side.values()) {
            double factor = held(side).lie().factor();
            if (off(side) > ELSE_OFF || factor < ELSE_SMALL || factor > 1 / ELSE_SMALL) {
                return true;
            }
        }
        return false;
    }

    /** For comparing: how far all is off, sizes and timing too, metres. */
    public double cost() {
        double cost = TIMED * Math.abs(late());
        for (Side side : Side.values()) {
            SideHeld held = held(side);
            cost += held.cost() + Math.abs(held.lie().factor() - 1) * radius(side) / 4;
        }
        return cost;
    }

    private SideHeld held(Side side) {
        SideHeld held = sides.get(side);
        if (held == null) {
            throw new IllegalStateException("a film has both sides");
        }
        return held;
    }

    /**
     * Where the meant figure's head, or hand, lies over the measured: what of it was fitted is its
     * centre and the time of both, not its size.
     *
     * @return x and y at {@link Shape#COUNT} even moments of the measured cycle, metres
     */
    public double[][] meantOver(Side side, boolean head) {
        Shape shape = held(side).shape();
        int n = Shape.COUNT;
        double[][] at = new double[2][n];
        double x = origin()[0];
        double y = origin()[1];
        int shift = (int) Math.round(ahead() * n);
        for (int i = 0; i < n; i++) {
            int j = Math.floorMod(i + shift, n);
            at[0][i] = x + shape.handX()[j] + (head ? shape.tetherX()[j] : 0);
            at[1][i] = y + shape.handY()[j] + (head ? shape.tetherY()[j] : 0);
        }
        return at;
    }

    /** How far into the meant cycle the measured one begins, a share of it. */
    public double ahead() {
        return held(Side.LEFT).lie().shift() + late() / 2;
    }

    // How far the right side is ahead of where it should be against the left, common cycles.
    private double late() {
        int folds = Math.max(meant.left().cycles(), meant.right().cycles());
        double apart = held(Side.RIGHT).lie().shift() - held(Side.LEFT).lie().shift();
        return Math.IEEEremainder(apart, 1.0 / folds);
    }

    private double radius(Side side) {
        return held(side).shape().sized() ? meant.part(side).motion().path().radius() : 0;
    }

    // What is off -------------------------------------------------------------------------------

    private List<Finding> found() {
        List<Finding> all = new ArrayList<>();
        for (Side side : Side.values()) {
            size(side).ifPresent(all::add);
            boolean leans = tilt(side).map(all::add).orElse(false);
            if (!leans) {
                boolean flat = proportions(side).map(all::add).orElse(false);
                if (!flat) {
                    there(side).ifPresent(all::add);
                }
            }
            double scatter = measured.side(side).head().scatter();
            if (scatter > UNEVEN) {
                all.add(finding(Fault.UNEVEN, side, scatter, 0, "", scatter * LESS, 0));
            }
        }
        timing().ifPresent(all::add);
        all.addAll(centres());
        links().forEach(link -> opened(link).ifPresent(all::add));
        double range = measured.drift().range();
        if (range > WANDERS * measured.period()) {
            all.add(new Finding(Fault.DRIFT, Optional.empty(), range, 0, "", WORTH_SAYING, 0));
        }
        return all.stream()
                .filter(f -> f.weight() >= WORTH_SAYING)
                .sorted(Comparator.comparingDouble(Finding::weight).reversed())
                .toList();
    }

    /** Every kind of thing that may be off and can be measured in any film of this pairing. */
    public List<OffAmount> amounts() {
        List<OffAmount> all = new ArrayList<>();
        double scale = measured.how().error();
        for (Side side : Side.values()) {
            double size = radius(side) * held(side).lie().factor();
            if (radius(side) > 0) {
                double by = size - radius(side);
                double error = Math.hypot(left(side), scale * size);
                all.add(new OffAmount(Fault.SIZE, Optional.of(side), by, error));
            }
            double scatter = measured.side(side).head().scatter();
            all.add(new OffAmount(Fault.UNEVEN, Optional.of(side), scatter, scatter * ROUGHLY));
        }
        double pace = length() / measured.period();
        double both = Math.hypot(left(Side.LEFT), left(Side.RIGHT));
        double ahead = late() * measured.period();
        all.add(new OffAmount(Fault.LATE, Optional.empty(), ahead, both / pace));
        for (Finding centre : centres()) {
            double by = centre.value();
            double error = Math.hypot(both, scale * by);
            all.add(new OffAmount(centre.fault(), centre.side(), by, error));
        }
        double range = measured.drift().range();
        double unsure = Math.hypot(range * ROUGHLY, both / pace);
        all.add(new OffAmount(Fault.DRIFT, Optional.empty(), range, unsure));
        for (OpenLink link : links()) {
            Optional<Side> rider = Optional.of(link.carrier().other());
            all.add(new OffAmount(Fault.LINK, rider, link.open(), link.error()));
        }
        return List.copyOf(all);
    }

    // What the fit leaves over is no noise but a shape; a size takes about so much of it.
    private double left(Side side) {
        return Math.hypot(off(side) / TAKEN, measured.side(side).head().error(0, 0));
    }

    private double length() {
        double length = 0;
        for (Side one : Side.values()) {
            double[][] model = fitted(one);
            double sum = 0;
            for (int i = 0; i < Shape.COUNT; i++) {
                int j = (i + 1) % Shape.COUNT;
                sum += Math.hypot(model[0][j] - model[0][i], model[1][j] - model[1][i]);
            }
            length = Math.max(length, sum);
        }
        return length;
    }

    private Finding finding(
            Fault fault,
            Side side,
            double value,
            double meantValue,
            String what,
            double weight,
            int moment) {
        return new Finding(
                fault,
                Optional.of(side),
                value,
                meantValue,
                what,
                weight,
                measured.period() * moment / Shape.COUNT);
    }

    private String noun(Side side) {
        return meant.part(side).motion().riding()
                ? "path"
                : meant.part(side).motion().path().noun();
    }

    private Optional<Finding> size(Side side) {
        double radius = radius(side);
        double by = (held(side).lie().factor() - 1) * radius;
        return radius == 0
                ? Optional.empty()
                : Optional.of(finding(Fault.SIZE, side, by, radius, noun(side), Math.abs(by), 0));
    }

    private Optional<Finding> tilt(Side side) {
        SideHeld held = held(side);
        if (held.kept() != KeptAs.FIGURE || meant.part(side).motion().undriven()) {
            return Optional.empty();
        }
        Lie turned = Lie.head(held.track(), held.shape(), true);
        double level = held.lie().off();
        boolean leans =
                Math.abs(turned.turned()) > LEAST_TILT
                        && turned.off() < TILT_BETTER * level
                        && level - turned.off() > LEAST_BETTER;
        return leans
                ? Optional.of(
                        finding(
                                Fault.TILT,
                                side,
                                turned.turned(),
                                0,
                                "",
                                Math.max(level, held.track().spread() * Math.abs(turned.turned())),
                                0))
                : Optional.empty();
    }

    private double[][] fitted(Side side) {
        SideHeld held = held(side);
        Shape shape = held.shape().fitted(held.lie().factor(), 0);
        boolean head = held.kept() == KeptAs.FIGURE;
        int n = Shape.COUNT;
        int shift = (int) Math.round(held.lie().shift() * n);
        double[][] at = new double[2][n];
        for (int i = 0; i < n; i++) {
            int j = Math.floorMod(i + shift, n);
            at[0][i] = held.lie().x() + shape.handX()[j] + (head ? shape.tetherX()[j] : 0);
            at[1][i] = held.lie().y() + shape.handY()[j] + (head ? shape.tetherY()[j] : 0);
        }
        return at;
    }

    private Optional<Finding> proportions(Side side) {
        MeanTrack track = held(side).track();
        double[][] model = fitted(side);
        double wide = across(model[0]);
        double high = across(model[1]);
        if (Math.min(wide, high) < 0.1) {
            return Optional.empty();
        }
        double byWide = (stretch(track, track.x(), model[0]) - 1) * wide;
        double byHigh = (stretch(track, track.y(), model[1]) - 1) * high;
        double uneven = byHigh - byWide;
        double even = (byHigh + byWide) / 2;
        if (Math.abs(uneven) > Math.abs(even) * 1.2) {
            return weighed(
                    finding(
                            Fault.HEIGHT,
                            side,
                            uneven,
                            high,
                            held(side).kept() == KeptAs.FIGURE ? "figure" : "hand's " + noun(side),
                            Math.abs(uneven) / 2,
                            0));
        }
        boolean sized = held(side).shape().sized();
        return weighed(
                finding(Fault.ALL_OVER, side, even, wide, "", sized ? 0 : Math.abs(even) / 2, 0));
    }

    private static Optional<Finding> weighed(Finding finding) {
        return finding.weight() >= WORTH_SAYING ? Optional.of(finding) : Optional.empty();
    }

    private static double across(double[] axis) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (double a : axis) {
            least = Math.min(least, a);
            most = Math.max(most, a);
        }
        return most - least;
    }

    private static double stretch(MeanTrack track, double[] seen, double[] model) {
        double ms = track.mean(seen);
        double mm = track.mean(model);
        double top = 0;
        double bottom = 0;
        for (int i = 0; i < seen.length; i++) {
            double w = track.weight()[i];
            top += w * (seen[i] - ms) * (model[i] - mm);
            bottom += w * (model[i] - mm) * (model[i] - mm);
        }
        return bottom > 0 ? top / bottom : 1;
    }

    /** The one place at which a head is furthest off, if it stands out. */
    private Optional<Finding> there(Side side) {
        SideHeld held = held(side);
        if (held.kept() != KeptAs.FIGURE) {
            return Optional.empty();
        }
        MeanTrack track = held.track();
        double[][] model = fitted(side);
        int n = Shape.COUNT;
        int worst = 0;
        double most = 0;
        for (int i = 0; i < n; i++) {
            double off = Math.hypot(track.x()[i] - model[0][i], track.y()[i] - model[1][i]);
            if (off > most) {
                most = off;
                worst = i;
            }
        }
        if (most < ONE_PLACE || most < STANDS_OUT * held.lie().off()) {
            return Optional.empty();
        }
        int next = (worst + 1) % n;
        int last = Math.floorMod(worst - 1, n);
        double step = measured.period() / n;
        double vx = (model[0][next] - model[0][last]) / 2 / step;
        double vy = (model[1][next] - model[1][last]) / 2 / step;
        double ex = track.x()[worst] - model[0][worst];
        double ey = track.y()[worst] - model[1][worst];
        double speed = Math.max(1e-6, Math.hypot(vx, vy));
        double along = (ex * vx + ey * vy) / speed;
        double mx = track.mean(model[0]);
        double my = track.mean(model[1]);
        double rx = model[0][worst] - mx;
        double ry = model[1][worst] - my;
        String where = where(rx, ry);
        if (Math.abs(along) > 0.7 * most && speed > 0.5) {
            return Optional.of(
                    finding(Fault.LATE_THERE, side, -along / speed, 0, where, most * LESS, worst));
        }
        double out = (ex * rx + ey * ry) / Math.max(1e-6, Math.hypot(rx, ry));
        return Optional.of(
                finding(
                        Fault.OFF_THERE,
                        side,
                        Math.copySign(most, out),
                        0,
                        where,
                        most * LESS,
                        worst));
    }

    private static final List<String> WHERE =
            List.of(
                    "on your left",
                    "at the upper left",
                    "at the top",
                    "at the upper right",
                    "on your right",
                    "at the lower right",
                    "at the bottom",
                    "at the lower left");

    private static String where(double x, double y) {
        return WHERE.get(Math.floorMod(Math.round(Math.atan2(y, x) / (Math.PI / 4)), 8));
    }

    private Optional<Finding> timing() {
        double late = late();
        Side side = late < 0 ? Side.RIGHT : Side.LEFT;
        double by = Math.abs(late) * measured.period();
        return Optional.of(
                finding(
                        Fault.LATE,
                        side,
                        -by,
                        0,
                        meant.part(side).still() ? "poi" : "hand",
                        Math.abs(late) * length(),
                        0));
    }

    // A link that opens follows from what else is off, so it weighs as what is seen at one place.
    private static Optional<Finding> opened(OpenLink link) {
        String where =
                String.format(
                        Locale.ROOT,
                        "%.0f cm from %s %s, closest %.0f cm %s",
                        100 * link.apart(),
                        link.head(),
                        link.on(),
                        100 * link.closest(),
                        link.closestOn());
        return link.open() < SURE * link.error()
                ? Optional.empty()
                : Optional.of(
                        new Finding(
                                Fault.LINK,
                                Optional.of(link.carrier().other()),
                                link.open(),
                                link.meant(),
                                where,
                                LESS * link.open(),
                                link.moment()));
    }

    private List<Finding> centres() {
        Lie left = held(Side.LEFT).lie();
        Lie right = held(Side.RIGHT).lie();
        double dx = right.x() - left.x();
        double dy = right.y() - left.y();
        String what = noun(Side.RIGHT).equals("circle") ? "circle's centre" : "hand";
        return List.of(
                finding(Fault.CENTRE_UP, Side.RIGHT, dy, 0, what, Math.abs(dy), 0),
                finding(Fault.CENTRE_ACROSS, Side.RIGHT, dx, 0, what, Math.abs(dx), 0));
    }
}

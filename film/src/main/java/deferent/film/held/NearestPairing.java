package deferent.film.held;

import deferent.film.measured.Measured;
import deferent.film.measured.MeasuredSide;
import deferent.motion.pairing.Direction;
import deferent.motion.pairing.Gravity;
import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.motion.pairing.Place;
import deferent.motion.pairing.Plane;
import deferent.motion.pairing.Sense;
import deferent.motion.pairing.Swing;
import deferent.motion.pairing.Tether;
import deferent.motion.pairing.Timing;
import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Refused;
import deferent.motion.shared.Side;
import deferent.motion.trade.Seen;
import deferent.motion.trade.Trade;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * The pairing of the trade's that a film lies nearest to. Each side is laid on every motion of the
 * table, at every tempo that goes into the common cycle and in either sense, with the size of its
 * hand path, its tilt, centre and time free; then the two sides are put together, or one lets its
 * hand ride the other's head. Where several lie alike, the more usual wins.
 *
 * <p>Our own, since the index of the search compares whole ideal pairings, and a film is neither:
 * its hands are a cord's, and one of the two curves a side may be far off while the other is kept.
 *
 * @param pairing at the film's tempo; a size within a fifth of the trade's own is taken as that
 * @param phrase the same in trade words; empty where they cannot say it
 * @param off how far hands or heads are from it, metres, root mean square
 * @param kept what each side kept
 */
public record NearestPairing(
        Pairing pairing, Optional<String> phrase, double off, Map<Side, KeptAs> kept) {
    // All of these weigh one explanation against another, metres; our choice, by the test films.
    private static final double SIZE = 0.02;
    private static final double TILTED = 0.012;
    private static final double ASKEW = 0.02;
    private static final double FASTER = 0.006;
    private static final double RIDES = 0.015;
    private static final double OPPOSITE = 0.001;
    private static final double ODD_TIMING = 0.004;

    private static final int MOST_CYCLES = 4;
    private static final int FEW = 8; // of a side that are tried with the other's
    private static final double AS_USUAL = 0.2; // share of a size that counts as the trade's own
    private static final double UPRIGHT = Math.toRadians(12);
    private static final double OWN_TEMPO = 0.06; // share by which a swing may miss its own tempo
    private static final double APART = 0.2; // metres between centres that are meant to be apart

    /** How one side may be. */
    private record Fit(Motion motion, int cycles, boolean mirrored, SideHeld held, double cost) {}

    /** How both may be. */
    private record Both(Fit left, Fit right, double ahead, double cost) {}

    /** Of what was measured. */
    public static NearestPairing of(Measured measured) {
        Map<Side, List<Fit>> fits = new EnumMap<>(Side.class);
        for (Side side : Side.values()) {
            fits.put(side, fits(measured.side(side), measured.period()));
        }
        List<Both> all = new ArrayList<>();
        for (Fit left : few(fits, Side.LEFT)) {
            for (Fit right : few(fits, Side.RIGHT)) {
                all.add(both(left, right));
            }
        }
        for (Side carrier : Side.values()) {
            SideHeld.Tracks tracks = SideHeld.Tracks.of(measured.side(carrier.other()));
            for (Fit lead : few(fits, carrier).subList(0, Math.min(4, few(fits, carrier).size()))) {
                for (Fit rides : riders(lead, measured.side(carrier.other()), tracks)) {
                    all.add(carrier == Side.LEFT ? both(lead, rides) : both(rides, lead));
                }
            }
        }
        all.sort(Comparator.comparingDouble(Both::cost));
        for (Both one : all) {
            Optional<NearestPairing> made = made(measured, one);
            if (made.isPresent()) {
                return made.get();
            }
        }
        throw new IllegalStateException("no motion of the table can be made");
    }

    private static List<Fit> few(Map<Side, List<Fit>> fits, Side side) {
        List<Fit> all = fits.getOrDefault(side, List.of());
        return all.subList(0, Math.min(FEW, all.size()));
    }

    private static List<Fit> fits(MeasuredSide side, double period) {
        SideHeld.Tracks tracks = SideHeld.Tracks.of(side);
        List<Fit> fits = new ArrayList<>();
        for (Candidate candidate : Candidate.all(side.tether())) {
            for (int cycles = 1; cycles <= MOST_CYCLES; cycles++) {
                if (!inTime(candidate.motion(), side.tether(), period / cycles)) {
                    continue;
                }
                for (boolean mirrored : new boolean[] {false, true}) {
                    Shape shape = Shape.of(candidate.motion(), side.tether(), cycles, mirrored);
                    SideHeld level = SideHeld.of(tracks, shape, false);
                    double extra = candidate.rare() + FASTER * (cycles - 1);
                    fits.add(fit(candidate.motion(), cycles, mirrored, level, extra));
                    if (!candidate.motion().undriven()) {
                        SideHeld turned = SideHeld.of(tracks, shape, true);
                        fits.add(fit(candidate.motion(), cycles, mirrored, turned, extra));
                    }
                }
            }
        }
        fits.sort(Comparator.comparingDouble(Fit::cost));
        return fits;
    }

    private static Fit fit(
            Motion motion, int cycles, boolean mirrored, SideHeld held, double extra) {
        double tilt = Math.abs(held.lie().turned());
        double askew = Math.abs(Math.IEEEremainder(tilt, Math.PI / 4));
        double cost =
                held.cost()
                        + extra
                        + SIZE * Math.abs(Math.log(held.lie().factor()))
                        + (tilt < 1e-9 ? 0 : askew < UPRIGHT ? TILTED : ASKEW);
        return new Fit(motion, cycles, mirrored, held, cost);
    }

    private static boolean inTime(Motion motion, double tether, double period) {
        if (!motion.undriven()) {
            return true;
        }
        Swing swing = motion.spin().swing().orElseThrow();
        double own = swing.period(tether, Gravity.STANDARD);
        return Math.abs(own / period - 1) < OWN_TEMPO;
    }

    private static List<Fit> riders(Fit lead, MeasuredSide side, SideHeld.Tracks tracks) {
        Shape carrier =
                lead.held().shape().fitted(lead.held().lie().factor(), lead.held().lie().turned());
        boolean onArc =
                lead.motion().path().still()
                        && lead.motion().spin().turns() == 0
                        && lead.motion().spin().even().isEmpty();
        List<Fit> fits = new ArrayList<>();
        for (Candidate candidate : Candidate.all(side.tether())) {
            if (candidate.motion().spin().swings()) {
                continue;
            }
            for (boolean mirrored : new boolean[] {false, true}) {
                Optional<Motion> riding =
                        Trade.riding(new Seen(candidate.motion(), side.tether(), mirrored, onArc));
                if (riding.isEmpty()) {
                    continue;
                }
                Shape shape =
                        Shape.of(riding.get(), side.tether(), lead.cycles(), mirrored)
                                .riding(carrier, 0);
                SideHeld held = SideHeld.of(tracks, shape, false);
                fits.add(
                        fit(riding.get(), lead.cycles(), mirrored, held, RIDES + candidate.rare()));
            }
        }
        fits.sort(Comparator.comparingDouble(Fit::cost));
        return fits.subList(0, Math.min(FEW, fits.size()));
    }

    private static Both both(Fit left, Fit right) {
        double ahead = right.cycles() * (right.held().lie().shift() - left.held().lie().shift());
        double step = (double) right.cycles() / left.cycles();
        double best = ahead;
        for (int j = 0; j < left.cycles(); j++) {
            if (odd(ahead + j * step) < odd(best) - 1e-9) {
                best = ahead + j * step;
            }
        }
        best -= Math.floor(best);
        double cost =
                left.cost()
                        + right.cost()
                        + (left.mirrored() == right.mirrored() ? 0 : OPPOSITE)
                        + (odd(best) > NEAR_QUARTER ? ODD_TIMING : 0);
        return new Both(left, right, best, cost);
    }

    private static final double NEAR_QUARTER = 0.08;

    private static double odd(double ahead) {
        return Math.abs(Math.IEEEremainder(ahead, 0.25));
    }

    private static Optional<NearestPairing> made(Measured measured, Both both) {
        try {
            double ahead =
                    odd(both.ahead()) < NEAR_QUARTER
                            ? Math.rint(4 * both.ahead()) / 4
                            : Math.rint(100 * both.ahead()) / 100;
            ahead -= Math.floor(ahead);
            Pairing pairing =
                    new Pairing(
                            part(both.left(), measured.left(), Side.LEFT),
                            part(both.right(), measured.right(), Side.RIGHT),
                            Timing.of(ahead),
                            both.left().mirrored() == both.right().mirrored()
                                    ? Direction.SAME
                                    : Direction.OPPOSITE,
                            both.left().mirrored() ? Sense.COUNTER_CLOCKWISE : Sense.CLOCKWISE,
                            OptionalDouble.empty());
            pairing = apart(pairing, both);
            Pairing timed = inTempo(pairing, measured.period());
            Map<Side, KeptAs> kept = new EnumMap<>(Side.class);
            kept.put(Side.LEFT, both.left().held().kept());
            kept.put(Side.RIGHT, both.right().held().kept());
            return Optional.of(
                    new NearestPairing(
                            timed,
                            Phrase.write(pairing),
                            Math.max(both.left().held().cost(), both.right().held().cost()),
                            kept));
        } catch (Refused impossible) {
            return Optional.empty();
        }
    }

    /** The pairing at the tempo at which its common cycle lasts so long. */
    static Pairing inTempo(Pairing pairing, double period) {
        if (pairing.setsOwnTempo()) {
            return pairing;
        }
        double tempo = pairing.tempo() * pairing.period() / period;
        return pairing.withTempo(OptionalDouble.of(Math.max(1, Math.min(600, tempo))));
    }

    private static Part part(Fit fit, MeasuredSide side, Side which) {
        Motion motion = fit.motion();
        double factor = fit.held().lie().factor();
        if (Math.abs(factor - 1) > AS_USUAL && !motion.riding() && !motion.path().still()) {
            double radius = motion.path().radius() * factor;
            motion =
                    motion.withPath(
                            motion.path().resized(Math.max(1, Math.rint(100 * radius)) / 100));
        }
        double tilt = fit.held().lie().turned();
        if (Math.abs(tilt) > UPRIGHT) {
            double step = Math.toRadians(45);
            double near = step * Math.rint(tilt / step);
            double set =
                    Math.abs(near - tilt) < UPRIGHT
                            ? near
                            : Math.toRadians(5 * Math.rint(Math.toDegrees(tilt) / 5));
            motion = motion.turned(fit.mirrored() ? -set : set);
        }
        return new Part(
                motion, Tether.of(side.tether()), Place.usual(which, Plane.WALL), fit.cycles());
    }

    private static Pairing apart(Pairing pairing, Both both) {
        Lie left = both.left().held().lie();
        Lie right = both.right().held().lie();
        double dx = right.x() - left.x();
        double dy = right.y() - left.y();
        boolean rides = both.left().motion().riding() || both.right().motion().riding();
        if (rides || Math.hypot(dx, dy) < APART) {
            return pairing;
        }
        Place place = pairing.right().place();
        Vector3D moved = place.centre().add(new Vector3D(rounded(dx), rounded(dy), 0));
        return pairing.with(Side.RIGHT, pairing.right().with(place.withCentre(moved)));
    }

    private static double rounded(double metres) {
        return Math.rint(20 * metres) / 20;
    }
}

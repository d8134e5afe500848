package deferent.search.fit;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Size;
import deferent.motion.shared.Side;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * How much gap a centimetre, five degrees or a seventy-second of a cycle of each size costs, so
 * that the spinner knows what to practise. From the estimated shape gap and from the placed gap at
 * {@value #TIMES} instants, both ways, the worse one kept; dearest first.
 */
public final class Sensitivity {
    /** One centimetre, in metres. */
    public static final double LENGTH_STEP = 0.01;

    /** Five degrees, in radians. */
    public static final double ANGLE_STEP = Math.toRadians(5);

    /** Five degrees of a cycle, in cycles. */
    public static final double TIMING_STEP = 5.0 / 360;

    private static final int TIMES = 72;

    private Sensitivity() {}

    /**
     * Of all sizes of both hands that bear on the link from the carrier's head; the tempo does not.
     */
    public static List<Cost> of(Pairing pairing, Side carrier) {
        FitLink link = new FitLink(carrier);
        double shape = link.estimate(pairing);
        double placed = link.inPlane(pairing, TIMES);
        List<Cost> costs = new ArrayList<>();
        for (Size size : Size.of(pairing)) {
            double step = step(size);
            if (step == 0 || (size.kind() == Size.Kind.TETHER && !heads(size, pairing, carrier))) {
                continue;
            }
            double now = size.read(pairing).orElse(0);
            double shapeCost = 0;
            double placedCost = 0;
            for (double by : new double[] {step, -step}) {
                Optional<Pairing> set = FitLink.set(pairing, size, now + by);
                if (set.isPresent()) {
                    placedCost = Math.max(placedCost, link.inPlane(set.get(), TIMES) - placed);
                    if (figure(size)) {
                        shapeCost = Math.max(shapeCost, link.estimate(set.get()) - shape);
                    }
                }
            }
            costs.add(new Cost(size, step, shapeCost, placedCost));
        }
        costs.sort(Comparator.comparingDouble(Cost::gapCost).reversed());
        return List.copyOf(costs);
    }

    // The rider's own tether hangs below its hand and bears on nothing, unless the carrier rides
    // it.
    private static boolean heads(Size size, Pairing pairing, Side carrier) {
        return size.side() == carrier || pairing.part(carrier).motion().riding();
    }

    private static boolean figure(Size size) {
        return switch (size.kind()) {
            case HAND_RADIUS, TETHER, AMPLITUDE, START -> true;
            default -> false;
        };
    }

    private static double step(Size size) {
        return size.kind() == Size.Kind.TIMING
                ? TIMING_STEP
                : size.kind().length() ? LENGTH_STEP : size.kind().angle() ? ANGLE_STEP : 0;
    }
}

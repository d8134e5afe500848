package deferent.search.seek;

import deferent.motion.pairing.Motion;
import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Part;
import deferent.reading.body.Performer;
import deferent.search.fit.ArmsFit;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A linked pair in sizes that a hand can learn: tethers and hand paths in whole centimetres, angles
 * in steps of five degrees, the timing in eighths of a cycle, as large as the performer's arms
 * reach, and linked all the same. Rounding one size opens a link, so it is closed again by the
 * rider's hand path, and taken only where that comes to whole centimetres too.
 */
final class Learnable {
    private static final double CENTIMETRE = 0.01;
    private static final double ANGLE = Math.toRadians(5);
    private static final double TIMING = 1.0 / 8;
    private static final double WHOLE = 1e-6;

    /**
     * The largest within reach, or the largest at all where no performer is given.
     *
     * @param longest the carrier's tether at the most, metres; {@link ArmsFit#USUAL_SHORTEST} at
     *     the least
     */
    static Optional<Pairing> of(
            Space space,
            long carrier,
            long rider,
            Tethers tethers,
            double longest,
            Optional<Performer> performer) {
        Pairing given = new Staging(space, tethers, longest).pairing(carrier, rider);
        if (!roundAngles(given)) {
            return Optional.empty();
        }
        double most = longest;
        if (performer.isPresent() && !Judge.reached(Judge.reach(given, performer.get()))) {
            Optional<ArmsFit> smaller =
                    ArmsFit.within(given, performer.get(), ArmsFit.USUAL_SHORTEST);
            if (smaller.isEmpty()) {
                return Optional.empty();
            }
            most = smaller.get().pairing().left().tether().length();
        }
        int least = (int) Math.rint(ArmsFit.USUAL_SHORTEST / CENTIMETRE);
        for (int tether = (int) Math.floor(most / CENTIMETRE + WHOLE); tether >= least; tether--) {
            // a hundredth rather than times 0.01, so that 35 cm is 0.35 m
            Staging staging = new Staging(space, tethers, tether / 100.0);
            Optional<Pairing> found =
                    sized(staging, carrier, rider)
                            .filter(Learnable::roundLengths)
                            .filter(
                                    pairing ->
                                            performer.stream()
                                                    .map(arms -> Judge.reach(pairing, arms))
                                                    .allMatch(Judge::reached));
            if (found.isPresent()) {
                return found;
            }
        }
        return Optional.empty();
    }

    private static Optional<Pairing> sized(Staging staging, long carrier, long rider) {
        Space space = staging.space();
        double size = space.handShape(carrier).size() * staging.tether();
        double hand = size == 0 ? 1 : Math.max(1, Math.rint(size / CENTIMETRE)) * CENTIMETRE / size;
        if (staging.tethers() == Tethers.FREE) {
            return Optional.of(staging.pairing(carrier, rider, new Staging.Sizes(hand, 1, 1)));
        }
        SeriesCurve head = space.head(carrier, hand, 1);
        SeriesCurve path = space.hand(space.path(rider));
        double factor = Alignment.factor(head, path);
        return factor > 0 && Alignment.gap(head, path.scaled(factor)) <= Answers.EXACT
                ? Optional.of(staging.pairing(carrier, rider, new Staging.Sizes(hand, 1, factor)))
                : Optional.empty();
    }

    private static boolean roundLengths(Pairing pairing) {
        Vector3D apart = pairing.right().place().centre().subtract(pairing.left().place().centre());
        return whole(apart.getX(), CENTIMETRE)
                && whole(apart.getY(), CENTIMETRE)
                && whole(pairing.left().tether().length(), CENTIMETRE)
                && whole(pairing.right().tether().length(), CENTIMETRE)
                && roundLengths(pairing.left().motion())
                && roundLengths(pairing.right().motion());
    }

    private static boolean roundLengths(Motion motion) {
        return motion.path()
                .asTerms()
                .map(terms -> terms.stream().allMatch(t -> whole(t.radius(), CENTIMETRE)))
                .orElseGet(() -> motion.riding() || whole(motion.path().radius(), CENTIMETRE));
    }

    private static boolean roundAngles(Pairing pairing) {
        return whole(pairing.timing().ahead(), TIMING)
                && roundAngles(pairing.left())
                && roundAngles(pairing.right());
    }

    private static boolean roundAngles(Part part) {
        Motion motion = part.motion();
        return whole(motion.spin().starts().orElse(0), ANGLE)
                && motion.path().asTerms().stream()
                        .flatMap(List::stream)
                        .allMatch(t -> whole(t.angle(), ANGLE));
    }

    private static boolean whole(double value, double step) {
        return Math.abs(value / step - Math.rint(value / step)) < WHOLE / step * CENTIMETRE;
    }
}

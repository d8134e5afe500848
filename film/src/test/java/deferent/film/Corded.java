package deferent.film;

import deferent.motion.phrase.Phrase;
import deferent.motion.shared.Side;
import deferent.motion.trace.Trace;
import deferent.reading.tether.KeepTheFigure;
import deferent.reading.tether.KeepTheHandPath;
import deferent.reading.tether.Kit;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/** The twelve classics as cords let them be spun. */
final class Corded {
    private Corded() {}

    /** Each hand keeping the figure where a cord lets it, else its path. */
    static Optional<Trace> of(String phrase) {
        Trace ideal = Trace.of(Phrase.parse(phrase).pairing());
        Trace trace = ideal;
        for (Side side : Side.values()) {
            KeepTheFigure kept = KeepTheFigure.of(ideal, side, Kit.USUAL);
            if (kept.possible()) {
                trace = kept.in(trace);
                continue;
            }
            KeepTheHandPath path = KeepTheHandPath.of(ideal, side, Kit.USUAL);
            if (path.best().isEmpty()) {
                return Optional.empty();
            }
            trace = path.in(trace, path.best().get());
        }
        return Optional.of(trace);
    }

    /** Turns that the quicker poi makes in a cycle, by how far its cord turns in the wall plane. */
    static double turns(Trace trace) {
        double most = 0;
        for (Side side : Side.values()) {
            double sum = 0;
            double before = Double.NaN;
            for (int i = 0; i <= 400; i++) {
                double t = trace.interval().start() + i * trace.period() / 400;
                Vector3D cord = trace.head(side).position(t).subtract(trace.hand(side).position(t));
                double angle = Math.atan2(cord.getY(), cord.getX());
                if (i > 0) {
                    sum += Math.abs(Math.IEEEremainder(angle - before, 2 * Math.PI));
                }
                before = angle;
            }
            most = Math.max(most, sum / (2 * Math.PI));
        }
        return most;
    }
}

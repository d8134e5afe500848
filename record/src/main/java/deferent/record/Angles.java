package deferent.record;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.OptionalDouble;
import tools.jackson.databind.node.ObjectNode;

/**
 * Angles at the edge. A document says degrees wherever some decimal number of degrees gives back
 * exactly the radians it stands for, the shortest such number; else it says radians.
 */
final class Angles {
    /** No angle of a document is greater than this, radians: about a thousand turns. */
    static final double MOST = 6283.0;

    private Angles() {}

    static double radians(double degrees) {
        return Math.toRadians(degrees);
    }

    /** Puts {@code stem_deg} or {@code stem_rad} into an object. */
    static void put(ObjectNode into, String stem, double radians) {
        OptionalDouble degrees = exactDegrees(radians);
        if (degrees.isPresent()) {
            into.put(stem + "_deg", degrees.getAsDouble());
        } else {
            into.put(stem + "_rad", radians);
        }
    }

    static OptionalDouble exactDegrees(double radians) {
        double near = Math.toDegrees(radians);
        if (radians == 0) {
            return OptionalDouble.of(radians);
        }
        for (int places = 0; places <= 12; places += 3) {
            double rounded =
                    BigDecimal.valueOf(near).setScale(places, RoundingMode.HALF_EVEN).doubleValue();
            if (same(rounded, radians)) {
                return OptionalDouble.of(rounded);
            }
        }
        for (double candidate : new double[] {near, Math.nextUp(near), Math.nextDown(near)}) {
            if (same(candidate, radians)) {
                return OptionalDouble.of(candidate);
            }
        }
        return OptionalDouble.empty();
    }

    private static boolean same(double degrees, double radians) {
        return Double.compare(radians(degrees), radians) == 0;
    }
}

package deferent.studio;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Size;
import java.util.List;
import java.util.Optional;

/**
 * A size as it is typed in: its name, its value and limits in the unit of the edge.
 *
 * @param unit "m", "deg", "cycles" or "cycles_per_min"
 * @param step what one press of an arrow key changes
 */
record SizeRow(
        Size size, String name, double value, String unit, double least, double most, double step) {

    static List<SizeRow> of(Pairing pairing) {
        return Size.of(pairing).stream()
                .map(size -> of(size, size.read(pairing).orElseThrow()))
                .toList();
    }

    /**
     * @param si the value in SI units
     */
    static SizeRow of(Size size, double si) {
        double value = atEdge(size, si);
        String own = size.kind().shared() ? "" : size.side().word() + " ";
        return switch (size.kind()) {
            case HAND_RADIUS -> new SizeRow(size, own + "hand radius", value, "m", 0.001, 10, 0.01);
            case TETHER -> new SizeRow(size, own + "tether", value, "m", 0.01, 5, 0.01);
            case CENTRE_X ->
                    new SizeRow(size, own + "centre, to the left", value, "m", -10, 10, 0.01);
            case CENTRE_Y -> new SizeRow(size, own + "centre, up", value, "m", -10, 10, 0.01);
            case CENTRE_Z ->
                    new SizeRow(size, own + "centre, to the front", value, "m", -10, 10, 0.01);
            case START -> new SizeRow(size, own + "poi's start", value, "deg", -360, 360, 5);
            case TILT -> new SizeRow(size, own + "tilt", value, "deg", -360, 360, 5);
            case AMPLITUDE ->
                    new SizeRow(size, own + "swing to each side", value, "deg", 0.5, 179.5, 5);
            case TIMING ->
                    new SizeRow(size, "right hand ahead", value, "cycles", 0, 0.999999, 0.25);
            case TEMPO -> new SizeRow(size, "tempo", value, "cycles_per_min", 1, 600, 1);
        };
    }

    /** Degrees for angles, without what the way there and back leaves behind. */
    static double atEdge(Size size, double value) {
        return size.kind().angle() ? clean(Math.toDegrees(value)) : clean(value);
    }

    static double fromEdge(Size size, double value) {
        return size.kind().angle() ? Math.toRadians(value) : value;
    }

    private static double clean(double value) {
        double whole = Math.rint(value * 1e9) / 1e9;
        return Math.abs(whole) < 1e15 ? whole + 0.0 : value;
    }

    /** Whose it is; empty for what both share. */
    Optional<String> side() {
        return size.kind().shared() ? Optional.empty() : Optional.of(size.side().word());
    }
}

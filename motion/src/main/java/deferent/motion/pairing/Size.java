package deferent.motion.pairing;

import deferent.motion.shared.Side;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.hipparchus.geometry.euclidean.threed.Vector3D;

/**
 * A number of a pairing that can be set by itself: what is dragged, typed in, fitted or varied.
 *
 * @param side whose it is; for {@link Kind#TIMING} and {@link Kind#TEMPO}, which belong to both,
 *     LEFT
 */
public record Size(Kind kind, Side side) {
    /** Kinds of size, with the key that documents and requests use and the unit there. */
    public enum Kind {
        HAND_RADIUS("hand_radius_m"),
        TETHER("tether_m"),
        CENTRE_X("centre_x_m"),
        CENTRE_Y("centre_y_m"),
        CENTRE_Z("centre_z_m"),
        START("start_deg"),
        TILT("tilt_deg"),
        AMPLITUDE("amplitude_deg"),
        TIMING("timing_cycles"),
        TEMPO("tempo_cycles_per_min");

        private final String key;

        Kind(String key) {
            this.key = key;
        }

        public String key() {
            return key;
        }

        /** Whether it is an angle, in radians here and degrees at the edges. */
        public boolean angle() {
            return key.endsWith("_deg");
        }

        /** Whether it is a length, in metres. */
        public boolean length() {
            return key.endsWith("_m");
        }

        /** Whether it places a centre. */
        public boolean centre() {
            return this == CENTRE_X || this == CENTRE_Y || this == CENTRE_Z;
        }

        /** Whether it belongs to the whole pairing. */
        public boolean shared() {
            return this == TIMING || this == TEMPO;
        }
    }

    public Size {
        if (kind.shared()) {
            side = Side.LEFT;
        }
    }

    public static Size of(Side side, Kind kind) {
        return new Size(kind, side);
    }

    /** "left.hand_radius_m", "timing_cycles". */
    public String key() {
        return kind.shared() ? kind.key() : side.word() + "." + kind.key();
    }

    /** The size of that key. */
    public static Size named(String key) {
        for (Side side : Side.values()) {
            for (Kind kind : Kind.values()) {
                Size size = new Size(kind, side);
                if (size.key().equals(key)) {
                    return size;
                }
            }
        }
        throw new Refusal(
                "is no size",
                "\"" + key + "\"",
                "give one such as left.hand_radius_m, right.tilt_deg or timing_cycles");
    }

    /** The sizes a pairing has, in the order of {@link Kind}, left before right. */
    public static List<Size> of(Pairing pairing) {
        List<Size> found = new ArrayList<>();
        for (Kind kind : Kind.values()) {
            for (Side side : kind.shared() ? new Side[] {Side.LEFT} : Side.values()) {
                Size size = new Size(kind, side);
                if (size.read(pairing).isPresent()) {
                    found.add(size);
                }
            }
        }
        return List.copyOf(found);
    }

    /**
     * Its value in SI units (tempo a minute, timing in cycles); empty where the pairing has no such
     * size.
     */
    public OptionalDouble read(Pairing pairing) {
        Part part = pairing.part(side);
        Motion motion = part.motion();
        Vector3D centre = part.place().centre();
        return switch (kind) {
            case HAND_RADIUS ->
                    motion.riding() || part.still()
                            ? OptionalDouble.empty()
                            : OptionalDouble.of(motion.path().radius());
            case TETHER -> OptionalDouble.of(part.tether().length());
            case CENTRE_X -> OptionalDouble.of(centre.getX());
            case CENTRE_Y -> OptionalDouble.of(centre.getY());
            case CENTRE_Z -> OptionalDouble.of(centre.getZ());
            case START -> motion.spin().starts();
            case TILT -> {
                // Gravity says how a pendulum stands.
                OptionalDouble tilt = motion.undriven() ? OptionalDouble.empty() : Tilt.of(motion);
                yield tilt.isPresent() && pairing.mirrored(side)
                        ? OptionalDouble.of(0.0 - tilt.getAsDouble())
                        : tilt;
            }
            case AMPLITUDE ->
                    motion.spin()
                            .swing()
                            .map(swing -> OptionalDouble.of(swing.amplitude()))
                            .orElse(OptionalDouble.empty());
            case TIMING -> OptionalDouble.of(pairing.timing().ahead());
            case TEMPO ->
                    pairing.setsOwnTempo()
                            ? OptionalDouble.empty()
                            : OptionalDouble.of(pairing.tempo());
        };
    }

    /** The pairing with this size at {@code value} (SI units) and all else as it was. */
    public Pairing set(Pairing pairing, double value) {
        if (read(pairing).isEmpty()) {
            throw new Refusal(
                    "has no such size", key(), "set one of those that the pairing's readings list");
        }
        Refusal.finite(value, key());
        Part part = pairing.part(side);
        Motion motion = part.motion();
        Place place = part.place();
        Vector3D c = place.centre();
        return switch (kind) {
            case HAND_RADIUS -> {
                Refusal.positive(value, 10, key(), "m");
                yield pairing.with(side, part.with(motion.withPath(motion.path().resized(value))));
            }
            case TETHER -> pairing.with(side, part.with(Tether.of(value)));
            case CENTRE_X ->
                    pairing.with(
                            side,
                            part.with(place.withCentre(new Vector3D(value, c.getY(), c.getZ()))));
            case CENTRE_Y ->
                    pairing.with(
                            side,
                            part.with(place.withCentre(new Vector3D(c.getX(), value, c.getZ()))));
            case CENTRE_Z ->
                    pairing.with(
                            side,
                            part.with(place.withCentre(new Vector3D(c.getX(), c.getY(), value))));
            case START -> pairing.with(side, part.with(motion.withSpin(motion.spin().from(value))));
            case TILT ->
                    pairing.with(
                            side,
                            part.with(
                                    Tilt.set(
                                            motion, pairing.mirrored(side) ? 0.0 - value : value)));
            case AMPLITUDE ->
                    pairing.with(
                            side,
                            part.with(
                                    motion.withSpin(
                                            new Swing(
                                                    value,
                                                    motion.spin().swing().orElseThrow().rest()))));
            case TIMING -> pairing.with(Timing.of(value));
            case TEMPO -> pairing.withTempo(OptionalDouble.of(value));
        };
    }
}

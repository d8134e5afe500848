package deferent.search.fit;

import deferent.motion.pairing.Pairing;
import deferent.motion.pairing.Size;
import java.util.ArrayList;
import java.util.List;

/** One size changed, in SI units (timing in cycles). */
public record SizeChange(Size size, double from, double to) {
    /**
     * All that one pairing's sizes are changed to in another, but for what is too little to tell.
     */
    public static List<SizeChange> between(Pairing from, Pairing to) {
        List<SizeChange> changes = new ArrayList<>();
        for (Size size : Size.of(from)) {
            size.read(to)
                    .ifPresent(
                            now -> {
                                SizeChange change =
                                        new SizeChange(size, size.read(from).orElseThrow(), now);
                                if (!change.slight()) {
                                    changes.add(change);
                                }
                            });
        }
        return List.copyOf(changes);
    }

    boolean same(SizeChange o) {
        double apart = to - o.to;
        return size.equals(o.size)
                && Math.abs(turning() ? Math.IEEEremainder(apart, 2 * Math.PI) : apart) < 1e-6;
    }

    /**
     * Whether it is too little to be told: less than a millimetre, a tenth of a degree, a
     * thousandth of a cycle, a tenth of a cycle a minute.
     */
    boolean slight() {
        double least =
                switch (size.kind()) {
                    case TIMING -> 1e-3;
                    case TEMPO -> 0.1;
                    default -> size.kind().angle() ? Math.toRadians(0.1) : 1e-3;
                };
        return Math.abs(to - from) < least;
    }

    /** Whether it changes the same size by no more. */
    boolean noGreater(SizeChange o) {
        return size.equals(o.size) && Math.abs(to - from) <= Math.abs(o.to - o.from) + 1e-9;
    }

    // A whole turn more is the same start or tilt.
    private boolean turning() {
        return size.kind() == Size.Kind.START || size.kind() == Size.Kind.TILT;
    }
}

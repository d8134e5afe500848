package deferent.motion.fit;

import deferent.motion.pairing.Size;

/** One size changed, in SI units (timing in cycles). */
public record Change(Size size, double from, double to) {
    boolean same(Change o) {
        return size.equals(o.size) && Math.abs(to - o.to) < 1e-6;
    }
}

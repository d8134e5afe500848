package deferent.far;

import deferent.search.seek.Keyed;
import java.nio.ByteBuffer;
import java.nio.LongBuffer;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import scala.Tuple2;

/**
 * Keyed motions of one unit as bytes: key and signature in turn, eight bytes each. Few large pieces
 * cross the network in place of very many small ones, so the engine neither sorts nor wraps single
 * motions.
 */
final class Chunk {
    private Chunk() {}

    /** Keyed motions parted by unit, those of unwanted units left out. */
    static List<Tuple2<Integer, byte[]>> parted(
            Keyed keyed, int[] firsts, int[] shares, BitSet wanted) {
        int[] sizes = new int[firsts[firsts.length - 1]];
        int[] units = new int[keyed.count()];
        for (int i = 0; i < units.length; i++) {
            int band = keyed.bands()[i];
            units[i] =
                    firsts[band]
                            + (int) Long.remainderUnsigned(keyed.signatures()[i], shares[band]);
            sizes[units[i]]++;
        }
        LongBuffer[] buffers = new LongBuffer[sizes.length];
        List<Tuple2<Integer, byte[]>> out = new ArrayList<>();
        for (int unit = 0; unit < sizes.length; unit++) {
            if (sizes[unit] > 0 && wanted.get(unit)) {
                byte[] bytes = new byte[sizes[unit] * 2 * Long.BYTES];
                buffers[unit] = ByteBuffer.wrap(bytes).asLongBuffer();
                out.add(new Tuple2<>(unit, bytes));
            }
        }
        for (int i = 0; i < units.length; i++) {
            if (wanted.get(units[i])) {
                buffers[units[i]].put(keyed.keys()[i]).put(keyed.signatures()[i]);
            }
        }
        return out;
    }

    /** The keys of all, then their signatures. */
    static long[][] joined(List<byte[]> chunks) {
        int count = chunks.stream().mapToInt(c -> c.length / (2 * Long.BYTES)).sum();
        long[][] out = new long[2][count];
        int at = 0;
        for (int c = 0; c < chunks.size(); c++) {
            LongBuffer longs = ByteBuffer.wrap(chunks.get(c)).asLongBuffer();
            while (longs.hasRemaining()) {
                out[0][at] = longs.get();
                out[1][at++] = longs.get();
            }
        }
        return out;
    }
}

package deferent.film.light;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Lights that stand still: lamps, windows, and what is reflected of them. A spot counts as one of a
 * lamp's where spots keep coming back to the same few pixels in more than a share of all frames,
 * not drawn out; a head that hangs for a while does not.
 */
public final class Lamps {
    private static final double CELL = 6; // pixels
    private static final double SHARE = 0.4; // of all frames

    private Lamps() {}

    /**
     * What is left without lamps, and without shake where lamps tell it.
     *
     * @param frames the spots of each frame
     */
    public static List<List<LitSpot>> without(List<List<LitSpot>> frames) {
        return still(Steady.of(frames).frames());
    }

    private static List<List<LitSpot>> still(List<List<LitSpot>> frames) {
        Map<Long, Integer> seen = new HashMap<>();
        for (List<LitSpot> spots : frames) {
            spots.stream().map(Lamps::cell).distinct().forEach(c -> seen.merge(c, 1, Integer::sum));
        }
        double often = SHARE * frames.size();
        List<List<LitSpot>> moving = new ArrayList<>();
        for (List<LitSpot> spots : frames) {
            moving.add(
                    spots.stream()
                            .filter(s -> s.length() > CELL || around(seen, cell(s)) < often)
                            .toList());
        }
        return moving;
    }

    private static long cell(LitSpot spot) {
        return key(
                Math.floorDiv((long) spot.x(), (long) CELL),
                Math.floorDiv((long) spot.y(), (long) CELL));
    }

    private static long key(long column, long row) {
        return (column << 32) + row;
    }

    private static int around(Map<Long, Integer> seen, long cell) {
        int most = 0;
        for (int c = -1; c <= 0; c++) {
            for (int r = -1; r <= 0; r++) {
                int sum = 0;
                for (int i = 0; i < 2; i++) {
                    for (int j = 0; j < 2; j++) {
                        sum += seen.getOrDefault(cell + ((long) (c + i) << 32) + r + j, 0);
                    }
                }
                most = Math.max(most, sum);
            }
        }
        return most;
    }
}

package deferent.film.light;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A film's spots without its shake, which is told by lamps: lights that are followed from frame to
 * frame as they hardly move. Of how they are displaced in a frame the middle is the camera's. In
 * the dark nothing else stands still; without a lamp, shake cannot be told from the heads' own
 * motion, and is left.
 *
 * @param frames the spots of each frame, displaced against the shake; lamps left out
 * @param shake pixels, root mean square of what was taken away; empty where no lamp was found
 */
public record Steady(List<List<LitSpot>> frames, OptionalDouble shake) {
    private static final double STEP = 14; // pixels that a lamp may go from frame to frame
    private static final double ROUND = 16; // pixels that a lamp may be drawn out
    private static final double WANDER = 0.04; // of what the spots draw, a lamp's standard size
    private static final double SEEN = 0.6; // share of all frames
    private static final int MOST = 40; // lights followed at a time

    /** A light followed as a lamp. */
    private static final class Lamp {
        private final Map<Integer, LitSpot> seen = new HashMap<>();
        private LitSpot last;
        private int when;
        private int count;

        Lamp(int frame, LitSpot spot) {
            last = spot;
            add(frame, spot);
        }

        private void add(int frame, LitSpot spot) {
            seen.put(frame, spot);
            last = spot;
            when = frame;
            count++;
        }

        private double far(LitSpot spot) {
            return Math.hypot(spot.x() - last.x(), spot.y() - last.y());
        }

        private double middle(boolean across) {
            double[] sorted =
                    seen.values().stream()
                            .mapToDouble(s -> across ? s.x() : s.y())
                            .sorted()
                            .toArray();
            return sorted[sorted.length / 2];
        }

        private double wander() {
            double x = middle(true);
            double y = middle(false);
            double sum = 0;
            for (LitSpot s : seen.values()) {
                sum += Math.pow(s.x() - x, 2) + Math.pow(s.y() - y, 2);
            }
            return Math.sqrt(sum / count);
        }
    }

    /**
     * What is left without shake and lamps.
     *
     * @param frames the spots of each frame
     */
    public static Steady of(List<List<LitSpot>> frames) {
        List<Lamp> lamps = lamps(frames);
        if (lamps.isEmpty()) {
            return new Steady(List.copyOf(frames), OptionalDouble.empty());
        }
        double[][] by = displaced(lamps, frames.size());
        List<List<LitSpot>> steady = new ArrayList<>();
        double sum = 0;
        for (int i = 0; i < frames.size(); i++) {
            int frame = i;
            sum += by[0][i] * by[0][i] + by[1][i] * by[1][i];
            steady.add(
                    frames.get(i).stream()
                            .filter(s -> lamps.stream().noneMatch(l -> s.equals(l.seen.get(frame))))
                            .map(s -> moved(s, -by[0][frame], -by[1][frame]))
                            .toList());
        }
        return new Steady(
                List.copyOf(steady),
                OptionalDouble.of(Math.sqrt(sum / Math.max(1, frames.size()))));
    }

    private static List<Lamp> lamps(List<List<LitSpot>> frames) {
        List<Lamp> followed = new ArrayList<>();
        List<Lamp> all = new ArrayList<>();
        for (int i = 0; i < frames.size(); i++) {
            List<LitSpot> free = new ArrayList<>(frames.get(i));
            free.removeIf(s -> s.length() > ROUND);
            int frame = i;
            followed.sort(Comparator.comparingInt((Lamp l) -> l.count).reversed());
            for (Lamp lamp : followed) {
                Optional<LitSpot> near = free.stream().min(Comparator.comparingDouble(lamp::far));
                if (near.isPresent() && lamp.far(near.get()) < STEP) {
                    lamp.add(frame, near.get());
                    free.remove(near.get());
                }
            }
            followed.removeIf(l -> frame - l.when > Math.min(30, 3 + l.count));
            for (LitSpot spot : free) {
                if (followed.size() < MOST) {
                    Lamp lamp = new Lamp(frame, spot);
                    followed.add(lamp);
                    all.add(lamp);
                }
            }
            all.removeIf(l -> l.count < 4 && frame - l.when > 8);
        }
        double size = size(frames);
        return all.stream()
                .filter(l -> l.count > SEEN * frames.size())
                .filter(l -> l.wander() < WANDER * size)
                .toList();
    }

    private static double size(List<List<LitSpot>> frames) {
        double[] xs =
                frames.stream().flatMap(List::stream).mapToDouble(LitSpot::x).sorted().toArray();
        double[] ys =
                frames.stream().flatMap(List::stream).mapToDouble(LitSpot::y).sorted().toArray();
        return xs.length == 0 ? 0 : Math.max(xs[xs.length - 1] - xs[0], ys[ys.length - 1] - ys[0]);
    }

    private static double[][] displaced(List<Lamp> lamps, int frames) {
        double[][] by = new double[2][frames];
        for (int axis = 0; axis < 2; axis++) {
            boolean across = axis == 0;
            double[] middles = lamps.stream().mapToDouble(l -> l.middle(across)).toArray();
            double before = 0;
            for (int i = 0; i < frames; i++) {
                double[] off = new double[lamps.size()];
                int count = 0;
                for (int k = 0; k < off.length; k++) {
                    LitSpot spot = lamps.get(k).seen.get(i);
                    if (spot != null) {
                        off[count++] = (across ? spot.x() : spot.y()) - middles[k];
                    }
                }
                Arrays.sort(off, 0, count);
                before = count == 0 ? before : (off[(count - 1) / 2] + off[count / 2]) / 2;
                by[axis][i] = before;
            }
        }
        return by;
    }

    private static LitSpot moved(LitSpot s, double x, double y) {
        return new LitSpot(
                s.time(),
                s.x() + x,
                s.y() + y,
                s.ax() + x,
                s.ay() + y,
                s.bx() + x,
                s.by() + y,
                s.thickness(),
                s.glow(),
                s.blue(),
                s.red());
    }
}

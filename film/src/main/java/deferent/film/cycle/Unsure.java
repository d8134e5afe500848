package deferent.film.cycle;

import deferent.film.light.LitSpot;
import deferent.motion.pairing.Refusal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A stretch of a film in which it is not sure which light is which head's.
 *
 * @param from seconds
 * @param to seconds
 */
public record Unsure(double from, double to, Why why) {
    /** What makes it unsure. */
    public enum Why {
        /** Both heads are at one place, going so alike that either may go on as the other. */
        MEET,
        /** Lights are seen, but not where the mean cycles have them: something else is done. */
        ELSE,
        /** One head or both are not seen. */
        UNSEEN,
        /** More lights move than two, any two of which might be the heads. */
        OTHERS
    }

    public Unsure {
        Refusal.numbers("an unsure stretch of a film", from, to);
    }

    private static final double MOST = 0.5; // share of the frames of half a cycle
    private static final double CROWDED = 0.8; // share of them in which others move too
    private static final double MOMENT = 0.04; // seconds that a meeting lasts

    static List<Unsure> of(
            List<List<@Nullable LitSpot>> given,
            List<List<LitSpot>> frames,
            List<Double> meetings,
            Drift drift,
            double period) {
        List<Unsure> all = new ArrayList<>();
        int begin = 0;
        double from = 0;
        double time = 0;
        for (int i = 0; i < frames.size(); i++) {
            time = frames.get(i).isEmpty() ? time : frames.get(i).get(0).time();
            if (time - from >= period / 2 || i == frames.size() - 1) {
                add(all, given, frames, begin, i + 1, from, time);
                begin = i + 1;
                from = time;
            }
        }
        for (double share : meetings) {
            for (double t = share * period; t < time; t += period) {
                double at = t - drift.at(t);
                all.add(new Unsure(at - MOMENT / 2, at + MOMENT / 2, Why.MEET));
            }
        }
        all.sort(Comparator.comparingDouble(Unsure::from));
        return List.copyOf(all);
    }

    private static void add(
            List<Unsure> all,
            List<List<@Nullable LitSpot>> given,
            List<List<LitSpot>> frames,
            int begin,
            int end,
            double from,
            double to) {
        int astray = 0;
        int unseen = 0;
        int crowded = 0;
        for (int i = begin; i < end; i++) {
            crowded += frames.get(i).size() > 2 ? 1 : 0;
            LitSpot one = given.get(0).get(i);
            LitSpot other = given.get(1).get(i);
            if (one == null || other == null) {
                int used = one == null && other == null ? 0 : 1;
                astray += frames.get(i).size() > used ? 1 : 0;
                unseen += frames.get(i).size() > used ? 0 : 1;
            }
        }
        boolean lost = astray + unseen > MOST * (end - begin);
        if (!lost && crowded <= CROWDED * (end - begin)) {
            return;
        }
        Why why = !lost ? Why.OTHERS : astray >= unseen ? Why.ELSE : Why.UNSEEN;
        Unsure last = all.isEmpty() ? null : all.get(all.size() - 1);
        if (last != null && last.why() == why && last.to() == from) {
            all.set(all.size() - 1, new Unsure(last.from(), to, why));
        } else {
            all.add(new Unsure(from, to, why));
        }
    }
}
